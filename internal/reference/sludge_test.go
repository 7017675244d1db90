package reference

import (
	"dryfit/internal/pipeflow"
	"dryfit/internal/settling"
	"dryfit/internal/tables"
	"dryfit/internal/water"
)

// grains is the classes of settling speed of the table.
func grains() []settling.Class {
	var out []settling.Class
	for _, c := range tables.Embedded().SolidsClasses() {
		out = append(out, settling.Class{Speed: c.Speed, Share: c.Share})
	}
	return out
}

func init() {
	register(map[string]function{
		"capture_of_classes": func(in *inputs) (float64, error) {
			nu, _ := water.KinematicViscosity(in.num("t"))
			return reasoned(settling.SettleableCapture(in.num("v0"), nu, in.num("m"), 1, grains()))
		},
		"capture_stirred": func(in *inputs) (float64, error) {
			return reasoned(settling.StirredCapture(in.num("v"), in.num("v0"), in.num("m")))
		},
		"capture_cap": func(in *inputs) (float64, error) {
			most, why := settling.CaptureCap(in.num("v0"))
			return reasoned(most*in.or("k", 1), why)
		},
		"settles": func(in *inputs) (float64, error) {
			nu20, _ := water.KinematicViscosity(water.ZeroCelsius + 20)
			nu, _ := water.KinematicViscosity(in.num("t"))
			return reasoned(settling.Settles(in.num("v"), nu20, nu))
		},
		"residence": func(in *inputs) (float64, error) { return reasoned(settling.Residence(in.num("v"), in.num("q"))) },
		"lip_speed": func(in *inputs) (float64, error) {
			return reasoned(settling.LipSpeed(in.num("q"), in.num("d"), in.num("g")))
		},
		"weir_loading": func(in *inputs) (float64, error) { return reasoned(settling.WeirLoading(in.num("q"), in.num("l"))) },
		// volume of the sludge of some dry solids, and of the share caught of what a mass of feed leaves
		"sludge_of_solids": func(in *inputs) (float64, error) {
			return reasoned(settling.SludgeFlow(in.num("s"), in.num("dry")))
		},
		"sludge_of_feed": func(in *inputs) (float64, error) {
			return reasoned(settling.SludgeFlow(in.num("feed")*in.num("p")*in.num("r")*in.or("days", 1), in.num("dry")))
		},
		"sludge_thickened": func(in *inputs) (float64, error) {
			before, _ := settling.SludgeFlow(1, in.num("from"))
			after, why := settling.SludgeFlow(1, in.num("to"))
			return reasoned(after/before, why)
		},
		// speed in the well over a settler of which the well is a share of the width
		"well_speed": func(in *inputs) (float64, error) {
			area, _ := settling.RingArea(1, 0)
			return reasoned(settling.Downflow(in.num("v0")*area, in.num("ratio")))
		},
		"full_bore": func(in *inputs) (float64, error) { return valued(pipeflow.Velocity(in.num("q"), in.num("d"))) },
		// head for a speed in a drain: entry, fittings, pipe and what leaves with the water
		"drain_head": func(in *inputs) (float64, error) {
			unit, v := pipeflow.Velocity(1, in.num("d"))
			k := 1 + in.num("k") + in.num("f")*in.num("l")/in.num("d")
			h, w := pipeflow.FittingLoss(k, in.num("v")/unit, in.num("d"))
			return valued(h, v.And(w))
		},
		"runs_out": func(in *inputs) (float64, error) {
			return reasoned(settling.RunsOut(in.num("v"), in.num("q"), in.num("h"), in.num("left")))
		},
		"suction_room": func(in *inputs) (float64, error) {
			return reasoned(settling.SuctionRoom(in.num("t"), in.num("z"), in.num("lift")))
		},
	})
}
