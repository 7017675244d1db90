package report

import (
	"fmt"
	"io"
)

// Tried is one test of a clause with what came of it, or lines of a clause that no test tried.
type Tried struct {
	File   string
	Row    int
	Name   string // of the test; empty for lines
	Why    string // it fails; for lines, which they are
	Failed bool
}

// Trial writes what came of the tests of the clauses of a house.
func Trial(w io.Writer, all []Tried, o Options) error {
	var lines []line
	var rows [][]string
	tests, failed, untried := 0, 0, 0
	most := max(bodyWidth, min(o.Width, 160))
	for i, t := range all {
		if i == 0 || t.File != all[i-1].File {
			lines = append(append(lines, table(rows, 2, most, 14, most/2)...), spaced(len(lines) > 0)...)
			lines, rows = append(lines, line{}.add(safe(t.File), referenceInk)), nil
		}
		outcome := "holds"
		switch {
		case t.Name == "":
			untried++
			t.Name, outcome = "-", t.Why
		case t.Failed:
			failed++
			outcome = "fails: " + t.Why
		}
		if t.Name != "-" {
			tests++
		}
		rows = append(rows, []string{fmt.Sprintf("line %d", t.Row), t.Name, outcome})
	}
	lines = append(append(lines, table(rows, 2, most, 14, most/2)...), line{})
	text := capital(counted(tests)) + " tests, all hold. "
	switch {
	case tests == 1 && failed == 0:
		text = "One test, which holds. "
	case failed == tests:
		text = capital(counted(tests)) + " tests, none holds. "
	case failed > 0:
		text = capital(counted(tests)) + " tests, of which " + counted(failed) + " " + fail(failed) + ". "
	}
	if untried > 0 {
		text += "Not every line was tried."
	} else {
		text += "Every line was tried."
	}
	return write(w, append(lines, paragraph(text, 0, most)...), most, o.Colour)
}

// spaced is an empty line, or none.
func spaced(yes bool) []line {
	if yes {
		return []line{{}}
	}
	return nil
}

func fail(n int) string {
	if n == 1 {
		return "fails"
	}
	return "fail"
}
