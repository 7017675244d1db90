package corpus

import (
	"context"
	"errors"
	"fmt"
	"runtime"
	"sync"
	"time"

	"dryfit/internal/judge"
	"dryfit/internal/remedy"
	"dryfit/internal/report"
	"dryfit/internal/review"
	"dryfit/internal/system"
)

// Batch is how many files are reviewed.
type Batch struct {
	Workers  int           // files at the same time
	Most     time.Duration // for one file; then it is given up, and the others go on
	Cache    *Cache        // nil: nothing is kept
	Afresh   bool          // results that are kept are not read, only written
	Live     bool          // the workings are wanted, which are not kept
	Bare     bool          // no remedies are wanted
	Whole    bool          // all that the JSON report says is wanted
	AsOf     string        // the day on which permits are held, as 2026-03-14
	Progress func(done int)
}

// Run reviews files, several at a time, and gives what came of each to take, in the order of
// the files. However many files there are, no more than a few results are held at once. The
// error is that of take, or of the context.
func (r *Reviewer) Run(ctx context.Context, files []File, b Batch, take func(report.Item) error) error {
	return inOrder(ctx, files, b, func(ctx context.Context, f File) report.Item { return r.one(ctx, f, b) }, take)
}

// inOrder works on each of some things, several at a time, and gives what came of each to take, in their order.
func inOrder[In, Out any](ctx context.Context, all []In, b Batch, work func(context.Context, In) Out, take func(Out) error) error {
	ctx, cancel := context.WithCancel(ctx)
	type job struct {
		in  In
		out chan<- Out
	}
	jobs := make(chan job)
	results := make(chan (<-chan Out), 2*b.Workers)
	var workers sync.WaitGroup
	defer func() { // in this order, also where take panics
		cancel()
		workers.Wait()
	}()
	go func() {
		defer close(jobs)
		defer close(results)
		for _, in := range all {
			out := make(chan Out, 1)
			select {
			case results <- out:
			case <-ctx.Done():
				return
			}
			select {
			case jobs <- job{in, out}:
			case <-ctx.Done():
				return
			}
		}
	}()
	for range b.Workers {
		workers.Go(func() {
			for j := range jobs {
				j.out <- work(ctx, j.in)
			}
		})
	}
	done := 0
	for result := range results {
		select {
		case one := <-result:
			done++
			if b.Progress != nil {
				b.Progress(done)
			}
			if err := take(one); err != nil {
				cancel()
				return err
			}
		case <-ctx.Done():
			return ctx.Err()
		}
	}
	return ctx.Err()
}

// one takes one file all the way. Whatever goes wrong with it stays with it.
func (r *Reviewer) one(ctx context.Context, f File, b Batch) (item report.Item) {
	defer func() {
		if fault := recover(); fault != nil {
			item = report.Item{File: f.Name, Fault: fmt.Sprint(fault)}
		}
	}()
	if b.Most > 0 {
		var cancel context.CancelFunc
		ctx, cancel = context.WithTimeoutCause(ctx, b.Most, errTooLong)
		defer cancel()
	}
	if f.orphan {
		return report.Item{File: f.Name, Problems: []system.Problem{{
			File: f.Name, Line: 1, Column: 1, Found: "permits of no loop", Write: "there is no system file of this name beside it: name it after one, or take it away"}}}
	}
	data, err := waited(ctx, f.Data)
	if err != nil && ctx.Err() == nil {
		return report.Item{File: f.Name, Unread: Reason(err).Error()}
	}
	permits, _, bad := f.Permits()
	if len(bad) > 0 {
		return report.Item{File: f.Name, Problems: bad}
	}
	if err == nil {
		err = r.shared(func(alone bool) (err error) {
			item, err = r.result(ctx, f.Name, data, b, len(permits) > 0)
			return again(alone, err, item.Summary)
		})
	}
	switch {
	case item.Summary != nil:
		item.Summary.Hold(b.AsOf, r.book.Clauses(), permits...)
	case errors.Is(context.Cause(ctx), errTooLong):
		return report.Item{File: f.Name, Unread: fmt.Sprintf("its review took more than %v and was given up; make the loop smaller, or give it more time with --most-time", b.Most)}
	case errors.Is(err, judge.ErrBounds):
		return report.Item{File: f.Name, Unread: "to judge it takes more than a loop may: " + err.Error() + "; make the loop smaller"}
	case err != nil:
		return report.Item{File: f.Name, Fault: err.Error()}
	}
	return item
}

