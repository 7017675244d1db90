package settling

import (
	"math"
	"strings"
	"testing"

	"dryfit/internal/working"
)

// asked is the flow in the solids line: 900 L/h, where the drum asks for up to 1000.
const asked = 900e-3 / 3600

func value(t *testing.T, l *working.Ledger, subject, name string) float64 {
	t.Helper()
	n := l.Find(working.Address{Subject: subject, Name: name, Case: working.Always})
	if n == nil {
		n = l.Find(working.Address{Subject: subject, Name: name, Case: working.RunClean, Water: "usual"})
	}
	if n == nil {
		t.Fatalf("there is no %s of %s", name, subject)
	}
	v, ok := n.Value()
	if !ok {
		t.Fatalf("%s of %s: %v", name, subject, n.Gaps())
	}
	return v.X
}

func fact(l *working.Ledger, subject, name string) (string, []string) {
	for _, f := range l.Facts() {
		if f.Subject == subject && f.Name == name {
			return f.Word, f.Missing
		}
	}
	return "not noted", nil
}

// A weak pump hides nothing: where more is asked than it gives, what is asked counts.
func TestLoadingIsHeldToTheGreaterFlow(t *testing.T) {
	near(t, "asked", value(t, changed(t, asked), "settler", "greatest_inflow"), 1000e-3/3600, 1e-12)
	weak := changed(t, asked, "working_flow: {least: 900 L/h, most: 1000 L/h}", "working_flow: {least: 500 L/h, most: 600 L/h}")
	near(t, "given", value(t, weak, "settler", "greatest_inflow"), 900e-3/3600, 1e-12)
}

func TestEveryPublishedLoadingHasItsShare(t *testing.T) {
	l := changed(t, asked)
	rate := value(t, l, "settler", "greatest_overflow_rate")
	near(t, "share of 3.1 mm/s", value(t, l, "settler", "overflow_over_radial_trial"), rate/0.0031, 1e-9)
	n := 0
	for _, d := range Quantities {
		if strings.HasPrefix(d.Name, "overflow_over_") {
			value(t, l, "settler", d.Name)
			n++
		}
	}
	if n < 8 {
		t.Errorf("only %d published loadings are shown", n)
	}
}

func TestWhereTheInletEnds(t *testing.T) {
	l := changed(t, asked)
	near(t, "mouth over the lip", value(t, l, "solids-run", "inlet_above_lip"), (540-305)/42.85, 0.02)
	near(t, "mouth under water", value(t, l, "solids-run", "inlet_under_water"), (617-540)/42.85, 0.01)
	for name, pairs := range map[string][]string{
		"no":  {"to: settler.well", "to: settler"},
		"yes": nil,
	} {
		if word, _ := fact(changed(t, asked, pairs...), "solids-run", "inlet_in_well"); word != name {
			t.Errorf("%v: in the well %q", pairs, word)
		}
	}
	if word, _ := fact(changed(t, asked, "outlet: {at: 540 mm, facing: up}", "outlet: {at: 540 mm}"), "solids-run", "inlet_faces_up"); word != "yes" {
		t.Errorf("a mouth at the end of a rise looks up: %q", word)
	}
}

func TestWeirKinds(t *testing.T) {
	const weir = "weir: {notched_ring: {across: 400 mm, crest_at: 605 mm, notches: 12, angle: 90 deg}}"
	v := value(t, changed(t, asked), "settler", "weir_tilt_allowed")
	near(t, "notches", v, 0.2755*0.012, 1e-5)
	ring := changed(t, asked, weir, "weir: {ring: {across: 400 mm, crest_at: 615 mm}}")
	near(t, "ring", value(t, ring, "settler", "weir_tilt_allowed"), 0.4540*0.002, 1e-6)
	for put, want := range map[string]string{weir: "yes", "weir: {side_pipe: {}}": "no", "note: a drum": ""} {
		word, missing := fact(changed(t, asked, weir, put), "settler", "weir_edge")
		if word != want || (want == "") != (len(missing) > 0) {
			t.Errorf("%s: %q, missing %v", put, word, missing)
		}
	}
}

func TestDrawDown(t *testing.T) {
	l := changed(t, asked)
	near(t, "over the sludge", value(t, l, "settler", "decant_over_sludge"), 0.060, 1e-9)
	near(t, "share left", value(t, l, "settler", "decant_share"), 170.0/617, 1e-9)
	near(t, "litres left", value(t, l, "settler", "decant_left"), math.Pi/4*0.463*0.463*0.170, 1e-9)
	none := changed(t, asked, "duty: draw-down", "duty: flush")
	if word, _ := fact(none, "settler", "has_draw_down"); word != "no" {
		t.Errorf("without one there is a draw-down: %q", word)
	}
	if n := changed(t, asked, "    sludge: {full_at: 110 mm}\n", "").Find(working.Address{Subject: "settler", Name: "decant_over_sludge", Case: working.Always}); len(n.Gaps()) != 1 || n.Gaps()[0].Pointer != "/vessels/settler/sludge/full_at" {
		t.Errorf("the height of the sludge is not asked for: %v", n.Gaps())
	}
}

func TestWhatComesOut(t *testing.T) {
	for _, c := range []struct{ old, put, name, want string }{
		{"comes_out: true", "comes_out: false", "well_comes_out", "no"},
		{", comes_out: true", "", "well_comes_out", ""},
		{"tail_at: 85 mm}", "tail_at: 85 mm, held_by: cement}", "drain_comes_out", "no"},
		{"tail_at: 85 mm}", "tail_at: 85 mm}", "drain_comes_out", "yes"},
		{"joints: uncemented\n    pieces:\n      - intake: {at: 170 mm}", "joints: cemented\n    pieces:\n      - intake: {at: 170 mm}", "draw_down_comes_out", "no"},
		{"joints: uncemented\n    pieces:\n      - intake: {at: 170 mm}", "pieces:\n      - intake: {at: 170 mm}", "draw_down_comes_out", ""},
		{"duty: draw-down", "duty: flush", "draw_down_comes_out", "none"},
		{"stirred: true, ", "", "floor_stirred", ""},
		{", tool: brush on a long handle", "", "long_tool", "no"},
	} {
		word, missing := fact(changed(t, asked, c.old, c.put), "settler", c.name)
		if word != c.want || (c.want == "") != (len(missing) > 0) {
			t.Errorf("%s for %s: %s is %q, missing %v", c.put, c.old, c.name, word, missing)
		}
	}
}
