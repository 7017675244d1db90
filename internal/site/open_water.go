package site

import (
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

var waterQuantities = []working.Definition{
	{Name: "rim_height", Title: "rim above the ground", Symbol: "r", Kind: quantity.Length, Of: "each vessel",
		Formula: "rim - datum", Source: geometry, Sure: "derived"},
	{Name: "rim_over_foothold", Title: "rim above the highest place on which a child can stand beside it", Symbol: "r", Kind: quantity.Length, Of: "each vessel",
		Formula: "rim - foothold, if that is within 900 mm; else rim - datum", Source: geometry, Sure: "derived"},
	{Name: "lid_bears", Title: "load that the lid bears in its middle", Symbol: "F", Kind: quantity.Force, Of: "each vessel",
		Formula: stated, Source: file, Sure: "derived"},
	{Name: "lid_opening", Title: "widest opening that is left in the lid", Symbol: "w", Kind: quantity.Length, Of: "each vessel",
		Formula: stated, Source: file, Sure: "derived"},
	{Name: "media_over_water", Title: "top of the media above the water", Symbol: "c", Kind: quantity.Length, Of: "each media bed",
		Formula: "floor + depth of media - water level", Source: geometry, Sure: "derived"},
}

var waterFacts = []working.FactDefinition{
	yesNo("children_near", "whether children come near it", "each vessel"),
	{Name: "lid_kind", Title: "what covers the opening", Of: "each vessel", Words: []string{"solid", "net", "grid", "raft", "none"}},
	{Name: "lid_fixed", Title: "how the lid is held", Of: "each vessel", Words: []string{"locked", "screwed", "clipped", "loose"}},
}

var waterSets = []working.Named{{Name: "open_vessels", Title: "every vessel: a child can lean over its rim, lid or no lid"}}

// stepAway is how far from the rim a step still helps a child over it, m.
const stepAway = 0.9

// FromFoothold is the height of a rim above the highest place on which a child can
// stand beside it.
//
//	r = rim - foothold  where the foothold is within 900 mm of the rim
//	r = rim             where it is farther, or lower than the ground
//
//	rim       above the ground, m
//	foothold  above the ground, m
//	away      level distance from it to the rim, m, 0 or more
//
// Source: project judgement; the 900 mm are the reach at which fences of swimming pools must be clear of things to climb, AS 1926.1.
func FromFoothold(rim, foothold, away float64) float64 {
	if away > stepAway {
		return rim
	}
	return rim - max(foothold, 0)
}

// openWater enters what keeps a child out of each vessel.
func (v *surveyor) openWater() {
	v.l.Put("open_vessels")
	children := v.Switch("/site/children")
	for _, vessel := range v.Vessels {
		id, p := vessel.ID, vessel.Pointer
		v.l.Put("open_vessels", id)
		near := said(children)
		if near == "" && v.Site.Setting.Is("school") {
			near = "yes"
		}
		v.fact(id, "children_near", children.Pointer(), near, children.Pointer())

		lid := v.lidOf(vessel)
		v.word(id, "lid_kind", lid)
		v.word(id, "lid_fixed", v.Word(p+"/lid/fixed"))
		v.take(id, "lid_bears", lid.Pointer(), working.File("load that the lid bears", v.Number(p+"/lid/bears", quantity.Force)))
		v.take(id, "lid_opening", lid.Pointer(), v.length("widest opening in the lid", p+"/lid/opening"))

		rim := height("rim", vessel.Rim())
		v.take(id, "rim_height", vessel.Form.Height.Pointer(), rim)
		v.work(id, "rim_over_foothold", p+"/foothold", func(x []float64) (float64, string) { return FromFoothold(x[0], x[1], x[2]), "" },
			working.In("rim", rim),
			working.In("foothold", v.length("highest place on which a child can stand", p+"/foothold/at")),
			working.In("away", v.length("from there to the rim", p+"/foothold/away")))
		if vessel.Role.Is("media-bed") {
			v.mediaOverWater(vessel)
		}
	}
}

// lidOf is the kind of lid, in its short or its long form.
func (v *surveyor) lidOf(vessel *system.Vessel) system.Word {
	if short := v.Word(vessel.Pointer + "/lid"); short.Given() {
		return short
	}
	return vessel.Lid
}

// mediaOverWater enters how dry the top of a media bed is, in each state.
func (v *surveyor) mediaOverWater(vessel *system.Vessel) {
	depth := v.Number(vessel.Pointer+"/media/depth", quantity.Length)
	top := height("top of the media", vessel.Above(depth))
	levels := 0
	working.EachRunning(func(runCase, water string) {
		level := v.l.Find(working.Address{Subject: vessel.ID, Name: "water_level", Case: runCase, Water: water})
		if level == nil {
			return
		}
		levels++
		v.l.Work(working.Address{Subject: vessel.ID, Name: "media_over_water", Case: runCase, Water: water}, define("media_over_water"), depth.Pointer(), difference,
			working.In("top", top), working.In("z", level))
	})
	if levels == 0 {
		v.take(vessel.ID, "media_over_water", depth.Pointer(), working.Unknown("level of the water", quantity.Length, "", "the level of "+vessel.ID+" is not worked out"))
	}
}
