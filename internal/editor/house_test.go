package editor

import (
	"strings"
	"testing"

	"dryfit/internal/corpus"
)

// What the house asks otherwise than the book is marked as its own, with its reason, and remedies keep to it.
func TestHouse(t *testing.T) {
	house, problems, err := corpus.NewHouseReviewer("../../testdata/house/quarry-road")
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	text := changedDemo(t, "lip_at: 305 mm", "lip_at: 355 mm")
	byBook := talk(t, "")
	byBook.open(uri, text)
	if d := coded(byBook.marked(1), "well_depth"); d != nil {
		t.Fatalf("the book says %s", d.Message)
	}
	c := silentWith(t, func(s *server) { s.Reviewer = house }).greet("")
	c.open(uri, text)
	d := coded(c.marked(1), "well_depth")
	if d == nil || d.Severity != asError || !strings.Contains(d.Message, "the house asks 0.45 to 0.55, the book 0.4 to 0.6") || !strings.Contains(d.Message, "cleaned by pupils") {
		t.Fatalf("by the rules of the house it is marked: %+v", d)
	}
	if len(c.actions(d.Range)) == 0 {
		t.Error("no remedy is offered")
	}
}
