package system

import (
	"strconv"

	"dryfit/internal/quantity"
)

// A cursor is a place in the document while it is read into the model: the value
// there, or nil where the author wrote none.
type cursor struct {
	n       *node
	pointer string
	*reading
}

// reading is what all cursors of one system share.
type reading struct {
	looked *looked
	broken map[string]bool // pointers of values that the schema refused: they count as not given
}

func (c cursor) get(name string) cursor {
	return cursor{c.n.get(name), child(c.pointer, name), c.reading}
}

// at goes down several keys.
func (c cursor) at(names ...string) cursor {
	for _, name := range names {
		c = c.get(name)
	}
	return c
}

// given says whether anything is written here.
func (c cursor) given() bool { return c.n != nil && c.n.form != null }

// short is the value itself where the author wrote the short form, else the key of the long one.
func (c cursor) short(name string) cursor {
	if c.n.scalar() && c.n.form != null {
		return c
	}
	return c.get(name)
}

// each calls f for every key of a mapping, in file order.
func (c cursor) each(f func(name string, value cursor)) {
	if c.n == nil || c.n.form != mapping {
		return
	}
	for _, k := range c.n.keys {
		f(k.name, c.get(k.name))
	}
}

// items calls f for every element of a list.
func (c cursor) items(f func(i int, value cursor)) {
	if c.n == nil || c.n.form != list {
		return
	}
	for i, item := range c.n.items {
		f(i, cursor{item, element(c.pointer, i), c.reading})
	}
}

// item is one element of a list.
func (c cursor) item(i int) cursor {
	pointer := element(c.pointer, i)
	return cursor{c.n.step(strconv.Itoa(i)), pointer, c.reading}
}

// only is the one key of a one-key mapping, with its value.
func (c cursor) only() (string, cursor) {
	if c.n == nil || c.n.form != mapping || len(c.n.keys) == 0 {
		return "", cursor{nil, c.pointer, c.reading}
	}
	name := c.n.keys[0].name
	return name, c.get(name)
}

func (c cursor) leaf() Leaf {
	l := Leaf{pointer: c.pointer, looked: c.looked}
	if c.n.scalar() && c.n.form != null && !c.broken[c.pointer] {
		l.given, l.text = true, c.n.text
	}
	return l
}

// number reads a quantity. What is not one is not given: the schema has said so already.
func (c cursor) number(kind quantity.Kind) Number {
	n := Number{Leaf: c.leaf(), kind: kind}
	if !n.given {
		return n
	}
	if kind == quantity.Number {
		n.si, n.given = c.n.value, c.n.form == number
		return n
	}
	q, err := quantity.Parse(kind, n.text)
	if err != nil {
		n.given = false
		return n
	}
	n.si, n.unit, n.basis = q.SI, q.Unit, q.Basis
	return n
}

// numberOr reads a quantity, or a word that stands in its place and means a value.
func (c cursor) numberOr(kind quantity.Kind, word string, meant float64) Number {
	n := c.number(kind)
	if c.is(word) {
		n.Leaf, n.si = c.leaf(), meant
	}
	return n
}

func (c cursor) length() Number { return c.number(quantity.Length) }
func (c cursor) count() Number  { return c.number(quantity.Number) }

func (c cursor) word() Word {
	w := Word{c.leaf()}
	w.given = w.given && (c.n.form == text || c.n.form == number)
	return w
}

// is says whether a word stands here.
func (c cursor) is(word string) bool { return c.n != nil && c.n.form == text && c.n.text == word }

func (c cursor) toggle() Switch {
	s := Switch{Leaf: c.leaf()}
	s.given = s.given && c.n.form == boolean
	s.on = s.given && c.n.on
	return s
}

// span reads a number given once, or as low, usual and high.
func (c cursor) span(kind quantity.Kind) Range {
	if c.n.scalar() && c.n.form != null {
		n := c.number(kind)
		return Range{c.pointer, n, n, n}
	}
	return Range{c.pointer, c.get("low").number(kind), c.get("usual").number(kind), c.get("high").number(kind)}
}
