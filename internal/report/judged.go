package report

import (
	"math"
	"slices"
	"sort"
	"strconv"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/working"
)

// Columns of the table of what was worked out, counted from 0.
const (
	titleAt   = 2
	numberEnd = 40
	unitAt    = 41
	wordAt    = 36
	limitAt   = 52
	shareEnd  = 76
)

// entry is one row of the table of what was worked out.
type entry struct {
	rank      int // place of its quantity in the catalogue
	name      string
	subject   string
	title     string
	judgement *review.Judgement // nil for what has no limit
	kind      quantity.Kind
	x         float64
	like      int // so many subjects were judged alike and this one is nearest its limit
}

// apart holds the quantities that the levelling tables show already, and
// intermediate ones that tell a builder nothing; the command `quantities` shows all.
var apart = map[string]bool{
	"height": true, "head_loss": true, "water_level": true, "freeboard": true, "upstream_level": true, "greatest_flow": true,
	"bend_radius_ratio": true, "bend_loss": true, "bend_loss_as_two_45": true, "bend_loss_as_sweep": true, "turn": true,
	"reynolds": true, "ring_area": true, "density": true, "kinematic_viscosity": true,
}

// sameShare is how far a value may change with fouling and still be shown once.
const sameShare = 0.02

// judged is the table of what was worked out for a part, beside its limits.
func (p *page) judged(q *part) []line {
	entries := append(p.judgedEntries(q), p.plainEntries(q)...)
	if len(entries) == 0 {
		return nil
	}
	sort.SliceStable(entries, func(i, j int) bool {
		a, b := entries[i], entries[j]
		if a.rank != b.rank {
			return a.rank < b.rank
		}
		if a.name != b.name {
			return a.name < b.name
		}
		return strictness(a) < strictness(b)
	})
	out := []line{line{}.at(35).add("worked out", noInk).at(limitAt).add("limit", noInk).right("of limit", p.shareEnd, noInk)}
	for i, e := range entries {
		var before *entry
		if i > 0 {
			before = &entries[i-1]
		}
		out = append(out, p.entryLines(e, before)...)
	}
	return out
}

func strictness(e entry) int {
	if e.judgement == nil {
		return 9
	}
	return map[review.Strength]int{review.Shall: 0, review.Should: 1, review.May: 2}[e.judgement.Clause.Strength]
}

// rank is the place of a name in the catalogue: quantities, then facts, then what is in neither.
func (p *page) rank(name string) int {
	for i, d := range p.Catalogue.Quantities {
		if d.Name == name {
			return i
		}
	}
	for i, d := range p.Catalogue.Facts {
		if d.Name == name {
			return len(p.Catalogue.Quantities) + i
		}
	}
	return math.MaxInt
}

// judgedEntries is a row for each finding, and one for all the subjects of a
// clause that meet it: the one nearest its limit.
func (p *page) judgedEntries(q *part) []entry {
	type group struct {
		clause *review.Clause
		name   string
	}
	var out []entry
	nearest := map[group]int{}
	subjects := map[*review.Clause]map[string]bool{}
	for _, j := range q.judgements {
		if j.Fact && j.Verdict == review.Met {
			continue // a yes that is wanted and there needs no row
		}
		g := group{j.Clause, j.Name}
		if subjects[j.Clause] == nil {
			subjects[j.Clause] = map[string]bool{}
		}
		subjects[j.Clause][j.Subject] = true
		e := entry{rank: p.rank(j.Name), name: j.Name, subject: j.Subject, title: j.Title, judgement: j, kind: j.Kind, x: j.Value.X, like: 1}
		if p.flags[j] != nil {
			out = append(out, e)
			continue
		}
		i, there := nearest[g]
		if !there {
			nearest[g] = len(out)
			out = append(out, e)
			continue
		}
		e.like = out[i].like + 1
		if closeness(j) <= closeness(out[i].judgement) {
			out[i].like = e.like
			continue
		}
		out[i] = e
	}
	for i := range out {
		e := &out[i]
		if head := caseHeads[caseOf(e.judgement)]; head != "" && slices.ContainsFunc(out, func(other entry) bool {
			return other.name == e.name && other.subject == e.subject && caseOf(other.judgement) != caseOf(e.judgement)
		}) {
			e.title += ", " + head
		}
		switch piece := p.piece(e.subject); {
		case e.like > 1:
			e.title += ", the worst of " + counted(e.like)
		case piece != nil && len(subjects[e.judgement.Clause]) > 1:
			e.title += ", " + shortWords(piece, p.in)
		case len(subjects[e.judgement.Clause]) > 1:
			if thing := thingOf(e.subject); thing != "" {
				e.title += ", " + thing
			}
		}
	}
	return out
}

// caseOf is the case that governs a judgement.
func caseOf(j *review.Judgement) string {
	name, _, _ := strings.Cut(j.When, ", ")
	return name
}

// thingOf is what of a vessel a subject names: "well" of "settler/well/fixings"; empty for the vessel itself.
func thingOf(subject string) string {
	_, rest, _ := strings.Cut(subject, "/")
	thing, _, _ := strings.Cut(rest, "/")
	if _, err := strconv.Atoi(thing); err == nil {
		return ""
	}
	return strings.ReplaceAll(thing, "_", " ")
}

// closeness grows as a judgement comes nearer its limit.
func closeness(j *review.Judgement) float64 {
	if share, ok := j.OfLimit(); ok {
		return share
	}
	if m, ok := j.Margin(); ok {
		return -m
	}
	return math.Inf(-1)
}

