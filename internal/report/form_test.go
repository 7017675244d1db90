package report

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"dryfit/internal/review"
	"dryfit/internal/system"
)

var bookOfTests = []*review.Clause{turnClause, depthClause, powerClause, speedClause, silentClause}

// several is one file of every sort: with leave to differ and a permit that has run out, with
// problems, one that cannot be opened, and one on which dryfit fails.
func several(t *testing.T) []Item {
	t.Helper()
	r := sample(t)
	r.Permits = nil
	r.Hold("2026-03-14", bookOfTests,
		system.Deviation{Clause: "well_depth", Subject: "settler", Reason: "the drum in hand has its lip there", Who: "workshop teacher", Until: "2027-01-31",
			Instead: "the catch is weighed each week", Pointer: "/permits/0", Place: system.Place{File: "bench.yaml", Line: 44, Column: 5}},
		system.Deviation{Clause: "sharp_bend", Subject: "solids-run/2", Reason: "built so", Who: "workshop teacher", Until: "2026-03-13",
			Pointer: "/permits/0", Place: system.Place{File: "bench.permits.yaml", Line: 2, Column: 5}})
	sound := &review.Summary{File: "loops/sound.yaml", Name: "Sound loop", Status: "concept", Judgements: r.Judgements[:1]}
	return []Item{
		Reviewed(r),
		{File: "loops/sound.yaml", Summary: sound},
		{File: "bad.yaml", Problems: []system.Problem{
			{File: "bad.yaml", Line: 3, Column: 7, Pointer: "/vessels", Found: "`380`: a unit is missing", Write: "write 380 mm"},
			{File: "bad.yaml", Line: 9, Column: 1, Pointer: "/lnies", Found: "the key `lnies`", Write: "the nearest key is `lines`"},
		}},
		{File: "gone.yaml", Unread: "there is no such file; check the name"},
		{File: "odd.yaml", Fault: "the book took more than 10 s"},
	}
}

func runOfTests() Run {
	return Run{HeldTo: review.Shall, Version: "0.9.0", Book: strings.Repeat("b", 64), Clauses: func() []*review.Clause { return bookOfTests }, AsOf: "2026-03-14"}
}

// formed is what a form makes of some items.
func formed(t testing.TB, form string, r Run, list ...Item) string {
	t.Helper()
	var b bytes.Buffer
	w, err := NewWriter(form, &b, r)
	if err != nil {
		t.Fatal(err)
	}
	for _, i := range list {
		if err := w.Add(i); err != nil {
			t.Fatal(err)
		}
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// The goldens of all forms that stand on the summary alone.
func TestForms(t *testing.T) {
	wide := runOfTests()
	wide.Look.Width = 140
	for _, c := range []struct {
		file, form string
		run        Run
	}{
		{"forms.txt", "text", runOfTests()}, {"forms_wide.txt", "text", wide}, {"forms.jsonl", "lines", runOfTests()},
		{"forms.sarif", "sarif", runOfTests()}, {"forms.xml", "junit", runOfTests()}, {"forms.md", "markdown", runOfTests()},
	} {
		golden(t, c.file, func(b *bytes.Buffer) error {
			b.WriteString(formed(t, c.form, c.run, several(t)...))
			return nil
		})
	}
	golden(t, "forms_one.md", func(b *bytes.Buffer) error {
		b.WriteString(formed(t, "markdown", runOfTests(), several(t)[0]))
		return nil
	})
}

// A result without its workings says the same as a fresh one.
func TestFormsNeedNoWorkings(t *testing.T) {
	for _, form := range []string{"text", "lines", "sarif", "junit", "markdown"} {
		fresh, bare := several(t), several(t)
		kept := *bare[0].Summary
		kept.Findings, kept.Judgements = nil, nil
		without := map[*review.Judgement]*review.Judgement{}
		for _, j := range bare[0].Summary.Judgements {
			copied := *j
			copied.Node = nil
			without[j] = &copied
			kept.Judgements = append(kept.Judgements, &copied)
		}
		for _, f := range bare[0].Summary.Findings {
			copied := *f
			copied.Judgement, copied.Shows = without[f.Judgement], nil
			kept.Findings = append(kept.Findings, &copied)
		}
		bare[0] = Item{File: kept.File, Summary: &kept}
		if got, want := formed(t, form, runOfTests(), bare...), formed(t, form, runOfTests(), fresh...); got != want {
			t.Errorf("%s differs without workings:\n%s\nand not\n%s", form, got, want)
		}
	}
}

// What a form can write of a file it writes at once.
func TestFormsStream(t *testing.T) {
	for _, form := range []string{"json", "lines", "sarif", "junit"} {
		var b bytes.Buffer
		w, err := NewWriter(form, &b, runOfTests())
		if err != nil {
			t.Fatal(err)
		}
		for _, i := range several(t)[:4] {
			before := b.Len()
			if err := w.Add(i); err != nil {
				t.Fatal(err)
			}
			if b.Len() == before && (form != "sarif" || i.File != "loops/sound.yaml") { // which has no result
				t.Errorf("%s holds back %s", form, i.File)
			}
		}
	}
}

// No item at all is a whole document too.
func TestFormsOfNothing(t *testing.T) {
	for form, want := range map[string]string{"text": "", "lines": "", "markdown": "No system file was to be reviewed.\n", "junit": "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<testsuites name=\"dryfit\">\n</testsuites>\n"} {
		if got := formed(t, form, runOfTests()); got != want {
			t.Errorf("%s of nothing is %q", form, got)
		}
	}
	holdSARIF(t, formed(t, "sarif", runOfTests()))
}

func TestFormOf(t *testing.T) {
	for name, want := range map[string]string{
		"a.txt": "text", "a.json": "json", "a.jsonl": "lines", "a.sarif": "sarif", "a.SARIF.json": "sarif", "b/a.xml": "junit", "a.md": "markdown",
		"a.yaml": "", "a": "", "": "", ".json": "", "a.sarif.txt": "text",
	} {
		if got := FormOf(name); got != want {
			t.Errorf("%q is %q and not %q", name, got, want)
		}
	}
	for _, form := range Forms() {
		if _, err := NewWriter(form, &bytes.Buffer{}, Run{}); err != nil {
			t.Error(err)
		}
	}
	if _, err := NewWriter("yaml", &bytes.Buffer{}, Run{}); err == nil || !strings.Contains(err.Error(), "text, json, lines, sarif, junit or markdown") {
		t.Errorf("no such form: %v", err)
	}
	if !slices.Equal(Forms(), []string{"text", "json", "lines", "sarif", "junit", "markdown"}) {
		t.Errorf("the forms are %v", Forms())
	}
}
