package making

import (
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

var supportFacts = []working.FactDefinition{
	{Name: "held_outside", Title: "whether the pipe outside a wall seal is held within 300 mm", Words: []string{"yes", "no"}, Of: "each pipe through a rubber wall seal"},
	{Name: "held_inside", Title: "whether the pipe inside a wall seal is held, or ends, within 300 mm", Words: []string{"yes", "no"}, Of: "each pipe through a rubber wall seal"},
}

var supportSets = []working.Named{
	{Name: "sealed_pipes_outside", Title: "pipes that go on outside a rubber wall seal"},
	{Name: "sealed_pipes_inside", Title: "pipes that go on inside a rubber wall seal"},
}

// nearSeal is how near to a rubber seal a clip stands, m.
const nearSeal = 0.3

// supports enters what holds the pipe on each side of a rubber wall seal.
func (v *surveyor) supports() {
	for _, set := range supportSets {
		v.l.Put(set.Name)
	}
	for _, line := range v.Lines {
		for i, p := range line.Pieces {
			if p.Through == nil || p.Through.Seal != "seal" || !p.Through.WallOf.Given() || p.Through.Vessel == nil {
				continue
			}
			before := []*system.Piece{}
			for j := i - 1; j >= 0; j-- {
				before = append(before, line.Pieces[j])
			}
			for _, side := range [][]*system.Piece{before, line.Pieces[i+1:]} {
				if len(side) == 0 {
					continue
				}
				name, set := "held_outside", "sealed_pipes_outside"
				if side[0].In == p.Through.Vessel {
					name, set = "held_inside", "sealed_pipes_inside"
				}
				word, missing := v.held(line, side)
				v.l.Put(set, p.ID())
				v.l.Note(working.Fact{Subject: p.ID(), Name: name, Word: word, At: side[0].Pointer, Missing: missing})
			}
		}
	}
}

// held says what holds the pipe that goes on from a wall: a clip, another wall or a rim, or that it ends before
// its own length can pull. Where pipe within reach does not say whether it is clipped, that is missing.
func (v *surveyor) held(line *system.Line, side []*system.Piece) (word string, missing []string) {
	if every, given := v.Number(line.Pointer+"/clips_every", quantity.Length).SI(); given && every <= nearSeal {
		return "yes", nil
	}
	way, unsaid := 0.0, []string{}
	for _, p := range side {
		if way > nearSeal {
			if len(unsaid) > 0 {
				return "", unsaid
			}
			return "no", nil
		}
		switch p.Kind {
		case "through", "over", "outlet", "intake", "cuff", "hose", "floor_drain", "standpipe", "pump":
			return "yes", nil
		case "across", "rise", "fall", "slope", "bend", "sweep", "tee", "valve":
			on, given := v.Switch(p.Value + "/clipped").On()
			if on {
				return "yes", nil
			}
			if !given && p.Run != nil {
				unsaid = append(unsaid, p.Value+"/clipped")
			}
		}
		length, known := p.Length.Value()
		if !known {
			return "", append(unsaid, p.Length.Missing()...)
		}
		way += length
	}
	return "yes", nil
}
