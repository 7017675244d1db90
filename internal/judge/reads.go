package judge

import (
	"maps"
	"math"
	"slices"
	"strconv"

	"github.com/open-policy-agent/opa/v1/ast"
)

// columns are the parts of the input that clauses read by name, with the number
// of names that have to stand in full.
var columns = map[string]int{"quantities": 1, "facts": 1, "sets": 1, "relations": 1, "limits": 2, "cases": 2}

// reads are the names of the columns that modules read.
type reads struct{ quantities, facts map[string]bool }

func newReads() reads { return reads{map[string]bool{}, map[string]bool{}} }

func (r reads) join(other reads) {
	maps.Copy(r.quantities, other.quantities)
	maps.Copy(r.facts, other.facts)
}

// asks is the names of the facts that are read, with what each means.
func (r reads) asks(n names) []string {
	var out []string
	for _, name := range slices.Sorted(maps.Keys(r.facts)) {
		out = append(out, name+": "+n.facts[name].Title)
	}
	return out
}

// hold checks what the compiler does not: that every name of the input stands in
// full, so that the compiler can check it; that nothing is replaced by `with`; and
// that no number is too large to work with. It adds the columns that are read.
func (s source) hold(r reads) Problems {
	var wrong Problems
	say := func(at *ast.Location, text string) {
		wrong = append(wrong, Problem{s.file, at.Row, text})
	}
	for _, i := range s.module.Imports {
		if ref, ok := i.Path.Value.(ast.Ref); ok && ref[0].Equal(ast.InputRootDocument) {
			say(i.Loc(), "write input out in full where it is read, and do not import it")
		}
	}
	var walk *ast.GenericVisitor
	walk = ast.NewGenericVisitor(func(x any) bool {
		switch x := x.(type) {
		case *ast.Import:
			return true
		case *ast.Head:
			for _, t := range x.Reference[min(1, len(x.Reference)):] {
				walk.Walk(t)
			}
		case *ast.With:
			say(x.Loc(), "with is for tests; a clause judges the input as it is")
		case *ast.Term:
			switch v := x.Value.(type) {
			case ast.Number:
				if f, err := strconv.ParseFloat(string(v), 64); err != nil || math.IsInf(f, 0) {
					say(x.Loc(), "this number is too large")
				}
			case ast.Ref:
				if v[0].Equal(ast.InputRootDocument) && !r.add(v) {
					say(x.Loc(), "write the name in full, such as input.quantities.flow, input.sets.lines or input.limits.lines.carries_flow")
				}
			case ast.Var:
				if x.Equal(ast.InputRootDocument) {
					say(x.Loc(), "input cannot be handed on as a whole; hand on one column, such as input.quantities.flow")
				}
			}
		}
		if ref, ok := x.(ast.Ref); ok { // the head is no term of its own to check again
			for _, t := range ref[1:] {
				walk.Walk(t)
			}
			return true
		}
		return false
	})
	walk.Walk(s.module)
	return wrong
}

// add notes what a reference to the input reads; it answers false if the reference
// does not stand in full. A part of the input that there is not is left to the compiler.
func (r reads) add(ref ast.Ref) bool {
	if len(ref) < 2 {
		return false
	}
	part, ok := ref[1].Value.(ast.String)
	length, known := columns[string(part)]
	if ok && !known {
		return true
	}
	if !ok || len(ref) < 2+length {
		return false
	}
	for _, t := range ref[2 : 2+length] {
		if _, ok := t.Value.(ast.String); !ok {
			return false
		}
	}
	name := string(ref[2].Value.(ast.String))
	switch part {
	case "quantities":
		r.quantities[name] = true
	case "facts":
		r.facts[name] = true
	}
	return true
}

// place is the chapter and the clause of the package data.book.CHAPTER.CLAUSE.
func (s source) place() (chapter, clause string, ok bool) {
	p := s.module.Package.Path
	if len(p) != 4 || word(p[1]) != "book" { // the first is always data
		return "", "", false
	}
	return word(p[2]), word(p[3]), true
}

func word(t *ast.Term) string {
	switch v := t.Value.(type) {
	case ast.String:
		return string(v)
	case ast.Var:
		return string(v)
	}
	return ""
}
