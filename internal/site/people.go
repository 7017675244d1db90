package site

import (
	"slices"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

var peopleQuantities = []working.Definition{
	{Name: "lift_mass", Title: "heaviest thing that one person lifts to clean it", Symbol: "m", Kind: quantity.Mass, Of: "each vessel that is emptied or rinsed by hand, and each bucket",
		Formula: "the heavier of lid and what is lifted at cleaning; of a bucket rho V", Source: file, Sure: "derived"},
	{Name: "quarantine_volume", Title: "volume of the quarantine vessel", Symbol: "V", Kind: quantity.Volume, Of: "the quarantine", Formula: stated, Source: file, Sure: "derived"},
	{Name: "quarantine_time", Title: "time that new fish stay in quarantine", Symbol: "t", Kind: quantity.Time, Of: "the quarantine", Formula: stated, Source: file, Sure: "derived"},
}

var peopleFacts = []working.FactDefinition{
	{Name: "lifter", Title: "who lifts: pupils, or adults only", Words: []string{"pupils", "adults"}, Of: "each vessel that is emptied or rinsed by hand, and each bucket"},
	yesNo("carried_off", "whether what it lets off is carried away in a container", "each bucket"),
	{Name: "cement_by", Title: "whether pupils or adults do the work with solvent cement", Words: []string{"pupils", "adults"}, Of: "the work with solvent cement"},
	yesNo("cement_in_open_air", "whether open air or a draught is given to the work with solvent cement", "the work with solvent cement"),
	yesNo("hand_washing", "whether there is a place to wash hands at a loop that grows food", "a loop that grows food"),
	yesNo("emergency_card", "whether a card with the valves and whom to call hangs at the loop", "the loop"),
	yesNo("treated_with_poison", "whether copper, formalin or an antibiotic is planned as a treatment", "the water"),
	yesNo("own_net", "whether the quarantine has a net and bucket of its own", "the quarantine"),
	yesNo("own_water", "whether the quarantine shares no water with the loop", "the quarantine"),
}

var peopleSets = []working.Named{
	{Name: "hand_cleaned", Title: "settlers and fines filters: vessels that are emptied or rinsed by hand"},
	{Name: "buckets", Title: "ends of lines in a bucket"},
	{Name: "cementing", Title: "the work with solvent cement, where any joint is cemented"},
	{Name: "food_care", Title: "the care of a loop that has beds, and so grows food"},
	{Name: "loop_care", Title: "the care of the loop"},
	{Name: "treated_water", Title: "the water, where fish or beds are in it"},
	{Name: "quarantines", Title: "the quarantine of a loop with fish"},
}

var (
	cleanedByHand = []string{"radial-flow-settler", "swirl-settler", "cone-settler", "fines-filter"}
	beds          = []string{"media-bed", "raft-bed", "channel-bed"}
)

// people enters what the loop asks of those who work at it.
func (v *surveyor) people() {
	v.lifting()
	v.l.Put("cementing")
	if slices.ContainsFunc(v.Lines, func(l *system.Line) bool {
		return slices.ContainsFunc(l.Pieces, func(p *system.Piece) bool { return p.Joint.Is("cemented") })
	}) {
		v.l.Put("cementing", "making/cement")
		v.who("making/cement", "cement_by", "/making/cemented_by")
		v.answer("making/cement", "cement_in_open_air", v.Switch("/making/open_air"))
	}
	v.l.Put("food_care")
	if slices.ContainsFunc(v.Vessels, func(vessel *system.Vessel) bool { return vessel.Role.Is(beds...) }) {
		v.l.Put("food_care", "care/food")
		v.answer("care/food", "hand_washing", v.Switch("/care/hand_washing"))
	}
	v.l.Put("loop_care", "care/card")
	v.answer("care/card", "emergency_card", v.Switch("/care/emergency_card"))
	v.treatments()
	v.quarantine()
}

// lifting enters what is lifted to clean the loop, and by whom.
func (v *surveyor) lifting() {
	v.l.Put("hand_cleaned")
	v.l.Put("buckets")
	for _, vessel := range v.Vessels {
		if !vessel.Role.Is(cleanedByHand...) {
			continue
		}
		p := vessel.Pointer
		v.l.Put("hand_cleaned", vessel.ID)
		lifts := v.Number(p+"/cleaning/lifts", quantity.Mass)
		in := []working.Input{working.In("lifts", working.File("what is lifted at cleaning", lifts))}
		if !v.lidOf(vessel).Is("none") {
			in = append(in, working.In("lid", working.File("mass of the lid", v.Number(p+"/lid/mass", quantity.Mass))))
		}
		v.work(vessel.ID, "lift_mass", lifts.Pointer(), func(x []float64) (float64, string) { return greatest(x), "" }, in...)
		v.who(vessel.ID, "lifter", p+"/cleaning/by")
	}
	for _, line := range v.Lines {
		if line.To.Outer != "bucket" {
			continue
		}
		id, by := line.ID+"/bucket", line.Pointer+"/cleaning/by"
		if line.From.Vessel != nil && len(v.Items(by)) == 0 {
			by = line.From.Vessel.Pointer + "/cleaning/by"
		}
		v.l.Put("buckets", id)
		leads := v.Word(line.Pointer + "/leads_to")
		carried := ""
		if _, given := leads.Value(); given {
			carried = "no"
			if leads.Is("container") {
				carried = "yes"
			}
		}
		v.fact(id, "carried_off", leads.Pointer(), carried, leads.Pointer())
		container := v.Number(line.Pointer+"/container", quantity.Volume)
		v.work(id, "lift_mass", container.Pointer(), func(x []float64) (float64, string) { return water * x[0], "" },
			working.In("V", working.File("volume of the bucket", container)))
		v.who(id, "lifter", by)
	}
}

// who enters whether pupils are among the people of a list.
func (v *surveyor) who(subject, name, at string) {
	word := ""
	for _, one := range v.Items(at) {
		if v.Word(one).Is("pupils") {
			word = "pupils"
		} else if word == "" {
			word = "adults"
		}
	}
	v.fact(subject, name, at, word, at)
}

// treatments enters whether something is planned that food or filter do not bear.
func (v *surveyor) treatments() {
	v.l.Put("treated_water", "water/treatments")
	const at = "/water/treatments"
	word := ""
	if v.Document.Has(at) {
		word = "no"
	}
	for _, one := range v.Items(at) {
		if v.Word(one).Is("copper", "formalin", "antibiotic") {
			word = "yes"
		}
	}
	v.fact("water/treatments", "treated_with_poison", at, word, at)
}

// quarantine enters where new fish are kept apart.
func (v *surveyor) quarantine() {
	v.l.Put("quarantines")
	if !slices.ContainsFunc(v.Vessels, func(vessel *system.Vessel) bool { return vessel.Role.Is("fish-tank") }) {
		return
	}
	const id, at = "quarantine/fish", "/quarantine"
	v.l.Put("quarantines", id)
	volume := working.File("volume of the quarantine vessel", v.Number(at+"/volume", quantity.Volume))
	if name, given := v.Word(at + "/in").Value(); given && v.Vessel(name) != nil {
		if n := v.l.Find(always(name, "full_volume")); n != nil {
			volume = n
		}
	}
	v.take(id, "quarantine_volume", at, volume)
	v.take(id, "quarantine_time", at, working.File("time in quarantine", v.Number(at+"/lasts", quantity.Time)))
	v.answer(id, "own_net", v.Switch(at+"/own_net"))
	v.answer(id, "own_water", v.Switch(at+"/own_water"))
}
