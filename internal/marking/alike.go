package marking

import (
	"sort"
	"strings"

	"dryfit/internal/system"
)

// few is how many others may have a value that still counts as a pair's own: one, or a twentieth of a large class.
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
	for _, in := range inputsOf(doc) {
		if !c.starting[in.same] {
			text, _ := doc.Text(in.pointer)
			c.inputs = append(c.inputs, held{m, system.Dotted(in.pointer), text, doc.Place(in.pointer), in.same})
		}
	}
}

// pairs finds the pairs of submissions that share inputs which few others have, at least as many as the
// guide says, in the order of their numbers. Names, notes and prices do not count.
func (c *Counter) pairs() []Pair {
	if c.guide.Alike == 0 {
		return nil
	}
	holders := map[string][]held{}
	for _, in := range c.inputs {
		holders[in.same] = append(holders[in.same], in)
	}
	most := few(len(c.marked)) + 2
	found := map[[2]int]*Pair{}
	for _, in := range c.inputs { // in the order of the submissions and of their files
		list := holders[in.same]
		if len(list) < 2 || len(list) > most {
			continue
		}
		for _, other := range list {
			if other.m.Number <= in.m.Number {
				continue
			}
			at := [2]int{in.m.Number, other.m.Number}
			if found[at] == nil {
				found[at] = &Pair{A: in.m, B: other.m}
			}
			found[at].Agrees = append(found[at].Agrees, Agreed{Key: in.key, Text: in.text, At: in.at, Bt: other.at, Others: len(list) - 2})
		}
	}
	var out []Pair
	for _, p := range found {
		if len(p.Agrees) >= c.guide.Alike {
			out = append(out, *p)
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

// input is one value of a file, and what it has in common with the same one elsewhere.
type input struct{ pointer, same string }

// inputsOf is every value with a digit in it that is no name, note or day: what somebody measured, chose or worked out.
func inputsOf(doc *system.Document) []input {
	var out []input
	var walk func(p system.Part, pointer string)
	walk = func(p system.Part, pointer string) {
		items, isList := p.Items()
		switch {
		case p.IsMapping():
			for _, name := range p.Keys() {
				if below, _ := p.Key(name); !passedOver[name] {
					walk(below, system.Child(pointer, name))
				}
			}
		case isList:
			for i, item := range items {
				walk(item, system.Element(pointer, i))
			}
		default:
			if text := strings.Join(strings.Fields(p.String()), " "); strings.ContainsAny(text, "0123456789") {
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
