package reference

import (
	"fmt"
	"math"

	"dryfit/internal/pipeflow"
	"dryfit/internal/water"
)

// Small problems of several steps, as textbooks set them, put together from our functions. A book's own g, where it states one, is
// honoured: our heads are for the standard g and scale with 1/g at a given flow.

func (in *inputs) g() float64 { return in.or("g", water.G) }

func solved(f func(x float64) float64, lo, hi float64) (float64, error) {
	r := pipeflow.Solve(f, lo, hi, (hi-lo)*1e-12)
	if !r.Found {
		return 0, fmt.Errorf("no answer: %s", r.Reason)
	}
	return r.X, nil
}

// loss gives the head that q loses in a straight pipe and in fittings of k together.
func (p pipe) loss(q, l, k, g float64) float64 {
	hf, v := pipeflow.HeadLoss(q, p.d, l, p.ks, p.nu)
	hk, w := pipeflow.FittingLoss(k, q, p.d)
	h, v := v.And(w).Of(hf + hk)
	if !v.Defined() {
		return math.NaN()
	}
	return h * water.G / g
}

// carries gives the flow at which a pipe and its fittings lose h.
func (p pipe) carries(h, l, k, g float64) float64 {
	if h <= 0 {
		return 0
	}
	r := pipeflow.Solve(func(q float64) float64 { return p.loss(q, l, k, g) - h }, 0, 100*p.d*p.d, 1e-13)
	if !r.Found {
		return math.NaN()
	}
	return r.X
}

// carriesAt is carries with a friction factor that does not change with the flow, as in many books.
func carriesAt(h, d, l, f, k, g float64) float64 {
	unit, _ := pipeflow.FittingLoss(f*l/d+k, 1, d)
	return math.Sqrt(max(h, 0) / (unit * water.G / g))
}

func init() {
	register(map[string]function{
		"head_loss": func(in *inputs) (float64, error) {
			p := in.pipe()
			return p.loss(in.flow(p.d), in.num("l"), in.or("k", 0), in.g()), nil
		},
		"pressure_loss": func(in *inputs) (float64, error) {
			p := in.pipe()
			return p.loss(in.flow(p.d), in.num("l"), 0, water.G) * in.num("rho") * water.G, nil
		},
		"friction_power": func(in *inputs) (float64, error) {
			p := in.pipe()
			q := in.flow(p.d)
			return p.loss(q, in.num("l"), 0, water.G) * in.num("rho") * water.G * q, nil
		},
		// the pressure at the foot of a house pipe that ends in a tap
		"supply_pressure": func(in *inputs) (float64, error) {
			p := in.pipe()
			q, g := in.num("q"), in.g()
			v, _ := pipeflow.Velocity(q, p.d)
			out := in.num("out")
			h := in.num("rise") + (out*out-v*v)/(2*g) + p.loss(q, in.num("l"), in.or("k", 0), g)
			return h * in.num("rho") * g, nil
		},
		"flow_from_head": func(in *inputs) (float64, error) {
			p := in.pipe()
			return p.carries(in.num("head"), in.num("l"), 0, in.g()), nil
		},
		"flow_from_pressure": func(in *inputs) (float64, error) {
			p := in.pipe()
			g := in.g()
			return p.carries(in.num("p")/(in.num("rho")*g)-in.num("rise"), in.num("l"), in.num("k"), g), nil
		},
		"flow_by_colebrook": func(in *inputs) (float64, error) {
			p := in.pipe()
			h, l, g := in.num("head"), in.num("l"), in.g()
			return solved(func(q float64) float64 {
				re, _ := pipeflow.Reynolds(q, p.d, p.nu)
				f, _ := pipeflow.Colebrook(re, p.ks/p.d)
				return q - carriesAt(h, p.d, l, f, 0, g)
			}, p.d*p.d*0.01, p.d*p.d*100)
		},
		"flow_at_factor": func(in *inputs) (float64, error) {
			return carriesAt(in.num("head"), in.num("d"), in.num("l"), in.num("f"), in.or("k", 0), in.g()), nil
		},
		"bore_from_flow": func(in *inputs) (float64, error) {
			q, l, h, g, ks, nu := in.num("q"), in.num("l"), in.num("head"), in.g(), in.num("ks"), in.nu()
			return solved(func(d float64) float64 { return math.Log(h / pipe{d, ks, nu}.loss(q, l, 0, g)) }, 10*ks, 10)
		},
		"parallel_head": func(in *inputs) (float64, error) {
			a, b := in.parallel()
			q, l1, l2, g := in.num("q"), in.num("l1"), in.num("l2"), in.g()
			return solved(func(h float64) float64 { return a.carries(h, l1, 0, g) + b.carries(h, l2, 0, g) - q }, 1e-6, 1000)
		},
		"parallel_share": func(in *inputs) (float64, error) { // flow of the first of two
			a, b := in.parallel()
			q, l1, l2, g := in.num("q"), in.num("l1"), in.num("l2"), in.g()
			return solved(func(x float64) float64 { return a.loss(x, l1, 0, g) - b.loss(q-x, l2, 0, g) }, 0, q)
		},
		// two pipes side by side behind a pump of a given power
		"pumped_parallel_total":  func(in *inputs) (float64, error) { a, b, err := in.pumpedParallel(); return a + b, err },
		"pumped_parallel_first":  func(in *inputs) (float64, error) { a, _, err := in.pumpedParallel(); return a, err },
		"pumped_parallel_second": func(in *inputs) (float64, error) { _, b, err := in.pumpedParallel(); return b, err },
		"part_full_flow": func(in *inputs) (float64, error) {
			d, y := in.num("d"), in.num("y")
			a, _ := pipeflow.CircleArea(d, y)
			wet, _ := pipeflow.CirclePerimeter(d, y)
			dh := 4 * a / wet // the round pipe with the same wall for its water
			full, _ := pipeflow.CircleArea(dh, dh)
			return pipe{dh, in.num("rough") * dh, in.nu()}.carries(in.num("slope"), 1, 0, in.g()) / full * a, nil
		},
		"draining_time": func(in *inputs) (float64, error) {
			hole := pipeflow.Orifice{Area: in.num("hole"), Cd: in.num("cd")}
			area, from, to, g := in.num("area"), in.num("from"), in.num("to"), in.g()
			// with h = s^2 the integrand 2s / q(s^2) has no pole at the end; midpoints
			const steps = 64
			a, b, sum := math.Sqrt(to), math.Sqrt(from), 0.0
			for i := range steps {
				s := a + (b-a)*(float64(i)+0.5)/steps
				q, _ := hole.Flow(s * s)
				sum += 2 * s / (q * math.Sqrt(g/water.G))
			}
			return area * sum * (b - a) / steps, nil
		},
	})
}

func (in *inputs) parallel() (pipe, pipe) {
	ks, nu := in.num("ks"), in.nu()
	return pipe{in.num("d1"), ks, nu}, pipe{in.num("d2"), ks, nu}
}

func (in *inputs) pumpedParallel() (first, second float64, err error) {
	a, b := in.parallel()
	l, g, rise := in.num("l"), in.g(), in.num("rise")
	power := in.num("power") * in.num("efficiency") / (in.num("rho") * g) // flow times head, m4/s
	h, err := solved(func(h float64) float64 {
		return (a.carries(h, l, 0, g)+b.carries(h, l, 0, g))*(rise+h) - power
	}, 1e-6, 1000)
	return a.carries(h, l, 0, g), b.carries(h, l, 0, g), err
}
