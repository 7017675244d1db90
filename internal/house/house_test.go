package house

import (
	"slices"
	"strings"
	"testing"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/working"
)

func number(x float64) *float64 { return &x }

// bookOfTests is a few clauses, one of each shape.
var bookOfTests = []*review.Clause{
	{ID: "well_depth", Strength: review.Should, Limits: []review.Limit{{Name: "fraction", Quantity: "lip_depth_fraction", Least: number(0.4), Most: number(0.6)}}},
	{ID: "overflow_rate", Strength: review.Should, Limits: []review.Limit{{Name: "rate", Quantity: "overflow_rate", Most: number(0.003)}}},
	{ID: "socket_high", Strength: review.Shall, Safety: true, Limits: []review.Limit{{Name: "height", Quantity: "socket_height", Least: number(0.3)}}},
	{ID: "lift_light", Strength: review.Should, Safety: true, Limits: []review.Limit{
		{Name: "pupils", Quantity: "lift_mass", Most: number(10)}, {Name: "adults", Quantity: "lift_mass", Most: number(16)}}},
	{ID: "lid_there", Strength: review.Shall, Safety: true},
}

var catalogueOfTests = working.Catalogue{Quantities: []working.Definition{
	{Name: "lip_depth_fraction", Title: "lip, share of the water depth", Kind: quantity.Fraction},
	{Name: "overflow_rate", Title: "upward speed", Kind: quantity.Velocity},
	{Name: "socket_height", Title: "height of the socket", Kind: quantity.Length},
	{Name: "lift_mass", Title: "mass to lift", Kind: quantity.Mass},
}}

func read(changes string) (*review.House, []string) {
	h, problems := Read("house.yaml", []byte("dryfit_house: 1\nname: Quarry Road school\nby: site manager\nchanges:\n"+changes), bookOfTests, catalogueOfTests)
	var said []string
	for _, p := range problems {
		said = append(said, strings.TrimPrefix(p.String(), "house.yaml:"))
	}
	return h, said
}

func TestChangesAreRead(t *testing.T) {
	h, problems := read(`
  - {clause: well_depth, least: 0.45, most: 0.55, strength: shall, settings: [school, club], reason: we want  the middle}
  - {clause: overflow_rate, limit: rate, most: 2.5 mm/s, reason: sun}
  - {clause: overflow_rate, most: 3.5 mm/s, settings: [farm], reason: theirs is larger}
  - {clause: socket_high, least: 50 cm, reason: pupils splash}
  - {clause: lift_light, limit: adults, most: 12 kg, reason: two staff}
  - {clause: lift_light, limit: pupils, most: 8 kg, strength: shall, reason: year seven}
`)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if h.Name != "Quarry Road school" || h.By != "site manager" || len(h.Changes) != 6 {
		t.Fatalf("%+v", h)
	}
	c := h.Changes[0]
	if *c.Was.Least != 0.4 || *c.Now.Least != 0.45 || *c.Now.Most != 0.55 || c.WasStrength != review.Should || c.Strength != review.Shall ||
		c.Reason != "we want the middle" || !slices.Equal(c.Settings, []string{"club", "school"}) || c.Line != 6 {
		t.Errorf("%+v", c)
	}
	if c := h.Changes[3]; *c.Now.Least != 0.5 || c.Now.Most != nil {
		t.Errorf("%+v", c.Now)
	}
	if *bookOfTests[0].Limits[0].Least != 0.4 {
		t.Error("the book itself was changed")
	}
}

