package report

import (
	"encoding/csv"
	"io"
	"strconv"
	"strings"

	"dryfit/internal/marking"
)

// MarksCSV writes the marks of a class as comma-separated values: heads, then a row a submission,
// each with the hashes of what it was made with. Marks stand under the id of their item. Where
// dryfit itself failed there are none, so that a mean leaves them out.
//
// Source: the form is that of RFC 4180, with plain line ends.
func MarksCSV(w io.Writer, c *marking.Class, stamp Stamp) error {
	out := csv.NewWriter(w)
	write := func(row []string) error {
		for i := range row {
			row[i] = harmlessCell(row[i])
		}
		return out.Write(row)
	}
	head := []string{"number", "submission", "sha256", "total", "worked_out_total", "cap", "errors_in_file", "changed_by_hand"}
	for _, item := range c.Guide.Items {
		head = append(head, item.ID)
	}
	heads, made := []string{"guide", "book", "version"}, []string{stamp.Guide, stamp.Book, stamp.Version}
	if stamp.House != "" {
		heads, made = append(heads, "house"), append(made, stamp.House)
	}
	if err := write(append(head, heads...)); err != nil {
		return err
	}
	for _, m := range c.Marked {
		if err := write(append(marksRow(m, len(c.Guide.Items)), made...)); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// marksRow is the cells of one submission, with so many items.
func marksRow(m *marking.Marked, items int) []string {
	row := []string{numberOf(m), m.Name, m.Hash}
	if m.Fault != "" {
		why := "dryfit failed"
		if m.Late {
			why = "too little time"
		}
		return append(append(row, "", "", "", why, ""), make([]string, items)...)
	}
	cap := ""
	if held := bites(m); held != nil {
		cap = marking.MarksNumber(held.Cap.Most)
	}
	faults := strconv.Itoa(len(m.Problems))
	if unjudged(m) {
		faults = "cannot be read"
	}
	var changed []string
	for _, c := range m.ByHand() {
		changed = append(changed, changedWhat(c))
	}
	row = append(row, marking.MarksNumber(m.Total), marking.MarksNumber(workedOut(m)), cap, faults, strings.Join(changed, " "))
	for i := range items {
		marks := ""
		if i < len(m.Lines) {
			marks = marking.MarksNumber(m.Lines[i].Marks)
		}
		row = append(row, marks)
	}
	return row
}

// workedOut is the total as it was before it was changed by hand.
func workedOut(m *marking.Marked) float64 {
	if m.Was != nil {
		return *m.Was
	}
	return m.Total
}

// changedWhat is the id of the item that was changed by hand, or `total`.
func changedWhat(c *marking.Moderation) string {
	if c.Item == "" {
		return "total"
	}
	return c.Item
}
