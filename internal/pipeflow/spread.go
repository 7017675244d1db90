package pipeflow

// WeirSpread gives the half-width, in metre, of the band in which the true head over a weir lies. The formulas were calibrated on heads
// of 30 mm and more. Below, the sheet of water clings to the plate and surface tension counts: a fifth, and never less than 3 mm.
//
//	h  head over the crest, m;  v  what the weir said of it
//
// Within the calibrated range it is 3 %; of an undefined head there is none.
//
// Source: project judgement.
func WeirSpread(h float64, v Validity) float64 {
	switch {
	case v == Valid && h > 0:
		return 0.03 * h
	case v == Extrapolated && h > 0:
		return max(0.2*h, 0.003)
	}
	return 0
}

// InletSpread gives the half-width, in metre, of the band in which the true level at the inlet of a part-full pipe lies: 15 %, and never
// less than 3 mm, because the fits come from culverts of 0.3 m and more.
//
//	level  level over the invert, m, 0 or more
//
// Source: project judgement.
func InletSpread(level float64) float64 {
	if level > 0 {
		return max(0.15*level, 0.003)
	}
	return 0
}
