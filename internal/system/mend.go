package system

import (
	"cmp"
	"maps"
	"slices"
)

// rounds bounds how often a file is read again without what was refused: a mistake is seldom
// hidden behind more than one other.
const rounds = 8

// ReadAsFar reads a system file as [Read] does. Where something is refused it leaves that out
// and reads again, so that the rest can be worked out: values, keys that the notation does not
// know, and lists of which one element is refused. What is left out counts as not given, also
// where the notation wants it. The problems are all that were found on the way, leftOut the
// pointers of what is not there any more, in the order of the file.
//
// Vessels, lines and pieces are never left out, nor the ends and the duty of a line and the pump
// in it: a loop without them is another one. A file in which one of these cannot be read gives no system,
// nor does one that is no YAML. A pipe or a pump that is refused as a whole stands without its values. The system that comes of a file can be edited as every other;
// an edit may put in what was left out.
func ReadAsFar(file string, data []byte) (s *System, all []Problem, leftOut []string) {
	doc := &Document{File: file}
	ps := newProblems(doc)
	if doc.root = parse(data, ps); doc.root == nil {
		return nil, ps.sorted(), nil
	}
	m := mender{doc: doc, places: map[string]Place{}}
	seen := map[Problem]bool{}
	for range rounds {
		s, _ = build(doc, ps)
		for _, p := range ps.list {
			same := p
			same.Pointer = "" // as in problems
			if !seen[same] {
				seen[same] = true
				all = append(all, p)
			}
		}
		if s != nil || !m.without(ps.broken) {
			break
		}
		ps = newProblems(doc)
	}
	SortProblems(all)
	if s == nil {
		return nil, all, nil
	}
	return s, all, m.leftOut()
}

// A mender takes what was refused out of a document.
type mender struct {
	doc    *Document
	places map[string]Place // of what was taken out, by its pointer
	moved  bool             // something was done in this round
}

// without takes out what was refused. It says no where that cannot be, and where nothing is left to take.
func (m *mender) without(refused map[string]bool) bool {
	m.doc.mended, m.moved = true, false
	for _, pointer := range slices.Sorted(maps.Keys(refused)) {
		if !m.take(pointer) {
			return false
		}
	}
	return m.moved
}

// leftOut is the pointers of what was taken out, in the order of the file.
func (m *mender) leftOut() []string {
	return slices.SortedFunc(maps.Keys(m.places), func(a, b string) int {
		p, q := m.places[a], m.places[b]
		return cmp.Or(cmp.Compare(p.Line, q.Line), cmp.Compare(p.Column, q.Column), cmp.Compare(a, b))
	})
}

// take takes out what stands at a pointer, or says that it cannot.
func (m *mender) take(pointer string) bool {
	parent, name, ok := cutLast(pointer)
	holder, n := m.doc.at(parent), m.doc.at(pointer)
	switch {
	case !ok:
		return false
	case holder == nil || holder.scalar():
		return true // gone with what held it
	case m.doc.fixed(pointer):
		return false
	case n == nil && holder.form == list:
		return true
	case n == nil:
		m.moved = m.moved || !slices.Contains(holder.lacks, name)
		holder.leave(name)
		return true
	case n.doubtful || n.form == null && slices.Contains(holder.lacks, name):
		return true // done before
	}
	m.moved = true
	switch {
	case m.doc.piece(pointer) && len(n.keys) > 1: // what belongs into its one key stands beside it
		for _, k := range slices.Clone(n.keys) {
			if !slices.Contains(kinds, k.name) {
				m.note(child(pointer, k.name))
				n.drop(k.name)
			}
		}
	case m.doc.piece(pointer) || hasID(pointer):
		m.note(pointer)
		n.blank()
	case m.doc.piece(parent):
		m.note(pointer)
		holder.shorten(name, n)
	case holder.form == list && len(tokens(pointer)) == 2: // an entry, as of stated
		m.note(pointer)
		*n = node{form: mapping, line: n.line, column: n.column, doubtful: true}
	case holder.form == list:
		return m.take(parent) // without one of its elements the list says something else
	default:
		m.note(pointer)
		holder.drop(name)
	}
	return true
}

