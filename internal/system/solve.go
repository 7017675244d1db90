package system

import (
	"cmp"
	"fmt"
	"math"

	"dryfit/internal/quantity"
)

// solve works out the height at the start of each piece and at the end of the
// line: from mark to mark, forwards and backwards. One fitted piece between two
// marks gets the length that closes them.
func (w *walker) solve(l *Line, marks []mark, steps []step) []Linear {
	levels := make([]Linear, len(steps)+1)
	if len(marks) == 0 {
		w.unmarked(l, steps, 0, len(steps), "")
		levels[0] = unknown(l.Pointer)
		onwards(l, levels, steps, 0)
		return levels
	}
	for i, m := range marks {
		levels[m.index] = m.z
		if i+1 < len(marks) {
			w.between(l, m, marks[i+1], steps, levels)
		}
	}
	first, last := marks[0], marks[len(marks)-1]
	w.unmarked(l, steps, 0, first.index, first.name)
	back(l, levels, steps, first.index, 0)
	w.unmarked(l, steps, last.index, len(steps), last.name)
	onwards(l, levels, steps, last.index)
	return levels
}

// between closes the heights of two neighbouring marks.
func (w *walker) between(l *Line, a, b mark, steps []step, levels []Linear) {
	var of [slack + 1][]int
	need := b.z.Minus(a.z) // what is left to climb
	for i := a.index; i < b.index; i++ {
		of[steps[i].kind] = append(of[steps[i].kind], i)
		need = need.Minus(steps[i].climb)
	}
	fits, looses := of[fitted], of[loose]
	if len(fits) == 0 {
		fits = of[upright]
	} else {
		settle(steps, of[upright])
	}
	if len(fits) > 0 {
		settle(steps, of[slack])
	} else if len(of[slack]) > 1 {
		settle(steps, of[slack][1:]) // one cuff is enough to take up an offset
	}
	climb, sure := need.Value()
	switch {
	case len(fits) > 1:
		w.ps.add(l.Pieces[fits[1]].Pointer, "a second `fit` between "+a.name+" and "+b.name,
			"give the length of one of them: only one can be worked out")
	case len(looses) > 0 && l.Pieces[looses[0]].unknown():
		settle(steps, fits)
	case len(fits) == 1 && len(looses) > 0:
		w.ps.add(l.Pieces[fits[0]].Pointer, "a `fit` and a hose between "+a.name+" and "+b.name,
			"give this length: the hose takes up what is left")
	case len(fits) == 1:
		w.fit(l.Pieces[fits[0]], &steps[fits[0]], need, a, b)
	case !sure:
	case len(looses) == 1:
		w.hose(l.Pieces[looses[0]], climb, a, b)
	case len(looses) == 0 && math.Abs(climb) > gapAllowed && !takesUp(l, of[slack], climb):
		w.gap(climb, a, b)
	}
	at := a.index
	for ; at < b.index && steps[at].kind == fixed; at++ {
		levels[at+1] = levels[at].Plus(steps[at].climb)
	}
	levels[b.index] = b.z
	back(l, levels, steps, b.index, at+1)
}

// settle takes pieces that could make up a height as making up none.
func settle(steps []step, which []int) {
	for _, i := range which {
		steps[i] = step{}
	}
}

// fit gives a fitted piece the length that makes up a climb.
func (w *walker) fit(p *Piece, st *step, climb Linear, a, b mark) {
	length := climb.Times(1 / st.slope)
	metres, sure := length.Value()
	switch {
	case sure && metres < -hair:
		w.wrongWay(p, metres, a, b)
		length, climb = Linear{}, Linear{}
	case sure && metres < hair:
		length, climb = Linear{}, Linear{}
	}
	p.Length, p.Fitted = length, st.kind == fitted
	*st = step{climb: climb}
}

