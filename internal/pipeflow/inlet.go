package pipeflow

import "dryfit/internal/water"

// Limits of the two kinds of inlet control, as Froude numbers on the full bore, and the constants of the drowned one. The source has
// 3.5 and 4.0 ft^0.5/s for Q/(A D^0.5), and 0.0398 and 0.67 for a square edge in a wall.
const (
	inletFree    = 0.61704 // 3.5 / sqrt(32.174)
	inletDrowned = 0.70519 // 4.0 / sqrt(32.174)
	inletSlope   = 1.28053 // 0.0398 x 32.174
	inletOffset  = 0.67
)

// Critical depth and velocity head where the free inlet ends, in bores: the same in every pipe.
var inletFreeDepth, inletFreeHead = func() (depth, head float64) {
	q := inletFree * circle(1) * sqrt(water.G)
	depth, _ = CriticalDepth(q, 1)
	wet, _ := CircleArea(1, depth)
	return depth, velocityHead(q / wet)
}()

// InletLevel gives h, the level of still water over the invert at which a level pipe, or one that falls away, takes q, when nothing
// farther along holds the water back.
//
//	F = V / sqrt(g d) on the full bore
//	F <= 0.617:  h = yc + (1 + ke) V^2/2g      free surface, critical depth inside the entry
//	F >= 0.705:  h = (1.2805 F^2 + 0.67) d     mouth drowned, an orifice
//	between:     straight from one to the other
//
//	q   flow, m3/s, 0 or more
//	d   bore, m, above 0
//	ke  loss at the entry in velocity heads, 0 to 0.8: about 0.5 for a square edge, 0.1 for a rounded one
//
// Above F = 0.617, and for ke above 0.8, the result says extrapolated: those constants were fitted to culverts of 0.3 m and more with a
// square edge. Where a large ke puts the first level over the second, the drowned curve is lifted to start from it. See [InletSpread].
//
// Source: Normann, J. M. et al., 1985, Hydraulic design of highway culverts, FHWA HDS-5, appendix A and table 9, circular concrete,
// square edge with headwall.
func InletLevel(q, d, ke float64) (float64, Validity) {
	f, v := Froude(q, d)
	v = v.And(given(q >= 0, ke >= 0)).And(water.Within(ke, 0, 0.8))
	if f <= inletFree {
		h, w := criticalLevel(q, d, ke)
		return v.And(w).Of(h)
	}
	v = v.And(Extrapolated)
	free := d * (inletFreeDepth + (1+ke)*inletFreeHead)
	drowned := func(f float64) float64 {
		return inletSlope*f*f*d + max(inletOffset*d, free-inletSlope*inletFree*inletFree*d)
	}
	if f < inletDrowned {
		return v.Of(free + (f-inletFree)/(inletDrowned-inletFree)*(drowned(inletDrowned)-free))
	}
	return v.Of(drowned(f))
}
