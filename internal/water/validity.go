package water

import "math"

// Validity says how far a number can be trusted: whether the formula behind it was made for the inputs it got.
type Validity uint8

const (
	// Valid: every input lies in the range that the source of the formula gives.
	Valid Validity = iota
	// Extrapolated: an input lies outside that range; the number is the formula carried on beyond it.
	Extrapolated
	// Undefined: the inputs have no physical meaning, or no finite answer. The number beside it is 0 and means nothing.
	Undefined
)

// String names the validity in words for a reader.
func (v Validity) String() string {
	switch v {
	case Valid:
		return "in the valid range"
	case Extrapolated:
		return "outside the valid range"
	}
	return "not defined"
}

// Defined tells whether the number beside v means anything.
func (v Validity) Defined() bool { return v < Undefined }

// And gives the worse of two: a result is no better than what went into it.
func (v Validity) And(other Validity) Validity { return max(v, other) }

// Of gives x with v, and 0 with Undefined where x is no finite number. Every answer leaves through it, so that neither NaN nor an
// infinity travels on unseen.
func (v Validity) Of(x float64) (float64, Validity) {
	if !v.Defined() || math.IsNaN(x) || math.IsInf(x, 0) {
		return 0, Undefined
	}
	return x, v
}

// Within gives Valid for x from least to most, and Extrapolated outside or where x is no number.
func Within(x, least, most float64) Validity {
	if x >= least && x <= most {
		return Valid
	}
	return Extrapolated
}

// reach is how far beyond its range, in kelvin, a formula of temperature is still carried on. Farther out polynomials turn wild.
const reach = 30

// inKelvin judges a temperature against a range: Valid inside, Extrapolated up to reach beyond, Undefined farther out.
func inKelvin(t, least, most float64) Validity {
	if !(t >= least-reach && t <= most+reach) {
		return Undefined
	}
	return Within(t, least, most)
}
