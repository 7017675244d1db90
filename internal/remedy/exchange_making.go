package remedy

import (
	"fmt"
	"maps"
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/tables"
)

func init() {
	maps.Copy(exchanges, map[string]func(*review.Review, *review.Finding, string) []proposal{
		"fit_to_pipe":       fitToPipe,
		"hole_for_pipe":     holeForPipe,
		"bulkhead_for_seal": bulkheadForSeal,
		"seal_for_bulkhead": sealForBulkhead,
		"saddle":            saddle,
		"longer_run":        longerRun,
		"joint_cemented":    jointCemented,
		"clip":              clip,
		"turn_round":        turnRound,
	})
}

// fitToPipe swaps a seal or a cuff for one that is made for the pipe, or a pipe for the one before it.
func fitToPipe(r *review.Review, f *review.Finding, _ string) []proposal {
	p := piece(r, f)
	if p == nil || p.Pipe == nil {
		return nil
	}
	switch {
	case p.Through != nil && p.Through.Seal == "seal":
		seal, ok := tables.Embedded().SealFor(p.Pipe.Outside)
		if !ok {
			return nil
		}
		return []proposal{{
			text: fmt.Sprintf("a seal made for pipe of %s outside, the pipe that goes through it; it wants a hole of %s", mm(seal.Outside), mm(seal.Hole)),
			edits: []system.Edit{
				{Op: system.Set, Pointer: p.Value + "/seal/outside", Value: mm(seal.Outside)},
				{Op: system.Set, Pointer: p.Through.Hole.Pointer(), Value: mm(seal.Hole)},
			},
		}}
	case p.Cuff != nil:
		inside := mm(math.Round(p.Pipe.Outside*1000) / 1000)
		return []proposal{{
			text:  "a cuff of " + inside + " inside, which fits the pipe that it goes over",
			edits: []system.Edit{{Op: system.Set, Pointer: p.Cuff.Inside.Pointer(), Value: inside}},
		}}
	case p.Made.Given():
		return []proposal{{
			text:  "this piece of the same pipe as the one before it; where the size must change, a reducer or an adapter made for both",
			edits: []system.Edit{{Op: system.Delete, Pointer: p.Made.Pointer()}},
		}}
	}
	return nil
}

// holeForPipe gives a hole the size that the seal or fitting of its pipe wants.
func holeForPipe(r *review.Review, f *review.Finding, _ string) []proposal {
	p := piece(r, f)
	if p == nil || p.Through == nil || p.Pipe == nil {
		return nil
	}
	t := tables.Embedded()
	hole, ok := holeFor(t, p.Through.Seal, p.Pipe.Outside)
	if !ok {
		return nil
	}
	saw := t.SawFor(hole)
	text := "a hole of " + mm(hole) + " in place of " + p.Through.Hole.Text() + "; the hole saw for it is one of " + mm(saw.Size)
	if saw.Inch != "" {
		text += " (" + saw.Inch + ")"
	}
	return []proposal{{
		text:  text + ". If the hole is cut already, a patch welded or bolted over it, and a new hole beside it",
		edits: []system.Edit{{Op: system.Set, Pointer: p.Through.Hole.Pointer(), Value: mm(hole)}},
	}}
}

func holeFor(t *tables.Tables, way string, outside float64) (float64, bool) {
	if way == "seal" {
		seal, ok := t.SealFor(outside)
		return seal.Hole, ok
	}
	for _, pipe := range t.PipesOf("ASTM D1785", "Sch 40") {
		if math.Abs(pipe.Outside-outside) <= 0.001 {
			b, ok := t.Bulkhead(pipe.Size, "Sch 40")
			return b.Hole, ok
		}
	}
	return 0, false
}

// Of a bulkhead fitting that is offered: how far its flange reaches beyond the hole on each side, and its gasket, m.
const flangeBeyond, gasket = 0.017, 0.005

// bulkheadForSeal swaps a rubber seal for a bulkhead fitting, which grips a wall of any thickness.
func bulkheadForSeal(r *review.Review, f *review.Finding, _ string) []proposal {
	p := piece(r, f)
	if p == nil || p.Through == nil || p.Pipe == nil {
		return nil
	}
	hole, ok := holeFor(tables.Embedded(), "bulkhead", p.Pipe.Outside)
	if !ok {
		return nil
	}
	return []proposal{{
		text: "a bulkhead fitting in place of the seal, with a hole of " + mm(hole) + " and a thick gasket: it grips a thin wall too, but the wall must be flat. Or another place, where the wall suits the seal",
		edits: []system.Edit{
			{Op: system.Delete, Pointer: p.Value + "/seal"},
			{Op: system.Set, Pointer: p.Value + "/bulkhead", Value: system.Map{
				{Key: "hole", Value: mm(hole)}, {Key: "flange", Value: mm(hole + 2*flangeBeyond)}, {Key: "gasket", Value: mm(gasket)}}},
		},
	}}
}

