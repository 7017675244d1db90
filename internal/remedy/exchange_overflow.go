package remedy

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/tables"
)

// The swaps that give a vessel another way out, or a wider one.
func init() {
	maps.Copy(exchanges, map[string]func(*review.Review, *review.Finding, string) []proposal{
		"emergency_overflow": emergencyOverflow,
		"wider_overflow":     widerOverflow,
		"lead_to_garden":     leadToGarden,
	})
}

// Of an overflow that is offered: how far its pipe stays under the rim, how far it
// stands out of the wall, how far its end stays under the rim of the vessel it leads to, m.
const (
	underEdge   = 0.030
	standsOut   = "150 mm"
	endUnderRim = 0.030
	leastDrop   = 0.060
)

// emergencyOverflow gives the vessel judged, or the vessel above the line judged, a
// pipe near its rim that leads to the sump or, where that stands too high, to the garden.
func emergencyOverflow(r *review.Review, f *review.Finding, _ string) []proposal {
	v := r.System.Vessel(f.Part())
	if line := r.System.Line(f.Part()); line != nil {
		v = line.From.Vessel
	}
	if v == nil {
		return nil
	}
	seal, pipe, ok := overflowPipe(r, v)
	rim, tall := v.Form.Height.SI()
	if !ok || !tall {
		return nil
	}
	at := math.Floor((rim-seal.Outside/2-underEdge)/0.005) * 0.005
	if at <= 0 {
		return nil
	}
	through := system.Map{{Key: "wall_of", Value: v.ID}, {Key: "at", Value: mm(at)}}
	if round, ok := free(r.System, v); ok {
		through = append(through, system.Entry{Key: "round", Value: round})
	}
	through = append(through, system.Entry{Key: "seal", Value: system.Map{
		{Key: "hole", Value: mm(seal.Hole)}, {Key: "outside", Value: mm(seal.Outside)}}})
	pieces := []any{}
	if v.Role.Is("fish-tank", "quarantine-tank") {
		pieces = append(pieces, system.Map{{Key: "intake", Value: system.Map{{Key: "at", Value: mm(at)}, {Key: "guard", Value: system.Map{
			{Key: "slots", Value: 60}, {Key: "width", Value: "8 mm"}, {Key: "length", Value: "30 mm"}, {Key: "comes_off", Value: true}}}}}})
	}
	pieces = append(pieces, system.Map{{Key: "through", Value: through}})
	head := system.Map{{Key: "duty", Value: "overflow"}, {Key: "from", Value: v.ID}}
	text := "an overflow of " + pipe + " with its middle " + mm(at) + " above the floor of " + v.ID + ", in a hole of " + mm(seal.Hole)
	to, end := lowerVessel(r, v, at)
	if to != nil {
		head = append(head, system.Entry{Key: "to", Value: to.ID})
		pieces = append(pieces, across(standsOut),
			system.Map{{Key: "bend", Value: "90 deg"}}, system.Map{{Key: "fall", Value: "fit"}},
			system.Map{{Key: "outlet", Value: system.Map{{Key: "at", Value: mm(end)}, {Key: "facing", Value: "down"}}}})
		text += ", that leads to " + to.ID
	} else {
		z, known := height(v, at)
		if !known {
			return nil
		}
		head = append(head, system.Entry{Key: "to", Value: "outside"}, system.Entry{Key: "leads_to", Value: "garden"})
		pieces = append(pieces, across("1 m"), system.Map{{Key: "outlet", Value: system.Map{{Key: "at", Value: mm(z)}, {Key: "facing", Value: "level"}}}})
		text += ", that leads to the garden"
	}
	head = append(head, system.Entry{Key: "pipe", Value: pipe}, system.Entry{Key: "joints", Value: "cemented"}, system.Entry{Key: "pieces", Value: pieces})
	return []proposal{{text: text, edits: []system.Edit{{Op: system.Set, Pointer: "/lines/" + newLine(r.System, v.ID+"-overflow"), Value: head}}}}
}

func across(length string) system.Map {
	return system.Map{{Key: "across", Value: system.Map{{Key: "length", Value: length}, {Key: "clipped", Value: true}}}}
}

// overflowPipe is the widest pipe of the file for which there is a wall seal, first
// of those that lead out of the vessel by gravity.
func overflowPipe(r *review.Review, v *system.Vessel) (tables.Seal, string, bool) {
	t := tables.Embedded()
	var choice []*system.Pipe
	for _, line := range byGravity(r, v) {
		if p := line.Pieces[0].Pipe; p != nil {
			choice = append(choice, p)
		}
	}
	if len(choice) == 0 {
		choice = slices.Clone(r.System.Pipes)
	}
	slices.SortStableFunc(choice, func(a, b *system.Pipe) int { return int(math.Copysign(1, b.Inside-a.Inside)) })
	for _, p := range choice {
		if seal, ok := t.SealFor(p.Outside); ok {
			return seal, p.ID, true
		}
	}
	return tables.Seal{}, "", false
}

// lowerVessel is the vessel with the pump, if it stands low enough to take the
// water of an overflow at a height, and the height of the end of the pipe in it.
func lowerVessel(r *review.Review, v *system.Vessel, at float64) (*system.Vessel, float64) {
	from, known := height(v, at)
	if !known {
		return nil, 0
	}
	for _, id := range r.Ledger.Sets["pump_vessels"] {
		to := r.System.Vessel(id)
		if to == nil || to == v {
			continue
		}
		rim, tall := to.Form.Height.SI()
		end := math.Floor((rim-endUnderRim)/0.005) * 0.005
		if z, known := height(to, end); tall && known && z < from-leastDrop {
			return to, end
		}
	}
	return nil, 0
}

// free is the place round a vessel's wall that is farthest from all its holes, if the file says where they are.
func free(s *system.System, v *system.Vessel) (string, bool) {
	var have []float64
	for _, line := range s.Lines {
		for _, p := range line.Pieces {
			if p.Through == nil || p.Through.Vessel != v || !p.Through.WallOf.Given() {
				continue
			}
			if round, given := s.Number(p.Value+"/round", quantity.Angle).SI(); given {
				have = append(have, round)
			}
		}
	}
	best, room := 0, -1.0
	for step := range 24 {
		nearest := math.Pi
		for _, o := range have {
			nearest = math.Min(nearest, apartRound(float64(step)*math.Pi/12, o))
		}
		if nearest > room+1e-9 {
			best, room = step, nearest
		}
	}
	return fmt.Sprintf("%d deg", 15*best), len(have) > 0
}

// newLine is a name for a line that no line has.
func newLine(s *system.System, name string) string {
	for n := 2; s.Line(name) != nil; n++ {
		name = fmt.Sprintf("%s-%d", name, n)
	}
	return name
}

// widerOverflow gives the overflow of a vessel the next larger pipe.
func widerOverflow(r *review.Review, f *review.Finding, _ string) []proposal {
	v := r.System.Vessel(f.Part())
	if v == nil {
		return nil
	}
	for _, line := range r.System.LinesFrom(v) {
		if line.Duty == "overflow" {
			return nextBore(r, about(f, line, f.At), "")
		}
	}
	return nil
}

// leadToGarden says where the water of an overflow goes.
func leadToGarden(r *review.Review, f *review.Finding, _ string) []proposal {
	line := r.System.Line(f.Part())
	if line == nil {
		return nil
	}
	return one("lead the overflow to the garden, if local rules let water with fish waste go there; else to the sewer", line.Pointer+"/leads_to", "garden")
}
