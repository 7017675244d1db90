package marking

import (
	"slices"
	"sort"
	"strings"

	"dryfit/internal/system"
)

// few is how many others may have a value that still counts as a pair's own: one, or a twentieth of a large class
// (project judgement).
func few(class int) int { return max(1, class/20) }

// held is one input of a submission.
type held struct {
	m    *Marked
	key  string
	text string
	at   system.Place
	same string
}

// hold keeps the inputs of a submission that do not stand in what all began from.
func (c *Counter) hold(m *Marked) {
	doc := m.Review.System.Document
	m.Departs = c.departures(doc)
	for _, in := range inputsOf(doc) {
		if !c.starting[in.same] {
			text, _ := doc.Text(in.pointer)
			c.inputs = append(c.inputs, held{m, system.Dotted(in.pointer), text, doc.Place(in.pointer), in.same})
		}
	}
}

// departures is the keys of what all began from whose values are others in a file, or gone. Who may set
// the aim of the loop or the price of a part in the file can make them easy to reach.
func (c *Counter) departures(doc *system.Document) []string {
	if c.starter == nil {
		return nil
	}
	var out []string
	for _, in := range valuesOf(c.starter) {
		was, _ := c.starter.Text(in.pointer)
		if now, there := doc.Text(in.pointer); !there || strings.Join(strings.Fields(now), " ") != strings.Join(strings.Fields(was), " ") {
			out = append(out, system.Dotted(in.pointer))
		}
	}
	return out
}

// pairs finds the pairs of submissions that share inputs which few others have, at least as many as the
// guide says, or nearly all inputs that not most of the class have, in the order of their numbers. Names, notes and prices do not count.
func (c *Counter) pairs() []Pair {
	if c.guide.Alike == 0 {
		return nil
	}
	holders := map[string][]held{}
	own := map[*Marked]int{} // inputs that not most have
	for _, in := range c.inputs {
		holders[in.same] = append(holders[in.same], in)
	}
	half, most := max(len(c.marked)/2, 2), few(len(c.marked))+2
	type shared struct {
		Pair
		rare int
	}
	found := map[[2]int]*shared{}
	for _, in := range c.inputs { // in the order of the submissions and of their files
		list := holders[in.same]
		if len(list) > half {
			continue
		}
		own[in.m]++
		for _, other := range list {
			if other.m.Number <= in.m.Number {
				continue
			}
			at := [2]int{in.m.Number, other.m.Number}
			if found[at] == nil {
				found[at] = &shared{Pair: Pair{A: in.m, B: other.m}}
			}
			p := found[at]
			p.Agrees = append(p.Agrees, Agreed{Key: in.key, Text: in.text, At: in.at, Bt: other.at, Others: len(list) - 2})
			if len(list) <= most {
				p.rare++
			}
		}
	}
	var out []Pair
	for _, p := range found {
		nearlyAll := 10*len(p.Agrees) >= 9*min(own[p.A], own[p.B]) // however many have the same
		if !nearlyAll {
			p.Agrees = slices.DeleteFunc(p.Agrees, func(a Agreed) bool { return a.Others+2 > most })
		}
		if len(p.Agrees) >= c.guide.Alike && (nearlyAll || p.rare >= c.guide.Alike) {
			out = append(out, p.Pair)
		}
	}
	sort.Slice(out, func(i, j int) bool {
		a, b := out[i], out[j]
		if a.A.Number != b.A.Number {
			return a.A.Number < b.A.Number
		}
		return a.B.Number < b.B.Number
	})
	return out
}

// valuesOf is every value that a file says about its loop, names, notes and what was stated apart.
func valuesOf(doc *system.Document) []input {
	return walked(doc, func(name string) bool { return passedOver[name] && name != "prices" }, func(string) bool { return true })
}

// input is one value of a file, and what it has in common with the same one elsewhere.
type input struct{ pointer, same string }

// inputsOf is every value with a digit in it that is no name, note or day: what somebody measured, chose or worked out.
func inputsOf(doc *system.Document) []input {
	return walked(doc, func(name string) bool { return passedOver[name] }, func(text string) bool { return strings.ContainsAny(text, "0123456789") })
}

// walked is the values of a file in its order, without what stands under some keys.
func walked(doc *system.Document, passed, wanted func(string) bool) []input {
	var out []input
	var walk func(p system.Part, pointer string)
	walk = func(p system.Part, pointer string) {
		items, isList := p.Items()
		switch {
		case p.IsMapping():
			for _, name := range p.Keys() {
				if below, _ := p.Key(name); !passed(name) {
					walk(below, system.Child(pointer, name))
				}
			}
		case isList:
			for i, item := range items {
				walk(item, system.Element(pointer, i))
			}
		default:
			if text := strings.Join(strings.Fields(p.String()), " "); wanted(text) {
				out = append(out, input{pointer, pointer + "\x00" + text})
			}
		}
	}
	walk(doc.Whole(), "")
	return out
}

var passedOver = map[string]bool{
	"dryfit": true, "name": true, "note": true, "title_block": true, "date": true, "working": true, "text": true, "basis": true, "about": true,
	"quantity": true, "case": true, "since": true, "until": true, "permits": true, "concessions": true, "prices": true, "stated": true, "measured": true, "assumptions": true, "sources": true,
}
