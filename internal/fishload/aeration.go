package fishload

import "math"

// Figures of air and of the clean-water test.
const (
	oxygenOfAir  = 0.277   // kg of oxygen in a cubic metre of air at 20 degC and 1 atm: 0.2095 x 32.00/24.06
	testFull     = 9.09e-3 // kg/m3, oxygen that clean water holds at 20 degC and 1 atm
	testKelvin   = 293.15
	transferRise = 1.024 // a kelvin
)

// StandardTransfer is S, the oxygen that air leaves in clean water at 20 degC that holds none.
//
//	S = 0.277 kg/m3 A s h, at most all of it
//
//	A  air, m3/s
//	s  share taken up in each metre of water, 1/m
//	h  depth of the stone under water, m; at the surface and above it nothing is taken up
//
// Source: ASCE 2-06 for the state; shares from trade and textbooks, from memory.
func StandardTransfer(air, share, depth float64) (float64, string) {
	if air < 0 || share < 0 {
		return math.NaN(), "air and its share are zero or more"
	}
	return oxygenOfAir * air * math.Min(1, share*math.Max(0, depth)), ""
}

// FieldTransfer is K, the water that the air would fill with oxygen in time, so
// that at a level C it brings in K (Cs - C).
//
//	K = S a 1.024^(T - 20 degC)/9.09 mg/L
//
//	S  standard transfer, kg/s
//	a  what the loop's water takes up of what clean water does, 0.7 to 1
//	T  temperature of the water, K
//
// Source: ASCE 2-06, clean-water form carried to the field, with beta = 1 in fresh water.
func FieldTransfer(standard, alpha, t float64) (float64, string) {
	if standard < 0 || alpha < 0 {
		return math.NaN(), "a transfer is zero or more"
	}
	return standard * alpha * math.Pow(transferRise, t-testKelvin) / testFull, ""
}

// SteadyOxygen is C, the level at which what comes in is what is used.
//
//	Q Ci + K Cs - R = (Q + K) C
//
//	Q   flow through the tank, m3/s, and Ci its oxygen, kg/m3
//	K   field transfer of the air, m3/s, and Cs the oxygen of full water, kg/m3
//	R   oxygen used, kg/s
//
// Below zero there is not enough for them at any level; the number says by how much.
// Source: balance of a stirred tank.
func SteadyOxygen(flow, in, transfer, full, used float64) (float64, string) {
	if flow+transfer <= 0 {
		return math.NaN(), "neither flow nor air brings oxygen"
	}
	return (flow*in + transfer*full - used) / (flow + transfer), ""
}

// StillTime is t, the time in which fish breathe still water down to where they are in danger.
//
//	t = (C0 - Cd)(V - m/rho)/R
//
//	C0, Cd  oxygen at the start, and at the danger, kg/m3
//	V       water and fish together, m3
//	m       mass of the fish, kg, of about the density of water, 1000 kg/m3
//	R       oxygen used, kg/s
//
// It is zero where the danger is there already, and at most a year. What the
// surface takes up is not counted, nor what bacteria in the tank use.
// Source: balance of oxygen.
func StillTime(start, danger, volume, mass, used float64) (float64, string) {
	water := volume - mass/1000
	switch {
	case water <= 0:
		return math.NaN(), "the fish fill the tank"
	case start <= danger:
		return 0, "the danger is there already"
	case used <= 0:
		return aYear, "nothing uses the oxygen"
	}
	return math.Min((start-danger)*water/used, aYear), ""
}

// SinkTime is t, the time in which a stirred tank with some air falls to where the fish are in danger.
//
//	C(t) = Ce + (C0 - Ce) e^(-K t/V),  Ce = Cs - R/K
//
// Where Ce is not below the danger it never gets there: a year stands for never.
// Source: balance of a stirred tank, solved.
func SinkTime(start, danger, volume, mass, transfer, full, used float64) (float64, string) {
	if transfer <= 0 {
		return StillTime(start, danger, volume, mass, used)
	}
	water := volume - mass/1000
	end := full - used/transfer
	switch {
	case water <= 0:
		return math.NaN(), "the fish fill the tank"
	case start <= danger:
		return 0, "the danger is there already"
	case end >= danger:
		return aYear, "it does not fall so far"
	}
	return math.Min(water/transfer*math.Log1p((start-danger)/(danger-end)), aYear), ""
}

const aYear = 365 * 86400.0
