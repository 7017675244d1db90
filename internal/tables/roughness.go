package tables

import (
	"io/fs"
	"strings"
)

// The duties, conditions and surfaces of Roughness.
const (
	PumpSide = "pump-side" // strained water under pressure
	Gravity  = "gravity"   // water with solids

	Clean     = "clean"
	InService = "in-service"
	Neglected = "neglected"

	SmoothPlastic = "smooth-plastic"
	SmoothHose    = "hose"
	RibbedHose    = "ribbed-hose"
	Galvanised    = "galvanised"
)

// Rough is the state of a wall: sand roughness Ks, and the thickness of the
// film by which the bore is narrower all round; metres.
type Rough struct {
	Ks, KsLeast, KsMost       float64
	Film, FilmLeast, FilmMost float64
	Origin
}

func (t *Tables) readRoughness(files fs.FS) error {
	t.roughness = map[string]Rough{}
	return each(files, "roughness.csv", "surface duty condition ks_mm ks_least_mm ks_most_mm film_mm film_least_mm film_most_mm", func(r row) {
		surface := r.oneOf("surface", SmoothPlastic, SmoothHose, RibbedHose, Galvanised)
		duty := r.oneOf("duty", PumpSide, Gravity)
		condition := r.oneOf("condition", Clean, InService, Neglected)
		mm := func(column string) float64 { return r.number(column) / 1000 }
		rough := Rough{
			Ks: r.milli("ks_mm"), KsLeast: mm("ks_least_mm"), KsMost: mm("ks_most_mm"),
			Film: mm("film_mm"), FilmLeast: mm("film_least_mm"), FilmMost: mm("film_most_mm"), Origin: r.origin(),
		}
		r.ordered("ks least, own, most", rough.KsLeast, rough.Ks, rough.KsMost)
		r.ordered("film least, own, most", rough.FilmLeast, rough.Film, rough.FilmMost)
		if condition == Clean && rough.FilmMost > 0 {
			r.wrong("a clean wall has no film")
		}
		t.roughness[r.key(surface, duty, condition)] = rough
	})
}

// Roughness finds the state of a smooth plastic pipe by duty and condition.
func (t *Tables) Roughness(duty, condition string) (Rough, bool) {
	return t.RoughnessOf(SmoothPlastic, duty, condition)
}

// RoughnessOf finds the state of a wall by surface, duty and condition.
func (t *Tables) RoughnessOf(surface, duty, condition string) (Rough, bool) {
	rough, ok := t.roughness[strings.Join([]string{surface, duty, condition}, "\t")]
	return rough, ok
}

// Surfaces lists the surfaces of RoughnessOf.
func (t *Tables) Surfaces() []string {
	return []string{SmoothPlastic, SmoothHose, RibbedHose, Galvanised}
}
