package report

import (
	"bytes"
	"strings"
	"testing"
)

const groundsList = `assumptions:
  - {about: vessels.settler.stands_at, text: the floor is level, basis: it is a new slab}
sources:
  - {about: name, text: the sign at the gate}
`

// What the author assumed stands on the sheet with its reason, and where values come from beside it.
func TestGroundsOnTheSheet(t *testing.T) {
	w := &sheeter{page: newPage(stating(t, groundsList), Options{})}
	var got []string
	for _, b := range w.groundTables() {
		t := b.(Table)
		for _, row := range t.Rows {
			line := t.Caption
			for _, c := range row {
				line += " | " + c.Text
			}
			got = append(got, line)
		}
		if len(t.Rows[0]) != len(t.Columns) {
			got = append(got, "columns and cells differ")
		}
	}
	want := []string{
		"What the author assumed | vessels.settler.stands_at | 300 mm | the floor is level | it is a new slab | ",
		"Where values come from | name | Bench loop | the sign at the gate | ",
	}
	if len(got) != len(want) {
		t.Fatalf("%q", got)
	}
	for i := range want {
		if !strings.HasPrefix(got[i], want[i]) {
			t.Errorf("%q, not %q and the file line", got[i], want[i])
		}
	}
	if none := (&sheeter{page: newPage(stating(t, ""), Options{})}).groundTables(); len(none) > 0 {
		t.Errorf("without any: %v", none)
	}
}

func TestGroundsInJSON(t *testing.T) {
	text := written(t, []Item{Reviewed(stating(t, groundsList))})
	if err := reviewSchema(t).Validate(decoded(t, text)); err != nil {
		t.Errorf("%#v", err)
	}
	for _, want := range []string{`"how": "assumption"`, `"about": "name"`, `"basis": "it is a new slab"`, `"pointer": "/sources/0"`} {
		if !bytes.Contains(text, []byte(want)) {
			t.Errorf("%s is missing", want)
		}
	}
	if text := written(t, []Item{Reviewed(stating(t, ""))}); bytes.Contains(text, []byte("grounds")) {
		t.Error("grounds are told of a file without any")
	}
}
