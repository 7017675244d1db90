package judge

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"runtime"
	"slices"
	"strings"

	"github.com/open-policy-agent/opa/v1/ast"
	"github.com/open-policy-agent/opa/v1/storage"
	"github.com/open-policy-agent/opa/v1/topdown"

	"dryfit/internal/review"
	"dryfit/internal/working"
)

// Judge holds a ledger against every clause. The judgements come in the order of
// the clauses, then of their subjects. A clause of the book that fails, that takes too long or
// that answers with anything but judgements is an error that names it. A clause of a house that
// does so is listed as failed, and the others are judged by all the same.
func (b *Book) Judge(ctx context.Context, l *working.Ledger) ([]*review.Judgement, []review.Failure, error) {
	out, failed, err := b.JudgeBy(ctx, l, func(*review.Clause) bool { return true })
	if err != nil {
		return nil, nil, err
	}
	return out, slices.Concat(b.failed, failed), nil
}

// JudgeBy is Judge by those clauses alone that are wanted.
func (b *Book) JudgeBy(ctx context.Context, l *working.Ledger, wanted func(*review.Clause) bool) ([]*review.Judgement, []review.Failure, error) {
	if err := b.load(); err != nil {
		return nil, nil, fmt.Errorf("the book does not load: %w", err)
	}
	e := evidenceOf(l)
	in, err := b.input(e)
	if err != nil {
		return nil, nil, err
	}
	all := make([][]*review.Judgement, len(b.clauses))
	t := newTurns(len(b.clauses), runtime.GOMAXPROCS(0))
	err = b.bounds.run(ctx, func() string { return b.name(t.oldest()) }, func(ctx context.Context) error {
		return t.take(func(i int) error {
			if b.clauses[i].Own || !wanted(b.clauses[i]) {
				return nil
			}
			return guarded(func() string { return b.name(i) }, func() (err error) {
				if all[i], err = b.hold(ctx, b.clauses[i], in, e); err != nil {
					err = named(b.name(i), err)
				}
				return err
			})
		})
	})
	if err != nil {
		return nil, nil, err
	}
	var failed []review.Failure
	for i, c := range b.clauses {
		if !c.Own || !wanted(c) {
			continue
		}
		got, err := b.holdAlone(ctx, c, in, e)
		switch {
		case ctx.Err() != nil:
			return nil, nil, named(b.name(i), context.Cause(ctx))
		case err != nil:
			failed = append(failed, review.Failure{Clause: c.ID, Why: oneLine(err.Error()), Stopped: errors.Is(err, ErrBounds)})
		}
		all[i] = got
	}
	return slices.Concat(all...), failed, nil
}

// name is a clause as an error names it.
func (b *Book) name(i int) string {
	if i == len(b.clauses) {
		return "the clauses"
	}
	return "clause " + b.clauses[i].ID
}

// holdAlone is the judgements of one clause of a house, within its own bounds.
func (b *Book) holdAlone(ctx context.Context, c *review.Clause, in ast.Value, e evidence) ([]*review.Judgement, error) {
	out := make(chan []*review.Judgement, 1)
	err := b.each.run(ctx, nameless, func(ctx context.Context) error {
		got, err := b.hold(ctx, c, in, e)
		out <- got
		return err
	})
	if err != nil {
		return nil, err
	}
	return <-out, nil
}

// hold is the judgements of one clause.
func (b *Book) hold(ctx context.Context, c *review.Clause, in ast.Value, e evidence) ([]*review.Judgement, error) {
	if ctx.Err() != nil {
		return nil, ctx.Err()
	}
	got, err := evaluate(ctx, b.ready[c.ID], b.store, in)
	if err != nil {
		return nil, err
	}
	return b.read(c, got, e)
}

// evaluate asks a clause for its judgements, or a test for its answer. What comes back is a term,
// never a converted value: a term that shares its parts is small, and the value it stands for can
// be larger than any memory. What is evaluated is told to the tracers.
func evaluate(ctx context.Context, r ready, store storage.Store, in ast.Value, tracers ...topdown.QueryTracer) (*ast.Term, error) {
	txn, err := store.NewTransaction(ctx)
	if err != nil {
		return nil, err
	}
	defer store.Abort(ctx, txn)
	cancel := topdown.NewCancel()
	stop := context.AfterFunc(ctx, cancel.Cancel)
	defer stop()
	q := topdown.NewQuery(r.query).
		WithCompiler(r.compiler).
		WithStore(store).
		WithTransaction(txn).
		WithInput(ast.NewTerm(in)).
		WithCancel(cancel).
		WithVirtualCache(remembered{topdown.NewVirtualCache()}).
		WithStrictBuiltinErrors(true)
	for _, t := range tracers {
		q = q.WithQueryTracer(t)
	}
	var got *ast.Term
	err = q.Iter(ctx, func(r topdown.QueryResult) error {
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
