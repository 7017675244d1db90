package report

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"dryfit/internal/review"
)

// The parts of JUnit XML that are written: those that the schema of Jenkins and its
// relatives have in common. There is no time in it, so that the same input gives the same bytes.
type (
	testSuite struct {
		XMLName    xml.Name       `xml:"testsuite"`
		Name       string         `xml:"name,attr"`
		Tests      int            `xml:"tests,attr"`
		Failures   int            `xml:"failures,attr"`
		Errors     int            `xml:"errors,attr"`
		Skipped    int            `xml:"skipped,attr"`
		Properties []testProperty `xml:"properties>property"`
		Cases      []*testCase    `xml:"testcase"`
	}
	testProperty struct {
		Name  string `xml:"name,attr"`
		Value string `xml:"value,attr"`
	}
	testCase struct {
		Class   string      `xml:"classname,attr"`
		Name    string      `xml:"name,attr"`
		Skipped *testText   `xml:"skipped"`
		Error   *testResult `xml:"error"`
		Failure *testResult `xml:"failure"`
	}
	testText struct {
		Text string `xml:",chardata"`
	}
	testResult struct {
		Type    string `xml:"type,attr"`
		Message string `xml:"message,attr"`
		Text    string `xml:",chardata"`
	}
)

// junitWriter writes a suite for each file and a case for each clause on a subject. The
// sums of the whole are not written: they would have to stand before the first file.
type junitWriter struct {
	w     io.Writer
	run   Run
	begun bool
}

func newJUnitWriter(w io.Writer, r Run) *junitWriter { return &junitWriter{w: w, run: r} }

func (j *junitWriter) head() error {
	if j.begun {
		return nil
	}
	j.begun = true
	_, err := io.WriteString(j.w, xml.Header+`<testsuites name="dryfit">`+"\n")
	return err
}

// Add writes the suite of one file.
func (j *junitWriter) Add(i Item) error {
	if err := j.head(); err != nil {
		return err
	}
	text, err := xml.MarshalIndent(j.suite(i), "  ", "  ")
	if err != nil {
		return err
	}
	// No attribute has the end of a line in it, and in text it may stand as it is.
	_, err = fmt.Fprintf(j.w, "%s\n", bytes.ReplaceAll(text, []byte("&#xA;"), []byte("\n")))
	return err
}

// Close ends the document.
func (j *junitWriter) Close() error {
	if err := j.head(); err != nil {
		return err
	}
	_, err := io.WriteString(j.w, "</testsuites>\n")
	return err
}

func (j *junitWriter) suite(i Item) testSuite {
	out := testSuite{Name: safe(i.File)}
	put := func(name, value string) {
		if value != "" {
			out.Properties = append(out.Properties, testProperty{name, safe(value)})
		}
	}
	put("held_to", string(j.run.HeldTo))
	put("version", j.run.Version)
	put("book", j.run.Book)
	if s := i.Summary; s != nil {
		put("name", s.Name)
		put("status", s.Status)
		put("as_of", s.AsOf)
		if s.House != nil {
			put("house", houseName(s.House))
		}
		for _, c := range houseSays(s.House, j.run.Look.Units) {
			put("house_change", c)
		}
		out.Cases = append(append(j.cases(s), failedCases(s)...), j.permitCases(s)...)
	} else {
		out.Cases = []*testCase{unreadCase(i)}
	}
	for _, c := range out.Cases {
		c.Class = classOf(i.File, c.Class)
		out.Tests++
		switch {
		case c.Error != nil:
			out.Errors++
		case c.Failure != nil:
			out.Failures++
		case c.Skipped != nil:
			out.Skipped++
		}
	}
	return out
}

// classOf is the file without its ending, then the chapter: those who read it split it at the last dot.
func classOf(file, chapter string) string {
	stem := strings.TrimSuffix(filepath.ToSlash(file), filepath.Ext(file))
	return safe(strings.ReplaceAll(stem, ".", "_") + "." + chapter)
}

// unreadCase says why there is nothing else: an error, not a failure, as nothing was judged.
func unreadCase(i Item) *testCase {
	c := &testCase{Class: "file", Name: fileRead, Error: &testResult{Type: "cannot be read", Message: "the file cannot be read"}}
	if i.Unread != "" {
		c.Error.Message += ": " + safe(i.Unread)
	}
	if i.Fault != "" {
		c.Error.Type, c.Error.Message = "fault of dryfit", "dryfit itself failed: "+safe(i.Fault)
	}
	for _, p := range i.Problems {
		c.Error.Text += "\n" + safe(placeOf(p)+": found "+p.Found+": "+p.Write)
	}
	return c
}

