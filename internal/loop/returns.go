package loop

import (
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

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
		if !daily(line) || !line.Pumped && !pressed(line) || line.To.Vessel == nil || v.Word(line.To.Vessel.Pointer+"/works").Is("flood-and-drain") {
			continue // a bed that floods may well empty through its pump
		}
		v.l.Put("pumped_returns", line.ID)
		at := line.Pieces[len(line.Pieces)-1].Pointer
		for _, r := range runs_ {
			r.work(r.address(line.ID, "first_air_under"), at, func(x []float64) (float64, string) { return x[0] - x[1], "" },
				working.In("z", r.level(line.To.Vessel)), working.In("za", v.firstAir(line, true)))
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
		below := under(line)
		if line.To.Vessel != nil {
			below = r.level(line.To.Vessel)
		}
		way := r.gravity.gravity(line, below)
		k := way.shape.take(working.In("rim", v.rim(vessel)))[0]
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
