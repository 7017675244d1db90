//go:build outside

package survey_test

import (
	"bytes"
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

// A day of fish in the demo loop worked a second time in another language, mostly by
// other laws and by numbers instead of formulas: oxygen by Garcia and Gordon, ammonia by
// Bates and Pinching, balances run in time until they stand still, a power cut run with
// its events, grains that sink by another drag, a drain by its own losses. Levels, volumes
// and flows are taken from the ledger: the other test beside this one holds them.
// Debian: apt-get install -y python3-gsw python3-scipy.
//
//go:embed fish_outside_test.py
var day string

// taken are the quantities that the second solution starts from.
var taken = map[string]bool{
	"water_level": true, "static_level": true, "water_volume": true, "loop_volume": true,
	"inflow": true, "greatest_inflow": true, "drain_flow": true,
}

func TestADayOfFishWorkedByOthers(t *testing.T) {
	const file = "../../testdata/systems/quarry-road.yaml"
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	s, problems := system.Read(file, data)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	ours := map[string]*working.Node{}
	given := map[string]float64{}
	for _, n := range survey.Survey(s).Nodes() {
		ours[n.Address.String()] = n
		if v, ok := n.Value(); ok && taken[n.Address.Name] {
			given[n.Address.String()] = v.X
		}
	}
	in, err := json.Marshal(given)
	if err != nil {
		t.Fatal(err)
	}

	cmd := exec.Command("/usr/bin/python3", "-c", day, "../../rules/tables")
	cmd.Stdin = bytes.NewReader(in)
	out, err := cmd.Output()
	if err != nil {
		if ee, ok := err.(*exec.ExitError); ok {
			t.Logf("%s", ee.Stderr)
		}
		t.Fatalf("python3-gsw and python3-scipy did not answer, install them first: %v", err)
	}
	var rows []struct {
		At            string
		Value, Within float64 // Within is a share of the value
		Over          float64 // the same for ours above theirs, where only that side is safe or not
		Why           string  // what the two methods differ in
	}
	if err := json.Unmarshal(out, &rows); err != nil {
		t.Fatal(err)
	}
	if len(rows) < 35 {
		t.Errorf("only %d numbers came back", len(rows))
	}
	for _, r := range rows {
		n := ours[r.At]
		if n == nil {
			t.Errorf("%s is not worked out", r.At)
			continue
		}
		v, ok := n.Value()
		apart := math.Abs(v.X-r.Value) / math.Abs(r.Value)
		within := r.Within
		if v.X > r.Value {
			within = r.Over
		}
		if !ok || !(apart <= within) {
			t.Errorf("%s: ours %.6g (%v), theirs %.6g, apart %.2g, more than %.2g (%s)", r.At, v.X, ok, r.Value, apart, within, r.Why)
		}
		t.Logf("%s: ours %.6g, theirs %.6g, apart %.2g of %.2g", r.At, v.X, r.Value, apart, within)
	}
}
