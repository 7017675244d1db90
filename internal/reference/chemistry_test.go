package reference

import "dryfit/internal/water"

func (in *inputs) ammoniaShare() (float64, water.Validity) {
	return water.AmmoniaFraction(in.num("pH"), in.num("t"))
}

// oxygenAt gives the oxygen that water can hold at a height above the sea.
func oxygenAt(z, kelvin float64) (float64, water.Validity) {
	p, v := water.AirPressure(z)
	c, w := water.OxygenSaturation(kelvin, p)
	return v.And(w).Of(c)
}

func init() {
	register(map[string]function{
		"oxygen_saturation": func(in *inputs) (float64, error) {
			return valued(water.OxygenSaturation(in.num("t"), in.num("p")))
		},
		// what the vapour and the departure from an ideal gas make of the plain ratio of pressures
		"oxygen_pressure_term": func(in *inputs) (float64, error) {
			c, v := water.OxygenSaturation(in.num("t"), in.num("p"))
			sea, w := water.OxygenSaturation(in.num("t"), 101325)
			return valued(v.And(w).Of(c / sea / (in.num("p") / 101325)))
		},
		"oxygen_at_altitude": func(in *inputs) (float64, error) { return valued(oxygenAt(in.num("z"), in.num("t"))) },
		// how many times as much the water holds at the sea
		"oxygen_fall": func(in *inputs) (float64, error) {
			sea, v := oxygenAt(0, in.num("t"))
			up, w := oxygenAt(in.num("z"), in.num("t"))
			return valued(v.And(w).Of(sea / up))
		},
		// what a reading is of all that the water can hold
		"oxygen_share": func(in *inputs) (float64, error) {
			most, v := oxygenAt(in.num("z"), in.num("t"))
			return valued(v.Of(in.num("c") / most))
		},
		"ammonia_pka":   func(in *inputs) (float64, error) { return valued(water.AmmoniaPKa(in.num("t"))) },
		"ammonia_share": func(in *inputs) (float64, error) { return valued(in.ammoniaShare()) },
		"un_ionised": func(in *inputs) (float64, error) {
			f, v := in.ammoniaShare()
			return valued(v.Of(f * in.num("tan")))
		},
		"greatest_tan": func(in *inputs) (float64, error) {
			f, v := in.ammoniaShare()
			return valued(v.Of(in.num("uia") / f))
		},
		"carbonic_pk1": func(in *inputs) (float64, error) { return valued(water.CarbonicPK1(in.num("t"))) },
		"carbon_dioxide": func(in *inputs) (float64, error) {
			return valued(water.CarbonDioxide(in.num("alk"), in.num("pH"), in.num("t")))
		},
		// carbon dioxide at one temperature over that at another, at the same pH
		"carbon_dioxide_factor": func(in *inputs) (float64, error) {
			c, v := water.CarbonDioxide(0.05, 7, in.num("t"))
			from, w := water.CarbonDioxide(0.05, 7, in.num("from"))
			return valued(v.And(w).Of(c / from))
		},
		"alkalinity_at": func(in *inputs) (float64, error) {
			return valued(water.AlkalinityAt(in.num("co2"), in.num("pH"), in.num("t")))
		},
	})
}
