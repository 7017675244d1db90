package review

import (
	"slices"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// Stated is one number, or one fact, that the author of a system file worked out
// (`stated`) or measured (`measured`), beside what is worked out for the loop.
// What cannot be held against anything says why in Missing and is never dropped.
type Stated struct {
	Measured bool
	Pointer  string // of the entry in the file
	Place    system.Place
	Quantity string // its address as the file writes it: "settler.overflow_rate"
	Case     string // as the file writes it; empty where it says none
	Text     string // the value as the file writes it

	Node  *working.Node // the number it is held against; nil where there is none
	Value *float64      // the author's, in SI units; nil where it is no value of that kind
	Unit  string        // in which the author writes it
	Fact  *working.Fact // the fact it is held against; nil for numbers
	Word  string        // the author's, of a fact

	Allowed string   // how far off it may be as the file writes it: tolerance, or half the spread of the readings
	Off     *float64 // the same in SI units; nil where nothing is said or it cannot be read

	Working, On, By, With, Note string
	Missing                     []string // pointers and reasons
}

// StatedIn holds every stated and measured value of a file against what was worked
// out for it, in the order of the file. Reading them marks them as looked at.
func StatedIn(s *system.System, l *working.Ledger) []Stated {
	var out []Stated
	for _, at := range s.Items("/stated") {
		out = append(out, heldAgainst(s, l, at, "tolerance", false))
	}
	for _, at := range s.Items("/measured") {
		out = append(out, heldAgainst(s, l, at, "spread", true))
	}
	slices.SortStableFunc(out, func(a, b Stated) int { return a.Place.Line - b.Place.Line })
	return out
}

func heldAgainst(s *system.System, l *working.Ledger, at, allowed string, measured bool) Stated {
	word := func(key string) string {
		text, _ := s.Word(at + "/" + key).Value()
		return text
	}
	c := Stated{
		Measured: measured, Pointer: at, Place: s.Document.Place(at),
		Quantity: word("quantity"), Case: word("case"), Text: word("value"), Allowed: word(allowed),
		Working: word("working"), On: word("on"), By: word("by"), With: word("with"), Note: word("note"),
	}
	if on, given := s.Switch(at + "/value").On(); given {
		c.Text = map[bool]string{true: "yes", false: "no"}[on]
	}
	subject, name := splitAddress(c.Quantity)
	nodes := l.Of(subject, name)
	if len(nodes) == 0 {
		c.heldAgainstFact(l, subject, name)
		return c
	}
	kind := nodes[0].Kind
	c.read(s.Number(at+"/value", quantity.Number), kind, nodes[0].Title)
	states := working.AtUsual(working.InCase(nodes, c.Case))
	if len(states) == 0 {
		c.missing("`" + c.Quantity + "` is not worked out in the case " + c.Case + "; it is in " + strings.Join(casesOf(nodes), ", "))
		return c
	}
	c.Node = states[0]
	if c.Value != nil {
		c.Node = working.Nearest(states, *c.Value)
	}
	for _, g := range c.Node.Gaps() {
		if g.Why != "" {
			c.missing(g.Why)
		} else {
			c.missing(g.Pointer)
		}
	}
	c.allow(kind)
	return c
}

func (c *Stated) missing(why string) {
	if !slices.Contains(c.Missing, why) {
		c.Missing = append(c.Missing, why)
	}
}

// splitAddress splits "settler.well.fixings.chloride_share" into the subject
// settler/well/fixings and the name.
func splitAddress(text string) (subject, name string) {
	cut := strings.LastIndex(text, ".")
	if cut < 0 {
		return "", text
	}
	return strings.ReplaceAll(text[:cut], ".", "/"), text[cut+1:]
}

func casesOf(nodes []*working.Node) []string {
	var out []string
	for _, n := range nodes {
		if !slices.Contains(out, n.Address.Case) {
			out = append(out, n.Address.Case)
		}
	}
	return out
}

// heldAgainstFact holds the entry against a fact, if there is one of that name.
func (c *Stated) heldAgainstFact(l *working.Ledger, subject, name string) {
	known := false
	for _, f := range l.Facts() {
		known = known || f.Subject == subject
		if f.Subject == subject && f.Name == name {
			c.Fact, c.Word, c.Missing = f, c.Text, append([]string(nil), f.Missing...)
			return
		}
	}
	for _, n := range l.Nodes() {
		known = known || n.Address.Subject == subject
	}
	if known {
		c.missing("nothing called `" + name + "` is worked out for " + subject + "; `dryfit quantities FILE` lists what is")
		return
	}
	c.missing("nothing is worked out for `" + strings.ReplaceAll(subject, "/", ".") + "`; `dryfit quantities FILE` lists what is")
}
