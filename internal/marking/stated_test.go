package marking

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// three is a guide that asks for flow, area of the ring and overflow rate, which is flow over area.
func three(edit func(*StatedRight)) *Guide {
	g := &Guide{RoundTo: 0.5, Total: 30}
	for _, one := range []struct {
		name, of, unit string
		kind           quantity.Kind
	}{{"flow", "pumped_returns", "L/h", quantity.Flow}, {"ring_area", "radial_flow_settlers", "m2", quantity.Area}, {"overflow_rate", "radial_flow_settlers", "mm/s", quantity.Velocity}} {
		task := &StatedRight{Quantity: one.name, Of: one.of, Kind: one.kind, Unit: one.unit, NoUnit: 2, BadUnit: 4, NoWork: 1,
			Bands: []Band{{Tolerance{How: Relative, T: 0.02}, 10}, {Tolerance{How: Relative, T: 0.1}, 5}}}
		if edit != nil {
			edit(task)
		}
		g.Items = append(g.Items, &Item{ID: one.name, Title: one.name, Marks: 10, Task: task})
	}
	return g
}

func stating(flow, area, rate string) []string {
	var out []string
	for _, one := range [][2]string{{"riser.flow, case: run_clean", flow}, {"settler.ring_area", area}, {"settler.overflow_rate, case: run_clean", rate}} {
		if one[1] != "" {
			out = append(out, fmt.Sprintf("{quantity: %s, value: %s, working: by hand}", one[0], one[1]))
		}
	}
	return out
}

func marksOf(m *Marked) []float64 {
	var out []float64
	for _, l := range m.Lines {
		out = append(out, l.Marks)
	}
	return out
}

// The right values are worked by hand: the ring is pi/4 (0.463^2 - 0.14^2) = 0.15297 m2; with the flow of the loop, 1109.7 L/h where
// curve and pipes agree, the water rises by 2.015 mm/s, and with 1000 L/h by 1.816 mm/s. An area of 0.6119 m2 has both diameters for radii.
func TestErrorsAreCarriedForward(t *testing.T) {
	for _, c := range []struct {
		what, flow, area, rate string
		edit                   func(*StatedRight)
		want                   [3]float64
	}{
		{what: "all right", flow: "1110 L/h", area: "0.153 m2", rate: "2.015 mm/s", want: [3]float64{10, 10, 10}},
		{what: "flow nine percent off, and what follows from it", flow: "1010 L/h", area: "0.153 m2", rate: "1.834 mm/s", want: [3]float64{5, 10, 10}},
		{what: "a slip in the area is charged once", flow: "1110 L/h", area: "0.612 m2", rate: "0.5038 mm/s", want: [3]float64{10, 0, 10}},
		{what: "the rate right from the inputs, whatever was stated before", flow: "1110 L/h", area: "0.612 m2", rate: "2.015 mm/s", want: [3]float64{10, 0, 10}},
		{what: "one of two wrong values used", flow: "2220 L/h", area: "0.612 m2", rate: "0.5038 mm/s", want: [3]float64{0, 0, 10}},
		{what: "both used", flow: "2220 L/h", area: "0.612 m2", rate: "1.0077 mm/s", want: [3]float64{0, 0, 10}},
		{what: "only the rate", rate: "2.015 mm/s", want: [3]float64{0, 0, 10}},
		{what: "a second slip after the first", flow: "1110 L/h", area: "0.612 m2", rate: "1.0077 mm/s", want: [3]float64{10, 0, 0}},
		{what: "not carried where the guide says no", flow: "1110 L/h", area: "0.612 m2", rate: "0.5038 mm/s", edit: func(s *StatedRight) { s.Alone = true }, want: [3]float64{10, 0, 0}},
		{what: "no unit: taken in that of the guide, and 2 marks off", flow: "1110", area: "0.153", rate: "2.015", want: [3]float64{8, 8, 8}},
		{what: "a unit of another kind: 4 marks off", flow: "1110 mm", area: "0.153 m3", rate: "2.015 L/h", want: [3]float64{6, 6, 6}},
		{what: "an unknown unit", flow: "1110 flops", area: "0.153 m2", rate: "2.015 mm/s", want: [3]float64{6, 10, 10}},
		{what: "another unit of the kind", flow: "18.5 L/min", area: "1530 cm2", rate: "7.254 m/h", want: [3]float64{10, 10, 10}},
		{what: "never below nothing", flow: "1010", area: "0.153 m2", rate: "2.015 mm/s", edit: func(s *StatedRight) { s.NoUnit = 8 }, want: [3]float64{0, 10, 10}},
		{what: "no number", flow: "plenty", area: "0.153 m2", rate: "2.015 mm/s", want: [3]float64{0, 10, 10}},
	} {
		r := surveyed(t, stating(c.flow, c.area, c.rate))
		m := Mark(three(c.edit), Submission{Review: r})
		if got := marksOf(m); got[0] != c.want[0] || got[1] != c.want[1] || got[2] != c.want[2] {
			t.Errorf("%s: %v, want %v\n%v\n%v\n%v", c.what, got, c.want, m.Lines[0].Reasons, m.Lines[1].Reasons, m.Lines[2].Reasons)
		}
	}
}

