package system

// A Document is a system file as it was written: its values in file order, with
// the line and column of each.
type Document struct {
	File   string
	root   *node
	mended bool // something was left out; see [ReadAsFar]
}

// A Place is a position in a file. Lines and columns count from 1; columns count characters.
type Place struct {
	File         string
	Line, Column int
}

// Place is where the value at a JSON pointer stands: a mapping or list at its
// key, a scalar at its own first character. For a pointer to nothing it is the
// place of the nearest value above that is there.
func (d *Document) Place(pointer string) Place {
	at := Place{File: d.File, Line: 1, Column: 1}
	n := d.root
	if n == nil {
		return at
	}
	if pointer == "" {
		return Place{d.File, n.line, n.column}
	}
	for _, token := range tokens(pointer) {
		next := n.step(token)
		if next == nil {
			break
		}
		if i, ok := n.find(token); ok && !next.scalar() {
			at.Line, at.Column = n.keys[i].line, n.keys[i].column
		} else if next.line > 0 {
			at.Line, at.Column = next.line, next.column
		}
		n = next
	}
	return at
}

// Text is the scalar at a pointer as it was written, and whether one is there.
func (d *Document) Text(pointer string) (string, bool) {
	n := d.at(pointer)
	if !n.scalar() || n.form == null {
		return "", false
	}
	return n.text, true
}

// Has says whether anything stands at a pointer.
func (d *Document) Has(pointer string) bool { return d.at(pointer) != nil }

// Plain is the whole document as maps, lists, strings, float64 and bools.
func (d *Document) Plain() any { return d.root.plain() }

func (d *Document) at(pointer string) *node {
	n := d.root
	for _, token := range tokens(pointer) {
		if n = n.step(token); n == nil {
			return nil
		}
	}
	return n
}

// key is the place of a mapping's key itself.
func (d *Document) key(pointer, name string) Place {
	n := d.at(pointer)
	if i, ok := n.find(name); ok {
		return Place{d.File, n.keys[i].line, n.keys[i].column}
	}
	return d.Place(pointer)
}
