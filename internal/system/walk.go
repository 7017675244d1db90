package system

import (
	"math"
	"slices"
)

// What is taken as drawing tolerance and rounding.
const (
	gapAllowed = 0.005 // metres between two given heights that no piece makes up
	hair       = 1e-6  // metres by which a fitted length may come out below zero
)

// A mark is a height that the file gives at the start of a piece (or, when the
// index is that of no piece, at the end of the line).
type mark struct {
	index   int
	z       Linear
	pointer string // where a problem with it is shown
	name    string // "the intake at 20 mm"
}

// A step is what one piece does to the height between its two ends.
type step struct {
	kind  stepKind
	climb Linear  // upwards, when kind is fixed
	slope float64 // climb for each metre of length, when kind is fitted or upright
}

type stepKind int

const (
	fixed   stepKind = iota
	fitted           // its length closes the heights
	upright          // a standpipe: fitted when nothing else is
	loose            // a hose: climbs as it likes
	slack            // a cuff: takes up an offset
)

// A walker goes along the lines of a system.
type walker struct {
	ps   *problems
	seen map[*Line]bool // walked, or being walked
	done map[*Line]bool // walked
}

// walk works out the heights, lengths and turns of every line.
func walk(s *System, ps *problems) {
	w := walker{ps, map[*Line]bool{}, map[*Line]bool{}}
	for _, l := range s.Lines {
		w.line(l)
	}
}

func (w *walker) line(l *Line) {
	if w.seen[l] {
		return
	}
	w.seen[l] = true
	steps := make([]step, len(l.Pieces))
	for i := range l.Pieces {
		steps[i] = w.step(l, i)
	}
	inside(l)
	marks := w.marks(l)
	for i, z := range w.solve(l, marks, steps) {
		if i > 0 {
			l.Pieces[i-1].To = z
		}
		if i < len(l.Pieces) {
			l.Pieces[i].From = z
		}
	}
	for i, p := range l.Pieces {
		p.Turn = turnOf(p)
		p.Direction, p.HasDirection = l.directionAfter(i)
		if !p.Fitted {
			p.Length = p.measured()
		}
		for _, t := range append(p.To.Terms, p.Length.Terms...) {
			t.Number.look()
		}
	}
	openTops(l)
	w.turns(l)
	w.done[l] = true
}

// measured is the length of a piece along its centreline, as far as the file gives it.
func (p *Piece) measured() Linear {
	switch {
	case p.Run != nil && p.Run.Height.given:
		return Of(p.Run.Height).Times(1 / math.Sin(p.Run.Angle.si))
	case p.Run != nil:
		return Of(p.Run.Length)
	case p.Hose != nil:
		return Of(p.Hose.Length)
	case p.Cuff != nil && p.Cuff.Span.given:
		return Of(p.Cuff.Span)
	case p.upright():
		return p.From.Minus(p.To)
	case p.Tee != nil:
		return p.Tee.row()
	}
	return Linear{}
}

// unknown says whether the piece is of no kind that there is: the schema has
// said so, and nothing more is said of the heights and turns beside it.
func (p *Piece) unknown() bool { return !slices.Contains(kinds, p.Kind) }

var kinds = []string{
	"intake", "floor_drain", "standpipe", "bell_siphon", "outlet", "across", "rise", "fall", "slope", "bend", "sweep", "tee",
	"valve", "check_valve", "union", "clean_out", "cap", "reducer", "siphon_break", "through", "over", "cuff", "hose", "pump", "device",
}

func (p *Piece) upright() bool { return p.Standpipe != nil || p.BellSiphon != nil }

// row is the length of a row of tees, centre of the first to centre of the last.
func (t *Tee) row() Linear {
	if !t.Count.given || t.Count.si < 2 {
		return Linear{}
	}
	return Of(t.Every).Times(t.Count.si - 1)
}

// step says what a piece does to the height.
func (w *walker) step(l *Line, i int) step {
	p := l.Pieces[i]
	switch {
	case p.Hose != nil || p.unknown():
		return step{kind: loose}
	case p.Cuff != nil:
		return step{kind: slack}
	case p.upright():
		return step{kind: upright, slope: -1}
	case p.Tee != nil:
		return step{climb: p.Tee.row().Times(math.Sin(l.elevationNear(i)))}
	case p.Run == nil:
		return step{}
	}
	slope := map[string]float64{"rise": 1, "fall": -1}[p.Kind]
	if p.Kind == "slope" {
		angle := p.Run.Angle
		angle.look()
		if !angle.given || angle.si <= 0 || angle.si >= plumb {
			return step{climb: unknown(angle.pointer)}
		}
		if slope = math.Sin(angle.si); p.Run.Down {
			slope = -slope
		}
	}
	switch r := p.Run; {
	case w.ps.broken[child(p.Value, "way")]:
		return step{climb: unknown(p.Pointer)}
	case r.Fit:
		return step{kind: fitted, slope: slope}
	case r.Height.given:
		return step{climb: w.of(r.Height).Times(math.Copysign(1, slope))}
	case slope == 0:
		return step{}
	default:
		return step{climb: w.of(r.Length).Times(slope)}
	}
}

