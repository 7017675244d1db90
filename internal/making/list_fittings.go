package making

import (
	"math"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
)

// lineParts enters the fittings of a line, what seals its holes and what holds it.
func (b *lister) lineParts(line *system.Line) {
	n := float64(b.alike(line))
	for _, p := range line.Pieces {
		b.fitting(p, n)
		b.onPiece(p, n)
	}
	b.clips(line, n)
}

// made is the pipe of a piece as a shop knows it: standard and size; its id where it has none.
func made(p *system.Pipe) string {
	switch {
	case p == nil:
		return ""
	case p.Standard.Given() && p.Size.Given():
		return p.Standard.Text() + " " + p.Size.Text()
	}
	return p.ID
}

// fitting enters a piece that is bought, or made, as one thing.
func (b *lister) fitting(p *system.Piece, n float64) {
	part := Part{Name: plain(p), Spec: made(p.Pipe), Use: p.Line.ID, Step: stepPipes, Count: n, At: p.Pointer}
	s := sold{part: strings.ReplaceAll(p.Kind, "_", "-")}
	if p.Pipe != nil {
		s.pipe = p.Pipe.ID
	}
	switch {
	case p.Bend != nil:
		s.angle, _ = p.Bend.Angle.SI()
		part.Spec = join(p.Bend.Angle.Text(), part.Spec)
		if p.Kind == "bend" && s.angle > 80*math.Pi/180 && p.Line.Carries.Is("solids") {
			part.Alternatives = []string{"two bends of 45 deg with pipe between them"}
		}
	case p.Tee != nil:
		part.Count *= float64(b.count(p.Value + "/count"))
	case p.Valve != nil:
		s.kind, _ = p.Valve.Kind.Value()
		part.Spec = join(spoken(s.kind), part.Spec)
		if word, given := p.Valve.Locked.Value(); given {
			part.Spec = join(part.Spec, "with a lock to hold it "+word)
		}
	case p.Kind == "check_valve":
		s.kind, _ = b.Word(p.Value + "/kind").Value()
		part.Spec = join(s.kind, part.Spec)
	case p.Kind == "reducer":
		part.Spec = join(part.Spec, "to "+made(p.ReducesTo))
	case p.Through != nil:
		b.sealing(p, part, s)
		return
	case p.FloorDrain != nil:
		part.Step, part.Got, s.part = stepInside, Make, "other"
		part.Spec = join(part.Spec, b.texts(p.Value, "flange")+" flange")
		if p.FloorDrain.Fixings != nil {
			b.fixingPart(p.FloorDrain.Fixings, p.Line.ID, n)
		}
	case p.Cuff != nil:
		part.Spec = join(b.texts(p.Value, "inside")+" inside", b.texts(p.Value, "hardness"))
		b.clampPart(p, p.Cuff.Clamps, n)
	case p.Hose != nil:
		if length, given := p.Hose.Length.SI(); given {
			part.Length, s.length = length, n*length
		}
		part.Spec = b.texts(p.Value, "inside")
		b.clampPart(p, p.Hose.Clamps, n)
	case p.BellSiphon != nil:
		part.Name, part.Step, part.Got, s.part = "bell", stepInside, Make, "other"
		part.Spec = b.texts(p.Value+"/bell", "inside") + " inside"
	case p.Kind == "device":
		s.kind, _ = b.Word(p.Value + "/kind").Value()
		part.Name, part.Spec = spoken(s.kind), join(part.Spec, b.texts(p.Value, "draws"))
	case p.Kind == "union", p.Kind == "clean_out", p.Kind == "cap":
	default:
		return // pipe, open ends, rims, pumps
	}
	b.add(part, s)
}

// sealing enters what seals a hole, with what may stand in its place.
func (b *lister) sealing(p *system.Piece, part Part, s sold) {
	seal := p.Through.Seal
	if seal == "" {
		return
	}
	pipe := through(p)[0]
	if pipe != nil {
		s.pipe = pipe.ID
	}
	s.part, part.Step = seal, stepHoles
	part.Name = map[string]string{"seal": "rubber wall seal", "bulkhead": "bulkhead fitting"}[seal]
	part.Spec = join("for "+made(pipe), "hole "+p.Through.Hole.Text())
	other := map[string]string{"seal": "bulkhead", "bulkhead": "seal"}[seal]
	alternative := map[string]string{"bulkhead": "bulkhead fitting, where the wall is flat", "seal": "rubber wall seal, with the pipe clipped"}[other]
	if cost := b.costOf(other, p); cost.Known {
		alternative += ": " + quantity.FormatIn(quantity.Money, cost.Amount, cost.Currency, 0)
	}
	part.Alternatives = []string{alternative}
	if p.Through.Vessel != nil {
		part.Count = math.Max(part.Count, float64(b.count(p.Through.Vessel.Pointer+"/count")))
	}
	b.add(part, s)
}

