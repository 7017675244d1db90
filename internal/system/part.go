package system

import "slices"

// Part is one value of a document with all that is below it, for those who walk
// through documents as they were written.
type Part struct{ node *node }

// Whole is the document as one part.
func (d *Document) Whole() Part { return Part{d.root} }

// Keys is the keys of a mapping in file order; none of what is no mapping.
func (p Part) Keys() []string {
	if p.node == nil {
		return nil
	}
	out := make([]string, len(p.node.keys))
	for i, k := range p.node.keys {
		out[i] = k.name
	}
	return out
}

// Key is the value under a key of a mapping.
func (p Part) Key(name string) (Part, bool) {
	n := p.node.get(name)
	return Part{n}, n != nil
}

// Items is the elements of a list, and whether it is one.
func (p Part) Items() ([]Part, bool) {
	if p.node == nil || p.node.form != list {
		return nil, false
	}
	out := make([]Part, len(p.node.items))
	for i, item := range p.node.items {
		out[i] = Part{item}
	}
	return out, true
}

// IsMapping says whether the part is a mapping.
func (p Part) IsMapping() bool { return p.node != nil && p.node.form == mapping }

// Same says that two parts hold the same values, whatever the order of their keys
// and the way in which they are written.
func (p Part) Same(q Part) bool { return same(p.node, q.node) }

func same(a, b *node) bool {
	if a == nil || b == nil {
		return a == b
	}
	if a.form != b.form || len(a.items) != len(b.items) {
		return false
	}
	switch a.form {
	case boolean:
		return a.on == b.on
	case number:
		return a.value == b.value
	case text:
		return a.text == b.text
	case list:
		return slices.EqualFunc(a.items, b.items, same)
	}
	for i, k := range a.keys {
		if !same(a.items[i], b.get(k.name)) {
			return false
		}
	}
	return true
}

// String is the part on one line, as it may stand in a file.
func (p Part) String() string {
	switch {
	case p.node == nil:
		return ""
	case p.node.scalar() && p.node.form != null:
		return p.node.text
	}
	return flow(p.node)
}

// Child is the JSON pointer of a value under a key of the mapping at a pointer.
func Child(pointer, name string) string { return child(pointer, name) }

// Element is the JSON pointer of an element of the list at a pointer.
func Element(pointer string, i int) string { return element(pointer, i) }
