package site

import (
	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

var powerQuantities = []working.Definition{
	{Name: "socket_clearance", Title: "lowest socket above the highest rim that water can run over", Symbol: "c", Kind: quantity.Length, Of: "the mains supply",
		Formula: "sockets - highest rim", Source: geometry, Sure: "derived"},
	{Name: "power_circuits", Title: "circuits that trip apart from each other", Symbol: "n", Kind: quantity.Number, Of: "the mains supply",
		Formula: stated, Source: file, Sure: "derived"},
}

var powerFacts = []working.FactDefinition{
	yesNo("drip_loops", "whether every cable hangs lower than its socket", "the mains supply"),
}

// power enters how the supply from the mains is laid out.
func (v *surveyor) power() {
	sockets := v.Number("/mains/sockets_at", quantity.Length)
	in := []working.Input{working.In("sockets", working.File("lowest socket above the datum", sockets))}
	for _, vessel := range v.Vessels {
		in = append(in, working.In("rim", height("rim of "+vessel.ID, vessel.Rim())))
	}
	v.work("mains", "socket_clearance", sockets.Pointer(), func(x []float64) (float64, string) {
		rim := 0.0 // water on the ground, where there is no vessel
		for _, z := range x[1:] {
			rim = max(rim, z)
		}
		return x[0] - rim, ""
	}, in...)
	v.take("mains", "power_circuits", v.Mains.Circuits.Pointer(), working.File("circuits", v.Mains.Circuits))
	v.answer("mains", "drip_loops", v.Switch("/mains/drip_loops"))
}
