//go:build outside

package water_test

import (
	"encoding/json"
	"math"
	"os/exec"
	"testing"

	"dryfit/internal/water"
)

// An open implementation of the IAPWS releases, of which none of ours is a copy, works the same properties out, degree by degree.
// Debian: apt-get install -y python3-iapws.
const iapws = `
import json, warnings
warnings.simplefilter("ignore")
from iapws import IAPWS95
from iapws._iapws import _Liquid, _Viscosity
from iapws.iapws97 import _PSat_T
rows = []
for t in range(0, 41):
    k = 273.15 + t
    dense = IAPWS95(T=k, P=0.101325).rho
    rows.append(dict(k=k, rho95=dense, rho=_Liquid(k, 0.1)["rho"], mu=_Liquid(k, 0.1)["mu"], mu08=_Viscosity(dense, k),
                     pv=_PSat_T(k)*1e6, pv95=IAPWS95(T=max(k, 273.16), x=0).P*1e6))
print(json.dumps(rows))
`

func TestAgainstIAPWS(t *testing.T) {
	out, err := exec.Command("/usr/bin/python3", "-c", iapws).Output()
	if err != nil {
		if ee, ok := err.(*exec.ExitError); ok {
			t.Logf("%s", ee.Stderr)
		}
		t.Fatalf("python3-iapws did not answer, install it first: %v", err)
	}
	var rows []struct{ K, Rho, Rho95, Mu, Mu08, Pv, Pv95 float64 }
	if err := json.Unmarshal(out, &rows); err != nil {
		t.Fatal(err)
	}
	if len(rows) != 41 {
		t.Fatalf("%d temperatures came back, want 41", len(rows))
	}
	for _, r := range rows {
		for _, c := range []struct {
			what  string
			ours  func(float64) (float64, water.Validity)
			their float64
			tol   float64 // relative
		}{
			// Another formula for the same water: Kell 1975 and IAPWS SR6-08 differ by up to 3 parts in a million from 0 to 40 degC,
			// and 1 atm against 0.1 MPa adds 0.6.
			{"density, SR6-08", water.Density, r.Rho, 5e-6},
			// Again another formula, the full equation of state at 1 atm.
			{"density, IAPWS-95", water.Density, r.Rho95, 5e-6},
			// The same equation written down twice: only rounding may differ.
			{"viscosity, SR6-08", water.DynamicViscosity, r.Mu, 1e-9},
			// The full formulation, of which ours is the short form; IAPWS states 1 % for either.
			{"viscosity, R12-08", water.DynamicViscosity, r.Mu08, 2e-3},
			// The same equation written down twice.
			{"vapour pressure, IF97", water.VapourPressure, r.Pv, 1e-9},
		} {
			ours, v := c.ours(r.K)
			if v != water.Valid || !(math.Abs(ours-c.their) <= c.tol*c.their) {
				t.Errorf("%s at %.2f K: ours %.9g (%v), theirs %.9g", c.what, r.K, ours, v, c.their)
			}
		}
		// The full equation of state gives the saturation line anew; it starts at the triple point, 273.16 K.
		ours, _ := water.VapourPressure(math.Max(r.K, 273.16))
		if math.Abs(ours-r.Pv95) > 3e-4*r.Pv95 {
			t.Errorf("vapour pressure, IAPWS-95 at %.2f K: ours %.6g, theirs %.6g", r.K, ours, r.Pv95)
		}
	}
}