// shared does some work beside that of others. The engine of clauses watches the memory of the whole
// program: what was stopped for that is done once more with nothing beside it, so that
// a large loop is not taken for its neighbour.
func (r *Reviewer) shared(work func(alone bool) error) error {
	r.alone.RLock()
	err := work(false)
	r.alone.RUnlock()
	if !errors.Is(err, judge.ErrBounds) {
		return err
	}
	r.alone.Lock()
	defer r.alone.Unlock()
	runtime.GC()
	return work(true)
}

// again makes an error of a clause of a house that was stopped at a bound beside other work.
func again(alone bool, err error, s *review.Summary) error {
	if err == nil && !alone && s != nil && s.Stopped() {
		return judge.ErrBounds
	}
	return err
}

var errTooLong = errors.New("the review took too long")

// waited reads a file, and leaves the reading behind when the context ends: nothing else
// ends the wait for a pipe that nobody writes to.
func waited(ctx context.Context, read func() ([]byte, error)) ([]byte, error) {
	type answer struct {
		data  []byte
		err   error
		fault any
	}
	done := make(chan answer, 1)
	go func() {
		var a answer
		defer func() {
			a.fault = recover()
			done <- a
		}()
		a.data, a.err = read()
	}()
	select {
	case a := <-done:
		if a.fault != nil {
			panic(a.fault)
		}
		return a.data, a.err
	case <-ctx.Done():
		return nil, ctx.Err()
	}
}

// result is what comes of a file by its content alone: kept from an earlier run, or worked out.
func (r *Reviewer) result(ctx context.Context, name string, data []byte, b Batch, permits bool) (report.Item, error) {
	var key string
	var short *review.Summary
	if b.Cache != nil {
		key = b.Cache.key(data)
	}
	if b.Cache != nil && !b.Afresh {
		if item, ok := r.kept(b.Cache, key, name, shortPart); ok {
			if !b.Live && !b.Whole && !permits && len(item.Summary.Permits) == 0 {
				return item, nil
			}
			short = item.Summary
		}
		if !b.Live && short != nil {
			if item, ok := r.kept(b.Cache, key, name, wholePart); ok {
				return item, nil
			}
		}
	}
	out, err := r.Judge(ctx, name, data)
	if err != nil || out.Review == nil {
		return out, err
	}
	if b.Bare || short != nil && sameRemedies(out.Review, short) {
		return out, nil
	}
	sought, err := r.remedies(ctx, out.Review, b)
	if err != nil {
		return report.Item{}, err
	}
	if sought && b.Cache != nil && len(out.Review.Failed) == 0 {
		b.Cache.keep(key, out.Review)
	}
	return out, nil
}

// remedies looks for remedies. A loop so large that there is no time for all of them gets none,
// and says so: its verdicts stand, and which few were tried first does not depend on the machine.
func (r *Reviewer) remedies(ctx context.Context, rev *review.Review, b Batch) (sought bool, err error) {
	err = remedy.Offer(ctx, r.BookOf(rev.System), rev)
	if err == nil {
		err = ctx.Err()
	}
	if err == nil || !errors.Is(context.Cause(ctx), errTooLong) {
		return err == nil, err
	}
	for _, f := range rev.Findings {
		f.Remedies = nil
	}
	rev.Unsought = fmt.Sprintf("to look for remedies of a loop of this size takes more than %v; give it more time with --most-time", b.Most)
	return false, nil
}

// kept reads a part of a result back.
func (r *Reviewer) kept(c *Cache, key, name, part string) (report.Item, bool) {
	data, ok := c.get(key, part)
	if !ok {
		return report.Item{}, false
	}
	item, err := report.Kept(name, data, r.book.Clauses())
	return item, err == nil
}

// keep writes both parts of a result. A folder that cannot be written to costs time, and no more.
func (c *Cache) keep(key string, rev *review.Review) {
	short, whole, err := report.Keep(rev)
	if err != nil {
		return
	}
	if c.put(key, wholePart, whole) == nil {
		c.put(key, shortPart, short) // last: where it stands, the other one does
	}
}

// sameRemedies takes over the remedies that were found for the same findings before.
func sameRemedies(r *review.Review, before *review.Summary) bool {
	if len(r.Findings) != len(before.Findings) {
		return false
	}
	for i, f := range r.Findings {
		if was := before.Findings[i]; f.Clause.ID != was.Clause.ID || f.Subject != was.Subject || f.Verdict != was.Verdict {
			return false
		}
	}
	for i, f := range r.Findings {
		f.Remedies = before.Findings[i].Remedies
	}
	return true
}
