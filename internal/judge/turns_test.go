package judge

import (
	"errors"
	"fmt"
	"runtime"
	"sync/atomic"
	"testing"
)

// However many workers there are, the error is that of the lowest part that fails, every
// part before it is done, and it is named.
func TestTurns(t *testing.T) {
	for _, workers := range []int{1, 2, 5} {
		for first := range 9 {
			parts := newTurns(10, workers)
			var done [10]atomic.Bool
			err := parts.take(func(i int) error {
				if i >= first {
					return fmt.Errorf("part %d", i)
				}
				runtime.Gosched()
				done[i].Store(true)
				return nil
			})
			if err == nil || err.Error() != fmt.Sprint("part ", first) || parts.oldest() != first {
				t.Errorf("%d workers: error %v, oldest %d; want part %d", workers, err, parts.oldest(), first)
			}
			for i := range first {
				if !done[i].Load() {
					t.Errorf("%d workers: part %d was left out before %d failed", workers, i, first)
				}
			}
		}
	}
}

func TestTheOldestTurnIsNamed(t *testing.T) {
	parts, in, stuck, free := newTurns(4, 2), make(chan bool), make(chan bool), make(chan bool)
	var taken atomic.Int64
	ended := make(chan error)
	go func() {
		ended <- parts.take(func(i int) error {
			if i == 1 {
				close(in)
				<-stuck
				return errors.New("stuck")
			}
			if taken.Add(1) == 3 {
				close(free)
			}
			return nil
		})
	}()
	<-in
	<-free
	if got := parts.oldest(); got != 1 {
		t.Errorf("part %d is named, and 1 is stuck", got)
	}
	close(stuck)
	if err := <-ended; err == nil || parts.oldest() != 1 {
		t.Errorf("error %v, oldest %d", err, parts.oldest())
	}
	if none := newTurns(0, 2); none.take(nil) != nil || none.oldest() != 0 {
		t.Error("no work is no error")
	}
}
