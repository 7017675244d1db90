package remedy

import (
	"math"
	"math/rand/v2"
	"testing"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
)

func TestAimIsTheMiddleOfABandAndJustInsideOneLimit(t *testing.T) {
	of := func(x float64) *float64 { return &x }
	for _, c := range []struct {
		least, most *float64
		want        float64
	}{
		{of(0.4), of(0.6), 0.5},
		{of(1.5), nil, 1.53},
		{nil, of(2.1), 2.058},
	} {
		f := &review.Finding{Judgement: &review.Judgement{Limit: review.Limit{Least: c.least, Most: c.most}}}
		if got := aim(f); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("aim is %v, want %v", got, c.want)
		}
	}
}

func TestAroundRoundsBothWaysTheNearerFirst(t *testing.T) {
	for range 200 {
		x, step := rand.Float64(), 0.001+rand.Float64()/10
		got := around(x, step)
		if len(got) != 2 || math.Abs(got[0]-x) > math.Abs(got[1]-x)+1e-12 || math.Abs(got[0]-got[1]) > step*(1+1e-9) {
			t.Fatalf("around %v by %v is %v", x, step, got)
		}
	}
	if got := around(0.1234, 0); len(got) != 1 || got[0] != 0.1234 {
		t.Errorf("without a step it is %v", got)
	}
}

func TestAStepIsRoundInTheUnitOfTheFile(t *testing.T) {
	for _, c := range []struct {
		kind quantity.Kind
		step float64
		unit string
		want float64
	}{
		{quantity.Length, 0.005, "mm", 0.005},
		{quantity.Length, 0.025, "mm", 0.025},
		{quantity.Length, 0.005, "in", 0.0254 / 4}, // nearer than an eighth, by ratio
		{quantity.Length, 0.001, "in", 0.0254 / 16},
		{quantity.Length, 0.025, "in", 0.0254},
		{quantity.Volume, 0.001, "gal(US)", 0.2 * 0.003785411784},
		{quantity.TemperatureDifference, 1, "degC", 1},
	} {
		if got := stepIn(c.kind, c.step, c.unit); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%v of %s in %s: %v, want %v", c.step, c.kind, c.unit, got, c.want)
		}
	}
}

func TestSearchFindsWhereAStraightLineCrosses(t *testing.T) {
	for range 100 {
		root, now := rand.Float64()*2-1, rand.Float64()*2-1
		slope := math.Copysign(0.1+rand.Float64(), rand.Float64()-0.5)
		x, ok := search(func(x float64) float64 { return slope * (x - root) }, now, 0.005)
		if !ok || math.Abs(x-root) > 1e-5 {
			t.Fatalf("from %v the root %v comes out as %v, %v", now, root, x, ok)
		}
	}
	if _, ok := search(func(float64) float64 { return 1 }, 0, 0.005); ok {
		t.Error("a line that crosses nowhere has a root")
	}
	if _, ok := search(func(float64) float64 { return math.NaN() }, 0, 0.005); ok {
		t.Error("what has no answer has a root")
	}
}

func TestValuesAreWrittenInTheUnitOfTheAuthor(t *testing.T) {
	for _, c := range []struct {
		si         float64
		unit, want string
	}{
		{0.31, "mm", "310 mm"}, {0.0508, "in", "2 in"}, {0.0635, "mm", "63.5 mm"}, {1.35, "m", "1.35 m"},
	} {
		if got := in(quantity.Length, c.si, c.unit); got != c.want {
			t.Errorf("%v m in %s is %q, want %q", c.si, c.unit, got, c.want)
		}
		if q, err := quantity.Parse(quantity.Length, c.want); err != nil || math.Abs(q.SI-c.si) > 1e-12 {
			t.Errorf("%s does not read back as %v m", c.want, c.si)
		}
	}
}

func TestHeightsAreRaisedAndAllElseIsChanged(t *testing.T) {
	got := move("/vessels/settler/well/lip_at", quantity.Length, "445 mm", "310 mm", -0.135, "mm")
	if want := "lower the lip of the inlet well by 135 mm, from 445 mm to 310 mm above the floor"; got != want {
		t.Errorf("it says %q", got)
	}
	got = move("/working_flow/least", quantity.Flow, "900 L/h", "440 L/h", -1, "L/h")
	if want := "change `working_flow/least` from 900 L/h to 440 L/h"; got != want {
		t.Errorf("it says %q", got)
	}
}