// wrongWay reports a fit whose length comes out below zero.
func (w *walker) wrongWay(p *Piece, length float64, a, b mark) {
	found, write := fmt.Sprintf("this %s would have to be %s", p.Kind, millimetres(length)), "turn the slope the other way"
	if p.upright() {
		w.ps.add(p.Pointer, fmt.Sprintf("a crest %s under %s", millimetres(-length), b.name), "raise the crest or lower "+b.name)
		return
	}
	if other := map[string]string{"rise": "fall", "fall": "rise"}[p.Kind]; other != "" {
		write = "write `" + other + ": fit`"
	}
	w.ps.add(p.Pointer, found, write+", or change the height of "+a.name+" or of "+b.name)
}

// hose checks that a hose is long enough for its climb.
func (w *walker) hose(p *Piece, climb float64, a, b mark) {
	if length := p.Hose.Length; length.given && length.si > 0 && length.si+gapAllowed < math.Abs(climb) {
		w.ps.add(length.pointer, fmt.Sprintf("a hose of %s between heights %s apart", millimetres(length.si), millimetres(math.Abs(climb))),
			"use a longer hose, or bring "+a.name+" and "+b.name+" closer")
	}
}

// takesUp says whether a cuff can take up a gap: at most as much as its span, when that is given.
func takesUp(l *Line, cuffs []int, gap float64) bool {
	for _, i := range cuffs {
		if span := l.Pieces[i].Cuff.Span; !span.given || math.Abs(gap) <= span.si {
			return true
		}
	}
	return false
}

func (w *walker) gap(climb float64, a, b mark) {
	side := "under"
	if climb < 0 {
		side = "above"
	}
	w.ps.add(b.pointer, fmt.Sprintf("a gap of %s: from %s the pieces end %s %s", millimetres(math.Abs(climb)), a.name, side, b.name),
		"write `fit` for one rise, fall or slope between them, or put one there")
}

// unmarked looks at the pieces before the first mark or after the last. A cuff
// has nothing to take up there and a fit nothing to close.
func (w *walker) unmarked(l *Line, steps []step, from, to int, mark string) {
	open := "" // a height that the file could give and does not
	for _, p := range l.Pieces[from:to] {
		if at, _ := p.heightOf(); at.pointer != "" && !at.given {
			open = at.pointer
		}
	}
	for i := from; i < to; i++ {
		p := l.Pieces[i]
		switch {
		case steps[i].kind == slack:
			steps[i].kind = fixed
		case steps[i].kind == upright || steps[i].kind == fitted && open != "":
			p.Length, p.Fitted = unknown(cmp.Or(open, p.Pointer)), steps[i].kind == fitted
			steps[i] = step{climb: p.Length.Times(steps[i].slope)}
		case steps[i].kind == fitted && mark == "":
			w.ps.add(p.Pointer, "a `fit` with nothing to fit to: this line gives no height", "give its length")
		case steps[i].kind == fitted:
			w.ps.add(p.Pointer, "a `fit` with nothing to fit to: "+mark+" is the only height beside it", "give its length")
		}
	}
}

// onwards carries heights with the flow from an index to the end of the line.
func onwards(l *Line, levels []Linear, steps []step, from int) {
	for i := from; i < len(steps); i++ {
		if levels[i+1] = levels[i].Plus(steps[i].climb); steps[i].kind != fixed {
			levels[i+1] = unknown(l.Pieces[i].Pointer)
		}
	}
}

// back carries heights against the flow from one index down to another.
func back(l *Line, levels []Linear, steps []step, from, to int) {
	for i := from - 1; i >= to; i-- {
		if levels[i] = levels[i+1].Minus(steps[i].climb); steps[i].kind != fixed {
			levels[i] = unknown(l.Pieces[i].Pointer)
		}
	}
}

// unknown is a sum that is not known, for want of what could stand at a pointer.
func unknown(pointer string) Linear {
	return Of(Number{Leaf: Leaf{pointer: pointer}, kind: quantity.Length})
}

// millimetres writes a length for a problem.
func millimetres(m float64) string { return fmt.Sprintf("%.0f mm", m*1000) }
