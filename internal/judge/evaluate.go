package judge

import (
	"cmp"
	"context"
	"fmt"
	"runtime"
	"slices"
	"strings"

	"github.com/open-policy-agent/opa/v1/ast"
	"github.com/open-policy-agent/opa/v1/topdown"

	"dryfit/internal/review"
	"dryfit/internal/working"
)

// Judge holds a ledger against every clause. The judgements come in the order of
// the clauses, then of their subjects. A clause that fails, that takes too long or that
// answers with anything but judgements is an error that names it.
func (b *Book) Judge(ctx context.Context, l *working.Ledger) ([]*review.Judgement, error) {
	return b.JudgeBy(ctx, l, func(*review.Clause) bool { return true })
}

// JudgeBy is Judge by those clauses alone that are wanted.
func (b *Book) JudgeBy(ctx context.Context, l *working.Ledger, wanted func(*review.Clause) bool) ([]*review.Judgement, error) {
	if err := b.load(); err != nil {
		return nil, fmt.Errorf("the book does not load: %w", err)
	}
	e := evidenceOf(l)
	in, err := b.input(e)
	if err != nil {
		return nil, err
	}
	all := make([][]*review.Judgement, len(b.clauses))
	t := newTurns(len(b.clauses), runtime.GOMAXPROCS(0))
	err = b.bounds.run(ctx, func() string { return b.name(t.oldest()) }, func(ctx context.Context) error {
		return t.take(func(i int) error {
			if !wanted(b.clauses[i]) {
				return nil
			}
			return guarded(func() string { return b.name(i) }, func() (err error) {
				all[i], err = b.hold(ctx, i, in, e)
				return err
			})
		})
	})
	if err != nil {
		return nil, err
	}
	return slices.Concat(all...), nil
}

// name is a clause as an error names it.
func (b *Book) name(i int) string {
	if i == len(b.clauses) {
		return "the clauses"
	}
	return "clause " + b.clauses[i].ID
}

// hold is the judgements of one clause.
func (b *Book) hold(ctx context.Context, i int, in ast.Value, e evidence) ([]*review.Judgement, error) {
	if ctx.Err() != nil {
		return nil, ctx.Err()
	}
	got, err := b.ask(ctx, b.queries[i], in)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", b.name(i), err)
	}
	judgements, err := b.read(b.clauses[i], got, e)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", b.name(i), err)
	}
	return judgements, nil
}

// ask evaluates one clause. Its answer is a term, never a converted value: a term
// that shares its parts is small, and the value it stands for can be larger than any memory.
func (b *Book) ask(ctx context.Context, q ast.Body, in ast.Value) (*ast.Term, error) {
	txn, err := b.store.NewTransaction(ctx)
	if err != nil {
		return nil, err
	}
	defer b.store.Abort(ctx, txn)
	cancel := topdown.NewCancel()
	stop := context.AfterFunc(ctx, cancel.Cancel)
	defer stop()
	var got *ast.Term
	err = topdown.NewQuery(q).
		WithCompiler(b.compiler).
		WithStore(b.store).
		WithTransaction(txn).
		WithInput(ast.NewTerm(in)).
		WithCancel(cancel).
		WithVirtualCache(remembered{topdown.NewVirtualCache()}).
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
