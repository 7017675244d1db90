//go:build outside

package survey_test

import (
	_ "embed"
	"encoding/json"
	"math"
	"os"
	"os/exec"
	"testing"

	"dryfit/internal/survey"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// The demo loop worked a second time, from its dimensions written down again, in
// another language, with other people's functions and mostly other formulas:
// Colebrook for Churchill, Hooper's table for Darby's, a root finder and a curve
// through points of scipy. Debian: apt-get install -y python3-fluids python3-scipy.
//
//go:embed demo_outside_test.py
var demo string

func TestTheDemoLoopWorkedByOthers(t *testing.T) {
	out, err := exec.Command("/usr/bin/python3", "-c", demo).Output()
	if err != nil {
		if ee, ok := err.(*exec.ExitError); ok {
			t.Logf("%s", ee.Stderr)
		}
		t.Fatalf("python3-fluids and python3-scipy did not answer, install them first: %v", err)
	}
	var rows []struct {
		Subject, Name, Case, Water string
		Value, Within              float64
		Why                        string // what the two methods differ in
	}
	if err := json.Unmarshal(out, &rows); err != nil {
		t.Fatal(err)
	}
	const file = "../../testdata/systems/quarry-road.yaml"
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	s, problems := system.Read(file, data)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	ledger := survey.Survey(s)
	if len(rows) < 20 {
		t.Errorf("only %d numbers came back", len(rows))
	}
	for _, r := range rows {
		a := working.Address{Subject: r.Subject, Name: r.Name, Case: r.Case, Water: r.Water}
		n := ledger.Find(a)
		if n == nil {
			t.Errorf("%s is not worked out", a)
			continue
		}
		v, ok := n.Value()
		if !ok || !(math.Abs(v.X-r.Value) <= r.Within) {
			t.Errorf("%s: ours %.6g (%v), theirs %.6g within %.2g (%s)", a, v.X, ok, r.Value, r.Within, r.Why)
		}
		t.Logf("%s: ours %.6g, theirs %.6g, apart %.2g of %.2g", a, v.X, r.Value, math.Abs(v.X-r.Value), r.Within)
	}
}
