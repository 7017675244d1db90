package remedy

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// The swaps of the chapter on the whole loop that move water and air; those that
// give a vessel another way out stand in exchange_overflow.go.
func init() {
	maps.Copy(exchanges, map[string]func(*review.Review, *review.Finding, string) []proposal{
		"lower_outlet":         lowerOutlet,
		"less_water_to_arrive": lessWaterToArrive,
		"larger_sump":          largerSump,
		"less_draw_down":       lessDrawDown,
		"open_riser":           openRiser,
		"return_over_water":    returnOverWater,
		"siphon_break":         siphonBreak,
		"larger_holes":         largerHoles,
		"higher_wall_hole":     higherWallHole,
		"higher_drain":         higherDrain,
		"lower_crest":          lowerCrest,
		"fill_behind_valve":    fillBehindValve,
		"narrower_siphon":      siphonOf(narrowerBore),
		"wider_siphon":         siphonOf(nextBore),
		"second_float":         put("/top_up/second_stop", "float", "a second float or a timer behind the first valve, which shuts when that one does not"),
	})
}

// about is a finding as if it were about a line.
func about(f *review.Finding, line *system.Line, at string) *review.Finding {
	j, g := *f.Judgement, *f
	j.Subject, j.On, j.At = line.ID, "", at
	g.Judgement = &j
	return &g
}

// solveAt is solve for a place that the clause cannot name.
func solveAt(r *review.Review, f *review.Finding, pointer, step string) []proposal {
	return solve(r, f, review.Lever{Solve: pointer, Toward: step})
}

// byGravity is the lines through which water runs out of a vessel by its own weight while the pump runs.
func byGravity(r *review.Review, v *system.Vessel) []*system.Line {
	return slices.DeleteFunc(r.System.LinesFrom(v), func(l *system.Line) bool {
		return !slices.Contains(r.Ledger.Sets["running_gravity_lines"], l.ID)
	})
}

// pumpedInto is the lines of pumps that end in a vessel.
func pumpedInto(r *review.Review, v *system.Vessel) []*system.Line {
	return slices.DeleteFunc(r.System.LinesInto(v), func(l *system.Line) bool { return !l.Pumped })
}

// linesOf is the line that a finding is about or, if it is about a vessel, those that choose gives for it.
func linesOf(r *review.Review, f *review.Finding, choose func(*review.Review, *system.Vessel) []*system.Line) []*system.Line {
	if line := r.System.Line(f.Part()); line != nil {
		return []*system.Line{line}
	}
	if v := r.System.Vessel(f.Part()); v != nil {
		return choose(r, v)
	}
	return nil
}

// lowerOutlet lowers what holds the level of a vessel: the rim of its standpipe, or the hole of its side outlet.
func lowerOutlet(r *review.Review, f *review.Finding, _ string) []proposal {
	v := r.System.Vessel(f.Subject)
	if v == nil || f.Limit.Least == nil {
		return nil
	}
	by := roundUp(*f.Limit.Least-f.Value.X+0.002, 0.005)
	for _, line := range byGravity(r, v) {
		first := line.Pieces[0]
		if first.Standpipe != nil {
			return solveAt(r, f, first.Standpipe.CrestAt.Pointer(), "5 mm")
		}
		var edits []system.Edit
		var to string
		for _, p := range line.Pieces {
			if p.Through == nil || !p.Through.WallOf.Given() || p.Through.Vessel != v {
				continue
			}
			x, given := p.Through.At.SI()
			if !given || x <= by {
				continue
			}
			to = mm(x - by)
			edits = append(edits, system.Edit{Op: system.Set, Pointer: p.Through.At.Pointer(), Value: to})
			if first.Intake != nil {
				if at, given := first.Intake.At.SI(); given && math.Abs(at-x) < 1e-6 { // a level end in the wall
					edits = append(edits, system.Edit{Op: system.Set, Pointer: first.Intake.At.Pointer(), Value: to})
				}
			}
		}
		if len(edits) > 0 {
			return []proposal{{text: "set the outlet of " + v.ID + " " + mm(by) + " lower, at " + to + " above the floor", edits: edits}}
		}
	}
	return nil
}

// lessWaterToArrive lets the pump have less to send up before it draws air.
func lessWaterToArrive(r *review.Review, f *review.Finding, _ string) []proposal {
	var out []proposal
	for _, id := range r.Ledger.Sets["pump_vessels"] {
		if v := r.System.Vessel(id); v != nil {
			out = append(out, solveAt(r, f, v.Running.Pointer(), "5 mm")...)
		}
	}
	return append(out, solveAt(r, f, "/top_up/store", "5 L")...)
}

