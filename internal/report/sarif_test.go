package report

import (
	"encoding/json"
	"fmt"
	"os"
	"slices"
	"strings"
	"sync"
	"testing"

	"dryfit/internal/review"
	"dryfit/internal/system"
)

var sarifSchema = sync.OnceValues(func() ([]byte, error) { return os.ReadFile("../../testdata/schemas/sarif-2.1.0.json") })

// logged is what tests read of SARIF.
type logged struct {
	Runs []struct {
		Tool        struct{ Driver sarifDriver }
		Results     []sarifResult
		Invocations []sarifInvocation
		Properties  sarifRunBag
	}
}

// holdSARIF holds a log against the standard's schema and reads it.
func holdSARIF(t testing.TB, text string) logged {
	t.Helper()
	data, err := sarifSchema()
	if err != nil {
		t.Fatal(err)
	}
	if err := compiled(t, data).Validate(decodedAny(t, text)); err != nil {
		t.Errorf("%#v", err)
	}
	var l logged
	if err := json.Unmarshal([]byte(text), &l); err != nil {
		t.Fatal(err)
	}
	if len(l.Runs) != 1 {
		t.Fatalf("there are %d runs", len(l.Runs))
	}
	return l
}

func decodedAny(t testing.TB, text string) any {
	t.Helper()
	var v any
	if err := json.Unmarshal([]byte(text), &v); err != nil {
		t.Fatal(err)
	}
	return v
}

func TestSARIF(t *testing.T) {
	run := holdSARIF(t, formed(t, "sarif", runOfTests(), several(t)...)).Runs[0]
	if len(run.Tool.Driver.Rules) != len(bookOfTests)+2 {
		t.Errorf("there are %d rules", len(run.Tool.Driver.Rules))
	}
	var said []string
	for _, r := range run.Results {
		if rule := run.Tool.Driver.Rules[r.RuleIndex]; rule.ID != r.RuleID {
			t.Errorf("the rule of %s is %s", r.RuleID, rule.ID)
		}
		at := r.Locations[0].Physical
		kind := ""
		for _, s := range r.Suppressions {
			kind += " " + s.Kind
		}
		said = append(said, fmt.Sprintf("%s %s %s:%d%s", r.RuleID, r.Level, at.Artifact.URI, at.Region.Line, kind))
	}
	// The permit of well_depth holds and stands in the file; that of sharp_bend has run out.
	want := []string{
		"sharp_bend error bench.yaml:25", "well_depth warning bench.yaml:12 inSource", "residual_current warning bench.yaml:1",
		"permit_serves warning bench.permits.yaml:2", "file_read error bad.yaml:3", "file_read error bad.yaml:9", "file_read error gone.yaml:1",
	}
	if !slices.Equal(said, want) {
		t.Errorf("the results are\n%s\nand not\n%s", strings.Join(said, "\n"), strings.Join(want, "\n"))
	}
	if i := run.Invocations[0]; i.ExecutionSuccessful || i.ExitCode != 3 || len(i.Notifications) != 1 {
		t.Errorf("the invocation is %+v", i)
	}
	if run.Properties.AsOf != "2026-03-14" {
		t.Errorf("permits were held on %q", run.Properties.AsOf)
	}
	sound := holdSARIF(t, formed(t, "sarif", runOfTests(), several(t)[1])).Runs[0]
	if i := sound.Invocations[0]; !i.ExecutionSuccessful || i.ExitCode != 0 || sound.Properties.AsOf != "" || len(sound.Results) != 0 {
		t.Errorf("a sound loop gives %+v", sound)
	}
	open := holdSARIF(t, formed(t, "sarif", runOfTests(), several(t)[:2]...)).Runs[0]
	if i := open.Invocations[0]; !i.ExecutionSuccessful || i.ExitCode != 1 {
		t.Errorf("a loop to act on gives %+v", i)
	}
}

// A host knows a result again when lines move and values change, and tells every result
// from every other; with the file's name, the clause or the subject it changes.
func TestFingerprints(t *testing.T) {
	prints := func(change func(s *review.Summary)) []string {
		r := sample(t)
		change(&r.Summary)
		var out []string
		for _, one := range holdSARIF(t, formed(t, "sarif", runOfTests(), Item{File: r.File, Summary: &r.Summary})).Runs[0].Results {
			if one.Fingerprints["primaryLocationLineHash"] != one.Fingerprints["clauseFileSubject/v1"] {
				t.Errorf("the two prints differ: %v", one.Fingerprints)
			}
			out = append(out, one.Fingerprints["primaryLocationLineHash"])
		}
		return out
	}
	first := prints(func(*review.Summary) {})
	for i, p := range first {
		if slices.Contains(first[:i], p) {
			t.Errorf("two results have the print %s", p)
		}
	}
	for what, change := range map[string]func(*review.Summary){
		"lines move":      func(s *review.Summary) { s.Findings[0].Place.Line += 7; s.Findings[1].Place.Column++ },
		"a value changes": func(s *review.Summary) { s.Findings[0].Value.X *= 1.1; s.Findings[1].Value.X = 0.7 },
		"a limit changes": func(s *review.Summary) { s.Findings[0].Limit.Most = number(1) },
		"a remedy is new": func(s *review.Summary) { s.Findings[0].Remedies = nil },
		"the loop has another name": func(s *review.Summary) {
			s.Name = "Another"
		},
		"flags count anew": func(s *review.Summary) { s.Findings[0].Number = 9 },
	} {
		if got := prints(change); !slices.Equal(got, first) {
			t.Errorf("%s: %v and not %v", what, got, first)
		}
	}
	for what, change := range map[string]func(*review.Summary){
		"another subject": func(s *review.Summary) { s.Findings[0].Subject = "other" },
		"another file":    func(s *review.Summary) { s.File = "other.yaml" },
		"another clause":  func(s *review.Summary) { s.Findings[0].Clause = silentClause },
	} {
		if got := prints(change); got[0] == first[0] {
			t.Errorf("%s: the print stays", what)
		}
	}
	twice := prints(func(s *review.Summary) { s.Findings = append(s.Findings, s.Findings[0]) })
	if !slices.Equal(twice[:3], first) || !strings.HasSuffix(twice[3], ":2") || strings.TrimSuffix(twice[3], "2") != strings.TrimSuffix(first[0], "1") {
		t.Errorf("two of the same are %v", twice)
	}
}

