package remedy

import (
	"fmt"
	"maps"
	"math"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/tables"
)

func init() {
	maps.Copy(exchanges, map[string]func(*review.Review, *review.Finding, string) []proposal{
		"into_the_well":  intoTheWell,
		"face_up":        faceUp,
		"wider_well":     widerWell,
		"fewer_notches":  fewerNotches,
		"clip_outside":   clipOutside,
		"raise_drain":    raiseDrain,
		"stir":           stir,
		"cap_the_end":    capTheEnd,
		"dry_valve":      dryValve,
		"locked_lid":     lockedLid,
		"well_lifts_out": wellLiftsOut,
		"long_brush":     longBrush,
	})
}

// one is a swap that is a single value.
func one(text, pointer string, value any) []proposal {
	return []proposal{{text: text, edits: []system.Edit{{Op: system.Set, Pointer: pointer, Value: value}}}}
}

// intoTheWell ends a line inside the inlet well of its settler.
func intoTheWell(r *review.Review, f *review.Finding, _ string) []proposal {
	line := r.System.Line(f.Subject)
	if line == nil || line.To.Vessel == nil || line.To.Vessel.Well == nil || line.To.Part == "well" {
		return nil
	}
	return one("lead the line into the inlet well of "+line.To.Vessel.ID, line.Pointer+"/to", line.To.Vessel.ID+".well")
}

// faceUp turns the open end of a line up.
func faceUp(r *review.Review, f *review.Finding, _ string) []proposal {
	p := last(r, f)
	if p == nil || p.Outlet == nil {
		return nil
	}
	return one("turn the mouth of the inlet up", p.Outlet.Facing.Pointer(), "up")
}

// last is the last piece of the line that a finding is about.
func last(r *review.Review, f *review.Finding) *system.Piece {
	line := r.System.Line(f.Part())
	if line == nil || len(line.Pieces) == 0 {
		return nil
	}
	return line.Pieces[len(line.Pieces)-1]
}

// widerWell makes the inlet well of the next real pipes, of the standard of the
// line into it, in which the water is slow enough.
func widerWell(r *review.Review, f *review.Finding, _ string) []proposal {
	v := r.System.Vessel(f.Subject)
	if v == nil || v.Well == nil || f.Node == nil || f.Limit.Most == nil {
		return nil
	}
	t := tables.Embedded()
	var out []proposal
	for _, line := range r.System.LinesInto(v) {
		if len(line.Pieces) == 0 || line.Pieces[0].Pipe == nil {
			continue
		}
		pipe := line.Pieces[0].Pipe
		row, ok := t.Pipe(pipe.Standard.Text(), pipe.Class.Text(), pipe.Size.Text())
		for row, ok = next(t, row, ok); ok; row, ok = next(t, row, ok) {
			speed, gaps, err := r.Ledger.Again(f.Node.Address, v.Well.Inside.Pointer(), row.Inside)
			if err != nil || len(gaps) > 0 || speed.X > *f.Limit.Most {
				continue
			}
			out = append(out, proposal{
				text: fmt.Sprintf("make the inlet well of %s %s %s: %s inside, %s outside", row.Standard, row.Class, row.Size, mm(row.Inside), mm(row.Outside)),
				edits: []system.Edit{
					{Op: system.Set, Pointer: v.Well.Outside.Pointer(), Value: mm(row.Outside)},
					{Op: system.Set, Pointer: v.Well.Inside.Pointer(), Value: mm(row.Inside)},
				},
			})
		}
	}
	return out
}

// fewerNotches takes notches out of a ring until the water over the rest stands
// deep enough; a plain ring or rim becomes a notched one.
func fewerNotches(r *review.Review, f *review.Finding, _ string) []proposal {
	v := r.System.Vessel(f.Subject)
	if v == nil || v.Weir == nil {
		return nil
	}
	w := v.Weir
	var out []proposal
	if w.Kind == "notched_ring" {
		n, given := w.Notches.SI()
		if !given || f.Node == nil || f.Limit.Least == nil {
			return nil
		}
		for n--; n >= 4; n-- {
			x, gaps, err := r.Ledger.Again(f.Node.Address, w.Notches.Pointer(), n)
			if err == nil && len(gaps) == 0 && x.X >= *f.Limit.Least*(1+spare) {
				return one(fmt.Sprintf("cut %.0f notches and not %s: the water over each of them stands deeper", n, w.Notches.Text()), w.Notches.Pointer(), int(n))
			}
		}
		return nil
	}
	across, at := w.Across, w.CrestAt
	if !across.Given() {
		across = v.Form.Inside
	}
	if !across.Given() || !at.Given() {
		return nil
	}
	for _, n := range []int{24, 16, 12, 8, 6} {
		out = append(out, one(fmt.Sprintf("cut %d V notches of 90 degrees into the edge, their points where its crest is now", n), v.Pointer+"/weir",
			system.Map{{Key: "notched_ring", Value: system.Map{
				{Key: "across", Value: across.Text()}, {Key: "crest_at", Value: at.Text()}, {Key: "notches", Value: n}, {Key: "angle", Value: "90 deg"}}}})...)
	}
	return out
}

