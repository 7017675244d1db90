package reference

import (
	"fmt"
	"math"

	"dryfit/internal/fishload"
	"dryfit/internal/tables"
	"dryfit/internal/water"
	"dryfit/internal/working"
)

var fishTables = tables.Embedded()

// within picks out of a range of sources: u = 0 is what is used, -1 the least, 1 the most.
func (in *inputs) within(v working.Value) float64 {
	switch u := in.num("u"); {
	case u < 0:
		return v.Low
	case u > 0:
		return v.High
	}
	return v.X
}

// known is a row of a table by the word `of`.
func known[T any](in *inputs, find func(string) (T, bool)) (T, error) {
	key := in.word("of")
	row, ok := find(key)
	if !ok {
		return row, fmt.Errorf("no row of the table is called %q", key)
	}
	return row, nil
}

func figureOf(key string) float64 { return fishTables.Figure(key).Value.X }

// made is the ammonia of a feed, with the table's share of the protein unless the row gives one.
func (in *inputs) made() (float64, error) {
	return reasoned(fishload.AmmoniaMade(in.num("f"), in.num("pc"), in.or("a", figureOf("ammonia_of_protein"))))
}

// timesMade is the ammonia of a feed times a figure of the table.
func timesMade(key string) function {
	return func(in *inputs) (float64, error) {
		made, err := in.made()
		return made * figureOf(key), err
	}
}

// bed is what a cubic metre of a bed turns at the row's temperature and pH.
func (in *inputs) bed() (float64, error) {
	medium, err := known(in, fishTables.Medium)
	if err == nil && !medium.HasBedRate {
		err = fmt.Errorf("nobody measured a bed of %s", medium.Kind)
	}
	return medium.BedRate.X * fishload.Factor(fishTables.Nitrification("temperature", in.num("t")).X, fishTables.Nitrification("pH", in.num("pH")).X, 1), err
}

// over divides what one gives by what another gives.
func over(above, below function) function {
	return func(in *inputs) (float64, error) {
		a, err := above(in)
		if err != nil {
			return 0, err
		}
		b, err := below(in)
		return a / b, err
	}
}

func (in *inputs) volume() (float64, error) { return in.num("v"), nil }

// breath is that of a lot by the table of species, and its factor of size.
func (in *inputs) breath() (float64, error) {
	s, err := known(in, fishTables.Species)
	if err != nil {
		return 0, err
	}
	return reasoned(fishload.BreathAt(in.within(fishTables.Figure("breath_of_mass").Value), s.OxygenUse, in.num("t"), s.At, figureOf("breath_q10")))
}

// air is what a stone brings in at the row's level and temperature, at the sea.
func (in *inputs) air(standard float64) (float64, error) {
	k, why := fishload.FieldTransfer(standard, in.or("alpha", figureOf("transfer_alpha")), in.num("t"))
	full, v := water.OxygenSaturation(in.num("t"), 101325)
	if !v.Defined() {
		return 0, fmt.Errorf("no saturation")
	}
	return reasoned(k*(full-in.num("c")), why)
}

func (in *inputs) standard() (float64, error) {
	return reasoned(fishload.StandardTransfer(in.num("air"), in.num("s"), in.num("h")))
}

