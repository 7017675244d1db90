package editor

import (
	"context"
	"strings"
	"testing"

	"dryfit/internal/system"
)

// Remedies of several kinds are offered as edits: a value that is set, a key that is added, the short form of a piece written out,
// several values, a piece that others take the place of. With each made, the text is otherwise what it was.
func TestRemediesAsEdits(t *testing.T) {
	for _, one := range []struct {
		clause string
		edits  []string // what it writes, by the first remedy that is offered
	}{
		{"well_depth", []string{"310 mm"}},
		{"sharp_bend", []string{"bend: {angle: 45 deg, joint: cemented}\n      - slope: {"}},
		{"ration", []string{"g/d", "g/d"}},
		{"carries_flow", []string{"  thin-wider: {standard: AS/NZS 1477, class: PN12, size: DN32}\n", "thin-wider", "50.8 mm", "42.2 mm", "50.8 mm", "42.2 mm"}},
		{"residual_current", []string{"30 mA"}},
	} {
		t.Run(one.clause, func(t *testing.T) {
			text := broken(t, one.clause)
			r, err := theReviewer()
			if err != nil {
				t.Fatal(err)
			}
			item, err := r.Review(context.Background(), "loop.yaml", []byte(text))
			if err != nil || item.Review == nil {
				t.Fatal(err, item.Problems)
			}
			doc := &document{uri: uri, text: newText(text, false)}
			for _, f := range item.Review.Findings {
				if f.Clause.ID != one.clause {
					continue
				}
				for _, remedy := range f.Remedies {
					c, ok := remedied(doc, item.Review, scan(text), remedy)
					if !ok {
						continue
					}
					if len(c.edits) != len(one.edits) {
						t.Fatalf("%s: %+v", c.title, c.edits)
					}
					for i, e := range c.edits {
						if !strings.Contains(e.write, one.edits[i]) {
							t.Errorf("%s: it writes %q", c.title, e.write)
						}
					}
					after, _ := apply(text, c.edits)
					if strings.Count(after, "#") != strings.Count(text, "#") {
						t.Error("a comment was lost")
					}
					again, err := r.Judge(context.Background(), "loop.yaml", []byte(after))
					if err != nil || again.Review == nil {
						t.Fatal(err, again.Problems)
					}
					for _, g := range again.Review.Findings {
						if g.Clause.ID == one.clause && g.Subject == f.Subject {
							t.Errorf("%s: it is done, and %s is still open on %s", c.title, g.Clause.ID, g.Subject)
						}
					}
					return
				}
				t.Fatalf("none of its remedies is offered: %+v", f.Remedies)
			}
			t.Fatal("it is not open")
		})
	}
}

// broken is the demo with what the example of a clause says made in its text, comments and form kept where one
// value is set; else as the document writes itself.
func broken(t *testing.T, clause string) string {
	t.Helper()
	text := demo(t)
	s, problems := system.Read("demo.yaml", []byte(text))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	r, err := theReviewer()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range r.Book().Clauses() {
		if c.ID != clause {
			continue
		}
		var edits []system.Edit
		for _, change := range c.Example {
			op := system.Set
			if change.Value == nil {
				op = system.Delete
			}
			edits = append(edits, system.Edit{Op: op, Pointer: change.Pointer, Value: change.Value})
		}
		var places []edit
		for _, e := range edits {
			if one, ok := put(text, scan(text), e, s.Document); ok {
				places = append(places, one)
			}
		}
		if after, ok := apply(text, places); ok && len(places) == len(edits) {
			return after
		}
		written, problems := s.Document.WithEdits(edits...)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		return string(written)
	}
	t.Fatalf("the book has no clause %s", clause)
	return ""
}

func TestEditsThatMeetAreRefused(t *testing.T) {
	if got, ok := apply("abcdef", []edit{{span{4, 6}, "Z"}, {span{0, 2}, "X"}}); !ok || got != "XcdZ" {
		t.Errorf("%q %v", got, ok)
	}
	if _, ok := apply("abcdef", []edit{{span{1, 3}, "X"}, {span{2, 4}, "Y"}}); ok {
		t.Error("two edits of the same letters are made")
	}
}
