package judge

import (
	"errors"
	"fmt"
	"slices"
	"strconv"

	"github.com/open-policy-agent/opa/v1/ast"

	"dryfit/internal/review"
	"dryfit/internal/working"
)

// How much a clause may answer with.
const (
	mostJudgements = 5000
	mostWords      = 500  // in one set of words or gaps
	mostLetters    = 2000 // in one word or gap
)

var errShape = errors.New("a judgement has to come from the vocabulary, such as vocab.held or vocab.asked")

// answer is one judgement as a clause gives it, read from its term.
type answer struct {
	subject, on, quantity, fact, at, verdict, when, word string
	value                                                string // as it was rounded
	least, most                                          string
	wanted, missing                                      []string
}

// read reads the set of judgements of one clause and finds the working of each.
func (b *Book) read(c *review.Clause, got *ast.Term, e evidence) ([]*review.Judgement, error) {
	if got == nil {
		return nil, nil
	}
	set, ok := got.Value.(ast.Set)
	if !ok {
		return nil, fmt.Errorf("judgements is a %s and no set; write `judgements contains ...`", ast.ValueName(got.Value))
	}
	if set.Len() > mostJudgements {
		return nil, fmt.Errorf("it makes %d judgements; at most %d are read", set.Len(), mostJudgements)
	}
	var out []*review.Judgement
	err := set.Iter(func(t *ast.Term) error {
		a, err := readAnswer(t)
		if err != nil {
			return err
		}
		j, err := b.judgement(c, a, e)
		if err != nil {
			return fmt.Errorf("%s: %w", a.subject, err)
		}
		out = append(out, j)
		return nil
	})
	slices.SortStableFunc(out, byPlace)
	return out, err
}

// readAnswer takes the fixed fields of a judgement and refuses every other shape.
func readAnswer(t *ast.Term) (answer, error) {
	var a answer
	o, ok := t.Value.(ast.Object)
	if !ok {
		return a, errShape
	}
	texts := map[string]*string{
		"subject": &a.subject, "on": &a.on, "quantity": &a.quantity, "fact": &a.fact,
		"at": &a.at, "verdict": &a.verdict, "when": &a.when, "word": &a.word,
	}
	lists := map[string]*[]string{"wanted": &a.wanted, "missing": &a.missing}
	err := o.Iter(func(k, v *ast.Term) error {
		key, ok := k.Value.(ast.String)
		if !ok {
			return errShape
		}
		switch key {
		case "value":
			return readNumber(v, &a.value)
		case "low", "high":
			var unused string // the working has it unrounded
			return readNumber(v, &unused)
		case "limit":
			return readLimit(v, &a)
		}
		if into := texts[string(key)]; into != nil {
			return readText(v, into)
		}
		if into := lists[string(key)]; into != nil {
			return readList(v, into)
		}
		return errShape
	})
	if err == nil && (a.subject == "" || (a.quantity == "") == (a.fact == "")) {
		err = errShape
	}
	return a, err
}

func readText(t *ast.Term, into *string) error {
	s, ok := t.Value.(ast.String)
	if !ok || len(s) > mostLetters {
		return errShape
	}
	*into = string(s)
	return nil
}

func readNumber(t *ast.Term, into *string) error {
	n, ok := t.Value.(ast.Number)
	if !ok || len(n) > mostLetters {
		return errShape
	}
	x, err := strconv.ParseFloat(string(n), 64)
	if err != nil {
		return errShape
	}
	*into = round(x)
	return nil
}

func readList(t *ast.Term, into *[]string) error {
	set, ok := t.Value.(ast.Set)
	if !ok || set.Len() > mostWords {
		return errShape
	}
	return set.Iter(func(t *ast.Term) error {
		var s string
		if err := readText(t, &s); err != nil {
			return err
		}
		*into = append(*into, s)
		return nil
	})
}

func readLimit(t *ast.Term, a *answer) error {
	o, ok := t.Value.(ast.Object)
	if !ok || o.Len() > 2 {
		return errShape
	}
	return o.Iter(func(k, v *ast.Term) error {
		switch k.Value {
		case ast.String("least"):
			return readNumber(v, &a.least)
		case ast.String("most"):
			return readNumber(v, &a.most)
		}
		return errShape
	})
}

