package system

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strconv"
	"strings"
)

// Op says what an edit does at its pointer.
type Op int

// The four edits.
const (
	Set    Op = iota // the value takes the place of what stands there; a missing key is added, with the mappings above it
	Splice           // the value, a list, takes the place of one element of a list
	Insert           // the value goes into a list before the element at the pointer, or at its end
	Delete           // the key or element is taken out
)

// An Edit is one change to a system file. Its value may be a string, a number, a
// bool, a [Map], a map[string]any or a []any of these.
type Edit struct {
	Op      Op
	Pointer string
	Value   any
}

// A Map is a mapping whose keys keep their order.
type Map []Entry

// An Entry is one key of a [Map] with its value.
type Entry struct {
	Key   string
	Value any
}

// Edited reads the file again with some edits, made one after the other: each
// pointer is meant for the document as the edits before it left it. The document
// itself stays as it is, and so do the places of what is not edited.
func (d *Document) Edited(edits ...Edit) (*System, []Problem) {
	next, ps := d.with(edits)
	if len(ps.list) > 0 {
		return nil, ps.sorted()
	}
	return build(next, ps)
}

// Edited is the system with some edits made to its document; see [Document.Edited].
func (s *System) Edited(edits ...Edit) (*System, []Problem) { return s.Document.Edited(edits...) }

// WithEdits is the document with some edits made to it, as YAML; see [Document.Edited].
func (d *Document) WithEdits(edits ...Edit) ([]byte, []Problem) {
	next, ps := d.with(edits)
	if len(ps.list) > 0 {
		return nil, ps.sorted()
	}
	return next.YAML(), nil
}

func (d *Document) with(edits []Edit) (*Document, *problems) {
	next := &Document{File: d.File, root: d.root.copy(), mended: d.mended}
	ps := newProblems(next)
	for _, e := range edits {
		if problem := next.edit(e); problem != "" {
			ps.add(e.Pointer, "an edit at "+quoted(e.Pointer), problem)
		}
	}
	return next, ps
}

// edit makes one edit, or says why it cannot be made.
func (d *Document) edit(e Edit) string {
	parts := tokens(e.Pointer)
	if len(parts) == 0 || d.root == nil || slices.Contains(parts, "") || strings.ContainsFunc(e.Pointer, control) {
		return "point at a value inside the file"
	}
	at := d.Place(e.Pointer)
	var value *node
	if e.Op != Delete {
		made, ok := made(e.Value, at, 0)
		if !ok {
			return "give text, a finite number, true or false, a list or a mapping of these"
		}
		value = made
	}
	holder, problem := d.holder(parts[:len(parts)-1], e.Op == Set, at)
	if problem != "" {
		return problem
	}
	last := parts[len(parts)-1]
	if holder.form == mapping {
		return editKey(holder, last, e.Op, value, at)
	}
	return editItem(holder, last, e.Op, value)
}

// holder is the mapping or list that holds the last token of a pointer. Mappings
// that are missing are added if wanted; the short form of a piece is written out.
func (d *Document) holder(parts []string, add bool, at Place) (*node, string) {
	n, name := d.root, ""
	for i := 0; ; i++ {
		if n.scalar() && !(add && n.writeOut(name)) {
			return nil, "point at a value inside a mapping or list: " + quoted(name) + " is neither"
		}
		if i == len(parts) {
			return n, ""
		}
		next := n.step(parts[i])
		if next == nil {
			if !add || n.form != mapping {
				return nil, "there is nothing at " + quoted(parts[i])
			}
			next = &node{form: mapping, line: at.Line, column: at.Column}
			n.put(key{parts[i], at.Line, at.Column}, next)
		}
		n, name = next, parts[i]
	}
}

// longForms names, for each key with a short form, the key of its mapping that the short form stands for.
var longForms = map[string]string{
	"across": "length", "rise": "length", "fall": "length", "hose": "length",
	"bend": "angle", "sweep": "angle", "valve": "kind", "reducer": "to", "crop": "kind",
	"temperature": "usual", "pH": "usual", "alkalinity": "usual", "hardness": "usual", "chloride": "usual",
}

// writeOut turns the short form of a piece into its mapping.
func (n *node) writeOut(name string) bool {
	long, ok := longForms[name]
	if !ok {
		return false
	}
	short := *n
	*n = node{form: mapping, line: n.line, column: n.column}
	n.put(key{long, n.line, n.column}, &short)
	return true
}

func editKey(n *node, name string, op Op, value *node, at Place) string {
	i, there := n.find(name)
	switch {
	case op == Set:
		n.put(key{name, at.Line, at.Column}, value)
	case op == Delete && there:
		n.remove(i)
	case op == Delete:
		return "there is no key " + quoted(name)
	default:
		return "splice and insert work on an element of a list"
	}
	return ""
}

func editItem(n *node, token string, op Op, value *node) string {
	i, ok := listIndex(token)
	if token == "-" {
		i, ok = len(n.items), true
	}
	if !ok || i > len(n.items) || i == len(n.items) && op != Insert {
		return fmt.Sprintf("the list has %d elements, counted from 0", len(n.items))
	}
	switch op {
	case Set:
		n.items[i] = value
	case Delete:
		n.remove(i)
	case Insert:
		n.items = slices.Insert(n.items, i, value)
	case Splice:
		if value.form != list {
			return "splice takes a list"
		}
		n.items = slices.Replace(n.items, i, i+1, value.items...)
	}
	return ""
}

// made turns a Go value into nodes that all stand at one place.
func made(v any, at Place, depth int) (*node, bool) {
	n := &node{line: at.Line, column: at.Column}
	if depth > mostDepth {
		return n, false
	}
	decimalNode := func(x float64) (*node, bool) {
		n.form, n.value = number, x
		n.text = strconv.FormatFloat(x, 'f', -1, 64)
		return n, !math.IsNaN(x) && !math.IsInf(x, 0)
	}
	switch v := v.(type) {
	case string:
		n.form, n.text = text, v
		return n, !strings.ContainsFunc(v, control) && len(v) <= mostLetters
	case bool:
		n.form, n.on, n.text = boolean, v, strconv.FormatBool(v)
	case int:
		return decimalNode(float64(v))
	case float64:
		return decimalNode(v)
	case []any:
		n.form = list
		for _, item := range v {
			m, ok := made(item, at, depth+1)
			if !ok {
				return n, false
			}
			n.items = append(n.items, m)
		}
	case Map:
		n.form = mapping
		for _, e := range v {
			m, ok := made(e.Value, at, depth+1)
			if _, twice := n.find(e.Key); twice || !ok || e.Key == "" || strings.ContainsFunc(e.Key, control) {
				return n, false
			}
			n.put(key{e.Key, at.Line, at.Column}, m)
		}
	case map[string]any:
		ordered := make(Map, 0, len(v))
		for k, value := range v {
			ordered = append(ordered, Entry{k, value})
		}
		sort.Slice(ordered, func(i, j int) bool { return ordered[i].Key < ordered[j].Key })
		return made(ordered, at, depth)
	default:
		return n, false
	}
	return n, true
}
