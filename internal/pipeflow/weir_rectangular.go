package pipeflow

import (
	"math"

	"dryfit/internal/water"
)

// RectangularWeir is a level crest of thin plate, as wide as its channel or narrower, with air under the sheet of water.
type RectangularWeir struct {
	Width   float64 // b, width of the crest, m, 0.15 or more
	Channel float64 // B, width of the channel or vessel before it, m, Width or more
	Height  float64 // p, height of the crest over the floor before it, m, 0.1 or more
}

// kindsvater holds the constants of Kindsvater and Carter by Width over Channel: Ce = at + by h/p, and what is added to the width.
var kindsvater = [...]struct{ ratio, at, by, kb float64 }{
	{0, 0.587, -0.0023, 0.0024}, {0.2, 0.589, -0.0018, 0.0024}, {0.4, 0.591, 0.0058, 0.0027}, {0.5, 0.592, 0.011, 0.00315},
	{0.6, 0.593, 0.018, 0.0036}, {0.7, 0.594, 0.030, 0.0039}, {0.8, 0.596, 0.045, 0.0042}, {0.9, 0.598, 0.064, 0.00165}, {1, 0.602, 0.075, -0.0009},
}

// constants interpolates between the rows of kindsvater.
func (w RectangularWeir) constants() (at, by, kb float64) {
	ratio := w.Width / w.Channel
	i := 1
	for i < len(kindsvater)-1 && ratio > kindsvater[i].ratio {
		i++
	}
	a, b := kindsvater[i-1], kindsvater[i]
	x := (ratio - a.ratio) / (b.ratio - a.ratio)
	return a.at + x*(b.at-a.at), a.by + x*(b.by-a.by), a.kb + x*(b.kb-a.kb)
}

const (
	weirLeast = 0.03 // least calibrated head over a level crest, m
	weirMost  = 2    // greatest calibrated head over the height of the crest
)

func (w RectangularWeir) validity() Validity {
	return given(w.Width > 0, w.Channel >= w.Width, w.Height > 0, w.Channel < math.Inf(1)).
		And(water.Within(w.Width, 0.15, math.MaxFloat64)).And(water.Within(w.Height, 0.1, math.MaxFloat64))
}

// formula is the curve from the least calibrated head up.
func (w RectangularWeir) formula(h float64) float64 {
	at, by, kb := w.constants()
	q, _ := RectangularNotch(at+by*min(h/w.Height, weirMost), w.Width+kb, h+0.001)
	return q
}

// Flow gives q over the weir.
//
//	q = (2/3) Ce (b + kb) sqrt(2g) (h + 0.001)^1.5,  Ce and kb by b/B and h/p
//
//	h  head over the crest, measured 3 to 4 heads upstream, m, 0.03 to 2 p; at 0 and below nothing flows
//
// Below 0.03 m the curve goes on as h^1.5 through zero; above 2 p Ce stays; both say extrapolated, as do Width below 0.15 m and Height
// below 0.1 m. See [WeirSpread].
//
// Source: Kindsvater, C. E. and Carter, R. W., 1957, Discharge characteristics of rectangular thin-plate weirs, ASCE J. Hydraul. Div.
// 83(HY6), as in ISO 1438 (constants from memory).
func (w RectangularWeir) Flow(h float64) (float64, Validity) {
	v := w.validity().And(given(h == h))
	switch {
	case !v.Defined() || h <= 0:
		return v.Of(0)
	case h < weirLeast:
		return v.And(Extrapolated).Of(below(h, weirLeast, w.formula(weirLeast), 1.5))
	}
	return v.And(water.Within(h, 0, weirMost*w.Height)).Of(w.formula(h))
}

// Head gives h, the head at which q passes: the inverse of [RectangularWeir.Flow], with its ranges.
//
//	q  flow, m3/s, 0 or more
//
// Source: see Flow.
func (w RectangularWeir) Head(q float64) (float64, Validity) {
	v := w.validity().And(given(q >= 0))
	if !v.Defined() || q == 0 {
		return v.Of(0)
	}
	least := w.formula(weirLeast)
	if q < least {
		return v.And(Extrapolated).Of(headBelow(q, weirLeast, least, 1.5))
	}
	most := 2 * headBelow(q, weirLeast, least, 1.5) // Ce falls by less than 1 % over the range, so this passes more than q
	r := Solve(func(h float64) float64 { return w.formula(h) - q }, weirLeast, most, 1e-9)
	if !r.Found {
		return Undefined.Of(0)
	}
	return v.And(water.Within(r.X, 0, weirMost*w.Height)).Of(r.X)
}
