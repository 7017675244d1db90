package water_test

import (
	"fmt"
	"math"
	"testing"

	"dryfit/internal/water"
)

const sea = 101325 // Pa

// EN 25814:1992, table of solubility: 9.09 mg/L at 20 degC and 760 mmHg.
func ExampleOxygenSaturation() {
	c, v := water.OxygenSaturation(293.15, sea)
	fmt.Printf("%.2f mg/L, %v\n", c*1e3, v)
	// Output: 9.09 mg/L, in the valid range
}

// University of Florida IFAS, sheet FA16, worked figure: 0.0502 at pH 8.0 and 24 degC.
func ExampleAmmoniaFraction() {
	f, v := water.AmmoniaFraction(8, 297.15)
	fmt.Printf("%.4f, %v\n", f, v)
	// Output: 0.0502, in the valid range
}

func TestRangeOfChemistryIsSaid(t *testing.T) {
	oxygen := func(k, p float64) func() (float64, water.Validity) {
		return func() (float64, water.Validity) { return water.OxygenSaturation(k, p) }
	}
	share := func(pH, k float64) func() (float64, water.Validity) {
		return func() (float64, water.Validity) { return water.AmmoniaFraction(pH, k) }
	}
	dioxide := func(a, pH, k float64) func() (float64, water.Validity) {
		return func() (float64, water.Validity) { return water.CarbonDioxide(a, pH, k) }
	}
	alkalinity := func(c, pH, k float64) func() (float64, water.Validity) {
		return func() (float64, water.Validity) { return water.AlkalinityAt(c, pH, k) }
	}
	for name, c := range map[string]struct {
		at   func() (float64, water.Validity)
		want water.Validity
	}{
		"oxygen at both ends":             {oxygen(313.15, 60000), water.Valid},
		"oxygen in hot water":             {oxygen(320, sea), water.Extrapolated},
		"oxygen in steam":                 {oxygen(373, sea), water.Undefined},
		"oxygen on the highest peaks":     {oxygen(283.15, 40000), water.Extrapolated},
		"oxygen where the water boils":    {oxygen(293.15, 2300), water.Undefined},
		"oxygen at the foot of a dam":     {oxygen(293.15, 3*sea), water.Extrapolated},
		"oxygen far down":                 {oxygen(293.15, 100*sea), water.Undefined},
		"oxygen without air":              {oxygen(293.15, 0), water.Undefined},
		"oxygen at no pressure":           {oxygen(293.15, math.NaN()), water.Undefined},
		"oxygen at absolute zero":         {oxygen(0, sea), water.Undefined},
		"ammonia in warm water":           {share(7, 323.15), water.Valid},
		"ammonia in hot water":            {share(7, 330), water.Extrapolated},
		"ammonia at a pH below the scale": {share(-0.1, 293.15), water.Undefined},
		"ammonia at no pH":                {share(math.NaN(), 293.15), water.Undefined},
		"dioxide at both ends":            {dioxide(0.1, 4.5, 273.15), water.Valid},
		"dioxide where carbonate counts":  {dioxide(0.1, 8.4, 293.15), water.Extrapolated},
		"dioxide of pure water":           {dioxide(0, 7, 293.15), water.Valid},
		"dioxide of acid water":           {dioxide(-0.01, 4.5, 293.15), water.Undefined},
		"dioxide off the scale":           {dioxide(0.1, 15, 293.15), water.Undefined},
		"dioxide without end":             {dioxide(math.MaxFloat64, 0, 293.15), water.Undefined},
		"alkalinity at a negative gas":    {alkalinity(-1, 7, 293.15), water.Undefined},
		"alkalinity in hot water":         {alkalinity(0.01, 7, 340), water.Extrapolated},
	} {
		x, got := c.at()
		if got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
		if got == water.Undefined && x != 0 {
			t.Errorf("%s: an undefined answer carries the number %g", name, x)
		}
	}
}

// along holds that a number rises strictly over a range, wherever it is valid.
func along(t *testing.T, what string, from, to float64, at func(x float64) (float64, water.Validity)) {
	t.Helper()
	const steps = 200
	last := math.Inf(-1)
	for i := range steps + 1 {
		x := from + (to-from)*float64(i)/steps
		y, v := at(x)
		if v != water.Valid || !(y > last) {
			t.Errorf("%s does not rise to %g: %g after %g, %q", what, x, y, last, v)
			return
		}
		last = y
	}
}

func minus(y float64, v water.Validity) (float64, water.Validity) { return -y, v }

