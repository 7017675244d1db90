package report

import (
	"math"
	"sort"
	"strconv"
	"strings"

	"dryfit/internal/marking"
	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/working"
)

// calculations is the page of calculation of each part, round the loop.
func (w *sheeter) calculations() []Section {
	var out []Section
	for _, q := range w.workedParts() {
		c := w.calculation(q)
		if q.line == nil && q.vessel == nil && len(c.Rows) == 0 {
			continue
		}
		blocks := []Block{Text(w.headOf(q))}
		if heights := w.heights(q); heights != nil {
			blocks = append(blocks, heights)
		}
		out = append(out, section(3, "calculation-"+q.name, w.partTitle(q.name), append(blocks, c)...)...)
	}
	if len(out) == 0 {
		return nil
	}
	lead := Text("Each quantity with its formula, the numbers put in, what comes out, and each limit with the share of it that is used. " +
		"Where a quantity differs with the state of the loop, the state that governs is shown, else the usual one, and the range over all states beside it.")
	return append(section(2, "calculations", "Calculations", lead), out...)
}

// workedParts is the parts, and after them those of which something is worked out and nothing judged.
func (w *sheeter) workedParts() []*part {
	out := w.parts()
	if w.Ledger == nil {
		return out
	}
	seen := map[string]bool{}
	for _, q := range out {
		seen[q.name] = true
	}
	for _, n := range w.Ledger.Nodes() {
		if name := w.partOf(n.Address.Subject); !seen[name] {
			seen[name] = true
			out = append(out, &part{name: name})
		}
	}
	return out
}

func (w *sheeter) partTitle(name string) string { return capital(strings.ReplaceAll(name, "_", " ")) }

// reckoning is one quantity or fact of a part: of itself, or of its pieces one after the other.
type reckoning struct {
	rank  int
	name  string
	nodes []*working.Node // in each state, subject by subject
}

// calculation is every quantity of a part and of its pieces, in the order of the
// catalogue, then the questions that are answered by a word.
func (w *sheeter) calculation(q *part) Calculation {
	c := Calculation{Name: w.name("calculation-" + slug(q.name)), Caption: "Calculation of " + q.name}
	var list []*reckoning
	at := map[string]*reckoning{}
	if w.Ledger != nil {
		for _, n := range w.Ledger.Nodes() {
			a := n.Address
			if w.partOf(a.Subject) != q.name || a.Name == "height" {
				continue
			}
			r := at[a.Name]
			if r == nil {
				r = &reckoning{rank: w.rank(a.Name), name: a.Name}
				at[a.Name], list = r, append(list, r)
			}
			r.nodes = append(r.nodes, n)
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].rank < list[j].rank })
	for _, r := range list {
		c.Rows = append(c.Rows, w.reckoned(q, r)...)
	}
	for _, j := range q.judgements {
		if j.Fact || j.Node == nil && at[j.Name] == nil {
			c.Rows = append(c.Rows, w.asked(q, j))
		}
	}
	return c
}

// reckoned is the rows of one quantity: one for each subject that has it.
func (w *sheeter) reckoned(q *part, r *reckoning) []Reckoned {
	var subjects []string
	of := map[string][]*working.Node{}
	for _, n := range r.nodes {
		s := n.Address.Subject
		if of[s] == nil {
			subjects = append(subjects, s)
		}
		of[s] = append(of[s], n)
	}
	var out []Reckoned
	for i, s := range subjects {
		var held []*review.Judgement
		for _, j := range q.judgements {
			if j.Subject == s && j.Name == r.name && !j.Fact {
				held = append(held, j)
			}
		}
		n := governing(of[s], held)
		row := Reckoned{With: strings.Join(w.inputs(n, map[*working.Node]bool{}, mostSteps), "; "), Result: w.results(n, of[s])}
		at := w.placeOfNode(n)
		if s != q.name {
			at = strings.Join(nonEmpty([]string{w.subjectWords(s), at}), "; ")
		}
		row.Reference = append(row.Reference, at)
		if i == 0 {
			row.Title, row.Formula, row.With = capital(n.Title), w.formula(n), w.with(n)
		}
		if i == 0 && n.Source != "" && n.Source != "the file" {
			row.Reference = append(row.Reference, reason(n))
		}
		for _, j := range held {
			row.Held = append(row.Held, w.held(j))
		}
		out = append(out, row)
	}
	return out
}

