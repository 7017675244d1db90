package pipeflow

import "dryfit/internal/water"

// SuddenExpansion gives K of a step up in bore, on the velocity in the SMALLER pipe.
//
//	K = (1 - (d1/d2)^2)^2
//
//	d1  smaller bore, m, above 0
//	d2  larger bore, m, d1 or more
//
// With d2 smaller than d1 there is no answer; see [SuddenContraction].
//
// Source: Borda-Carnot equation, any textbook; turbulent flow.
func SuddenExpansion(d1, d2 float64) (float64, Validity) {
	b := d1 / d2
	return given(d1 > 0, d2 >= d1).Of((1 - b*b) * (1 - b*b))
}

// SuddenContraction gives K of a square step down in bore, on the velocity in the SMALLER pipe. The jet narrows beyond the edge to
// 1/lambda of the pipe, and the loss is in its widening again.
//
//	K = 0.0696 (1 - b^5) lambda^2 + (lambda - 1)^2
//	lambda = 1 + 0.622 (1 - 0.215 b^2 - 0.785 b^5),  b = d2/d1
//
//	d1  larger bore, m, above 0
//	d2  smaller bore, m, above 0, d1 or less
//
// Source: Rennels, D. C. and Hudson, H. M., 2012, Pipe flow: a practical and comprehensive guide, ch. 10; turbulent flow.
func SuddenContraction(d1, d2 float64) (float64, Validity) {
	b := d2 / d1
	b2, b5 := b*b, b*b*b*b*b
	return given(d2 > 0, d1 >= d2).Of(contracted(b5, 1+0.622*(1-0.215*b2-0.785*b5)))
}

// contracted is the loss of a jet that narrowed by lambda, with a share x of the edge taken away.
func contracted(x, lambda float64) float64 {
	return 0.0696*(1-x)*lambda*lambda + (lambda-1)*(lambda-1)
}

// FlushEntrance gives K where water leaves a vessel by a pipe whose end is flush with the wall.
//
//	K = 0.0696 (1 - 0.569 r) lambda^2 + (lambda - 1)^2
//	lambda = 1 + 0.622 (1 - 0.30 sqrt(r) - 0.70 r)^4
//
//	r  radius of the edge over the bore, 0 (sharp, K = 0.57) to 1
//
// Above r = 1 the edge is a full bell and K stays at its value there; the result says extrapolated.
//
// Source: Rennels and Hudson, 2012, ch. 9. Miller 1990 has 0.51 for the sharp edge, Crane TP-410 0.50.
func FlushEntrance(r float64) (float64, Validity) {
	v := given(r >= 0).And(water.Within(r, 0, 1))
	r = min(r, 1)
	return v.Of(contracted(0.569*r, 1+0.622*pow4(1-0.30*sqrt(r)-0.70*r)))
}

// ProjectingEntrance gives K where the pipe stands into the vessel by half a bore or more. A thick plastic wall helps: from a twentieth
// of the bore on it is as good as a flush end.
//
//	K = 1.12 - 22 t + 216 t^2 + 80 t^3
//
//	t  wall thickness over bore, 0 to 0.05; thicker counts as 0.05, as the source has it
//
// Source: Rennels and Hudson, 2012, ch. 9.
func ProjectingEntrance(t float64) (float64, Validity) {
	v := given(t >= 0)
	t = min(t, 0.05)
	return v.Of(1.12 + t*(-22+t*(216+80*t)))
}

// Exit is K where a pipe ends in a vessel, whatever its end looks like: all the velocity head is lost.
//
// Source: Crane TP-410, 2009; Rennels and Hudson, 2012.
const Exit = 1.0