// sealForBulkhead swaps a bulkhead fitting for a rubber seal, which bends with the wall.
func sealForBulkhead(r *review.Review, f *review.Finding, _ string) []proposal {
	p := piece(r, f)
	if p == nil || p.Through == nil || p.Pipe == nil {
		return nil
	}
	seal, ok := tables.Embedded().SealFor(p.Pipe.Outside)
	if !ok {
		return nil
	}
	return []proposal{{
		text: "a rubber seal for pipe of " + mm(seal.Outside) + " in a hole of " + mm(seal.Hole) + " in place of the bulkhead fitting: it bends with the wall. It takes no pull, so clip the pipe",
		edits: []system.Edit{
			{Op: system.Delete, Pointer: p.Value + "/bulkhead"},
			{Op: system.Set, Pointer: p.Value + "/seal", Value: system.Map{{Key: "hole", Value: mm(seal.Hole)}, {Key: "outside", Value: mm(seal.Outside)}}},
		},
	}}
}

// saddle fills the gap under a flange.
func saddle(r *review.Review, f *review.Finding, _ string) []proposal {
	p := piece(r, f)
	if p == nil || p.Through == nil {
		return nil
	}
	return one("a curved washer (saddle) under the flange, cut to the round of the wall", p.Value+"/bulkhead/saddle", true)
}

// longerRun gives a straight run the length that its fittings want, to the next 5 mm.
func longerRun(r *review.Review, f *review.Finding, _ string) []proposal {
	p := piece(r, f)
	if p == nil || p.Run == nil || p.Run.Fit || !p.Run.Length.Given() {
		return nil
	}
	length, ok := p.Length.Value()
	if !ok {
		return nil
	}
	longer := mm(math.Ceil((length-f.Value.X)/0.005-1e-9) * 0.005)
	return one("make the run "+longer+" long, centre to centre, in place of "+p.Run.Length.Text()+", so that both fittings get their pipe", p.Run.Length.Pointer(), longer)
}

// jointCemented cements a joint.
func jointCemented(r *review.Review, f *review.Finding, _ string) []proposal {
	p := piece(r, f)
	if p == nil || !p.Joint.Given() {
		return nil
	}
	return one("cement this joint; where it must come apart, put a union beside it", p.Joint.Pointer(), "cemented")
}

// clip holds the pipe next to a wall seal, on the side that the finding names.
func clip(r *review.Review, f *review.Finding, _ string) []proposal {
	line := r.System.Line(f.Part())
	if line == nil {
		return nil
	}
	for _, p := range line.Pieces {
		if p.Pointer != f.At || p.Run == nil {
			continue
		}
		edit := system.Edit{Op: system.Set, Pointer: p.Value + "/clipped", Value: true}
		if p.Run.Length.Pointer() == p.Value { // the short form: a length alone
			edit = system.Edit{Op: system.Set, Pointer: p.Value, Value: system.Map{{Key: "length", Value: p.Run.Length.Text()}, {Key: "clipped", Value: true}}}
		}
		return []proposal{{text: "a clip on the " + p.Kind + " next to the wall, within 300 mm of it", edits: []system.Edit{edit}}}
	}
	return nil
}

// turnRound moves a hole round its wall to where the other holes are farthest off, in steps of 15 degrees.
func turnRound(r *review.Review, f *review.Finding, _ string) []proposal {
	p := piece(r, f)
	if p == nil || p.Through == nil {
		return nil
	}
	at := p.Value + "/round"
	now, given := r.System.Number(at, quantity.Angle).SI()
	if !given {
		return nil
	}
	var others []float64
	for _, line := range r.System.Lines {
		for _, o := range line.Pieces {
			if o.Through == nil || o.Through.Vessel != p.Through.Vessel || !o.Through.WallOf.Given() || o == p {
				continue
			}
			if round, given := r.System.Number(o.Value+"/round", quantity.Angle).SI(); given {
				others = append(others, round)
			}
		}
	}
	best, room := now, 0.0
	for step := range 24 {
		round, nearest := float64(step)*math.Pi/12, math.Pi
		for _, o := range others {
			nearest = math.Min(nearest, apartRound(round, o))
		}
		if nearest > room+1e-9 || math.Abs(nearest-room) <= 1e-9 && apartRound(round, now) < apartRound(best, now) {
			best, room = round, nearest
		}
	}
	to := fmt.Sprintf("%.0f deg", best*180/math.Pi)
	return one("move the hole round the wall, from "+r.System.Word(at).Text()+" to "+to+", away from the other holes", at, to)
}

// apartRound is the angle between two places round a wall, at most half a turn.
func apartRound(a, b float64) float64 {
	return math.Abs(math.Remainder(a-b, 2*math.Pi))
}
