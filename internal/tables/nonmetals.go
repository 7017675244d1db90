package tables

import (
	"io/fs"
	"strings"
)

// Nonmetal is what a vessel, a liner or a pipe is made of, if it is no metal.
type Nonmetal struct {
	Material string
	Family   string  // plastic, rubber, mineral, timber
	Density  float64 // kg/m3
	Warmest  float64 // degC, that it bears for years
	Sun      bool    // stands years of sun as it is sold
	Food     bool    // fit, as a rule, to touch food or drinking water
	Note     string
	Origin
}

func (t *Tables) readNonmetals(files fs.FS) error {
	t.nonmetals = map[string]Nonmetal{}
	return each(files, "nonmetals.csv", "material aliases family density_kg_m3 warmest_degc sun food note", func(r row) {
		n := Nonmetal{
			Material: r.text("material"), Family: r.oneOf("family", "plastic", "rubber", "mineral", "timber"),
			Density: r.positive("density_kg_m3"), Warmest: r.positive("warmest_degc"), Sun: r.yes("sun"), Food: r.yes("food"),
			Note: r.maybe("note"), Origin: r.origin(),
		}
		for _, name := range append([]string{n.Material}, strings.Fields(r.maybe("aliases"))...) {
			t.nonmetals[r.key(strings.ToLower(name))] = n
		}
	})
}

// Nonmetal finds a material that is no metal by its name; capitals do not count.
func (t *Tables) Nonmetal(name string) (Nonmetal, bool) {
	n, ok := t.nonmetals[strings.ToLower(strings.TrimSpace(name))]
	return n, ok
}
