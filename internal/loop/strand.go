package loop

import (
	"math"

	"dryfit/internal/network"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// strand adds a line, or a part of one, with the law that its pieces give it.
func (y *layout) strand(b *bench, name string, l *system.Line, from, to int) *strand {
	k := &strand{name: name, line: l, pieces: l.Pieces, from: from, to: to, pumped: l.Pumped}
	y.lines = append(y.lines, k)
	k.reads = y.s.tracing(func() { k.law = y.lawOf(b, l) })
	return k
}

// lawOf lays out what a line, or a part of one, lets through.
func (y *layout) lawOf(b *bench, l *system.Line) func(x []float64) network.Law {
	switch {
	case l.Pumped:
		w := b.lift(y.s, l, y.runCase != working.RunLeast)
		return func(x []float64) network.Law { return w.law(x) }
	case len(l.Pieces) == 0:
		return func([]float64) network.Law {
			return network.NewLine(func(q float64) (drowned, free float64) { return q, math.Inf(-1) })
		}
	case pressed(l):
		w := b.press(y.s, l, y.runCase != working.RunLeast)
		return func(x []float64) network.Law { return w.law(x) }
	default:
		w := b.way(y.s, l)
		back := b.back(y.s, l)
		return func(x []float64) network.Law {
			line := w.law(x)
			line.Back = back(x)
			return line
		}
	}
}

// pressed says that a part of a line stands behind a pump, which presses the water through it.
func pressed(l *system.Line) bool {
	for range 20 {
		if l.From.Line == nil {
			return false
		}
		if l.From.Line.Pumped {
			return true
		}
		l = l.From.Line
	}
	return false
}

func (w way) law(x []float64) *network.Line {
	return network.NewLine(func(q float64) (drowned, free float64) { return w(q, x) })
}

// law is that of a line with pumps: none runs until they lift the water to its rest.
func (w lifted) law(x []float64) network.Law {
	h, err := w.heads(x)
	if err != nil {
		return network.Constant(math.NaN())
	}
	line := network.NewLine(func(q float64) (drowned, free float64) {
		drowned, free = w.way(q, x)
		head := h.past(q)
		return drowned - head, free - head
	})
	return raised{line, w.rest(x) - h.head(0)}
}

// band is how far over the level at which it stops a pump gives less and less, metres.
const band = 0.005

// raised is a law that holds while the level above stands over a height: of a pump that
// lifts to a crest, or whose intake draws air. It comes in over a band above that
// height, as a trickle over a crest does.
type raised struct {
	network.Law
	least float64
}

// Flow implements network.Law.
func (r raised) Flow(up, down float64) (q, byUp, byDown float64) {
	share := (up - r.least) / band
	if share <= 0 {
		return 0, 0, 0
	}
	q, byUp, byDown = r.Law.Flow(up, down)
	if share >= 1 {
		return q, byUp, byDown
	}
	return q * share, byUp*share + q/band, byDown * share
}

// press lays out a part of a line behind a pump: it is full, so that no crest holds the
// water up but in the least case, in which it holds air.
func (b *bench) press(s *shape, l *system.Line, primed bool) way {
	if !primed {
		return b.way(s, l)
	}
	full := *b
	full.primed = true
	return full.way(s, l)
}

// back lays out a gravity line as it would run the other way: the water below must
// stand over its highest inside bottom, and then asks for its losses.
func (b *bench) back(s *shape, l *system.Line) func(x []float64) *network.Line {
	loss := s.loss(b.elements(l))
	brim := s.take(working.In("zi", b.brim(l)))[0]
	return func(x []float64) *network.Line {
		return network.NewLine(func(q float64) (drowned, free float64) {
			all := loss(q, x, -1)
			return all, x[brim] + all
		})
	}
}
