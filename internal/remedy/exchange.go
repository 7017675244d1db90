package remedy

import (
	"fmt"
	"math"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/tables"
)

// exchanges are the swaps of parts that a clause may name as a lever.
var exchanges = map[string]func(*review.Review, *review.Finding, string) []proposal{
	"two_45_with_spacer":  twoFortyFives,
	"sweep":               sweep,
	"next_bore":           nextBore,
	"grade":               grade,
	"residual_current_30": residualCurrent,
}

// piece finds the piece that a finding is about.
func piece(r *review.Review, f *review.Finding) *system.Piece {
	line := r.System.Line(f.Part())
	if line == nil {
		return nil
	}
	for _, p := range line.Pieces {
		if p.ID() == f.Subject {
			return p
		}
	}
	return nil
}

// spacerBores is the straight pipe between two bends that replace one, in bores:
// where two bends close together lose least, and room for a brush to turn.
const spacerBores = 2

// twoFortyFives swaps a bend of 90 degrees for two of 45 with a piece of straight
// pipe between them, and takes from the pipe on both sides what the corner gains.
func twoFortyFives(r *review.Review, f *review.Finding, _ string) []proposal {
	p := piece(r, f)
	if p == nil || p.Bend == nil || p.Pipe == nil || math.Abs(p.Turn-math.Pi/2) > 0.02 || p.Index == 0 || p.Index+1 >= len(p.Line.Pieces) {
		return nil
	}
	before, after := p.Line.Pieces[p.Index-1], p.Line.Pieces[p.Index+1]
	side := math.Ceil(spacerBores*p.Pipe.Inside*math.Sqrt2/2/0.005) * 0.005 // along each leg
	bend := system.Map{{Key: "bend", Value: bendOf(p, "45 deg")}}
	var between system.Map
	switch {
	case steep(before) == 0 && steep(after) == 0:
		between = system.Map{{Key: "across", Value: mm(side * math.Sqrt2)}}
	case steep(before)+steep(after) > 0 && (steep(before) == 0 || steep(after) == 0):
		between = slopeOf("rise", side)
	case steep(before)+steep(after) < 0 && (steep(before) == 0 || steep(after) == 0):
		between = slopeOf("fall", side)
	default:
		return nil
	}
	edits, legs := []system.Edit{}, []string{}
	for _, leg := range []*system.Piece{before, after} {
		if e, ok := shorten(leg, side); ok {
			edits = append(edits, e)
			legs = append(legs, "the "+leg.Kind+" of "+leg.Run.Length.Text())
		}
	}
	text := fmt.Sprintf("two bends of 45 degrees in place of this one, %.0f mm apart from centre to centre", side*math.Sqrt2*1000)
	if len(legs) > 0 {
		text += "; take " + mm(side) + " off " + strings.Join(legs, " and ")
	}
	edits = append(edits, system.Edit{Op: system.Splice, Pointer: p.Pointer, Value: []any{bend, between, bend}})
	return []proposal{{
		text:  text,
		edits: edits,
	}}
}

// steep is 1 for pipe that climbs, -1 for pipe that falls, 0 for level pipe.
func steep(p *system.Piece) int {
	switch p.Kind {
	case "rise":
		return 1
	case "fall", "standpipe":
		return -1
	case "outlet":
		switch {
		case p.Outlet.Facing.Text() == "up":
			return 1
		case p.Outlet.Facing.Text() == "down":
			return -1
		}
	}
	return 0
}

// shorten takes a length off a straight piece whose length is stated and long enough.
func shorten(p *system.Piece, by float64) (system.Edit, bool) {
	if p.Run == nil || p.Run.Fit || !p.Run.Length.Given() {
		return system.Edit{}, false
	}
	length, ok := p.Length.Value()
	if !ok || length-by < 0.01 {
		return system.Edit{}, false
	}
	return system.Edit{Op: system.Set, Pointer: p.Run.Length.Pointer(), Value: mm(length - by)}, true
}

