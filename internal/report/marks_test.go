package report_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v5"

	"dryfit/internal/marking"
	"dryfit/internal/report"
	"dryfit/schema"
)

// held holds a text against a file that a person has read; -update writes it anew.
func held(t *testing.T, name, text string) {
	t.Helper()
	file := filepath.Join("testdata", name)
	if flag.Lookup("update").Value.String() == "true" {
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if text != string(want) {
		t.Errorf("%s differs; got\n%s", file, text)
	}
}

func TestMarks(t *testing.T) {
	c := classOf(t, "")
	held(t, "marks.txt", marksIn(t, "text", c, report.Options{}, false))
	held(t, "marks_wide.txt", marksIn(t, "text", c, report.Options{Width: 132}, true))
	held(t, "marks.csv", marksIn(t, "csv", c, report.Options{}, false))
}

// manyItems is a class by a guide of so many items, each with as many marks.
func manyItems(n int, marks float64) *marking.Class {
	g := &marking.Guide{Name: "many", Total: float64(n) * marks, RoundTo: 0.5}
	m := &marking.Marked{Number: 1, Name: "one", Judged: true, Sum: g.Total, Total: g.Total}
	c := &marking.Class{Guide: g, Marked: []*marking.Marked{m}, Totals: marking.SpreadOf([]float64{g.Total})}
	for range n {
		item := &marking.Item{ID: "an-item", Title: strings.Repeat("a title of some length ", 6), Marks: marks, Task: &marking.InputsGiven{}}
		g.Items = append(g.Items, item)
		m.Lines = append(m.Lines, marking.Line{Item: item, Marks: marks})
		c.Items = append(c.Items, marking.ItemSpread{Item: item, Spread: marking.SpreadOf([]float64{marks})})
	}
	return c
}

// Whatever there is, no line is wider than the page; items that do not fit are left to other forms, and that is said.
func TestMarksFitTheirWidth(t *testing.T) {
	for _, c := range []struct {
		items int
		marks float64
		width int
		room  bool
	}{{13, 5, 80, true}, {22, 5, 80, true}, {17, 4.5, 80, true}, {18, 4.5, 80, false}, {18, 4.5, 100, true}, {12, 100.25, 80, false}, {29, 5, 160, true}, {100, 5, 300, false}} {
		text := marksIn(t, "text", manyItems(c.items, c.marks), report.Options{Width: c.width}, false)
		for _, l := range strings.Split(text, "\n") {
			if len(l) > min(c.width, 160) {
				t.Errorf("%d items at %d columns: a line of %d: %s", c.items, c.width, len(l), l)
			}
		}
		if said := !strings.Contains(text, "There is no room for the marks by item"); said != c.room {
			t.Errorf("%d items of %v marks at %d columns: room %v, and not %v\n%s", c.items, c.marks, c.width, said, c.room, text[:min(len(text), 400)])
		}
	}
}

// Nobody is named where names do not belong: not on the terminal, not in the report on the class, and on no feedback sheet.
func TestNamesStayOut(t *testing.T) {
	c := classOf(t, "")
	for _, form := range []string{"text", "report", "report.md"} {
		if text := marksIn(t, form, c, report.Options{}, false); strings.Contains(text, "name-") {
			t.Errorf("%s names somebody", form)
		}
		text := marksIn(t, form, c, report.Options{}, true)
		for _, m := range c.Marked {
			if !strings.Contains(text, strings.TrimSpace(m.Name)) {
				t.Errorf("%s with names leaves out %s", form, m.Name)
			}
		}
	}
	for _, m := range c.Marked {
		page, marked, lists := written(t, feedbackOn(c, m))
		for _, text := range []string{page, marked, lists} {
			for _, name := range []string{"name-", "class/", ".yaml"} {
				if at := strings.Index(text, name); at >= 0 {
					t.Errorf("the sheet of submission %d holds %q", m.Number, text[max(0, at-60):at+20])
				}
			}
		}
	}
}

// A row a submission, marks under the ids of their items; where dryfit failed there are no marks, and not zeros.
func TestMarksCSV(t *testing.T) {
	c := classOf(t, "")
	rows, err := csv.NewReader(strings.NewReader(marksIn(t, "csv", c, report.Options{}, false))).ReadAll()
	if err != nil || len(rows) != 7 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	cell := func(row int, head string) string {
		at := slices.Index(rows[0], head)
		if at < 0 {
			t.Fatalf("there is no column %s in %q", head, rows[0])
		}
		return rows[row][at]
	}
	for _, want := range []struct {
		row        int
		head, cell string
	}{
		{1, "total", "53.5"}, {1, "inputs-given", "9.5"}, {1, "open-beds", "2"}, {1, "cap", ""}, {1, "errors_in_file", "0"}, {1, "changed_by_hand", ""},
		{2, "total", "30"}, {2, "worked_out_total", "30"}, {2, "cap", "30"},
		{3, "total", "0"}, {3, "errors_in_file", "cannot be read"}, {3, "sha256", strings.Repeat("3", 64)},
		{4, "total", "46"}, {4, "worked_out_total", "42"}, {4, "errors_in_file", "1"}, {4, "changed_by_hand", "overflow-rate total"}, {4, "overflow-rate", "4"},
		{5, "sha256", ""}, {6, "total", ""}, {6, "open-beds", ""}, {6, "errors_in_file", "dryfit failed"},
		{6, "guide", stampOfMarks.Guide}, {6, "book", stampOfMarks.Book}, {6, "version", "v0 test"},
	} {
		if got := cell(want.row, want.head); got != want.cell {
			t.Errorf("submission %d, %s: %q, and not %q", want.row, want.head, got, want.cell)
		}
	}
}

func marksSchema(t testing.TB) *jsonschema.Schema {
	t.Helper()
	c := jsonschema.NewCompiler()
	c.Draft = jsonschema.Draft2020
	if err := c.AddResource("marks.schema.json", bytes.NewReader(schema.Marks)); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("marks.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestMarksJSONHoldsToItsSchema(t *testing.T) {
	s := marksSchema(t)
	for _, c := range []*marking.Class{classOf(t, ""), classOf(t, "\x1b[31m<b>\u202e"), manyItems(40, 1), {Guide: &marking.Guide{}}} {
		text := marksIn(t, "json", c, report.Options{}, false)
		var v any
		if err := json.Unmarshal([]byte(text), &v); err != nil {
			t.Fatal(err)
		}
		if err := s.Validate(v); err != nil {
			t.Errorf("%#v", err)
		}
		if strings.ContainsAny(text, "\x1b\u202e") {
			t.Error("a control character stands in it as it is")
		}
	}
}

// Nothing of what was marked is lost on the way to a program.
func TestMarksJSONTellsAll(t *testing.T) {
	type value struct{ SI float64 }
	var got struct {
		Files       string
		Guide       struct{ SHA256 string }
		Totals      struct{ Median, Lower_quartile float64 }
		Submissions []struct {
			Standing, Why string
			Total         *float64
			Left_out      []string
			Caps          []struct{ Open []struct{ Clause string } }
			Changed       *struct{ Reason string }
			Gains         []struct {
				Marks float64
				Up_to bool
			}
			Items []struct {
				Marks      float64
				Worked_out *float64
				Stated     *struct {
					No_unit               bool
					Band                  int
					Value, Right, Carried *value
					Slips                 []struct{ Words string }
				}
			}
		}
		Pairs []struct{ A, B int }
	}
	if err := json.Unmarshal([]byte(marksIn(t, "json", classOf(t, ""), report.Options{}, false)), &got); err != nil {
		t.Fatal(err)
	}
	list := got.Submissions
	if got.Guide.SHA256 != stampOfMarks.Guide || got.Totals.Median != 30 || len(list) != 6 || len(got.Pairs) != 1 || got.Pairs[0].B != 4 || len(got.Files) != 64 {
		t.Errorf("%+v", got)
	}
	good, slip := list[0].Items[1].Stated, list[1].Items[1].Stated
	if good == nil || good.Band != 0 || good.Carried == nil || good.Carried.SI != 0.001389 || good.Value.SI != 0.0014 {
		t.Errorf("%+v", good)
	}
	if slip == nil || !slip.No_unit || slip.Band != -1 || len(slip.Slips) != 2 || slip.Right == nil {
		t.Errorf("%+v", slip)
	}
	if len(list[1].Caps) != 1 || len(list[1].Caps[0].Open) != 2 || list[2].Standing != "not read" || !list[2].Gains[0].Up_to {
		t.Errorf("%+v", list[1:3])
	}
	if p := list[3]; p.Standing != "marked in part" || p.Changed == nil || p.Items[1].Worked_out == nil || len(p.Left_out) != 1 {
		t.Errorf("%+v", p)
	}
	if f := list[5]; f.Standing != "dryfit failed" || f.Total != nil || f.Why == "" {
		t.Errorf("%+v", f)
	}
}

// A class without anybody, and marks of which nothing is known, break nothing.
func TestMarksOfNothing(t *testing.T) {
	for _, c := range []*marking.Class{{Guide: &marking.Guide{}}, {Guide: &marking.Guide{}, Marked: []*marking.Marked{{Number: 1}}}} {
		for _, form := range []string{"text", "csv", "json", "report", "report.md"} {
			if marksIn(t, form, c, report.Options{}, true) == "" {
				t.Errorf("%s is empty", form)
			}
		}
		for _, m := range c.Marked {
			written(t, feedbackOn(c, m))
		}
	}
}

// The same class gives the same bytes.
func TestMarksAreTheSameAgain(t *testing.T) {
	a, b := classOf(t, ""), classOf(t, "")
	for _, form := range []string{"text", "csv", "json", "report", "report.md"} {
		if marksIn(t, form, a, report.Options{}, false) != marksIn(t, form, b, report.Options{}, false) {
			t.Errorf("%s differs", form)
		}
	}
}
