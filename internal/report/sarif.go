package report

import (
	"fmt"
	"io"

	"dryfit/internal/review"
)

// What code hosts take of one run: 25 000 results, and 10 MB. The one host that publishes it
// counts the bytes compressed; here they are counted as they are, so that any host takes it.
// What is beyond is left out from the end, and a notification says how many.
//
// Source: GitHub documentation, "SARIF results exceed one or more limits" (25 000 results, 20
// tags a rule, 20 runs) and "SARIF support for code scanning" (10 MB, gzip).
const (
	mostResults = 25_000
	mostSARIF   = 10_000_000
	tailOfSARIF = 100_000 // bytes kept free for what stands behind the results
)

// sarifWriter writes findings for code hosts as SARIF 2.1.0: one run, a rule for each
// clause of the book and a result for each finding, streamed.
//
// Source: OASIS Standard, Static Analysis Results Interchange Format (SARIF) Version 2.1.0, 2020.
type sarifWriter struct {
	w       io.Writer
	run     Run
	rules   map[string]int
	begun   bool
	results int
	bytes   int
	left    int // results that had no room
	status  int
	asOf    string
	house   houseSeen
	notes   []sarifNotification
	err     error
}

func newSARIFWriter(w io.Writer, r Run) *sarifWriter {
	return &sarifWriter{w: w, run: r, rules: map[string]int{}}
}

func (s *sarifWriter) print(text string) {
	if s.err == nil {
		_, s.err = io.WriteString(s.w, text)
		s.bytes += len(text)
	}
}

func (s *sarifWriter) value(v any) {
	text, err := harmlessJSON(v)
	if err != nil && s.err == nil {
		s.err = err
	}
	s.print(string(text))
}

func (s *sarifWriter) head() {
	s.begun = true
	var book []*review.Clause
	if s.run.Clauses != nil {
		book = s.run.Clauses()
	}
	driver := sarifDriver{Name: "dryfit", Version: s.run.Version, Rules: sarifRules(book)}
	for i, r := range driver.Rules {
		s.rules[r.ID] = i
	}
	s.print(`{"$schema": "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json", "version": "2.1.0", "runs": [{` + "\n" + `"tool": `)
	s.value(map[string]sarifDriver{"driver": driver})
	s.print(",\n" + `"columnKind": "unicodeCodePoints", "originalUriBaseIds": `)
	s.value(map[string]any{sourceRoot: map[string]any{"description": sarifText{Text: "the folder in which dryfit was called"}}})
	s.print(",\n" + `"results": [`)
}

// Add writes the results of one file.
func (s *sarifWriter) Add(i Item) error {
	if !s.begun {
		s.head()
	}
	s.status = max(s.status, i.Status(s.run.HeldTo))
	switch {
	case i.Fault != "":
		s.notes = append(s.notes, sarifNotification{"error", sarifText{Text: safe(i.Fault)}, []sarifLocation{fileLocation(i.File, 1, 1)}})
	case i.Summary == nil:
		s.unread(i)
	default:
		s.asOf = max(s.asOf, i.Summary.AsOf)
		s.house.take(i.Summary, s.run.Look.Units)
		for _, f := range i.Summary.Failed {
			s.notes = append(s.notes, sarifNotification{"error", sarifText{Text: safe(failedSaid(f))}, []sarifLocation{fileLocation(i.File, 1, 1)}})
		}
		for _, r := range s.findings(i.Summary) {
			s.result(r)
		}
	}
	return s.err
}

// result writes one result while there is room.
func (s *sarifWriter) result(r sarifResult) {
	r.RuleIndex = s.rules[r.RuleID]
	text, err := harmlessJSON(r)
	if err != nil && s.err == nil {
		s.err = err
	}
	if s.left > 0 || s.results >= mostResults || s.bytes+len(text) > mostSARIF-tailOfSARIF {
		s.left++
		return
	}
	if s.results > 0 {
		s.print(",")
	}
	s.results++
	s.print("\n" + string(text))
}

// mostNotes is how many notifications are written: they stand behind the results.
const mostNotes = 100

// Close writes what the whole came to.
func (s *sarifWriter) Close() error {
	if !s.begun {
		s.head()
	}
	if s.results > 0 {
		s.print("\n")
	}
	notes := s.notes
	if more := len(notes) - mostNotes; more > 0 {
		notes = append(notes[:mostNotes:mostNotes], sarifNotification{Level: "error", Message: sarifText{Text: fmt.Sprintf("%d more of these are left out", more)}})
	}
	if s.left > 0 {
		notes = append(notes, sarifNotification{Level: "warning", Message: sarifText{Text: fmt.Sprintf(
			"%d results are left out, those of the last files: code hosts take no more than %d results and %d bytes of one run. `dryfit review FILE` shows all of a file",
			s.left, mostResults, mostSARIF)}})
	}
	s.print(`], "invocations": `)
	s.value([]sarifInvocation{{
		// A file that cannot be read is not judged: what is not among the results is not put right.
		ExecutionSuccessful: s.status < review.Unreadable, ExitCode: s.status, ExitCodeDescription: exitWords[s.status], Notifications: notes,
	}})
	s.print(",\n" + `"properties": `)
	s.value(sarifRunBag{Book: s.run.Book, HeldTo: string(s.run.HeldTo), AsOf: s.asOf, House: s.house.names, HouseChanges: s.house.changes})
	s.print("\n}]}\n")
	return s.err
}

var exitWords = []string{"nothing to act on", "something to act on", "a file cannot be read", "dryfit itself failed"}
