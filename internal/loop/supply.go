package loop

import (
	"math"

	"dryfit/internal/network"
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// topUp is what fills the loop up by itself: a store or the mains, behind a float.
type topUp struct {
	vessel       *system.Vessel
	float, stuck int             // strands: with its float, and with that stuck open
	needs        []working.Input // what has to be known of it
}

// topUp lays the top-up out. Its store is a column of water that shrinks; its float
// shuts over a centimetre under the level that it keeps.
func (g *stage) topUp() {
	if len(g.Keys("/top_up")) == 0 || g.Word("/top_up/from").Is("by-hand") {
		return
	}
	t := &topUp{}
	into, given := g.Word("/top_up/into").Value()
	vessel := g.Vessel(into)
	if !given {
		for _, p := range g.nodes {
			if p.body && vessel == nil && g.pumpDraws(p.vessel) {
				vessel = p.vessel // where most go; it is not said
			}
		}
		t.needs = append(t.needs, working.In("into", working.Unknown("the vessel that is topped up", quantity.Number, "/top_up/into", "")))
	}
	node, known := g.at[vessel]
	if vessel == nil || !known {
		return
	}
	t.vessel = vessel
	source := g.Word("/top_up/from")
	if _, given := source.Value(); !given {
		t.needs = append(t.needs, working.In("from", working.Unknown("where the top-up comes from", quantity.Number, source.Pointer(), "")))
	}
	from := network.Outside
	most := working.File("greatest flow of the top-up", g.Number("/top_up/flow", quantity.Flow))
	if most.Origin == working.Absent {
		most = g.t.Assume("top_up_flow", "greatest flow of the top-up", quantity.Flow, "/top_up/flow")
	}
	flow := g.number(most, "Q")
	keeps := g.linear("level that the top-up keeps", vessel.Above(vessel.Running))
	if at := g.Number("/top_up/keeps_at", quantity.Length); at.Given() {
		keeps = g.linear("level that the top-up keeps", vessel.Above(at))
	}
	shuts := g.number(keeps, "z")
	if !source.Is("mains") {
		holds := working.File("volume of the store", g.Number("/top_up/store", quantity.Volume))
		if _, known := holds.Value(); !known {
			t.needs = append(t.needs, working.In("V", holds))
			holds = working.Fixed("no store", quantity.Volume, 0, "")
		}
		volume := g.number(holds, "V")
		from = g.add(t, spot{name: "store", floor: func([]float64) float64 { return 0 }, rim: func([]float64) float64 { return 2 },
			volume: func(x []float64) func(h float64) float64 {
				whole := math.Max(volume(x), 1e-6)
				return func(h float64) float64 { return whole * h }
			}})
	}
	law := func(stuck bool) func(x []float64) network.Law {
		return func(x []float64) network.Law {
			q, z := flow(x), shuts(x)
			return network.Func(func(up, down float64) float64 {
				open := q
				if !stuck {
					open *= math.Max(0, math.Min(1, (z-down)/0.01))
				}
				if from != network.Outside {
					open *= math.Max(0, math.Min(1, up/0.02))
				}
				return open
			})
		}
	}
	t.float = g.spare("top-up", from, node, nil, nil, law(false))
	t.stuck = g.spare("top-up, stuck open", from, node, nil, nil, law(true))
	g.top = t
}

// rains lays out the rain on every vessel without a solid lid, and from the roof.
func (g *stage) rains() {
	if g.Word("/site/under").Is("roof", "greenhouse", "indoors") {
		return
	}
	falls := working.File("strongest rain", g.Number("/rain/intensity", quantity.Velocity))
	if falls.Origin == working.Absent {
		falls = g.t.Assume("rain_intensity", "strongest rain", quantity.Velocity, "/rain/intensity")
	}
	i := g.number(falls, "i")
	roof, _ := g.Word("/rain/into").Value()
	catches := g.Number("/rain/catchment", quantity.Area)
	for k, p := range g.nodes {
		if !p.body {
			continue
		}
		open := !p.vessel.Lid.Is("solid")
		takes := roof == p.vessel.ID && catches.Given()
		if !open && !takes {
			continue
		}
		whole, sizes := shapeOf(p.vessel)
		places := g.s.take(sizes...)
		area := func([]float64) float64 { return 0 }
		if takes {
			area = g.number(working.File("area of the catchment", catches), "A")
		}
		g.rain[p.vessel] = g.spare("rain on "+p.name, network.Outside, k, nil, nil, func(x []float64) network.Law {
			a := area(x)
			if open {
				in := pick(x, places, nil)
				top := p.rim(x) - p.floor(x)
				a += (whole(top, in) - whole(top-0.001, in)) / 0.001
			}
			return network.Constant(i(x) * a)
		})
	}
}
