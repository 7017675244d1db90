package quantity

import "slices"

// Kind says what a quantity measures, and so which units it may carry.
type Kind string

// The kinds. Behind each stands the SI unit in which its values are held.
const (
	Length                Kind = "length"                 // m
	Area                  Kind = "area"                   // m2
	Volume                Kind = "volume"                 // m3
	Flow                  Kind = "flow"                   // m3/s
	Velocity              Kind = "velocity"               // m/s
	Head                  Kind = "head"                   // m of water
	Pressure              Kind = "pressure"               // Pa
	Mass                  Kind = "mass"                   // kg
	Time                  Kind = "time"                   // s
	Temperature           Kind = "temperature"            // K, from absolute zero
	TemperatureDifference Kind = "temperature_difference" // K
	Power                 Kind = "power"                  // W
	Energy                Kind = "energy"                 // J
	Concentration         Kind = "concentration"          // kg/m3
	Stocking              Kind = "stocking"               // kg of fish in each m3
	Fraction              Kind = "fraction"               // 1
	Angle                 Kind = "angle"                  // rad
	FeedRate              Kind = "feed_rate"              // kg/s
	Hardness              Kind = "hardness"               // of rubber, in its own scale
	Money                 Kind = "money"                  // in its own currency
	Current               Kind = "current"                // A
	Voltage               Kind = "voltage"                // V
	Force                 Kind = "force"                  // N
	Stress                Kind = "stress"                 // Pa
	SpecificSurface       Kind = "specific_surface"       // 1/m
	Viscosity             Kind = "viscosity"              // m2/s, kinematic
	ArealFeed             Kind = "areal_feed"             // kg/(m2 s)
	ArealRate             Kind = "areal_rate"             // kg/(m2 s)
	Number                Kind = "number"                 // plain number, no unit
)

// Kinds returns every kind, always in the same order.
func Kinds() []Kind {
	list := make([]Kind, len(table))
	for i, k := range table {
		list[i] = k.kind
	}
	return list
}

// Title returns the kind in plain words, such as "feed rate".
func (k Kind) Title() string {
	if f, ok := facts[k]; ok {
		return f.title
	}
	return string(k)
}

// Units returns the accepted spellings, the usual one first. It is empty for
// plain numbers, and for money, which takes any ISO 4217 code. A fraction may
// also be written without a unit.
func (k Kind) Units() []string {
	f, ok := facts[k]
	if !ok {
		return nil
	}
	var list []string
	for _, u := range f.units {
		if u.name != "" {
			list = append(list, u.name)
		}
	}
	return list
}

// Shown returns the units that [Format] shows values of this kind in, from small values to
// large ones. It is empty for what is shown without a unit.
func (k Kind) Shown(s System) []string {
	f, ok := facts[k]
	if !ok {
		return nil
	}
	steps := f.metric
	if s == US && f.us != nil {
		steps = f.us
	}
	var list []string
	for _, one := range steps {
		if one.unit != "" && !slices.Contains(list, one.unit) {
			list = append(list, one.unit)
		}
	}
	return list
}

// Example returns a quantity of this kind as it is written in a file.
func (k Kind) Example() string {
	if f, ok := facts[k]; ok {
		return f.example
	}
	return ""
}

// described returns the title with its article: "a length", "an area", "money".
func (k Kind) described() string {
	title := k.Title()
	switch k {
	case Money, Hardness:
		return title
	case Area, Energy, Angle:
		return "an " + title
	}
	return "a " + title
}

// basisWords are the substances that a concentration may be stated as: 10 mg/L N
// and 44.3 mg/L NO3 are the same water.
var basisWords = []string{
	"CaCO3", "N", "Cl", "HCO3", "CO2", "O2", "NH3", "NH4", "NO2", "NO3",
	"P", "PO4", "K", "Ca", "Mg", "Na", "Fe", "S", "SO4", "Cl2",
}

func isBasis(word string) bool { return slices.Contains(basisWords, word) }
