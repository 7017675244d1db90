package making

import (
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// chlorideInSalt is the share of chloride in common salt by mass, 35.453 of 58.443.
const chlorideInSalt = 35.453 / 58.443

// fixings enters what the water does to fasteners that stand in it.
func (v *surveyor) fixings() {
	v.l.Put("wetted_fixings")
	for _, vessel := range v.Vessels {
		for _, f := range vessel.Fixings {
			v.fixing(vessel.ID+strings.TrimPrefix(f.Pointer, vessel.Pointer), f)
		}
	}
	for _, line := range v.Lines {
		for _, p := range line.Pieces {
			if p.FloorDrain != nil && p.FloorDrain.Fixings != nil {
				v.fixing(p.ID()+"/fixings", p.FloorDrain.Fixings)
			}
		}
	}
}

func (v *surveyor) fixing(id string, f *system.Fixings) {
	if wet, given := f.Wetted.On(); given && !wet {
		return
	}
	v.l.Put("wetted_fixings", id)
	at := f.Grade.Pointer()
	grade, given := f.Grade.Value()
	metal, known := v.t.Metal(grade)
	fact := func(name, word string) {
		out := working.Fact{Subject: id, Name: name, Word: word, At: at}
		if word == "" {
			out.Missing = []string{at}
		}
		v.l.Note(out)
	}
	fact("fixing_grade", grade)
	fit := ""
	if given && known {
		fit = "no"
		if metal.WetFit {
			fit = "yes"
		}
	}
	fact("fixing_wet_fit", fit)

	ceiling, least := working.Unknown("chloride that the grade stands", quantity.Concentration, at, ""), working.Unknown("least pH for the grade", quantity.Number, at, "")
	if given && known {
		if metal.ChlorideLeast.Known {
			ceiling = working.Row("chloride that "+grade+" stands", quantity.Concentration,
				working.Within(metal.ChlorideLeast.Value, metal.ChlorideLeast.Value, metal.ChlorideMost.Value), at, metal.Source, string(metal.Sure))
		}
		if metal.PHLeast.Known {
			least = working.Row("least pH for "+grade, quantity.Number, working.Exactly(metal.PHLeast.Value), at, metal.Source, string(metal.Sure))
		}
	}
	chloride := []working.Input{
		working.In("chloride", working.File("chloride of the water, highest", v.Water.Chloride.High)),
		working.In("salt", working.File("salt at the strongest treatment", v.Water.SaltTreatment)),
	}
	switch {
	case given && known && !metal.ChlorideLeast.Known && metal.WetFit:
		v.work(always(id, "chloride_share"), at, func(x []float64) (float64, string) { return 0, metal.Grade + " does not pit" }, chloride...)
	default:
		v.work(always(id, "chloride_share"), at, func(x []float64) (float64, string) {
			return (x[0] + chlorideInSalt*x[1]) / x[2], ""
		}, append(chloride, working.In("ceiling", ceiling))...)
	}
	acid := ""
	switch {
	case given && known && metal.WetFit && !metal.PHLeast.Known:
		fact("fixing_acid_fit", "yes")
		return
	case given && known:
		acid = "no"
	}
	fact("fixing_acid_fit", acid)
	v.work(always(id, "ph_margin"), at, difference,
		working.In("pH", working.File("lowest pH of the water", v.Water.PH.Low)),
		working.In("least", least))
}