// note notes what is taken out, with its place while it is there.
func (m *mender) note(pointer string) { m.places[pointer] = m.doc.Place(pointer) }

// hasID says whether a pointer is that of something that the file names elsewhere by its id.
func hasID(pointer string) bool {
	parts := tokens(pointer)
	return len(parts) == 2 && slices.Contains([]string{"pipes", "pumps", "stands", "appliances", "modes", "materials"}, parts[0])
}

// piece says whether a pointer is that of a piece.
func (d *Document) piece(pointer string) bool {
	parts := tokens(pointer)
	return len(parts) == 4 && parts[0] == "lines" && parts[2] == "pieces"
}

// fixed says whether what stands, or would stand, at a pointer is never left out: the notation,
// vessels and lines, what a line joins and what it is for, and pieces of no kind.
func (d *Document) fixed(pointer string) bool {
	parts, n := tokens(pointer), d.at(pointer)
	if len(parts) == 1 {
		return parts[0] == "dryfit" && n != nil || slices.Contains([]string{"vessels", "lines", "pipes", "pumps"}, parts[0])
	}
	switch parts[0] {
	case "vessels":
		return len(parts) == 2
	case "lines":
		switch {
		case len(parts) == 2, len(parts) == 3 && slices.Contains([]string{"from", "to", "duty", "pieces"}, parts[2]):
			return true
		case len(parts) == 4 && d.piece(pointer): // a piece of no kind, or of two
			return n == nil || len(n.known()) != 1
		case len(parts) == 5 && parts[2] == "pieces":
			return parts[4] == "pump" || !slices.Contains(kinds, parts[4])
		}
	}
	return false
}

// known is the keys of a mapping that are kinds of pieces.
func (n *node) known() []string {
	var out []string
	for _, k := range n.keys {
		if slices.Contains(kinds, k.name) {
			out = append(out, k.name)
		}
	}
	return out
}

// leave notes that a mapping lacks a key.
func (n *node) leave(name string) {
	if !slices.Contains(n.lacks, name) {
		n.lacks = append(n.lacks, name)
	}
}

// drop takes a key out of a mapping.
func (n *node) drop(name string) {
	if i, ok := n.find(name); ok {
		n.remove(i)
		n.leave(name)
	}
}

// shorten takes what a piece says out of it; its kind stays.
func (n *node) shorten(kind string, value *node) {
	switch long := longForms[kind]; {
	case !value.scalar():
		value.blank()
	case long == "":
		*value = node{line: value.line, column: value.column}
		n.leave(kind)
	default:
		value.writeOut(kind)
		value.drop(long)
	}
}

// blank takes all values out of a mapping and the mappings in it.
func (n *node) blank() {
	for i := len(n.keys) - 1; i >= 0 && n.form == mapping; i-- {
		name := n.keys[i].name
		switch value := n.items[i]; {
		case value.form == mapping:
			value.blank()
		case slices.Contains(kinds, name) && len(n.keys) == 1:
			n.shorten(name, value)
		default:
			n.drop(name)
		}
	}
	if n.form != mapping {
		*n = node{form: mapping, line: n.line, column: n.column}
	}
	n.doubtful = true
}

// seed notes as refused what was left out of the document, for the layers that read it.
func (d *Document) seed(broken map[string]bool) {
	if !d.mended {
		return
	}
	var visit func(n *node, pointer string)
	visit = func(n *node, pointer string) {
		if n.doubtful {
			broken[pointer] = true
		}
		for _, name := range n.lacks {
			if value := n.get(name); value == nil || value.form == null {
				broken[child(pointer, name)] = true
			}
		}
		for i, item := range n.items {
			if n.form == mapping {
				visit(item, child(pointer, n.keys[i].name))
			} else {
				visit(item, element(pointer, i))
			}
		}
	}
	visit(d.root, "")
}
