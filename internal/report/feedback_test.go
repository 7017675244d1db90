package report_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"dryfit/internal/marking"
	"dryfit/internal/report"
)

func feedbackOn(c *marking.Class, m *marking.Marked) report.Sheet {
	stamp := stampOfMarks
	if m.Hash != "" {
		stamp.File = m.Hash
	}
	return report.NewFeedback(m, c.Guide, stamp, report.Options{})
}

// sectionIDs is the sections of a sheet, in their order.
func sectionIDs(s report.Sheet) []string {
	var out []string
	for _, one := range s.Sections {
		out = append(out, one.ID)
	}
	return out
}

// textsOf is the paragraphs of a section.
func textsOf(s report.Sheet, id string) []string {
	var out []string
	for _, one := range s.Sections {
		if one.ID != id {
			continue
		}
		for _, b := range one.Blocks {
			if text, is := b.(report.Text); is {
				out = append(out, string(text))
			}
		}
	}
	return out
}

func TestFeedbackHasItsSections(t *testing.T) {
	c := classOf(t, "")
	for i, want := range [][]string{
		{"mark", "gains", "items", "your-numbers", "clauses", "words"},
		{"cautions", "mark", "gains", "items", "your-numbers", "clauses", "words"},
		{"mark", "gains", "items", "to-put-right"},
		{"mark", "items", "to-put-right", "your-numbers", "clauses", "words"},
		{"mark", "items"},
		{"mark"},
	} {
		if got := sectionIDs(feedbackOn(c, c.Marked[i])); !slices.Equal(got, want) {
			t.Errorf("submission %d: %q, and not %q", i+1, got, want)
		}
	}
}

func TestFeedbackSaysTheMark(t *testing.T) {
	c := classOf(t, "")
	guide := `Marked by the guide "Courtyard loop, unit 3".`
	byGuide := guide + ` What is worked out here is worked out from your own file.`
	for i, want := range [][]string{
		{"53.5 of 60 marks, 2 of them bonus.", byGuide},
		{"30 of 60 marks.", "Your items come to 34.5 marks, but no more than 30 are given while open_water on sump and residual_current on mains are not met. The reason: nobody builds what may hurt somebody.", byGuide},
		{"0 of 60 marks.", "The file could not be read as a loop, so there was nothing to mark. What stands in the way is listed below with what to write instead.", guide},
		{"46 of 60 marks.", "Parts of the file could not be read. They were left out, and what was left was marked; they are listed below with what to write instead.",
			`The mark for "overflow rate of the settler" was changed by hand from 2 to 4 (workshop teacher, 2026-03-20). The reason: the unit was lost in typing. The file is another one now than was looked at then.`,
			"The total was changed by hand from 42 to 46 (workshop teacher). The reason: shown on the bench.", byGuide},
		{"0 of 60 marks.", "The file could not be read, so there was nothing to mark: open the file: it may not be opened.", guide},
		{"There is no mark: dryfit itself failed on this file. That is a fault of dryfit and nothing that you did; whoever marks the class sees it in the report."},
	} {
		if got := textsOf(feedbackOn(c, c.Marked[i]), "mark"); !slices.Equal(got, want) {
			t.Errorf("submission %d: %q", i+1, got)
		}
	}
}

// calculationOf is the rows of one of the student's numbers.
func calculationOf(t *testing.T, s report.Sheet, name string) []report.Reckoned {
	t.Helper()
	for _, one := range s.Sections {
		for _, b := range one.Blocks {
			if c, is := b.(report.Calculation); is && c.Name == name {
				return c.Rows
			}
		}
	}
	t.Fatalf("there is no calculation %s", name)
	return nil
}

func rowOf(t *testing.T, rows []report.Reckoned, title string) (int, report.Reckoned) {
	t.Helper()
	i := slices.IndexFunc(rows, func(r report.Reckoned) bool { return strings.HasPrefix(r.Title, title) })
	if i < 0 {
		t.Fatalf("there is no row %s", title)
	}
	return i, rows[i]
}

