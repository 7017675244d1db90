package corpus_test

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
)

const incidents = "../../testdata/incidents/"

// expectation is one comment line of an incident:
//
//	# expect CLAUSE on SUBJECT: not met, 4.9 mm/s within 5 %
//	# expect CLAUSE on SUBJECT: not met, yes
//
// The number comes from the report or from the formula named above it, never from
// dryfit; the tolerance is a share of it, or a number of the same kind. Of a fact the word stands there.
var expectation = regexp.MustCompile(`(?m)^# expect (\w+) on (\S+): (met|not met), (.+?)(?: within (.+))?$`)

// Each file of testdata/incidents is a report of what went wrong in a loop that was
// built, or the counter-example to one. What it expects is what the review says.
func TestIncidentsAreFound(t *testing.T) {
	files, err := filepath.Glob(incidents + "*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	wrong := 0
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		t.Run(strings.TrimSuffix(filepath.Base(file), ".yaml"), func(t *testing.T) {
			expected := expectation.FindAllStringSubmatch(string(data), -1)
			if len(expected) == 0 || len(expected) != strings.Count(string(data), "# expect ") {
				t.Fatalf("%d of its expectations can be read", len(expected))
			}
			o := withoutRemedies(t, filepath.Base(file), data)
			if o.Review == nil {
				t.Fatalf("it is not read: %v", o.Problems)
			}
			for _, e := range expected {
				if e[3] == string(review.NotMet) {
					wrong++
				}
				if err := compare(o.Review, e[1], e[2], review.Verdict(e[3]), e[4], e[5]); err != nil {
					t.Error(err)
				}
			}
		})
	}
	if len(files) < 10 || wrong < 10 {
		t.Errorf("there are %d incidents with %d clauses that are not met", len(files), wrong)
	}
}

// compare holds the one judgement of a clause on a subject against what is expected of it.
func compare(r *review.Review, clause, subject string, verdict review.Verdict, value, tolerance string) error {
	for _, j := range r.Judgements {
		if j.Clause.ID != clause || j.Subject != subject {
			continue
		}
		if j.Verdict != verdict {
			return fmt.Errorf("%s on %s is %s and not %s: %v %s %v", clause, subject, j.Verdict, verdict, j.Value.X, j.Word, j.Missing)
		}
		if tolerance == "" {
			if !j.Fact || j.Word != value {
				return fmt.Errorf("%s on %s is judged by %q and not by the word %q", clause, subject, j.Word, value)
			}
			return nil
		}
		return near(j, value, tolerance)
	}
	return fmt.Errorf("%s is not judged on %s", clause, subject)
}

// near says how a judged value differs from the one expected.
func near(j *review.Judgement, value, tolerance string) error {
	if j.Fact {
		return fmt.Errorf("%s on %s is judged by the word %q, and a number is expected", j.Clause.ID, j.Subject, j.Word)
	}
	want, err := quantity.Parse(j.Kind, value)
	if err != nil {
		return err
	}
	var within float64
	if strings.HasSuffix(tolerance, " %") {
		share, err := quantity.Parse(quantity.Fraction, tolerance)
		if err != nil {
			return err
		}
		within = share.SI * math.Abs(want.SI)
	} else {
		most, err := quantity.Parse(j.Kind, tolerance)
		if err != nil {
			return err
		}
		within = most.SI
	}
	if !(math.Abs(j.Value.X-want.SI) <= within) {
		return fmt.Errorf("%s on %s has %s %v (SI), and not %s within %s", j.Clause.ID, j.Subject, j.Name, j.Value.X, value, tolerance)
	}
	return nil
}
