package fishload

import (
	"math"
	"strconv"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

// lot is one entry of `fish`: fish of one kind in one vessel.
type lot struct {
	id, pointer string         // fish/0, /fish/0
	in          *system.Vessel // nil where the file does not say
}

// lotsOf is the lots of a file. A fish tank for which it names no fish has a lot
// of which nothing is known: fish are what it is for.
func lotsOf(s *system.System) []lot {
	var out []lot
	held := map[*system.Vessel]bool{}
	items := s.Items("/fish")
	for i, at := range items {
		name, _ := s.Word(at + "/in").Value()
		one := lot{"fish/" + strconv.Itoa(i), at, s.Vessel(name)}
		held[one.in] = true
		out = append(out, one)
	}
	for _, vessel := range s.Vessels {
		if vessel.Role.Is("fish-tank") && !held[vessel] {
			n := strconv.Itoa(len(out))
			out = append(out, lot{"fish/" + n, "/fish/" + n, vessel})
		}
	}
	return out
}

// tanks is the vessels that hold fish, in the order of the lots.
func (v *surveyor) tanks() []*system.Vessel {
	var out []*system.Vessel
	seen := map[*system.Vessel]bool{nil: true}
	for _, one := range v.lots {
		if !seen[one.in] {
			seen[one.in] = true
			out = append(out, one.in)
		}
	}
	return out
}

func (v *surveyor) lotsIn(tank *system.Vessel) []lot {
	var out []lot
	for _, one := range v.lots {
		if one.in == tank {
			out = append(out, one)
		}
	}
	return out
}

// species is a figure that the table of species gives, unless the file states it.
func (v *surveyor) species(one lot, symbol, title string, kind quantity.Kind, stated string, get func(tables.Species) float64) working.Input {
	if stated != "" {
		if n := v.Number(one.pointer+stated, kind); n.Given() {
			return working.In(symbol, working.File(title, n))
		}
	}
	name := v.Word(one.pointer + "/species")
	key, given := name.Value()
	if !given {
		return working.In(symbol, working.Unknown(title, kind, name.Pointer(), ""))
	}
	row, known := v.t.Species(key)
	if !known {
		why := "the table of species does not have " + key + ": write one that it has, or warm-water-fish or cold-water-fish"
		if stated != "" {
			return working.In(symbol, working.Unknown(title, kind, one.pointer+stated, why))
		}
		return working.In(symbol, working.Unknown(title, kind, "", why))
	}
	return working.In(symbol, working.Row(title+", "+row.Plain, kind, working.Exactly(get(row)), name.Pointer(), row.Source, string(row.Sure)))
}

// FeedAt is F, the feed of a day at a temperature of the water.
//
//	F = F1 + (F2 - F1)(T - T1)/(T2 - T1)   between two temperatures of the list
//	F = 0                                  below the temperature at which feeding stops
//
//	T         temperature of the water, K
//	stop      temperature at which feeding stops, K; -Inf for never
//	at, feed  the list, in any order: K and kg/s; below and above it the feed of its ends
//
// It answers NaN for an empty list, or for lists of unlike length.
// Source: definition.
func FeedAt(t, stop float64, at, feed []float64) (float64, string) {
	if len(at) == 0 || len(at) != len(feed) {
		return math.NaN(), "no feed is stated"
	}
	if t < stop {
		return 0, ""
	}
	low, high := -1, -1 // the nearest of the list on either side
	for i := range at {
		if at[i] <= t && (low < 0 || at[i] > at[low]) {
			low = i
		}
		if at[i] >= t && (high < 0 || at[i] < at[high]) {
			high = i
		}
	}
	switch {
	case low < 0 && high < 0:
		return math.NaN(), "no feed is stated"
	case low < 0:
		return feed[high], ""
	case high < 0 || at[high] == at[low]:
		return feed[low], ""
	}
	return feed[low] + (feed[high]-feed[low])*(t-at[low])/(at[high]-at[low]), ""
}

// feed is the feed of a lot at a temperature of the water.
func (v *surveyor) feed(one lot, w string) *working.Node {
	at := one.pointer + "/feed"
	in := []working.Input{v.temperature(w)}
	stops := v.Number(one.pointer+"/stops_below", quantity.Temperature)
	if stops.Given() {
		in = append(in, working.In("Ts", working.File("temperature under which they are not fed", stops)))
	}
	first := len(in)
	list := v.Items(at)
	for _, pair := range list {
		in = append(in, v.file("Ti", "temperature of the list of feed", pair+"/at", quantity.Temperature), v.file("Fi", "feed at that temperature", pair+"/amount", quantity.FeedRate))
	}
	if len(list) == 0 {
		in = append(in, v.file("F", "feed of these fish", at, quantity.FeedRate))
	}
	return v.work(day(one.id, "feed_rate", w), at, func(x []float64) (float64, string) {
		stop := math.Inf(-1)
		if first > 1 {
			stop = x[1]
		}
		if len(list) == 0 {
			return FeedAt(x[0], stop, x[:1], x[first:])
		}
		var at, feed []float64
		for i := first; i+1 < len(x); i += 2 {
			at, feed = append(at, x[i]), append(feed, x[i+1])
		}
		return FeedAt(x[0], stop, at, feed)
	}, in...)
}

// mass is the mass of a lot.
func (v *surveyor) mass(one lot) working.Input {
	return v.file("m", "mass of the fish", one.pointer+"/mass", quantity.Mass)
}

// fish enters what each lot is given and bears, and how dense the tanks are stocked.
func (v *surveyor) fish() {
	for _, one := range v.lots {
		feeds := map[string]*working.Node{}
		for _, w := range working.Waters {
			feeds[w] = v.feed(one, w)
			v.work(day(one.id, "ration", w), one.pointer+"/feed", func(x []float64) (float64, string) {
				if x[1] <= 0 {
					return math.NaN(), "the fish have no mass"
				}
				return x[0] * 86400 / x[1], ""
			}, working.In("F", feeds[w]), v.mass(one))
		}
		v.borne(one, feeds["low"])
	}
	for _, tank := range v.tanks() {
		v.stocking(tank)
	}
}

// borne enters how far the water's temperatures lie inside what the fish bear.
func (v *surveyor) borne(one lot, fed *working.Node) {
	coldest := v.species(one, "Tc", "coldest water that they bear", quantity.Temperature, "/coldest", func(s tables.Species) float64 { return s.Coldest })
	warmest := v.species(one, "Tw", "warmest water that they bear", quantity.Temperature, "/warmest", func(s tables.Species) float64 { return s.Warmest })
	v.work(always(one.id, "cold_room"), v.Water.Temperature.Low.Pointer(), difference, v.temperature("low"), coldest)
	v.work(always(one.id, "warm_room"), v.Water.Temperature.High.Pointer(), difference, warmest, v.temperature("high"))
	v.work(always(one.id, "comfort_room"), v.Water.Temperature.Usual.Pointer(), func(x []float64) (float64, string) {
		return math.Min(x[0]-x[1], x[2]-x[0]), ""
	}, v.temperature("usual"),
		v.species(one, "T1", "lower end of what suits them", quantity.Temperature, "", func(s tables.Species) float64 { return s.EaseLow }),
		v.species(one, "T2", "upper end of what suits them", quantity.Temperature, "", func(s tables.Species) float64 { return s.EaseHigh }))
	v.work(always(one.id, "feeding_room"), one.pointer+"/feed", func(x []float64) (float64, string) {
		if x[2] <= 0 {
			return math.Max(x[0]-x[1], 0), "they are not fed in the coldest water"
		}
		return x[0] - x[1], ""
	}, v.temperature("low"), v.species(one, "Ts", "temperature at which feeding should stop", quantity.Temperature, "", func(s tables.Species) float64 { return s.FeedsFrom }), working.In("F", fed))
}

// stocking enters how much fish a tank holds.
func (v *surveyor) stocking(tank *system.Vessel) {
	lots := v.lotsIn(tank)
	at := lots[0].pointer + "/mass"
	var masses, dense []working.Input
	for _, one := range lots {
		masses = append(masses, v.mass(one))
		dense = append(dense, v.mass(one), v.species(one, "dm", "mass in a cubic metre in skilled hands", quantity.Stocking, "", func(s tables.Species) float64 { return s.Density }))
	}
	m := working.In("m", v.work(always(tank.ID, "fish_mass"), at, sum, masses...))
	for _, w := range working.Waters {
		volume := v.volume("V", tank.ID, w)
		v.work(least(tank.ID, "stocking_density", w), at, func(x []float64) (float64, string) {
			if x[1] <= 0 {
				return math.NaN(), "the tank holds no water"
			}
			return x[0] / x[1], ""
		}, m, volume)
		v.work(least(tank.ID, "density_share", w), at, func(x []float64) (float64, string) {
			if x[0] <= 0 {
				return math.NaN(), "the tank holds no water"
			}
			y := 0.0
			for i := 1; i+1 < len(x); i += 2 {
				y += x[i] / x[i+1]
			}
			return y / x[0], ""
		}, append([]working.Input{volume}, dense...)...)
	}
}