func init() {
	made, bed, volume := (*inputs).made, (*inputs).bed, (*inputs).volume
	register(map[string]function{
		"feed_at": func(in *inputs) (float64, error) {
			return reasoned(fishload.FeedAt(in.num("t"), in.or("stop", math.Inf(-1)), []float64{in.num("t1"), in.num("t2")}, []float64{in.num("f1"), in.num("f2")}))
		},
		// the same feed at every temperature, but none below where its species stops
		"feed_of_species": func(in *inputs) (float64, error) {
			s, err := known(in, fishTables.Species)
			if err != nil {
				return 0, err
			}
			return reasoned(fishload.FeedAt(in.num("t"), s.FeedsFrom, []float64{in.num("t")}, []float64{in.num("f")}))
		},
		"ammonia_made": made,
		// what an author finds who multiplies by a ratio of masses
		"ammonia_as": func(in *inputs) (float64, error) {
			x, err := in.made()
			return x * in.num("as"), err
		},
		"nitrify_oxygen":      timesMade("nitrify_oxygen"),
		"alkalinity_used":     timesMade("nitrify_alkalinity"),
		"nitrify_co2":         timesMade("nitrify_carbon_dioxide"),
		"ammonia_over_volume": over(made, volume),
		"alkalinity_fall":     over(timesMade("nitrify_alkalinity"), volume),
		"oxygen_fish_and_bacteria": func(in *inputs) (float64, error) {
			x, err := timesMade("nitrify_oxygen")(in)
			return in.num("f")*figureOf("oxygen_of_feed") + x, err
		},
		"figure": func(in *inputs) (float64, error) { return in.within(fishTables.Figure(in.word("of")).Value), nil },
		"breath": (*inputs).breath,
		"breath_at": func(in *inputs) (float64, error) {
			return reasoned(fishload.BreathAt(in.num("m"), in.num("r"), in.num("t"), in.num("t0"), in.num("q10")))
		},
		"breath_growth": func(in *inputs) (float64, error) {
			return reasoned(fishload.BreathAt(1, 1, in.num("t"), in.num("from"), in.within(fishTables.Figure("breath_q10").Value)))
		},
		"breath_after_meal": func(in *inputs) (float64, error) {
			r, err := in.breath()
			return r * figureOf("breath_after_meal"), err
		},
		"species_oxygen": func(in *inputs) (float64, error) {
			s, err := known(in, fishTables.Species)
			return map[string]float64{"danger": s.Danger, "stress": s.Stress, "ease": s.Ease}[in.word("is")], err
		},
		"species_temperature": func(in *inputs) (float64, error) {
			s, err := known(in, fishTables.Species)
			return map[string]float64{"coldest": s.Coldest, "ease_low": s.EaseLow, "ease_high": s.EaseHigh, "warmest": s.Warmest, "feeds_from": s.FeedsFrom}[in.word("is")], err
		},
		"species_density": func(in *inputs) (float64, error) {
			s, err := known(in, fishTables.Species)
			return s.Density, err
		},
		"crop_feed": func(in *inputs) (float64, error) {
			c, err := known(in, fishTables.Crop)
			return map[string]float64{"least": c.FeedLeast, "most": c.FeedMost}[in.word("is")], err
		},
	})
	register(map[string]function{
		"nitrification": func(in *inputs) (float64, error) {
			at := in.or("pH", 0)
			if in.word("of") == "temperature" {
				at = in.num("t")
			}
			return in.within(fishTables.Nitrification(in.word("of"), at)), nil
		},
		"nitrification_factor": func(in *inputs) (float64, error) {
			return fishload.Factor(fishTables.Nitrification("temperature", in.num("t")).X, fishTables.Nitrification("pH", in.num("pH")).X, in.or("measured", 1)), nil
		},
		"surface_turns": func(in *inputs) (float64, error) {
			return in.within(fishTables.Figure("surface_rate").Value) * fishTables.Nitrification("temperature", in.num("t")).X, nil
		},
		"bed_turns":  bed,
		"bed_wanted": over(made, bed),
		"bed_rate": func(in *inputs) (float64, error) {
			medium, err := known(in, fishTables.Medium)
			return in.within(medium.BedRate), err
		},
		"medium_surface": func(in *inputs) (float64, error) {
			medium, err := known(in, fishTables.Medium)
			return in.within(medium.Surface), err
		},
		"medium_void": func(in *inputs) (float64, error) {
			medium, err := known(in, fishTables.Medium)
			return medium.Void, err
		},
		"grain_surface": func(in *inputs) (float64, error) {
			return reasoned(fishload.SmoothGrainSurface(in.num("e"), in.num("d")))
		},
		"surface_wanted": func(in *inputs) (float64, error) {
			x, err := in.made()
			return x * in.or("as", 1) / in.num("rate"), err
		},
		"media_wanted": func(in *inputs) (float64, error) {
			x, err := in.made()
			if err != nil {
				return 0, err
			}
			medium, err := known(in, fishTables.Medium)
			return x * in.or("as", 1) / in.num("rate") / in.within(medium.Surface), err
		},
		"ammonia_level": func(in *inputs) (float64, error) {
			return reasoned(fishload.AmmoniaLevel(in.num("p"), in.num("n"), in.num("pt"), in.num("q")))
		},
		"ammonia_flow": func(in *inputs) (float64, error) {
			x, err := in.made()
			if err != nil {
				return 0, err
			}
			return reasoned(fishload.AmmoniaFlow(x, in.num("c"), in.num("e")))
		},
		"flow_for_ammonia": func(in *inputs) (float64, error) {
			return reasoned(fishload.AmmoniaFlow(in.num("p"), in.num("c"), in.num("e")))
		},
	})
	register(map[string]function{
		"standard_transfer": (*inputs).standard,
		// what is left of the clean-water test, with the oxygen that the author takes for full
		"transfer_left": func(in *inputs) (float64, error) {
			k, why := fishload.FieldTransfer(1, in.num("alpha"), in.num("t"))
			return reasoned(k*(in.num("cs")-in.num("c")), why)
		},
		"transfer_factor": func(in *inputs) (float64, error) { return in.air(1) },
		"air_brings": func(in *inputs) (float64, error) {
			s, err := in.standard()
			if err != nil {
				return 0, err
			}
			return in.air(s)
		},
		"steady_oxygen": func(in *inputs) (float64, error) {
			return reasoned(fishload.SteadyOxygen(in.or("q", 0), in.or("in", 0), in.or("k", 0), in.or("cs", 0), in.num("r")))
		},
		"still_time": func(in *inputs) (float64, error) {
			return reasoned(fishload.StillTime(in.num("c0"), in.num("cd"), in.num("v"), in.num("m"), in.num("m")*in.num("r")))
		},
		"sink_time": func(in *inputs) (float64, error) {
			return reasoned(fishload.SinkTime(in.num("c0"), in.num("cd"), in.num("v"), in.or("m", 0), in.num("k"), in.num("cs"), in.num("r")))
		},
		"with_backup": func(in *inputs) (float64, error) {
			return reasoned(fishload.WithBackup(in.num("wait"), in.num("lasts"), in.num("c0"), in.num("cd"), in.num("v"), in.num("m"), in.num("k"), in.num("cs"), in.num("m")*in.num("r")))
		},
		"alkalinity_time": func(in *inputs) (float64, error) {
			return reasoned(fishload.AlkalinityTime(in.num("alk"), in.num("b")))
		},
		"base_wanted": func(in *inputs) (float64, error) {
			x, err := timesMade("nitrify_alkalinity")(in)
			if err != nil {
				return 0, err
			}
			base, err := known(in, fishTables.Base)
			return x / base.Alkalinity, err
		},
		"base_share": func(in *inputs) (float64, error) {
			base, err := known(in, fishTables.Base)
			if err != nil {
				return 0, err
			}
			x, err := timesMade("nitrify_alkalinity")(in)
			return in.num("g") * base.Alkalinity / x, err
		},
		"topup_chlorine": func(in *inputs) (float64, error) {
			return reasoned(fishload.TopUpChlorine(in.num("cs"), in.num("v1"), in.num("v")))
		},
		"nitrate_level": func(in *inputs) (float64, error) {
			return reasoned(fishload.NitrateLevel(in.num("rise"), in.num("r")))
		},
		"ammonium_chloride": func(in *inputs) (float64, error) {
			return fishload.AmmoniumChloride(in.num("c"), in.num("v")), nil
		},
	})
}
