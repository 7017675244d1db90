package reference

import (
	"fmt"

	"dryfit/internal/water"
)

// valued turns a number with its validity into an answer; an undefined one is an error.
func valued(x float64, v water.Validity) (float64, error) {
	if !v.Defined() {
		return 0, fmt.Errorf("our function has no answer")
	}
	return x, nil
}

func init() {
	at := func(f func(float64) (float64, water.Validity)) function {
		return func(in *inputs) (float64, error) { return valued(f(in.num("t"))) }
	}
	register(map[string]function{
		"density":             at(water.Density),
		"dynamic_viscosity":   at(water.DynamicViscosity),
		"kinematic_viscosity": at(water.KinematicViscosity),
		"vapour_pressure":     at(water.VapourPressure),
		"air_pressure":        func(in *inputs) (float64, error) { return valued(water.AirPressure(in.num("z"))) },
		"vapour_head": func(in *inputs) (float64, error) {
			p, v := water.VapourPressure(in.num("t"))
			rho, w := water.Density(in.num("t"))
			return valued(v.And(w).Of(p / (rho * water.G)))
		},
	})
}