// clampPart enters the two clamps of a cuff or hose.
func (b *lister) clampPart(p *system.Piece, class system.Word, n float64) {
	word, given := class.Value()
	if !given {
		b.want(class.Pointer())
	}
	if word == "none" {
		return
	}
	b.add(Part{Name: "hose clamp", Spec: word, Use: p.Line.ID, Step: stepPipes, Count: 2 * n, At: class.Pointer()}, sold{part: "clamp", kind: strings.ToLower(word)})
}

// onPiece enters what is put on a piece: guards, caps and nozzles.
func (b *lister) onPiece(p *system.Piece, n float64) {
	part := Part{Spec: made(p.Pipe), Use: p.Line.ID, Step: stepPipes, Count: n}
	s := sold{}
	if p.Pipe != nil {
		s.pipe = p.Pipe.ID
	}
	if at := p.Value + "/guard"; len(b.Keys(at)) > 0 {
		guard, g := part, s
		guard.Name, guard.Got, guard.At, g.part = "guard", Make, at, "guard"
		for _, one := range [][2]string{{"slots", " slots"}, {"holes", " holes"}, {"width", " wide"}, {"mesh", " mesh"}} {
			if text := b.texts(at, one[0]); text != "" {
				guard.Spec = join(guard.Spec, text+one[1])
			}
		}
		if b.priceFor(g) != nil {
			guard.Got = Buy
		}
		b.add(guard, g)
	}
	if word, given := b.Word(p.Value + "/cap").Value(); given && word != "none" {
		lid, c := part, s
		lid.Name, lid.Spec, lid.At, c.part, c.kind = "cap", join(spoken(word), lid.Spec), p.Value+"/cap", "cap", word
		b.add(lid, c)
	}
	if p.Outlet != nil && p.Outlet.Nozzle.Given() {
		tip, c := part, s
		tip.Name, tip.Spec, tip.At, c.part, c.kind = "nozzle", join(p.Outlet.Nozzle.Text()+" bore", tip.Spec), p.Outlet.Nozzle.Pointer(), "other", "nozzle"
		b.add(tip, c)
	}
}

// clips enters the clips of a line: one for each piece that says it is clipped, and as many as its spacing asks.
func (b *lister) clips(line *system.Line, n float64) {
	run := map[*system.Pipe]float64{}
	clipped := map[*system.Pipe]float64{}
	var order []*system.Pipe
	for _, p := range line.Pieces {
		if _, seen := clipped[p.Pipe]; !seen {
			clipped[p.Pipe] = 0
			order = append(order, p.Pipe)
		}
		if on, _ := b.Switch(p.Value + "/clipped").On(); on {
			clipped[p.Pipe]++
		}
		if l, ok := p.Length.Value(); ok && p.Run != nil {
			run[p.Pipe] += l
		}
	}
	every, spaced := b.Number(line.Pointer+"/clips_every", quantity.Length).SI()
	for _, pipe := range order {
		count := clipped[pipe]
		if spaced && every > 0 {
			count = math.Max(count, math.Ceil(run[pipe]/every-1e-9))
		}
		s := sold{part: "clip"}
		if pipe != nil {
			s.pipe = pipe.ID
		}
		b.add(Part{Name: "pipe clip", Spec: made(pipe), Use: line.ID, Step: stepPipes, Count: n * count, At: line.Pointer}, s)
	}
}

// pipeParts enters the stock lengths of each pipe, and the couplings where runs are longer.
func (b *lister) pipeParts() {
	for _, pipe := range b.Pipes {
		have, buy, at := 0.0, 0.0, pipe.Pointer
		for _, bar := range b.Bars {
			if bar.Pipe == pipe.ID && bar.Have {
				have += bar.Stock
			} else if bar.Pipe == pipe.ID {
				buy++
			}
		}
		const use = "all lines"
		if have > 0 {
			b.items = append(b.items, item{Part{Name: "pipe", Spec: made(pipe), Use: use, Step: stepPipes, Count: 1, Length: have, Got: Have, Sum: Money{Known: true}, At: at + "/have"}, sold{}})
		}
		stock := b.stock(pipe)
		b.add(Part{Name: "pipe", Spec: join(made(pipe), pipe.Class.Text()), Use: use, Step: stepPipes, Count: buy, Length: stock, At: at},
			sold{part: "pipe", pipe: pipe.ID, length: buy * stock, own: at})
		b.add(Part{Name: "coupling", Spec: made(pipe), Use: use, Step: stepPipes, Count: float64(b.couplings(pipe)), At: at}, sold{part: "other", pipe: pipe.ID, kind: "coupling"})
	}
}
