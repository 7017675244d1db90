package loop

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/water"
	"dryfit/internal/working"
)

// What the cases ask beside the scenes: where air comes in, what overflows carry,
// how siphons work, how long the water lasts.

// returns enters, for each pumped line into a vessel, how deep under the water air first gets in, and the holes of its siphon breaks.
func (v *surveyor) returns(runs_ []*run) {
	for _, line := range v.Lines {
		for _, p := range line.Pieces {
			if b := p.SiphonBreak; b != nil && line.Pumped {
				v.l.Put("siphon_breaks", p.ID())
				always := func(name string) working.Address {
					return working.Address{Subject: p.ID(), Name: name, Case: working.Always}
				}
				v.take(always("break_bore"), p.Pointer, working.File("bore of a hole", b.Bore))
				count := working.File("number of holes", b.Count)
				if count.Origin == working.Absent {
					count = working.Fixed("number of holes", quantity.Number, 1, "the schema: one where none is stated")
				}
				v.take(always("break_count"), p.Pointer, count)
			}
		}
		if !runs(line) || !line.Pumped || line.To.Vessel == nil {
			continue
		}
		v.l.Put("pumped_returns", line.ID)
		at := line.Pieces[len(line.Pieces)-1].Pointer
		for _, r := range runs_ {
			r.work(r.address(line.ID, "first_air_under"), at, func(x []float64) (float64, string) { return x[0] - x[1], "" },
				working.In("z", r.level(line.To.Vessel)), working.In("za", firstAir(line, true)))
		}
	}
}

// overflows enters what every overflow carries against what can come, and where it leads; and, for
// each running gravity line, whether air gets in at its crest.
func (v *surveyor) overflows(g *stage, runs_ []*run) {
	r := runOf(runs_, working.RunWorst, "usual")
	clean := runOf(runs_, working.RunClean, "usual")
	for _, line := range v.Lines {
		if runs(line) && !line.Pumped {
			f := working.Fact{Subject: line.ID, Name: "air_at_crest", Word: yesNo(airAtCrest(line)), At: line.Pointer}
			if crest, _ := highest(line); crest != nil && f.Word == "no" {
				f.At = crest.Pointer
			}
			v.l.Note(f)
		}
		if line.Duty != "overflow" || len(line.Pieces) == 0 {
			continue
		}
		v.l.Put("overflows", line.ID)
		leads := working.Fact{Subject: line.ID, Name: "overflow_leads", Word: yesNo(safeEnd(v.System, line)), At: line.Pointer}
		if to := v.Word(line.Pointer + "/leads_to"); line.To.Vessel == nil && line.To.Line == nil {
			if _, given := to.Value(); !given {
				leads.Word, leads.Missing = "", []string{to.Pointer()}
			}
		}
		v.l.Note(leads)
		vessel := line.From.Vessel
		if _, ok := g.at[vessel]; !ok || vessel == nil {
			continue
		}
		v.l.Put("overflows_of_running", line.ID)
		below := mouth(line)
		if line.To.Vessel != nil {
			below = r.level(line.To.Vessel)
		}
		way := r.gravity.gravity(line, below)
		k := way.shape.take(working.In("rim", rim(vessel)))[0]
		var comes []int
		for _, other := range v.Lines {
			if daily(other) && other.To.Vessel == vessel {
				comes = append(comes, way.shape.take(working.In("Q", clean.arriving(other)))...)
			}
		}
		v.work(working.Address{Subject: line.ID, Name: "overflow_share", Case: OneBlocked}, line.Pointer+"/pipe", func(x []float64) (float64, string) {
			q := 0.0
			for _, i := range comes {
				q += x[i]
			}
			most, why := way.reach(x[k]-0.03, x, 1e-3)
			if most <= q/1000 {
				return 1000, "the overflow carries next to nothing with the water 30 mm under the rim"
			}
			return q / most, why
		}, way.shape.inputs...)
	}
}

// airAtCrest says that a gravity line cannot siphon its vessel down to an intake lower than its crest: it begins at the crest, or air comes in there or behind it.
func airAtCrest(line *system.Line) bool {
	crest, _ := highest(line)
	if crest == nil || crest.Index == 0 || crest.Standpipe != nil || crest.BellSiphon != nil {
		return true
	}
	const flat = 0.01
	from, known := line.Pieces[0].From.Value()
	top, known2 := crest.To.Value()
	return known && known2 && top-from < flat || aired(line, crest) || airedAt(line, crest)
}

// airedAt says that air gets in somewhere at the height of the crest.
func airedAt(line *system.Line, crest *system.Piece) bool {
	top, _ := crest.To.Value()
	for _, p := range line.Pieces {
		if at, known := p.To.Value(); lets(p) && known && at > top-1e-3 {
			return true
		}
	}
	return false
}

