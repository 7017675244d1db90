package editor

import (
	"cmp"
	"context"
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/report"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// hover says what a key means, its value in both families of units, and what is worked out of
// it; on a vessel, a line, a pump or a piece, what was judged of that.
func (s *server) hover(ctx context.Context, params json.RawMessage, doc *document) (any, error) {
	p, err := decode[positionParams](params)
	if err != nil {
		return nil, err
	}
	n, onKey := scan(doc.text.all).touched(doc.text.offset(p.Position))
	if n == nil {
		return nil, nil
	}
	path := n.path()
	means, known := system.AllowedAt(path)
	if !known || n.bare {
		return nil, nil
	}
	text := []string{strings.TrimSpace(code(path[len(path)-1]) + " " + means.Means)}
	if both := inBoth(means, n); both != "" {
		text = append(text, both)
	}
	seen := s.current(ctx, doc, false)
	switch {
	case seen == nil:
	case seen.item.Review == nil:
		text = append(text, "Nothing is worked out while the file cannot be read.")
	default:
		of := ofSubject(path)
		if of != "" {
			text = append(text, mainNumbers(seen.item.Review.Ledger, of)...)
			text = append(text, judged(seen.item.Review, of)...)
		}
		if of == "" || !onKey {
			text = append(text, readBy(seen.item.Review.Ledger, pointer(path))...)
		}
	}
	at := n.value
	if onKey {
		at = n.name
	}
	return hover{markup{"markdown", strings.Join(text, "\n\n")}, doc.text.span(at)}, nil
}

// inBoth is a value with a unit in both families of units; empty for any other.
func inBoth(means system.Allowed, n *node) string {
	if means.Kind == "" || means.Kind == quantity.Number || n.form != scalar {
		return ""
	}
	q, err := quantity.Parse(means.Kind, n.word)
	if err != nil {
		return ""
	}
	return inUnits(func(in quantity.System) string { return quantity.Format(means.Kind, q.SI, in) })
}

// mostShown is how many numbers are shown at once.
const mostShown = 6

// readBy is the quantities into which the value at a pointer goes, each in its first state.
func readBy(l *working.Ledger, pointer string) []string {
	var out []string
	seen, noted := map[string]bool{}, map[*working.Node]bool{}
	for _, n := range l.Nodes() {
		if !takes(n, pointer, noted) {
			continue
		}
		name := n.Address.Subject + "." + n.Address.Name
		if seen[name] {
			continue
		}
		seen[name] = true
		if len(out) < mostShown {
			out = append(out, workedOut(n))
		}
	}
	if more := len(seen) - len(out); more > 0 {
		out = append(out, fmt.Sprintf("It goes into %d other quantities; `dryfit quantities` shows all.", more))
	}
	if len(out) > 0 {
		out = append([]string{"Worked out of it:"}, out...)
	}
	return out
}

// takes says that a node reads the value at a pointer itself, and not by way of another quantity. What was found out
// of a node is noted.
func takes(n *working.Node, pointer string, noted map[*working.Node]bool) bool {
	found, there := noted[n]
	if there {
		return found
	}
	for _, in := range n.Inputs {
		own := in.Node.Pointer == pointer && in.Node.Origin != working.Listed
		if own || in.Node.Address.Name == "" && takes(in.Node, pointer, noted) {
			found = true
			break
		}
	}
	noted[n] = found
	return found
}

// workedOut is a quantity with its number and its working.
func workedOut(n *working.Node) string {
	text := code(n.Address.Subject+"."+n.Address.Name) + ", " + n.Title + ": " + numbers(n)
	if how := report.NodeWorked(n, quantity.Metric); how != "" {
		text += "  \n" + code(how)
	}
	return text
}

// numbers is a number in both families of units.
func numbers(n *working.Node) string {
	return inUnits(func(in quantity.System) string { return report.NodeSaid(n, in) })
}

// inUnits is something in both families of units; once where they do not differ.
func inUnits(say func(quantity.System) string) string {
	metric, us := say(quantity.Metric), say(quantity.US)
	if metric == us {
		return code(metric)
	}
	return code(metric) + ", in US units " + code(us)
}

// ofSubject is the subject at a path: a vessel, a line, a pump, or a piece by its number.
func ofSubject(path []string) string {
	switch {
	case len(path) == 2 && slices.Contains([]string{"vessels", "lines", "pumps"}, path[0]):
		return path[1]
	case len(path) == 5 && path[0] == "lines" && path[2] == "pieces":
		return path[1] + "/" + path[3]
	}
	return ""
}

// main is the quantities that say how a vessel, a line or a piece runs, as they are shown first.
var main = []string{"water_level", "freeboard", "flow", "velocity", "head_loss", "height"}

// mainNumbers is these quantities of a subject in their first state: pump at its greatest, all clean.
func mainNumbers(l *working.Ledger, subject string) []string {
	first := map[string]*working.Node{}
	for _, n := range l.Nodes() {
		if a := n.Address; a.Subject == subject && first[a.Name] == nil {
			first[a.Name] = n
		}
	}
	var out []string
	for _, name := range main {
		if n := first[name]; n != nil {
			out = append(out, workedOut(n))
		}
	}
	return out
}

// judged is the numbers of a subject that clauses hold against a limit, the tightest first.
func judged(r *review.Review, subject string) []string {
	var list []*review.Judgement
	seen := map[string]bool{}
	for _, j := range r.Judgements {
		if j.Subject == subject && j.Node != nil && !seen[j.Name] {
			seen[j.Name] = true
			list = append(list, j)
		}
	}
	share := func(j *review.Judgement) float64 {
		used, _ := j.OfLimit()
		return used
	}
	slices.SortStableFunc(list, func(a, b *review.Judgement) int { return cmp.Compare(share(b), share(a)) })
	var out []string
	for _, j := range list[:min(len(list), mostShown)] {
		text := j.Title + ": " + inUnits(func(in quantity.System) string { return report.JudgedSaid(j, in) })
		out = append(out, text+" ("+code(j.Clause.ID)+")")
	}
	if len(out) > 0 {
		out = append([]string{"Held against the book, the tightest first:"}, out...)
	}
	return out
}

// pointer is a path as a JSON pointer (RFC 6901).
func pointer(path []string) string {
	out := ""
	for _, step := range path {
		out = system.Child(out, step)
	}
	return out
}

// code is text of which Markdown makes nothing but that text.
func code(text string) string {
	text = strings.Join(strings.Fields(strings.ReplaceAll(text, "`", "'")), " ")
	if text == "" {
		return ""
	}
	return "`" + text + "`"
}
