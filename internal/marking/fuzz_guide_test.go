package marking

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"dryfit/internal/survey"
	"dryfit/internal/system"
)

// A guide that is read can be reached: its items come to its total, and the best of each
// is all of it. A guide that is not read says why, in the order of the file.
func FuzzReadGuide(f *testing.F) {
	f.Add([]byte(soundGuide))
	f.Add([]byte("{\"dryfit_guide\": 1, \"name\": \"n\", \"total\": 1, \"items\": [{\"id\": \"a\", \"title\": \"t\", \"marks\": 1}]}"))
	f.Add([]byte("dryfit_guide: 1\nitems: [{}, {stated: {}}, {requirement: {close: [{}]}}, {of_limit: {bands: [{most: 1e308}]}}]\ncaps: [{clauses: {}}]"))
	f.Add([]byte("dryfit_guide: 1\ntotal: .inf\nround_to: 1e-300\nitems: [{marks: 1000, clauses: {ids: [well_depth]}}]"))
	more, _ := filepath.Glob("../../testdata/marking/*guide*.yaml")
	for _, name := range more {
		if data, err := os.ReadFile(name); err == nil {
			f.Add(data)
		}
	}
	book, catalogue := theBook(), survey.Catalogue()
	f.Fuzz(func(t *testing.T, data []byte) {
		g, problems := ReadGuide("guide.yaml", data, book, catalogue)
		if (g == nil) != (len(problems) > 0) {
			t.Fatalf("a guide: %v, with %d problems", g != nil, len(problems))
		}
		if !slices.IsSortedFunc(problems, func(a, b system.Problem) int {
			if a.Line != b.Line {
				return a.Line - b.Line
			}
			return a.Column - b.Column
		}) {
			t.Errorf("the problems are not in the order of the file: %v", problems)
		}
		if g == nil {
			return
		}
		sum := 0.0
		for _, item := range g.Items {
			if !item.Bonus {
				sum += item.Marks
			}
			if best := bestOf(item); math.Abs(best-item.Marks) > guard {
				t.Errorf("%s gives %v of %v", item.ID, best, item.Marks)
			}
			if got := g.rounded(item.Marks); math.Abs(got-item.Marks) > 1e-6 {
				t.Errorf("%s is %v rounded from %v", item.ID, got, item.Marks)
			}
		}
		if math.Abs(sum-g.Total) > 1e-6 {
			t.Errorf("the items come to %v of %v", sum, g.Total)
		}
		for _, c := range g.Caps {
			if c.Most >= g.Total || len(c.Which.Picked) == 0 {
				t.Errorf("the cap %s takes nothing: %+v", c.ID, c)
			}
		}
	})
}

// bestOf is the most that an item gives, by its bands where it has any.
func bestOf(item *Item) float64 {
	best := 0.0
	switch task := item.Task.(type) {
	case *StatedRight:
		for _, b := range task.Bands {
			best = math.Max(best, b.Marks)
		}
		return best
	case *ShareUsed:
		for _, b := range task.Bands {
			best = math.Max(best, b.Marks)
		}
		return best
	case nil:
		return 0
	}
	return item.Marks
}