// siphons enters crest, end and priming of each line that is worked by hand and climbs over a crest.
func (v *surveyor) siphons(runs_ []*run) {
	for _, line := range v.Lines {
		crest, at := highest(line)
		if _, known := at.Value(); line.Duty != "draw-down" || crest == nil || crest.Index == 0 && known || line.From.Vessel == nil {
			continue
		}
		v.l.Put("siphons", line.ID)
		primed := working.Fact{Subject: line.ID, Name: "siphon_primed", Word: "no", At: line.Pointer}
		by := v.Word(line.Pointer + "/primed_by")
		word, given := by.Value()
		switch {
		case given:
			primed.Word = yesNo(word != "nothing")
		case valveBehind(line, crest): // filled from its upper end with the valve shut
			primed.Word = "yes"
		default:
			primed.Word, primed.Missing = "", []string{by.Pointer()}
		}
		v.l.Note(primed)
		for _, r := range runs_ {
			r.work(r.address(line.ID, "crest_over_level"), crest.Pointer, func(x []float64) (float64, string) { return x[0] - x[1], "" },
				working.In("zc", linear("crest", at)), working.In("z", r.level(line.From.Vessel)))
			if line.To.Vessel != nil {
				r.work(r.address(line.ID, "siphon_end_under"), line.Pieces[len(line.Pieces)-1].Pointer, func(x []float64) (float64, string) { return x[0] - x[1], "" },
					working.In("z", r.level(line.To.Vessel)), working.In("zm", mouth(line)))
			}
		}
	}
}

func valveBehind(line *system.Line, crest *system.Piece) bool {
	for _, p := range line.Pieces[crest.Index:] {
		if p.Valve != nil {
			return true
		}
	}
	return false
}

// bells is the lines that begin with a bell siphon.
func (v *surveyor) bells() []*system.Line {
	var out []*system.Line
	for _, line := range v.Lines {
		if runs(line) && len(line.Pieces) > 0 && line.Pieces[0].BellSiphon != nil {
			out = append(out, line)
		}
	}
	return out
}

// beds enters how the siphons of beds start and stop, and what all of them let go together against the room of the vessel that takes it.
//
//	start  Q over the flow at which V = sqrt(g D) in the standpipe
//	stop   Q over the flow of the full siphon with the water at the foot of the bell
//
// Source: as siphonic drains; Froude number of one for a pipe that runs full, weak.
func (v *surveyor) beds(g *stage, runs_ []*run) {
	let := map[*system.Vessel][]working.Input{}
	for _, line := range v.bells() {
		bed, bell := line.From.Vessel, line.Pieces[0].BellSiphon
		v.l.Put("siphon_beds", bed.ID)
		foot := linear("foot of the bell", bed.Above(bell.FootAt))
		for _, r := range runs_ {
			if r.temperature != "usual" {
				continue
			}
			b := r.gravity
			r.work(r.address(bed.ID, "siphon_start"), line.Pieces[0].Pointer, func(x []float64) (float64, string) {
				return x[0] / (math.Sqrt(water.G*x[1]) * math.Pi / 4 * x[1] * x[1]), ""
			}, working.In("Q", r.flow(line)), working.In("D", b.bore(line.Pieces[0])))
			full := *b
			full.primed, full.siphoning = true, true
			way := full.gravity(line, r.below(line))
			k := way.shape.take(working.In("zf", foot), working.In("Q", r.flow(line)))
			r.work(r.address(bed.ID, "siphon_stop"), line.Pieces[0].Pointer, func(x []float64) (float64, string) {
				most, why := way.reach(x[k[0]], x, 1e-3)
				if most <= 0 {
					return math.NaN(), "the siphon has no fall when the bed is nearly empty"
				}
				return x[k[1]] / most, why
			}, way.shape.inputs...)
		}
		if line.To.Vessel == nil {
			continue
		}
		holds, sizes := v.holding(bed)
		n := len(sizes)
		let[line.To.Vessel] = append(let[line.To.Vessel], working.In("Vbed", working.Step("what the bed lets go", quantity.Volume, "V(crest) - V(foot)", geometry,
			func(x []float64) (float64, string) { return holds(x[n], x[:n]) - holds(x[n+1], x[:n]), "" },
			append(sizes, working.In("crest", working.File("rim of the standpipe", bell.CrestAt)), working.In("foot", working.File("foot of the bell", bell.FootAt)))...)))
	}
	r := runOf(runs_, working.RunWorst, "usual")
	for _, vessel := range v.Vessels {
		beds := let[vessel]
		if len(beds) == 0 {
			continue
		}
		v.l.Put("bed_receivers", vessel.ID)
		holds, sizes := v.holding(vessel)
		k, n := len(sizes), len(sizes)+3
		in := append(sizes, working.In("rim", rim(vessel)), working.In("z", r.level(vessel)), working.In("z0", working.File("floor above the datum", vessel.StandsAt)))
		v.work(working.Address{Subject: vessel.ID, Name: "beds_share", Case: AllBedsDrain}, vessel.Form.Pointer, func(x []float64) (float64, string) {
			sum := 0.0
			for _, one := range x[n:] {
				sum += one
			}
			room := holds(x[k]-x[k+2], x[:k]) - holds(x[k+1]-x[k+2], x[:k])
			if room <= 0 {
				return math.NaN(), "there is no room under the rim"
			}
			return sum / room, ""
		}, append(in, beds...)...)
	}
}

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
