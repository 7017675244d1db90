package site

import "math"

const (
	fall  = 9.80665 // standard acceleration of free fall, m/s2
	water = 1000.0  // density of cold water, kg/m3, rounded up
)

// PrismoidVolume is V, the volume between two level faces joined by straight sides.
//
//	V = h/6 (A1 + 4 Am + A2)
//
//	h           height, m
//	A1, Am, A2  area of the lower face, half way up, and of the upper face, m2
//
// It is exact for cylinders, cones, boxes and all that taper straight.
// Source: the prismoidal formula, any handbook of surveying.
func PrismoidVolume(height, lower, middle, upper float64) float64 {
	return height / 6 * (lower + 4*middle + upper)
}

// RoundVolume is PrismoidVolume of a round vessel from its diameters.
func RoundVolume(height, lower, upper float64) float64 {
	area := func(d float64) float64 { return math.Pi / 4 * d * d }
	return PrismoidVolume(height, area(lower), area((lower+upper)/2), area(upper))
}

// BoxVolume is PrismoidVolume of a box from the sides of its faces.
func BoxVolume(height, length, width, lengthTop, widthTop float64) float64 {
	return PrismoidVolume(height, length*width, (length+lengthTop)/2*(width+widthTop)/2, lengthTop*widthTop)
}

// FullMass is M, a vessel full of water to its rim.
//
//	M = rho (V - (1-e) Vm) + m + mm
//
//	V        volume up to the rim, m3
//	Vm, e    volume of the media in it, m3, and the share of that which is open, 0 to 1
//	m, mm    mass of the vessel itself, and of the media, kg
//	rho      1000 kg/m3
//
// Media that do not fit into the vessel have no answer.
// Source: balance of volumes.
func FullMass(volume, media, void, own, mediaMass float64) (float64, string) {
	if void < 0 || void > 1 || (1-void)*media > volume {
		return math.NaN(), "the media do not fit into the vessel"
	}
	return water*(volume-(1-void)*media) + own + mediaMass, ""
}

// FloorLoad is q, what a mass presses on the ground that carries it.
//
//	q = M g/A  Pa
//
//	M  mass, kg
//	A  area over which it is spread, m2, above zero
//
// Source: definition of pressure.
func FloorLoad(mass, area float64) (float64, string) {
	if !(area > 0) {
		return math.NaN(), "a load needs an area to rest on"
	}
	return mass * fall / area, ""
}

// TippingShare is the push at the rim, as a share of the weight, at which a thing
// tips over the edge of its base.
//
//	F/W = b/(2 H)
//
//	b  least width of the base, m
//	H  height of the rim above the ground, m, above zero
//
// Source: balance of moments about the edge of the base.
func TippingShare(base, rim float64) (float64, string) {
	if !(rim > 0) {
		return math.NaN(), "its rim is not above the ground"
	}
	return base / (2 * rim), ""
}
