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
	var quantities, facts, sets, relations []pair
	for _, name := range sorted(b.reads.quantities) {
		var of []pair
		for _, subject := range sorted(e.columns[name]) {
			entry, err := entryTerm(e.columns[name][subject], e.gaps[name][subject])
			if err != nil {
				return nil, fmt.Errorf("%s of %s: %w", name, subject, err)
			}
			of = append(of, pair{text(subject), entry})
		}
		quantities = append(quantities, columnOf(name, of))
	}
	for name := range b.reads.facts {
		var of []pair
		for subject, fact := range e.facts[name] {
			of = append(of, pair{text(subject), factTerm(fact)})
		}
		facts = append(facts, columnOf(name, of))
	}
	for name := range b.names.sets {
		sets = append(sets, pair{text(name), texts(e.ledger.Sets[name])})
	}
	for name := range b.names.relations {
		var of []pair
		for subject, others := range e.ledger.Relations[name] {
			of = append(of, pair{text(subject), texts(others)})
		}
		relations = append(relations, pair{text(name), objectOf(of...)})
	}
	return objectOf(
		pair{text("quantities"), objectOf(quantities...)}, pair{text("facts"), objectOf(facts...)},
		pair{text("sets"), objectOf(sets...)}, pair{text("relations"), objectOf(relations...)},
		pair{text("limits"), b.limits}, pair{text("cases"), b.cases},
	).Value, nil
}

// columnOf is one quantity or fact of all its subjects.
func columnOf(name string, of []pair) pair {
	known := text(name)
	return pair{known, objectOf(pair{nameKey, known}, pair{ofKey, objectOf(of...)})}
}

// inForce is the limits and the cases of every clause, by chapter and clause.
func inForce(clauses []*review.Clause) (limits, cases *ast.Term) {
	l, c := map[string][]pair{}, map[string][]pair{}
	for _, clause := range clauses {
		var all []pair
		for _, limit := range clause.Limits {
			var one []pair
			if limit.Least != nil {
				one = append(one, pair{text("least"), number(*limit.Least)})
			}
			if limit.Most != nil {
				one = append(one, pair{text("most"), number(*limit.Most)})
			}
			all = append(all, pair{text(limit.Name), objectOf(one...)})
		}
		id := text(clause.ID)
		l[clause.Chapter] = append(l[clause.Chapter], pair{id, objectOf(all...)})
		c[clause.Chapter] = append(c[clause.Chapter], pair{id, texts(clause.Cases)})
	}
	return chapters(l), chapters(c)
}

func chapters(of map[string][]pair) *ast.Term {
	var out []pair
	for name, clauses := range of {
		out = append(out, pair{text(name), objectOf(clauses...)})
	}
	return objectOf(out...)
}

func entryTerm(e working.Entry, gaps map[string][]string) (*ast.Term, error) {
	out := []pair{{atKey, text(e.At)}}
	if len(e.In) > 0 {
		var in []pair
		for _, name := range sorted(e.In) {
			var values []*ast.Term
			for _, x := range e.In[name] {
				v := x.Value
				if bad(v.X) || bad(v.Low) || bad(v.High) {
					return nil, fmt.Errorf("%v is no number to judge by", v.X)
				}
				values = append(values, objectOf(
					pair{valueKey, number(v.X)}, pair{lowKey, number(v.Low)}, pair{highKey, number(v.High)}, pair{whenKey, text(x.When)},
				))
			}
			in = append(in, pair{text(name), ast.ArrayTerm(values...)})
		}
		out = append(out, pair{inKey, objectOf(in...)})
	}
	if len(gaps) > 0 {
		var missing []pair
		for name, list := range gaps {
			missing = append(missing, pair{text(name), texts(unique(list))})
		}
		out = append(out, pair{missingKey, objectOf(missing...)})
	}
	return objectOf(out...), nil
}

func factTerm(f *working.Fact) *ast.Term {
	if f.Word == "" {
		return objectOf(pair{atKey, text(f.At)}, pair{missingKey, texts(unique(f.Missing))})
	}
	return objectOf(pair{atKey, text(f.At)}, pair{wordKey, text(f.Word)})
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

// pair is a key of an object with what stands under it.
type pair = [2]*ast.Term

func objectOf(pairs ...pair) *ast.Term { return ast.NewTerm(ast.NewObject(pairs...)) }

// The keys of every entry, made once.
var (
	nameKey, ofKey                     = text("name"), text("of")
	atKey, inKey, missingKey, wordKey  = text("at"), text("in"), text("missing"), text("word")
	valueKey, lowKey, highKey, whenKey = text("value"), text("low"), text("high"), text("when")
)

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
