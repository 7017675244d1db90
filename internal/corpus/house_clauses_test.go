package corpus

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"dryfit/internal/report"
	"dryfit/internal/review"
	"dryfit/internal/system"
)

// Each clause of the school's house has an example that breaks it and no other.
func TestExamplesOfTheHouse(t *testing.T) {
	r, problems, err := NewHouseReviewer("../../testdata/house/quarry-road")
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	demo := "../../testdata/systems/quarry-road.yaml"
	data, err := os.ReadFile(demo)
	if err != nil {
		t.Fatal(err)
	}
	sound, err := r.Judge(context.Background(), demo, data)
	if err != nil || len(sound.Summary.Findings) > 0 || len(sound.Summary.Failed) > 0 {
		t.Fatalf("the demo: %v, %+v", err, sound.Summary)
	}
	own := 0
	for _, clause := range r.Book().Clauses() {
		if !clause.Own {
			continue
		}
		own++
		var edits []system.Edit
		for _, change := range clause.Example {
			edits = append(edits, system.Edit{Op: system.Set, Pointer: change.Pointer, Value: change.Value})
		}
		text, bad := sound.Review.System.Document.WithEdits(edits...)
		if len(bad) > 0 {
			t.Fatal(bad)
		}
		broken, err := r.Review(context.Background(), demo, text)
		if err != nil || broken.Summary == nil || len(broken.Summary.Findings) == 0 {
			t.Fatalf("%s: %v, %v", clause.ID, err, broken.Problems)
		}
		for _, f := range broken.Summary.Findings {
			if f.Clause.ID != clause.ID {
				t.Errorf("%s also breaks %s", clause.ID, f.Clause.ID)
			}
		}
	}
	if own == 0 {
		t.Error("the house has no clause of its own")
	}
}

// A clause that cannot be judged by leaves all that the book says as it is, remedies too, and is not kept.
func TestAClauseThatFailsStopsNothingElse(t *testing.T) {
	folder := t.TempDir()
	text := `# METADATA
# scope: package
# title: It shall end.
# description: A join of a thousand million rows.
# custom:
#   strength: shall
#   cases: [always]
#   limits: {height: {of: rim_height, most: 1 m}}
#   sources: [{grade: project judgement, text: ours}]
package house.yard.endless

import data.vocab

ten := [0, 1, 2, 3, 4, 5, 6, 7, 8, 9]

judgements contains vocab.held(vessel, input.quantities.rim_height, input.cases.yard.endless, input.limits.yard.endless.height) if {
	count([1 | some a in ten; some b in ten; some c in ten; some d in ten; some e in ten; some f in ten; some g in ten; some h in ten; some i in ten]) > 1
	some vessel in input.sets.all_vessels
}
`
	if err := os.WriteFile(filepath.Join(folder, "endless.rego"), []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	r, problems, err := NewHouseReviewer(folder)
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	plain, err := NewReviewer()
	if err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile("../../testdata/systems/quarry-road.yaml")
	if err != nil {
		t.Fatal(err)
	}
	data = []byte(strings.Replace(string(data), "lip_at: 305 mm", "lip_at: 405 mm", 1))
	got, err := r.Review(context.Background(), "loop.yaml", data)
	if err != nil {
		t.Fatal(err)
	}
	want, err := plain.Review(context.Background(), "loop.yaml", data)
	if err != nil || want.Summary == nil {
		t.Fatal(err, want.Problems)
	}
	s := got.Summary
	if len(s.Failed) != 1 || s.Failed[0].Clause != "endless" || !s.Failed[0].Stopped || s.ExitStatus(review.Shall) != review.Act {
		t.Errorf("failed: %+v", s.Failed)
	}
	if len(s.Judgements) != len(want.Summary.Judgements) || len(s.Findings) != len(want.Summary.Findings) || len(s.Silent) != len(want.Summary.Silent) {
		t.Errorf("%d judgements, %d findings, %d silent", len(s.Judgements), len(s.Findings), len(s.Silent))
	}
	for i, f := range s.Findings {
		if len(f.Remedies) != len(want.Summary.Findings[i].Remedies) {
			t.Errorf("%s: %d remedies in place of %d", f.Clause.ID, len(f.Remedies), len(want.Summary.Findings[i].Remedies))
		}
	}
	cache, err := OpenCache(t.TempDir(), "book")
	if err != nil {
		t.Fatal(err)
	}
	file := []File{Given("loop.yaml", strings.NewReader(string(data)))}
	err = r.Run(context.Background(), file, Batch{Workers: 1, Cache: cache}, func(i report.Item) error {
		if i.Summary == nil || len(i.Summary.Failed) != 1 {
			t.Errorf("of a batch: %+v", i)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if _, kept := cache.get(cache.key(data), wholePart); kept {
		t.Error("what could not be judged is kept, as if it were so for ever")
	}
}
