package making

import (
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

var vesselQuantities = []working.Definition{
	{Name: "sunlit_share", Title: "share of the water that light reaches", Symbol: "s", Kind: quantity.Fraction, Of: "each vessel in which nothing grows",
		Formula: "as stated; none under a solid lid", Source: "the file", Sure: "derived"},
}

var vesselFacts = []working.FactDefinition{
	{Name: "contents", Title: "what is known of what it held", Words: []string{tables.Harmless, tables.Harmful, tables.Unheard}, Of: "each vessel"},
	{Name: "made_for", Title: "what its maker made it for", Words: []string{"food", "drinking-water", "fish", "building", "chemicals", "unknown"}, Of: "each vessel"},
	{Name: "food_mark", Title: "whether it carries a mark for food or drinking water", Words: []string{"yes", "no"}, Of: "each vessel"},
	{Name: "material_food_fit", Title: "whether what the water touches is as a rule fit for food", Words: []string{"yes", "no"}, Of: "each vessel"},
	{Name: "in_sun", Title: "whether the sun can reach it", Words: []string{"yes", "no"}, Of: "each vessel"},
	{Name: "sun_fast", Title: "whether its wall stands years of sun: of itself, stabilised, painted or wrapped", Words: []string{"yes", "no"}, Of: "each vessel"},
	{Name: "dark_walls", Title: "whether its walls keep light out", Words: []string{"yes", "no"}, Of: "each vessel in which nothing grows"},
}

var vesselSets = []working.Named{
	{Name: "all_vessels", Title: "every vessel"},
	{Name: "vessels_without_crop", Title: "vessels that are no beds"},
}

// vessels enters what the vessels are, were, and how light meets them.
func (v *surveyor) vessels() {
	v.l.Put("all_vessels")
	v.l.Put("vessels_without_crop")
	for _, vessel := range v.Vessels {
		v.l.Put("all_vessels", vessel.ID)
		v.history(vessel)
		v.sun(vessel)
		if !vessel.Role.Is("media-bed", "raft-bed", "channel-bed") {
			v.l.Put("vessels_without_crop", vessel.ID)
			v.light(vessel)
		}
	}
}

func (v *surveyor) note(subject, name, at, word string, gaps ...string) {
	v.l.Note(working.Fact{Subject: subject, Name: name, Word: word, At: at, Missing: missing(word, gaps...)})
}

// history enters what a vessel held and was made for.
func (v *surveyor) history(vessel *system.Vessel) {
	id, p := vessel.ID, vessel.Pointer+"/history"
	held := v.Word(p + "/held")
	text, given := held.Value()
	kind, odd := v.t.Contents(text)
	gap := held.Pointer()
	switch {
	case !given:
		kind = ""
	case len(odd) > 0:
		gap = "`" + odd[0] + "` is in no table of contents: say what it is in plainer words, or take it as harmful"
	case kind == "":
		gap = "`" + text + "` does not say what it held"
	}
	v.note(id, "contents", held.Pointer(), kind, gap)

	made := v.Word(p + "/made_for")
	word, _ := made.Value()
	v.note(id, "made_for", made.Pointer(), word, made.Pointer())

	marks := p + "/marks"
	mark := "no" // also where none is named: a mark that nobody saw helps nobody
	for _, one := range v.Items(marks) {
		if v.Word(one).Is("food-contact", "drinking-water") {
			mark = "yes"
		}
	}
	v.note(id, "food_mark", made.Pointer(), mark, made.Pointer())

	wetted := v.wettedMaterial(vessel)
	metal, other, known := v.substance(wetted)
	own := v.Switch("/materials/" + wetted.Text() + "/food_contact")
	fit, gap := "no", wetted.Pointer()
	switch on, given := own.On(); {
	case !wetted.Given():
		fit = ""
	case given && on:
		fit = "yes"
	case given:
	case !known:
		fit, gap = "", strange(wetted)
	case other.Food || metal.WetFit:
		fit = "yes"
	}
	v.note(id, "material_food_fit", wetted.Pointer(), fit, gap)
}

// sun enters whether the sun reaches a vessel and whether its wall stands it.
func (v *surveyor) sun(vessel *system.Vessel) {
	id := vessel.ID
	under := v.Word("/site/under")
	shone := "yes"
	switch word, given := under.Value(); {
	case !given:
		shone = ""
	case word == "roof" || word == "indoors":
		shone = "no"
	}
	v.note(id, "in_sun", under.Pointer(), shone, under.Pointer())

	stable, light := v.Switch(vessel.Pointer+"/uv_stable"), v.Word(vessel.Pointer+"/light")
	on, given := stable.On()
	metal, other, known := v.substance(vessel.Material)
	own, ownGiven := v.Switch("/materials/" + vessel.Material.Text() + "/uv_stable").On()
	fast := ""
	switch {
	case light.Is("painted", "wrapped") || given && on:
		fast = "yes"
	case given:
		fast = "no"
	case !vessel.Material.Given():
	case ownGiven && own, known && other.Sun, known && other.Material == "" && metal.Family != "plastic":
		fast = "yes"
	}
	gaps := []string{stable.Pointer()}
	if !vessel.Material.Given() {
		gaps = append(gaps, vessel.Material.Pointer())
	}
	v.note(id, "sun_fast", stable.Pointer(), fast, gaps...)
}

// light enters how much light reaches the water of a vessel in which nothing grows.
func (v *surveyor) light(vessel *system.Vessel) {
	id, p := vessel.ID, vessel.Pointer
	walls := v.Word(p + "/light")
	dark := "no"
	switch {
	case !walls.Given():
		dark = ""
	case walls.Is("opaque", "painted", "wrapped"):
		dark = "yes"
	}
	v.note(id, "dark_walls", walls.Pointer(), dark, walls.Pointer())

	lid := vessel.Lid
	if short := v.Word(p + "/lid"); short.Given() {
		lid = short
	}
	share := v.Number(p+"/sunlit", quantity.Fraction)
	node := working.File("share of the water that the sun reaches", share)
	if !share.Given() && lid.Is("solid", "raft") {
		node = working.Row("share of the water that light reaches under a solid lid", quantity.Fraction, working.Exactly(0), lid.Pointer(), "the word solid", "derived")
	}
	v.l.Take(always(id, "sunlit_share"), define("sunlit_share"), share.Pointer(), node)
}
