package pipeflow

import (
	"math"

	"dryfit/internal/water"
)

// RectangularNotch gives q over a level crest, by the plain formula of the textbooks with a discharge coefficient.
//
//	q = (2/3) cd b sqrt(2g) h^1.5
//
//	cd  discharge coefficient, above 0, about 0.60 to 0.62
//	b   width of the crest, m, above 0
//	h   head: level of the water well upstream (3 to 4 heads back) over the crest, m; at 0 and below nothing flows
//
// Source: integral of Torricelli's velocity over the opening, any textbook.
func RectangularNotch(cd, b, h float64) (float64, Validity) {
	return given(cd > 0, b > 0, h == h).Of(2.0 / 3 * cd * b * sqrt(2*water.G) * power(max(h, 0), 1.5))
}

// TriangularNotch gives q through a V cut into a plate, by the plain formula of the textbooks with a discharge coefficient.
//
//	q = (8/15) cd tan(a/2) sqrt(2g) h^2.5
//
//	cd  discharge coefficient, above 0, about 0.58 to 0.62
//	a   angle of the V, rad, above 0 and below pi
//	h   head over the point of the V, m; at 0 and below nothing flows
//
// Source: integral of Torricelli's velocity over the opening, any textbook.
func TriangularNotch(cd, a, h float64) (float64, Validity) {
	return given(cd > 0, a > 0, a < math.Pi, h == h).Of(8.0 / 15 * cd * math.Tan(a/2) * sqrt(2*water.G) * power(max(h, 0), 2.5))
}

// Drowned gives the share of its free flow that a weir still passes when the water behind it stands above the crest.
//
//	share = (1 - (h2/h1)^n)^0.385
//
//	h1  head upstream over the crest, m, above 0
//	h2  head downstream over the crest, m; at 0 and below the share is 1, at h1 it is 0
//	n   exponent of the weir: 1.5 for a level crest, 2.5 for a V
//
// With h2 above h1 the water runs back and there is no answer.
//
// Source: Villemonte, J. R., 1947, Submerged-weir discharge studies, Eng. News-Record 139:866-869.
func Drowned(h1, h2, n float64) (float64, Validity) {
	return given(h1 > 0, h2 <= h1, n > 0).Of(power(1-power(max(h2, 0)/h1, n), 0.385))
}

// below carries a weir's curve from the least calibrated head h0, where it passes q0, down to zero as a plain power of the head. The
// calibrated formulas add a little to the head and so would let water over a crest that stands dry.
func below(h, h0, q0, n float64) float64 { return q0 * power(max(h, 0)/h0, n) }

// headBelow is the inverse of below.
func headBelow(q, h0, q0, n float64) float64 { return h0 * power(q/q0, 1/n) }
