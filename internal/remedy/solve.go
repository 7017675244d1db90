package remedy

import (
	"math"
	"strconv"

	"dryfit/internal/pipeflow"
	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// solve looks for the value at a file pointer with which the judged quantity
// comes to the middle of its band, or just inside its one limit, and rounds it
// the way that stays inside.
func solve(r *review.Review, f *review.Finding, lever review.Lever) []proposal {
	pointer, ok := resolve(r, f, lever.Solve)
	if !ok || f.Node == nil {
		return nil
	}
	text, given := r.System.Document.Text(pointer)
	if !given {
		return nil
	}
	kind, now, ok := stated(r.Ledger, f.Node, pointer)
	if !ok {
		return nil
	}
	was, err := quantity.Parse(kind, text)
	if err != nil {
		return nil
	}
	step := 0.0
	if q, err := quantity.Parse(kind, lever.Toward); err == nil {
		step = stepIn(kind, q.SI, was.Unit)
	}
	target := aim(f)
	worked := func(x float64) float64 {
		v, gaps, err := r.Ledger.Again(f.Node.Address, pointer, x)
		if err != nil || len(gaps) > 0 {
			return math.NaN()
		}
		return v.X - target
	}
	x, ok := search(worked, now, step)
	if !ok {
		return nil
	}
	var out []proposal
	for _, rounded := range around(x, step) {
		if rounded == now {
			continue
		}
		value := in(kind, rounded, was.Unit)
		if was.Basis != "" {
			value += " " + was.Basis
		}
		out = append(out, proposal{
			text:  move(pointer, kind, text, value, rounded-now, was.Unit),
			edits: []system.Edit{{Op: system.Set, Pointer: pointer, Value: value}},
		})
	}
	return out
}

// spare is how far inside a single limit a remedy goes, as a share of the limit.
const spare = 0.02

// aim is the value that the judged quantity should come to.
func aim(f *review.Finding) float64 {
	least, most := f.Limit.Least, f.Limit.Most
	switch {
	case least != nil && most != nil:
		return (*least + *most) / 2
	case most != nil:
		return *most - spare*math.Abs(*most)
	case least != nil:
		return *least + spare*math.Abs(*least)
	}
	return f.Value.X
}

// search looks for a root near where the value stands now, further out each time. A
// way on which there is no answer any more is not followed further.
func search(f func(float64) float64, now, step float64) (float64, bool) {
	reach := math.Max(math.Abs(now)*0.05, 4*step)
	if reach == 0 {
		reach = 0.01
	}
	here := f(now)
	if math.IsNaN(here) {
		return 0, false
	}
	ways := []float64{1, -1}
	for range 12 {
		for i, way := range ways {
			if way == 0 {
				continue
			}
			there := now + way*reach
			switch y := f(there); {
			case math.IsNaN(y):
				ways[i] = 0
			case here*y <= 0:
				root := pipeflow.Solve(f, math.Min(now, there), math.Max(now, there), 1e-7)
				return root.X, root.Found
			}
		}
		reach *= 2
	}
	return 0, false
}

// around is x rounded to a step, both ways, the nearer first.
func around(x, step float64) []float64 {
	if step <= 0 {
		return []float64{x}
	}
	low, high := math.Floor(x/step)*step, math.Ceil(x/step)*step
	if high-x < x-low {
		low, high = high, low
	}
	return []float64{low, high}
}

// stepIn is a step in SI where it is a round number in the unit of the file too, else the nearest one
// that is: a fraction of an inch, or 1, 2 or 5 of a tenfold of any other unit.
func stepIn(kind quantity.Kind, step float64, unit string) float64 {
	x, ok := quantity.Convert(kind, step, unit)
	if short, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 2, 64), 64); !ok || x <= 0 || math.Abs(short-x) < 1e-9*x {
		return step
	}
	ten := math.Pow(10, math.Floor(math.Log10(x)))
	round := []float64{ten, 2 * ten, 5 * ten, 10 * ten}
	if unit == "in" {
		round = []float64{1. / 16, 1. / 8, 1. / 4, 1. / 2, 1, 2}
	}
	best := round[0]
	for _, r := range round {
		if math.Abs(math.Log(r/x)) < math.Abs(math.Log(best/x))-1e-9 {
			best = r
		}
	}
	si, ok := quantity.FromUnit(kind, best, unit)
	if zero, _ := quantity.FromUnit(kind, 0, unit); ok && zero == 0 {
		return si
	}
	return step
}

// stated is the kind and value of the file's number at a pointer, if the node depends on it.
func stated(l *working.Ledger, n *working.Node, pointer string) (quantity.Kind, float64, bool) {
	seen := map[*working.Node]bool{}
	var found *working.Node
	var walk func(*working.Node)
	walk = func(n *working.Node) {
		if seen[n] || found != nil {
			return
		}
		seen[n] = true
		if n.Origin == working.Given && n.Pointer == pointer {
			found = n
			return
		}
		for _, in := range n.Inputs {
			walk(in.Node)
		}
	}
	walk(n)
	if found == nil {
		return "", 0, false
	}
	v, ok := found.Value()
	return found.Kind, v.X, ok
}

// in writes a value in a unit with as many digits as it needs and no more than six.
func in(kind quantity.Kind, si float64, unit string) string {
	x, ok := quantity.Convert(kind, si, unit)
	if !ok {
		return quantity.Format(kind, si, quantity.Metric)
	}
	text := strconv.FormatFloat(x, 'g', 6, 64)
	if y, err := strconv.ParseFloat(text, 64); err == nil {
		text = strconv.FormatFloat(y, 'f', -1, 64)
	}
	if unit == "" {
		return text
	}
	return text + " " + unit
}
