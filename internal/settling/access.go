package settling

import (
	"slices"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

var accessQuantities = []working.Definition{
	{Name: "ring_clear", Title: "clear width between the well and what stands round it", Symbol: "c", Kind: quantity.Length, Of: "each radial-flow settler",
		Formula: "(D - d)/2, D the settler or the ring in it", Source: "geometry", Sure: "derived"},
	{Name: "reach_to_floor", Title: "reach from the rim down to the floor", Symbol: "H", Kind: quantity.Length, Of: "each radial-flow settler",
		Formula: "height of the rim", Source: "geometry", Sure: "derived"},
}

var accessFacts = []working.FactDefinition{
	{Name: "lid_comes_off", Title: "whether the lid opens without a tool", Words: []string{"yes", "no"}, Of: "each radial-flow settler"},
	{Name: "long_tool", Title: "whether a tool to clean it with is named", Words: []string{"yes", "no"}, Of: "each radial-flow settler"},
	{Name: "well_comes_out", Title: "whether the inlet well lifts out without cutting", Words: []string{"yes", "no"}, Of: "each radial-flow settler"},
	{Name: "drain_comes_out", Title: "whether the drain on the floor comes out without cutting", Words: []string{"yes", "no", "none"}, Of: "each radial-flow settler"},
	{Name: "draw_down_comes_out", Title: "whether the draw-down pipe comes out without cutting", Words: []string{"yes", "no", "none"}, Of: "each radial-flow settler"},
}

// access enters what a hand or a brush can get at.
func (b basin) access() {
	across, at := []working.Input{working.In("D", working.File("inside diameter of the settler", b.v.Form.Inside))}, b.v.Form.Inside.Pointer()
	if b.ring() {
		across = append(across, working.In("D", working.File("diameter of the ring", b.v.Weir.Across)))
		at = b.v.Weir.Across.Pointer()
	}
	clear := working.In("D", working.Step("least diameter round the well", quantity.Length, "the lesser of settler and ring", "geometry", least, across...))
	b.work("ring_clear", at, func(x []float64) (float64, string) { return (x[0] - x[1]) / 2, "" }, clear,
		working.In("d", working.File("outside diameter of the well", b.well.Outside)))
	b.work("reach_to_floor", b.v.Form.Height.Pointer(), func(x []float64) (float64, string) { return x[0], "" },
		working.In("H", working.File("height of the rim above the inner floor", b.v.Form.Height)))

	tool := b.s.Word(b.v.Pointer + "/cleaning/tool")
	if _, named := tool.Value(); named {
		b.note("long_tool", tool.Pointer(), "yes")
	} else {
		b.note("long_tool", tool.Pointer(), "no") // none named is none at hand
	}
	b.lid()

	word, missing := switched(b.well.ComesOut)
	b.note("well_comes_out", b.well.ComesOut.Pointer(), word, missing...)
	b.drainOut()
	b.drawDownOut()
}

func (b basin) lid() {
	fixed := b.s.Word(b.v.Pointer + "/lid/fixed")
	how, given := fixed.Value()
	open := b.v.Lid.Is("none") || b.s.Word(b.v.Pointer+"/lid").Is("none")
	switch {
	case open:
		b.note("lid_comes_off", fixed.Pointer(), "yes")
	case given:
		b.note("lid_comes_off", fixed.Pointer(), yesNo(how != "screwed"))
	default:
		b.note("lid_comes_off", fixed.Pointer(), "", fixed.Pointer())
	}
}

// drainOut enters whether every drain on the floor can be taken out.
func (b basin) drainOut() {
	word, at := "none", b.v.Pointer
	var missing []string
	for _, line := range b.s.Lines {
		if line.From.Vessel != b.v || len(line.Pieces) == 0 || line.Pieces[0].FloorDrain == nil {
			continue
		}
		p := line.Pieces[0]
		held := b.s.Word(p.Value + "/held_by")
		how, given := held.Value()
		cuffed := len(line.Pieces) > 1 && line.Pieces[1].Cuff != nil
		switch {
		case given && how == "cement":
			b.note("drain_comes_out", held.Pointer(), "no")
			return
		case given || cuffed:
			if word == "none" {
				word, at = "yes", held.Pointer()
			}
		default:
			word, at, missing = "", held.Pointer(), append(missing, held.Pointer())
		}
	}
	b.note("drain_comes_out", at, word, missing...)
}

// loose are the joints that come apart and go together again without cutting.
var loose = []string{"pinned", "uncemented", "ring-seal", "cuff", "compression", "clamped", "bolted"}

// drawDownOut enters whether the part of the draw-down that stands in the settler can
// be taken out: some joint up to the crossing of its rim or wall has to come apart.
func (b basin) drawDownOut() {
	word, at := "none", b.v.Pointer
	for _, line := range b.s.Lines {
		if line.From.Vessel != b.v || line.Duty != "draw-down" {
			continue
		}
		at = line.Joints.Pointer()
		one, missing := comesApart(line, b.v)
		if one != "yes" {
			b.note("draw_down_comes_out", at, one, missing...)
			return
		}
		word = "yes"
	}
	b.note("draw_down_comes_out", at, word)
}

func comesApart(line *system.Line, v *system.Vessel) (word string, missing []string) {
	for _, p := range line.Pieces {
		joint, given := p.Joint.Value()
		switch {
		case p.Kind == "union" || p.Cuff != nil || p.Hose != nil || given && slices.Contains(loose, joint):
			return "yes", nil
		case !given:
			missing = []string{line.Joints.Pointer()}
		}
		if p.In != v && p.Through == nil && p.Over == nil {
			break // the first piece outside: its joint with what stands inside still counts
		}
	}
	if missing != nil {
		return "", missing
	}
	return "no", nil
}
