package report

import "strings"

// numbersTable is a table for a terminal: words at the left, which may take several lines, and
// columns of numbers at the right.
type numbersTable struct {
	title, what string
	heads       []string
	rows        []numbersRow
}

// numbersRow is one row: a sign before it, which may be empty, its words, its numbers.
type numbersRow struct {
	sign, what string
	numbers    []string
}

// lines sets the table into a width; nothing where it has no rows.
func (t numbersTable) lines(wide int) []line {
	if len(t.rows) == 0 {
		return nil
	}
	widths := make([]int, len(t.heads))
	sign, what := 0, width(t.what)
	for i, h := range t.heads {
		widths[i] = width(h)
	}
	for _, r := range t.rows {
		sign, what = max(sign, width(r.sign)+2), max(what, width(safe(r.what)))
		for i, n := range r.numbers {
			widths[i] = max(widths[i], width(n))
		}
	}
	if t.rows[0].sign == "" {
		sign = 0
	}
	numbers := 0
	for _, n := range widths {
		numbers += n + 2
	}
	what = max(min(what, wide-sign-numbers), 8)
	right := func(l line, numbers []string) line {
		end := sign + what
		for i, n := range numbers {
			end += widths[i] + 2
			l = l.right(n, end, noInk)
		}
		return l
	}
	rule := line{}.add(ruled(sign+what+numbers), noInk)
	out := []line{line{}.add(t.title, waterInk), rule, right(line{}.at(sign).add(t.what, noInk), t.heads), rule}
	for _, r := range t.rows {
		for i, part := range wrap(r.what, what) {
			l := line{}
			if i == 0 {
				l = l.add(r.sign, noInk)
			}
			l = l.at(sign).add(part, noInk)
			if i == 0 {
				l = right(l, r.numbers)
			}
			out = append(out, l)
		}
	}
	return append(out, rule)
}

// ruled is a rule of so many columns.
func ruled(columns int) string { return strings.Repeat("-", columns) }