// governing is the node to show of one quantity: that of the judgement nearest its
// limit, else the usual state.
func governing(nodes []*working.Node, held []*review.Judgement) *working.Node {
	var best *review.Judgement
	for _, j := range held {
		if j.Node != nil && (best == nil || closeness(j) > closeness(best)) {
			best = j
		}
	}
	if best != nil {
		return best.Node
	}
	for _, wanted := range []working.Address{{Case: working.Always}, {Case: working.Always, Water: "usual"}, {Case: working.RunClean, Water: "usual"}, {Case: working.RunLeast, Water: "usual"}} {
		for _, n := range nodes {
			if n.Address.Case == wanted.Case && n.Address.Water == wanted.Water {
				return n
			}
		}
	}
	return nodes[0]
}

// formula is the formula of a node with its symbol.
func (w *sheeter) formula(n *working.Node) string {
	switch {
	case n.Formula == "as stated":
		return "as the file states it"
	case n.Formula == "" || strings.Contains(n.Formula, " = "):
		return n.Formula
	}
	for _, d := range w.Catalogue.Quantities {
		if d.Name == n.Address.Name && d.Symbol != "" && d.Symbol != n.Formula {
			return d.Symbol + " = " + n.Formula
		}
	}
	return n.Formula
}

// How many inputs are written out, and how deep into steps that have no row of their own.
const (
	mostInputs = 10
	mostSteps  = 2
)

// with is the numbers that go into a formula. An input that is worked out itself and
// has no row of its own is followed by its own formula and numbers.
func (w *sheeter) with(n *working.Node) string {
	return strings.Join(w.inputs(n, map[*working.Node]bool{}, 0), "; ")
}

func (w *sheeter) inputs(n *working.Node, seen map[*working.Node]bool, depth int) []string {
	var parts []string
	var steps []*working.Node
	for i, from := range n.Inputs {
		if i == mostInputs {
			parts = append(parts, counted(len(n.Inputs)-mostInputs)+" more")
			break
		}
		symbol := from.Symbol
		if symbol == "" || symbol == "x" {
			symbol = from.Title
		}
		if v, known := from.Node.Value(); known {
			parts = append(parts, symbol+" = "+w.putIn(from.Node, v.X))
		} else {
			parts = append(parts, symbol+" = ?")
		}
		if from.Origin == working.Worked && from.Address.Name == "" && from.Formula != "" && len(from.Inputs) > 0 && !seen[from.Node] && depth < mostSteps {
			seen[from.Node] = true
			steps = append(steps, from.Node)
		}
	}
	for _, s := range steps {
		switch {
		case s.Formula == working.PartOfBalance:
			parts = append(parts, s.Title+": one of the numbers of a balance of the whole loop, "+s.Inputs[0].Title+", "+w.holdsTo(s.Inputs[0].Node))
			continue
		case len(s.Inputs) > mostInputs:
			parts = append(parts, s.Title+" by "+s.Formula+" from "+strconv.Itoa(len(s.Inputs))+" numbers")
			continue
		}
		if inner := w.inputs(s, seen, depth+1); len(inner) > 0 {
			parts = append(parts, s.Title+" by "+s.Formula+" with "+strings.Join(inner, ", "))
		}
	}
	return parts
}

// putIn is a number that goes into a formula: on a feedback sheet, where somebody works it again, one of the file as it
// is written there and any other with four digits.
func (w *sheeter) putIn(n *working.Node, x float64) string {
	if !w.exact {
		return w.say(n.Kind, x)
	}
	if text, given := w.System.Document.Text(n.Pointer); given && n.Origin == working.Given {
		if _, err := quantity.Parse(n.Kind, text); err == nil {
			return text
		}
	}
	if _, unit := numberUnit(shown(n.Kind, x, w.in)); unit != "" {
		return marking.InUnit(n.Kind, x, unit)
	}
	return w.say(n.Kind, x)
}

// holdsTo is how well a balance holds: what flows in less what flows out, or what is left over of it.
func (w *sheeter) holdsTo(solution *working.Node) string {
	left, known := know(solution)
	switch {
	case !known:
		return "which has no answer"
	case math.Abs(left) < negligible:
		return "which holds to less than 0.01 mL"
	}
	return "which holds to " + w.say(solution.Kind, math.Abs(left))
}

// negligible is what may be left over of a balance without a word, m3 and m3/s.
const negligible = 1e-8

