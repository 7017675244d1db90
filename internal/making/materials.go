package making

import "slices"

// What the chapter on materials works out, beside fixings.
var (
	materialQuantities = slices.Concat(clampQuantities, metalQuantities, vesselQuantities)
	materialFacts      = slices.Concat(clampFacts, metalFacts, vesselFacts)
	materialSets       = slices.Concat(clampSets, metalSets, vesselSets)
)

// materials enters what water, sun and a vessel's past do to the loop and its fish.
func (v *surveyor) materials() {
	v.clamps()
	v.metals()
	v.vessels()
}