// Marks are taken off where nothing is said of the working.
func TestWorkingIsAskedFor(t *testing.T) {
	r := surveyed(t, []string{"{quantity: settler.ring_area, value: 0.153 m2}"})
	line := Mark(three(nil), Submission{Review: r}).Lines[1]
	if line.Marks != 9 || !strings.Contains(strings.Join(line.Reasons, ";"), "1 mark less since it is not said how it was found") {
		t.Errorf("%v: %v", line.Marks, line.Reasons)
	}
}

// A slip after a slip is looked for from what was stated: half the rate that follows from the area stated.
func TestASlipIsNamedFromWhatWasStatedBefore(t *testing.T) {
	r := surveyed(t, stating("1110 L/h", "0.612 m2", "1.0077 mm/s"))
	w := Mark(three(nil), Submission{Review: r}).Lines[2].Worked
	if w.Carried == nil || math.Abs(*w.Carried-0.0005038) > 1e-6 || len(w.Slips) != 1 || w.Slips[0].Name != factorTwo {
		t.Errorf("%+v", w)
	}
}

// The numbers of students come in many forms; none makes marking panic, and what is read is finite.
func FuzzReadNumber(f *testing.F) {
	for _, text := range []string{"1110 L/h", "0.153", "-2", "1e400", "1,5 mm", "12 %", "", "NaN", "Inf mm/s", "9999999999999999999999999999999 m", "½ in", "3 1/2 in", "\x00", "0"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, kind := range quantity.Kinds() {
			unit := ""
			if units := kind.Units(); len(units) > 0 {
				unit = units[0]
			}
			n := readNumber(text, kind, unit)
			if n.read && (math.IsNaN(n.x) || math.IsInf(n.x, 0) || math.IsNaN(n.half) || math.IsInf(n.half, 0)) {
				t.Errorf("%q as %s: %+v", text, kind, n)
			}
		}
	})
}

// Losses in fittings differ between sources: a value in their range counts where the guide says so, and just outside it does not.
func TestWithinTheSources(t *testing.T) {
	r := surveyed(t, nil)
	k := &marker{Review: r}
	v, _ := working.InCase(k.Ledger.Of("solids-run", "head_loss"), "run_clean")[1].Value()
	if !v.Spread() || v.High < 1.1*v.X {
		t.Fatalf("%+v", v)
	}
	for _, c := range []struct {
		x       float64
		sources bool
		marks   float64
	}{{v.High * 0.999, true, 10}, {v.High * 1.01, true, 0}, {v.Low * 1.001, true, 10}, {v.Low * 0.99, true, 0}, {v.High * 0.999, false, 0}} {
		r := surveyed(t, []string{"{quantity: solids-run.head_loss, case: run_clean, value: " + quantity.FormatIn(quantity.Head, c.x, "mm", 6) + "}"})
		g := &Guide{RoundTo: 0.5, Items: []*Item{{ID: "loss", Marks: 10, Task: &StatedRight{
			Quantity: "head_loss", Of: "solids-run", Case: "run_clean", Kind: quantity.Head, Unit: "mm", Sources: c.sources, Bands: []Band{{Tolerance{How: Relative, T: 0.02}, 10}}}}}}
		if line := Mark(g, Submission{Review: r}).Lines[0]; line.Marks != c.marks {
			t.Errorf("%v of %+v: %v, %v", c.x, v, line.Marks, line.Reasons)
		}
	}
}

