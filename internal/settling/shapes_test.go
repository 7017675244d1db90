package settling

import (
	"math"
	"math/rand/v2"
	"testing"
)

// Where one side gives twice as much as the other, the ratio is two: the two functions are inverse.
func TestTiltAllowedIsTheInverseOfTheRatio(t *testing.T) {
	for range 200 {
		head, ratio, power := 0.002+rand.Float64()*0.05, 1+rand.Float64()*4, []float64{1.5, 2.5}[rand.IntN(2)]
		tilt, _ := TiltAllowed(head, ratio, power)
		got, _ := TiltRatio(head, tilt, power)
		near(t, "ratio", got/ratio, 1, 1e-9)
	}
	if d, _ := TiltAllowed(0, 2, 1.5); d != 0 {
		t.Errorf("a dry edge may hang %v m out of level", d)
	}
	if r, _ := TiltRatio(0.012, 0, 2.5); r != 1 {
		t.Errorf("a level edge gives %v times as much on one side", r)
	}
}

// The volume of a truncated cone by Pappus' second theorem: its area times the way of the centroid.
func TestFrustumByPappus(t *testing.T) {
	for range 100 {
		h, a, b := 0.1+rand.Float64(), rand.Float64(), rand.Float64()
		v, _ := FrustumVolume(h, a, b)
		r1, r2 := a/2, b/2
		area := h * (r1 + r2) / 2
		centroid := (r1*r1 + r1*r2 + r2*r2) / (3 * (r1 + r2))
		near(t, "volume", v/(area*2*math.Pi*centroid), 1, 1e-9)
	}
}

// A cone is a third of its cylinder (Euclid, Elements XII.10), and above the cone the round part adds whole slices.
func TestConeBottomIsAThirdAndThenWhole(t *testing.T) {
	cylinder := math.Pi / 4 * 0.5 * 0.5 * 0.3
	v, _ := ConeBottomVolume(0.3, 0.5, 0.3, 0)
	near(t, "cone", v, cylinder/3, 1e-12)
	v, _ = ConeBottomVolume(0.6, 0.5, 0.3, 0)
	near(t, "cone and cylinder", v, cylinder/3+cylinder, 1e-12)
	v, _ = ConeBottomVolume(0.15, 0.5, 0.3, 0)
	near(t, "half the depth of a cone holds an eighth", v, cylinder/3/8, 1e-12)
}

// Through a half sphere of the radius cleared the flow of the drain passes at the scour speed.
func TestClearedRadiusKeepsTheFlow(t *testing.T) {
	r, _ := ClearedRadius(1.77e-3, 4, 0.127)
	near(t, "flow", 4*2*math.Pi*r*r*0.127, 1.77e-3, 1e-12)
}

func TestShapesThatCannotBeHaveAReason(t *testing.T) {
	for name, got := range map[string]func() (float64, string){
		"a dry side":              func() (float64, string) { return TiltRatio(0.001, 0.003, 1.5) },
		"a ratio below one":       func() (float64, string) { return TiltAllowed(0.01, 0.5, 1.5) },
		"a pipe in a pipe":        func() (float64, string) { return Downflow(1e-4, 0.05, 0.05) },
		"a negative diameter":     func() (float64, string) { return FrustumVolume(1, -1, 1) },
		"a flat cone":             func() (float64, string) { return ConeBottomVolume(1, 1, 0, 0) },
		"a drain without a mouth": func() (float64, string) { return ClearedRadius(1, 0, 1) },
		"no bore to count in":     func() (float64, string) { return Bores(1, 0) },
	} {
		if y, why := got(); !math.IsNaN(y) || why == "" {
			t.Errorf("%s: %v, %q", name, y, why)
		}
	}
}
