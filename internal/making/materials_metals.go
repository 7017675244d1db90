package making

import (
	"slices"
	"strconv"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

var metalQuantities = []working.Definition{
	{Name: "ph_low", Title: "lowest pH of the water that meets the metal", Symbol: "pH", Kind: quantity.Number, Of: "each part of zinc or aluminium that water meets",
		Formula: "as stated; of rain as stated of the source", Source: "the file", Sure: "derived"},
	{Name: "metal_criterion", Title: "dissolved metal that water creatures bear for four days", Symbol: "C", Kind: quantity.Concentration, Of: "each part of copper or zinc that water meets",
		Formula: "s exp(m ln H + b)", Source: "40 CFR 132, tables 1 and 2", Sure: "published", Range: "hardness 25 to 400 mg/L as CaCO3"},
	{Name: "zinc_loss", Title: "zinc that it gives off", Symbol: "m", Kind: quantity.FeedRate, Of: "each galvanised part whose area is stated",
		Formula: "rho w A", Source: "ISO 9223:2012, table 2, category C3 for the wear of zinc; density of zinc", Sure: "published"},
}

var metalFacts = []working.FactDefinition{
	{Name: "toxic_metal", Title: "whether copper, brass, lead or zinc meets the water", Words: []string{"yes", "no"}, Of: "the list of metals, each entry of it, and each part of the loop with a material"},
}

var metalSets = []working.Named{
	{Name: "metal_parts", Title: "the list of metals, its entries, vessels, the top-up valve, what rain runs over, and other parts"},
	{Name: "zinc_parts", Title: "galvanised parts that water meets"},
	{Name: "aluminium_parts", Title: "parts of aluminium that water meets"},
}

// metalPart is something with a material that water may meet.
type metalPart struct {
	id       string
	material system.Word
	meets    string // under-water, splashed, drips-in, dry, or empty where that is not stated
	meetsAt  string
	area     system.Number // that the water touches; not given where the file has none
	rain     bool          // rain meets it, and not the water of the loop
}

// metals enters what every part that water meets is made of.
func (v *surveyor) metals() {
	v.l.Put("zinc_parts")
	v.l.Put("aluminium_parts")
	v.l.Put("metal_parts", "metals/list")
	v.listed("metals/list")
	for _, p := range v.metalParts() {
		v.metal(p)
	}
}

// listed enters what the list of metals says of a thing that it does not name: no,
// if there is a list. Each of its entries is judged by itself.
func (v *surveyor) listed(id string) {
	const list = "/metals"
	word := ""
	if v.Document.Has(list) {
		word = "no"
	}
	v.l.Note(working.Fact{Subject: id, Name: "toxic_metal", Word: word, At: list, Missing: missing(word, list)})
}

// metalParts lists the parts: what must have a material always, and the others with theirs or, without one, by the word of the list.
func (v *surveyor) metalParts() []metalPart {
	var out []metalPart
	add := func(id, at, meets string) { out = append(out, metalPart{id: id, material: v.Word(at), meets: meets}) }
	// A part that says nothing of its material is spoken for by the list of metals.
	part := func(id, at, meets string) {
		if v.Word(at).Given() {
			add(id, at, meets)
			return
		}
		v.l.Put("metal_parts", id)
		v.listed(id)
	}
	for i, at := range v.Items("/metals") {
		wetted := v.Word(at + "/wetted")
		meets, _ := wetted.Value()
		out = append(out, metalPart{id: "metals/no-" + strconv.Itoa(i+1), material: v.Word(at + "/metal"), meets: meets, meetsAt: wetted.Pointer(),
			area: v.Number(at+"/area", quantity.Area)})
	}
	for _, vessel := range v.Vessels {
		add(vessel.ID, v.wettedMaterial(vessel).Pointer(), "under-water")
		for _, name := range []string{"well", "launder", "raft"} {
			if v.Document.Has(vessel.Pointer + "/" + name) {
				part(vessel.ID+"/"+name, vessel.Pointer+"/"+name+"/material", "under-water")
			}
		}
		if vessel.Weir != nil && vessel.Weir.Kind != "side_pipe" && vessel.Weir.Kind != "rim" && vessel.Weir.Kind != "notch" {
			part(vessel.ID+"/weir", vessel.Weir.Pointer+"/material", "under-water")
		}
		if v.Document.Has(vessel.Pointer + "/lid") {
			part(vessel.ID+"/lid", vessel.Pointer+"/lid/material", "drips-in")
		}
	}
	for _, pipe := range v.Pipes {
		if at := pipe.Pointer + "/material"; v.Word(at).Given() || !pipe.Listed { // what stands in the table of pipes is of plastic
			part("pipes/"+pipe.ID, at, "under-water")
		}
	}
	if v.Document.Has("/top_up") && !v.Word("/top_up/from").Is("by-hand") {
		add("top_up/valve", "/top_up/valve_material", "under-water")
	}
	if v.Document.Has("/rain") {
		for _, name := range []string{"surface", "gutter"} {
			out = append(out, metalPart{id: "rain/" + name, material: v.Word("/rain/" + name), meets: "drips-in", rain: true, area: v.Number("/rain/catchment", quantity.Area)})
		}
	}
	return out
}

// wettedMaterial is what the water in a vessel touches: its liner, or else its wall.
func (v *surveyor) wettedMaterial(vessel *system.Vessel) system.Word {
	if liner := vessel.Pointer + "/liner"; v.Document.Has(liner) {
		return v.Word(liner + "/material")
	}
	return vessel.Material
}

// substance is a material as the tables know it: a metal or a plastic of fixings,
// or something that is no metal. A material under `materials` is as what it is like.
func (v *surveyor) substance(w system.Word) (metal tables.Material, other tables.Nonmetal, known bool) {
	name, _ := w.Value()
	for range 2 {
		if metal, known = v.t.Metal(name); known && metal.Family != "plastic" {
			return metal, other, true
		}
		if other, ok := v.t.Nonmetal(name); ok {
			return tables.Material{}, other, true
		}
		if known {
			return metal, other, true
		}
		name, _ = v.Word("/materials/" + name + "/like").Value()
	}
	return metal, other, false
}

// strange says that no table has a material.
func strange(w system.Word) string {
	return "`" + w.Text() + "` is in no table of materials: say under `materials` what it is `like`"
}

func missing(word string, gaps ...string) []string {
	if word != "" {
		return nil
	}
	return gaps
}

func (v *surveyor) metal(p metalPart) {
	v.l.Put("metal_parts", p.id)
	metal, _, known := v.substance(p.material)
	at := p.material.Pointer()
	word, gap := "no", at
	switch {
	case !p.material.Given():
		word = ""
	case !known:
		word, gap = "", strange(p.material)
	case p.meets == "" && slices.Contains([]string{"copper-alloy", "lead", "zinc"}, metal.Family):
		word, gap = "", p.meetsAt
	case p.meets == "dry":
	case metal.Family == "copper-alloy" || metal.Family == "lead":
		word = "yes"
	case metal.Family == "zinc" && p.meets != "drips-in":
		word = "yes"
	}
	v.l.Note(working.Fact{Subject: p.id, Name: "toxic_metal", Word: word, At: at, Missing: missing(word, gap)})
	if !known || p.meets == "dry" {
		return
	}
	switch metal.Family {
	case "zinc":
		v.l.Put("zinc_parts", p.id)
		v.acid(p)
		v.criterion(p, ZincChronic)
		v.zinc(p)
	case "aluminium":
		v.l.Put("aluminium_parts", p.id)
		v.acid(p)
	case "copper-alloy":
		v.criterion(p, CopperChronic)
	}
}

// acid enters the lowest pH of the water that meets a part.
func (v *surveyor) acid(p metalPart) {
	node := working.File("lowest pH of the water", v.Water.PH.Low)
	if p.rain {
		node = v.rainPH()
	}
	v.l.Take(always(p.id, "ph_low"), define("ph_low"), p.material.Pointer(), node)
}

// rainPH is the lowest pH of rain: of the source, if the source is rain, or what rain has of itself.
func (v *surveyor) rainPH() *working.Node {
	const source = "/water/source"
	low := v.Number(source+"/pH/low", quantity.Number)
	if one := v.Number(source+"/pH", quantity.Number); one.Given() {
		low = one
	}
	if v.Word(source+"/kind").Is("rain") && low.Given() {
		return working.File("lowest pH of the rain", low)
	}
	return v.t.Assume("rain_ph", "lowest pH of the rain", quantity.Number, low.Pointer())
}

// criterion enters how much of its metal fish bear in water of this hardness.
func (v *surveyor) criterion(p metalPart, f func(float64) (float64, string)) {
	hardness := v.Number("/water/hardness/low", quantity.Concentration)
	if one := v.Number("/water/hardness", quantity.Concentration); one.Given() {
		hardness = one
	}
	v.work(always(p.id, "metal_criterion"), p.material.Pointer(), func(x []float64) (float64, string) { return f(x[0]) },
		working.In("H", working.File("lowest hardness of the water", hardness)))
}

// zinc enters how much zinc a galvanised face gives off, by how fast such a coat wears in the open.
func (v *surveyor) zinc(p metalPart) {
	if !p.area.Given() {
		return
	}
	const micrometreAYear = 1e-6 / (365.25 * 86400)
	wear := working.Row("coat of zinc lost in time, in the open", quantity.Velocity, working.Within(1.4*micrometreAYear, 0.7*micrometreAYear, 2.1*micrometreAYear),
		p.material.Pointer(), "ISO 9223:2012, table 2, category C3, 0.7 to 2.1 um a year; acid water takes more", "published")
	v.work(always(p.id, "zinc_loss"), p.material.Pointer(), func(x []float64) (float64, string) {
		loss, why := ZincLoss(x[0])
		return loss * x[1], why
	}, working.In("w", wear), working.In("A", working.File("area that water meets", p.area)))
}
