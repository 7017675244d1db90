package making

import "math"

// YoungLow and YoungHigh bound Young's modulus of rubber from its hardness.
// Published relations differ by a factor of about 1.6 at 60 Shore A, so both are kept.

// YoungLow is E after Gent, the softer of the two.
//
//	E = 0.0981 (56 + 7.62336 S)/(0.137505 (254 - 2.54 S))  MPa
//
//	S  hardness, Shore A or IRHD, 20 to 80
//
// Outside the range it answers NaN.
// Source: Gent 1958, On the relation between indentation hardness and Young's modulus, Rubber Chem. Technol. 31 (from memory).
func YoungLow(hardness float64) (float64, string) {
	if hardness < 20 || hardness > 80 {
		return math.NaN(), "the relation of hardness and stiffness holds from 20 to 80 Shore A"
	}
	return 1e6 * 0.0981 * (56 + 7.62336*hardness) / (0.137505 * (254 - 2.54*hardness)), ""
}

// YoungHigh is E after Ruess, the stiffer of the two.
//
//	log10 E = 0.0235 S - 0.6403  MPa
//
//	S  hardness, Shore A, 20 to 80 (tried on 30 to 60)
//
// Outside the range it answers NaN. The logarithm is to base ten; copies with
// base e make rubber up to 3.7 times too soft.
// Source: Ruess relation as given by silicone rubber makers' white papers (secondary).
func YoungHigh(hardness float64) (float64, string) {
	if hardness < 20 || hardness > 80 {
		return math.NaN(), "the relation of hardness and stiffness holds from 20 to 80 Shore A"
	}
	return 1e6 * math.Pow(10, 0.0235*hardness-0.6403), ""
}

// Cuff is the rubber sleeve that joins a standing drain to the spigot in the wall.
type Cuff struct {
	PipeOutside float64 // OD, m
	Wall        float64 // w, m
	Span        float64 // g, free length between the pipe ends, m
	ToFoot      float64 // b, from the drain's tail end to the near edge of its foot, m
	Young       float64 // E, Pa
	WallSpring  float64 // k, how stiffly the wall holds the spigot against tilting, N m/rad; +Inf where it is clipped
}

const shearShare = 0.5 // kappa, share of a thin ring's section that carries shear

// Compliance is C, how far the drain's tail is moved aside for each newton, with
// the drain free to tip about the near edge of its foot.
//
//	C = ((g+b)^3 - b^3)/(3 E I) + g/(kappa G A) + (g+b)^2/k
//	I = pi/64 ((OD+2w)^4 - OD^4)
//	A = pi (OD+w) w
//	G = E/3
//
// Symbols are those of Cuff; kappa is 0.5. Units m/N. The cuff is taken as a short
// beam; on a tube as stubby as this that is good to about 40 %.
// Source: Euler-Bernoulli beam with a shear term (Timoshenko), worked for this arrangement; project judgement.
func (c Cuff) Compliance() (float64, string) {
	if c.PipeOutside <= 0 || c.Wall <= 0 || c.Span <= 0 || c.ToFoot < 0 || c.Young <= 0 || c.WallSpring <= 0 {
		return math.NaN(), "a cuff needs a span, a wall and a stiffness above zero"
	}
	g, b := c.Span, c.ToFoot
	arm := g + b
	return (arm*arm*arm-b*b*b)/(3*c.Young*c.inertia()) + g/(shearShare*c.Young/3*c.area()) + arm*arm/c.WallSpring, ""
}

// Force is F, with which the cuff pushes the drain down when its tail would
// stand d higher than the spigot.
//
//	F = d/C
//
// A negative d lifts the drain: the force comes out negative. Units N.
// Source: as Compliance.
func (c Cuff) Force(offset float64) (float64, string) {
	compliance, why := c.Compliance()
	return offset / compliance, why
}

// Tilt is how far the drain tips about the near edge of its foot.
//
//	tilt = F (g^2/2 + g b)/(E I) + F (g+b)/k  rad
//
// Source: as Compliance.
func (c Cuff) Tilt(force float64) float64 {
	g, b := c.Span, c.ToFoot
	return force*(g*g/2+g*b)/(c.Young*c.inertia()) + force*(g+b)/c.WallSpring
}

// ForceLeft is N, with which the drain stands on the floor when its cuff helps least.
//
//	N = s F + W  where the cuff pushes down, and the rubber relaxes with the years
//	N = F + W    where it lifts: that is at its worst on the first day
//
//	F  push of the new cuff, N
//	s  share of it that is left, 0 to 1
//	W  weight of the drain in water, N
//
// Source: balance of the drain; project judgement.
func ForceLeft(push, share, weight float64) float64 { return math.Min(share*push, push) + weight }

func (c Cuff) inertia() float64 {
	out := c.PipeOutside + 2*c.Wall
	return math.Pi / 64 * (math.Pow(out, 4) - math.Pow(c.PipeOutside, 4))
}

func (c Cuff) area() float64 { return math.Pi * (c.PipeOutside + c.Wall) * c.Wall }

// CurtainShare is the open area round the edge of a drain that stands off the
// floor, over the area of its bore.
//
//	share = 4 s (1 - feet)/D
//
//	s     stand-off, m
//	feet  share of the edge that the feet take up, 0 to 1
//	D     bore, m, above zero
//
// Below one the gap throttles the drain.
// Source: continuity, area of the cylinder pi D s over the circle pi D^2/4.
func CurtainShare(standoff, feet, bore float64) (float64, string) {
	if bore <= 0 || feet < 0 || feet >= 1 {
		return math.NaN(), "a drain needs a bore, and feet that leave part of the edge open"
	}
	return 4 * standoff * (1 - feet) / bore, ""
}
