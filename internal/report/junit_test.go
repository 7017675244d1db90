package report

import (
	"encoding/xml"
	"strings"
	"testing"

	"dryfit/internal/review"
)

// readSuites is what a reader makes of it.
type readSuites struct {
	XMLName xml.Name    `xml:"testsuites"`
	Suites  []testSuite `xml:"testsuite"`
}

func suitesOf(t testing.TB, text string) []testSuite {
	t.Helper()
	var out readSuites
	if err := xml.Unmarshal([]byte(text), &out); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	return out.Suites
}

// comeTo is the cases of a suite with what came of each.
func comeTo(s testSuite) string {
	var out []string
	for _, c := range s.Cases {
		word := "passed"
		switch {
		case c.Error != nil:
			word = "error"
		case c.Failure != nil:
			word = "failed"
		case c.Skipped != nil:
			word = "skipped"
		}
		out = append(out, c.Name+" "+word)
	}
	return strings.Join(out, "; ")
}

// A case fails exactly where a finding makes the exit status 1.
func TestJUnitFailsWhatCounts(t *testing.T) {
	for _, c := range []struct {
		heldTo review.Strength
		status string
		want   string
	}{
		{review.Shall, "for-review", "residual_current mains failed; moves_solids solids-run passed; sharp_bend solids-run/2 failed; sharp_bend solids-run/7 passed; sharp_bend solids-run/9 passed; well_depth settler skipped; permit_serves sharp_bend solids-run/2 skipped"},
		{review.Should, "for-review", "residual_current mains failed; moves_solids solids-run passed; sharp_bend solids-run/2 failed; sharp_bend solids-run/7 passed; sharp_bend solids-run/9 passed; well_depth settler skipped; permit_serves sharp_bend solids-run/2 failed"},
	} {
		run := runOfTests()
		run.HeldTo = c.heldTo
		one := suitesOf(t, formed(t, "junit", run, several(t)[0]))[0]
		if got := comeTo(one); sorted(got) != sorted(c.want) {
			t.Errorf("held to %s\n%s\nand not\n%s", c.heldTo, got, c.want)
		}
		if one.Tests != len(one.Cases) || one.Failures != strings.Count(c.want, "failed") || one.Skipped != strings.Count(c.want, "skipped") || one.Errors != 0 {
			t.Errorf("the sums are %+v", one)
		}
	}
	r := sample(t) // without a permit a should counts when held to should alone, and an open clause of a concept does not
	for _, f := range r.Findings {
		if f.Clause == powerClause {
			copied := *powerClause
			copied.Safety = false
			f.Clause = &copied
		}
	}
	r.Status = "concept"
	for heldTo, want := range map[review.Strength]string{review.Shall: "skipped", review.Should: "failed"} {
		run := runOfTests()
		run.HeldTo = heldTo
		got := comeTo(suitesOf(t, formed(t, "junit", run, Reviewed(r)))[0])
		if !strings.Contains(got, "well_depth settler "+want) || !strings.Contains(got, "residual_current mains skipped") {
			t.Errorf("held to %s a concept gives %s", heldTo, got)
		}
	}
}

func sorted(list string) string {
	parts := strings.Split(list, "; ")
	for i := range parts {
		for k := i; k > 0 && parts[k] < parts[k-1]; k-- {
			parts[k], parts[k-1] = parts[k-1], parts[k]
		}
	}
	return strings.Join(parts, "; ")
}

// All else is there too: the permit with its reason, the problems, the fault; and a folder
// with a dot in its name does not split the name of a class.
func TestJUnitSaysWhy(t *testing.T) {
	suites := suitesOf(t, formed(t, "junit", runOfTests(), several(t)...))
	if len(suites) != 5 {
		t.Fatalf("there are %d suites", len(suites))
	}
	said := ""
	for _, c := range suites[0].Cases {
		if c.Skipped != nil {
			said += c.Skipped.Text
		}
	}
	for _, want := range []string{"until 2027-01-31: holds", "the drum in hand has its lip there", "the catch is weighed each week", "has run out"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not said of what is skipped: %s", want, said)
		}
	}
	for i, want := range map[int]string{2: "line 9:1: found the key `lnies`", 3: "there is no such file", 4: "took more than 10 s"} {
		e := suites[i].Cases[0].Error
		if e == nil || !strings.Contains(e.Message+e.Text, want) || suites[i].Errors != 1 || suites[i].Tests != 1 {
			t.Errorf("suite %d does not say %q: %+v", i, want, e)
		}
	}
	if got := classOf("v1.2/a.b.yaml", "lines"); got != "v1_2/a_b.lines" {
		t.Errorf("a class is %q", got)
	}
}
