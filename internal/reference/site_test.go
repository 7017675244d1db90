package reference

import "dryfit/internal/site"

func init() {
	register(map[string]function{
		"air_gap_needed": func(in *inputs) (float64, error) { return noted(site.AirGapNeeded(in.num("d"), in.num("walls"))) },
		"full_mass": func(in *inputs) (float64, error) {
			return noted(site.FullMass(in.num("v"), in.or("vm", 0), in.or("e", 1), in.num("own"), in.or("mm", 0)))
		},
		"round_volume": func(in *inputs) (float64, error) {
			return site.RoundVolume(in.num("h"), in.num("d1"), in.num("d2")), nil
		},
		"box_volume": func(in *inputs) (float64, error) {
			return site.BoxVolume(in.num("h"), in.num("l1"), in.num("w1"), in.num("l2"), in.num("w2")), nil
		},
		"floor_load":    func(in *inputs) (float64, error) { return noted(site.FloorLoad(in.num("m"), in.num("a"))) },
		"tipping_share": func(in *inputs) (float64, error) { return noted(site.TippingShare(in.num("b"), in.num("h"))) },
	})
}
