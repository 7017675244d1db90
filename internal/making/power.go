package making

import (
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
	for _, pump := range v.Pumps {
		if _, given := pump.Supply.Value(); !given {
			unsaid = append(unsaid, pump.Supply.Pointer())
		}
		onMains = onMains || pump.Supply.Is("mains")
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
