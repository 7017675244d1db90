package settling

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/tables"
	"dryfit/internal/water"
	"dryfit/internal/working"
)

// How the grains of the table of solids are taken to be: a little heavier than water, and as rough as natural grains.
//
// Source: solids of salmon farms 1050 to 1190 kg/m3, Chen et al. 1993 (from memory), the light end; shape constants of Ferguson and Church 2004.
const (
	grainExcess = 0.05
	grainC1     = 18
	grainC2     = 1.0
)

// What the best measured radial-flow settler caught, and at which loading, m/s.
//
// Source: Davidson and Summerfelt 2005, Aquacultural Engineering 33:47-61, abstract.
const (
	measuredCapture = 0.779
	measuredLoading = 0.0031
)

// Settles is v, the speed of a grain in water of another viscosity than that in which its speed is known.
//
//	v = w(d, nu),  d = the grain that falls at v20 in water of nu20
//
//	v20   speed at 20 degC, m/s, above zero
//	nu20  kinematic viscosity at 20 degC, m2/s
//	nu    kinematic viscosity now, m2/s
//
// Fines follow the viscosity in proportion, whole droppings less. It answers NaN where there is no grain.
// Source: Ferguson and Church 2004, Journal of Sedimentary Research 74:933-937, with an excess density of 0.05.
func Settles(v20, nu20, nu float64) (float64, string) {
	d, why := GrainOf(v20, grainExcess, nu20, grainC1, grainC2)
	if math.IsNaN(d) {
		return d, why
	}
	return FergusonChurch(d, grainExcess, nu, grainC1, grainC2)
}

// StirredCapture is R, the share of grains of one speed that a settler catches that is stirred more or less.
//
//	R = 1 - (1 + m v/v0)^(-1/m),  for m = 0 R = min(1, v/v0)
//
//	v   settling speed, m/s, zero or more
//	v0  overflow rate, m/s, above zero
//	m   1 over the number of tanks in a row, 0 to 1: 1 wholly stirred, 0 not at all
//
// Between 0 and a very small m it steps: tanks without number are no ideal basin (see TanksCapture).
// Source: Hazen 1904, On Sedimentation, Transactions ASCE 53.
func StirredCapture(v, v0, m float64) (float64, string) {
	switch {
	case m == 0:
		return IdealCapture(v, v0)
	case !(m > 0 && m <= 1):
		return math.NaN(), "a settler is stirred between not at all, 0, and wholly, 1"
	}
	return TanksCapture(v, v0, 1/m)
}

// CaptureCap is the most that a settler is credited with: what a good one was measured to catch and, at a smaller loading, a share that
// grows in a straight line to all of it in still water.
//
//	R = 1 - (1 - 0.779) min(1, v0/3.1 mm/s)
//
//	v0  overflow rate, m/s, zero or more
//
// What was missed at the measured loading is taken to shrink in proportion with the loading: more than a settler gains that loses
// its coarse grains first, so that it bounds and does not predict.
// Source: Davidson and Summerfelt 2005, Aquacultural Engineering 33:47-61; the straight line is a project judgement.
func CaptureCap(v0 float64) (float64, string) {
	if !(v0 >= 0) {
		return math.NaN(), "a settler has an area and a flow"
	}
	return 1 - (1-measuredCapture)*math.Min(1, v0/measuredLoading), ""
}

// A Class of grains has a speed in water of 20 degC, m/s, and a share of the mass.
type Class struct{ Speed, Share float64 }

