package site

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

var gapQuantities = []working.Definition{
	{Name: "air_gap", Title: "open air between the outlet of the mains and the spill level", Symbol: "g", Kind: quantity.Length, Of: "each outlet that mains water may come from",
		Formula: "outlet - lowest place of the rim", Source: geometry, Sure: "derived"},
	{Name: "air_gap_needed", Title: "air gap that its bore asks for", Symbol: "gn", Kind: quantity.Length, Of: "each outlet that mains water may come from",
		Formula: "max(25.4 mm, 2 D), beside a wall max(38.1 mm, 3 D)", Source: "ASME A112.1.2, air gaps in plumbing systems", Sure: "from memory"},
	{Name: "air_gap_share", Title: "air gap over the one that is asked for", Symbol: "u", Kind: quantity.Number, Of: "each outlet that mains water may come from",
		Formula: "g/gn", Source: geometry, Sure: "derived"},
}

var gapFacts = []working.FactDefinition{
	{Name: "topup_from", Title: "where the water of the top-up comes from", Words: []string{"store", "mains", "rain", "by-hand"}, Of: "the top-up, and each line from the mains"},
	yesNo("hose_left_in", "whether a hose is ever left with its end in the water", "the top-up, and each line from the mains"),
}

var gapSets = []working.Named{{Name: "water_supplies", Title: "the top-up, and each line from the mains"}}

// AirGapNeeded is the least open air between the outlet of a drinking water pipe
// and the rim below it, so that no dirty water is sucked back into the pipe.
//
//	gap = max(25.4 mm, 2 D)           with no wall near
//	gap = max(38.1 mm, 3 D)           with one wall or more near
//
//	D      inside diameter of the outlet, m, above zero
//	walls  number of walls nearer than four times D, 0 to 4
//
// Source: ASME A112.1.2, Air gaps in plumbing systems, table of minimum air gaps (from memory).
func AirGapNeeded(bore, walls float64) (float64, string) {
	switch {
	case !(bore > 0):
		return math.NaN(), "an outlet needs an inside diameter above zero"
	case walls > 0:
		return max(0.0381, 3*bore), ""
	}
	return max(0.0254, 2*bore), ""
}

// gaps enters how drinking water is kept apart from the water of the loop.
func (v *surveyor) gaps() {
	v.l.Put("water_supplies", "top_up")
	v.word("top_up", "topup_from", v.Word("/top_up/from"))
	v.answer("top_up", "hose_left_in", v.Switch("/top_up/hose_left_in"))
	outlet, into := v.Number("/top_up/outlet_at", quantity.Length), v.Word("/top_up/into")
	name, given := into.Value()
	end, rim := system.Of(outlet), working.Unknown("lowest place of the rim", quantity.Length, into.Pointer(), "")
	if vessel := v.Vessel(name); given && vessel != nil {
		end, rim = vessel.Above(outlet), spill(vessel)
	}
	v.gap("top_up", outlet.Pointer(), height("lowest point of the outlet", end), rim,
		v.length("inside diameter of the outlet", "/top_up/outlet_inside"),
		working.File("walls near the outlet", v.Number("/top_up/walls_near", quantity.Number)))

	for _, line := range v.Lines {
		if line.From.Outer != "mains" || line.To.Vessel == nil || len(line.Pieces) == 0 {
			continue
		}
		last := line.Pieces[len(line.Pieces)-1]
		v.l.Put("water_supplies", line.ID)
		v.fact(line.ID, "topup_from", line.Pointer+"/from", "mains")
		v.answer(line.ID, "hose_left_in", v.Switch("/top_up/hose_left_in"))
		bore := working.Unknown("inside diameter of the outlet", quantity.Length, line.Pointer+"/pipe", "")
		if last.Pipe != nil && last.Pipe.Inside > 0 {
			bore = working.Row("inside diameter of "+last.Pipe.ID, quantity.Length, working.Exactly(last.Pipe.Inside), last.Pipe.Pointer, last.Pipe.Source, "")
		}
		v.gap(line.ID, last.Pointer, height("middle of its end", last.To), spill(line.To.Vessel), bore,
			working.File("walls near the outlet", v.Number("/top_up/walls_near", quantity.Number)))
	}
}

// spill is the rim, or the lowest place in it if the file gives one. Overflows do
// not count: they may be blocked just then.
func spill(vessel *system.Vessel) *working.Node {
	if vessel.SpillAt.Given() {
		return height("lowest place of the rim", vessel.Above(vessel.SpillAt))
	}
	return height("rim", vessel.Rim())
}

func (v *surveyor) gap(subject, at string, outlet, rim, bore, walls *working.Node) {
	gap := v.work(subject, "air_gap", at, difference, working.In("outlet", outlet), working.In("rim", rim))
	needed := v.work(subject, "air_gap_needed", at, func(x []float64) (float64, string) { return AirGapNeeded(x[0], x[1]) },
		working.In("D", bore), working.In("walls", walls))
	v.work(subject, "air_gap_share", at, func(x []float64) (float64, string) { return x[0] / x[1], "" },
		working.In("g", gap), working.In("gn", needed))
}