// largerSump makes a vessel wider in plan, by what is wanting and, if that does not do, by more.
func largerSump(r *review.Review, f *review.Finding, _ string) []proposal {
	v := r.System.Vessel(f.Subject)
	if v == nil || f.Value.X <= 0 {
		return nil
	}
	var more float64
	switch {
	case f.Limit.Most != nil && *f.Limit.Most > 0:
		more = f.Value.X / *f.Limit.Most
	case f.Limit.Least != nil:
		more = *f.Limit.Least / f.Value.X
	}
	if more <= 1 || more > 5 {
		return nil
	}
	sides := []system.Number{v.Form.Length, v.Form.LengthTop}
	what := "length"
	if v.Form.Kind != "box" {
		sides, what = []system.Number{v.Form.Inside, v.Form.InsideTop}, "inside"
	}
	now, given := sides[0].SI()
	if !given {
		return nil
	}
	var out []proposal
	for _, k := range []float64{1.05, 1.25, 1.6} {
		grow := more * k
		if what == "inside" {
			grow = math.Sqrt(grow)
		}
		then := roundUp(now*grow, 0.010)
		var edits []system.Edit
		for _, side := range sides {
			if x, given := side.SI(); given {
				edits = append(edits, system.Edit{Op: system.Set, Pointer: side.Pointer(), Value: mm(x + then - now)})
			}
		}
		out = append(out, proposal{text: fmt.Sprintf("a larger %s: %s %s in place of %s", v.ID, what, mm(then), mm(now)), edits: edits})
	}
	return out
}

// lessDrawDown sets the inner end of a draw-down line higher, so that less of the settler comes down.
func lessDrawDown(r *review.Review, f *review.Finding, _ string) []proposal {
	v := r.System.Vessel(f.Subject)
	if v == nil {
		return nil
	}
	for _, line := range r.System.LinesInto(v) {
		if line.Duty == "draw-down" && line.Pieces[0].Intake != nil {
			return solveAt(r, f, line.Pieces[0].Intake.At.Pointer(), "5 mm")
		}
	}
	return nil
}

// openRiser opens the top of a line out of a vessel to the air.
func openRiser(r *review.Review, f *review.Finding, _ string) []proposal {
	var out []proposal
	for _, line := range linesOf(r, f, byGravity) {
		var top *system.Piece
		height := math.Inf(-1)
		for _, p := range line.Pieces {
			if p.Tee != nil && p.Tee.Third.Is("vent") {
				top = nil
				break
			}
			if z, ok := p.To.Value(); ok && (z > height+1e-6 || p.Tee != nil && z > height-1e-6) {
				top, height = p, z
			}
		}
		if top != nil {
			out = append(out, vent(r, about(f, line, top.Pointer), "")...)
		}
	}
	return out
}

// deepest is how far under the running level air first gets into a line, in the worst state.
func deepest(r *review.Review, line string) (float64, bool) {
	most, found := math.Inf(-1), false
	working.EachRunning(func(runCase, water string) {
		n := r.Ledger.Find(working.Address{Subject: line, Name: "first_air_under", Case: runCase, Water: water})
		if n == nil {
			return
		}
		if v, ok := n.Value(); ok {
			most, found = math.Max(most, v.X), true
		}
	})
	return most, found
}

// overWater is how far over the water an end is set that had been under it.
const overWater = 0.030

// returnOverWater ends the pumped lines into a vessel over its water.
func returnOverWater(r *review.Review, f *review.Finding, _ string) []proposal {
	var out []proposal
	for _, line := range linesOf(r, f, pumpedInto) {
		end := line.Pieces[len(line.Pieces)-1].Outlet
		under, known := deepest(r, line.ID)
		if end == nil || !known || under <= 0 {
			continue
		}
		if at, given := end.At.SI(); given {
			to := mm(roundUp(at+under+overWater, 0.005))
			out = append(out, one("end the line "+line.ID+" over the water, at "+to+" above the floor", end.At.Pointer(), to)...)
		}
	}
	return out
}

// Of the holes of a siphon break that is offered: how many, and how wide.
const breakHoles, breakBore = 2, "8 mm"

// siphonBreak lets air into a pumped line at the top of its last fall.
func siphonBreak(r *review.Review, f *review.Finding, _ string) []proposal {
	var out []proposal
	for _, line := range linesOf(r, f, pumpedInto) {
		for i, p := range slices.Backward(line.Pieces) {
			if i == 0 || p.Kind != "fall" && p.Kind != "slope" || p.In != line.To.Vessel {
				continue
			}
			holes := system.Map{{Key: "siphon_break", Value: system.Map{{Key: "count", Value: breakHoles}, {Key: "bore", Value: breakBore}}}}
			out = append(out, proposal{
				text:  fmt.Sprintf("a siphon break: %d holes of %s where the line %s begins to fall to the water", breakHoles, breakBore, line.ID),
				edits: []system.Edit{{Op: system.Insert, Pointer: p.Pointer, Value: holes}},
			})
			break
		}
	}
	return out
}