func slopeOf(way string, side float64) system.Map {
	return system.Map{{Key: "slope", Value: system.Map{{Key: "angle", Value: "45 deg"}, {Key: way, Value: mm(side)}}}}
}

// bendOf is a bend of another angle with the joint of p.
func bendOf(p *system.Piece, angle string) any {
	if joint := p.Joint; joint.Given() && joint.Text() != "" {
		return system.Map{{Key: "angle", Value: angle}, {Key: "joint", Value: joint.Text()}}
	}
	return angle
}

func mm(metres float64) string { return in(quantity.Length, math.Round(metres*1e4)/1e4, "mm") }

// sweep swaps a bend for a long-radius one.
func sweep(r *review.Review, f *review.Finding, _ string) []proposal {
	p := piece(r, f)
	if p == nil || p.Kind != "bend" {
		return nil
	}
	angle := p.Bend.Angle.Text()
	return []proposal{{
		text:  "a sweep (long-radius bend) of " + angle + " in place of the elbow, its radius at least one and a half bores",
		edits: []system.Edit{{Op: system.Set, Pointer: p.Pointer, Value: system.Map{{Key: "sweep", Value: bendOf(p, angle)}}}},
	}}
}

// nextBore gives the line the next larger pipe of the same standard and class,
// and its rubber wall seals the holes that the larger pipe wants.
func nextBore(r *review.Review, f *review.Finding, _ string) []proposal {
	line := r.System.Line(f.Part())
	if line == nil || len(line.Pieces) == 0 || line.Pieces[0].Pipe == nil {
		return nil
	}
	t, pipe := tables.Embedded(), line.Pieces[0].Pipe
	row, ok := t.Pipe(pipe.Standard.Text(), pipe.Class.Text(), pipe.Size.Text())
	var out []proposal
	for range 3 {
		if row, ok = next(t, row, ok); !ok {
			break
		}
		out = append(out, proposal{
			text:  fmt.Sprintf("%s %s %s for the whole line, %s inside; its wall seals want their own holes", row.Standard, row.Class, row.Size, mm(row.Inside)),
			edits: refit(r.System, t, line, pipe.ID+"-wider", row),
		})
	}
	return out
}

// otherSeal brings what the file says of a wall seal into line with another seal.
func otherSeal(s *system.System, p *system.Piece, seal tables.Seal) []system.Edit {
	var edits []system.Edit
	if at := p.Value + "/seal/outside"; s.Word(at).Given() {
		edits = append(edits, system.Edit{Op: system.Set, Pointer: at, Value: mm(seal.Outside)})
	}
	for _, key := range []string{"lip", "wall_least", "wall_most", "hole_from"} {
		if at := p.Value + "/seal/" + key; s.Word(at).Given() {
			edits = append(edits, system.Edit{Op: system.Delete, Pointer: at})
		}
	}
	return edits
}

func next(t *tables.Tables, row tables.Pipe, ok bool) (tables.Pipe, bool) {
	if !ok {
		return row, false
	}
	return t.NextLarger(row)
}

// grade swaps fixings for another grade.
func grade(_ *review.Review, f *review.Finding, to string) []proposal {
	return []proposal{{
		text:  "fixings of " + to + " for " + strings.ReplaceAll(strings.TrimSuffix(f.Subject, "/fixings"), "/", ", "),
		edits: []system.Edit{{Op: system.Set, Pointer: f.At, Value: to}},
	}}
}

// residualCurrent asks for a device that protects people.
func residualCurrent(_ *review.Review, _ *review.Finding, _ string) []proposal {
	return []proposal{{
		text:  "a residual-current device of 30 mA ahead of everything in the loop, fitted by a licensed electrician",
		edits: []system.Edit{{Op: system.Set, Pointer: "/mains/residual_current", Value: "30 mA"}},
	}}
}
