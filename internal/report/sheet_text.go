package report

import (
	"strconv"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// name makes a name of a sheet unique: the second "cuts" is "cuts-2".
func (w *sheeter) name(wanted string) string {
	w.used[wanted]++
	if n := w.used[wanted]; n > 1 {
		return w.name(wanted + "-" + strconv.Itoa(n))
	}
	return wanted
}

// slug is a text as a name: small letters of the alphabet, digits and hyphens.
func slug(text string) string {
	out := strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= '0' && r <= '9' {
			return r
		}
		return '-'
	}, strings.ToLower(text))
	if out = strings.Trim(out, "-"); out == "" {
		return "part"
	}
	return out
}

// section is one section with one or more blocks; none without any.
func section(level int, id, title string, blocks ...Block) []Section {
	var kept []Block
	for _, b := range blocks {
		switch b := b.(type) {
		case nil:
			continue
		case Text:
			if b == "" {
				continue
			}
		case Steps:
			if len(b) == 0 {
				continue
			}
		case Table:
			if len(b.Rows) == 0 {
				continue
			}
		case Calculation:
			if len(b.Rows) == 0 {
				continue
			}
		}
		kept = append(kept, b)
	}
	return []Section{{ID: id, Title: title, Level: level, Blocks: kept}}
}

// words is a row of cells of text.
func cells(texts ...string) []Cell {
	out := make([]Cell, len(texts))
	for i, t := range texts {
		out[i].Text = t
	}
	return out
}

// both says that both families of units are shown.
func (w *sheeter) twice() bool { return w.both && w.in != quantity.US }

// value is a value for reading, with US units in brackets where both are wanted.
func (w *sheeter) say(kind quantity.Kind, x float64) string {
	text := shown(kind, x, w.in)
	if us := shown(kind, x, quantity.US); w.twice() && us != text {
		text += " (" + us + ")"
	}
	return text
}

// node is the number of a node with its range; what is missing where there is none.
func (w *sheeter) node(n *working.Node) string {
	if n == nil {
		return "?"
	}
	v, known := n.Value()
	if !known {
		return "? " + w.gapsWords(n.Gaps())
	}
	text := w.say(n.Kind, v.X)
	if spread := spreadShown(n.Kind, v, w.in); spread != "" {
		text += ", range " + spread
	}
	return text
}

// lengths is a column of lengths, and length a cell of it: tenths of a millimetre
// or hundredths of an inch.
func (w *sheeter) lengths(head string) Column {
	c := Column{Head: head, Unit: smallUnit(w.in), Number: true}
	if w.twice() {
		c.US = "in"
	}
	return c
}

func (w *sheeter) length(x float64) Cell {
	c := Cell{Text: tidy(lossShown(x, w.in))}
	if w.twice() {
		c.US = tidy(lossShown(x, quantity.US))
	}
	return c
}

// blank is a column to be filled in by hand.
func (w *sheeter) blank(c Column) Column {
	c.Blank, c.US = true, ""
	return c
}

// whole is a length in whole millimetres, or tenths of an inch.
func (w *sheeter) whole(x float64) Cell {
	c := Cell{Text: heightShown(x, w.in)}
	if w.twice() {
		c.US = heightShown(x, quantity.US)
	}
	return c
}

// tidy drops zeros at the end of decimals.
func tidy(number string) string {
	if strings.Contains(number, ".") {
		number = strings.TrimRight(strings.TrimRight(number, "0"), ".")
	}
	return number
}

// at is the node at an address in one state.
func (w *sheeter) at(subject, name, in, water, fault string) *working.Node {
	if w.Ledger == nil {
		return nil
	}
	return w.Ledger.Find(working.Address{Subject: subject, Name: name, Case: in, Water: water, Fault: fault})
}

// usualNode is a quantity of the running loop, clean, in water as usual; else the one that counts always.
func (w *sheeter) usualNode(subject, name string) *working.Node {
	for _, a := range []working.Address{
		{Case: working.RunClean, Water: "usual"}, {Case: working.Always}, {Case: working.Always, Water: "usual"},
		{Case: working.RunLeast, Water: "usual"}, {Case: "cleaning", Water: "usual"}, {Case: "unattended"}, {Case: "unattended", Water: "usual"},
	} {
		if n := w.at(subject, name, a.Case, a.Water, ""); n != nil {
			return n
		}
	}
	return nil
}

// know is the number of a node, if there is one.
func know(n *working.Node) (float64, bool) {
	if n == nil {
		return 0, false
	}
	v, known := n.Value()
	return v.X, known
}

// fact is the word of a fact of a subject.
func (w *sheeter) fact(subject, name string) string {
	if w.Ledger == nil {
		return ""
	}
	for _, f := range w.Ledger.Facts() {
		if f.Subject == subject && f.Name == name {
			return f.Word
		}
	}
	return ""
}
