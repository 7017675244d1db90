package making

import (
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// choiceList fills the list of choices: a rubber seal against a bulkhead fitting, for each hole.
func (b *lister) choiceList() {
	b.readPrices()
	for _, line := range b.Lines {
		for _, p := range line.Pieces {
			if p.Through != nil && p.Through.Vessel != nil {
				b.Choices = append(b.Choices, Choice{Hole: p.ID(), Ways: []Way{b.sealWay(p), b.bulkheadWay(p)}})
			}
		}
	}
}

func (b *lister) sealWay(p *system.Piece) Way {
	const none = "the table has no rubber seal for this pipe"
	w := Way{Name: "seal", Chosen: p.Through.Seal == "seal", Cost: b.costOf("seal", p), Gap: b.falls(p),
		Needs: "a wall within the thickness that it grips, and a clip on the pipe close to the wall",
		Risk:  "it takes no pull and no turning: an unclipped pipe works loose"}
	w.Hole, w.WallLeast, w.WallMost = unsaid(none), unsaid(none), unsaid(none)
	outside, ok := takes(p)
	if seal, found := b.t.SealFor(outside); ok && found {
		w.Known = true
		w.Hole = Figure{Value: working.Within(seal.Hole, seal.HoleLeast, seal.HoleMost), Known: true}
		w.WallLeast, w.WallMost = exactly(seal.WallLeast), exactly(seal.WallMost)
	}
	if least := b.Number(p.Value+"/seal/wall_least", quantity.Length); least.Given() {
		w.WallLeast = b.figure(working.File("thinnest wall", least))
	}
	if most := b.Number(p.Value+"/seal/wall_most", quantity.Length); most.Given() {
		w.WallMost = b.figure(working.File("thickest wall", most))
	}
	if w.Chosen {
		w.own(b, p)
	}
	return w
}

func (b *lister) bulkheadWay(p *system.Piece) Way {
	const none = "the table has no bulkhead fitting for this pipe"
	w := Way{Name: "bulkhead", Chosen: p.Through.Seal == "bulkhead", Cost: b.costOf("bulkhead", p), Gap: b.falls(p),
		Needs: "a flat wall as wide as its flange, a hand inside for the nut, and its gasket against the inside of the wall",
		Risk:  "it leaks where the wall is round, and where the nut is drawn so tight that the flange cups"}
	const why = "the tables say nothing of the walls that it takes"
	w.Hole, w.WallLeast, w.WallMost = unsaid(none), unsaid(why), unsaid(why)
	if outside, ok := takes(p); ok {
		if least, most, _, found := b.t.BulkheadHole(b.inchSize(outside)); found {
			w.Known, w.Hole = true, Figure{Value: working.Within(least, least, most), Known: true}
		}
	}
	if w.Chosen {
		w.own(b, p)
	}
	return w
}

// own puts the hole of the file in place of that of the table.
func (w *Way) own(b *lister, p *system.Piece) {
	if p.Through.Hole.Given() {
		w.Hole = b.figure(working.File("hole", p.Through.Hole))
	}
}

// falls is how far a round wall falls away under what sits in a hole: across its lip, else across the hole.
func (b *lister) falls(p *system.Piece) Figure {
	form := p.Through.Vessel.Form.Kind
	if !p.Through.WallOf.Given() || form == "box" {
		return exactly(0)
	}
	lip := b.lip(p)
	if _, ok := lip.Value(); !ok {
		lip = working.File("diameter of the hole", p.Through.Hole)
	}
	return b.figure(working.Step("how far the wall falls away", quantity.Length, "R - sqrt(R^2 - (w/2)^2)", "geometry of the circle", func(x []float64) (float64, string) {
		return Sagitta(x[0], x[1])
	}, working.In("R", b.radius(p)), working.In("w", lip)))
}

// costOf is the price of one seal or bulkhead fitting for the pipe of a hole.
func (b *lister) costOf(part string, p *system.Piece) Money {
	w := sold{part: part}
	if pipe := through(p)[0]; pipe != nil {
		w.pipe = pipe.ID
	}
	price := b.priceFor(w)
	if price == nil || price.per != "" {
		return Money{}
	}
	return times(price.money, 1/float64(price.pack))
}