// Source: RFC 3986, sections 2.1 and 2.3.
func TestURIs(t *testing.T) {
	for file, want := range map[string]string{
		"a/b.yaml": "a/b.yaml", "./a//b.yaml": "a/b.yaml", "../b.yaml": "../b.yaml", "a b%#?.yaml": "a%20b%25%23%3F.yaml", "-": "standard-input",
		"a:b.yaml": "a%3Ab.yaml", "über.yaml": "%C3%BCber.yaml", "\xff\n.yaml": "%FF%0A.yaml", "a_b-c~.yaml": "a_b-c~.yaml",
	} {
		if got, absolute := uriOf(file); got != want || absolute {
			t.Errorf("%q is %q, %v", file, got, absolute)
		}
	}
	if got, absolute := uriOf("/home/a b.yaml"); got != "file:///home/a%20b.yaml" || !absolute {
		t.Errorf("an absolute name is %q, %v", got, absolute)
	}
	at := fileLocation("/home/b.yaml", 0, -1)
	if at.Physical.Artifact.Base != "" || at.Physical.Region.Line != 1 {
		t.Errorf("an absolute place is %+v", at)
	}
}

// What hosts do not take is left out, and it is said how much.
func TestSARIFIsCut(t *testing.T) {
	r := sample(t)
	one := r.Findings[0]
	r.Findings = nil
	for range 9000 {
		r.Findings = append(r.Findings, one)
	}
	for _, length := range []int{0, 2000} { // short results come to the count, long ones to the size
		one.Remedies = []review.Remedy{{Text: strings.Repeat("x", length)}}
		text := formed(t, "sarif", runOfTests(), Reviewed(r), Reviewed(r), Reviewed(r))
		var log logged
		if err := json.Unmarshal([]byte(text), &log); err != nil {
			t.Fatal(err)
		}
		run := log.Runs[0]
		left := 27000 - len(run.Results)
		notes := run.Invocations[0].Notifications
		if len(text) > mostSARIF || len(run.Results) > mostResults || len(run.Results) < 3000 {
			t.Errorf("%d results in %d bytes are kept", len(run.Results), len(text))
		}
		if len(notes) != 1 || !strings.HasPrefix(notes[0].Message.Text, fmt.Sprintf("%d results are left out", left)) {
			t.Errorf("%d are left out, and it says %+v", left, notes)
		}
	}
}

// Many files on which dryfit fails do not fill the end of the log.
func TestSARIFNotesAreCut(t *testing.T) {
	var list []Item
	for i := range 500 {
		list = append(list, Item{File: fmt.Sprintf("%d.yaml", i), Fault: "x"})
	}
	notes := holdSARIF(t, formed(t, "sarif", runOfTests(), list...)).Runs[0].Invocations[0].Notifications
	if len(notes) != mostNotes+1 || notes[mostNotes].Message.Text != "400 more of these are left out" {
		t.Errorf("there are %d notes, the last %+v", len(notes), notes[len(notes)-1])
	}
}

func TestSARIFMessages(t *testing.T) {
	r := sample(t)
	got := map[string]string{}
	for _, one := range holdSARIF(t, formed(t, "sarif", runOfTests(), Reviewed(r))).Runs[0].Results {
		got[one.RuleID] = one.Message.Text
	}
	for rule, want := range map[string]string{
		"sharp_bend":       "solids-run/2: turn 90 deg, at most 60 deg: 1.50 of the limit. Remedy: two 45s with 90 mm of pipe between them. Head lost in the bend: then 3.3 mm.",
		"well_depth":       "settler: lip, share of the water depth 0.65, 0.4 to 0.6: 1.50 of the limit. Remedy: raise the lip 90 mm, to 305 above the floor. Or: lower the crest.",
		"residual_current": "mains: current at which the safety switch trips cannot be said yet: find and give `residual_current` of mains.",
	} {
		if got[rule] != want {
			t.Errorf("%s says\n%s\nand not\n%s", rule, got[rule], want)
		}
	}
	one := message("[a](http://b) \x1b[2J")
	if strings.Contains(one.Text, "](") || strings.Contains(one.Text, "\x1b") {
		t.Errorf("a message is %q", one.Text)
	}
	long := clipped(strings.Repeat("a word ", 400))
	if len(long) > mostDescription || !strings.HasPrefix(strings.Repeat("a word ", 400), strings.TrimSuffix(long, "...")+" ") {
		t.Errorf("a long description ends in %q", long[len(long)-20:])
	}
	external := suppressed("bench.yaml", &review.Permit{Deviation: system.Deviation{Place: system.Place{File: "bench.permits.yaml"}}})
	if external.Kind != "external" || external.Status != "accepted" {
		t.Errorf("a permit beside the file is %+v", external)
	}
}
