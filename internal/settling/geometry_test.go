package settling

import (
	"math"
	"testing"
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s is %v, not %v within %v", what, got, want, tolerance)
	}
}

// Davidson and Summerfelt 2005, Aquacultural Engineering 33:47-61, give the
// loading of their radial-flow settler as 0.0031 m3/s per m2, at about 340 L/min
// (abstract); a round settler of that area is a 5 ft tank, 1.524 m.
func TestOverflowRateOfAPublishedSettler(t *testing.T) {
	area, _ := RingArea(1.524, 0)
	rate, _ := OverflowRate(0.340/60, area)
	near(t, "overflow rate", rate, 0.0031, 0.00003)
}

// Piper et al. 1982, Fish Hatchery Management: the clarifier of the Jordan River
// hatchery has two bays of 30 by 100 ft for 600 gal(US)/min; over a plan area of
// 6000 ft2 that is 0.1 gal(US)/min on a square foot, 0.0679 mm/s.
func TestOverflowRateOfAHatcheryClarifier(t *testing.T) {
	rate, _ := OverflowRate(600*3.785411784e-3/60, 6000*0.3048*0.3048)
	near(t, "overflow rate", rate, 0.1*0.67910e-3, 1e-8)
}

// WEF Manual of Practice No. 8 takes the feed well of a clarifier to half the
// side water depth: 4 m of water, well 2 m deep (the default of its range 0.30 to 0.75).
func TestLipAtHalfTheDepth(t *testing.T) {
	f, _ := LipDepthFraction(4, 2, 0)
	near(t, "fraction", f, 0.5, 0)
	f, _ = LipDepthFraction(0.3+0.6, 0.3+0.3, 0.3)
	near(t, "fraction over a datum", f, 0.5, 1e-12)
}

func TestWhatCannotBeHasAReason(t *testing.T) {
	for _, got := range []func() (float64, string){
		func() (float64, string) { return RingArea(0.5, 0.5) },
		func() (float64, string) { return RingArea(0, 0) },
		func() (float64, string) { return OverflowRate(1, 0) },
		func() (float64, string) { return LipDepthFraction(0.3, 0.2, 0.3) },
	} {
		if y, why := got(); !math.IsNaN(y) || why == "" {
			t.Errorf("%v, %q", y, why)
		}
	}
}

// A cone of 60 degrees at its point is as wide as 2 tan(30 deg) = 1.1547 of its
// height (table of tangents), at every height the same share.
func TestConeOfSixtyDegrees(t *testing.T) {
	wide, _ := ConeDiameter(1.1547, 1, 0.5)
	near(t, "diameter half way up", wide, 0.57735, 1e-5)
	wide, _ = ConeDiameter(1.1547, 1, 3)
	near(t, "diameter above the cone", wide, 1.1547, 0)
	if d, why := ConeDiameter(1, 0, 1); !math.IsNaN(d) || why == "" {
		t.Errorf("a cone without height is %v wide", d)
	}
}
