package report_test

import (
	"slices"
	"strings"
	"testing"

	"dryfit/internal/report"
)

func TestTheReportOnAClass(t *testing.T) {
	c := classOf(t, "")
	s := report.NewClassReport(c, stampOfMarks, report.Options{}, false)
	if got, want := sectionIDs(s), []string{"in-short", "slips", "items", "clauses", "missing", "pairs", "marks"}; !slices.Equal(got, want) {
		t.Errorf("%q, and not %q", got, want)
	}
	short := strings.Join(textsOf(s, "in-short"), " ")
	for _, want := range []string{
		`Six submissions, marked by the guide "Courtyard loop, unit 3", which gives 60 marks, and 4 of bonus beyond them.`,
		"Totals: median 30, the middle half from 0 to 46, mean 25.9, least 0, greatest 53.5.",
		"Submission 2 was held down by a cap.", "Submissions 3 and 5 could not be read.", "Submission 4 was marked without the parts that could not be read.",
		"Submission 6 was not marked since dryfit failed on it.", "Submission 4 has a mark that was changed by hand.",
		"The file of submission 4 is another one than was looked at when overflow-rate was changed by hand.", "at file line 14 of the moderation file fits no submission.",
	} {
		if !strings.Contains(short, want) {
			t.Errorf("%q has no %q", short, want)
		}
	}
}

// The item of which the class got the smallest share comes first; a bonus comes last, however little of it was got.
func TestTheHardestItemsComeFirst(t *testing.T) {
	c := classOf(t, "")
	var letters []string
	for _, row := range listOf(t, report.NewClassReport(c, stampOfMarks, report.Options{}, false), "items").Rows {
		letters = append(letters, row[0].Text)
	}
	// means over most: A 4.9/10, B 2/6, C 1.6/4, D 10.1/20, E 7.4/20; F, the bonus, 0.4/4
	if got := strings.Join(letters, ""); got != "BECADF" {
		t.Errorf("%s", got)
	}
}

// A pair is a list of what agrees, and nothing that could be taken for a verdict.
func TestPairsAreNoVerdict(t *testing.T) {
	c := classOf(t, "")
	s := report.NewClassReport(c, stampOfMarks, report.Options{}, true)
	pair := listOf(t, s, "pair-1-4")
	if pair.Caption != "1 and 4" || len(pair.Rows) != 2 || pair.Rows[0][0].Text != "vessels.tank.stands_at" || pair.Rows[0][2].Text != "8" || pair.Rows[0][3].Text != "9" {
		t.Errorf("%+v", pair)
	}
	texts := textsOf(s, "pairs")
	if len(texts) != 1 || !strings.Contains(texts[0], "nothing about how it came about") {
		t.Errorf("%q", texts)
	}
	for _, row := range pair.Rows {
		for _, cell := range row {
			if strings.Contains(cell.Text, "%") {
				t.Errorf("%q", cell.Text)
			}
		}
	}
}

// Every submission and every item stands in the tables of marks, however many items there are.
func TestTheTableOfMarksIsWhole(t *testing.T) {
	c := manyItems(30, 1.5)
	s := report.NewClassReport(c, stampOfMarks, report.Options{}, true)
	var heads []string
	for _, l := range s.Lists() {
		if !strings.HasPrefix(l.Name, "marks-by-item") {
			continue
		}
		for i, column := range l.Columns {
			heads = append(heads, column.Head)
			if column.Number && column.Head != "total" && l.Rows[0][i].Text != "1.5" {
				t.Errorf("%s: %q", column.Head, l.Rows[0][i].Text)
			}
		}
	}
	if got := strings.Join(heads, " "); got != "number submission total A B C D E F G H I J K L to be known number M N O P Q R S T U V W X number Y Z AA AB AC AD" {
		t.Error(got)
	}
	if d := s.Drawings(); len(d) != 1 || !report.Harmless(d[0].SVG) {
		t.Errorf("%d drawings", len(d))
	}
}
