package reference

import (
	"fmt"

	"dryfit/internal/settling"
	"dryfit/internal/water"
)

// grainIn gives the speed of the row's grain in water of a viscosity.
func (in *inputs) grainIn(nu float64) (float64, error) {
	return reasoned(settling.FergusonChurch(in.num("d"), in.num("r"), nu, in.num("c1"), in.num("c2")))
}

func (in *inputs) stokesIn(nu float64) (float64, error) {
	return reasoned(settling.StokesVelocity(in.num("d"), in.num("r"), nu))
}

// warming gives the speed at one temperature over that at another.
func warming(speed func(*inputs, float64) (float64, error)) function {
	return func(in *inputs) (float64, error) {
		var speeds [2]float64
		for i, name := range []string{"t", "from"} {
			nu, v := water.KinematicViscosity(in.num(name))
			if !v.Defined() {
				return 0, fmt.Errorf("no viscosity at %g K", in.num(name))
			}
			var err error
			if speeds[i], err = speed(in, nu); err != nil {
				return 0, err
			}
		}
		return speeds[0] / speeds[1], nil
	}
}

func init() {
	register(map[string]function{
		"stokes_velocity": func(in *inputs) (float64, error) { return in.stokesIn(in.num("nu")) },
		"stokes_factor":   warming((*inputs).stokesIn),
		"grain_velocity":  func(in *inputs) (float64, error) { return in.grainIn(in.num("nu")) },
		"grain_factor":    warming((*inputs).grainIn),
		"grain_of": func(in *inputs) (float64, error) {
			return reasoned(settling.GrainOf(in.num("v"), in.num("r"), in.num("nu"), in.num("c1"), in.num("c2")))
		},
		"ideal_capture": func(in *inputs) (float64, error) {
			return reasoned(settling.IdealCapture(in.num("v"), in.num("v0")))
		},
		"ideal_capture_of_grain": func(in *inputs) (float64, error) {
			v, err := in.stokesIn(in.num("nu"))
			if err != nil {
				return 0, err
			}
			v0, err := reasoned(settling.OverflowRate(in.num("q"), in.num("area")))
			if err != nil {
				return 0, err
			}
			return reasoned(settling.IdealCapture(v, v0))
		},
		// shares m1, m2, ... of the mass, each as fast as its smallest grain d1, d2, ...
		"ideal_capture_of_sieves": func(in *inputs) (float64, error) {
			kept := 0.0
			for i := 1; ; i++ {
				d := in.or(fmt.Sprintf("d%d", i), 0)
				if d == 0 {
					return kept, nil
				}
				v, why := settling.StokesVelocity(d, in.num("r"), in.num("nu"))
				share, err := reasoned(settling.IdealCapture(v, in.num("v0")))
				if err != nil {
					return 0, fmt.Errorf("%w %s", err, why)
				}
				kept += in.num(fmt.Sprintf("m%d", i)) * share
			}
		},
		"tanks_capture": func(in *inputs) (float64, error) {
			return reasoned(settling.TanksCapture(in.num("v"), in.num("v0"), in.num("n")))
		},
		// the other convention: n is one over the number of tanks
		"hazen_coefficient": func(in *inputs) (float64, error) {
			return reasoned(settling.TanksCapture(in.num("v"), in.num("v0"), 1/in.num("n")))
		},
		"overflow_rate_round": func(in *inputs) (float64, error) {
			area, why := settling.RingArea(in.num("d"), 0)
			if why != "" {
				return 0, reason(why)
			}
			return reasoned(settling.OverflowRate(in.num("q"), area))
		},
		"camp_scour": func(in *inputs) (float64, error) {
			return reasoned(settling.CampScour(in.num("k"), in.num("r"), in.num("d"), in.num("f")))
		},
		"speed_of_stress": func(in *inputs) (float64, error) {
			return reasoned(settling.SpeedOfStress(in.num("tau"), in.num("f"), in.num("rho")))
		},
	})
}
