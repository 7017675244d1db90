//go:build outside

package pipeflow

import (
	"encoding/json"
	"math"
	"os/exec"
	"testing"
)

// An open library of fluid dynamics, of which none of ours is a copy, works the same formulas out over our whole range of pipes.
// Debian: apt-get install -y python3-fluids.
const library = `
import json
from fluids.friction import Churchill_1977, Clamond
from fluids.fittings import (Hooper2K, Darby3K, diffuser_sharp, contraction_sharp, entrance_rounded, entrance_distance, bend_rounded,
    bend_miter)
rows = []
def row(what, answer, tol, *args): rows.append(dict(what=what, args=args, answer=answer, tol=tol))
for re in (5, 80, 380, 1500, 2300, 2900, 3500, 4000, 7e3, 13e3, 44e3, 1e5, 1e6):
    for rough in (0, 3e-5, 1e-3, 0.013, 0.05):
        row("churchill", Churchill_1977(re, rough), 1e-9, re, rough)
        if re >= 4000: row("colebrook", Clamond(re, rough), 1e-9, re, rough)
    for inch in (0.5, 1.61, 2.067, 4.026): row("hooper", Hooper2K(Di=inch, Re=re, K1=800, Kinfty=0.4), 1e-9, 800, 0.4, inch*0.0254, re)
    for inch in (0.5, 1.5, 2, 4): row("darby", Darby3K(NPS=inch, Re=re, K1=800, Ki=0.14, Kd=4.0), 1e-9, 800, 0.14, 4, inch*0.0254, re)
for b in (0.05, 0.3, 0.5, 0.72, 0.9, 0.99):
    row("expansion", diffuser_sharp(b, 1), 1e-9, b, 1)
    row("contraction", contraction_sharp(1, b), 1e-9, 1, b)
    row("flush", entrance_rounded(Di=1, rc=b, method="Rennels"), 1e-9, b)
    row("projecting", entrance_distance(Di=1, t=b/20, method="Rennels"), 1e-9, b/20)
for angle in (5, 22.5, 45, 87.5, 90, 135, 180):
    for r in (1, 1.5, 3, 10):
        for f in (0.017, 0.025, 0.04): row("bend", bend_rounded(Di=0.05, angle=angle, fd=f, bend_diameters=r, method="Rennels"), 1e-9, angle, r, f)
    if angle <= 150: row("mitre", bend_miter(angle), 1e-9, angle)
print(json.dumps(rows))
`

func TestAgainstFluids(t *testing.T) {
	out, err := exec.Command("/usr/bin/python3", "-c", library).Output()
	if err != nil {
		if ee, ok := err.(*exec.ExitError); ok {
			t.Logf("%s", ee.Stderr)
		}
		t.Fatalf("python3-fluids did not answer, install it first: %v", err)
	}
	var rows []struct {
		What        string
		Args        []float64
		Answer, Tol float64
	}
	if err := json.Unmarshal(out, &rows); err != nil {
		t.Fatal(err)
	}
	ours := map[string]func(a []float64) (float64, Validity){
		"churchill":   func(a []float64) (float64, Validity) { return FrictionFactor(a[0], a[1]) },
		"colebrook":   func(a []float64) (float64, Validity) { return Colebrook(a[0], a[1]) },
		"hooper":      func(a []float64) (float64, Validity) { return TwoK(a[0], a[1], a[2], a[3]) },
		"darby":       func(a []float64) (float64, Validity) { return ThreeK(a[0], a[1], a[2], a[3], a[4]) },
		"expansion":   func(a []float64) (float64, Validity) { return SuddenExpansion(a[0], a[1]) },
		"contraction": func(a []float64) (float64, Validity) { return SuddenContraction(a[0], a[1]) },
		"flush":       func(a []float64) (float64, Validity) { return FlushEntrance(a[0]) },
		"projecting":  func(a []float64) (float64, Validity) { return ProjectingEntrance(a[0]) },
		"bend":        func(a []float64) (float64, Validity) { return Bend(a[0]*math.Pi/180, a[1], a[2]) },
		"mitre":       func(a []float64) (float64, Validity) { return Mitre(a[0] * math.Pi / 180) },
	}
	seen := map[string]int{}
	for _, r := range rows {
		seen[r.What]++
		x, v := ours[r.What](r.Args)
		// the same formula written down twice: only rounding may differ
		if v != Valid || !(math.Abs(x-r.Answer) <= r.Tol*math.Abs(r.Answer)) {
			t.Errorf("%s %v: ours %.12g (%v), theirs %.12g", r.What, r.Args, x, v, r.Answer)
		}
	}
	if len(seen) != len(ours) {
		t.Errorf("compared %v, want all %d formulas", seen, len(ours))
	}
}
