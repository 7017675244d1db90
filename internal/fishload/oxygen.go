package fishload

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/water"
	"dryfit/internal/working"
)

// full is the oxygen that the water holds when it is full of it.
func (v *surveyor) full(w string) working.Input {
	a := day(theWater, "oxygen_full", w)
	n := v.l.Find(a)
	if n == nil {
		n = v.work(a, v.Water.Temperature.Pointer, func(x []float64) (float64, string) {
			p, here := water.AirPressure(x[1])
			c, valid := water.OxygenSaturation(x[0], p)
			if valid = valid.And(here); !valid.Defined() {
				return math.NaN(), "the oxygen that water holds is not known at this temperature and height"
			}
			if valid == water.Extrapolated {
				return c, "outside the range that the formula was made for"
			}
			return c, ""
		}, v.temperature(w), working.In("z", working.File("height above the sea", v.Site.Altitude)))
	}
	return working.In("Cs", n)
}

// level is an oxygen level that the species of a tank set: the most demanding of its lots.
func (v *surveyor) level(tank *system.Vessel, symbol, title, stated string, get func(tables.Species) float64) working.Input {
	var in []working.Input
	for _, one := range v.lotsIn(tank) {
		in = append(in, v.species(one, symbol, title, quantity.Concentration, stated, get))
	}
	return working.In(symbol, working.Step(title, quantity.Concentration, "the greatest of its lots", species, greatest, in...))
}

func greatest(x []float64) (float64, string) {
	y := math.Inf(-1)
	for _, one := range x {
		y = math.Max(y, one)
	}
	return y, ""
}

func (v *surveyor) danger(tank *system.Vessel) working.Input {
	return v.level(tank, "Cd", "oxygen at which the fish are in danger", "/least_oxygen", func(s tables.Species) float64 { return s.Danger })
}

// transfer is what the air stones of a vessel bring in, as water that they fill with oxygen in time.
func (v *surveyor) transfer(vessel *system.Vessel, w string) working.Input {
	in := []working.Input{deep(vessel, v.found("z", least(vessel.ID, "water_level", w), "level of the water", quantity.Length)), v.temperature(w), v.figure("al", "transfer_alpha", quantity.Number)}
	for _, stone := range v.Items("/air/stones") {
		name := v.Word(stone + "/in")
		if !name.Is(vessel.ID) {
			continue
		}
		in = append(in, v.file("n", "air stones", stone+"/count", quantity.Number), v.file("A", "air through each", stone+"/flow", quantity.Flow), v.lies(stone), v.share(stone))
	}
	return working.In("K", working.Step("water that the air would fill with oxygen in time", quantity.Flow, "sum of S a 1.024^(T - 20)/9.09 mg/L", "ASCE 2-06", func(x []float64) (float64, string) {
		k := 0.0
		for i := 3; i+3 < len(x); i += 4 {
			s, why := StandardTransfer(x[i]*x[i+1], x[i+3], x[0]-x[i+2])
			if why != "" {
				return math.NaN(), why
			}
			one, why := FieldTransfer(s, x[2], x[1])
			if why != "" {
				return math.NaN(), why
			}
			k += one
		}
		return k, ""
	}, in...))
}

// deep is the depth of the water in a vessel at a level.
func deep(vessel *system.Vessel, level working.Input) working.Input {
	return working.In("h", working.Step("depth of the water", quantity.Length, "z - floor", geometry, difference,
		level, working.In("z0", working.File("floor above the datum", vessel.StandsAt))))
}

// lies is the height of a stone above the floor; where nothing is said it lies on it.
func (v *surveyor) lies(stone string) working.Input {
	at := v.file("at", "height of the stones above the floor", stone+"/at", quantity.Length)
	if at.Origin == working.Absent {
		return working.In("at", working.Fixed("stones on the floor", quantity.Length, 0, "as the schema says"))
	}
	return at
}

