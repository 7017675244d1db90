package loop

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// spill is the height at which water would leave a vessel, or a vent on a line
// out of it that stands outside: the lowest of rim, overflows and vents.
func (v *surveyor) spill(vessel *system.Vessel) *working.Node {
	in := []working.Input{working.In("rim", v.rim(vessel))}
	b := newBench(v, nil, walls{"gravity", "clean"})
	for _, line := range v.Lines {
		if line.From.Vessel != vessel {
			continue
		}
		if line.Duty == "overflow" && len(line.Pieces) > 0 {
			in = append(in, working.In("overflow", b.brim(line)))
		}
		for _, p := range line.Pieces {
			if runs(line) && !line.Pumped && p.Tee != nil && p.Tee.Third.Is("vent") && p.In != vessel {
				in = append(in, working.In("vent", v.linear("top of the vent", vessel.Above(p.Tee.TopAt))))
			}
		}
	}
	return working.Step("height at which it spills", quantity.Length, "the lowest of rim, overflows and vents outside", geometry, func(x []float64) (float64, string) {
		z := x[0]
		for _, one := range x[1:] {
			z = math.Min(z, one)
		}
		return z, ""
	}, in...)
}

// full is the level that the water above a line may reach: so far under its spill
// that ripples, tilt and a little film on a screen have room. A launder is full
// when its water touches the crest that feeds it.
func (v *surveyor) full(line *system.Line) *working.Node {
	vessel := line.From.Vessel
	in := []working.Input{working.In("spill", v.spill(vessel))}
	if line.From.Part == "launder" && vessel.Weir != nil {
		in = append(in, working.In("crest", v.linear("crest of the weir", vessel.Above(vessel.Weir.CrestAt))))
	}
	return working.Step("level that the water above may reach", quantity.Length, "spill - 50 mm, in a launder at most the crest of its weir", judgement,
		func(x []float64) (float64, string) {
			z := x[0] - underSpill
			for _, one := range x[1:] {
				z = math.Min(z, one)
			}
			return z, ""
		}, in...)
}

// rim is the height of a vessel's rim above the datum, or of the lowest place in it if the file gives one.
func (v *surveyor) rim(vessel *system.Vessel) *working.Node {
	if vessel.SpillAt.Given() {
		return v.linear("lowest place of the rim", vessel.Above(vessel.SpillAt))
	}
	return v.linear("rim", vessel.Rim())
}