// clipOutside clips the pipe that follows the wall behind a cuff.
func clipOutside(r *review.Review, f *review.Finding, _ string) []proposal {
	line := r.System.Line(f.Part())
	through := r.Ledger.Relations["wall_of_drain"][f.Subject]
	if line == nil || len(through) == 0 {
		return nil
	}
	for i, p := range line.Pieces {
		if p.ID() != through[0] || i+1 >= len(line.Pieces) || line.Pieces[i+1].Run == nil {
			continue
		}
		const text = "clip the pipe outside, close to the wall, so that the seal does not turn under the push of the cuff"
		run := line.Pieces[i+1]
		if r.System.Document.Has(run.Value + "/length") {
			return one(text, run.Value+"/clipped", true)
		}
		return one(text, run.Pointer, system.Map{{Key: run.Kind, Value: system.Map{{Key: "length", Value: run.Run.Length.Text()}, {Key: "clipped", Value: true}}}})
	}
	return nil
}

// raiseDrain sets the stand-off of a drain inside the limit; its tail and the hole
// that its cuff leads to come up or down with it, so that the push stays as it is.
func raiseDrain(r *review.Review, f *review.Finding, _ string) []proposal {
	p := piece(r, f)
	if p == nil || p.FloorDrain == nil || p.Pipe == nil {
		return nil
	}
	d := p.FloorDrain
	now, given := d.Standoff.SI()
	if !given || now <= 0 || f.Value.X <= 0 {
		return nil
	}
	var then float64
	switch {
	case f.Limit.Least != nil: // open area over bore, in proportion to the stand-off
		then = math.Ceil(*f.Limit.Least*now/f.Value.X*1000) / 1000
	case f.Limit.Most != nil: // stand-off and lift over bore
		then = math.Floor((now-(f.Value.X-*f.Limit.Most)*p.Pipe.Inside)*1000) / 1000
	}
	if then <= 0 {
		return nil
	}
	edits := []system.Edit{{Op: system.Set, Pointer: d.Standoff.Pointer(), Value: mm(then)}}
	follow := []string{}
	shift := func(n system.Number, what string) {
		if x, given := n.SI(); given {
			edits = append(edits, system.Edit{Op: system.Set, Pointer: n.Pointer(), Value: mm(x + then - now)})
			follow = append(follow, what)
		}
	}
	shift(d.TailAt, "its tail")
	if through := r.Ledger.Relations["wall_of_drain"][f.Subject]; len(through) > 0 {
		for _, wall := range p.Line.Pieces {
			if wall.ID() == through[0] && wall.Through != nil {
				shift(wall.Through.At, "the hole in the wall")
			}
		}
	}
	text := "stand the drain " + mm(then) + " off the floor, not " + d.Standoff.Text()
	if len(follow) > 0 {
		way := "higher"
		if then < now {
			way = "lower"
		}
		text += "; " + strings.Join(follow, " and ") + " come " + mm(math.Abs(then-now)) + " " + way + " with it"
	}
	return []proposal{{text: text, edits: edits}}
}

func stir(_ *review.Review, f *review.Finding, _ string) []proposal {
	return one("stir the sludge towards the drain with a brush or paddle while it empties", "/vessels/"+f.Subject+"/cleaning/stirred", true)
}

// capTheEnd closes the open end of a drain while it is not in use.
func capTheEnd(r *review.Review, f *review.Finding, _ string) []proposal {
	p := last(r, f)
	if p == nil || p.Outlet == nil {
		return nil
	}
	size := "its pipe"
	if p.Pipe != nil {
		size = p.Pipe.ID + " (" + mm(p.Pipe.Outside) + " outside)"
	}
	return one("a threaded cap on the end of "+size+", whose thread also takes a hose", p.Outlet.Cap.Pointer(), "threaded")
}

// dryValve puts the valve of a drain where the hand that turns it stays dry.
func dryValve(r *review.Review, f *review.Finding, _ string) []proposal {
	line := r.System.Line(f.Part())
	if line == nil {
		return nil
	}
	for _, p := range line.Pieces {
		if p.Valve == nil {
			continue
		}
		const text = "put the valve outside, where the hand that turns it stays dry"
		if !r.System.Document.Has(p.Value+"/kind") && !r.System.Document.Has(p.Value+"/open") {
			return one(text, p.Pointer, system.Map{{Key: "valve", Value: system.Map{{Key: "kind", Value: p.Valve.Kind.Text()}, {Key: "reached", Value: "dry-handed"}}}})
		}
		return one(text, p.Value+"/reached", "dry-handed")
	}
	return nil
}

func lockedLid(_ *review.Review, f *review.Finding, _ string) []proposal {
	return one("hold the lid with a lock in place of screws", "/vessels/"+f.Subject+"/lid/fixed", "locked")
}

func wellLiftsOut(_ *review.Review, f *review.Finding, _ string) []proposal {
	return one("hang the inlet well on open hooks or slots, so that it lifts out", "/vessels/"+f.Subject+"/well/comes_out", true)
}

func longBrush(r *review.Review, f *review.Finding, _ string) []proposal {
	height := ""
	if v := r.System.Vessel(f.Subject); v != nil && v.Form.Height.Given() {
		x, _ := v.Form.Height.SI()
		height = ", its handle longer than " + quantity.Format(quantity.Length, x, quantity.Metric)
	}
	return one("keep a brush on a long handle beside the settler"+height, "/vessels/"+f.Subject+"/cleaning/tool", "brush on a long handle")
}
