package making

import (
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

var clampQuantities = []working.Definition{
	{Name: "clamp_chloride_share", Title: "chloride in the water, of what the poorest part of the clamps stands", Symbol: "u", Kind: quantity.Fraction, Of: "each cuff and hose",
		Formula: "(chloride + 0.607 salt)/ceiling", Source: "limits in the table of metals", Sure: "published"},
	{Name: "clamp_pren", Title: "pitting resistance number (PREN) of the poorest steel that its grade allows", Symbol: "PREN", Kind: quantity.Number, Of: "each cuff and hose with clamps of stainless steel",
		Formula: "Cr + 3.3 Mo + 16 N", Source: "International Molybdenum Association", Sure: "published"},
}

var clampFacts = []working.FactDefinition{
	{Name: "clamp_class", Title: "material class of the clamps (DIN 3017)", Words: []string{"W1", "W2", "W3", "W4", "W5", "plastic", "none"}, Of: "each cuff and hose"},
	{Name: "clamp_wet_fit", Title: "whether every part of the clamps may be wetted", Words: []string{"yes", "no"}, Of: "each cuff and hose"},
}

var clampSets = []working.Named{
	{Name: "clamped", Title: "cuffs and hoses"},
	{Name: "clamped_under_water", Title: "cuffs and hoses inside a vessel"},
}

// clamps enters what water does to hose clamps.
func (v *surveyor) clamps() {
	v.l.Put("clamped")
	v.l.Put("clamped_under_water")
	for _, line := range v.Lines {
		for _, p := range line.Pieces {
			var class system.Word
			switch {
			case p.Cuff != nil:
				class = p.Cuff.Clamps
			case p.Hose != nil:
				class = p.Hose.Clamps
			default:
				continue
			}
			v.l.Put("clamped", p.ID())
			if p.In != nil {
				v.l.Put("clamped_under_water", p.ID())
			}
			v.clamp(p.ID(), class)
		}
	}
}

func (v *surveyor) clamp(id string, class system.Word) {
	at := class.Pointer()
	name, given := class.Value()
	v.l.Note(working.Fact{Subject: id, Name: "clamp_class", Word: name, At: at, Missing: missing(name, at)})
	row, metal := v.t.Clamp(name)
	weakest := row.Weakest()
	fit := ""
	switch {
	case !given:
	case metal && !weakest.WetFit:
		fit = "no"
	default:
		fit = "yes" // plastic, or nothing that could rust
	}
	v.l.Note(working.Fact{Subject: id, Name: "clamp_wet_fit", Word: fit, At: at, Missing: missing(fit, at)})

	chloride := []working.Input{
		working.In("chloride", working.File("chloride of the water, highest", v.Water.Chloride.High)),
		working.In("salt", working.File("salt at the strongest treatment", v.Water.SaltTreatment)),
	}
	address := always(id, "clamp_chloride_share")
	switch {
	case given && !metal:
		v.work(address, at, func([]float64) (float64, string) { return 0, "plastic does not pit" }, chloride...)
		return
	case given && weakest.ChlorideLeast.Known:
		v.work(address, at, chlorideShare, append(chloride, working.In("ceiling", working.Row("chloride that "+weakest.Grade+" stands", quantity.Concentration,
			working.Within(weakest.ChlorideLeast.Value, weakest.ChlorideLeast.Value, weakest.ChlorideMost.Value), at, weakest.Source, string(weakest.Sure))))...)
	default:
		v.work(address, at, chlorideShare, append(chloride, working.In("ceiling", working.Unknown("chloride that the clamps stand", quantity.Concentration, at, "")))...)
	}
	if given && weakest.CrLeast.Known {
		v.work(always(id, "clamp_pren"), at, func(x []float64) (float64, string) { return PREN(x[0], x[1], x[2]) },
			share("Cr", "chromium, the least that "+weakest.Grade+" has, per cent", weakest.CrLeast, at, weakest),
			share("Mo", "molybdenum, the least, per cent", weakest.MoLeast, at, weakest),
			working.In("N", working.Fixed("nitrogen, the least, per cent", quantity.Number, 0, "no grade asks for any")))
	}
}

// share is a share by mass from the table of metals.
func share(symbol, title string, b tables.Bound, at string, m tables.Material) working.Input {
	return working.In(symbol, working.Row(title, quantity.Number, working.Exactly(b.Value), at, m.Source, string(m.Sure)))
}

func chlorideShare(x []float64) (float64, string) {
	salt, why := ChlorideOfSalt(x[1])
	return (x[0] + salt) / x[2], why
}
