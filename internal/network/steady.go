package network

import (
	"fmt"
	"math"
)

// Steady is where a network comes to rest, or why it does not.
type Steady struct {
	Z       []float64 // level of every node
	Q       []float64 // flow in every link
	Found   bool
	Reason  string   // why there is none
	Tripped []string // names of the triggers that tripped on the way, in order
	Left    float64  // the greatest of what the balances of the nodes leave over, m3/s
}

const (
	firstStep  = 5.0  // s
	growth     = 4.0  // of each step over the last
	lastStep   = 1e5  // s: longer than a loop needs to settle; more, and rounding makes water
	mostSteps  = 200  // then there is no rest
	longRun    = 1e6  // s
	mostRested = 500  // steps in time, where others fail: some 150 are enough if there is rest at all
	mostTrips  = 8    // of one trigger: it goes to and fro
	steadyFlow = 1e-9 // m3/s: what a balance may leave over at rest
	teeMoved   = 1e-7 // of a tee's coefficient, at rest
)

// Steady looks for steady flow from the levels z, by implicit steps in time that
// grow until the time does not matter (pseudo-transient continuation). The water
// held at the beginning is the water there is: what leaves the loop is gone.
func (n *Network) Steady(z []float64) Steady {
	s := newStepper(n)
	s.toRest = true
	out := Steady{Z: append([]float64{}, z...)}
	trips := map[string]int{}
	base := make([]float64, len(n.Nodes))
	before := make([]float64, len(n.Nodes))
	n.settleTees(out.Z)
	h, near := firstStep, false
	if len(n.Triggers) == 0 { // nothing can trip on the way, and it may stand near enough to be found at once
		h, near = lastStep, true
	}
	for range mostSteps {
		for i := range n.Nodes {
			base[i] = n.Nodes[i].volume(out.Z[i])
		}
		copy(before, out.Z)
		if !s.solve(out.Z, base, h) {
			copy(out.Z, before)
			if h /= 8; near {
				h, near = firstStep, false
			}
			if h < 1e-6 {
				out.Reason = "no levels were found at which the flows balance"
				return out.finish(n, s)
			}
			continue
		}
		near = false
		moved := n.settleTees(out.Z)
		if name, tripped := n.trip(out.Z); tripped {
			out.Tripped = append(out.Tripped, name)
			if trips[name]++; trips[name] > mostTrips {
				out.Reason = "it never comes to rest: " + name + ", again and again"
				return out.finish(n, s)
			}
			h = firstStep
			continue
		}
		if h >= lastStep && s.greatest(out.Z) < steadyFlow && moved < teeMoved {
			out.Found = true
			return out.finish(n, s)
		}
		h = math.Min(h*growth, lastStep)
	}
	out.Reason = fmt.Sprintf("it did not come to rest in %d steps", mostSteps)
	if r := n.run(z, longRun, mostRested); r.Still && len(out.Tripped) == 0 { // short steps may find what long ones step over
		out.Z, out.Found, out.Reason = r.Ends(), true, ""
	}
	return out.finish(n, s)
}

func (s Steady) finish(n *Network, st *stepper) Steady {
	s.Q, s.Left = n.Flows(s.Z), st.greatest(s.Z)
	return s
}

// trip lets the first trigger whose measure is below zero change the network.
func (n *Network) trip(z []float64) (string, bool) {
	for _, t := range n.Triggers {
		if t.Measure(z) < 0 {
			t.Trip()
			n.forget()
			return t.Name, true
		}
	}
	return "", false
}
