package review

import (
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

const statedFile = `dryfit: 1
name: Bench loop
vessels:
  tank: {role: fish-tank, form: {cylinder: {inside: 1 m, height: 1 m}}}
`

// figures is a ledger to which numbers are given, not worked out.
func figures() *working.Ledger {
	l := working.NewLedger()
	put := func(subject, name, title string, kind quantity.Kind, kase, water, fault string, v working.Value) {
		a := working.Address{Subject: subject, Name: name, Case: kase, Water: water, Fault: fault}
		l.Take(a, working.Definition{Name: name, Title: title, Kind: kind}, "/"+subject, working.Row(title, kind, v, "", "these tests", "invented"))
	}
	put("tank", "full_volume", "volume up to the rim", quantity.Volume, "always", "", "", working.Exactly(math.Pi/4))
	litres := 1.0 / 3600e3
	for i, w := range working.Waters {
		put("tank", "inflow", "flow into it", quantity.Flow, "run_least", w, "", working.Exactly((900+float64(i))*litres))
		put("tank", "inflow", "flow into it", quantity.Flow, "run_clean", w, "", working.Within((1000+float64(i))*litres, 990*litres, 1020*litres))
	}
	put("tank", "height", "height", quantity.Length, "run_clean", "usual", "", working.Exactly(1.1))
	put("tank", "highest_level", "highest level of the water", quantity.Length, "one_blocked", "", "riser blocked", working.Exactly(1.1))
	put("tank", "highest_level", "highest level of the water", quantity.Length, "one_blocked", "", "drain blocked", working.Exactly(1.25))
	put("water", "nitrate_level", "nitrate at which rise and renewal agree, as N", quantity.Concentration, "always", "usual", "", working.Exactly(0.010))
	put("water", "oxygen_full", "oxygen in water that is full of it", quantity.Concentration, "always", "usual", "", working.Exactly(0.009092))
	put("water", "salt", "salt in the water", quantity.Concentration, "always", "", "", working.Exactly(0))
	put("water", "warmest", "warmest water", quantity.Temperature, "always", "", "", working.Exactly(294.2611))
	put("water", "ph_lowest", "lowest pH", quantity.Number, "always", "", "", working.Exactly(6.5))
	put("settler/well/fixings", "chloride_share", "share", quantity.Number, "always", "", "", working.Exactly(0.12))
	l.Work(working.Address{Subject: "tank", Name: "freeboard", Case: "run_clean", Water: "usual"}, working.Definition{Title: "room", Kind: quantity.Length}, "",
		func(x []float64) (float64, string) { return x[0], "" }, working.In("H", working.Unknown("height", quantity.Length, "/vessels/tank/form/cylinder/height", "")))
	l.Note(working.Fact{Subject: "tank", Name: "backup_starts", Word: "yes"})
	l.Note(working.Fact{Subject: "tank", Name: "guarded", Missing: []string{"/air"}})
	return l
}

// entry writes one entry of a file; the values are written as JSON, which is YAML too.
func entry(keys ...string) string {
	var parts []string
	for i := 0; i+1 < len(keys); i += 2 {
		value, _ := json.Marshal(keys[i+1])
		if keys[i] == "value" && slices.Contains([]string{"true", "false", "0.12", "6.7"}, keys[i+1]) {
			value = []byte(keys[i+1])
		}
		parts = append(parts, keys[i]+": "+string(value))
	}
	return "  - {" + strings.Join(parts, ", ") + "}\n"
}

func readStated(t testing.TB, list, entries string) []Stated {
	t.Helper()
	s, problems := system.Read("bench.yaml", []byte(statedFile+list+":\n"+entries))
	if s == nil || len(problems) > 0 {
		t.Fatalf("%v\n%s", problems, entries)
	}
	out := StatedIn(s, figures())
	for _, leaf := range s.NotLooked() {
		if strings.HasPrefix(leaf.Pointer(), "/"+list) {
			t.Errorf("%s was not looked at", leaf.Pointer())
		}
	}
	return out
}

// Volumes, flows and temperatures are held against each other by the factors of
// NIST SP 811 (2008), appendix B: 1 gal(US) = 3.785 411 784 L, t/degC =
// (t/degF - 32)/1.8. The volume is that of a round tank of 1 m by 1 m, pi/4 m3.
// Full of oxygen at 20 degC: 9.092 mg/L, APHA Standard Methods, 4500-O, table I.
func TestStatedAgainstWorkedOut(t *testing.T) {
	for _, c := range []struct {
		what      string
		entry     string
		address   string
		d, share  float64
		agreement Agreement
	}{
		{"another unit", entry("quantity", "tank.full_volume", "value", "207.4803 gal(US)", "tolerance", "0.001 %"), "tank.full_volume@always", 0, 0, WithinTolerance},
		{"share allowed, just inside", entry("quantity", "tank.full_volume", "value", "800 L", "tolerance", "1.9 %"), "tank.full_volume@always", 0.0146, 0.0186, WithinTolerance},
		{"share allowed, just outside", entry("quantity", "tank.full_volume", "value", "800 L", "tolerance", "1.8 %"), "tank.full_volume@always", 0.0146, 0.0186, Apart},
		{"a value allowed", entry("quantity", "tank.full_volume", "value", "770 L", "tolerance", "16 L"), "tank.full_volume@always", -0.0154, -0.0196, WithinTolerance},
		{"nothing allowed", entry("quantity", "tank.full_volume", "value", "0.785 m3"), "tank.full_volume@always", -0.0004, -0.0005, Apart},
		{"no case: run_clean, water as usual", entry("quantity", "tank.inflow", "value", "1015 L/h"), "tank.inflow@run_clean/usual", 14 / 3600e3, 0.013986, WithinSpread},
		{"a case: water as usual", entry("quantity", "tank.inflow", "case", "run_least", "value", "901 L/h"), "tank.inflow@run_least/usual", 0, 0, Apart},
		{"outside what the sources leave", entry("quantity", "tank.inflow", "value", "1021 L/h"), "tank.inflow@run_clean/usual", 20 / 3600e3, 0.01998, Apart},
		{"of several faults the nearest", entry("quantity", "tank.highest_level", "value", "1240 mm"), "tank.highest_level@one_blocked/drain-blocked", -0.01, math.NaN(), Apart},
		{"as N", entry("quantity", "water.nitrate_level", "value", "10.1 mg/L N", "tolerance", "0.2 mg/L"), "water.nitrate_level@always/usual", 0.0001, 0.01, WithinTolerance},
		{"as nothing", entry("quantity", "water.nitrate_level", "value", "10.1 mg/L", "tolerance", "0.2 mg/L"), "water.nitrate_level@always/usual", 0.0001, 0.01, WithinTolerance},
		{"oxygen as O2", entry("quantity", "water.oxygen_full", "value", "9.09 mg/L O2", "tolerance", "0.1 %"), "water.oxygen_full@always/usual", -0.000002, -0.00022, WithinTolerance},
		{"none worked out", entry("quantity", "water.salt", "value", "1 mg/L"), "water.salt@always", 0.001, math.NaN(), Apart},
		{"on a scale", entry("quantity", "water.warmest", "value", "70 degF", "tolerance", "0.1 degC"), "water.warmest@always", 0, math.NaN(), WithinTolerance},
		{"pH", entry("quantity", "water.ph_lowest", "value", "6.7", "tolerance", "0.2"), "water.ph_lowest@always", 0.2, math.NaN(), WithinTolerance},
		{"part of a vessel", entry("quantity", "settler.well.fixings.chloride_share", "value", "0.12"), "settler/well/fixings.chloride_share@always", 0, 0, Apart},
	} {
		all := readStated(t, "stated", c.entry)
		if len(all) != 1 || all[0].Node == nil || len(all[0].Missing) > 0 {
			t.Errorf("%s: %+v", c.what, all)
			continue
		}
		one := all[0]
		d, share, ok := one.Difference()
		v, _ := one.Compared()
		near := func(a, b, of float64) bool {
			return math.IsNaN(a) && math.IsNaN(b) || math.Abs(a-b) <= 0.02*math.Abs(b)+1e-4*of
		}
		if one.Node.Address.String() != c.address || !ok || !near(d, c.d, v.X) || !near(share, c.share, 1) || one.Agrees() != c.agreement {
			t.Errorf("%s: %s, %v, %v, %q", c.what, one.Node.Address, d, share, one.Agrees())
		}
	}
}

// What cannot be held against anything says why, in words; it is never dropped.
func TestStatedThatCannotBeCompared(t *testing.T) {
	for _, c := range []struct {
		what, entry, says string
		compared          bool
	}{
		{"wrong kind", entry("quantity", "tank.full_volume", "value", "0.785 m2"), "m2 is an area, a volume is wanted here", false},
		{"no unit", entry("quantity", "tank.full_volume", "value", "785"), "cannot be read as volume", false},
		{"no number", entry("quantity", "tank.full_volume", "value", "plenty"), "cannot be read as volume", false},
		{"a truth", entry("quantity", "tank.full_volume", "value", "true"), "cannot be read as volume", false},
		{"percents of a plain number", entry("quantity", "water.ph_lowest", "value", "12 %"), "cannot be read as plain number", false},
		{"no such quantity", entry("quantity", "tank.depth", "value", "700 mm"), "nothing called `depth` is worked out for tank", false},
		{"no such subject", entry("quantity", "tnak.full_volume", "value", "785 L"), "nothing is worked out for `tnak`", false},
		{"a case in which it is not worked out", entry("quantity", "tank.inflow", "case", "rain", "value", "1000 L/h"), "`tank.inflow` is not worked out in the case rain; it is in run_least, run_clean", false},
		{"another substance: 44.3 mg/L NO3 and 10 mg/L N are the same water", entry("quantity", "water.nitrate_level", "value", "44.3 mg/L NO3"), "it is stated as NO3, and worked out here as N: give it as N", false},
		{"a substance where none is meant", entry("quantity", "water.salt", "value", "1 mg/L Na"), "leave it out", false},
		{"a number that is missing here", entry("quantity", "tank.freeboard", "value", "100 mm", "tolerance", "5 %"), "/vessels/tank/form/cylinder/height", false},
		{"a tolerance of another kind", entry("quantity", "tank.full_volume", "value", "785 L", "tolerance", "5 mm"), "how far off it may be cannot be read", true},
		{"a tolerance below zero", entry("quantity", "tank.full_volume", "value", "785 L", "tolerance", "-5 L"), "write `5 L` in place of `-5 L`", true},
		{"a share below zero", entry("quantity", "tank.full_volume", "value", "785 L", "tolerance", "-5 %"), "how far off it may be cannot be read", true},
		{"a fact that is not known", entry("quantity", "tank.guarded", "value", "true"), "/air", false},
	} {
		all := readStated(t, "stated", c.entry)
		if len(all) != 1 {
			t.Errorf("%s: %d entries", c.what, len(all))
			continue
		}
		_, ok := all[0].Compared()
		if text := strings.Join(all[0].Missing, "; "); !strings.Contains(text, c.says) || ok != c.compared {
			t.Errorf("%s: compared %v, %s", c.what, ok, text)
		}
		if all[0].Agrees() != Apart {
			t.Errorf("%s: it agrees", c.what)
		}
	}
}

func TestStatedFacts(t *testing.T) {
	for value, want := range map[string]Agreement{"true": SameWord, "yes": SameWord, "false": Apart, "no": Apart} {
		one := readStated(t, "stated", entry("quantity", "tank.backup_starts", "value", value))[0]
		if one.Fact == nil || one.Agrees() != want || len(one.Missing) > 0 {
			t.Errorf("%s: %+v", value, one)
		}
	}
}

// A reading is doubtful by its spread, so its range need only touch that of the
// sources; a tolerance is leave to differ and widens nothing.
func TestMeasured(t *testing.T) {
	reading := func(list, key, value, off string) Stated {
		return readStated(t, list, entry("quantity", "tank.inflow", "value", value, key, off, map[string]string{"measured": "with", "stated": "working"}[list], "bucket and watch"))[0]
	}
	for _, c := range []struct {
		one  Stated
		want Agreement
	}{
		{reading("measured", "spread", "1050 L/h", "30 L/h"), WithinSpread},
		{reading("measured", "spread", "1050 L/h", "29 L/h"), Apart},
		{reading("measured", "spread", "1050 L/h", "49 L/h"), WithinTolerance},
		{reading("stated", "tolerance", "1050 L/h", "30 L/h"), Apart},
		{reading("stated", "tolerance", "1050 L/h", "49 L/h"), WithinTolerance},
	} {
		if got := c.one.Agrees(); got != c.want {
			t.Errorf("%+v: %q, want %q", c.one, got, c.want)
		}
		if c.one.Measured != (c.one.With != "") || c.one.Measured == (c.one.Working != "") {
			t.Errorf("%+v", c.one)
		}
	}
}

func TestStatedStandInTheOrderOfTheFile(t *testing.T) {
	s, problems := system.Read("bench.yaml", []byte(statedFile+"measured:\n"+entry("quantity", "tank.inflow", "value", "1 L/h")+
		"stated:\n"+entry("quantity", "tank.inflow", "value", "2 L/h")+entry("quantity", "tank.depth", "value", "3 mm")))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	var got []string
	for _, c := range StatedIn(s, figures()) {
		got = append(got, c.Text)
	}
	if want := []string{"1 L/h", "2 L/h", "3 mm"}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// Whatever a file states, nothing panics, every entry comes back once with a
// number to compare or a reason, and no number is but finite.
func FuzzStated(f *testing.F) {
	for _, seed := range [][5]string{
		{"tank.full_volume", "", "785 L", "5 %", "7 L"}, {"tank.inflow", "run_clean", "264 gal(US)/h", "1 L/h", "-1"},
		{"water.nitrate_level", "always", "44.3 mg/L NO3", "1e9 %", "1 mg/L N"}, {"water.warmest", "", "-459.67 degF", "1 degC", "%"},
		{"tank.backup_starts", "", "true", "", ""}, {"tank.height", "run_clean", "1000000000000 m", "0 %", "1/2 in"},
		{"settler.well.fixings.chloride_share", "rain", "0.12", "0.000000000000001", ""}, {"a.b", "", "", "\x00", "\xff"},
	} {
		f.Add(seed[0], seed[1], seed[2], seed[3], seed[4])
	}
	f.Fuzz(func(t *testing.T, address, kase, value, tolerance, spread string) {
		keys := []string{"quantity", address, "value", value}
		if kase != "" {
			keys = append(keys, "case", kase)
		}
		text := statedFile + "stated:\n" + entry(append(keys, "tolerance", tolerance)...) + "measured:\n" + entry(append(keys, "spread", spread)...)
		s, _ := system.Read("fuzz.yaml", []byte(text))
		if s == nil {
			return
		}
		all := StatedIn(s, figures())
		if want := len(s.Items("/stated")) + len(s.Items("/measured")); len(all) != want {
			t.Fatalf("%d of %d entries", len(all), want)
		}
		for _, c := range all {
			d, share, ok := c.Difference()
			if !ok && c.Fact == nil && len(c.Missing) == 0 {
				t.Errorf("%+v says nothing", c)
			}
			if math.IsNaN(d) || math.IsInf(d, 0) || math.IsInf(share, 0) || c.Off != nil && !(*c.Off >= 0 && *c.Off < math.Inf(1)) {
				t.Errorf("%+v: %v, %v", c, d, share)
			}
			c.Agrees()
		}
	})
}
