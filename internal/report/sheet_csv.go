package report

import (
	"encoding/csv"
	"io"
	"strconv"
	"strings"
)

// ListCSV writes one list of a sheet as comma-separated values, heads first. A number
// in two units takes two columns.
//
// Source: the form is that of RFC 4180, with plain line ends.
func ListCSV(w io.Writer, t Table) error {
	out := csv.NewWriter(w)
	for _, row := range t.plain() {
		if err := out.Write(row); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// SheetCSV writes the stamp and all lists of a sheet into one file: the first column
// names the list, the second numbers its rows, heads having the number 0. Every row has as many cells.
func SheetCSV(w io.Writer, s Sheet) error {
	most := 0
	var rows [][]string
	for _, t := range s.Lists() {
		for i, row := range t.plain() {
			rows = append(rows, append([]string{t.Name, strconv.Itoa(i)}, row...))
			most = max(most, len(row)+2)
		}
	}
	head := make([]string, max(most, 3))
	head[0], head[1], head[2] = "stamp", "0", s.Stamp.String()
	out := csv.NewWriter(w)
	for _, row := range append([][]string{head}, rows...) {
		if err := out.Write(append(row, make([]string, len(head)-len(row))...)); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// StampCSV writes the stamp alone, for a folder of lists.
func StampCSV(w io.Writer, s Sheet) error {
	_, err := io.WriteString(w, "stamp\n"+s.Stamp.String()+"\n")
	return err
}

// plain is a list as rows of text that no spreadsheet takes for a formula.
func (t Table) plain() [][]string {
	var head []string
	for _, c := range t.Columns {
		for _, unit := range c.units() {
			name := c.Head
			if unit != "" {
				name += " (" + unit + ")"
			}
			head = append(head, harmlessCell(name))
		}
	}
	out := [][]string{head}
	for _, row := range t.Rows {
		var list []string
		for i, c := range t.Columns {
			cell := Cell{}
			if i < len(row) {
				cell = row[i]
			}
			list = append(list, harmlessCell(cell.Text))
			if len(c.units()) > 1 {
				list = append(list, harmlessCell(cell.US))
			}
		}
		out = append(out, list)
	}
	return out
}

// units is the units of a column: one, none as "", or two.
func (c Column) units() []string {
	if c.US != "" {
		return []string{c.Unit, c.US}
	}
	return []string{c.Unit}
}

// harmlessCell is a text that a spreadsheet shows and does not work out: an apostrophe
// stands before what would start a formula. Numbers below zero stay numbers.
func harmlessCell(text string) string {
	text = safe(text)
	if start := strings.TrimLeft(text, " "); start == "" || !strings.ContainsRune("=+-@|%", rune(start[0])) {
		return text
	}
	if _, err := strconv.ParseFloat(text, 64); err == nil && strings.Trim(text, "-.0123456789") == "" {
		return text
	}
	return "'" + text
}
