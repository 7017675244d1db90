package reference

import (
	"dryfit/internal/pipeflow"
	"dryfit/internal/water"
)

func init() {
	register(map[string]function{
		"two_k": func(in *inputs) (float64, error) {
			return valued(pipeflow.TwoK(in.num("k1"), in.num("kinf"), in.num("d"), in.num("re")))
		},
		"three_k": func(in *inputs) (float64, error) {
			return valued(pipeflow.ThreeK(in.num("k1"), in.num("ki"), in.num("kd"), in.num("nominal"), in.num("re")))
		},
		"sudden_expansion": func(in *inputs) (float64, error) {
			return valued(pipeflow.SuddenExpansion(in.num("d1"), in.num("d2")))
		},
		"sudden_contraction": func(in *inputs) (float64, error) {
			return valued(pipeflow.SuddenContraction(in.num("d1"), in.num("d2")))
		},
		"expansion_loss": func(in *inputs) (float64, error) {
			k, v := pipeflow.SuddenExpansion(in.num("d1"), in.num("d2"))
			h, w := pipeflow.FittingLoss(k, in.num("q"), in.num("d1"))
			return valued(h*water.G/in.g(), v.And(w))
		},
		"flush_entrance": func(in *inputs) (float64, error) { return valued(pipeflow.FlushEntrance(in.num("r"))) },
		"projecting_entrance": func(in *inputs) (float64, error) {
			return valued(pipeflow.ProjectingEntrance(in.num("wall")))
		},
		"bend": func(in *inputs) (float64, error) {
			return valued(pipeflow.Bend(in.num("angle"), in.num("r"), in.num("f")))
		},
		"mitre":         func(in *inputs) (float64, error) { return valued(pipeflow.Mitre(in.num("angle"))) },
		"fully_rough":   func(in *inputs) (float64, error) { return valued(pipeflow.FullyRough(in.num("d"))) },
		"outlet_length": func(in *inputs) (float64, error) { return valued(pipeflow.OutletLength(in.num("l"))) },
		"crane_multiple": func(in *inputs) (float64, error) {
			f, v := pipeflow.FullyRough(in.num("d"))
			return valued(in.num("n")*f, v)
		},
	})
}
