package system

import (
	"slices"
	"strings"
	"testing"

	"dryfit/internal/quantity"
)

func TestBounds(t *testing.T) {
	for _, c := range []struct{ format, text, want string }{
		{"altitude", "-430 m", ""},
		{"altitude", "5100 m", ""},
		{"altitude", "8000 m", "higher than any town: is it 8000 ft? write at most 6000 m"},
		{"altitude", "-600 m", "lower than any shore: is it -600 ft? write -500 m or more"},
		{"area", "12000 m2", "more than a small loop has: is it 12000 cm2? write at most 5000 m2"},
		{"volume", "800 m3", "more than a small loop has: is it 800 L? write at most 500 m3"},
		{"volume", "-800 L", "this cannot be below zero: write 0 L or more"},
		{"velocity", "250 m/s", "more than a small loop has: is it 250 mm/s? write at most 20 m/s"},
		{"head", "1750 m", "more than a small loop has: is it 1750 mm? write at most 100 m"},
		{"pressure", "12 bar", ""},
		{"pressure", "15 MPa", "more than a small loop has: is it 15 kPa? write at most 4 MPa"},
		{"mass", "9500 t", "more than a small loop has: is it 9500 kg? write at most 100 t"},
		{"time-span", "600 week", "longer than ten years: is it 600 h? write at most 520 week"},
		{"temperature", "70 degC", "hotter than the water of a loop gets: is it 70 degF? write at most 60 degC"},
		{"temperature", "294 degC", "hotter than the water of a loop gets: is it 294 K? write at most 60 degC"},
		{"temperature", "21 K", "colder than the water of a loop gets: is it 21 degC? write -10 degC or more"},
		{"temperature", "-20 degC", "colder than the water of a loop gets: write -10 degC or more"},
		{"air-temperature", "-20 degC", ""},
		{"power", "60 kW", "more than a small loop has: is it 60 W? write at most 50 kW"},
		{"concentration", "60 g/L CaCO3", "more than the sea has of salt: is it 60 mg/L CaCO3? write at most 50 g/L"},
		{"concentration-or-none", "300 g/L", "more than the sea has of salt: is it 300 mg/L? write at most 50 g/L"},
		{"concentration-or-none", "none", ""},
		{"density", "1850 kg/m3", ""},
		{"fraction", "136 %", "more than the whole: write at most 100 %"},
		{"fraction", "-1 %", "this cannot be below zero: write 0 % or more"},
		{"fraction", "1", ""},
		{"gradient", "120 %", ""},
		{"angle", "400 deg", "more than a full turn: write at most 360 deg"},
		{"angle", "360 deg", ""},
		{"hardness", "160 ShoreA", "more than the scale has: write at most 100 ShoreA"},
		{"money", "-4.20 AUD", "this cannot be below zero: write 0 AUD or more"},
		{"current-or-none", "30 A", "more than a protective device trips at: is it 30 mA? write at most 3 A"},
		{"force", "2000 kN", "more than a small loop has: is it 2000 N? write at most 1000 kN"},
		{"stress", "800 GPa", "stiffer than steel: is it 800 MPa? write at most 250 GPa"},
		{"areal_feed", "60 kg/m2/d", "more than any bed takes: is it 60 g/m2/d? write at most 1 kg/m2/d"},
		{"length", "1 1/2 in", ""},
		{"length", "12,5 m", "the number has a decimal comma: write 12.5 m"},
		{"length-or-fit", "fitt", "a number must stand first: write a length, as in `1350 mm`, or the word `fit`"},
		{"length-or-fit", "250 m", "more than a small loop has: is it 250 mm? write at most 100 m"},
		{"area", "x", "a number must stand first: write an area, as in `1.2 m2`"},
		{"energy", "x", "a number must stand first: write an energy, as in `1.2 kWh`"},
		{"money", "x", "a number must stand first: write money, as in `12.50 NZD`"},
	} {
		problem, write := misfit(c.format, c.text)
		if got := strings.TrimPrefix(problem+": "+write, ": "); got != c.want {
			t.Errorf("%s as %s: got %q, want %q", c.text, c.format, got, c.want)
		}
	}
}

