package working

import (
	"math"
	"testing"

	"dryfit/internal/quantity"
)

func of(kind quantity.Kind, f Func, in ...Value) Value {
	var inputs []Input
	for _, v := range in {
		inputs = append(inputs, In("x", Row("x", quantity.Number, v, "", "invented", "invented")))
	}
	v, _ := Step("y", kind, "f(x)", "invented", f, inputs...).Value()
	return v
}

func times(x []float64) (float64, string) { return x[0] * x[1], "" }

func less(x []float64) (float64, string) { return x[0] - x[1], "" }

// Two doubts by a factor of two each are one by a factor of four.
func TestDoubtsOfWhatIsNeverBelowNothingMultiply(t *testing.T) {
	two := Within(1, 0.5, 2)
	for kind, want := range map[quantity.Kind]Value{
		quantity.Time:   {1, 0.25, 4},
		quantity.Number: {1, 0.25, 4},
		quantity.Length: {1, 0, 3}, // here they are added
	} {
		if got := of(kind, times, two, two); math.Abs(got.Low-want.Low) > 1e-12 || math.Abs(got.High-want.High) > 1e-12 {
			t.Errorf("%s: %v, not %v", kind, got, want)
		}
	}
}

// A difference that an end brings below nothing is no product: its doubts are added, and said as they are.
func TestADifferenceKeepsItsRange(t *testing.T) {
	got := of(quantity.Mass, less, Within(3, 1, 5), Exactly(2))
	if got != (Value{1, -1, 3}) {
		t.Errorf("the range is %v", got)
	}
	none := of(quantity.Mass, less, Within(2, 1, 3), Exactly(2))
	if none != (Value{0, -1, 1}) {
		t.Errorf("round nothing it is %v", none)
	}
}
