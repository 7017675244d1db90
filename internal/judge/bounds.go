package judge

import (
	"context"
	"errors"
	"fmt"
	"runtime/metrics"
	"time"
)

// bounds is how long something may take, and by how many bytes the heap may grow meanwhile.
type bounds struct {
	time time.Duration
	heap uint64
}

const (
	look  = 10 * time.Millisecond  // how often the heap is looked at
	grace = 250 * time.Millisecond // for what was cancelled to end by itself
)

// ErrBounds is what every error wraps that says that judging was stopped at a bound.
var ErrBounds = errors.New("stopped at a bound")

var (
	errTime = bound("took too long")
	errHeap = bound("took too much memory")
)

// bound is an error of a bound, in its own words.
type bound string

func (b bound) Error() string        { return string(b) }
func (b bound) Is(target error) bool { return target == ErrBounds }

// run calls f and cancels its context at a bound. A single step of the Rego engine
// cannot be interrupted (comparing two values that share their parts a million times
// over is one): then run leaves it behind and says so. Its goroutine goes on until the
// step ends or the program does. A panic in f is an error.
func (b bounds) run(ctx context.Context, what func() string, f func(context.Context) error) error {
	ctx, cancel := context.WithCancelCause(ctx)
	defer cancel(nil)
	timer := time.AfterFunc(b.time, func() { cancel(fmt.Errorf("%w: more than %v", errTime, b.time)) })
	defer timer.Stop()

	done := make(chan error, 1)
	go func() { done <- guarded(what, func() error { return f(ctx) }) }()

	tick := time.NewTicker(look)
	defer tick.Stop()
	start := heapSize()
	for {
		select {
		case err := <-done:
			if err != nil && ctx.Err() != nil { // the reason says more than what the engine says of it
				return named(what(), context.Cause(ctx))
			}
			return err
		case <-ctx.Done():
			select {
			case err := <-done:
				done <- err
				continue
			case <-time.After(grace):
				return named(what(), fmt.Errorf("%w, and could not be stopped", context.Cause(ctx)))
			}
		case <-tick.C:
			if size := heapSize(); size > start+b.heap {
				cancel(fmt.Errorf("%w: more than %d MB", errHeap, b.heap>>20))
			}
		}
	}
}

// guarded calls f. A panic in it is an error.
func guarded(what func() string, f func() error) (err error) {
	defer func() {
		if r := recover(); r != nil {
			err = named(what(), fmt.Errorf("the Rego engine failed: %v", r))
		}
	}()
	return f()
}

// named is an error with what it is about; as it is where that is said elsewhere.
func named(what string, err error) error {
	if what == "" {
		return err
	}
	return fmt.Errorf("%s: %w", what, err)
}

func nameless() string { return "" }

func heapSize() uint64 {
	sample := []metrics.Sample{{Name: "/memory/classes/heap/objects:bytes"}}
	metrics.Read(sample)
	return sample[0].Value.Uint64()
}