// heightOf is the leaf that gives a piece its height, and the vessel from whose
// inner floor it counts (nil for the datum). The leaf has no pointer when the piece has none.
func (p *Piece) heightOf() (Number, *Vessel) {
	from, to := p.Line.From.Vessel, p.Line.To.Vessel
	switch {
	case p.Intake != nil:
		return p.Intake.At, from
	case p.FloorDrain != nil:
		return p.FloorDrain.TailAt, from
	case p.Standpipe != nil:
		return p.Standpipe.CrestAt, from
	case p.BellSiphon != nil:
		return p.BellSiphon.CrestAt, from
	case p.Tee != nil:
		return p.Tee.At, from
	case p.Outlet != nil:
		return p.Outlet.At, to
	case p.SiphonBreak != nil:
		return p.SiphonBreak.At, p.In
	case p.Through != nil && p.Through.Vessel != nil && !p.Through.FloorOf.given:
		return p.Through.At, p.Through.Vessel
	case p.Over != nil && p.Over.Vessel != nil:
		return p.Over.At, p.Over.Vessel
	}
	return Number{}, nil
}

// marks lists the heights that the file gives along a line, in order.
func (w *walker) marks(l *Line) []mark {
	var out []mark
	if l.From.unresolved() {
		out = append(out, mark{0, unknown(l.From.Pointer), l.From.Pointer, "its start"})
	} else if z, ok := w.tee(l.From); ok {
		out = append(out, mark{0, z, l.From.Pointer, "the tee that it starts from"})
	}
	for i, p := range l.Pieces {
		if z, pointer, ok := w.mark(p); ok {
			out = append(out, mark{i, z, pointer, p.name()})
		}
	}
	if l.To.unresolved() {
		out = append(out, mark{len(l.Pieces), unknown(l.To.Pointer), l.To.Pointer, "its end"})
	} else if z, ok := w.tee(l.To); ok {
		out = append(out, mark{len(l.Pieces), z, l.To.Pointer, "the tee where it ends"})
	}
	return out
}

// mark is the height that the file gives a piece, if it gives one. What another
// layer has refused counts as given and not known.
func (w *walker) mark(p *Piece) (z Linear, pointer string, given bool) {
	if p.unknown() {
		return unknown(p.Pointer), p.Pointer, true
	}
	for _, side := range p.sides() {
		if w.ps.broken[side.pointer] || w.ps.broken[p.Pointer] {
			return unknown(p.Pointer), p.Pointer, true
		}
	}
	if p.Through != nil && p.Through.FloorOf.given && p.Through.Vessel != nil {
		return w.of(p.Through.Vessel.StandsAt), p.Pointer, true
	}
	at, above := p.heightOf()
	if !at.given && !w.ps.broken[at.pointer] {
		return Linear{}, "", false
	}
	z = w.of(at)
	switch end := p.end(); {
	case above != nil:
		z = z.Plus(w.of(above.StandsAt))
	case end != nil && end.unresolved():
		z = unknown(end.Pointer)
	}
	if p.SiphonBreak != nil && w.doubtful(p.Line) {
		z = unknown(at.pointer) // the vessel it stands in follows from the crossings
	}
	return z, at.pointer, true
}

// doubtful says whether a line has a piece that another layer has refused.
func (w *walker) doubtful(l *Line) bool {
	return slices.ContainsFunc(l.Pieces, func(p *Piece) bool {
		return p.unknown() || w.ps.broken[p.Pointer] || slices.ContainsFunc(p.sides(), func(side Word) bool { return w.ps.broken[side.pointer] })
	})
}

// unresolved says whether an end leads nowhere: a problem has been told of it.
func (e *End) unresolved() bool { return e.Vessel == nil && e.Line == nil && e.Outer == "" }

// sides is the leaves that may name the vessel that a piece crosses.
func (p *Piece) sides() []Word {
	switch {
	case p.Through != nil:
		return []Word{p.Through.WallOf, p.Through.FloorOf, p.Through.LidOf}
	case p.Over != nil:
		return []Word{p.Over.RimOf}
	}
	return nil
}

// end is the end of its line from which the height of a piece counts, if it is one of the two.
func (p *Piece) end() *End {
	switch {
	case p.Outlet != nil:
		return &p.Line.To
	case p.Through == nil && p.Over == nil && p.SiphonBreak == nil:
		return &p.Line.From
	}
	return nil
}

// of is a value of the file as a sum, unknown if another layer has refused it.
func (w *walker) of(n Number) Linear {
	if w.ps.broken[n.pointer] {
		return unknown(n.pointer)
	}
	return Of(n)
}

// tee is the height at which an end meets another line.
func (w *walker) tee(e End) (Linear, bool) {
	if e.Line == nil {
		return Linear{}, false
	}
	t := e.Line.Tee(e.Tee)
	if z, _, given := w.mark(t); given {
		return z, true
	}
	w.line(e.Line)
	if !w.done[e.Line] {
		w.ps.add(t.Pointer, "a tee whose height follows from a line that starts or ends at it", "give this tee its height: `at`")
		return Linear{}, false
	}
	return t.From, true
}
