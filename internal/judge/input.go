package judge

import (
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"

	"github.com/open-policy-agent/opa/v1/ast"

	"dryfit/internal/review"
	"dryfit/internal/working"
)

// evidence is a ledger by name and subject, as clauses see it and as judgements
// are read back from it.
type evidence struct {
	columns map[string]map[string]working.Entry
	gaps    map[string]map[string]map[string][]string // quantity, subject, case
	facts   map[string]map[string]*working.Fact
	ledger  *working.Ledger
}

func evidenceOf(l *working.Ledger) evidence {
	e := evidence{l.Columns(), map[string]map[string]map[string][]string{}, map[string]map[string]*working.Fact{}, l}
	for _, n := range l.Nodes() {
		if _, ok := n.Value(); ok {
			continue
		}
		a := n.Address
		of := under(under(e.gaps, a.Name), a.Subject)
		of[a.Case] = append(of[a.Case], reasons(n)...)
	}
	for _, f := range l.Facts() {
		under(e.facts, f.Name)[f.Subject] = f
	}
	return e
}

func under[V any](m map[string]map[string]V, key string) map[string]V {
	if m[key] == nil {
		m[key] = map[string]V{}
	}
	return m[key]
}

// reasons is what stands between a quantity and its number, as pointers into the
// file where a value is missing, else in words.
func reasons(n *working.Node) []string {
	var out []string
	for _, g := range n.Gaps() {
		text := g.Pointer
		if text == "" {
			text = g.Why
		}
		out = append(out, text)
	}
	return out
}

// Input is what Rego sees of a ledger, as JSON.
func (b *Book) Input(l *working.Ledger) ([]byte, error) {
	b.must()
	e := evidenceOf(l)
	in, err := b.input(e)
	if err != nil {
		return nil, err
	}
	x, err := ast.JSON(in)
	if err != nil {
		return nil, fmt.Errorf("the input of the clauses: %w", err)
	}
	return json.MarshalIndent(x, "", "  ")
}

// input is the one document that Rego sees. Columns that no clause reads stay out.
func (b *Book) input(e evidence) (ast.Value, error) {
	if err := b.unlisted(e); err != nil {
		return nil, err
	}
	quantities, facts := ast.NewObject(), ast.NewObject()
	for _, name := range slices.Sorted(maps.Keys(b.reads.quantities)) {
		of := ast.NewObject()
		for _, subject := range slices.Sorted(maps.Keys(e.columns[name])) {
			entry, err := entryTerm(e.columns[name][subject], e.gaps[name][subject])
			if err != nil {
				return nil, fmt.Errorf("%s of %s: %w", name, subject, err)
			}
			put(of, subject, entry)
		}
		put(quantities, name, fields("name", text(name), "of", ast.NewTerm(of)))
	}
	for _, name := range slices.Sorted(maps.Keys(b.reads.facts)) {
		of := ast.NewObject()
		for _, subject := range slices.Sorted(maps.Keys(e.facts[name])) {
			put(of, subject, factTerm(e.facts[name][subject]))
		}
		put(facts, name, fields("name", text(name), "of", ast.NewTerm(of)))
	}
	sets, relations := ast.NewObject(), ast.NewObject()
	for _, name := range slices.Sorted(maps.Keys(b.names.sets)) {
		put(sets, name, texts(e.ledger.Sets[name]))
	}
	for _, name := range slices.Sorted(maps.Keys(b.names.relations)) {
		of := ast.NewObject()
		for _, subject := range slices.Sorted(maps.Keys(e.ledger.Relations[name])) {
			put(of, subject, texts(e.ledger.Relations[name][subject]))
		}
		put(relations, name, ast.NewTerm(of))
	}
	return fields(
		"quantities", ast.NewTerm(quantities), "facts", ast.NewTerm(facts), "sets", ast.NewTerm(sets),
		"relations", ast.NewTerm(relations), "limits", b.limits, "cases", b.cases,
	).Value, nil
}

