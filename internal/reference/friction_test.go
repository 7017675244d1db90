package reference

import (
	"dryfit/internal/pipeflow"
	"dryfit/internal/water"
)

// pipe is a straight full pipe of a textbook. Books state the velocity or the flow; fluid by nu, or water by its temperature.
type pipe struct{ d, ks, nu float64 }

func (in *inputs) pipe() pipe {
	return pipe{d: in.num("d"), ks: in.or("ks", 0), nu: in.nu()}
}

func (in *inputs) nu() float64 {
	if _, ok := in.values["t"]; !ok {
		return in.num("nu")
	}
	nu, _ := water.KinematicViscosity(in.num("t"))
	return nu
}

// flow gives the flow, from q or from the mean velocity v.
func (in *inputs) flow(d float64) float64 {
	if _, ok := in.values["v"]; !ok {
		return in.num("q")
	}
	unit, _ := pipeflow.Velocity(1, d)
	return in.num("v") / unit
}

func init() {
	register(map[string]function{
		"friction_factor": func(in *inputs) (float64, error) {
			return valued(pipeflow.FrictionFactor(in.num("re"), in.num("rough")))
		},
		"colebrook": func(in *inputs) (float64, error) {
			return valued(pipeflow.Colebrook(in.num("re"), in.num("rough")))
		},
		"reynolds": func(in *inputs) (float64, error) {
			d := in.num("d")
			return valued(pipeflow.Reynolds(in.flow(d), d, in.nu()))
		},
		"friction_factor_of_pipe": func(in *inputs) (float64, error) {
			p := in.pipe()
			re, v := pipeflow.Reynolds(in.flow(p.d), p.d, p.nu)
			f, w := pipeflow.FrictionFactor(re, p.ks/p.d)
			return valued(f, v.And(w))
		},
		"friction_slope": func(in *inputs) (float64, error) {
			p := in.pipe()
			return valued(pipeflow.FrictionSlope(in.flow(p.d), p.d, p.ks, p.nu))
		},
		"wall_shear": func(in *inputs) (float64, error) {
			p := in.pipe()
			rho, _ := water.Density(in.num("t"))
			return valued(pipeflow.WallShear(in.flow(p.d), p.d, p.ks, p.nu, rho))
		},
	})
}