// The steps stand in the order in which they are worked, each with its formula and the numbers of the file;
// what was carried forward is told from what follows from the inputs.
func TestFeedbackShowsTheWorking(t *testing.T) {
	c := classOf(t, "")
	rows := calculationOf(t, feedbackOn(c, c.Marked[0]), "number-overflow-rate")
	_, theirs := rowOf(t, rows, "What you state")
	if theirs.Result[0] != "1.4 mm/s" || theirs.Formula != "your working: Q/A with A from the drum" || !slices.Contains(theirs.Reference, "file line 88") {
		t.Errorf("%+v", theirs)
	}
	ring, area := rowOf(t, rows, "Area of the ring")
	last, rate := rowOf(t, rows, "Upward speed of the water (overflow rate), settler")
	// 463 mm and 140 mm as the file has them: pi/4 (0.463^2 - 0.140^2) = 0.15297 m2; 1110 L/h through it is 2.016 mm/s.
	if ring > last || area.Formula != "A = pi/4 (D^2 - d^2)" || area.With != "D = 463 mm; d = 140 mm" || area.Result[0] != "0.153 m2" {
		t.Errorf("%+v", area)
	}
	if rate.Formula != "v0 = Q/A" || !strings.HasPrefix(rate.Result[0], "2.0") || !strings.HasSuffix(rate.Result[0], " mm/s") || rate.Result[1] != "from your own inputs" || len(rate.Reference) < 2 {
		t.Errorf("%+v", rate)
	}
	carried, from := rowOf(t, rows, "The same from what you state before")
	if carried != last+1 || from.With != "flow = 760 L/h" || from.Result[0] != "1.389 mm/s" {
		t.Errorf("%+v", from)
	}
	if _, worth := rowOf(t, rows, "What it is worth"); worth.Formula != "within 2 %, which gives 6 marks" || worth.Result[0] != "6 of 6 marks" {
		t.Errorf("%+v", worth)
	}
	flow := calculationOf(t, feedbackOn(c, c.Marked[0]), "number-flow-asked")
	if _, worth := rowOf(t, flow, "What it is worth"); worth.Formula != "no band is reached: 4 marks within a factor of 1.25" {
		t.Errorf("%+v", worth)
	}
	for _, r := range flow[:len(flow)-2] {
		if slices.ContainsFunc(rows[:last], func(before report.Reckoned) bool { return r.Title != "What you state" && before.Title == r.Title }) {
			t.Errorf("%s is worked out twice", r.Title)
		}
	}
}

// Two slips that lead to one number are both named, and that the number cannot tell which.
func TestFeedbackNamesSlips(t *testing.T) {
	c := classOf(t, "")
	rows := calculationOf(t, feedbackOn(c, c.Marked[1]), "number-overflow-rate")
	i, first := rowOf(t, rows, "Where your number may come from")
	if first.Formula != "the radius was taken for the diameter of the settler" || first.Result[1] != "comes out with it" {
		t.Errorf("%+v", first)
	}
	second := rows[i+1]
	if second.Formula != "or: 4 times too much, in the last step" || !slices.Contains(second.Result, "the number alone cannot tell which of the two it was") {
		t.Errorf("%+v", second)
	}
	if _, theirs := rowOf(t, rows, "What you state"); !slices.Contains(theirs.Result, "without a unit; taken as 8.07 mm/s") || theirs.Formula != "your file does not say how it was found" {
		t.Errorf("%+v", theirs)
	}
	if _, worth := rowOf(t, rows, "What it is worth"); worth.Formula != "no band is reached: 6 marks within 2 %; 3 within 10 %" {
		t.Errorf("%+v", worth)
	}
}

