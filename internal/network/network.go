// Package network works out levels and flows of vessels that lines join: in
// steady flow and in time, from the same equations. It knows numbers only.
//
// Unknown is the level of every node. What flows in a line follows from the
// levels at its two ends: it never falls when the level above rises, and never
// rises when the level below does. So the balance of each node,
//
//	dV(z)/dt = sum of flows in - sum of flows out
//
// has one solution for a step in time, and steady flow is where the steps lead.
package network

import "math"

// Outside is the far end of a line that leaves the loop or comes into it.
const Outside = -1

// Node is where water has one level: a vessel with a free surface or, without a
// volume, a tee in which the water has a pressure and no room.
type Node struct {
	Name   string
	Volume func(z float64) float64 // m3 up to level z, rising with z; nil for a tee
	Rim    float64                 // level at which it spills; of no meaning for a tee
	Fixed  bool                    // its level stays: a lake, a vessel that a keeper holds where it is
}

// teeArea is the cross-section of the standpipe that a tee is given so that its
// pressure is defined when nothing flows: 1 mm2, one millilitre for each metre.
const teeArea = 1e-6

func (n *Node) volume(z float64) float64 {
	if n.Volume == nil {
		return teeArea * z
	}
	return n.Volume(z)
}

// area is dV/dz, over a tenth of a millimetre.
func (n *Node) area(z float64) float64 {
	if n.Volume == nil {
		return teeArea
	}
	const h = 5e-5
	return math.Max((n.Volume(z+h)-n.Volume(z-h))/(2*h), teeArea)
}

// Law gives the flow in a line, m3/s, from the levels at its two ends, and how it
// changes with each of them. A flow from To to From is negative. At an end that
// lies Outside the level is minus infinity.
type Law interface {
	Flow(up, down float64) (q, byUp, byDown float64)
}

// Link is one line between two nodes.
type Link struct {
	Name     string
	From, To int // index of a node, or Outside
	Law      Law
	Shut     bool
	last     answer // what it was last asked, and what it said: the same levels are asked for again and again
}

// answer is a flow and its slopes at two levels.
type answer struct {
	up, down        float64
	q, byUp, byDown float64
	known           bool
}

// Trigger changes the network when its measure falls below zero: a pump draws air,
// a siphon breaks. One that waits for nothing measures plus infinity.
type Trigger struct {
	Name    string
	Measure func(z []float64) float64
	Trip    func() // afterwards the measure is above zero, or the trigger is no longer asked
}

// Network is nodes, the lines between them, and what may change on the way.
type Network struct {
	Nodes    []Node
	Links    []*Link
	Triggers []*Trigger
	Tees     []*Tee
	GoOn     func()  // asked before every step of a search, to break off by a panic; nil where nobody waits
	Allowed  float64 // m: how far the two methods of a step in time may differ; 0.3 mm where it is zero
}

// Node adds a node and gives its index.
func (n *Network) Node(node Node) int {
	n.Nodes = append(n.Nodes, node)
	return len(n.Nodes) - 1
}

// Join adds a line.
func (n *Network) Join(name string, from, to int, law Law) *Link {
	l := &Link{Name: name, From: from, To: to, Law: law}
	n.Links = append(n.Links, l)
	return l
}

// On adds a trigger.
func (n *Network) On(name string, measure func(z []float64) float64, trip func()) {
	n.Triggers = append(n.Triggers, &Trigger{Name: name, Measure: measure, Trip: trip})
}

// Held is the water in all nodes at the levels z, m3, but for those with a fixed level.
func (n *Network) Held(z []float64) float64 {
	v := 0.0
	for i := range n.Nodes {
		if node := &n.Nodes[i]; !node.Fixed {
			v += node.volume(z[i])
		}
	}
	return v
}

// flow is what runs in a link at levels z.
func (l *Link) flow(z []float64) (q, byUp, byDown float64) {
	if l.Shut {
		return 0, 0, 0
	}
	up, down := math.Inf(-1), math.Inf(-1)
	if l.From != Outside {
		up = z[l.From]
	}
	if l.To != Outside {
		down = z[l.To]
	}
	if a := &l.last; !a.known || a.up != up || a.down != down {
		a.q, a.byUp, a.byDown = l.Law.Flow(up, down)
		a.up, a.down, a.known = up, down, true
	}
	return l.last.q, l.last.byUp, l.last.byDown
}

// Flows is what runs in every link at levels z.
func (n *Network) Flows(z []float64) []float64 { return n.flows(z, make([]float64, len(n.Links))) }

func (n *Network) flows(z, q []float64) []float64 {
	for i, l := range n.Links {
		q[i], _, _ = l.flow(z)
	}
	return q
}

// net is what comes into every node at levels z, less what goes out; nothing where the level is fixed.
func (n *Network) net(z, into []float64) {
	clear(into)
	for _, l := range n.Links {
		q, _, _ := l.flow(z)
		if l.From != Outside {
			into[l.From] -= q
		}
		if l.To != Outside {
			into[l.To] += q
		}
	}
	for i := range n.Nodes {
		if n.Nodes[i].Fixed {
			into[i] = 0
		}
	}
}
