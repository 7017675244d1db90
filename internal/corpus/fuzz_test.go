package corpus_test

import (
	"context"
	"os"
	"path/filepath"
	"testing"
	"time"

	"dryfit/internal/corpus"
	"dryfit/internal/review"
)

// Whatever bytes come in, there is a review or a list of problems, soon, and no fault.
func FuzzReview(f *testing.F) {
	files, err := filepath.Glob(systems + "*.yaml")
	if err != nil {
		f.Fatal(err)
	}
	for _, file := range files {
		if name := filepath.Base(file); name == "quarry-road-as-found.yaml" || name == "quarry-road-flooding.yaml" {
			continue // the demo again, with dozens of findings whose remedies are all tried
		}
		data, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	r, err := corpus.NewReviewer()
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		ctx, cancel := context.WithTimeout(context.Background(), 60*time.Second)
		defer cancel()
		o, err := r.Review(ctx, "fuzz.yaml", data)
		if err != nil {
			t.Fatal(err)
		}
		if (o.Review == nil) != (len(o.Problems) > 0) {
			t.Fatalf("neither a review nor problems: %+v", o)
		}
		if o.Review == nil {
			return
		}
		for _, finding := range o.Review.Findings {
			if finding.Verdict == review.Undetermined && len(finding.Missing) == 0 {
				t.Errorf("%s on %s is undetermined and nothing is missing", finding.Clause.ID, finding.Subject)
			}
		}
	})
}
