package report

import (
	"bytes"
	"strings"
	"testing"

	"dryfit/internal/compare"
	"dryfit/internal/review"
	"dryfit/schema"
)

// broken is the sample judged by a house of which one clause could not be judged by.
func broken(t *testing.T) *review.Review {
	t.Helper()
	r := housed(t, sample(t), "pupils stir")
	r.Fail([]review.Failure{{Clause: "rim_reach", Why: "took too long: more than 1s"}})
	return r
}

const brokenSaid = "lause rim_reach of the house could not be judged: took too long: more than 1s"

// Every form says which clause of a house could not be judged, and why, alone and among several files.
func TestEveryFormSaysWhatCouldNotBeJudged(t *testing.T) {
	for _, form := range Forms() {
		run := runOfTests()
		for name, list := range map[string][]Item{"alone": {Reviewed(broken(t))}, "of two": {Reviewed(sample(t)), Reviewed(broken(t))}} {
			text := strings.Join(strings.Fields(strings.ReplaceAll(formed(t, form, run, list...), `\_`, "_")), " ")
			short := form == "json" || form == "lines"
			if !strings.Contains(text, brokenSaid) && !(short && strings.Contains(text, "took too long: more than 1s") && strings.Contains(text, `"rim_reach"`)) {
				t.Errorf("%s, %s: nothing is said of it in\n%s", form, name, text)
			}
		}
	}
	var sheet bytes.Buffer
	if err := Terminal(&sheet, broken(t), runOfTests().Look); err != nil || !strings.Contains(strings.Join(strings.Fields(sheet.String()), " "), brokenSaid) {
		t.Errorf("error %v, the report is\n%s", err, sheet.String())
	}
}

// It is read back from what was kept, makes the exit status 1, and fits the schemas.
func TestWhatCouldNotBeJudgedIsKept(t *testing.T) {
	r := broken(t)
	if err := reviewSchema(t).Validate(decoded(t, written(t, []Item{Reviewed(r)}))); err != nil {
		t.Errorf("%#v", err)
	}
	for _, l := range strings.Split(strings.TrimSpace(formed(t, "lines", runOfTests(), Reviewed(r))), "\n") {
		if err := compiled(t, schema.Lines).Validate(decoded(t, []byte(l))); err != nil {
			t.Errorf("%#v", err)
		}
	}
	_, whole, err := Keep(r)
	if err != nil {
		t.Fatal(err)
	}
	back, err := Kept("bench.yaml", whole, bookOfTests)
	if err != nil || len(back.Summary.Failed) != 1 || back.Summary.Failed[0].Why != r.Failed[0].Why || back.Summary.ExitStatus(review.Shall) != review.Act {
		t.Errorf("error %v, %+v", err, back.Summary.Failed)
	}
	sound := &review.Summary{}
	if sound.ExitStatus(review.Shall) != review.NothingToAct {
		t.Error("nothing at all is to act on")
	}
	if sound.Fail(r.Failed); sound.ExitStatus(review.Shall) != review.Act {
		t.Error("a clause that could not be judged is nothing to act on")
	}
}

func TestCompareSaysWhatCouldNotBeJudged(t *testing.T) {
	of := moved(t, "")
	comparison := *of.Comparison
	of.Comparison = &comparison
	side := func(s compare.Side) compare.Side {
		r := *s.Review
		r.House, r.Failed = broken(t).House, broken(t).Failed
		s.Review = &r
		return s
	}
	comparison.Was, comparison.Now = side(comparison.Was), side(comparison.Now)
	comparison.Was.Review.Failed = nil
	for name, write := range map[string]func(*bytes.Buffer) error{
		"text":     func(b *bytes.Buffer) error { return CompareTerminal(b, []Compared{of}, comparingLook) },
		"markdown": func(b *bytes.Buffer) error { return CompareMarkdown(b, []Compared{of}, comparingLook) },
		"json":     func(b *bytes.Buffer) error { return CompareJSON(b, []Compared{of}, comparingLook) },
	} {
		var b bytes.Buffer
		if err := write(&b); err != nil {
			t.Fatal(err)
		}
		text := strings.Join(strings.Fields(strings.ReplaceAll(b.String(), `\_`, "_")), " ")
		if !strings.Contains(text, brokenSaid) || strings.Contains(text, "Before: The c"+brokenSaid) {
			t.Errorf("%s:\n%s", name, text)
		}
	}
}
