package working

import "math"

// Value is a number in SI units with the range in which the sources leave it.
type Value struct{ X, Low, High float64 }

// Exactly is a value without spread.
func Exactly(x float64) Value { return Value{x, x, x} }

// Within is a value of which the sources say low to high.
func Within(x, low, high float64) Value { return Value{x, math.Min(x, low), math.Max(x, high)} }

// Spread says whether the sources differ.
func (v Value) Spread() bool { return v.Low < v.High }

// spreadOf works f at the middle of its inputs and, for each input that has a
// spread, at its low and high end with the others left at the middle. The
// deviations are added up: the range of a sum of independent doubts, taken as if
// all of them went the same way.
//
//	low  = f(x) - sum over i of max(0, f(x) - f(x with x_i at either end))
//	high = f(x) + sum over i of max(0, f(x with x_i at either end) - f(x))
//
// An end at which f has no answer is left out of the range and said in the note.
func spreadOf(f Func, in []Value) (Value, string) {
	sum, _, note := endsOf(f, in)
	return sum, note
}

// ratioSpreadOf is the same for what cannot be less than nothing: a time, a mass.
// Its doubts are those of products, and multiply:
//
//	low  = f(x) times every f(x with x_i at its lesser end)/f(x), and high likewise
//
// Where the number is not above zero, or an end is below it, the deviations are added.
func ratioSpreadOf(f Func, in []Value) (Value, string) {
	sum, product, note := endsOf(f, in)
	if math.IsNaN(product.X) {
		return sum, note
	}
	return product, note
}

// endsOf is f at the middle of its inputs, with the spread that its deviations come to, added up and
// multiplied: for each input that has a spread, its least and greatest with the others left at the middle. There
// is no product where the number is not above zero, or an end is below it.
func endsOf(f Func, in []Value) (sum, product Value, note string) {
	x := middles(in)
	y, note := f(x)
	if !finite(y) {
		return Exactly(math.NaN()), Exactly(math.NaN()), note
	}
	sum, product = Exactly(y), Exactly(y)
	for i, v := range in {
		if !v.Spread() {
			continue
		}
		least, greatest := y, y
		for _, end := range []float64{v.Low, v.High} {
			x[i] = end
			at, why := f(x)
			if !finite(at) {
				note = "at one end of its spread there is no answer: " + why
				continue
			}
			least, greatest = math.Min(least, at), math.Max(greatest, at)
		}
		x[i] = v.X
		sum.Low -= y - least
		sum.High += greatest - y
		if product.Low *= least / y; y <= 0 || least < 0 {
			product.X = math.NaN()
		}
		product.High *= greatest / y
	}
	return sum, product, note
}

// middles is the middle of each value.
func middles(in []Value) []float64 {
	x := make([]float64, len(in))
	for i, v := range in {
		x[i] = v.X
	}
	return x
}

// atMiddles works f at the middle of its inputs and leaves their spread aside.
func atMiddles(f Func, in []Value) (Value, string) {
	y, note := f(middles(in))
	return Exactly(y), note
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
