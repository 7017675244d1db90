package report_test

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"
	"unicode"

	"dryfit/internal/report"
)

// marksShapes is what is left of each form of marks without the words that students and instructors choose.
func marksShapes(t *testing.T, word string) map[string][]string {
	t.Helper()
	c := classOf(t, word)
	out := map[string][]string{}
	printable := func(form, text string) {
		for _, r := range text {
			if r != '\n' && !unicode.IsPrint(r) {
				t.Fatalf("%s holds the character %U", form, r)
			}
		}
	}
	sheet := func(form string, s report.Sheet) {
		page, marked, lists := written(t, s)
		for end, text := range map[string]string{" page": page, " marked": marked, " lists": lists} {
			printable(form+end, text)
			if got, err := report.ReadStamp([]byte(text)); err != nil || got.Guide != stampOfMarks.Guide {
				t.Errorf("%s%s: its stamp reads %+v, %v", form, end, got, err)
			}
		}
		holdMarked(t, marked)
		holdLists(t, lists, lists)
		out[form+" page"] = shape(page)
		for _, l := range strings.Split(marked, "\n") {
			out[form+" marked"] = append(out[form+" marked"], strings.Repeat("|", strings.Count(strings.ReplaceAll(l, `\|`, ""), "|")))
		}
		for _, d := range s.Drawings() {
			if !report.Harmless(d.SVG) {
				t.Errorf("%s: the drawing %s is more than a drawing", form, d.Name)
			}
		}
	}
	for _, m := range c.Marked {
		sheet("feedback "+string(rune('0'+m.Number)), feedbackOn(c, m))
	}
	sheet("class", report.NewClassReport(c, stampOfMarks, report.Options{}, true))

	lists := marksIn(t, "csv", c, report.Options{}, true)
	printable("csv", lists)
	holdLists(t, lists, lists)
	out["csv"] = []string{strings.Repeat("row", strings.Count(lists, "\n"))}
	printable("text", marksIn(t, "text", c, report.Options{Width: 100}, true))

	text := marksIn(t, "json", c, report.Options{}, true)
	printable("json", text)
	var v any
	if err := json.Unmarshal([]byte(text), &v); err != nil {
		t.Fatal(err)
	}
	if err := marksSchema(t).Validate(v); err != nil {
		t.Errorf("%#v", err)
	}
	out["json"] = []string{strings.Repeat("line", strings.Count(text, "\n"))}
	return out
}

// Whatever students and instructors write, each form of the marks has the same parts as with a plain word.
func TestHostileWordsStayWordsInMarks(t *testing.T) {
	want := marksShapes(t, "A plain word")
	for _, word := range append([]string{"@everyone see #123", "|", "\\|", "``` |", "\x1b]0;x\x07\x1b[2J", "\u009b2J", "\xff\xfe", "\x00", "::error::x", "水", "%s %d"}, hostile...) {
		for form, got := range marksShapes(t, word) {
			if !slices.Equal(got, want[form]) {
				t.Errorf("%s of %q has %d parts and not %d; the first that differs is %s", form, word, len(got), len(want[form]), differs(got, want[form]))
			}
		}
	}
}

// A name that would be a formula in a spreadsheet is none.
func TestNamesAreNoFormulas(t *testing.T) {
	c := classOf(t, "")
	for i, name := range []string{"=1+1", "@SUM(A1)", "+cmd", "-2+3", "\t=1", "%1"} {
		c.Marked[i].Name = name
	}
	holdLists(t, marksIn(t, "csv", c, report.Options{}, true), marksIn(t, "csv", c, report.Options{}, true))
	if text := marksIn(t, "csv", c, report.Options{}, true); !strings.Contains(text, "\n1,'=1+1,") || !strings.Contains(text, "\n2,'@SUM(A1),") {
		t.Error(text[:300])
	}
}
