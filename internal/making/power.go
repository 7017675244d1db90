package making

import (
	"maps"
	"slices"

	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// power enters how the supply from the mains is protected. Nothing here is ever assumed.
func (v *surveyor) power() {
	v.l.Put("mains_supplies", "mains")
	at := v.Mains.ResidualCurrent.Pointer()
	note := func(name, word string, missing ...string) {
		v.l.Note(working.Fact{Subject: "mains", Name: name, Word: word, At: at, Missing: missing})
	}

	onMains, unsaid := v.Mains.Given, []string{}
	for _, at := range v.supplies() {
		supply, given := v.Word(at).Value()
		if !given {
			unsaid = append(unsaid, at)
		}
		onMains = onMains || supply == "mains"
	}
	switch {
	case onMains:
		note("mains_power", "yes")
	case len(unsaid) > 0:
		note("mains_power", "", unsaid...)
	default:
		note("mains_power", "no")
	}

	_, none := v.Mains.Unprotected.Value()
	switch {
	case none:
		note("residual_current_fitted", "no")
		v.l.Take(always("mains", "residual_current"), define("residual_current"), at,
			working.Unknown("residual current", quantity.Current, "", "no residual-current device is fitted"))
		return
	case v.Mains.ResidualCurrent.Given():
		note("residual_current_fitted", "yes")
	default:
		note("residual_current_fitted", "", at)
	}
	v.l.Take(always("mains", "residual_current"), define("residual_current"), at, working.File("residual current", v.Mains.ResidualCurrent))
}

// supplies is where the file says, or should say, how each thing that draws power
// is fed: pumps, the air pump, appliances, and devices in lines that draw any.
func (v *surveyor) supplies() []string {
	var at []string
	for _, pump := range v.Pumps {
		at = append(at, pump.Supply.Pointer())
	}
	if v.Document.Has("/air/pump") {
		at = append(at, "/air/pump/supply")
	}
	whole, _ := v.Document.Plain().(map[string]any)
	appliances, _ := whole["appliances"].(map[string]any)
	for _, id := range slices.Sorted(maps.Keys(appliances)) {
		if v.Document.Has("/appliances/"+id+"/draws") || v.Document.Has("/appliances/"+id+"/supply") {
			at = append(at, "/appliances/"+id+"/supply")
		}
	}
	for _, line := range v.Lines {
		for _, p := range line.Pieces {
			if p.Kind == "device" && v.Document.Has(p.Value+"/draws") {
				at = append(at, p.Value+"/supply")
			}
		}
	}
	return at
}
