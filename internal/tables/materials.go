package tables

import (
	"cmp"
	"io/fs"
	"maps"
	"math"
	"slices"
	"strings"
)

// Material is what a fixing is made of.
type Material struct {
	Grade   string
	Aliases []string
	Family  string // stainless, ferritic, carbon-steel, zinc, copper-alloy, lead, aluminium, titanium, plastic

	// Per cent by mass; unknown for all but the stainless steels.
	CrLeast, CrMost, MoLeast, MoMost, NMost Bound
	// Pitting resistance, Cr + 3.3 Mo + 16 N, of the poorest and the richest steel of the grade.
	PRENLeast, PRENMost Bound

	// The lower and the higher published limit of chloride, kg/m3. Unknown: a
	// material that does not pit in a loop, or one that may not be wetted.
	ChlorideLeast, ChlorideMost Bound
	// The lowest pH; unknown where none was found or none is needed.
	PHLeast Bound

	WetFit bool // may be wetted at all
	Toxic  bool // what it gives off harms fish
	Note   string
	Origin
}

var families = []string{"stainless", "ferritic", "carbon-steel", "zinc", "copper-alloy", "lead", "aluminium", "titanium", "plastic"}

func (t *Tables) readMetals(files fs.FS) error {
	t.metalAt = map[string]int{}
	return each(files, "metals.csv", "grade aliases family cr_least cr_most mo_least mo_most n_most pren_least pren_most chloride_least_mg_l chloride_most_mg_l ph_least wet_fit toxic note", func(r row) {
		m := Material{
			Grade: r.text("grade"), Aliases: strings.Fields(r.maybe("aliases")), Family: r.oneOf("family", families...),
			CrLeast: r.bound("cr_least"), CrMost: r.bound("cr_most"), MoLeast: r.bound("mo_least"), MoMost: r.bound("mo_most"), NMost: r.bound("n_most"),
			PRENLeast: r.bound("pren_least"), PRENMost: r.bound("pren_most"),
			ChlorideLeast: r.milliBound("chloride_least_mg_l"), ChlorideMost: r.milliBound("chloride_most_mg_l"), PHLeast: r.bound("ph_least"),
			WetFit: r.yes("wet_fit"), Toxic: r.yes("toxic"), Note: r.maybe("note"), Origin: r.origin(),
		}
		r.ordered("Cr", m.CrLeast.Value, m.CrMost.Value, 100)
		r.ordered("Mo", m.MoLeast.Value, m.MoMost.Value, 100)
		r.ordered("PREN", m.PRENLeast.Value, m.PRENMost.Value)
		r.ordered("chloride", m.ChlorideLeast.Value, m.ChlorideMost.Value)
		if m.PHLeast.Value > 14 {
			r.wrong("ph_least is above 14")
		}
		if m.WetFit && m.Toxic {
			r.wrong("what harms fish may not be wetted")
		}
		if m.Family == "stainless" && !(m.PRENLeast.Known && m.PRENMost.Known && m.ChlorideLeast.Known && m.ChlorideMost.Known) {
			r.wrong("a stainless steel needs its pren and chloride figures")
		}
		for _, name := range append([]string{m.Grade}, m.Aliases...) {
			t.metalAt[r.key(strings.ToLower(name))] = len(t.metals)
		}
		t.metals = append(t.metals, m)
	})
}

// Metal finds a material of fixings, metal or plastic, by its grade or another
// name for it; capitals do not count.
func (t *Tables) Metal(grade string) (Material, bool) {
	i, ok := t.metalAt[strings.ToLower(strings.TrimSpace(grade))]
	if !ok {
		return Material{}, false
	}
	return t.metals[i], true
}

// Grades lists the grades of Metal in the order of the table.
func (t *Tables) Grades() []string {
	return distinct(t.metals, func(m Material) string { return m.Grade })
}

// Clamp is a class of hose clamp.
type Clamp struct {
	Class                string
	Band, Housing, Screw Material
	Origin
}

// Weakest is the part of a clamp that decides where it may be used: one that
// may not be wetted, else the one with the lowest chloride limit.
func (c Clamp) Weakest() Material {
	stands := func(m Material) float64 {
		switch {
		case !m.WetFit:
			return -1
		case !m.ChlorideLeast.Known:
			return math.Inf(1)
		}
		return m.ChlorideLeast.Value
	}
	return slices.MinFunc([]Material{c.Band, c.Housing, c.Screw}, func(a, b Material) int { return cmp.Compare(stands(a), stands(b)) })
}

func (t *Tables) readClamps(files fs.FS) error {
	t.clamps = map[string]Clamp{}
	return each(files, "clamps.csv", "class band housing screw", func(r row) {
		part := func(column string) Material {
			m, ok := t.Metal(r.text(column))
			if !ok {
				r.wrong("%s: no such grade in metals.csv", column)
			}
			return m
		}
		c := Clamp{r.key(r.text("class")), part("band"), part("housing"), part("screw"), r.origin()}
		t.clamps[c.Class] = c
	})
}

// Clamp finds a hose clamp by its class, W1 to W5.
func (t *Tables) Clamp(class string) (Clamp, bool) {
	c, ok := t.clamps[strings.ToUpper(strings.TrimSpace(class))]
	return c, ok
}

// Clamps lists the classes of hose clamp.
func (t *Tables) Clamps() []string { return slices.Sorted(maps.Keys(t.clamps)) }

// Rubber is an elastomer of cuffs and seals.
type Rubber struct {
	Material                    string
	Left, LeftLeast, LeftMost   float64 // share of the first force that is left after relaxation
	HardnessLeast, HardnessMost float64 // Shore A, usual in sleeves
	Note                        string
	Origin
}

func (t *Tables) readRubbers(files fs.FS) error {
	t.rubbers = map[string]Rubber{}
	return each(files, "rubber.csv", "material left left_least left_most hardness_least_shore_a hardness_most_shore_a note", func(r row) {
		b := Rubber{
			Material: r.key(r.text("material")), Left: r.positive("left"), LeftLeast: r.positive("left_least"), LeftMost: r.positive("left_most"),
			HardnessLeast: r.positive("hardness_least_shore_a"), HardnessMost: r.positive("hardness_most_shore_a"), Note: r.maybe("note"), Origin: r.origin(),
		}
		r.ordered("force left", b.LeftLeast, b.Left, b.LeftMost, 1)
		r.ordered("hardness", b.HardnessLeast, b.HardnessMost, 100)
		t.rubbers[b.Material] = b
	})
}

// Rubber finds an elastomer, as EPDM.
func (t *Tables) Rubber(material string) (Rubber, bool) {
	b, ok := t.rubbers[material]
	return b, ok
}

// Rubbers lists the elastomers.
func (t *Tables) Rubbers() []string { return slices.Sorted(maps.Keys(t.rubbers)) }
