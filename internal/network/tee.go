package network

import "math"

// Tee is where three lines meet: what its fitting takes from the water depends on
// how the flow divides there.
type Tee struct {
	Common, Run, Branch *Link // the whole flow is in Common
	K                   func(share float64) (run, branch float64)
	Area                float64 // of the common leg: K stands on its speed
}

// settle sets the losses of the two legs after the flows at levels z, and says by
// how much they moved, as a share of one velocity head. A coefficient may be below
// zero: the stream of one leg drags the other along.
func (t *Tee) settle(z []float64) float64 {
	if t.Common.Shut || t.Run.Shut || t.Branch.Shut {
		return 0
	}
	common, _, _ := t.Common.flow(z)
	run, _, _ := t.Run.flow(z)
	branch, _, _ := t.Branch.flow(z)
	whole := math.Max(math.Abs(common), math.Abs(run)+math.Abs(branch))
	if whole < 1e-9 {
		return 0
	}
	kr, kb := t.K(math.Min(1, math.Max(0, branch/whole)))
	return math.Max(t.set(t.Run, kr, run, whole), t.set(t.Branch, kb, branch, whole))
}

// set gives a leg the loss K V^2/2g of the common leg as one on its own flow.
func (t *Tee) set(leg *Link, k, q, whole float64) float64 {
	line, ok := leg.Law.(*Line)
	if !ok || q < 1e-3*whole {
		return 0
	}
	const g = 9.80665
	one := 1 / (2 * g * t.Area * t.Area) // of a coefficient of one on this flow
	loss := k * one * (whole / q) * (whole / q)
	moved := math.Abs(loss-line.Loss) / one
	line.Loss += 0.7 * (loss - line.Loss)
	leg.last.known = false
	return moved
}

func (n *Network) settleTees(z []float64) float64 {
	moved := 0.0
	for _, t := range n.Tees {
		moved = math.Max(moved, t.settle(z))
	}
	return moved
}