// judgement puts the exact value, the limit and the working in place of what was
// rounded, and holds the verdict against them: what a clause says has to follow
// from what was worked out.
func (b *Book) judgement(c *review.Clause, a answer, e evidence) (*review.Judgement, error) {
	j := &review.Judgement{
		Clause: c, Subject: a.subject, On: a.on, Name: a.quantity + a.fact, Fact: a.fact != "",
		Verdict: review.Verdict(a.verdict), At: a.at,
	}
	fill := b.onNumber
	if j.Fact {
		fill = b.onWord
	}
	if err := fill(j, a, e); err != nil {
		return nil, err
	}
	if j.Verdict == review.Undetermined {
		j.Missing = said(a.missing, b.names)
	}
	return j, nil
}

func (b *Book) onNumber(j *review.Judgement, a answer, e evidence) error {
	d, ok := b.names.quantities[a.quantity]
	if !ok {
		return errors.New(unknown("quantity", a.quantity, sorted(b.names.quantities)))
	}
	j.Title, j.Kind = d.Title, d.Kind
	if j.Limit, ok = limitOf(j.Clause, a); !ok {
		return fmt.Errorf("it holds %s against a limit that its METADATA does not give for it", a.quantity)
	}
	found, ok := valueOf(e.columns[a.quantity][a.subject], a)
	if ok {
		j.Value, j.When, j.Node = found.Value, found.When, found.Node
	}
	outside := ok && (beyond(a.least, a.value) || beyond(a.value, a.most))
	switch j.Verdict {
	case review.Met:
		ok = ok && !outside
	case review.NotMet:
		ok = outside
	case review.Undetermined:
		ok = a.value == ""
	case review.DoesNotApply:
		ok = true
	default:
		return errShape
	}
	if !ok {
		return fmt.Errorf("it says %q of %s, which does not follow from what was worked out", a.verdict, a.quantity)
	}
	return nil
}

func (b *Book) onWord(j *review.Judgement, a answer, e evidence) error {
	d, ok := b.names.facts[a.fact]
	if !ok {
		return errors.New(unknown("fact", a.fact, sorted(b.names.facts)))
	}
	for _, w := range a.wanted {
		if len(d.Words) > 0 && !slices.Contains(d.Words, w) {
			return fmt.Errorf("it wants of %s a word that it cannot have: %s", a.fact, unknown("word", w, d.Words))
		}
	}
	j.Title, j.Word, j.Wanted, j.When = d.Title, a.word, slices.Sorted(slices.Values(a.wanted)), working.Always
	have := ""
	if f := e.facts[a.fact][a.subject]; f != nil {
		have = f.Word
	}
	switch j.Verdict {
	case review.Met, review.DoesNotApply:
		ok = a.word != "" && slices.Contains(a.wanted, a.word)
	case review.NotMet:
		ok = a.word != "" && !slices.Contains(a.wanted, a.word)
	case review.Undetermined:
		ok = a.word == ""
	default:
		return errShape
	}
	if !ok || a.word != have {
		return fmt.Errorf("it says %q of %s, which does not follow from what was worked out", a.verdict, a.fact)
	}
	return nil
}

// limitOf is the limit of the clause that was held against.
func limitOf(c *review.Clause, a answer) (review.Limit, bool) {
	rounded := func(x *float64) string {
		if x == nil {
			return ""
		}
		return round(*x)
	}
	for _, l := range c.Limits {
		if l.Quantity == a.quantity && rounded(l.Least) == a.least && rounded(l.Most) == a.most {
			return l, true
		}
	}
	return review.Limit{}, false
}

// valueOf is the value that a judgement is about, exactly, with its working.
func valueOf(e working.Entry, a answer) (working.Extreme, bool) {
	for _, name := range sorted(e.In) {
		for _, x := range e.In[name] {
			if x.When == a.when && round(x.Value.X) == a.value {
				return x, true
			}
		}
	}
	return working.Extreme{}, false
}

// beyond says whether the first of two rounded numbers is greater; not if one is absent.
func beyond(x, y string) bool {
	if x == "" || y == "" {
		return false
	}
	a, _ := strconv.ParseFloat(x, 64) // both come from round
	b, _ := strconv.ParseFloat(y, 64)
	return a > b
}

// said is what is missing, in order. The name of a case stands for a case without a result.
func said(gaps []string, n names) []string {
	var out []string
	for _, g := range gaps {
		if n.cases[g] {
			g = "nothing was worked out for the case " + g
		}
		out = append(out, g)
	}
	if len(out) == 0 {
		out = []string{"nothing was worked out for it"}
	}
	return unique(out)
}
