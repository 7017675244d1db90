package report

import (
	"io"
	"strconv"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/working"
)

// Quantities writes every quantity and fact that is worked out, with what it means and which of
// some clauses use it.
func Quantities(w io.Writer, k working.Catalogue, list []*review.Clause, o Options) error {
	most := pageWidth(o)
	var out []line
	for i, d := range k.Quantities {
		if i > 0 {
			out = append(out, line{})
		}
		out = append(out, defined(d, list, most)...)
	}
	if len(k.Facts) > 0 {
		out = append(out, line{}, line{}.add("FACTS", waterInk).add(", which are no numbers", noInk))
	}
	for _, f := range k.Facts {
		text := capital(ofWords(f.Title, f.Of))
		if len(f.Words) > 0 {
			text += ": " + series(f.Words, "or")
		}
		if by := askedBy(list, f.Name); len(by) > 0 {
			text = sentence(text) + " Asked by " + strings.Join(by, ", ")
		}
		out = append(out, labelled(f.Name, sentence(text), pageText, pageText+26, most, noInk)...)
	}
	for _, part := range []struct {
		head  string
		names []working.Named
	}{{"SETS", k.Sets}, {"RELATIONS", k.Relations}, {"CASES", k.Cases}} {
		if len(part.names) == 0 {
			continue
		}
		out = append(out, line{}, line{}.add(part.head, waterInk))
		for _, n := range part.names {
			text := sentence(capital(n.Title))
			if by := goingOver(list, n.Name); len(by) > 0 {
				text += " Gone over by " + sentence(strings.Join(by, ", "))
			}
			out = append(out, labelled(n.Name, text, pageText, pageText+26, most, noInk)...)
		}
	}
	if len(k.Quantities) == 0 && len(out) > 0 {
		out = out[1:] // the blank line above the first heading
	}
	return write(w, out, most, o.Colour)
}

// defined is what one quantity means, how it is worked out, and which clauses use it.
func defined(d working.Definition, list []*review.Clause, most int) []line {
	out := []line{line{}.add(safe(d.Name), waterInk)}
	out = append(out, paragraph(sentence(capital(ofWords(d.Title, d.Of))), pageText, most)...)
	add := func(label, text string) {
		out = append(out, labelled(label, sentence(text), pageText, pageInner, most, noInk)...)
	}
	add("Formula", formulaAlone(d))
	add("Unit", d.Kind.Title()+unitsWords(d.Kind))
	add("Holds for", d.Range)
	add("Source", definedBy(d))
	u := usesOf(list, d.Name)
	for _, use := range []struct {
		label string
		names []string
	}{{"Cases", u.cases}, {"Limit in", u.limits}, {"Read by", u.reads}, {"Shown by", u.shows}} {
		out = append(out, labelled(use.label, strings.Join(use.names, ", "), pageText, pageInner, most, noInk)...)
	}
	return out
}

// Seen writes every quantity of one loop: its value in each case, and how it was worked.
func Seen(w io.Writer, l *working.Ledger, o Options) error {
	most := pageWidth(o)
	type key struct{ subject, name string }
	var subjects []string
	names := map[string][]string{}
	nodes := map[key][]*working.Node{}
	for _, n := range l.Nodes() {
		k := key{n.Address.Subject, n.Address.Name}
		if names[k.subject] == nil {
			subjects = append(subjects, k.subject)
		}
		if nodes[k] == nil {
			names[k.subject] = append(names[k.subject], k.name)
		}
		nodes[k] = append(nodes[k], n)
	}
	var out []line
	for i, subject := range subjects {
		if i > 0 {
			out = append(out, line{})
		}
		head := line{}.add(strings.ToUpper(safe(subject)), waterInk)
		if id, index, cut := strings.Cut(subject, "/"); cut {
			if n, err := strconv.Atoi(index); err == nil {
				of := ", piece " + strconv.Itoa(n+1) + " of " + id
				if id == "fish" {
					of = ", lot " + strconv.Itoa(n+1)
				}
				head = head.add(of, noInk)
			}
		}
		out = append(out, head)
		for _, name := range names[subject] {
			out = append(out, seen(nodes[key{subject, name}], most, o.Units)...)
		}
	}
	for i, f := range l.Facts() {
		if i == 0 {
			out = append(out, line{}, line{}.add("FACTS", waterInk))
		}
		word := f.Word
		if len(f.Missing) > 0 {
			word = "? missing: " + strings.Join(f.Missing, ", ")
		}
		out = append(out, labelled(f.Subject+"."+f.Name, word, pageText, pageText+40, most, noInk)...)
	}
	return write(w, out, most, o.Colour)
}

// seen is one quantity of one subject: its title, a line a value, and its working where it was first worked.
func seen(nodes []*working.Node, most int, in quantity.System) []line {
	first := nodes[0]
	out := labelled(first.Address.Name, first.Title, pageText, pageText+26, most, noInk)
	for i := 0; i < len(nodes); {
		text := nodeText(nodes[i], in)
		k := i + 1
		for k < len(nodes) && nodeText(nodes[k], in) == text {
			k++
		}
		out = append(out, paragraph(statesShort(nodes[i:k]), pageText+4, most)...)
		last := len(out) - 1
		value := paragraph(text, pageText+26, most)
		if len(value) > 0 && out[last].width() < pageText+26 {
			out[last] = append(out[last].at(pageText+26), value[0][1:]...)
			value = value[1:]
		}
		out = append(out, value...)
		i = k
	}
	if first.Formula != "" && len(first.Inputs) > 0 {
		out = append(out, paragraph(workedWords(first, in), pageText+4, most)...)
	}
	return out
}

// statesShort names the states of some nodes; a case at every temperature by its name alone.
func statesShort(nodes []*working.Node) string {
	var cases []string
	waters := map[string][]string{}
	for _, n := range nodes {
		a := n.Address
		if _, there := waters[a.Case]; !there {
			cases, waters[a.Case] = append(cases, a.Case), nil
		}
		if a.Water != "" {
			waters[a.Case] = append(waters[a.Case], a.Water)
		}
	}
	for i, c := range cases {
		if n := len(waters[c]); n > 0 && n < len(working.Waters) {
			cases[i] = c + " " + strings.Join(waters[c], " and ")
		}
	}
	return strings.Join(cases, ", ")
}

func nodeText(n *working.Node, in quantity.System) string {
	v, known := n.Value()
	if !known {
		var gaps []string
		for _, g := range n.Gaps() {
			gaps = append(gaps, strings.TrimSpace(g.Pointer+" "+g.Why))
		}
		return "? " + strings.Join(gaps, "; ")
	}
	text := shown(n.Kind, v.X, in)
	if spread := spreadShown(n.Kind, v, in); spread != "" {
		text += " (" + spread + ")"
	}
	if note := n.Note(); note != "" {
		text += ", " + note
	}
	return text
}

// workedWords is a formula with the numbers that went into it.
func workedWords(n *working.Node, in quantity.System) string {
	var parts []string
	const enough = 8
	for i, from := range n.Inputs {
		if i == enough {
			parts = append(parts, counted(len(n.Inputs)-enough)+" more")
			break
		}
		symbol := from.Symbol
		if symbol == "" {
			symbol = from.Title
		}
		parts = append(parts, symbol+" = "+nodeText(from.Node, in))
	}
	text := "by " + n.Formula + ", with " + strings.Join(parts, ", ")
	if n.Address.Case != working.Always {
		text += " (" + stateWords(n.Address.State()) + ")"
	}
	return text
}