// share is what a stone's air leaves in each metre of water.
func (v *surveyor) share(stone string) working.Input {
	kind := v.Word(stone + "/kind")
	name, given := kind.Value()
	key := map[string]string{"fine": "stone_fine", "medium": "stone_medium", "coarse": "stone_coarse", "ring": "stone_medium", "open-tube": "stone_coarse"}[name]
	if !given || key == "" {
		return working.In("s", working.Unknown("size of the bubbles", quantity.Number, kind.Pointer(), ""))
	}
	return v.figure("s", key, quantity.Number)
}

// oxygen enters the oxygen balance of every tank.
func (v *surveyor) oxygen() {
	for _, w := range working.Waters {
		if v.stocked() {
			v.full(w)
		}
		for _, tank := range v.tanks() {
			v.oxygenIn(tank, w)
		}
	}
}

func (v *surveyor) oxygenIn(tank *system.Vessel, w string) {
	at := v.lotsIn(tank)[0].pointer + "/mass"
	peak := working.In("Rp", v.work(day(tank.ID, "oxygen_need_peak", w), at, product,
		working.In("R", v.breath(tank, w)), v.figure("k", "breath_after_meal", quantity.Number)))
	full, carried := v.full(w), v.carried(w)
	flow, air := v.inflow(tank.ID, w), v.transfer(tank, w)
	stress := v.level(tank, "C", "least oxygen that they bear without stress", "", func(s tables.Species) float64 { return s.Stress })
	ease := v.level(tank, "C", "oxygen that they grow at", "", func(s tables.Species) float64 { return s.Ease })

	by := v.work(least(tank.ID, "oxygen_by_flow", w), at, func(x []float64) (float64, string) { return x[0] * (x[1] - x[2]), "" }, flow, carried, ease)
	blown := v.work(least(tank.ID, "oxygen_by_air", w), "/air", func(x []float64) (float64, string) { return x[0] * (x[1] - x[2]), "" }, air, full, ease)
	v.work(least(tank.ID, "oxygen_share_at_ease", w), "/air", over, peak, working.In("Oq", by), working.In("Oa", blown))
	v.work(least(tank.ID, "oxygen_share", w), "/air", func(x []float64) (float64, string) {
		return over([]float64{x[0], x[1] * (x[2] - x[5]), x[3] * (x[4] - x[5])})
	}, peak, flow, carried, air, full, stress)
	v.work(least(tank.ID, "oxygen_level", w), "/air", func(x []float64) (float64, string) {
		c, why := SteadyOxygen(x[0], x[1], x[2], x[3], x[4])
		return math.Max(c, 0), why
	}, flow, carried, air, full, peak)
}

// over is a need over two supplies together.
func over(x []float64) (float64, string) {
	if x[0] <= 0 {
		return 0, "nothing is needed"
	}
	if have := x[1] + x[2]; have > x[0]/unending {
		return x[0] / have, ""
	}
	return unending, "at this level nothing comes in"
}

// carried is the oxygen of the water that comes back into a tank.
func (v *surveyor) carried(w string) working.Input {
	return working.In("Ci", working.Step("oxygen of the water that comes back", quantity.Concentration, "s Cs", judgement, product, v.full(w), v.figure("s", "flow_carries", quantity.Number)))
}

// before is the oxygen of a tank on a usual day, from which it falls when something fails.
func (v *surveyor) before(tank *system.Vessel, w string) working.Input {
	return working.In("C0", working.Step("oxygen before it fails", quantity.Concentration, "Q Ci + K Cs - R = (Q + K) C, at most Cs", mixed, func(x []float64) (float64, string) {
		c, why := SteadyOxygen(x[0], x[1], x[2], x[3], x[4])
		return math.Max(0, math.Min(c, x[3])), why
	}, v.inflow(tank.ID, w), v.carried(w), v.transfer(tank, w), v.full(w), working.In("R", v.breath(tank, w))))
}
