package reference

import (
	"fmt"
	"math"

	"dryfit/internal/network"
	"dryfit/internal/pipeflow"
	"dryfit/internal/water"
)

// Textbook problems of several pipes, built as networks and solved by what works out the loop. A book's own g and friction factor are
// honoured.

// plan is a network with the levels from which its solution is looked for.
type plan struct {
	network.Network
	z []float64
}

// lake adds a node whose level stays, joint one where pipes meet, tank one whose level follows what runs in and out.
func (p *plan) lake(z float64) int {
	p.z = append(p.z, z)
	return p.Node(network.Node{Name: "lake", Fixed: true})
}

func (p *plan) joint(guess float64) int {
	p.z = append(p.z, guess)
	return p.Node(network.Node{Name: "joint"})
}

func (p *plan) tank(area, z float64) int {
	p.z = append(p.z, z)
	return p.Node(network.Node{Name: "tank", Volume: func(z float64) float64 { return area * z }, Rim: math.Inf(1)})
}

// pipe joins two nodes by a pipe that never has air in it; water may run through it either way.
func (p *plan) pipe(from, to int, loss func(q float64) float64) *network.Link {
	line := network.NewLine(network.Both(loss, never))
	line.Back = network.NewLine(network.Both(loss, never))
	return p.Join("pipe", from, to, line)
}

func never(float64) float64 { return math.Inf(-1) }

// solved gives the levels of the nodes and the flows in the links.
func (p *plan) solved() (z, q []float64, err error) {
	s := p.Steady(p.z)
	if !s.Found {
		return nil, nil, fmt.Errorf("no steady flow: %s", s.Reason)
	}
	return s.Z, s.Q, nil
}

// own gives the name of an input of pipe i, which may be one that all pipes share.
func (in *inputs) own(name string, i int) string {
	if numbered := fmt.Sprintf("%s%d", name, i); in.has(numbered) {
		return numbered
	}
	return name
}

func (in *inputs) has(name string) bool { _, ok := in.values[name]; return ok }

// pipes counts the pipes that the row numbers.
func (in *inputs) pipes() int {
	n := 0
	for in.has(fmt.Sprintf("l%d", n+1)) || in.has(fmt.Sprintf("r%d", n+1)) {
		n++
	}
	return n
}

// losing gives the head that pipe i takes: by its resistance r, by its friction factor f, or by its roughness; k is of its fittings.
func (in *inputs) losing(i int) func(q float64) float64 {
	if r := in.own("r", i); in.has(r) {
		return square(in.num(r))
	}
	d, l, k, g := in.num(in.own("d", i)), in.num(in.own("l", i)), in.or(in.own("k", i), 0), in.g()
	if f := in.own("f", i); in.has(f) {
		unit, _ := pipeflow.FittingLoss(in.num(f)*l/d+k, 1, d)
		return square(unit * water.G / g)
	}
	p := pipe{d, in.num(in.own("ks", i)), in.nu()}
	return func(q float64) float64 { return p.loss(q, l, k, g) }
}

func square(r float64) func(q float64) float64 { return func(q float64) float64 { return r * q * q } }

// row joins two lakes by pipes one after the other.
func (in *inputs) row() *plan {
	p, n := &plan{}, in.pipes()
	from := p.lake(0)
	for i := 1; i < n; i++ {
		to := p.joint(0)
		p.pipe(from, to, in.losing(i))
		from = to
	}
	p.pipe(from, p.lake(-in.num("fall")), in.losing(n))
	return p
}

// crest gives the flow of a siphon of two pipes and the head that is gone at its crest, under the upper level: that is lost, and that is
// speed.
func (in *inputs) crest() (q, gone float64, err error) {
	z, flows, err := in.row().solved()
	if err != nil {
		return 0, 0, err
	}
	v, _ := pipeflow.Velocity(flows[0], in.num(in.own("d", 1)))
	return flows[0], v*v/(2*in.g()) - z[1], nil
}

// lifting is a pump between two levels with the pipe behind it.
func lifting(head, loss func(q float64) float64) *network.Line {
	return network.NewLine(network.Both(func(q float64) float64 { return loss(q) - head(q) }, never))
}

