package report

import (
	"io"
	"math"
	"slices"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// Columns of the table of a day, counted from 0: numbers end where they say.
const (
	dayLabelAt = 13
	dayUnitAt  = 70
	dayRangeAt = 84
)

var dayEnds = [3]int{51, 60, 69} // water at its low, usual and high temperature

// usualWater is the place of the usual temperature among the three.
const usualWater = 1

// HasDay says that a loop has fish or beds, so that there is a day of fish to tell.
func HasDay(l *working.Ledger) bool { return l != nil && len(l.Sets["the_water"]) > 0 }

// Day writes a day of fish on a page of its own. It answers false when something
// cannot be said because an input is missing.
func Day(w io.Writer, s *system.System, l *working.Ledger, o Options) (complete bool, err error) {
	p := newPage(&review.Review{System: s, Ledger: l}, o)
	lines := p.day()
	if words := p.words.explain(lines); words != "" {
		lines = append(lines, labelled("Words", words, caseAt, caseAt+7, bodyWidth, noInk)...)
	}
	complete = !slices.ContainsFunc(p.dayRows(), func(r dayRow) bool { return len(r.gaps()) > 0 })
	return complete, write(w, lines, p.wide, o.Colour)
}

// day is the section on what becomes of the feed of a day, with the water at its
// low, usual and high temperature.
func (p *page) day() []line {
	if !HasDay(p.Ledger) {
		return nil
	}
	rows := p.dayRows()
	out := []line{line{}.add("A DAY OF FISH", waterInk).at(dayLabelAt+3).add("what a day of feed turns into, and what the loop does with it", noInk)}
	if why, all := p.dayUnknown(rows); all {
		return append(append(out, line{}), paragraph("? Nothing of it can be said yet. "+sentence(capital(why)), caseAt, bodyWidth)...)
	}
	alike := !slices.ContainsFunc(rows, func(r dayRow) bool { return !r.alike(p.in) })
	out = append(out, p.dayHead(alike)...)
	lead := ""
	for _, r := range rows {
		out = append(out, p.dayLines(r, r.lead != lead, alike)...)
		lead = r.lead
	}
	for i, text := range p.dayWords(rows, alike) {
		if i == 0 {
			out = append(out, line{})
		}
		out = append(out, paragraph(text, caseAt, bodyWidth)...)
	}
	return out
}

// dayHead names the columns by the temperature of the water.
func (p *page) dayHead(alike bool) []line {
	out := paragraph("Pump at its least flow. Ammonia and nitrate count as N, alkalinity as CaCO3.", caseAt, bodyWidth)
	for i, in := range p.systems() {
		head := line{}
		if i == 0 {
			head = line{}.at(dayLabelAt).add("in water at", noInk)
		}
		for k, end := range dayEnds {
			text := working.Waters[k]
			if t, given := p.temperature(k); given {
				text = shown(quantity.Temperature, t, in)
			}
			if alike && k < len(dayEnds)-1 {
				continue
			}
			head = head.right(text, end, waterInk)
		}
		if i == 0 && p.wide > bodyWidth {
			head = head.at(dayRangeAt).add("range, as usual", noInk)
		}
		out = append(out, head)
	}
	return out
}

// systems is the families of units that the page shows.
func (p *page) systems() []quantity.System {
	if p.both && p.in != quantity.US {
		return []quantity.System{p.in, quantity.US}
	}
	return []quantity.System{p.in}
}

// temperature is that of the water: low, usual, high.
func (p *page) temperature(k int) (float64, bool) {
	if p.System == nil {
		return 0, false
	}
	t := p.System.Water.Temperature
	return [3]system.Number{t.Low, t.Usual, t.High}[k].SI()
}

// dayLines is one row, and the same in US units beneath it where both are wanted.
func (p *page) dayLines(r dayRow, first, alike bool) []line {
	var out []line
	before := ""
	for _, in := range p.systems() {
		cells, unit := r.cells(in)
		if before == unit && len(out) > 0 {
			break // no US unit for it
		}
		before = unit
		l := line{}
		labels := []string{}
		if len(out) == 0 {
			if first {
				l = l.at(caseAt).add(r.lead, noInk)
			}
			labels = wrap(r.label, dayEnds[0]-dayLabelAt-7)
			l = l.at(dayLabelAt).add(labels[0], noInk)
		}
		for k, end := range dayEnds {
			text := cells[k]
			if alike {
				if text = ""; k == len(dayEnds)-1 {
					text = cells[r.somewhere()]
				}
			}
			if text != "" {
				l = l.right(text, end, openWhen(text == "?"))
			}
		}
		l = l.at(dayUnitAt).add(unit, noInk)
		if n := r.at[usualWater]; n != nil && p.wide > bodyWidth {
			if v, known := n.Value(); known {
				l = l.at(dayRangeAt).add(r.rangeShown(v, in), noInk)
			}
		}
		out = append(out, l)
		for _, more := range labels[min(1, len(labels)):] {
			out = append(out, line{}.at(dayLabelAt+2).add(more, noInk))
		}
	}
	return out
}

func openWhen(open bool) ink {
	if open {
		return openInk
	}
	return noInk
}

// dayRow is one row: what it is, and how much in water at each temperature.
type dayRow struct {
	lead, label string
	unit        string           // "%" or "day": in place of what suits the size
	at          [3]*working.Node // nil where it does not hang on the temperature, but for the usual one
}

// somewhere is a temperature for which there is something.
func (r dayRow) somewhere() int {
	return max(0, slices.IndexFunc(r.at[:], func(n *working.Node) bool { return n != nil }))
}

// alike says that the row shows the same at every temperature.
func (r dayRow) alike(in quantity.System) bool {
	cells, _ := r.cells(in)
	for k, n := range r.at {
		if n != nil && cells[k] != cells[r.somewhere()] {
			return false
		}
	}
	return true
}

// gaps is what is missing, each once.
func (r dayRow) gaps() []working.Gap {
	var out []working.Gap
	for _, n := range r.at {
		if n == nil {
			continue
		}
		for _, g := range n.Gaps() {
			if !slices.Contains(out, g) {
				out = append(out, g)
			}
		}
	}
	return out
}

// perDay is the units for water that is used in a day.
var perDay = map[quantity.System]string{quantity.Metric: "L/d", quantity.US: "gal(US)/d"}

// aYear is the time beyond which a time is not said.
const aYear = 365 * 86400

// unitIn is the unit of a row: the one that suits the greatest of its numbers.
// Times have theirs in each cell.
func (r dayRow) unitIn(in quantity.System) (kind quantity.Kind, unit string) {
	most := 0.0
	for _, n := range r.at {
		if n == nil {
			continue
		}
		kind = n.Kind
		if v, known := n.Value(); known {
			most = math.Max(most, math.Abs(v.X))
		}
	}
	switch {
	case r.unit == "%":
		return quantity.Fraction, "%"
	case r.unit == "day":
		return kind, perDay[in]
	case kind == quantity.Time:
		return kind, ""
	}
	_, unit = numberUnit(shown(kind, most, in))
	return kind, unit
}

// cells is the numbers of a row, and their unit.
func (r dayRow) cells(in quantity.System) (out [3]string, unit string) {
	kind, unit := r.unitIn(in)
	for k, n := range r.at {
		if n == nil {
			continue
		}
		v, known := n.Value()
		switch {
		case !known:
			out[k] = "?"
		case kind == quantity.Time && v.X >= aYear:
			out[k] = "over 1 y"
		case kind == quantity.Time:
			out[k] = about(kind, v.X, in)
		case r.unit == "%" && v.X > 99:
			out[k] = "over 9900"
		case r.unit == "%":
			out[k] = inUnit(kind, v.X, unit, 2)
		default:
			out[k] = inUnit(kind, v.X, unit, 0)
		}
	}
	return out, unit
}

// rangeShown is the range in which the sources leave a number of the row; empty without one.
func (r dayRow) rangeShown(v working.Value, in quantity.System) string {
	if !v.Spread() {
		return ""
	}
	kind, unit := r.unitIn(in)
	digits := 0
	switch {
	case kind == quantity.Time:
		return timeRange(v, in)
	case unit == "%":
		digits = 2
	}
	low, high := inUnit(kind, v.Low, unit, digits), inUnit(kind, v.High, unit, digits)
	if low == high {
		return ""
	}
	return strings.TrimSpace(low + " to " + high + " " + unit)
}
