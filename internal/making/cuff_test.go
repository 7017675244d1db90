package making

import (
	"math"
	"math/rand/v2"
	"testing"
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s is %v, not %v within %v", what, got, want, tolerance)
	}
}

// The Ruess relation at 60 Shore A is 5.88 MPa. Copies that take the logarithm
// to base e give 2.16 MPa: that must not come out.
func TestStiffnessAfterRuess(t *testing.T) {
	e, _ := YoungHigh(60)
	near(t, "E at 60 Shore A", e/1e6, 5.88, 0.01)
	if wrong := math.Exp(0.0235*60-0.6403) * 1e6; math.Abs(e-wrong) < 1e6 {
		t.Errorf("E is that of the base-e misprint, %v", wrong)
	}
}

// Gent's relation at 40, 50, 60 and 70 Shore A is 1.69, 2.46, 3.61 and 5.52 MPa (from memory).
func TestStiffnessAfterGent(t *testing.T) {
	for shore, mpa := range map[float64]float64{40: 1.69, 50: 2.46, 60: 3.61, 70: 5.52} {
		e, _ := YoungLow(shore)
		near(t, "E", e/1e6, mpa, 0.01)
	}
}

// Lindley's table of measured moduli (as quoted in Designing with rubber) has 830
// psi at 65 and 1340 psi at 75 IRHD: both lie between the two relations.
func TestLindleysTableLiesBetween(t *testing.T) {
	for shore, psi := range map[float64]float64{65: 830, 75: 1340} {
		low, _ := YoungLow(shore)
		high, _ := YoungHigh(shore)
		if e := psi * 6894.757; e < low || e > high {
			t.Errorf("at %v, %v is not between %v and %v", shore, e, low, high)
		}
	}
}

// With its end at the foot and so long that shear does not count, the cuff is the
// cantilever of every handbook: d = F L^3/(3 E I) (Gere and Goodno, Mechanics of
// Materials, table of deflections, case of a load at the free end), and its end
// turns by F L^2/(2 E I).
func TestLongCuffIsACantilever(t *testing.T) {
	c := Cuff{PipeOutside: 0.05, Wall: 0.004, Span: 3, Young: 4e6, WallSpring: math.Inf(1)}
	i := math.Pi / 64 * (math.Pow(0.058, 4) - math.Pow(0.05, 4))
	got, _ := c.Compliance()
	want := math.Pow(3, 3) / (3 * 4e6 * i)
	near(t, "d over F", got/want, 1, 0.003)
	near(t, "turn", c.Tilt(1), 9/(2*4e6*i), 1e-9)
}

// Castigliano's theorem on the bending part: d = dU/dF with U the integral of
// (F x)^2/(2 E I) over the cuff, x from the foot's edge; summed numerically.
func TestComplianceByCastigliano(t *testing.T) {
	for range 50 {
		c := Cuff{PipeOutside: 0.03 + rand.Float64()*0.08, Wall: 0.003 + rand.Float64()*0.003, Span: 0.02 + rand.Float64()*0.05,
			ToFoot: rand.Float64() * 0.1, Young: 3e6 + rand.Float64()*3e6, WallSpring: 20 + rand.Float64()*80}
		out := c.PipeOutside + 2*c.Wall
		i := math.Pi / 64 * (math.Pow(out, 4) - math.Pow(c.PipeOutside, 4))
		const n = 20000
		bend, step := 0.0, c.Span/n
		for k := range n {
			x := c.ToFoot + (float64(k)+0.5)*step
			bend += x * x / (c.Young * i) * step
		}
		shear := c.Span / (0.5 * c.Young / 3 * math.Pi * (c.PipeOutside + c.Wall) * c.Wall)
		arm := c.Span + c.ToFoot
		got, _ := c.Compliance()
		near(t, "compliance", got/(bend+shear+arm*arm/c.WallSpring), 1, 1e-6)
	}
}

func TestTheCuffPushesTheWayItIsBent(t *testing.T) {
	c := Cuff{PipeOutside: 0.04825, Wall: 0.0045, Span: 0.03, ToFoot: 0.08, Young: 4.6e6, WallSpring: math.Inf(1)}
	down, _ := c.Force(0.006)
	up, _ := c.Force(-0.004)
	if down <= 0 || up >= 0 || c.Tilt(down) <= 0 {
		t.Errorf("6 mm higher pushes with %v N, 4 mm lower with %v N", down, up)
	}
	c.Span = 0
	if f, why := c.Force(0.006); !math.IsNaN(f) || why == "" {
		t.Errorf("a cuff without a span pushes with %v N, %q", f, why)
	}
}

// A pipe end lifted a quarter of its bore opens as much as the bore itself: the
// rule of the trade for foot valves and poppet valves, lift = D/4 (textbook; from memory).
func TestCurtainOfAQuarterBore(t *testing.T) {
	share, _ := CurtainShare(0.0429/4, 0, 0.0429)
	near(t, "share", share, 1, 1e-12)
}

// Rubber that relaxes helps less with the years; a cuff that lifts is at its worst
// when new, and no relaxation may turn that into a push: 1.2 N up against 0.7 N of
// weight leaves the drain afloat by half a newton.
func TestRelaxationNeverHelps(t *testing.T) {
	near(t, "pushing", ForceLeft(20, 0.5, 0.7), 10.7, 1e-12)
	near(t, "lifting", ForceLeft(-1.2, 0.5, 0.7), -0.5, 1e-12)
}