// largerHoles makes a siphon break of two holes that do not clog.
func largerHoles(r *review.Review, f *review.Finding, _ string) []proposal {
	p := piece(r, f)
	if p == nil || p.SiphonBreak == nil {
		return nil
	}
	var edits []system.Edit
	if n, given := p.SiphonBreak.Count.SI(); !given || n < breakHoles {
		edits = append(edits, system.Edit{Op: system.Set, Pointer: p.Value + "/count", Value: breakHoles})
	}
	if d, given := p.SiphonBreak.Bore.SI(); !given || d < 0.006 {
		edits = append(edits, system.Edit{Op: system.Set, Pointer: p.Value + "/bore", Value: breakBore})
	}
	return []proposal{{text: fmt.Sprintf("drill %d holes of %s", breakHoles, breakBore), edits: edits}}
}

// higherWallHole raises the hole by which the lines out of a tank enter the vessel
// below it, before which the lowest joint outside mostly stands, and with it an end that looks up.
func higherWallHole(r *review.Review, f *review.Finding, _ string) []proposal {
	var out []proposal
	for _, line := range linesOf(r, f, byGravity) {
		end := line.Pieces[len(line.Pieces)-1].Outlet
		for _, p := range line.Pieces {
			if p.Through == nil || !p.Through.WallOf.Given() || p.Through.Vessel != line.To.Vessel {
				continue
			}
			for _, one := range solveAt(r, f, p.Through.At.Pointer(), "5 mm") {
				out = append(out, one, withEnd(one, p.Through.At, end))
			}
		}
	}
	return out
}

// higherDrain raises the holes in the wall by which a tank can be emptied; what stays below them is bailed out.
func higherDrain(r *review.Review, f *review.Finding, _ string) []proposal {
	v := r.System.Vessel(f.Subject)
	if v == nil {
		return nil
	}
	var out []proposal
	for _, line := range r.System.LinesFrom(v) {
		first := line.Pieces[0]
		if line.Duty != "waste" && line.Duty != "empty" || first.Through == nil || !first.Through.WallOf.Given() {
			continue
		}
		end := line.Pieces[len(line.Pieces)-1].Outlet
		for _, one := range solveAt(r, f, first.Through.At.Pointer(), "5 mm") {
			out = append(out, withEnd(one, first.Through.At, end))
		}
	}
	return out
}

// withEnd lets the open end of a line come up with the hole that a proposal moves.
func withEnd(p proposal, hole system.Number, end *system.Outlet) proposal {
	text, ok := p.edits[0].Value.(string)
	at, err := quantity.Parse(quantity.Length, text)
	if !ok || err != nil || end == nil || !end.At.Given() {
		return p
	}
	was, _ := hole.SI()
	top, _ := end.At.SI()
	return proposal{
		text:  p.text + "; the open end of the line comes up with it",
		edits: append(slices.Clone(p.edits), system.Edit{Op: system.Set, Pointer: end.At.Pointer(), Value: mm(top + at.SI - was)}),
	}
}

// lowerCrest lowers the place at which a line goes over a rim.
func lowerCrest(r *review.Review, f *review.Finding, _ string) []proposal {
	line := r.System.Line(f.Part())
	if line == nil {
		return nil
	}
	for _, p := range line.Pieces {
		if p.Over != nil {
			return solveAt(r, f, p.Over.At.Pointer(), "10 mm")
		}
	}
	return nil
}

// fillBehindValve keeps a siphon full from one time to the next.
func fillBehindValve(r *review.Review, f *review.Finding, _ string) []proposal {
	line := r.System.Line(f.Part())
	if line == nil {
		return nil
	}
	return one("fill it once with a hose, and keep it full behind the valve at its foot", line.Pointer+"/primed_by", "filling")
}

// siphonOf is a swap of pipe for the line of a bed's siphon.
func siphonOf(swap func(*review.Review, *review.Finding, string) []proposal) func(*review.Review, *review.Finding, string) []proposal {
	return func(r *review.Review, f *review.Finding, to string) []proposal {
		v := r.System.Vessel(f.Part())
		if v == nil {
			return nil
		}
		for _, line := range r.System.LinesFrom(v) {
			if line.Pieces[0].BellSiphon == nil {
				continue
			}
			out := swap(r, about(f, line, f.At), to)
			for i := range out {
				out[i].text = strings.Replace(out[i].text, "the whole line", "the standpipe of the siphon and the line below it", 1)
			}
			return out
		}
		return nil
	}
}

// height is the height above the datum of a place in a vessel.
func height(v *system.Vessel, at float64) (float64, bool) {
	z, given := v.StandsAt.SI()
	return z + at, given
}