func TestChangesThatAreRefused(t *testing.T) {
	for name, one := range map[string]struct{ change, want string }{
		"clause unknown":       {"{clause: well_dept, least: 0.45, reason: r}", "5:14: found the clause `well_dept`, which is not in the book and is none of the house that loads: the nearest is `well_depth`"},
		"clause far":           {"{clause: bananas, least: 0.45, reason: r}", "which is not in the book and is none of the house that loads: `dryfit clauses` lists them"},
		"limit unknown":        {"{clause: well_depth, limit: fractoin, least: 0.45, reason: r}", "the limit `fractoin`, which `well_depth` does not have: the nearest is `fraction`"},
		"limit not named":      {"{clause: lift_light, most: 8 kg, reason: r}", "where `lift_light` has several: add `limit` with `pupils` or `adults`"},
		"no limit to change":   {"{clause: lid_there, least: 1, reason: r}", "which asks yes or no and has none"},
		"unit of another kind": {"{clause: overflow_rate, most: 3 kg, reason: r}", "found `3 kg`"},
		"unit left out":        {"{clause: overflow_rate, most: 3, reason: r}", "found `3`"},
		"bound it has not":     {"{clause: overflow_rate, least: 1 mm/s, reason: r}", "a `least`, where `overflow_rate` has a `most` alone"},
		"least over most":      {"{clause: well_depth, least: 0.7, reason: r}", "a least of 0.7 over a most of 0.6"},
		"most under least":     {"{clause: well_depth, most: 0.3, reason: r}", "a least of 0.4 over a most of 0.3"},
		"changes nothing":      {"{clause: well_depth, reason: r}", "a change that changes nothing: add `least`, `most` or `strength`"},
		"limit without bound":  {"{clause: well_depth, limit: fraction, strength: shall, reason: r}", "the limit `fraction` without a bound"},
		"same value":           {"{clause: well_depth, least: 0.40, reason: r}", "which is what the clause says already"},
		"same strength":        {"{clause: well_depth, strength: should, reason: r}", "`should`, which the clause is already"},
		"safety least lowered": {"{clause: socket_high, least: 25 cm, reason: r}", "the safety clause `socket_high` made weaker, `25 cm` where it has 300 mm: take it out: what guards life may be made stricter, never weaker"},
		"safety most raised":   {"{clause: lift_light, limit: pupils, most: 12 kg, reason: r}", "the safety clause `lift_light` made weaker"},
		"safety strength":      {"{clause: lid_there, strength: should, reason: r}", "the safety clause `lid_there` made weaker, a should where it is a shall"},
		"setting unknown":      {"{clause: well_depth, least: 0.45, settings: [scool], reason: r}", "school"},
		"no reason":            {"{clause: well_depth, least: 0.45}", "reason"},
		"key unknown":          {"{clause: well_depth, lest: 0.45, reason: r}", "least"},
	} {
		h, said := read("  - " + one.change + "\n")
		if h != nil || !strings.Contains(strings.Join(said, "\n"), one.want) {
			t.Errorf("%s: %q, want %q", name, said, one.want)
		}
	}
}

// The same thing of the same clause is changed once for a setting; other things, and other settings, are other changes.
func TestWhatIsChangedTwice(t *testing.T) {
	_, said := read(`  - {clause: well_depth, least: 0.45, settings: [school, farm], reason: r}
  - {clause: well_depth, most: 0.5, settings: [farm], reason: r}
  - {clause: well_depth, most: 0.55, settings: [home], reason: r}
  - {clause: well_depth, strength: shall, settings: [school], reason: r}
  - {clause: well_depth, strength: may, reason: r}
  - {clause: well_depth, strength: shall, reason: r}
`)
	want := []string{
		"6:5: found the limit `fraction` of `well_depth` changed again for `farm`: keep the change that counts",
		"10:5: found the strength of `well_depth` changed again: keep the change that counts",
	}
	if !slices.Equal(said, want) {
		t.Errorf("%q", said)
	}
}

// Everything is said at once, in the order of the file, and a file of another kind is called by its name.
func TestAllIsSaidAtOnce(t *testing.T) {
	_, said := read("  - {clause: bananas, least: 1, reason: r}\n  - {clause: socket_high, least: 1 cm, strength: may, reason: r}\n  - 7\n")
	if len(said) != 4 {
		t.Errorf("%d: %q", len(said), said)
	}
	for text, want := range map[string]string{"": "nothing", "dryfit_guide: 1\n": "a marking guide", "- 1\n": "", "dryfit_house: 2\nname: x\nby: y\n": "1"} {
		h, problems := Read("house.yaml", []byte(text), bookOfTests, catalogueOfTests)
		if h != nil || len(problems) == 0 || !strings.Contains(problems[0].String(), want) {
			t.Errorf("%q: %v", text, problems)
		}
	}
}

func FuzzRead(f *testing.F) {
	f.Add("dryfit_house: 1\nname: x\nby: y\nchanges: [{clause: well_depth, least: 0.45, reason: r}]\n")
	f.Add("changes: [{clause: lift_light, limit: pupils, most: 1e999 kg, settings: [school, school]}]")
	f.Fuzz(func(t *testing.T, text string) {
		h, problems := Read("house.yaml", []byte(text), bookOfTests, catalogueOfTests)
		if (h == nil) == (len(problems) == 0) {
			t.Errorf("rules %v with problems %v", h, problems)
		}
	})
}
