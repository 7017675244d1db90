package reference

import (
	"math"

	"dryfit/internal/pipeflow"
	"dryfit/internal/water"
)

// Pipes that meet in a point, and siphons.
func init() {
	register(map[string]function{
		// what leaves by two pipes came by one
		"branching_flow": func(in *inputs) (float64, error) {
			f, g := in.num("f"), in.g()
			l := [3]float64{in.num("l1"), in.num("l2"), in.num("l3")}
			d := [3]float64{in.num("d1"), in.num("d2"), in.num("d3")}
			drop2, drop3 := in.num("drop2"), in.num("drop3")
			q := func(i int, h float64) float64 { return carriesAt(h, d[i], l[i], f, 0, g) }
			h, err := solved(func(h float64) float64 { return q(0, h) - q(1, drop2-h) - q(2, drop3-h) }, 0, drop2)
			switch in.num("leg") {
			case 2:
				return q(1, drop2-h), err
			case 3:
				return q(2, drop3-h), err
			}
			return q(0, h), err
		},
		"reservoir_junction": func(in *inputs) (float64, error) {
			z := [3]float64{in.num("z1"), in.num("z2"), in.num("z3")}
			r := [3]float64{in.num("r1"), in.num("r2"), in.num("r3")}
			return solved(func(j float64) float64 {
				sum := 0.0
				for i := range z {
					sum += math.Copysign(math.Sqrt(math.Abs(z[i]-j)/r[i]), z[i]-j)
				}
				return sum
			}, z[2], z[0])
		},
		"siphon_velocity": func(in *inputs) (float64, error) {
			q, d := in.siphon()
			return valued(pipeflow.Velocity(q, d))
		},
		"siphon_flow": func(in *inputs) (float64, error) {
			q, _ := in.siphon()
			return q, nil
		},
		// gauge pressure at the crest
		"siphon_crest_pressure": func(in *inputs) (float64, error) {
			q, d := in.siphon()
			h, v := pipeflow.FittingLoss(1+in.num("k_in")+in.num("f")*in.num("l_up")/d, q, d)
			return valued(v.Of(-in.num("rho") * in.g() * (in.num("crest") + h*water.G/in.g())))
		},
		// how far the crest may stand over the upper level before less than a given pressure is left
		"siphon_crest_height": func(in *inputs) (float64, error) {
			q, d := in.siphon()
			h, v := pipeflow.FittingLoss(1+in.num("f")*in.num("l_up")/d, q, d)
			return valued(v.Of(in.num("air") - in.num("least") - h*water.G/in.g()))
		},
	})
}

func (in *inputs) siphon() (q, d float64) {
	d = in.num("d")
	return carriesAt(in.num("fall"), d, in.num("l"), in.num("f"), in.or("k", 0), in.g()), d
}
