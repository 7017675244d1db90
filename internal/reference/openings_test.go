package reference

import (
	"math"

	"dryfit/internal/pipeflow"
	"dryfit/internal/water"
)

// Weirs, high openings and pipes part full that books put together from the plain formulas.
func init() {
	register(map[string]function{
		// a free weir over the lower level, and a mouth from there down to the crest
		"weir_and_mouth": func(in *inputs) (float64, error) {
			h1, h2, cd, b := in.num("h1"), in.num("h2"), in.num("cd"), in.num("b")
			over, v := pipeflow.RectangularNotch(cd, b, h1-h2)
			through, w := pipeflow.Orifice{Area: b * h2, Cd: cd}.Flow(h1 - h2)
			return in.atG(over+through, v.And(w))
		},
		"drowned_rectangular": func(in *inputs) (float64, error) {
			free, v := pipeflow.RectangularNotch(in.num("cd"), in.num("b"), in.num("h1"))
			share, w := pipeflow.Drowned(in.num("h1"), in.num("h2"), 1.5)
			return in.atG(free*share, v.And(w))
		},
		// by how much a high opening is overrated when it is taken as a small hole at its middle
		"small_hole_excess": func(in *inputs) (float64, error) {
			h1, h2, cd, b := in.num("h1"), in.num("h2"), in.num("cd"), in.num("b")
			above, v := pipeflow.RectangularNotch(cd, b, h1)
			all, w := pipeflow.RectangularNotch(cd, b, h2)
			small, u := pipeflow.Orifice{Area: b * (h2 - h1), Cd: cd}.Flow((h1 + h2) / 2)
			return valued(small/(all-above)-1, v.And(w).And(u))
		},
		// where water falls off the end of a level pipe it stands at some 0.73 to 0.75 of the critical depth
		"brink_depth": func(in *inputs) (float64, error) {
			y, v := pipeflow.CriticalDepth(in.num("q"), in.num("d"))
			return valued(0.74*y, v)
		},
		"open_froude": func(in *inputs) (float64, error) {
			d, y := in.num("d"), in.num("y")
			u, v := pipeflow.PartFullVelocity(in.num("q"), d, y)
			a, w := pipeflow.CircleArea(d, y)
			top, x := pipeflow.CircleTopWidth(d, y)
			return valued(u/math.Sqrt(water.G*a/top), v.And(w).And(x))
		},
		"manning_flow": func(in *inputs) (float64, error) {
			d, y := in.num("d"), in.num("y")
			a, v := pipeflow.CircleArea(d, y)
			wet, w := pipeflow.CirclePerimeter(d, y)
			return valued(a*math.Pow(a/wet, 2.0/3)*math.Sqrt(in.num("slope"))/in.num("n"), v.And(w))
		},
	})
}
