package fishload

import (
	"math"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/water"
	"dryfit/internal/working"
)

// overDepth is what a stone of medium pores takes over the pressure of the water above it, Pa.
const overDepth = 2400

// air enters whether the air pump can do what the stones ask of it, and where it all stands.
func (v *surveyor) air() {
	stones := v.Items("/air/stones")
	if len(stones) == 0 && len(v.Keys("/air/pump")) == 0 {
		return
	}
	v.l.Put("blown_air", theAir)
	var asked, wanted, rims []working.Input
	for i, stone := range stones {
		asked = append(asked, v.file("n", "air stones", stone+"/count", quantity.Number), v.file("A", "air through each", stone+"/flow", quantity.Flow))
		name, _ := v.Word(stone + "/in").Value()
		vessel := v.Vessel(name)
		if vessel == nil {
			continue
		}
		wanted = append(wanted, working.In("p", working.Step("pressure that the stones want", quantity.Pressure, "rho g (z - z0 - at) + 2.4 kPa", "hydrostatics", func(x []float64) (float64, string) {
			return 1000*water.G*math.Max(0, x[0]-x[1]-x[2]) + overDepth, ""
		}, v.found("z", working.Address{Subject: vessel.ID, Name: "water_level", Case: working.RunWorst, Water: "usual"}, "level of the water", quantity.Length),
			working.In("z0", working.File("floor above the datum", vessel.StandsAt)), v.lies(stone))))
		rims = append(rims, working.In("zr", working.Step("rim of "+vessel.ID, quantity.Length, "floor + height", geometry, sum,
			working.In("z0", working.File("floor above the datum", vessel.StandsAt)), working.In("h", working.File("height of the rim", vessel.Form.Height)))))
		v.stone(stone, i, vessel)
	}
	v.work(always(theAir, "air_shared"), "/air/pump/flow", func(x []float64) (float64, string) {
		y := 0.0
		for i := 1; i+1 < len(x); i += 2 {
			y += x[i] * x[i+1]
		}
		if x[0] <= 0 {
			return math.NaN(), "the air pump gives nothing"
		}
		return y / x[0], ""
	}, append([]working.Input{v.file("A", "air that the pump gives", "/air/pump/flow", quantity.Flow)}, asked...)...)
	if len(wanted) == 0 {
		unknown := working.Unknown("the vessels with stones", quantity.Length, "/air/stones", "")
		wanted, rims = []working.Input{working.In("p", unknown)}, []working.Input{working.In("zr", unknown)}
	}
	v.work(always(theAir, "air_pressure_share"), "/air/pump/against", func(x []float64) (float64, string) {
		most, _ := greatest(x[1:])
		if x[0] <= 0 {
			return math.NaN(), "the air pump has no pressure"
		}
		return most / x[0], ""
	}, append([]working.Input{v.file("pp", "pressure at which the air pump gives its air", "/air/pump/against", quantity.Pressure)}, wanted...)...)
	v.work(always(theAir, "air_pump_over_water"), "/air/pump/stands_at", func(x []float64) (float64, string) {
		most, _ := greatest(x[1:])
		return x[0] - most, ""
	}, append([]working.Input{v.file("h", "air pump above the datum", "/air/pump/stands_at", quantity.Length)}, rims...)...)
	guard := v.Switch("/air/pump/non_return")
	on, given := guard.On()
	f := working.Fact{Subject: theAir, Name: "air_pump_guarded", Word: yesNo(on), At: guard.Pointer()}
	if !given {
		f.Word, f.Missing = "", []string{guard.Pointer()}
	}
	v.l.Note(f)
}

// stone enters how far a set of stones lies from the intake of a solids line.
func (v *surveyor) stone(stone string, i int, vessel *system.Vessel) {
	for _, line := range v.Lines {
		if line.From.Vessel == vessel && line.Duty == "flow" && line.Carries.Is("solids") {
			id := strings.TrimPrefix(stone, "/")
			v.l.Put("tank_stones", id)
			v.take(always(id, "stone_from_intake"), stone+"/from_intake", working.File("from the stones to the nearest intake", v.Number(stone+"/from_intake", quantity.Length)))
			return
		}
	}
}