// TestEveryFormatHasBounds wants no quantity of the schema without a measure, and no measure without a use.
func TestEveryFormatHasBounds(t *testing.T) {
	rules, err := systemRules()
	if err != nil {
		t.Fatal(err)
	}
	used := map[string]bool{}
	var visit func(part any)
	visit = func(part any) {
		switch p := part.(type) {
		case map[string]any:
			if format, ok := p["format"].(string); ok {
				name, _, _ := strings.Cut(format, "-or-")
				used[name] = true
			}
			for _, below := range p {
				visit(below)
			}
		case []any:
			for _, below := range p {
				visit(below)
			}
		}
	}
	visit(rules.text)
	for name := range used {
		if _, bounded := measures[name]; !bounded && name != "id" && name != "date" {
			t.Errorf("the format %s has no bounds", name)
		}
	}
	for name, m := range measures {
		if !used[name] {
			t.Errorf("the schema has no format %s", name)
		}
		if m.from >= m.to || m.most == "" && m.kind != quantity.Money {
			t.Errorf("%s goes from %v to %v", name, m.from, m.to)
		}
	}
}

// signed are the keys that may carry a value below zero, where it means something.
var signed = []string{
	"stands_at", "sockets_at", "top_at", "crest_at", "at", "running", "lip_at", "floor_at", "tail_at", "right", "back", "dome", "altitude",
	"temperature", "air", "low", "usual", "high", "keeps", "warmer", "cooler", "stops_below", "coldest", "warmest",
}

// TestSlipsOfSignAndUnit puts a minus before each quantity of a sound file, and
// a number a thousand million high in its place: one problem comes of it, at that value.
func TestSlipsOfSignAndUnit(t *testing.T) {
	tried := 0
	for _, name := range []string{"quarry-road.yaml", "everything.yaml"} {
		s := mustRead(t, name, systemFile(t, name))
		visit(s.Document.root, "", func(n *node, pointer string) {
			number, unit, found := strings.Cut(n.text, " ")
			_, last, _ := cutLast(pointer)
			if n.form != text || !found || strings.Trim(number, "0123456789.") != "" || strings.Trim(number, "0.") == "" ||
				slices.Contains(free, last) || strings.Contains(pointer, "/title_block/") {
				return
			}
			var slips []string
			if !slices.Contains(signed, last) {
				slips = append(slips, "-"+n.text)
			}
			if !strings.Contains(pointer, "price") {
				slips = append(slips, "999999999 "+unit)
			}
			for _, slip := range slips {
				tried++
				_, problems := s.Edited(Edit{Pointer: pointer, Value: slip})
				if len(problems) != 1 || problems[0].Pointer != pointer {
					t.Errorf("%s, %s at %s for %q:\n%s", name, slip, pointer, n.text, table(problems))
				}
			}
		})
	}
	if tried < 500 {
		t.Errorf("only %d slips were tried", tried)
	}
}

// FuzzMisfit wants every value that is offered to be one that is taken.
func FuzzMisfit(f *testing.F) {
	var formats []string
	for name := range measures {
		formats = append(formats, name)
	}
	slices.Sort(formats)
	for i, name := range formats {
		f.Add(uint8(i), "-1 "+measures[name].kind.Example())
		for _, unit := range measures[name].kind.Units() {
			f.Add(uint8(i), "1350 "+unit)
			f.Add(uint8(i), "-99999999.5 "+unit)
		}
	}
	f.Fuzz(func(t *testing.T, which uint8, text string) {
		format := formats[int(which)%len(formats)]
		problem, write := misfit(format, text)
		if (problem == "") != (write == "") {
			t.Errorf("%q as %s: %q beside %q", text, format, problem, write)
		}
		if _, rest, ask := strings.Cut(write, "is it "); ask {
			offered, _, _ := strings.Cut(rest, "? ")
			if problem, _ := misfit(format, offered); problem != "" {
				t.Errorf("%q as %s: offers %q, %s", text, format, offered, problem)
			}
		}
	})
}
