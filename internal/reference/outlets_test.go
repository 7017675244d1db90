package reference

import "dryfit/internal/pipeflow"

func init() {
	register(map[string]function{
		"critical_depth":  func(in *inputs) (float64, error) { return valued(pipeflow.CriticalDepth(in.num("q"), in.num("d"))) },
		"critical_energy": func(in *inputs) (float64, error) { return valued(pipeflow.CriticalEnergy(in.num("q"), in.num("d"))) },
		"inlet_level": func(in *inputs) (float64, error) {
			return valued(pipeflow.InletLevel(in.num("q"), in.num("d"), in.num("ke")))
		},
		"wet_area":          func(in *inputs) (float64, error) { return valued(pipeflow.CircleArea(in.num("d"), in.num("y"))) },
		"wet_perimeter":     func(in *inputs) (float64, error) { return valued(pipeflow.CirclePerimeter(in.num("d"), in.num("y"))) },
		"top_width":         func(in *inputs) (float64, error) { return valued(pipeflow.CircleTopWidth(in.num("d"), in.num("y"))) },
		"froude":            func(in *inputs) (float64, error) { return valued(pipeflow.Froude(in.num("q"), in.num("d"))) },
		"self_venting_flow": func(in *inputs) (float64, error) { return valued(pipeflow.SelfVentingFlow(in.num("d"))) },
		"self_venting_bore": func(in *inputs) (float64, error) { return valued(pipeflow.SelfVentingBore(in.num("q"))) },
	})
}
