package loop

import (
	"context"
	"errors"
	"testing"
	"time"

	"dryfit/internal/working"
)

// A context that has ended lets nothing be worked out, however large the loop is.
func TestWithinEnded(t *testing.T) {
	ended, end := context.WithCancel(context.Background())
	end()
	s, l := scaled(t, chain(190)), working.NewLedger()
	err := l.Within(ended, func() { Survey(s, tablesForTest, l) })
	if !errors.Is(err, context.Canceled) || len(l.Nodes()) > 0 {
		t.Errorf("%v, with %d quantities", err, len(l.Nodes()))
	}
}

// A deadline in the middle of a large loop breaks it off: the whole of it takes a hundred times as long.
func TestWithinDeadline(t *testing.T) {
	for _, form := range scales {
		s, l := scaled(t, form.text(190)), working.NewLedger()
		ctx, end := context.WithTimeout(context.Background(), 20*time.Millisecond)
		if err := l.Within(ctx, func() { Survey(s, tablesForTest, l) }); !errors.Is(err, context.DeadlineExceeded) {
			t.Errorf("%s: %v", form.name, err)
		}
		end()
	}
}