// A number is shown in the unit in which the student works, and in US units beside it where those are wanted.
func TestFeedbackInTheUnitsOfTheStudent(t *testing.T) {
	c := classOf(t, "")
	m := c.Marked[0]
	m.Lines[1].Worked.Text = "0.14 cm/s"
	s := report.NewFeedback(m, c.Guide, stampOfMarks, report.Options{Both: true})
	rows := calculationOf(t, s, "number-overflow-rate")
	_, theirs := rowOf(t, rows, "What you state")
	if _, from := rowOf(t, rows, "The same from"); from.Result[0] != "0.1389 cm/s (0.0547 in/s)" || !slices.Contains(theirs.Result, "that is 1.4 mm/s") {
		t.Errorf("%q, %q", from.Result, theirs.Result)
	}
}

// Clauses of the guide stand there one by one; the others are counted.
func TestFeedbackOnClauses(t *testing.T) {
	c := classOf(t, "")
	found := c.Marked[1].Review
	inGuide := map[string]bool{}
	for _, clause := range c.Guide.Items[3].Task.(*marking.ClausesMet).Which.Picked {
		inGuide[clause.ID] = true
	}
	for _, clause := range c.Guide.Caps[0].Which.Picked {
		inGuide[clause.ID] = true
	}
	rows, others := 0, map[string]bool{}
	for _, f := range found.Findings {
		if inGuide[f.Clause.ID] {
			rows++
		} else {
			others[f.Clause.ID] = true
		}
	}
	s := feedbackOn(c, c.Marked[1])
	list := listOf(t, s, "clauses")
	if rows == 0 || len(list.Rows) != rows {
		t.Errorf("%d rows, and not %d", len(list.Rows), rows)
	}
	if texts := textsOf(s, "clauses"); len(others) == 0 || len(texts) != 1 || !strings.Contains(texts[0], "that the guide does not ask about are open") {
		t.Errorf("%q", texts)
	}
	if texts := textsOf(feedbackOn(c, c.Marked[0]), "clauses"); len(texts) == 0 || texts[0] != "Every clause that the guide asks about is met." {
		t.Errorf("%q", texts)
	}
	for _, row := range list.Rows {
		if row[2].Text == "" || strings.Contains(row[2].Text, " ;") {
			t.Errorf("%q", row[2].Text)
		}
	}
}

// The page speaks to a person of things that can be put right.
func TestFeedbackIsKind(t *testing.T) {
	c := classOf(t, "")
	blame := regexp.MustCompile(`(?i)\b(errors?|mistakes?|wrong|failed to|bad|poor|good|great|well done|excellent|cheat\w*|copied)\b`)
	for _, m := range c.Marked {
		s := feedbackOn(c, m)
		for _, one := range s.Sections {
			if one.ID == "clauses" || one.ID == "gains" || one.ID == "words" {
				continue // the words of the book
			}
			for _, b := range one.Blocks {
				if text, is := b.(report.Text); is && blame.MatchString(string(text)) && m.Fault == "" {
					t.Errorf("submission %d, %s: %s", m.Number, one.ID, text)
				}
			}
		}
	}
	if text := marksIn(t, "report", c, report.Options{}, false); regexp.MustCompile(`(?i)cheat|copied|suspect|score|identical|plagiar`).MatchString(text) {
		t.Error("the report on the class accuses somebody")
	}
}

func TestFeedbackSaysWhatItIs(t *testing.T) {
	c := classOf(t, "")
	page, marked, _ := written(t, feedbackOn(c, c.Marked[0]))
	for _, want := range []string{"<title>Quarry Road courtyard loop, submission 1: feedback sheet</title>", "<p>Feedback sheet</p>", `content: "dryfit feedback sheet"`,
		"; file 111111111111; guide cccccccccccc; book bbbbbbbbbbbb"} {
		if !strings.Contains(page, want) {
			t.Errorf("the page has no %s", want)
		}
	}
	for _, text := range []string{page, marked} {
		if got, err := report.ReadStamp([]byte(text)); err != nil || got.Guide != stampOfMarks.Guide || got.File != c.Marked[0].Hash {
			t.Errorf("its stamp reads %+v, %v", got, err)
		}
	}
}
