package report

import (
	"strconv"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// part is a vessel, a line, or something that is neither (the mains, the water),
// with what was judged of it.
type part struct {
	name       string
	vessel     *system.Vessel
	line       *system.Line
	judgements []*review.Judgement
	findings   []*review.Finding
}

// page is one review being written.
type page struct {
	*review.Review
	in        quantity.System
	both      bool
	shareEnd  int
	wide      int // columns of what stands across the page
	words     glossary
	flags     map[*review.Judgement]*review.Finding
	explained map[*review.Clause]int // the flag at which the sources of a clause stand
	opened    map[string]int         // the flag at which it is said what is missing
}

func newPage(r *review.Review, o Options) *page {
	p := &page{
		Review: r, in: o.Units, both: o.Both, shareEnd: shareEnd, wide: bodyWidth,
		flags: map[*review.Judgement]*review.Finding{}, explained: map[*review.Clause]int{}, opened: map[string]int{},
	}
	if o.Width >= wideFrom {
		p.wide = o.Width
	}
	for _, f := range r.Findings {
		p.flags[f.Judgement] = f
		p.shareEnd = min(p.shareEnd, shareEnd+1-len(strconv.Itoa(f.Number)))
	}
	return p
}

// parts sorts what was judged to the parts it belongs to, in the order round the loop.
func (p *page) parts() []*part {
	var out []*part
	at := map[string]*part{}
	add := func(q *part) *part {
		out, at[q.name] = append(out, q), q
		return q
	}
	if p.System != nil {
		for _, stop := range p.System.Round() {
			switch {
			case stop.Vessel != nil:
				add(&part{name: stop.Vessel.ID, vessel: stop.Vessel})
			case stop.Line != nil:
				add(&part{name: stop.Line.ID, line: stop.Line})
			}
		}
	}
	find := func(j *review.Judgement) *part {
		name := p.partOf(j.Subject)
		if q := at[name]; q != nil {
			return q
		}
		return add(&part{name: name})
	}
	for _, j := range p.Judgements {
		if j.Verdict != review.DoesNotApply {
			q := find(j)
			q.judgements = append(q.judgements, j)
		}
	}
	for _, f := range p.Findings {
		q := find(f.Judgement)
		q.findings = append(q.findings, f)
	}
	return out
}

// partOf is the vessel or line that a subject belongs to: the line of a piece,
// the line that a pump stands in; else the subject itself.
func (p *page) partOf(subject string) string {
	first, _, _ := strings.Cut(subject, "/")
	if p.System == nil || p.System.Vessel(first) != nil || p.System.Line(first) != nil {
		return first
	}
	for _, l := range p.System.Lines {
		for _, piece := range l.Pieces {
			if piece.Pump != nil && piece.Pump.ID == first {
				return l.ID
			}
		}
	}
	return first
}

// piece finds the piece that a subject such as "solids-run/5" names; nil if it names none.
func (p *page) piece(subject string) *system.Piece {
	id, index, cut := strings.Cut(subject, "/")
	if !cut || p.System == nil {
		return nil
	}
	l := p.System.Line(id)
	i, err := strconv.Atoi(index)
	if l == nil || err != nil || i < 0 || i >= len(l.Pieces) {
		return nil
	}
	return l.Pieces[i]
}

// value is a quantity in one state, if it was worked out and has a number.
func (p *page) value(subject, name, in, water string) (float64, bool) {
	return p.known(working.Address{Subject: subject, Name: name, Case: in, Water: water})
}

// known is the number at an address.
func (p *page) known(a working.Address) (float64, bool) {
	if p.Ledger == nil {
		return 0, false
	}
	n := p.Ledger.Find(a)
	if n == nil {
		return 0, false
	}
	v, known := n.Value()
	return v.X, known
}

// usual is a quantity while the pump runs, in water as usual.
func (p *page) usual(subject, name, in string) (float64, bool) {
	return p.value(subject, name, in, "usual")
}

// flagsAt is the flags of findings that point at a place of the file or inside it.
func (q *part) flagsAt(pointers ...string) line {
	var l line
	for _, f := range q.findings {
		for _, at := range pointers {
			if at != "" && (f.At == at || strings.HasPrefix(f.At, at+"/")) {
				if len(l) > 0 {
					l = l.add(" ", noInk)
				}
				l = l.add(flagText(f.Number), verdictInk(f.Judgement))
				break
			}
		}
	}
	return l
}

// margin puts flags at the right edge.
func margin(l, flags line) line {
	if len(flags) == 0 {
		return l
	}
	start := bodyWidth - flags.width()
	return append(l.clip(start-1).at(start), flags...)
}