// Gases leave warm water and thin air takes them out; a base frees ammonia and an acid frees carbon dioxide. Physics, no source needed.
func TestTrendsOfChemistry(t *testing.T) {
	for p := 51000.; p < 111000; p += 5000 {
		along(t, "minus oxygen, as it warms", 273.15, 313.15, func(k float64) (float64, water.Validity) { return minus(water.OxygenSaturation(k, p)) })
	}
	for k := 273.15; k <= 313.15; k += 4 {
		along(t, "oxygen, with pressure", 51000, 111000, func(p float64) (float64, water.Validity) { return water.OxygenSaturation(k, p) })
		along(t, "ammonia, with pH", 4, 11, func(pH float64) (float64, water.Validity) { return water.AmmoniaFraction(pH, k) })
		along(t, "minus carbon dioxide, with pH", 4.5, 8.3, func(pH float64) (float64, water.Validity) { return minus(water.CarbonDioxide(0.1, pH, k)) })
		along(t, "carbon dioxide, with alkalinity", 0, 1, func(a float64) (float64, water.Validity) { return water.CarbonDioxide(a, 7, k) })
	}
	for pH := 4.5; pH <= 8.3; pH += 0.1 {
		along(t, "ammonia, as it warms", 273.15, 323.15, func(k float64) (float64, water.Validity) { return water.AmmoniaFraction(pH, k) })
		// Harned and Davis have the least pK1 near 50 degC: up to 45 degC it falls.
		along(t, "minus carbon dioxide, as it warms", 273.15, 318.15, func(k float64) (float64, water.Validity) { return minus(water.CarbonDioxide(0.1, pH, k)) })
	}
}

// At a pH of pK, by definition, a weak acid is half dissociated: half of the ammonia is un-ionised, and a mole of bicarbonate (50.043 g
// of alkalinity) goes with a mole of carbon dioxide (44.009 g).
func TestHalfWayAtThePK(t *testing.T) {
	for k := 273.15; k <= 323.15; k += 5 {
		pKa, _ := water.AmmoniaPKa(k)
		if f, _ := water.AmmoniaFraction(pKa, k); math.Abs(f-0.5) > 1e-12 {
			t.Errorf("%g K: %g of the ammonia is un-ionised at its pKa", k, f)
		}
		pK1, _ := water.CarbonicPK1(k)
		if c, _ := water.CarbonDioxide(0.050043, pK1, k); math.Abs(c-0.044009) > 1e-6 {
			t.Errorf("%g K: %g kg/m3 of carbon dioxide at pK1", k, c)
		}
	}
}

// With nothing but vapour above it the water holds no oxygen: the law of Henry takes the pressure that the vapour leaves. The vapour
// pressure is that of IAPWS R7-97, from which the one of Benson and Krause departs by less than 0.1 %.
func TestNoOxygenUnderVapour(t *testing.T) {
	for k := 273.15; k <= 313.15; k += 1 {
		vapour, _ := water.VapourPressure(k)
		full, _ := water.OxygenSaturation(k, sea)
		c, v := water.OxygenSaturation(k, vapour*1.002)
		if !v.Defined() || c > full*0.004*vapour/sea {
			t.Errorf("%g K: %g kg/m3 under hardly more than vapour, %q", k, c, v)
		}
		if _, v := water.OxygenSaturation(k, vapour*0.998); v.Defined() {
			t.Errorf("%g K: water that boils holds oxygen", k)
		}
	}
}

func TestAlkalinityAtIsTheInverse(t *testing.T) {
	for k := 273.15; k <= 323.15; k += 5 {
		for pH := 4.5; pH <= 8.3; pH += 0.19 {
			for a := 1e-6; a < 10; a *= 7 {
				c, _ := water.CarbonDioxide(a, pH, k)
				if back, v := water.AlkalinityAt(c, pH, k); v != water.Valid || math.Abs(back-a) > 1e-12*a {
					t.Errorf("%g K, pH %g: %g comes back as %g, %q", k, pH, a, back, v)
				}
			}
		}
	}
}

func FuzzChemistry(f *testing.F) {
	for _, k := range []float64{0, 243.15, 273.15, 298.15, 343.15, 373.15, -1e300, math.MaxFloat64, 5e-324} {
		f.Add(k, 101325., 7., 0.1)
		f.Add(k, k, k, k)
	}
	f.Add(293.15, 2339., 0., math.MaxFloat64)
	f.Add(293.15, math.Inf(1), 14., 0.)
	f.Fuzz(func(t *testing.T, k, p, pH, c float64) {
		check := func(name string, most float64) func(float64, water.Validity) {
			return func(y float64, v water.Validity) {
				if math.IsNaN(y) || !(y >= 0 && y <= most) || (!v.Defined() && y != 0) {
					t.Errorf("%s(%g K, %g Pa, pH %g, %g kg/m3) = %g, %q", name, k, p, pH, c, y, v)
				}
			}
		}
		check("OxygenSaturation", 1)(water.OxygenSaturation(k, p))
		check("AmmoniaPKa", 15)(water.AmmoniaPKa(k))
		check("AmmoniaFraction", 1)(water.AmmoniaFraction(pH, k))
		check("CarbonicPK1", 10)(water.CarbonicPK1(k))
		check("CarbonDioxide", math.MaxFloat64)(water.CarbonDioxide(c, pH, k))
		check("AlkalinityAt", math.MaxFloat64)(water.AlkalinityAt(c, pH, k))
	})
}
