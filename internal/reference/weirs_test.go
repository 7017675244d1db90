package reference

import (
	"math"

	"dryfit/internal/pipeflow"
	"dryfit/internal/water"
)

// atG moves a flow under a head from the standard g to the book's.
func (in *inputs) atG(q float64, v water.Validity) (float64, error) {
	return valued(v.Of(q * math.Sqrt(in.g()/water.G)))
}

func (in *inputs) rectangular() pipeflow.RectangularWeir {
	return pipeflow.RectangularWeir{Width: in.num("b"), Channel: in.num("channel"), Height: in.num("p")}
}

func (in *inputs) ring() pipeflow.RingCrest {
	return pipeflow.RingCrest{Diameter: in.num("d"), Coefficient: in.num("c")}
}

func (in *inputs) standpipe() pipeflow.Standpipe {
	return pipeflow.Standpipe{Bore: in.num("d"), Coefficient: in.num("c"), Cd: in.num("cd")}
}

func (in *inputs) hole() pipeflow.Orifice {
	if _, ok := in.values["d"]; ok {
		a, _ := pipeflow.CircleArea(in.num("d"), in.num("d"))
		return pipeflow.Orifice{Area: a, Cd: in.num("cd")}
	}
	return pipeflow.Orifice{Area: in.num("area"), Cd: in.num("cd")}
}

func init() {
	register(map[string]function{
		"plain_rectangular": func(in *inputs) (float64, error) {
			return in.atG(pipeflow.RectangularNotch(in.num("cd"), in.num("b"), in.num("h")))
		},
		"plain_triangular": func(in *inputs) (float64, error) {
			return in.atG(pipeflow.TriangularNotch(in.num("cd"), in.num("angle"), in.num("h")))
		},
		"plain_trapezoid": func(in *inputs) (float64, error) {
			a, v := pipeflow.TriangularNotch(in.num("cd"), in.num("angle"), in.num("h"))
			b, w := pipeflow.RectangularNotch(in.num("cd"), in.num("b"), in.num("h"))
			return in.atG(a+b, v.And(w))
		},
		"plain_triangular_head": func(in *inputs) (float64, error) {
			cd, angle, q := in.num("cd"), in.num("angle"), in.num("q")
			return solved(func(h float64) float64 {
				x, _ := pipeflow.TriangularNotch(cd, angle, h)
				return x*math.Sqrt(in.g()/water.G) - q
			}, 0, 10)
		},
		"rectangular_weir":      func(in *inputs) (float64, error) { return in.atG(in.rectangular().Flow(in.num("h"))) },
		"rectangular_weir_head": func(in *inputs) (float64, error) { return valued(in.rectangular().Head(in.num("q"))) },
		"v_notch": func(in *inputs) (float64, error) {
			return in.atG(pipeflow.VNotch{Angle: in.num("angle")}.Flow(in.num("h")))
		},
		"v_notch_head": func(in *inputs) (float64, error) {
			return valued(pipeflow.VNotch{Angle: in.num("angle")}.Head(in.num("q")))
		},
		"drowned": func(in *inputs) (float64, error) {
			return valued(pipeflow.Drowned(in.num("h1"), in.num("h2"), in.num("n")))
		},
		"ring_head":      func(in *inputs) (float64, error) { return valued(in.ring().Head(in.num("q"))) },
		"standpipe_head": func(in *inputs) (float64, error) { return valued(in.standpipe().Head(in.num("q"))) },
		// the head at which the mouth takes over from the rim
		"standpipe_switch": func(in *inputs) (float64, error) {
			s := in.standpipe()
			rim := pipeflow.RingCrest{Diameter: s.Bore, Coefficient: s.Coefficient}
			return solved(func(h float64) float64 {
				free, _ := rim.Flow(h)
				q, _ := s.Flow(h)
				return free - q - 1e-12
			}, 0.01*s.Bore, s.Bore)
		},
		"orifice":      func(in *inputs) (float64, error) { return in.atG(in.hole().Flow(in.num("h"))) },
		"orifice_head": func(in *inputs) (float64, error) { return valued(in.hole().Head(in.num("q"))) },
	})
}