// inForce is the limits and the cases of every clause, by chapter and clause.
func inForce(clauses []*review.Clause) (limits, cases *ast.Term) {
	l, c := ast.NewObject(), ast.NewObject()
	for _, clause := range clauses {
		all := ast.NewObject()
		for _, limit := range clause.Limits {
			one := ast.NewObject()
			for key, x := range map[string]*float64{"least": limit.Least, "most": limit.Most} {
				if x != nil {
					put(one, key, number(*x))
				}
			}
			put(all, limit.Name, ast.NewTerm(one))
		}
		put(chapter(l, clause.Chapter), clause.ID, ast.NewTerm(all))
		put(chapter(c, clause.Chapter), clause.ID, texts(clause.Cases))
	}
	return ast.NewTerm(l), ast.NewTerm(c)
}

func chapter(o ast.Object, name string) ast.Object {
	if have := o.Get(text(name)); have != nil {
		return have.Value.(ast.Object)
	}
	fresh := ast.NewObject()
	put(o, name, ast.NewTerm(fresh))
	return fresh
}

func entryTerm(e working.Entry, gaps map[string][]string) (*ast.Term, error) {
	out := ast.NewObject()
	put(out, "at", text(e.At))
	if len(e.In) > 0 {
		in := ast.NewObject()
		for _, name := range slices.Sorted(maps.Keys(e.In)) {
			var values []*ast.Term
			for _, x := range e.In[name] {
				v := x.Value
				if bad(v.X) || bad(v.Low) || bad(v.High) {
					return nil, fmt.Errorf("%v is no number to judge by", v.X)
				}
				values = append(values, fields("value", number(v.X), "low", number(v.Low), "high", number(v.High), "when", text(x.When)))
			}
			put(in, name, ast.ArrayTerm(values...))
		}
		put(out, "in", ast.NewTerm(in))
	}
	if len(gaps) > 0 {
		missing := ast.NewObject()
		for _, name := range slices.Sorted(maps.Keys(gaps)) {
			put(missing, name, texts(unique(gaps[name])))
		}
		put(out, "missing", ast.NewTerm(missing))
	}
	return ast.NewTerm(out), nil
}

func factTerm(f *working.Fact) *ast.Term {
	if f.Word == "" {
		return fields("at", text(f.At), "missing", texts(unique(f.Missing)))
	}
	return fields("at", text(f.At), "word", text(f.Word))
}

func unique(list []string) []string {
	return slices.Compact(slices.Sorted(slices.Values(list)))
}

func bad(x float64) bool { return math.IsNaN(x) || math.IsInf(x, 0) }

// round is a number to six significant digits, which is more than any source is sure of.
func round(x float64) string {
	if x == 0 {
		x = 0 // and not -0
	}
	return strconv.FormatFloat(x, 'g', 6, 64)
}

func number(x float64) *ast.Term { return ast.NumberTerm(json.Number(round(x))) }

func text(s string) *ast.Term { return ast.StringTerm(s) }

func texts(list []string) *ast.Term {
	terms := make([]*ast.Term, len(list))
	for i, s := range list {
		terms[i] = text(s)
	}
	return ast.ArrayTerm(terms...)
}

func put(o ast.Object, key string, t *ast.Term) { o.Insert(text(key), t) }

// fields is an object of keys and terms in turn.
func fields(pairs ...any) *ast.Term {
	o := ast.NewObject()
	for i := 0; i+1 < len(pairs); i += 2 {
		put(o, pairs[i].(string), pairs[i+1].(*ast.Term))
	}
	return ast.NewTerm(o)
}

// unlisted is the first name of the ledger that is not in the catalogue: no clause
// could read it, and nobody would notice.
func (b *Book) unlisted(e evidence) error {
	all := []struct {
		what  string
		have  []string
		known func(string) bool
	}{
		{"quantity", sorted(e.columns), func(n string) bool { _, ok := b.names.quantities[n]; return ok }},
		{"fact", sorted(e.facts), func(n string) bool { _, ok := b.names.facts[n]; return ok }},
		{"set", sorted(e.ledger.Sets), func(n string) bool { return b.names.sets[n] }},
		{"relation", sorted(e.ledger.Relations), func(n string) bool { return b.names.relations[n] }},
	}
	for _, one := range all {
		for _, name := range one.have {
			if !one.known(name) {
				return fmt.Errorf("the %s %s was worked out and is not in the catalogue", one.what, name)
			}
		}
	}
	return nil
}

func sorted[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }
