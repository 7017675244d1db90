//go:build outside

package water_test

import (
	"encoding/json"
	"math"
	"os/exec"
	"testing"

	"dryfit/internal/water"
)

// The library of the thermodynamic equation of sea water works out the oxygen that fresh water holds after Garcia and Gordon 1992,
// who fitted the measurements of Benson and Krause anew. Debian: apt-get install -y python3-gsw.
const gsw = `
import gsw, json
print(json.dumps([dict(t=t, mg=gsw.O2sol_SP_pt(0, t)*31.9988e-3*gsw.rho(0, t, 0)/1000) for t in range(0, 41)]))
`

func TestOxygenAgainstTheSeaWaterLibrary(t *testing.T) {
	out, err := exec.Command("/usr/bin/python3", "-c", gsw).Output()
	if err != nil {
		t.Fatalf("python3-gsw did not answer, install it first: %v", err)
	}
	var rows []struct{ T, Mg float64 }
	if err := json.Unmarshal(out, &rows); err != nil {
		t.Fatal(err)
	}
	if len(rows) != 41 {
		t.Fatalf("%d temperatures came back, want 41", len(rows))
	}
	for _, r := range rows {
		ours, v := water.OxygenSaturation(r.T+water.ZeroCelsius, 101325)
		// Two fits of the same measurements: within 0.1 %.
		if v != water.Valid || math.Abs(ours*1000-r.Mg) > 1e-3*r.Mg {
			t.Errorf("at %v degC: ours %.4f mg/L (%v), theirs %.4f", r.T, ours*1000, v, r.Mg)
		}
	}
}
