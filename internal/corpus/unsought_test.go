package corpus

import (
	"context"
	"os"
	"strings"
	"testing"
	"time"
)

// A loop for whose remedies there is no time keeps its verdicts, has no remedy at all, and says so.
func TestVerdictsStandWithoutRemedies(t *testing.T) {
	data, err := os.ReadFile("../../testdata/systems/quarry-road-as-found.yaml")
	if err != nil {
		t.Fatal(err)
	}
	r, err := NewReviewer()
	if err != nil {
		t.Fatal(err)
	}
	out, err := r.Judge(context.Background(), "loop.yaml", data)
	if err != nil || out.Review == nil {
		t.Fatal(out.Problems, err)
	}
	over, cancel := context.WithTimeoutCause(context.Background(), 0, errTooLong)
	defer cancel()
	sought, err := r.remedies(over, out.Review, Batch{Most: time.Minute})
	if sought || err != nil || len(out.Review.Findings) < 12 || !strings.Contains(out.Review.Unsought, "takes more than 1m0s") {
		t.Errorf("%v, %v, %d findings, %q", sought, err, len(out.Review.Findings), out.Review.Unsought)
	}
	for _, f := range out.Review.Findings {
		if len(f.Remedies) > 0 {
			t.Errorf("%s has a remedy", f.Clause.ID)
		}
	}
	stopped, stop := context.WithCancel(context.Background())
	stop()
	if _, err := r.remedies(stopped, out.Review, Batch{}); err == nil {
		t.Error("a call that is stopped goes on as if nothing were")
	}
}
