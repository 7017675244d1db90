package making

import (
	"math"
	"os"
	"strings"
	"testing"

	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

// Archimedes: a litre of gas under water lifts 9.79 N at 20 degC (998.2 kg/m3), less
// the weight. A stream of 1.44 L/s at 1 m/s pushes with 1.44 N where it is stopped.
func TestUpliftOfALitreOfGas(t *testing.T) {
	near(t, "gas alone", Uplift(0.001, 0, 0.0429, 0), 9.789, 0.001)
	near(t, "with its weight", Uplift(0.001, 0.7, 0.0429, 0), 9.089, 0.001)
	push := Uplift(0, 0, 0.0428, 1)
	near(t, "back-flush", push, 1.44, 0.01)
}

func known(t *testing.T, l *working.Ledger, name string) float64 {
	t.Helper()
	v, ok := l.Find(always("settler-waste/0", name)).Value()
	if !ok {
		t.Fatalf("%s is not known: %v", name, l.Find(always("settler-waste/0", name)).Gaps())
	}
	return v.X
}

// What is left over falls by one and a half times whatever lifts the drain more.
func TestMoreGasLeavesLess(t *testing.T) {
	less, more := demo(t, "", ""), demo(t, "holds: 0.36 L", "holds: 0.46 L")
	near(t, "difference", known(t, less, "hold_spare")-known(t, more, "hold_spare"), 1.5*9.789*0.1, 0.002)
	if n := demo(t, ", holds: 0.36 L", "").Find(always("settler-waste/0", "hold_spare")); len(n.Gaps()) == 0 {
		t.Error("the volume that gas can fill is not asked for")
	}
}

// A cuff that lifts adds nothing to the gap: the drain hangs, and drain_preload says so.
func TestTheGapIsStandoffAndLift(t *testing.T) {
	l := demo(t, "", "")
	bore := 0.014 / (known(t, l, "drain_gap") - known(t, l, "drain_lift")/0.0429)
	near(t, "bore", bore, 0.0429, 0.0002)
	up := demo(t, "at: 79 mm", "at: 89 mm")
	near(t, "lift", known(t, up, "drain_lift"), 0, 0)
	if math.Abs(known(t, up, "drain_gap")-0.014/0.0429) > 0.002 {
		t.Errorf("the gap is %v", known(t, up, "drain_gap"))
	}
}

func TestClosuresOfTheDrain(t *testing.T) {
	for _, c := range []struct{ old, put, name, want string }{
		{"", "", "drain_second_closure", "yes"},
		{", reached: dry-handed", ", reached: wet-handed", "drain_valve_dry", "no"},
		{", reached: dry-handed", "", "drain_valve_dry", ""},
		{"role: radial-flow-settler", "role: other", "drain_there", "not noted"},
	} {
		word, missing := said(demo(t, c.old, c.put), "settler-waste", c.name)
		if word != c.want || (c.want == "") != (len(missing) > 0) {
			t.Errorf("%q for %q: %s is %q, missing %v", c.put, c.old, c.name, word, missing)
		}
	}
	for put, want := range map[string]string{"container": "no", "gully": "yes"} {
		l := replaced(t, "leads_to: garden", "leads_to: "+put, "cap: threaded", "cap: none")
		if word, _ := said(l, "settler-waste", "drain_second_closure"); word != want {
			t.Errorf("open into a %s: a second closure is %q", put, word)
		}
	}
}

// replaced is what is worked out of the demo loop with texts replaced in pairs.
func replaced(t *testing.T, pairs ...string) *working.Ledger {
	t.Helper()
	const file = "../../testdata/systems/quarry-road.yaml"
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	s, problems := system.Read(file, []byte(strings.NewReplacer(pairs...).Replace(string(data))))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	l := working.NewLedger()
	Survey(s, tables.Embedded(), l)
	return l
}

func said(l *working.Ledger, subject, name string) (string, []string) {
	for _, f := range l.Facts() {
		if f.Subject == subject && f.Name == name {
			return f.Word, f.Missing
		}
	}
	return "not noted", nil
}
