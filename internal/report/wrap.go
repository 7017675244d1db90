package report

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	wide "golang.org/x/text/width"
)

// Plain is a text of which a terminal shows every sign and obeys none, on one line.
func Plain(text string) string { return safe(text) }

// safe makes text of a file harmless on a terminal: what is not printable
// (control characters, marks that turn the direction of writing, bytes that are
// no UTF-8) is written as its code, and line ends and tabs become blanks. Nor
// does a build server that reads along find there what it would obey.
func safe(text string) string { return ordering.Replace(printed(text)) }

// ordering is what a line of output begins with that build servers take for an order.
var ordering = strings.NewReplacer("::", `:\u003a`, "##", `#\u0023`)

func printed(text string) string {
	clean := true
	for _, r := range text {
		clean = clean && r != utf8.RuneError && unicode.IsPrint(r)
	}
	if clean {
		return text
	}
	var b strings.Builder
	for i := 0; i < len(text); {
		r, size := utf8.DecodeRuneInString(text[i:])
		switch {
		case r == utf8.RuneError && size == 1:
			fmt.Fprintf(&b, `\x%02x`, text[i])
		case r == '\n' || r == '\t' || r == '\r' || unicode.Is(unicode.Zs, r):
			b.WriteByte(' ')
		case unicode.IsPrint(r):
			b.WriteRune(r)
		case r < 0x10000:
			fmt.Fprintf(&b, `\u%04x`, r)
		default:
			fmt.Fprintf(&b, `\U%08x`, r)
		}
		i += size
	}
	return b.String()
}

// width is the number of columns that text takes on a terminal.
func width(text string) int {
	sum := 0
	for _, r := range text {
		sum += runeWidth(r)
	}
	return sum
}

func runeWidth(r rune) int {
	if r < 0x300 {
		return 1
	}
	if unicode.In(r, unicode.Mn, unicode.Me) {
		return 0
	}
	switch wide.LookupRune(r).Kind() {
	case wide.EastAsianWide, wide.EastAsianFullwidth:
		return 2
	}
	return 1
}

// clip cuts text to a number of columns; dots say that something is gone.
func clip(text string, most int) string {
	if width(text) <= most {
		return text
	}
	dots := strings.Repeat(".", max(0, min(3, most)))
	head, _ := cut(text, most-len(dots))
	return head + dots
}

// cut splits text after so many columns.
func cut(text string, most int) (head, rest string) {
	sum := 0
	for i, r := range text {
		if sum += runeWidth(r); sum > most {
			return text[:i], text[i:]
		}
	}
	return text, ""
}

// wrap breaks text into lines of at most so many columns, between words; a word
// that is longer than a line is cut.
func wrap(text string, most int) []string {
	most = max(most, 8)
	var lines []string
	current := ""
	for _, word := range words(safe(text)) {
		switch {
		case current == "":
			current = word
		case width(current)+1+width(word) <= most:
			current += " " + word
		default:
			lines = append(lines, current)
			current = word
		}
		for width(current) > most {
			head, rest := cut(current, most)
			lines = append(lines, head)
			current = rest
		}
	}
	if current != "" {
		lines = append(lines, current)
	}
	return lines
}

// words is the words of a text; the sign behind a number of percents goes with it.
func words(text string) []string {
	var out []string
	for _, word := range strings.Fields(text) {
		if last := len(out) - 1; last >= 0 && strings.Trim(word, ";,.") == "%" {
			out[last] += " " + word
			continue
		}
		out = append(out, word)
	}
	return out
}

// paragraph is text wrapped into lines from one column to another, counted from 0.
func paragraph(text string, from, to int) []line {
	var out []line
	for _, part := range wrap(text, to-from) {
		out = append(out, line{}.at(from).add(part, noInk))
	}
	return out
}

// labelled is a paragraph with a word before it, such as "Remedy".
func labelled(label, text string, from, indent, to int, i ink) []line {
	out := paragraph(text, indent, to)
	if len(out) == 0 {
		return nil
	}
	head := line{}.at(from).add(label, i)
	if width(label)+from >= indent {
		return append([]line{head}, out...)
	}
	out[0] = append(head.at(indent), out[0][1:]...)
	return out
}

// table sets rows in columns with two blanks between them. The last column takes
// what is left of the width; no other is wider than its share in most.
func table(rows [][]string, from, to int, most ...int) []line {
	if len(rows) == 0 {
		return nil
	}
	n := len(rows[0])
	widths := make([]int, n)
	for _, row := range rows {
		for i := range n - 1 {
			widths[i] = max(widths[i], width(safe(row[i])))
		}
	}
	starts := make([]int, n)
	starts[0] = from
	for i := range n - 1 {
		if i < len(most) {
			widths[i] = min(widths[i], most[i])
		}
		starts[i+1] = starts[i] + widths[i] + 2
	}
	widths[n-1] = max(to-starts[n-1], 8)
	var out []line
	for _, row := range rows {
		cells := make([][]string, n)
		height := 1
		for i := range n {
			cells[i] = wrap(row[i], widths[i])
			height = max(height, len(cells[i]))
		}
		for k := range height {
			var l line
			for i := range n {
				if k < len(cells[i]) {
					l = l.at(starts[i]).add(cells[i][k], noInk)
				}
			}
			out = append(out, l)
		}
	}
	return out
}

// Wrap breaks text into lines of at most so many columns, between words.
func Wrap(text string, most int) []string { return wrap(text, most) }
