package system

import (
	"fmt"
	"strings"
)

// Ground is what the author says of a value of the file without being asked: that it was
// assumed, and why that is reasonable, or where it comes from.
type Ground struct {
	About   string // the key, with dots
	Pointer string // of what it is about
	Text    string
	Basis   string // of an assumption: why it is reasonable
	At      string // pointer of the entry
	Place   Place  // of the entry
}

// Assumptions is what the author took without measuring it. Reading them marks them as looked at.
func (s *System) Assumptions() []Ground { return s.grounds("/assumptions") }

// Sources is where values come from. Reading them marks them as looked at.
func (s *System) Sources() []Ground { return s.grounds("/sources") }

// grounds is the entries of one list; none of which a part had to be left out.
func (s *System) grounds(list string) []Ground {
	var out []Ground
	s.cursor(list).items(func(_ int, c cursor) {
		word := func(key string) string { text, _ := c.get(key).word().Value(); return text }
		g := Ground{About: word("about"), Text: word("text"), Basis: word("basis"), At: c.pointer, Place: s.Document.Place(c.pointer)}
		g.Pointer = PointerOf(g.About)
		if g.About != "" && g.Text != "" && (g.Basis != "" || list == "/sources") {
			out = append(out, g)
		}
	})
	return out
}

// Dotted is a JSON pointer as a key with dots: /fish/0/feed is fish.0.feed.
func Dotted(pointer string) string { return strings.Join(tokens(pointer), ".") }

// PointerOf is the JSON pointer of a key with dots. Names of the notation have no dots of their own.
func PointerOf(dotted string) string {
	pointer := ""
	for _, name := range strings.FieldsFunc(dotted, func(r rune) bool { return r == '.' }) {
		pointer = child(pointer, name)
	}
	return pointer
}

// grounds checks that every assumption and source is about something that the file holds.
func (r referrer) grounds() {
	for _, list := range []string{"assumptions", "sources"} {
		r.s.cursor("").all([]string{list, "*", "about"}, func(c cursor) {
			if about := c.word(); about.given {
				r.about(c.pointer, about.text)
			}
		})
	}
}

// about refuses a key that leads nowhere. It says nothing where what it leads to, or
// something above that, is refused itself.
func (r referrer) about(pointer, key string) {
	names := strings.Split(key, ".")
	if names[0] == "assumptions" || names[0] == "sources" {
		r.ps.add(pointer, quoted(key)+", which is no value of the loop", "write the key of what it is about, as in `fish.0.feed`")
		return
	}
	at, way := r.s.cursor(""), ""
	for i, name := range names {
		below := at.get(name)
		if at.n != nil && at.n.form == list {
			below.n = at.n.step(name)
		}
		way = child(way, name)
		if r.ps.broken[way] {
			return
		}
		if !below.given() {
			r.ps.add(pointer, "the key "+quoted(key)+", which is not in this file", r.nearestKey(at, names, i))
			return
		}
		at = below
	}
}

// nearestKey says what to write in place of a key whose i-th name is not under what stands before it.
func (r referrer) nearestKey(above cursor, names []string, i int) string {
	before, rest := strings.Join(names[:i], "."), names[i+1:]
	if above.n.form == list {
		return fmt.Sprintf("%s has %d elements, counted from 0", quoted(before), len(above.n.items))
	}
	var candidates []string
	above.each(func(name string, v cursor) {
		if v.given() {
			candidates = append(candidates, name)
		}
	})
	if i == 0 { // perhaps the name of a thing, without the sort of thing it is
		for _, sort := range []string{"vessels", "lines", "pumps", "pipes", "stands"} {
			if r.s.cursor("/" + sort + "/" + names[0]).given() {
				return "write " + quoted(strings.Join(append([]string{sort}, names...), "."))
			}
		}
	}
	near := Nearest(names[i], candidates)
	switch {
	case near != "":
		return "the nearest key is " + quoted(strings.Join(append(append(names[:i:i], near), rest...), "."))
	case i == 0:
		return "write a key of this file with dots, from the top down, as in `fish.0.feed`"
	case len(candidates) == 0:
		return "write " + quoted(before) + ": there is nothing below it"
	}
	return "the keys below " + quoted(before) + " are " + listed(candidates)
}
