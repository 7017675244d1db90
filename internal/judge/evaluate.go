package judge

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"
	"sync/atomic"

	"github.com/open-policy-agent/opa/v1/ast"
	"github.com/open-policy-agent/opa/v1/topdown"

	"dryfit/internal/review"
	"dryfit/internal/working"
)

// query asks one clause for its judgements. One query a clause costs little and
// lets every error name its clause.
type query struct {
	body     ast.Body
	compiler ast.QueryCompiler
}

const answers = ast.Var("judgements")

func (b *Book) prepare(c *review.Clause) (query, error) {
	ref := ast.Ref{ast.DefaultRootDocument, text("book"), text(c.Chapter), text(c.ID), text("judgements")}
	if len(b.compiler.GetRulesExact(ref)) == 0 {
		return query{}, fmt.Errorf("clause %s has no rule `judgements contains ... if { ... }`", c.ID)
	}
	compiler := b.compiler.QueryCompiler()
	body, err := compiler.Compile(ast.NewBody(ast.Equality.Expr(ast.NewTerm(answers), ast.NewTerm(ref))))
	if err != nil {
		return query{}, fmt.Errorf("clause %s: %w", c.ID, err)
	}
	return query{body, compiler}, nil
}

// Judge holds a ledger against every clause. The judgements come in the order of
// the clauses, then of their subjects. A clause that fails, that takes too long or that
// answers with anything but judgements is an error that names it.
func (b *Book) Judge(ctx context.Context, l *working.Ledger) ([]*review.Judgement, error) {
	e := evidenceOf(l)
	in, err := b.input(e)
	if err != nil {
		return nil, err
	}
	var at atomic.Value // the clause that is being evaluated
	at.Store("the clauses")
	result := make(chan []*review.Judgement, 1)
	err = b.bounds.run(ctx, func() string { return at.Load().(string) }, func(ctx context.Context) error {
		var all []*review.Judgement
		for i, c := range b.clauses {
			name := "clause " + c.ID
			at.Store(name)
			if ctx.Err() != nil {
				return ctx.Err()
			}
			got, err := b.ask(ctx, b.queries[i], in)
			if err != nil {
				return fmt.Errorf("%s: %w", name, err)
			}
			judgements, err := b.read(c, got, e)
			if err != nil {
				return fmt.Errorf("%s: %w", name, err)
			}
			all = append(all, judgements...)
		}
		result <- all
		return nil
	})
	if err != nil {
		return nil, err
	}
	return <-result, nil
}

// ask evaluates one clause. Its answer is a term, never a converted value: a term
// that shares its parts is small, and the value it stands for can be larger than any memory.
func (b *Book) ask(ctx context.Context, q query, in ast.Value) (*ast.Term, error) {
	txn, err := b.store.NewTransaction(ctx)
	if err != nil {
		return nil, err
	}
	defer b.store.Abort(ctx, txn)
	cancel := topdown.NewCancel()
	stop := context.AfterFunc(ctx, cancel.Cancel)
	defer stop()
	var got *ast.Term
	err = topdown.NewQuery(q.body).
		WithQueryCompiler(q.compiler).
		WithCompiler(b.compiler).
		WithStore(b.store).
		WithTransaction(txn).
		WithInput(ast.NewTerm(in)).
		WithCancel(cancel).
		WithStrictBuiltinErrors(true).
		Iter(ctx, func(r topdown.QueryResult) error {
			got = r[answers]
			return nil
		})
	return got, err
}

func byPlace(a, b *review.Judgement) int {
	return cmp.Or(
		strings.Compare(a.Subject, b.Subject), strings.Compare(a.On, b.On), strings.Compare(a.Name, b.Name),
		strings.Compare(a.When, b.When), strings.Compare(string(a.Verdict), string(b.Verdict)),
		slices.Compare(a.Missing, b.Missing),
	)
}
