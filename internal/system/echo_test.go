package system

import (
	"slices"
	"strings"
	"testing"
)

// visit calls f for every value below a node, with its pointer.
func visit(n *node, pointer string, f func(n *node, pointer string)) {
	f(n, pointer)
	for i, item := range n.items {
		if n.form == mapping {
			visit(item, child(pointer, n.keys[i].name), f)
		} else {
			visit(item, element(pointer, i), f)
		}
	}
}

// TestOneMistakeOneProblem spoils each value of a sound file in turn: one
// problem comes of it, at that value, and no echo from the layers behind.
func TestOneMistakeOneProblem(t *testing.T) {
	for _, name := range []string{"quarry-road.yaml", "everything.yaml"} {
		s := mustRead(t, name, systemFile(t, name))
		visit(s.Document.root, "", func(n *node, pointer string) {
			if !n.scalar() || !strings.ContainsAny(n.text, "0123456789") || !strings.Contains(n.text, " ") || strings.Contains(pointer, "/title_block/") {
				return
			}
			if number, _, _ := strings.Cut(n.text, " "); strings.Trim(number, "0123456789.-") != "" {
				return // no quantity
			}
			_, problems := s.Edited(Edit{Pointer: pointer, Value: "12 furlongs"})
			if _, last, _ := cutLast(pointer); len(problems) == 0 && slices.Contains(free, last) {
				return
			}
			if len(problems) != 1 || problems[0].Pointer != pointer {
				t.Errorf("%s, 12 furlongs at %s for %q:\n%s", name, pointer, n.text, table(problems))
			}
		})
	}
}

// free are keys under which the schema takes any text, or a value of any kind.
var free = []string{"outlet", "thread", "name", "value", "expected", "found", "within", "tolerance", "spread", "un_mark", "working", "note"}

// TestMisspeltKeyIsOneProblem spoils each key of the notation in turn.
func TestMisspeltKeyIsOneProblem(t *testing.T) {
	own := []string{"/pipes", "/vessels", "/pumps", "/lines", "/stands", "/appliances", "/modes", "/materials"}
	for _, name := range []string{"quarry-road.yaml", "everything.yaml"} {
		s := mustRead(t, name, systemFile(t, name))
		visit(s.Document.root, "", func(n *node, pointer string) {
			if n.form != mapping || slices.Contains(own, pointer) || strings.HasSuffix(pointer, "/positions") {
				return
			}
			for i, k := range n.keys {
				next := &Document{File: name, root: s.Document.root.copy()}
				at := next.at(pointer)
				at.keys[i].name = k.name + "q"
				delete(at.byName, k.name)
				at.byName[k.name+"q"] = i
				_, problems := build(next, newProblems(next))
				if len(problems) != 1 || problems[0].Pointer != child(pointer, k.name+"q") {
					t.Errorf("%s, %sq in %s:\n%s", name, k.name, pointer, table(problems))
				}
			}
		})
	}
}
