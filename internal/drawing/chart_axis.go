package drawing

import (
	"math"
	"slices"
	"strconv"

	"dryfit/internal/quantity"
)

// A tick is a round number of an axis.
type tick struct {
	si    float64
	words string
}

// ticks are the round numbers along an axis, at most some.
func (a Axis) ticks(most int) []tick {
	low, _ := quantity.Convert(a.Kind, a.Low, a.Unit)
	high, _ := quantity.Convert(a.Kind, a.High, a.Unit)
	if a.Log {
		return a.decades(low, high)
	}
	step := roundStep((high - low) / float64(most))
	if a.Kind == quantity.Time && a.Unit == "h" && step > 0.9 && step < 24 {
		for _, s := range []float64{1, 2, 3, 6, 12} {
			if step = s; s >= (high-low)/float64(most) {
				break
			}
		}
	}
	var out []tick
	for i := math.Ceil(low/step-1e-9) + 0; i*step <= high+step*1e-9 && len(out) < 4*most; i++ {
		out = a.tick(out, i*step)
	}
	return out
}

func (a Axis) decades(low, high float64) []tick {
	var out []tick
	for e := math.Floor(math.Log10(low)); e <= math.Log10(high) && len(out) < 60; e++ {
		for _, m := range []float64{1, 2, 5} {
			if x := m * math.Pow(10, e); x >= low*(1-1e-9) && x <= high*(1+1e-9) {
				out = a.tick(out, x)
			}
		}
	}
	return out
}

func (a Axis) tick(list []tick, x float64) []tick {
	si, ok := quantity.FromUnit(a.Kind, x, a.Unit)
	if !ok {
		return list
	}
	return append(list, tick{si, strconv.FormatFloat(x+0, 'g', 6, 64)})
}

// roundStep is the least of 1, 2, 2.5, 5 times a power of ten that is not under x.
func roundStep(x float64) float64 {
	e := math.Pow(10, math.Floor(math.Log10(x)))
	for _, m := range []float64{1, 2, 2.5, 5} {
		if m*e >= x*(1-1e-9) {
			return m * e
		}
	}
	return 10 * e
}

// scaleOf is the scale of ISO 5455 at which so many metres fit into a length on
// paper, mm: the number of millimetres that one of paper stands for.
func scaleOf(metres, paper float64) float64 {
	for e := 1.0; e < 1e6; e *= 10 {
		for _, m := range []float64{1, 2, 2.5, 5} {
			if m*e*paper >= metres*1000 {
				return m * e
			}
		}
	}
	return 1e6
}

// apart moves places so that no two are nearer than a gap, in their order, between two bounds.
func apart(places []float64, gap, low, high float64) []float64 {
	order := make([]int, len(places))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		switch {
		case places[a] < places[b]:
			return -1
		case places[a] > places[b]:
			return 1
		}
		return 0
	})
	out := slices.Clone(places)
	if room := high - low; len(places) > 1 && gap*float64(len(places)-1) > room {
		gap = room / float64(len(places)-1)
	}
	// blocks of places that touch each other, each about the mean of its own
	type block struct{ sum, n float64 }
	var blocks []block
	top := func(b block) float64 {
		y := b.sum/b.n - gap*(b.n-1)/2
		return math.Max(low, math.Min(high-gap*(b.n-1), y))
	}
	for _, i := range order {
		blocks = append(blocks, block{places[i], 1})
		for k := len(blocks) - 1; k > 0 && top(blocks[k]) < top(blocks[k-1])+gap*blocks[k-1].n; k-- {
			blocks[k-1] = block{blocks[k-1].sum + blocks[k].sum, blocks[k-1].n + blocks[k].n}
			blocks = blocks[:k]
		}
	}
	next := 0
	for _, b := range blocks {
		for j := range int(b.n) {
			out[order[next]] = top(b) + gap*float64(j)
			next++
		}
	}
	return out
}

// inside is what of a polyline lies in a rectangle, piece by piece.
func inside(list []point, left, right, top, bottom float64) [][]point {
	var out [][]point
	var now []point
	for i := 0; i+1 < len(list); i++ {
		a, b, ok := clipped(list[i], list[i+1], left, right, top, bottom)
		if !ok || a == b && list[i] != list[i+1] {
			continue // it only touches the edge
		}
		if len(now) == 0 || now[len(now)-1] != a {
			if len(now) > 1 {
				out = append(out, now)
			}
			now = []point{a}
		}
		now = append(now, b)
	}
	if len(now) > 1 {
		out = append(out, now)
	}
	return out
}

// clipped is what of a stretch lies in a rectangle (Liang and Barsky 1984).
func clipped(a, b point, left, right, top, bottom float64) (point, point, bool) {
	t0, t1 := 0.0, 1.0
	dx, dy := b.x-a.x, b.y-a.y
	for _, edge := range [][2]float64{{-dx, a.x - left}, {dx, right - a.x}, {-dy, a.y - top}, {dy, bottom - a.y}} {
		p, q := edge[0], edge[1]
		switch {
		case p == 0 && q < 0:
			return a, b, false
		case p < 0:
			t0 = math.Max(t0, q/p)
		case p > 0:
			t1 = math.Min(t1, q/p)
		}
	}
	if t0 > t1 {
		return a, b, false
	}
	from, to := a, b
	if t0 > 0 {
		from = point{a.x + t0*dx, a.y + t0*dy}
	}
	if t1 < 1 {
		to = point{a.x + t1*dx, a.y + t1*dy}
	}
	return from, to, true
}
