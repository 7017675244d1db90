package reference

import (
	"fmt"
	"math"

	"dryfit/internal/network"
	"dryfit/internal/pipeflow"
	"dryfit/internal/water"
)

// Textbook problems of tanks that run empty, fill or come level, followed in time as the loop is.

// until follows a network until a measure falls below zero, and says when, at which levels and what went through the links.
func (p *plan) until(measure func(z []float64) float64) (at float64, z []float64, r network.Run, err error) {
	reached := false
	p.On("reached", func(z []float64) float64 {
		if reached {
			return math.Inf(1)
		}
		return measure(z)
	}, func() { reached = true })
	p.Allowed = 1e-4 // books work these out in closed form
	r = p.Run(p.z, 1e6)
	at, ok := r.Tripped("reached")
	if !ok {
		return 0, nil, r, fmt.Errorf("it is not reached in %.0f s: %s", r.Lasts(), r.Reason)
	}
	for i, t := range r.T {
		if t == at {
			return at, r.Z[i], r, nil
		}
	}
	return 0, nil, r, fmt.Errorf("the run has no levels at %g s", at)
}

// emptying is a tank that runs out through a hole, or as the square root of its level from what it gives at a stated one.
func (in *inputs) emptying() *plan {
	p := &plan{}
	tank := p.tank(in.num("area"), in.num("from"))
	var out network.Func
	if in.has("out") {
		unit := in.num("out") / math.Sqrt(in.num("at"))
		out = func(up, _ float64) float64 { return unit * math.Sqrt(math.Max(up, 0)) }
	} else {
		hole, g := pipeflow.Orifice{Area: in.num("hole"), Cd: in.num("cd")}, in.g()
		out = func(up, _ float64) float64 {
			q, _ := hole.Flow(math.Max(up, 0))
			return q * math.Sqrt(g/water.G)
		}
	}
	p.Join("hole", tank, network.Outside, out)
	if in.has("in") {
		p.Join("feed", network.Outside, tank, network.Constant(in.num("in")))
	}
	return p
}

// sucking is a tank from which a pump takes the same flow until it has less than the head that it needs at its inlet.
func (in *inputs) sucking() (at float64, z []float64, taken float64, err error) {
	p := &plan{}
	area, _ := pipeflow.CircleArea(in.num("d"), in.num("d"))
	tank := p.tank(area, in.num("from"))
	p.Join("pump", tank, network.Outside, network.Constant(in.num("q")))
	air := (in.num("p") - in.num("pv")) / (in.num("rho") * in.g())
	rise, loss, needs := in.num("rise"), in.num("loss"), in.num("needs")
	at, z, _, err = p.until(func(z []float64) float64 { return air + z[tank] - rise - loss - needs })
	return at, z, at * in.num("q"), err
}

func init() {
	register(map[string]function{
		"network_emptying_time": func(in *inputs) (float64, error) {
			to := math.Max(in.num("to"), 1e-9) // empty is never less than empty
			at, _, _, err := in.emptying().until(func(z []float64) float64 { return z[0] - to })
			return at, err
		},
		// how long two tanks with a pipe between take until their levels differ by less
		"network_equalising_time": func(in *inputs) (float64, error) {
			p := &plan{}
			from, to := in.num("from"), in.num("to")
			a, b := p.tank(in.num("area1"), from), p.tank(in.num("area2"), 0)
			p.pipe(a, b, in.losing(0))
			at, _, _, err := p.until(func(z []float64) float64 { return z[a] - z[b] - to })
			return at, err
		},
		"network_suction_level": func(in *inputs) (float64, error) {
			_, z, _, err := in.sucking()
			if err != nil {
				return 0, err
			}
			return z[0], nil
		},
		"network_suction_time":   func(in *inputs) (float64, error) { at, _, _, err := in.sucking(); return at, err },
		"network_suction_volume": func(in *inputs) (float64, error) { _, _, v, err := in.sucking(); return v, err },
	})
}