// plainEntries is what was worked out for a part and no clause judges there: in
// the state that the head of the page names, and fouled where that differs. What
// several pieces of a line have would fill a page of its own: the command
// `quantities` shows it.
func (p *page) plainEntries(q *part) []entry {
	if p.Ledger == nil {
		return nil
	}
	seen := map[string]bool{}
	for _, j := range q.judgements {
		seen[j.Name] = true
	}
	of := map[string]string{}
	many := map[string]bool{}
	for _, n := range p.Ledger.Nodes() {
		if a := n.Address; p.partOf(a.Subject) == q.name {
			many[a.Name] = many[a.Name] || of[a.Name] != "" && of[a.Name] != a.Subject
			of[a.Name] = a.Subject
		}
	}
	var out []entry
	for _, n := range p.Ledger.Nodes() {
		a := n.Address
		if many[a.Name] && a.Subject != q.name {
			continue
		}
		x, usual := inUsual(n, fouledCase(q.line))
		if !usual || seen[a.Name] || apart[a.Name] || p.partOf(a.Subject) != q.name {
			continue
		}
		e := entry{rank: p.rank(a.Name), name: a.Name, subject: a.Subject, title: n.Title, kind: n.Kind, x: x}
		if a.Case == fouledCase(q.line) {
			clean, known := p.usual(a.Subject, a.Name, working.RunClean)
			if known && math.Abs(x-clean) <= sameShare*math.Abs(clean) {
				continue
			}
			e.title += ", fouled"
		}
		out = append(out, e)
	}
	return out
}

// inUsual is the value of a node that counts for every state, or that runs in
// water as usual, clean or in the case that fouled names.
func inUsual(n *working.Node, fouled string) (float64, bool) {
	v, known := n.Value()
	a := n.Address
	always := a.Case == working.Always && a.Water == ""
	running := (a.Case == working.RunClean || a.Case == fouled) && a.Water == "usual"
	return v.X, known && (always || running)
}

// entryLines is one row: its title, the value, the limit, the share, the flag;
// below it what the sources leave open and, if wanted, the same in the other units.
func (p *page) entryLines(e entry, before *entry) []line {
	title, again := e.title, false
	if before != nil && before.name == e.name && before.subject == e.subject && before.title == e.title && e.judgement != nil && before.judgement != nil && before.x == e.x {
		title, again = "  "+string(e.judgement.Clause.Strength)+" be", true
	}
	var out []line
	switch j := e.judgement; {
	case j != nil && j.Verdict == review.Undetermined:
		out = titled(title, "?", "")
		out[0] = out[0].at(limitAt).add("cannot be said yet", noInk)
	case j != nil && j.Fact:
		out = p.factLines(title, j)
	default:
		out = p.numberLines(title, e, p.in, again)
	}
	if f := p.flags[e.judgement]; f != nil && e.judgement != nil {
		out[0] = margin(out[0], line{}.add(flagText(f.Number), verdictInk(f.Judgement)))
	}
	if p.both && (e.judgement == nil || !e.judgement.Fact && e.judgement.Verdict != review.Undetermined) {
		if us := p.numberLines("", e, quantity.US, again)[0]; us.text() != p.numberLines("", e, p.in, again)[0].text() {
			out = under(out, us)
		}
	}
	if j := e.judgement; j != nil && j.WithinSpread() && (j.Verdict == review.Met || j.Verdict == review.NotMet) {
		out = append(out, paragraph("the limit lies within the spread of the sources: "+spreadShown(j.Kind, j.Value, p.in), titleAt+2, bodyWidth)...)
	}
	return out
}

// under puts a second line of figures below the first: beside the rest of a title
// that takes more than one line, where it is short enough.
func under(rows []line, figures line) []line {
	text := strings.TrimLeft(figures.text(), " ")
	free := figures.width() - width(text)
	if len(rows) > 1 && rows[1].width() < free {
		rows[1] = rows[1].at(free).add(text, noInk)
		return rows
	}
	return slices.Insert(rows, 1, figures)
}

// titled is the lines of a title with the first number of the row beside it.
func titled(title, number, unit string) []line {
	indent := titleAt + len(title) - len(strings.TrimLeft(title, " "))
	lines := wrap(title, numberEnd-2-width(number)-indent)
	if len(lines) == 0 {
		lines = []string{""}
	}
	out := []line{line{}.at(indent).add(lines[0], noInk).right(number, numberEnd, noInk).at(unitAt).add(unit, noInk)}
	for _, more := range lines[1:] {
		out = append(out, line{}.at(indent+2).add(more, noInk))
	}
	return out
}

// numberLines is a value beside its limit; again says that the value stands in the row above already.
func (p *page) numberLines(title string, e entry, in quantity.System, again bool) []line {
	limit := review.Limit{}
	if e.judgement != nil {
		limit = e.judgement.Limit
	}
	f := figuresOf(e.kind, e.x, limit, in)
	if again {
		f.number, f.unit = "", ""
	}
	out := titled(title, f.number, f.unit)
	if e.judgement != nil {
		out[0] = out[0].at(limitAt).add(f.limitWords(), noInk)
		if title != "" {
			out[0] = out[0].right(shareShown(e.judgement, in), p.shareEnd, noInk)
		}
	}
	return out
}

func (p *page) factLines(title string, j *review.Judgement) []line {
	out := titled(title, "", "")
	word := clip(j.Word, limitAt-wordAt-1)
	if width(word) <= numberEnd-wordAt {
		out = titled(title, word, "")
	} else {
		out[0] = out[0].at(wordAt).add(word, noInk)
	}
	wanted := append([]string{}, j.Wanted...)
	sort.Strings(wanted)
	for i, text := range wrap(series(wanted, "or"), p.shareEnd-limitAt) {
		if i == len(out) {
			out = append(out, line{})
		}
		out[i] = out[i].at(limitAt).add(text, noInk)
	}
	return out
}