// What the guide does not ask for is charged nowhere, so nothing is carried forward from it; nor from nothing, nor from
// a value of the other sign.
func TestNothingIsBoughtByWhatIsCarried(t *testing.T) {
	for what, stated := range map[string][]string{
		"an inflow that nobody asked for": append(stating("1110 L/h", "", "9.99 mm/s"), "{quantity: settler.inflow, case: run_clean, value: 5502 L/h}"),
		"the same flow stated twice":      append(stating("1110 L/h", "", "9.99 mm/s"), "{quantity: riser.flow, case: run_clean, value: 5502 L/h}"),
		"a flow of nothing":               stating("0 L/h", "", "0 mm/s"),
		"a flow of the other sign":        stating("-1110 L/h", "", "-2.015 mm/s"),
		"an area that nobody asked for":   append(stating("1110 L/h", "", "0.504 mm/s"), "{quantity: settler.water_surface, case: run_clean, value: 0.612 m2}"),
	} {
		r := surveyed(t, stated)
		if line := Mark(three(nil), Submission{Review: r}).Lines[2]; line.Marks != 0 {
			t.Errorf("%s: %v, %v", what, line.Marks, line.Reasons)
		}
	}
}

// A floor is meant for the size of the right value: about one that is carried forward and small it does not hold.
func TestTheFloorIsNotCarried(t *testing.T) {
	g := three(func(s *StatedRight) {
		for i := range s.Bands {
			if s.Kind == quantity.Velocity {
				s.Bands[i].Within.Floor = 0.0005 // half a millimetre a second
			}
		}
	})
	for rate, marks := range map[string]float64{"0.018 mm/s": 10, "0.4 mm/s": 0} { // 10 L/h on 0.153 m2 rise by 0.01816 mm/s
		r := surveyed(t, stating("10 L/h", "", rate))
		if line := Mark(g, Submission{Review: r}).Lines[2]; line.Marks != marks {
			t.Errorf("%s: %v, %v", rate, line.Marks, line.Reasons)
		}
	}
}

// Where the inputs do not say it, what was stated before may: the curve of the pump is gone, the flow is stated.
func TestCarriedWhereTheInputsDoNotSayIt(t *testing.T) {
	curve := "    curve: [[0 L/h, 1.75 m], [400 L/h, 1.66 m], [800 L/h, 1.40 m], [1000 L/h, 1.21 m], [1200 L/h, 0.97 m], [1500 L/h, 0.54 m], [1800 L/h, 0 m]]\n"
	r := surveyed(t, stating("1000 L/h", "0.153 m2", "1.816 mm/s"), curve, "")
	got := marksOf(Mark(three(nil), Submission{Review: r}))
	if got[0] != 0 || got[1] != 10 || got[2] != 10 {
		t.Errorf("%v", got)
	}
}

// Numbers in other notations are read as what they say, or not at all.
func TestNotationsOfNumbers(t *testing.T) {
	for text, want := range map[string]string{
		"822 L/h": "822 unit", "8.22e2 L/h": "822 unit", "8.22e2": "822 none", "822": "822 none", "822 mm": "822 bad", "0.153 m2": "0.153 bad",
		"1 000 L/h": "", "1e999 L/h": "", "0x336": "", "822 to 830 L/h": "", "1,000 L/h": "", "L/h": "", "-5 L/h": "-5 unit",
	} {
		n := readNumber(text, quantity.Flow, "L/h")
		got := ""
		if n.read {
			x, _ := quantity.Convert(quantity.Flow, n.x, "L/h")
			got = fmt.Sprint(quantity.Rounded(x), map[[2]bool]string{{false, false}: " unit", {true, false}: " none", {false, true}: " bad"}[[2]bool{n.noUnit, n.badUnit}])
		}
		if got != want {
			t.Errorf("%q is %q, want %q", text, got, want)
		}
	}
}
