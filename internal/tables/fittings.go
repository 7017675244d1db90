package tables

import (
	"io/fs"
	"maps"
	"math"
	"slices"
)

// Method is the form of a fitting's loss coefficient.
type Method string

// The methods. D is the bore, Dn the nominal size.
const (
	ThreeK   Method = "3K" // K1/Re + Ki (1 + Kd/Dn^0.3), Dn in inches (Darby)
	TwoK     Method = "2K" // K1/Re + Kinf (1 + 25.4 mm/D) (Hooper)
	Constant Method = "K"  // K
)

// Fitting is the loss coefficient of a fitting, h = K V2/2g on the velocity in
// the pipe. The factors span the figures of all tables seen: K times LowFactor
// to K times HighFactor.
type Fitting struct {
	Key, What             string
	Method                Method
	K1, Kinf, Ki, Kd, K   float64
	LowFactor, HighFactor float64
	Note, SpreadSource    string
	Origin
}

// The pipe at which the spread of published figures is compared: DN50, turbulent.
const (
	spreadRe      = 50000
	spreadBoreIn  = 52.5 / 25.4
	spreadNominal = 2
)

// loss is the coefficient at a Reynolds number, a bore and a nominal size in inches.
func (f Fitting) loss(re, boreIn, nominalIn float64) float64 {
	switch f.Method {
	case ThreeK:
		return f.K1/re + f.Ki*(1+f.Kd/math.Pow(nominalIn, 0.3))
	case TwoK:
		return f.K1/re + f.Kinf*(1+1/boreIn)
	default:
		return f.K
	}
}

func (t *Tables) readFittings(files fs.FS) error {
	t.fittings = map[string]Fitting{}
	return each(files, "fittings.csv", "key what method k1 kinf ki kd k k_least k_most note spread_source", func(r row) {
		f := Fitting{
			Key: r.key(r.text("key")), What: r.text("what"),
			Method: Method(r.oneOf("method", string(ThreeK), string(TwoK), string(Constant))),
			Note:   r.maybe("note"), SpreadSource: r.text("spread_source"), Origin: r.origin(),
		}
		switch f.Method {
		case ThreeK:
			f.K1, f.Ki, f.Kd = r.positive("k1"), r.positive("ki"), r.positive("kd")
		case TwoK:
			f.K1, f.Kinf = r.positive("k1"), r.positive("kinf")
		default:
			f.K = r.positive("k")
		}
		least, most, here := r.positive("k_least"), r.positive("k_most"), f.loss(spreadRe, spreadBoreIn, spreadNominal)
		r.ordered("least, own and most K at DN50", least, here, most)
		if here > 0 {
			f.LowFactor, f.HighFactor = least/here, most/here
		}
		t.fittings[f.Key] = f
	})
}

// Fitting finds a fitting by its key, as bend-90-elbow.
func (t *Tables) Fitting(key string) (Fitting, bool) {
	f, ok := t.fittings[key]
	return f, ok
}

// Fittings lists the keys of all fittings in alphabetical order.
func (t *Tables) Fittings() []string { return slices.Sorted(maps.Keys(t.fittings)) }
