//go:build outside

package loop

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"math"
	"os/exec"
	"testing"

	"dryfit/internal/system"
	"dryfit/internal/working"
)

//go:embed random_outside_test.py
var another string

// Random loops worked a second time, from plain numbers, in another language, with
// equations written down again from their sources and other people's root finders.
// Debian: apt-get install -y python3-scipy.
func TestRandomLoopsWorkedByOthers(t *testing.T) {
	loops := max(200, *manyLoops)
	var specs []*anyLoop
	for i := range uint64(loops) {
		specs = append(specs, someLoop(*firstLoop+i, 0))
	}
	in, err := json.Marshal(specs)
	if err != nil {
		t.Fatal(err)
	}
	run := exec.Command("/usr/bin/python3", "-c", another)
	run.Stdin = bytes.NewReader(in)
	out, err := run.Output()
	if err != nil {
		if ee, ok := err.(*exec.ExitError); ok {
			t.Logf("%s", ee.Stderr)
		}
		t.Fatalf("python3-scipy did not answer, install it first: %v", err)
	}
	var answers []struct {
		Seed    uint64
		Left    float64 // what their balances leave over, as a share of the flow
		Scale   float64 // flow of the greatest pump
		Levels  map[string]float64
		Heads   map[string]float64 // over where the water would stand with no flow
		Flows   map[string]float64
		Regimes map[string]int
		Apart   string // why such a loop is not compared
	}
	if err := json.Unmarshal(out, &answers); err != nil {
		t.Fatal(err)
	}
	if len(answers) != loops {
		t.Fatalf("%d answers to %d loops", len(answers), loops)
	}
	regimes, apart := map[string]int{}, map[string]int{}
	for i, a := range answers {
		s, problems := system.Read("random.yaml", []byte(specs[i].file()))
		if len(problems) > 0 {
			t.Fatalf("loop %d: %v", a.Seed, problems)
		}
		if a.Apart != "" {
			apart[a.Apart]++
			continue
		}
		if a.Left > 1e-4 {
			t.Errorf("loop %d: they found no steady flow", a.Seed)
			continue
		}
		l := working.NewLedger()
		running(s, tablesForTest, l)
		ours := func(subject, name string) (float64, bool) {
			n := l.Find(working.Address{Subject: subject, Name: name, Case: working.RunClean, Water: "usual"})
			if n == nil {
				return 0, false
			}
			v, ok := n.Value()
			if !ok {
				t.Logf("loop %d: %s.%s: %v", a.Seed, subject, name, n.Gaps())
			}
			return v.X, ok
		}
		for vessel, theirs := range a.Levels {
			within := math.Max(0.001, 0.01*a.Heads[vessel])
			if z, ok := ours(vessel, "water_level"); !ok || !(math.Abs(z-theirs) <= within) {
				t.Errorf("loop %d: %s stands at %.4f m, theirs at %.4f m, within %.4f (known: %v)", a.Seed, vessel, z, theirs, within, ok)
			}
		}
		for line, theirs := range a.Flows {
			within := 0.01*math.Max(math.Abs(theirs), 0.03*a.Scale) + 1e-9 // a thirtieth of the pump's flow: in wide lines side by side a tenth of a millimetre moves as much
			if specs[i].strand(line).Duty == "overflow" {
				continue // no quantity of ours
			}
			q, ok := ours(line, "flow")
			if !ok || !(math.Abs(q-theirs) <= within) {
				t.Errorf("loop %d: %s carries %.2f L/h, theirs %.2f within %.2f (known: %v)", a.Seed, line, 3.6e6*q, 3.6e6*theirs, 3.6e6*within, ok)
			}
		}
		for regime, n := range a.Regimes {
			regimes[regime] += n
		}
	}
	for _, regime := range []string{"laminar", "turbulent", "part full", "full", "self-venting", "surging", "free weir", "drowned weir", "divided"} {
		if regimes[regime] < 15 {
			t.Errorf("only %d %s", regimes[regime], regime)
		}
	}
	for why, n := range apart {
		if n > loops/10 {
			t.Errorf("%d of %d loops are not compared: %s", n, loops, why)
		}
	}
	t.Log(regimes, apart)
}
