package report

import (
	"fmt"
	"io"

	"dryfit/internal/system"
)

// Problems writes what must be put right in a file before it can be reviewed: a
// table of place, what was found, what to write instead.
func Problems(w io.Writer, file string, problems []system.Problem, o Options) error {
	return refused(w, file, "cannot be reviewed yet", problems, o)
}

// MarkingProblems is the same for a file that marking reads beside system files.
func MarkingProblems(w io.Writer, file string, problems []system.Problem, o Options) error {
	return refused(w, file, "cannot be used for marking yet", problems, o)
}

// HouseProblems is the same for the rules of a house.
func HouseProblems(w io.Writer, file string, problems []system.Problem, o Options) error {
	return refused(w, file, "cannot be used as house rules yet", problems, o)
}

func refused(w io.Writer, file, cannot string, problems []system.Problem, o Options) error {
	most := bodyWidth
	if o.Width > bodyWidth {
		most = min(o.Width, 160)
	}
	return write(w, problemTable(file, cannot, problems, most), most, o.Colour)
}

func problemLines(file string, problems []system.Problem, most int) []line {
	return problemTable(file, "cannot be reviewed yet", problems, most)
}

func problemTable(file, cannot string, problems []system.Problem, most int) []line {
	out := []line{
		line{}.add(safe(file), referenceInk).add(" "+cannot, noInk),
		{},
	}
	rows := [][]string{{"place", "found", "write instead"}}
	for _, p := range problems {
		rows = append(rows, []string{placeOf(p), p.Found, p.Write})
	}
	return append(out, table(rows, 2, most, 14, (most-20)/2)...)
}

// placeOf is line and column, as an editor shows them.
func placeOf(p system.Problem) string {
	switch {
	case p.Line <= 0:
		return "-"
	case p.Column <= 0:
		return fmt.Sprintf("line %d", p.Line)
	}
	return fmt.Sprintf("line %d:%d", p.Line, p.Column)
}
