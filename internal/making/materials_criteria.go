package making

import "math"

// PREN is the pitting resistance number of a stainless steel: the more, the more
// chloride it stands.
//
//	PREN = Cr + 3.3 Mo + 16 N
//
//	Cr, Mo, N  shares by mass, per cent; N is left out for ferritic grades
//
// Shares below 0 or above 100 have no answer.
// Source: International Molybdenum Association, Practical guidelines for the fabrication of duplex stainless steels.
func PREN(cr, mo, n float64) (float64, string) {
	for _, share := range []float64{cr, mo, n} {
		if !(share >= 0 && share <= 100) {
			return math.NaN(), "a share by mass lies between 0 and 100 per cent"
		}
	}
	return cr + 3.3*mo + 16*n, ""
}

// criterion is one line of the criteria by hardness: share exp(slope ln H + shift), in ug/L.
type criterion struct{ share, slope, shift float64 }

var (
	copperAcute   = criterion{0.960, 0.9422, -1.700}
	copperChronic = criterion{0.960, 0.8545, -1.702}
	zincAcute     = criterion{0.978, 0.8473, 0.884}
	zincChronic   = criterion{0.986, 0.8473, 0.884}
)

// CopperAcute, CopperChronic, ZincAcute and ZincChronic are C, the dissolved metal
// that water creatures bear for an hour, or for four days, in water of a hardness.
//
//	C = s exp(m ln H + b)  ug/L
//
//	H        hardness, kg/m3 as CaCO3, 0.025 to 0.4 (25 to 400 mg/L)
//	s, m, b  copper 0.960, 0.9422, -1.700 and 0.960, 0.8545, -1.702;
//	         zinc 0.978, 0.8473, 0.884 and 0.986, 0.8473, 0.884
//
// The answer is in kg/m3. Below 25 mg/L the formula runs on and the note says so;
// above 400 mg/L it stays at the value for 400, as the rule demands, and the note says so.
// Source: 40 CFR 132, Water quality guidance for the Great Lakes system, tables 1 and 2.
func CopperAcute(hardness float64) (float64, string) { return copperAcute.at(hardness) }

// CopperChronic is as CopperAcute, for four days.
func CopperChronic(hardness float64) (float64, string) { return copperChronic.at(hardness) }

// ZincAcute is as CopperAcute, of zinc.
func ZincAcute(hardness float64) (float64, string) { return zincAcute.at(hardness) }

// ZincChronic is as CopperAcute, of zinc, for four days.
func ZincChronic(hardness float64) (float64, string) { return zincChronic.at(hardness) }

func (c criterion) at(hardness float64) (float64, string) {
	h, note := hardness*1000, "" // mg/L
	switch {
	case !(h > 0):
		return math.NaN(), "the criteria for metals need a hardness above zero"
	case h < 25:
		note = "the criteria for metals are made for a hardness of 25 mg/L and more; in softer water less is harmful"
	case h > 400:
		h, note = 400, "the criteria for metals stay the same above a hardness of 400 mg/L"
	}
	return 1e-6 * c.share * math.Exp(c.slope*math.Log(h)+c.shift), note
}

// ChlorideOfSalt is c, the chloride that common salt brings into water.
//
//	c = 35.453/58.443 s
//
//	s  salt, kg/m3, 0 or more
//
// Source: IUPAC atomic weights, chlorine 35.45 and sodium 22.99.
func ChlorideOfSalt(salt float64) (float64, string) {
	if salt < 0 {
		return math.NaN(), "there is no salt below nothing"
	}
	return chlorideInSalt * salt, ""
}

// ZincLoss is m, the zinc that a galvanised face gives off while its coat wears.
//
//	m = rho d
//
//	d    coat lost in time, m/s, 0 or more
//	rho  density of zinc, 7140 kg/m3
//
// Units kg/(m2 s).
// Source: density of zinc, CRC Handbook of Chemistry and Physics; balance of mass.
func ZincLoss(wear float64) (float64, string) {
	if wear < 0 {
		return math.NaN(), "a coat does not grow"
	}
	return 7140 * wear, ""
}
