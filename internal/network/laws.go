package network

import "math"

// Constant is a flow that no level changes: rain, a supply.
type Constant float64

// Flow implements Law.
func (c Constant) Flow(float64, float64) (q, byUp, byDown float64) { return float64(c), 0, 0 }

// Func is a law given as a plain function of the two levels; its slopes are taken
// over a tenth of a micrometre.
type Func func(up, down float64) float64

// Flow implements Law.
func (f Func) Flow(up, down float64) (q, byUp, byDown float64) {
	const h = 1e-7
	q = f(up, down)
	if !math.IsInf(up, 0) {
		byUp = math.Max(0, (f(up+h, down)-q)/h)
	}
	if !math.IsInf(down, 0) {
		byDown = math.Min(0, (f(up, down+h)-q)/h)
	}
	return q, byUp, byDown
}

// Line is a line of pipe, as culverts are treated: the level above it is the
// higher of what its whole length asks for over the level below, and of what it
// asks for where it has air above the water, its mouth among them.
//
//	up = max(down + drowned(q), free(q))
//
// A pump in the line takes its head off both. Both rise with q; so there is one
// flow for two levels, and none while the level above is under that of q = 0.
//
// Source: FHWA 2012, Hydraulic Design of Highway Culverts, HDS-5: inlet or outlet control, whichever passes less.
type Line struct {
	Asks func(q float64) (drowned, free float64)
	Back *Line   // the same line from its other end; nil where nothing can run back
	Loss float64 // of a tee at one of its ends, m for each (m3/s)2: may be below zero

	dry, dryFree float64 // what it asks for at no flow, once it was asked
	asked        bool
	last         answer // where it was last solved
	lastLoss     float64
	found        found
}

// NewLine is a line that asks for so much at a flow.
func NewLine(asks func(q float64) (drowned, free float64)) *Line { return &Line{Asks: asks} }

// Both is what a line asks for, from two functions.
func Both(drowned, free func(q float64) float64) func(q float64) (float64, float64) {
	return func(q float64) (float64, float64) { return drowned(q), free(q) }
}

// need is the level above that a flow asks for, and that alone, and whether it is the level below that holds it up.
func (l *Line) need(q, down float64) (z float64, held bool) {
	drowned, free := l.dry, l.dryFree
	if q != 0 || !l.asked {
		drowned, free = l.Asks(q)
	}
	if q == 0 {
		l.dry, l.dryFree, l.asked = drowned, free, true
	}
	z = free
	if over := down + drowned; over > free || math.IsNaN(drowned) {
		z, held = over, true
	}
	return z + l.Loss*q*q, held
}

// Flow implements Law.
func (l *Line) Flow(up, down float64) (q, byUp, byDown float64) {
	if a := &l.last; !a.known || a.up != up || a.down != down || l.lastLoss != l.Loss {
		l.last, l.lastLoss = l.answer(up, down), l.Loss
	}
	return l.last.q, l.last.byUp, l.last.byDown
}

func (l *Line) answer(up, down float64) answer {
	a := answer{up: up, down: down, known: true}
	if rest, _ := l.need(0, down); rest < up {
		a.q, a.byUp, a.byDown = l.solved(up, down)
	} else if l.Back != nil && !math.IsInf(down, -1) {
		if rest, _ := l.Back.need(0, up); rest < down {
			q, byUp, byDown := l.Back.Flow(down, up)
			a.q, a.byUp, a.byDown = -q, -byDown, -byUp
		}
	}
	return a
}

// levelTolerance is how near the level asked for comes to the level there is, metres; a step along a slope that is known
// brings it so near from levelNear.
const (
	levelTolerance = 1e-12
	levelNear      = 1e-9
)

// greatest is more than any line of this trade carries, m3/s: a line that asks for nothing more is taken as open.
const greatest = 10.0

// found is where a line was last solved: its flow there, and how that goes with the head.
//
//	q = c head^power,  head = the level above less that at which it begins to flow
//
// The power hardly changes from one flow to the next: half to one in a pipe, two thirds over an edge.
type found struct {
	q, head, power float64
	held           bool    // by the level below
	at             float64 // the flow at which the power was seen; zero where it is only a guess
}

// alike is how far, as a share, a flow may be from where a power was seen to have its slope from it.
const alike = 1e-3

// tells says that the power gives the slope at a flow.
func (p found) tells(q float64, held bool) bool {
	return p.power > 0 && p.held == held && math.Abs(q-p.at) < alike*q
}

// solved finds the flow at which need is up, by secant steps in the logarithms of flow and head from where it was
// last found, kept between flows that ask for too little and too much, which are halved (as logarithms) where a
// step does not come nearer.
func (l *Line) solved(up, down float64) (q, byUp, byDown float64) {
	rest := func(held bool) float64 {
		if held {
			return down + l.dry
		}
		return l.dryFree
	}
	lo, hi := 0.0, math.Inf(1)
	p := l.found
	if q = p.q * math.Exp(p.power*math.Log((up-rest(p.held))/p.head)); !(q > 0 && q < greatest) {
		q, p.power, p.at = 3e-4, 0.55, 0
	}
	z, held := l.need(q, down)
	f := z - up
	best := math.Inf(1)
	for range 80 {
		if f < 0 {
			lo = q
		} else {
			hi = q
		}
		if miss := math.Abs(f); miss < levelTolerance || miss < levelNear && p.tells(q, held) || hi-lo < 1e-13*hi || f < 0 && q >= greatest {
			break
		}
		slow := math.Abs(f) > best/2 // it points too far to and fro where the line hardly asks for anything at first
		best = math.Min(best, math.Abs(f))
		next := math.NaN()
		if p.power > 0 && !slow {
			next = q * math.Exp(p.power*math.Log((up-rest(held))/(z-rest(held))))
		}
		if !(next > lo && next < math.Min(hi, 10*q+1e-6)) {
			switch {
			case math.IsInf(hi, 1):
				next = 4*q + 1e-6
			case lo == 0:
				next = hi / 4
			default:
				next = math.Sqrt(lo * hi)
			}
		}
		y, now := l.need(next, down)
		// of two flows that are near, but not as near as rounding is to their levels
		if apart := math.Abs(next-q) / next; now == held && apart > 1e-7 && math.Abs(y-z) > 1e-9 {
			p.power, p.held, p.at = math.Log(next/q)/math.Log((y-rest(now))/(z-rest(now))), now, 0
			if apart < alike {
				p.at = next
			}
		}
		q, z, held, f = next, y, now, y-up
	}
	if p.head = z - rest(held); p.tells(q, held) {
		byUp = p.power * q / p.head
	} else {
		h := math.Max(1e-4*q, 1e-9)
		more, _ := l.need(q+h, down)
		byUp = h / math.Max(more-z, h*1e-3)
		p.power, p.at = byUp*p.head/q, q
	}
	if held {
		byDown = -byUp
	}
	// what the search left, along the slope: wide short lines make a flow of next to nothing
	if next := q - f*byUp; math.Abs(f) < levelNear && next > lo && next < hi {
		q = next
	}
	p.q, p.held = q, held
	l.found = p
	return q, byUp, byDown
}

// forget lets go of what lines remember of their last answers: a trigger may have changed them.
func (n *Network) forget() {
	for _, link := range n.Links {
		link.last.known = false
		for l, _ := link.Law.(*Line); l != nil; l = l.Back {
			l.last.known, l.asked, l.found = false, false, found{}
		}
	}
}
