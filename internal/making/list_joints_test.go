package making

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

const twoBends = "{intake: {at: 900 mm, facing: level}}, {across: 200 mm}, {bend: 90 deg}, {across: 600 mm}, {bend: 90 deg}, {fall: fit}, {outlet: {at: 400 mm, facing: down}}"

// How long cement wants before water: the cautious maker, with the others as the spread.
//
// Source: a US pipe maker's technical manual of plastic pipe, p. 96, cure times to 180 psi by size group and temperature
// (60-100, 40-60 and 0-40 degF); half as long again above 60 % humidity.
func TestCuringOfEachJoint(t *testing.T) {
	for _, c := range []struct{ size, air, want string }{
		{"1 in", "temperature: 18 degC, humidity: 55 %", "60 min"},
		{"1-1/2 in", "temperature: 18 degC, humidity: 55 %", "2 h"},
		{"3 in", "temperature: 18 degC, humidity: 55 %", "2 h"},
		{"4 in", "temperature: 18 degC, humidity: 55 %", "6 h"},
		{"1-1/2 in", "temperature: 18 degC, humidity: 75 %", "3 h"},
		{"4 in", "temperature: 18 degC, humidity: 75 %", "9 h"},
		{"1 in", "temperature: 8 degC, humidity: 55 %", "2 h"},
		{"1-1/2 in", "temperature: 8 degC, humidity: 55 %", "4 h"},
		{"4 in", "temperature: 8 degC, humidity: 55 %", "12 h"},
		{"1 in", "temperature: -5 degC, humidity: 55 %", "8 h"},
		{"1-1/2 in", "temperature: -5 degC, humidity: 55 %", "16 h"},
		{"1 in", "humidity: 55 %", "not known: the file does not say /making/temperature"},
		{"1 in", "temperature: 45 degC, humidity: 55 %", "not known: the table holds from -18 to 38 degC and for pipe of up to 8 in"},
	} {
		b := listed(t, shed(fmt.Sprintf(schedule40, c.size), twoBends, "making: {"+c.air+"}\n"))
		if got, _, _ := strings.Cut(b.Joints[0].Cure, " ("); got != c.want {
			t.Errorf("%s, %s: %q, not %q", c.size, c.air, got, c.want)
		}
		if len(b.Joints) != 4 {
			t.Errorf("%d joints at two bends, not four", len(b.Joints))
		}
	}
}

// Behind a blocked line the water stands at the rim of the vessel above; a pump adds what it gives against a shut valve.
//
// Source: hydrostatics, worked by hand from heights in the file.
func TestHeadOfEachJoint(t *testing.T) {
	b := listed(t, shed(fmt.Sprintf(schedule40, "1 in"), twoBends, ""))
	for i, want := range []float64{0.1, 0.1, 0.1, 0.1} { // rim at 2 m, pipe at 1.9 m
		about(t, "head, m", b.Joints[i].Head.X, want, 1e-9)
	}
	pumped := strings.Replace(shed(fmt.Sprintf(schedule40, "1 in"), "{intake: {at: 50 mm}}, {pump: main}, {rise: 1 m}, {union: {}}, {rise: fit}, {bend: 90 deg}, {across: 300 mm}, {bend: 90 deg}, {fall: 100 mm}, {outlet: {at: 1 m, facing: down}}",
		"pumps: {main: {shut_off: 3 m, open_flow: 2000 L/h}}\n"), "{from: tank, to: sump,", "{from: sump, to: tank,", 1)
	b = listed(t, pumped)
	heads := map[string]float64{"run/2": 0.8 + 3 - 0.05, "run/3": 0.8 + 3 - 1.05, "run/5": 0.8 + 3 - 2.1} // rim of the sump at 0.8 m
	for _, j := range b.Joints {
		if want, there := heads[j.Piece]; there {
			about(t, j.Piece+", head, m", j.Head.X, want, 1e-9)
			delete(heads, j.Piece)
		}
	}
	if len(heads) > 0 {
		t.Errorf("no joints at %v", heads)
	}
}

// First what is fixed for good, then what waits until its pipe is through a wall, at last what comes apart.
//
// Source: common practice, no source: a fitting is wider than the hole that its pipe goes through.
func TestOrderOfAssembly(t *testing.T) {
	pieces := "{intake: {at: 500 mm, facing: level}}, {across: 100 mm}, {bend: {angle: 90 deg, joint: pinned}}, {across: 100 mm}, {bend: 90 deg}, {across: 200 mm}, " +
		"{through: {wall_of: tank, at: 500 mm, seal: {hole: 44.5 mm}}}, {across: 300 mm}, {bend: 90 deg}, {fall: fit}, {outlet: {at: 400 mm, facing: down}}"
	b := listed(t, shed(fmt.Sprintf(schedule40, "1 in"), pieces, ""))
	var got []string
	for i, j := range b.Joints {
		if j.Order != i+1 {
			t.Errorf("the joint at %s is number %d in place %d", j.Piece, j.Order, i+1)
		}
		got = append(got, j.Piece)
	}
	want := []string{"run/3", "run/4", "run/8", "run/9", "run/5", "run/2"}
	if !slices.Equal(got, want) {
		t.Errorf("the order is %v, not %v", got, want)
	}
	if wait := b.Joints[4]; wait.Note == "" || wait.ComesApart || wait.Before != "bend of 90 deg" {
		t.Errorf("%+v does not wait for its pipe", wait)
	}
	if dry := b.Joints[5]; !dry.ComesApart || dry.Kind != "pinned" || dry.Cure != "" {
		t.Errorf("%+v does not come apart", dry)
	}
	silent := listed(t, strings.Replace(shed(fmt.Sprintf(schedule40, "1 in"), twoBends, ""), "joints: cemented, ", "", 1))
	if j := silent.Joints[0]; j.Kind != "" || !slices.Contains(silent.Missing, "/lines/run/joints") {
		t.Errorf("a joint that is not stated is %q, missing %v", j.Kind, silent.Missing)
	}
}

// Cement for joints: so many to the quart.
//
// Source: a US pipe maker's technical manual of plastic pipe, p. 96, joints to the US quart (0.946 L) of cement; twice as many of primer.
func TestCementForJoints(t *testing.T) {
	for inches, joints := range map[float64]int{0.5: 300, 0.75: 200, 1: 125, 1.5: 90, 2: 60, 3: 40, 4: 30, 6: 10} {
		v, why := CementUsed(inches, joints)
		about(t, fmt.Sprint(inches, " in, L"), 1000*v, 0.946, 0.001)
		if why != "" {
			t.Error(why)
		}
	}
	for _, bad := range []float64{0, -1, 8} {
		if v, why := CementUsed(bad, 1); v == v || why == "" {
			t.Errorf("%v in takes %v", bad, v)
		}
	}
	b := listed(t, shed(fmt.Sprintf(schedule40, "2 in"), twoBends, ""))
	i := slices.IndexFunc(b.Parts, func(p Part) bool { return p.Name == "solvent cement" })
	about(t, "four joints of 2 in, mL", 1e6*b.Parts[i].Volume, 4*946.35/60, 0.01)
	about(t, "primer, mL", 1e6*b.Parts[i+1].Volume, 2*946.35/60, 0.01)
}
