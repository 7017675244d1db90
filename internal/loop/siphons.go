package loop

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/water"
	"dryfit/internal/working"
)

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
				working.In("zc", v.linear("crest", at)), working.In("z", r.level(line.From.Vessel)))
			if line.To.Vessel != nil {
				r.work(r.address(line.ID, "siphon_end_under"), line.Pieces[len(line.Pieces)-1].Pointer, func(x []float64) (float64, string) { return x[0] - x[1], "" },
					working.In("z", r.balancedLevel(line.To.Vessel)), working.In("zm", v.mouth(line)))
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
		foot := v.linear("foot of the bell", bed.Above(bell.FootAt))
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
		in := append(sizes, working.In("rim", v.rim(vessel)), working.In("z", r.level(vessel)), working.In("z0", working.File("floor above the datum", vessel.StandsAt)))
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
