package remedy

import (
	"fmt"
	"maps"
	"math"
	"strconv"

	"dryfit/internal/review"
	"dryfit/internal/system"
)

func init() {
	maps.Copy(exchanges, map[string]func(*review.Review, *review.Finding, string) []proposal{
		"guard":      guard,
		"more_slots": moreSlots,
		"raise_pump": raisePump,
	})
}

const (
	slotWidth  = 0.008 // metres, where the bore allows it
	slotLength = 0.030
	slotsLeast = 24
)

// guard puts a slotted cap that comes off over the mouth of a line, with far more open area than the bore has.
func guard(r *review.Review, f *review.Finding, _ string) []proposal {
	p := piece(r, f)
	if p == nil || p.Intake == nil && p.Standpipe == nil || p.Pipe == nil || p.Pipe.Inside <= 0 {
		return nil
	}
	d := p.Pipe.Inside
	width := math.Min(slotWidth, math.Floor(0.2*d*1000)/1000)
	if width <= 0 {
		return nil
	}
	n := max(slotsLeast, int(math.Ceil(6*math.Pi/4*d*d/(width*slotLength))))
	return one(fmt.Sprintf("a guard that pulls off, with %d slots of %s by %s: six times the area of the bore or more", n, mm(width), mm(slotLength)),
		p.Value+"/guard", system.Map{{Key: "slots", Value: n}, {Key: "width", Value: mm(width)}, {Key: "length", Value: mm(slotLength)}, {Key: "comes_off", Value: true}})
}

// moreSlots gives a guard as many openings as bring the water under its limit.
func moreSlots(r *review.Review, f *review.Finding, _ string) []proposal {
	have, given := r.System.Document.Text(f.At)
	n, err := strconv.Atoi(have)
	if !given || err != nil || f.Limit.Most == nil || *f.Limit.Most <= 0 {
		return nil
	}
	more := int(math.Ceil(float64(n) * f.Value.X / *f.Limit.Most * 1.05))
	return one(fmt.Sprintf("%d openings in the guard in place of %d", more, n), f.At, more)
}

// raisePump stands a pump so high in its tank that it draws air while half of the water is left.
func raisePump(r *review.Review, f *review.Finding, _ string) []proposal {
	p := piece(r, f)
	if p == nil || p.Pump == nil || f.Limit.Least == nil || f.Value.X <= 0 {
		return nil
	}
	dry, given := p.Pump.DryBelow.SI()
	if !given {
		return nil
	}
	by := math.Ceil((*f.Limit.Least/f.Value.X*dry*1.02-dry)*200) / 200
	edits := []system.Edit{{Op: system.Set, Pointer: p.Pump.DryBelow.Pointer(), Value: mm(dry + by)}}
	if first := p.Line.Pieces[0]; first.Intake != nil {
		if at, ok := first.Intake.At.SI(); ok {
			edits = append(edits, system.Edit{Op: system.Set, Pointer: first.Intake.At.Pointer(), Value: mm(at + by)})
		}
	}
	return []proposal{{text: "stand the pump " + mm(by) + " higher, on a block, so that it draws air from " + mm(dry+by) + " down", edits: edits}}
}