// SettleableCapture is R, the share of all that settles at all which a settler catches in one pass.
//
//	R = k min(cap(v0), sum of f R(v, v0, m))
//
//	v0       overflow rate, m/s, above zero
//	nu       kinematic viscosity of the water, m2/s
//	m        how far it is stirred, 0 to 1, see StirredCapture
//	k        catch over that of a radial-flow settler at the same loading, 1 but for swirl settlers
//	classes  speeds at 20 degC and shares f, which come to 1
//
// Source: sum over the distribution of speeds, Camp 1946, Transactions ASCE 111; see StirredCapture and CaptureCap.
func SettleableCapture(v0, nu, m, k float64, classes []Class) (float64, string) {
	most, why := CaptureCap(v0)
	if math.IsNaN(most) {
		return most, why
	}
	nu20, _ := water.KinematicViscosity(water.ZeroCelsius + 20)
	sum := 0.0
	for _, c := range classes {
		v, why := Settles(c.Speed, nu20, nu)
		if math.IsNaN(v) {
			return v, why
		}
		one, why := StirredCapture(v, v0, m)
		if math.IsNaN(one) {
			return one, why
		}
		sum += c.Share * one
	}
	return k * math.Min(most, sum), ""
}

// capture enters what the settler catches in one pass, in water of each temperature.
func (b basin) capture() {
	rate := working.In("v0", b.find("greatest_overflow_rate", working.Always, ""))
	in := []working.Input{rate, {}, working.In("m", b.t.SolidsFigure(b.stirred(), quantity.Number)), working.In("k", b.overRadial())}
	fixed := len(in)
	var shares []float64
	for _, c := range b.t.SolidsClasses() {
		in = append(in, working.In("v", classSpeed(c)))
		shares = append(shares, c.Share)
	}
	settles := working.In("s", b.t.SolidsFigure("settles", quantity.Fraction))
	for _, w := range working.Waters {
		in[1] = working.In("nu", found(b.l, working.Address{Subject: "water", Name: "kinematic_viscosity", Case: working.Always, Water: w}, "viscosity of the water", quantity.Viscosity, "/water/temperature"))
		r := b.state("capture_settleable", w, b.v.Form.Pointer, func(x []float64) (float64, string) {
			grains := make([]Class, len(shares))
			for i, f := range shares {
				grains[i] = Class{x[fixed+i], f}
			}
			return SettleableCapture(x[0], x[1], x[2], x[3], grains)
		}, append([]working.Input{}, in...)...)
		b.state("capture_all", w, b.v.Form.Pointer, product, working.In("R", r), settles)
	}
}

// classSpeed is a node for the speed of a class, its share in its title.
func classSpeed(c tables.SolidsClass) *working.Node {
	share := quantity.Format(quantity.Fraction, c.Share, quantity.Metric)
	return working.Row("settling speed at 20 degC of "+share+" of what settles: "+c.What, quantity.Velocity, working.Exactly(c.Speed), "", c.Source, string(c.Sure))
}

// stirred is the figure of how far the water in a settler of its kind is stirred.
func (b basin) stirred() string {
	if b.v.Role.Is("cone-settler") {
		return "stirred_cone"
	}
	return "stirred_radial"
}

// overRadial is what the settler catches over what a radial-flow settler does at the same loading.
func (b basin) overRadial() *working.Node {
	if b.v.Role.Is("swirl-settler") {
		return b.t.SolidsFigure("swirl_over_radial", quantity.Number)
	}
	return working.Fixed("catch over that of a radial-flow settler", quantity.Number, 1, judgement)
}

// Residence is T, the time in which a flow fills a vessel: the mean time that water stays in it.
//
//	T = V/Q
//
//	V  water in the vessel, m3
//	Q  flow, m3/s, above zero
//
// Dead corners count as if their water moved: a tracer comes out sooner.
// Source: definition.
func Residence(volume, flow float64) (float64, string) {
	if flow <= 0 {
		return math.NaN(), "nothing flows into the settler"
	}
	return volume / flow, ""
}

// residence enters how long the water stays.
func (b basin) residence() {
	flow := working.In("Qmax", b.find("greatest_inflow", working.Always, ""))
	for _, w := range working.Waters {
		b.state("residence_time", w, b.v.Form.Pointer, func(x []float64) (float64, string) { return Residence(x[0], x[1]) },
			working.In("V", b.volume(w)), flow)
	}
}

// volume is the water in the settler while the pump runs.
func (b basin) volume(w string) *working.Node {
	return found(b.l, working.Address{Subject: b.v.ID, Name: "water_volume", Case: working.RunClean, Water: w}, "water in "+b.v.ID, quantity.Volume, b.v.Pointer)
}
