//go:build outside

package pipeflow

import (
	"encoding/json"
	"math"
	"os/exec"
	"testing"
)

// The open library of fluid dynamics has Crane's tees too. Compared are the places that the tables name, off the shares at which
// its factors step and ours do not, and off diverging wyes of 60 degrees, for which it takes the constants of the square tee.
const libraryOfTees = `
import json
from fluids.fittings import (K_run_diverging_Crane, K_branch_diverging_Crane, K_run_converging_Crane, K_branch_converging_Crane)
rows = []
for s in (0, 0.05, 0.2, 0.3, 0.35, 0.45, 0.5, 0.55, 0.7, 0.9, 1):
    for b in (0.3, 0.5, 0.55, 0.65, 1):
        for a in (30, 45, 60, 90):
            x = dict(D_run=1, D_branch=b, Q_run=1-s, Q_branch=s, angle=a)
            rows.append(dict(way="converging", s=s, b=b, a=a, run=K_run_converging_Crane(**x), branch=K_branch_converging_Crane(**x)))
            if a != 60:
                rows.append(dict(way="diverging", s=s, b=b, a=a, run=K_run_diverging_Crane(**x), branch=K_branch_diverging_Crane(**x)))
print(json.dumps(rows))
`

func TestTeesAgainstFluids(t *testing.T) {
	out, err := exec.Command("/usr/bin/python3", "-c", libraryOfTees).Output()
	if err != nil {
		t.Fatalf("python3-fluids did not answer, install it first: %v", err)
	}
	var rows []struct {
		Way         string
		S, B, A     float64
		Run, Branch float64
	}
	if err := json.Unmarshal(out, &rows); err != nil {
		t.Fatal(err)
	}
	if len(rows) != 11*5*7 {
		t.Fatalf("%d rows came back", len(rows))
	}
	for _, r := range rows {
		of := DivergingTee
		if r.Way == "converging" {
			of = ConvergingTee
		}
		run, branch, v := of(r.S, r.B, r.A*math.Pi/180)
		if v != Valid || math.Abs(run-r.Run) > 1e-9 || math.Abs(branch-r.Branch) > 1e-9*(1+math.Abs(branch)) {
			t.Errorf("%s, share %g, bores %g, %g degrees: ours %g, %g (%v), theirs %g, %g", r.Way, r.S, r.B, r.A, run, branch, v, r.Run, r.Branch)
		}
	}
}
