package making

import (
	"os"
	"strings"
	"testing"

	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

// demo is what is worked out of the demo loop with one text in place of another, and more such pairs.
func demo(t *testing.T, old, put string, more ...string) *working.Ledger {
	t.Helper()
	const file = "../../testdata/systems/quarry-road.yaml"
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if old != "" && !strings.Contains(string(data), old) {
		t.Fatalf("%q stands nowhere in the demo", old)
	}
	text := string(data)
	for i, pairs := 0, append([]string{old, put}, more...); i+1 < len(pairs); i += 2 {
		if pairs[i] != "" {
			text = strings.ReplaceAll(text, pairs[i], pairs[i+1])
		}
	}
	s, problems := system.Read(file, []byte(text))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	l := working.NewLedger()
	Survey(s, tables.Embedded(), l)
	return l
}

func force(t *testing.T, l *working.Ledger) float64 {
	t.Helper()
	v, ok := l.Find(always("settler-waste/0", "cuff_force")).Value()
	if !ok {
		t.Fatal("the force of the cuff is not known")
	}
	return v.X
}

// Only a clip on the pipe next to the wall holds the spigot: behind the valve it holds the valve.
func TestAClipBehindTheValveHoldsNoSpigot(t *testing.T) {
	near := force(t, demo(t, "", ""))
	const valve = "- valve: {kind: ball, bore: 42.9 mm, open: 0 %, reached: dry-handed}\n      - across: "
	far := force(t, demo(t, "- across: {length: 150 mm, clipped: true}\n      "+valve+"80 mm", "- across: 150 mm\n      "+valve+"{length: 80 mm, clipped: true}"))
	none := force(t, demo(t, "{length: 150 mm, clipped: true}", "150 mm"))
	if far != none || near <= none {
		t.Errorf("clipped at the wall %v N, behind the valve %v N, nowhere %v N", near, far, none)
	}
}

// Whatever takes power from the mains brings the clause on residual current in: the air pump alone is enough.
func TestAnAirPumpOnTheMainsIsMainsPower(t *testing.T) {
	const mains = "mains: {residual_current: 30 mA, circuits: 2, sockets_at: 1600 mm, drip_loops: true}\n"
	without := func(pump, air string) string {
		data, err := os.ReadFile("../../testdata/systems/quarry-road.yaml")
		if err != nil {
			t.Fatal(err)
		}
		text := strings.Replace(string(data), mains, "", 1)
		text = strings.Replace(text, "draws: 18 W\n    supply: mains", "draws: 18 W\n    supply: "+pump, 1)
		text = strings.Replace(text, "draws: 25 W, supply: mains", "draws: 25 W"+air, 1)
		s, problems := system.Read("demo", []byte(text))
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		l := working.NewLedger()
		Survey(s, tables.Embedded(), l)
		for _, f := range l.Facts() {
			if f.Name == "mains_power" {
				return f.Word
			}
		}
		t.Fatal("mains_power is not noted")
		return ""
	}
	for _, c := range []struct{ pump, air, want string }{
		{"extra-low-voltage", ", supply: mains", "yes"},
		{"extra-low-voltage", "", ""},
		{"extra-low-voltage", ", supply: battery", "no"},
		{"mains", ", supply: battery", "yes"},
	} {
		if got := without(c.pump, c.air); got != c.want {
			t.Errorf("pump on %s, air pump%s: mains power is %q, not %q", c.pump, c.air, got, c.want)
		}
	}
}