// failedCases is the clauses of a house by which the loop could not be judged: errors, as nothing was.
func failedCases(s *review.Summary) []*testCase {
	var out []*testCase
	for _, f := range s.Failed {
		out = append(out, &testCase{Class: "house", Name: safe(f.Clause), Error: &testResult{Type: "could not be judged", Message: safe(failedSaid(f))}})
	}
	return out
}

// cases is every clause on every subject to which it applies. Where a clause holds more than
// one thing of a subject against a limit, they are one case, and all that is open stands in it.
func (j *junitWriter) cases(s *review.Summary) []*testCase {
	var out []*testCase
	at := map[string]*testCase{}
	take := func(judged *review.Judgement) *testCase {
		key := judged.Clause.ID + " " + judged.Subject
		if at[key] == nil {
			at[key] = &testCase{Class: judged.Clause.Chapter, Name: safe(key)}
			out = append(out, at[key])
		}
		return at[key]
	}
	open := map[*testCase][]*review.Finding{}
	findings := map[*review.Judgement]*review.Finding{}
	for _, f := range s.Findings {
		findings[f.Judgement] = f
	}
	for _, judged := range s.Judgements {
		if judged.Verdict == review.DoesNotApply {
			continue
		}
		c := take(judged)
		if f := findings[judged]; f != nil {
			open[c] = append(open[c], f)
		}
	}
	for _, c := range out {
		j.judge(c, s, open[c])
	}
	return out
}

// judge says what came of a case: a failure where a finding makes the exit status 1, skipped
// with the reason where none does.
func (j *junitWriter) judge(c *testCase, s *review.Summary, open []*review.Finding) {
	if len(open) == 0 {
		return
	}
	loudest, text := open[0], ""
	for _, f := range open {
		if s.Counts(f, j.run.HeldTo) && !s.Counts(loudest, j.run.HeldTo) {
			loudest = f
		}
		text += "\n" + j.openWords(s, f)
	}
	head := verdictWords(loudest.Judgement) + ": " + said(loudest, j.run.Look.Units)
	if s.Counts(loudest, j.run.HeldTo) {
		c.Failure = &testResult{verdictWords(loudest.Judgement), safe(head), text + "\n"}
		return
	}
	c.Skipped = &testText{strings.TrimPrefix(text, "\n")}
}

// openWords is all that is said of a finding, a thing a line.
func (j *junitWriter) openWords(s *review.Summary, f *review.Finding) string {
	lines := []string{sentence(verdictWords(f.Judgement) + ": " + said(f, j.run.Look.Units))}
	switch {
	case f.Permit != nil:
		lines = append(lines, "Leave: "+leaveSaid(f.Permit))
	case !s.Counts(f, j.run.HeldTo):
		lines = append(lines, "It does not count when held to "+string(j.run.HeldTo)+map[bool]string{true: ", while the file says `status: concept`.", false: "."}[s.Status == "concept" && f.Verdict == review.Undetermined])
	}
	lines = append(lines, sentence(f.Clause.Title))
	if remedies := remediesSaid(f, j.run.Look.Units); remedies != "" {
		lines = append(lines, remedies)
	}
	if f.Place.Line > 0 {
		lines = append(lines, fmt.Sprintf("Place: %s, line %d", s.File, f.Place.Line))
	}
	if f.Clause.Safety && f.Clause.Caution != "" {
		lines = append(lines, "CAUTION "+sentence(f.Clause.Caution))
	}
	for i := range lines {
		lines[i] = safe(lines[i])
	}
	return strings.Join(lines, "\n")
}

// permitCases is the permits that serve no more: they count when held to should.
func (j *junitWriter) permitCases(s *review.Summary) []*testCase {
	var out []*testCase
	for _, p := range stale(s) {
		c := &testCase{Class: "permits", Name: safe(permitServes + " " + p.Clause + " " + p.Subject)}
		if text := safe(staleSaid(p)); j.run.HeldTo == review.Should {
			c.Failure = &testResult{Type: "stale permit", Message: text}
		} else {
			c.Skipped = &testText{text}
		}
		out = append(out, c)
	}
	return out
}