func init() {
	register(map[string]function{
		"network_row": func(in *inputs) (float64, error) {
			_, q, err := in.row().solved()
			if err != nil {
				return 0, err
			}
			return q[0], nil
		},
		// pipes side by side between two lakes: all the flow, or that of one pipe
		"network_beside": func(in *inputs) (float64, error) {
			p := &plan{}
			up, down := p.lake(0), p.lake(-in.num("fall"))
			for i := range in.pipes() {
				p.pipe(up, down, in.losing(i+1))
			}
			_, q, err := p.solved()
			return in.leg(q, err)
		},
		// the same with the flow given: the head, or the flow of one pipe
		"network_fed": func(in *inputs) (float64, error) {
			p := &plan{}
			up, down := p.joint(1), p.lake(0)
			for i := range in.pipes() {
				p.pipe(up, down, in.losing(i+1))
			}
			p.Join("feed", network.Outside, up, network.Constant(in.num("q")))
			z, q, err := p.solved()
			if err != nil || in.has("leg") {
				return in.leg(q, err)
			}
			return z[up], nil
		},
		// lakes around one joint: its level, or what runs from a lake towards it
		"network_star": func(in *inputs) (float64, error) {
			p := &plan{}
			sum, n := 0.0, in.pipes()
			for i := 1; i <= n; i++ {
				z := in.num(fmt.Sprintf("z%d", i))
				p.lake(z)
				sum += z
			}
			joint := p.joint(sum / float64(n))
			for i := range n {
				p.pipe(i, joint, in.losing(i+1))
			}
			z, q, err := p.solved()
			if err != nil || in.has("leg") {
				return in.leg(q, err)
			}
			return z[joint], nil
		},
		"network_siphon_velocity": func(in *inputs) (float64, error) {
			q, _, err := in.crest()
			v, _ := pipeflow.Velocity(q, in.num("d"))
			return v, err
		},
		// gauge pressure at the crest
		"network_siphon_pressure": func(in *inputs) (float64, error) {
			_, gone, err := in.crest()
			return -in.num("rho") * in.g() * (in.num("crest") + gone), err
		},
		// how far the crest may stand over the upper level before less than a given pressure is left
		"network_siphon_height": func(in *inputs) (float64, error) {
			_, gone, err := in.crest()
			return in.num("air") - in.num("least") - gone, err
		},
		"network_pumped": func(in *inputs) (float64, error) {
			p := &plan{}
			power := in.num("power") * in.num("efficiency") / (in.num("rho") * in.g()) // flow times head, m4/s
			low, high := p.lake(0), p.lake(in.num("rise"))
			joint := p.joint(in.num("rise"))
			for i := range in.pipes() {
				p.pipe(joint, high, in.losing(i+1))
			}
			p.Join("pump", low, joint, lifting(func(q float64) float64 { return power / q }, square(0)))
			_, q, err := p.solved()
			return in.leg(q, err)
		},
		"network_duty_flow": func(in *inputs) (float64, error) { q, _, err := in.networkDuty(); return q, err },
		"network_duty_head": func(in *inputs) (float64, error) { _, h, err := in.networkDuty(); return h, err },
		// a pump whose water partly runs back to where it came from: leg 1 is the suction, 2 runs back, 3 goes up
		"network_recycle": func(in *inputs) (float64, error) {
			p := &plan{}
			low, high, joint := p.lake(0), p.lake(in.num("rise")), p.joint(in.num("rise"))
			h0, a, b := in.num("h0"), in.num("a"), in.num("b")
			p.Join("pump", low, joint, lifting(func(q float64) float64 { return h0 - a*q - b*q*q }, in.losing(1)))
			p.pipe(joint, low, in.losing(2))
			p.pipe(joint, high, in.losing(3)).Shut = in.num("open") == 0
			_, q, err := p.solved()
			return in.leg(q, err)
		},
		// a pipe from which water is drawn all along: what is lost between its feed and its end
		"network_drawn": func(in *inputs) (float64, error) {
			const pieces = 50
			p := &plan{}
			feed, length, draw := int(in.num("feed")*pieces), in.values["l"], in.num("q")/pieces
			in.values["l"] = length / pieces
			loss := in.losing(0)
			in.values["l"] = length
			for i := range pieces + 1 {
				if i == feed {
					p.lake(0)
				} else {
					p.joint(0)
				}
				share := 1.0
				if i == 0 || i == pieces {
					share = 0.5
				}
				p.Join("draw", i, network.Outside, network.Constant(share*draw))
			}
			for i := range pieces {
				p.pipe(i, i+1, loss)
			}
			z, _, err := p.solved()
			if err != nil {
				return 0, err
			}
			return -z[pieces] * in.num("rho") * in.g(), nil
		},
	})
}

// leg gives the flow of the pipe that the row names, or all of them together.
func (in *inputs) leg(q []float64, err error) (float64, error) {
	if err != nil {
		return 0, err
	}
	if i := in.or("leg", 0); i >= 1 {
		return q[int(i)-1], nil
	}
	sum := 0.0
	for _, x := range q[:in.pipes()] {
		sum += x
	}
	return sum, nil
}

func (in *inputs) networkDuty() (q, h float64, err error) {
	c, err := in.curve()
	if err != nil {
		return 0, 0, err
	}
	p := &plan{}
	low, high := p.lake(0), p.lake(in.num("rise"))
	p.Join("pump", low, high, lifting(func(q float64) float64 { h, _ := c.Head(q); return h }, in.losing(0)))
	_, flows, err := p.solved()
	if err != nil {
		return 0, 0, err
	}
	h, _ = c.Head(flows[0])
	return flows[0], h, nil
}
