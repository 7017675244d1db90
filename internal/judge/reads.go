package judge

import (
	"maps"
	"math"
	"slices"
	"strconv"

	"github.com/open-policy-agent/opa/v1/ast"

	"dryfit/internal/review"
)

// columns are the parts of the input that clauses read by name, with the number
// of names that have to stand in full.
var columns = map[string]int{"quantities": 1, "facts": 1, "sets": 1, "relations": 1, "limits": 2, "cases": 2}

// reads are the names of the columns that modules read, and of the sets and relations.
type reads struct{ quantities, facts, over map[string]bool }

func newReads() reads { return reads{map[string]bool{}, map[string]bool{}, map[string]bool{}} }

func (r reads) join(other reads) {
	maps.Copy(r.quantities, other.quantities)
	maps.Copy(r.facts, other.facts)
	maps.Copy(r.over, other.over)
}

// tell enters in a clause the names that it reads.
func (r reads) tell(c *review.Clause, n names) {
	c.Asks, c.Reads, c.Over = r.asks(n), sorted(r.quantities), sorted(r.over)
}

// asks is the names of the facts that are read, with what each means.
func (r reads) asks(n names) []string {
	var out []string
	for _, name := range slices.Sorted(maps.Keys(r.facts)) {
		out = append(out, name+": "+n.facts[name].Title)
	}
	return out
}

const onlyVocabulary = "a clause reads data.vocab and its own rules, and no other part of data; write what it needs into its own file"

// hold checks what the compiler does not: that every name of the input stands in
// full, so that the compiler can check it; that nothing of other clauses is read; that
// nothing is replaced by `with`; and that no number is too large to work with. It adds the
// columns that are read.
func (s source) hold(r reads) Problems {
	var wrong Problems
	say := func(at *ast.Location, text string) {
		wrong = append(wrong, Problem{s.file, at.Row, text})
	}
	for _, i := range s.module.Imports {
		if ref, ok := i.Path.Value.(ast.Ref); ok && ref[0].Equal(ast.InputRootDocument) {
			say(i.Loc(), "input is imported; write it out in full where it is read, and do not import it")
		} else if ok && ref[0].Equal(ast.DefaultRootDocument) && !s.within(ref) {
			say(i.Loc(), onlyVocabulary)
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
					say(x.Loc(), "this number is too large; write one below 1e300")
				}
			case ast.Ref:
				if v[0].Equal(ast.InputRootDocument) && !r.add(v) {
					say(x.Loc(), "a name of input is left open; write the name in full, such as input.quantities.flow, input.sets.lines or input.limits.lines.carries_flow")
				}
				if v[0].Equal(ast.DefaultRootDocument) && !s.within(v) {
					say(x.Loc(), onlyVocabulary)
				}
			case ast.Var:
				if x.Equal(ast.InputRootDocument) {
					say(x.Loc(), "input cannot be handed on as a whole; hand on one column, such as input.quantities.flow")
				}
				if x.Equal(ast.DefaultRootDocument) {
					say(x.Loc(), onlyVocabulary)
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
	case "sets", "relations":
		r.over[name] = true
	}
	return true
}

// vocabulary says that a file of the book is no clause: it holds the words that clauses are written in.
func (s source) vocabulary() bool { return !s.house && s.module.Package.Path.String() == "data.vocab" }

// root is the first word of the packages of the book, or of those of a house.
func root(house bool) string {
	if house {
		return "house"
	}
	return "book"
}

// place is the chapter and the clause of the package data.book.CHAPTER.CLAUSE, or of
// data.house.CHAPTER.CLAUSE.
func (s source) place() (chapter, clause string, ok bool) {
	p := s.module.Package.Path
	if len(p) != 4 || word(p[1]) != root(s.house) { // the first is always data
		return "", "", false
	}
	return word(p[2]), word(p[3]), true
}

// within says that a reference to data stays in the vocabulary or in the file itself.
func (s source) within(ref ast.Ref) bool {
	own := s.module.Package.Path
	return len(ref) > 1 && word(ref[1]) == "vocab" || len(ref) >= len(own) && ref.HasPrefix(own)
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
