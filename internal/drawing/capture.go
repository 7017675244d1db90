package drawing

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// Capture draws what a settler catches of the waste that settles at all, against the
// upward speed of the water, beside the share of that waste that sinks faster. The
// curve is the catch of the ledger worked again with the settler made wider and
// narrower. It answers with why where the catch is not known.
func Capture(s *system.System, l *working.Ledger, vessel string) (svg, why string) {
	v := s.Vessel(vessel)
	if v == nil {
		return "", "there is no vessel " + vessel
	}
	catch := working.Address{Subject: vessel, Name: "capture_settleable", Case: working.RunClean, Water: "usual"}
	rate := working.Address{Subject: vessel, Name: "greatest_overflow_rate", Case: working.Always}
	n := l.Find(catch)
	if n == nil {
		return "", "what " + vessel + " catches is not worked out"
	}
	r, ok := n.Value()
	if !ok {
		return "", "what " + vessel + " catches is not known" + gaps(n)
	}
	var v0 float64
	faster := sinking(n)
	for _, in := range n.Inputs {
		if x, known := in.Value(); in.Symbol == "v0" && known {
			v0 = x.X
		}
	}
	if v0 <= 0 || len(faster.X) == 0 {
		return "", "the speeds at which the waste of " + vessel + " sinks are not known"
	}
	caught := [][2]float64{{v0, r.X}}
	for k := 0.35; k < 5; k *= 1.12 {
		moved := map[string]float64{}
		f := v.Form
		for _, side := range []system.Number{f.Inside, f.InsideTop, f.Length, f.LengthTop} {
			if x, given := si(side); given {
				moved[side.Pointer()] = x * k
			}
		}
		speed, gaps0, err0 := l.AgainWith(rate, moved)
		share, gaps1, err1 := l.AgainWith(catch, moved)
		if err0 == nil && err1 == nil && len(gaps0) == 0 && len(gaps1) == 0 && finite(speed.X, share.X) && speed.X > 0 {
			caught = append(caught, [2]float64{speed.X, share.X})
		}
	}
	slices.SortFunc(caught, func(a, b [2]float64) int { return cmp.Compare(a[0], b[0]) })
	caught = slices.CompactFunc(caught, func(a, b [2]float64) bool { return math.Abs(b[0]-a[0]) < a[0]*1e-6 })
	plot := Plot{
		Title: "What " + vessel + " catches",
		X:     Axis{Title: "speed", Kind: quantity.Velocity, Unit: "mm/s", Low: 0.00005, High: 0.05, Log: true},
		Y:     Axis{Title: "share of the waste that settles", Kind: quantity.Fraction, Unit: "%", High: 1},
	}
	plot.X.High = math.Max(plot.X.High, greatest(faster.X)*1.2)
	plot.Curves = []Curve{curveOf("caught", caught), faster}
	plot.Limits = []Limit{{At: v0, Upright: true, Name: "water rises, " + quantity.FormatIn(quantity.Velocity, v0, "mm/s", 3)}}
	plot.Marks = []Mark{{X: v0, Y: r.X, Name: percent(r.X) + " caught"}}
	words := fmt.Sprintf("Caught: what the settler catches in one pass, were the water to rise at that speed; in use %s", percent(r.X))
	if r.Spread() {
		words += fmt.Sprintf(", sources %s to %s", percent(r.Low), percent(r.High))
	}
	plot.Notes = append(wrapped(words+".", pageWidth), "Sinks faster: share of it that sinks faster than that, in water of 20 degC. Waste that never settles is left out.")
	plot.Description = "Shares against speed. " + words + "."
	return Chart(plot)
}

func percent(x float64) string { return quantity.FormatIn(quantity.Fraction, x, "%", 2) }

// sinking is the share of the waste that sinks faster, as stairs: each class counts
// until its own speed is reached. The shares are those that the catch was worked
// with, in the titles of its inputs.
func sinking(n *working.Node) Curve {
	c := Curve{Name: "sinks faster"}
	type class struct{ speed, share float64 }
	var list []class
	for _, in := range n.Inputs {
		v, ok := in.Value()
		share := 0.0
		if in.Symbol != "v" || !ok {
			continue
		}
		if _, err := fmt.Sscanf(in.Title, "settling speed at 20 degC of %f of what settles", &share); err != nil || share <= 0 || v.X <= 0 {
			return Curve{}
		}
		list = append(list, class{v.X, share})
	}
	slices.SortFunc(list, func(a, b class) int { return cmp.Compare(a.speed, b.speed) })
	left := 1.0
	from := 0.00005
	for _, k := range list {
		c.X, c.Y = append(c.X, from, k.speed), append(c.Y, left, left)
		from, left = k.speed, math.Max(0, left-k.share)
	}
	if len(list) > 0 {
		c.X, c.Y = append(c.X, from, from*1.2), append(c.Y, left, left)
	}
	return c
}
