package survey

import (
	"context"
	"errors"
	"os"
	"testing"

	"dryfit/internal/system"
)

// ending is a context that ends when it has been asked so many times: a deadline at a place that is always the same.
type ending struct {
	context.Context
	left int
}

func (e *ending) Err() error {
	if e.left--; e.left < 0 {
		return context.DeadlineExceeded
	}
	return nil
}

func demo(t testing.TB, name string) *system.System {
	t.Helper()
	data, err := os.ReadFile("../../testdata/systems/" + name)
	if err != nil {
		t.Fatal(err)
	}
	s, problems := system.Read(name, data)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return s
}

// A survey breaks off wherever the context ends, with its error and without a ledger.
func TestWithin(t *testing.T) {
	s := demo(t, "quarry-road.yaml")
	all := &ending{context.Background(), 1 << 40}
	if l, err := Within(all, s); err != nil || len(l.Nodes()) != len(Survey(s).Nodes()) {
		t.Fatalf("a context that lasts: %v", err)
	}
	asked := 1<<40 - all.left
	for i := range 10 {
		l, err := Within(&ending{context.Background(), i * asked / 40}, s)
		if !errors.Is(err, context.DeadlineExceeded) || l != nil {
			t.Errorf("ended after %d of %d: %v, ledger %v", i*asked/10, asked, err, l != nil)
		}
	}
}

// What is wrong in the work itself is not taken for the end of the context.
func TestWithinPanics(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("a panic was lost")
		}
	}()
	Within(context.Background(), nil)
}
