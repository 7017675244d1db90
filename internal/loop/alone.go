package loop

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// alone enters what the loop loses in time, and how long that lasts without anybody there.
func (v *surveyor) alone(g *stage, runs_ []*run) {
	r := runOf(runs_, working.RunClean, "usual")
	per := func(key, title, pointer string, stated system.Number) *working.Node {
		if stated.Given() {
			return working.File(title, stated)
		}
		return v.t.Assume(key, title, quantity.Velocity, pointer)
	}
	in := []working.Input{working.In("e", per("evaporation", "depth of open water that evaporates in time", "/site/evaporation", v.Number("/site/evaporation", quantity.Velocity))),
		working.In("b", v.t.Assume("leaves_breathe", "what leaves give to the air, for the area of the bed", quantity.Velocity, "/site/evaporation"))}
	var shares []float64 // of open water and of leaves over the vessel's area
	var areas []func(x []float64) float64
	for _, p := range g.nodes {
		if !p.body {
			continue
		}
		whole, sizes := shapeOf(p.vessel)
		k := len(in)
		in = append(in, sizes...)
		in = append(in, working.In("h", working.File("height", p.vessel.Form.Height)))
		n := len(in)
		areas = append(areas, func(x []float64) float64 {
			h := x[n-1]
			return (whole(h, x[k:n-1]) - whole(h-0.001, x[k:n-1])) / 0.001
		})
		bed := p.vessel.Role.Is("media-bed", "raft-bed", "channel-bed")
		open := !p.vessel.Lid.Is("solid") && !bed
		shares = append(shares, map[bool]float64{true: 1}[open], map[bool]float64{true: 1}[bed])
	}
	lost := v.work(working.Address{Subject: "water", Name: "water_lost", Case: Unattended}, "/site", func(x []float64) (float64, string) {
		q := 0.0
		for i, area := range areas {
			q += area(x) * (shares[2*i]*x[0] + shares[2*i+1]*x[1])
		}
		return q, ""
	}, in...)
	for _, p := range g.nodes {
		if !p.body || !g.pumpDraws(p.vessel) {
			continue
		}
		vessel := p.vessel
		holds, sizes := v.holding(vessel)
		k := len(sizes)
		with := append(sizes, working.In("z", r.level(vessel)), working.In("z0", working.File("floor above the datum", vessel.StandsAt)), working.In("Ql", lost))
		dry := 0
		for _, line := range v.Lines {
			if runs(line) && line.From.Vessel == vessel {
				for _, pump := range pumpsOf(line) {
					if dry == 0 {
						dry = len(with)
						with = append(with, working.In("zd", working.File("depth under which the pump draws air", pump.DryBelow)))
					}
				}
			}
		}
		store := len(with)
		if g.top != nil && !v.Word("/top_up/from").Is("mains", "by-hand") {
			with = append(with, working.In("Vs", working.File("volume of the store", v.Number("/top_up/store", quantity.Volume))))
		}
		lasts := v.work(working.Address{Subject: vessel.ID, Name: "water_lasts", Case: Unattended}, vessel.Pointer, func(x []float64) (float64, string) {
			have := holds(x[k]-x[k+1], x[:k]) - holds(x[dry], x[:k])
			for _, one := range x[store:] {
				have += one
			}
			if x[k+2] <= 0 {
				return 365 * aDay, "nothing is lost"
			}
			return math.Min(have/x[k+2], 365*aDay), ""
		}, with...)
		v.work(working.Address{Subject: vessel.ID, Name: "unattended_share", Case: Unattended}, "/site/unattended", func(x []float64) (float64, string) {
			return x[0] / math.Max(x[1], 1), ""
		}, working.In("t", working.File("longest time that nobody looks", v.Number("/site/unattended", quantity.Time))), working.In("T", lasts))
	}
}
