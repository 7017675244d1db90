package judge

import (
	"sync"
	"sync/atomic"
)

// turns is work of n parts that several workers take in order, each the next one. So the
// lowest part that is at work is the one that has been so for longest, and where several
// fail, the lowest of them is found, as if they had been taken one after the other.
type turns struct {
	n      int
	next   atomic.Int64
	failed atomic.Bool
	at     []atomic.Int64 // the part that each worker is at or has failed at; n when it is done
	errs   []error        // beside at
}

func newTurns(n, workers int) *turns {
	t := &turns{n: n, at: make([]atomic.Int64, workers), errs: make([]error, workers)}
	for w := range t.at {
		t.at[w].Store(int64(n))
	}
	return t
}

// oldest is the lowest part that is at work or has failed; n if there is none.
func (t *turns) oldest() int {
	_, part := t.lowest()
	return part
}

func (t *turns) lowest() (worker, part int) {
	part = t.n
	for w := range t.at {
		if p := int(t.at[w].Load()); p < part {
			worker, part = w, p
		}
	}
	return worker, part
}

// take does every part and waits for it. After an error no new part is taken.
func (t *turns) take(do func(part int) error) error {
	var workers sync.WaitGroup
	for w := range t.at {
		workers.Go(func() {
			for !t.failed.Load() {
				part := int(t.next.Add(1)) - 1
				if part >= t.n {
					break
				}
				t.at[w].Store(int64(part))
				if t.errs[w] = do(part); t.errs[w] != nil {
					t.failed.Store(true)
					return
				}
			}
			t.at[w].Store(int64(t.n))
		})
	}
	workers.Wait()
	w, _ := t.lowest()
	return t.errs[w]
}
