package corpus_test

import (
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"dryfit/internal/quantity"
	"dryfit/internal/survey"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// What an incident comes to beside what clauses judge, in comment lines of its file:
//
//	# works out SUBJECT.QUANTITY@CASE/FAULT: 9.4 gal(US) within 5 %
//	# happens CASE/FAULT: SUBJECT spills after 20 min within 5 %
//
// Number and tolerance are as in an expectation of a clause, from the report or
// from the arithmetic beside them, never from dryfit.
var (
	worksOut = regexp.MustCompile(`(?m)^# works out (\S+): (.+?) within (.+)$`)
	happens  = regexp.MustCompile(`(?m)^# happens (\w+)/(\S+): (\S+) (spills|draws-air) after (.+?) within (.+)$`)
)

// Volumes, times and levels of incidents come out as they were reported, or as
// they follow from the sizes by arithmetic.
func TestIncidentsComeToTheirNumbers(t *testing.T) {
	files, err := filepath.Glob(incidents + "*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	numbers, times := 0, 0
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		worked, happened := worksOut.FindAllStringSubmatch(string(data), -1), happens.FindAllStringSubmatch(string(data), -1)
		numbers, times = numbers+len(worked), times+len(happened)
		if len(worked) != strings.Count(string(data), "# works out ") || len(happened) != strings.Count(string(data), "# happens ") {
			t.Errorf("%s: some of its lines cannot be read", filepath.Base(file))
		}
		if len(worked)+len(happened) == 0 {
			continue
		}
		t.Run(strings.TrimSuffix(filepath.Base(file), ".yaml"), func(t *testing.T) {
			read, problems := system.Read(filepath.Base(file), data)
			if len(problems) > 0 {
				t.Fatalf("it is not read: %v", problems)
			}
			ledger := survey.Survey(read)
			for _, w := range worked {
				n := nodeAt(ledger, w[1])
				if n == nil {
					t.Errorf("nothing is worked out at %s", w[1])
					continue
				}
				if v, known := n.Value(); !known {
					t.Errorf("%s cannot be said: %v", w[1], n.Gaps())
				} else {
					within(t, w[1], n.Kind, v.X, w[2], w[3])
				}
			}
			for _, h := range happened {
				what := h[1] + "/" + h[2] + ": " + h[3] + " " + h[4]
				if at, yes := happensAt(ledger, h[1], h[2], h[3], h[4]); yes {
					within(t, what, quantity.Time, at, h[5], h[6])
				} else {
					t.Errorf("%s: it does not happen", what)
				}
			}
		})
	}
	if numbers < 10 || times < 3 {
		t.Errorf("there are %d numbers and %d times", numbers, times)
	}
}

// nodeAt is the quantity at an address as it is written; nil if there is none.
func nodeAt(l *working.Ledger, address string) *working.Node {
	for _, n := range l.Nodes() {
		if n.Address.String() == address {
			return n
		}
	}
	return nil
}

// happensAt is the time of the first thing of that kind in a scene; only the first of several vessels has its own.
func happensAt(l *working.Ledger, kase, fault, subject, what string) (float64, bool) {
	for _, s := range l.Scenes {
		if s.Case != kase || strings.ReplaceAll(s.Fault, " ", "-") != fault {
			continue
		}
		for _, h := range s.Happened {
			if h.Subject == subject && h.What == what {
				return h.At, !h.OrLater
			}
		}
	}
	return 0, false
}

// within holds a number against the one expected of it.
func within(t *testing.T, what string, kind quantity.Kind, got float64, value, tolerance string) {
	t.Helper()
	want, err := quantity.Parse(kind, value)
	if err != nil {
		t.Error(err)
		return
	}
	most := math.Abs(want.SI)
	if strings.HasSuffix(tolerance, " %") {
		share, err := quantity.Parse(quantity.Fraction, tolerance)
		if err != nil {
			t.Error(err)
			return
		}
		most *= share.SI
	} else {
		room, err := quantity.Parse(kind, tolerance)
		if err != nil {
			t.Error(err)
			return
		}
		most = room.SI
	}
	if !(math.Abs(got-want.SI) <= most) {
		t.Errorf("%s is %v (SI), and not %s within %s", what, got, value, tolerance)
	}
}