// results is what a quantity comes to, its state, and its range over the other states.
func (w *sheeter) results(n *working.Node, all []*working.Node) []string {
	out := []string{w.node(n)}
	var more []string
	if note := n.Note(); note != "" {
		more = append(more, note)
	}
	if n.Address.Case != working.Always || n.Address.Water != "" {
		more = append(more, stateWords(n.Address.State()))
	}
	low, high, states := math.Inf(1), math.Inf(-1), 0
	for _, one := range all {
		if v, known := one.Value(); known {
			low, high, states = math.Min(low, v.X), math.Max(high, v.X), states+1
		}
	}
	if states > 1 {
		over := "all " + counted(states) + " states"
		if states == 2 {
			over = "both states"
		}
		if spread := spreadShown(n.Kind, working.Within(high, low, high), w.in); spread == "" {
			more = append(more, "the same in "+over)
		} else {
			more = append(more, spread+" over "+over)
		}
	}
	return append(out, nonEmpty([]string{strings.Join(more, "; ")})...)
}

// subjectWords names what of a part a row is about.
func (w *sheeter) subjectWords(subject string) string {
	if piece := w.piece(subject); piece != nil {
		return "piece " + strconv.Itoa(piece.Index+1) + ", " + shortWords(piece, w.in)
	}
	return strings.ReplaceAll(strings.ReplaceAll(subject, "/", ", "), "_", " ")
}

func (w *sheeter) placeOfNode(n *working.Node) string {
	if w.System == nil || w.System.Document == nil || n.At == "" {
		return ""
	}
	return w.placeWords(w.System.Document.Place(n.At))
}

// held is a result beside one limit.
func (w *sheeter) held(j *review.Judgement) Held {
	f := figuresOf(j.Kind, j.Value.X, j.Limit, w.in)
	limit := strings.TrimSpace(f.limitWords() + " " + f.unit)
	if us := figuresOf(j.Kind, j.Value.X, j.Limit, quantity.US); w.twice() && us.unit != f.unit {
		limit += " (" + strings.TrimSpace(us.limitWords()+" "+us.unit) + ")"
	}
	h := Held{Clause: j.Clause.ID + " (" + string(j.Clause.Strength) + ")", Limit: limit, Share: shareShown(j, w.in), Verdict: string(j.Verdict)}
	if j.WithinSpread() && (j.Verdict == review.Met || j.Verdict == review.NotMet) {
		h.Verdict += ", the limit lies within the spread of the sources"
	}
	if flag := w.flags[j]; flag != nil {
		h.Flag = flagText(flag.Number)
	}
	return h
}

// asked is a question that a word answers, or a quantity that could not be worked out at all.
func (w *sheeter) asked(q *part, j *review.Judgement) Reckoned {
	row := Reckoned{Title: capital(j.Title), Result: []string{j.Word}}
	if j.Word == "" {
		row.Result = []string{"? " + w.missingWords(j.Missing)}
	}
	if j.Subject != q.name {
		row.Reference = append(row.Reference, w.subjectWords(j.Subject))
	}
	if w.System != nil && w.System.Document != nil {
		row.Reference = append(row.Reference, w.placeWords(w.System.Document.Place(j.At)))
	}
	wanted := append([]string{}, j.Wanted...)
	sort.Strings(wanted)
	h := Held{Clause: j.Clause.ID + " (" + string(j.Clause.Strength) + ")", Limit: "wanted: " + series(wanted, "or"), Verdict: string(j.Verdict)}
	if flag := w.flags[j]; flag != nil {
		h.Flag = flagText(flag.Number)
	}
	if len(wanted) == 0 {
		h.Limit = ""
	}
	row.Held = []Held{h}
	return row
}

// table is a calculation as a list.
func (c Calculation) table() Table {
	t := Table{Name: c.Name, Caption: c.Caption, Columns: []Column{
		{Head: "quantity"}, {Head: "reference"}, {Head: "formula"}, {Head: "with"}, {Head: "result"}, {Head: "state and notes"}, {Head: "clause"}, {Head: "limit"}, {Head: "of limit"}, {Head: "verdict"}}}
	title := ""
	for _, r := range c.Rows {
		if r.Title != "" {
			title = r.Title
		}
		held := r.Held
		if len(held) == 0 {
			held = []Held{{}}
		}
		for _, h := range held {
			result, notes := "", ""
			if len(r.Result) > 0 {
				result, notes = r.Result[0], strings.Join(r.Result[1:], "; ")
			}
			t.Rows = append(t.Rows, cells(title, strings.Join(nonEmpty(r.Reference), "; "), r.Formula, r.With, result, notes, h.Clause, h.Limit, h.Share, strings.TrimSpace(h.Flag+" "+h.Verdict)))
		}
	}
	return t
}

func nonEmpty(list []string) []string {
	var out []string
	for _, text := range list {
		if text != "" {
			out = append(out, text)
		}
	}
	return out
}
