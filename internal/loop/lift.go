package loop

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// pumped is a pump in its line.
type pumped struct {
	line  *system.Line
	piece *system.Piece
}

// at is where the pump's curve stands in the file.
func (p pumped) at() string {
	if len(p.piece.Pump.Curve) > 0 {
		return p.piece.Pump.Pointer + "/curve"
	}
	return p.piece.Pump.Pointer
}

// lifts enters what the pumps of the loop do, against what is asked of them.
func (v *surveyor) lifts(runs_ []*run) {
	for _, set := range liftSets {
		v.l.Put(set.Name)
	}
	var all []pumped
	for _, line := range v.Lines {
		for _, p := range line.Pieces {
			if p.Pump != nil && runs(line) {
				all = append(all, pumped{line, p})
			}
		}
	}
	for _, p := range all {
		v.l.Put("pumps_in_lines", p.piece.ID())
		v.curvePoints(p)
		v.throttle(p)
		if p.line.From.Vessel.Role.Is("fish-tank") {
			v.l.Put("pumps_in_fish_tanks", p.piece.ID())
		}
		for _, r := range runs_ {
			r.lift(p, all)
		}
	}
	v.mouths()
	v.ahead()
	for _, r := range runs_ {
		if r.runCase == working.RunLeast {
			r.turnovers()
		}
	}
}

func (v *surveyor) curvePoints(p pumped) {
	a := working.Address{Subject: p.piece.ID(), Name: "curve_points", Case: working.Always}
	pump := p.piece.Pump
	var in []working.Input
	for _, point := range pump.Curve {
		in = append(in, working.In("Q", working.File("flow on the pump's curve", point.Flow)))
	}
	if len(in) == 0 {
		in = append(in, working.In("H0", working.File("shut-off head", pump.ShutOff)), working.In("Q0", working.File("open flow", pump.OpenFlow)))
	}
	v.work(a, p.at(), func(x []float64) (float64, string) { return float64(len(x)), "" }, in...)
}

// throttle notes whether a valve on the pump's suction side may hold its water back: one that is not locked open.
func (v *surveyor) throttle(p pumped) {
	f := working.Fact{Subject: p.piece.ID(), Name: "throttled_before", Word: "no", At: p.piece.Pointer}
	for _, before := range p.line.Pieces[:p.piece.Index] {
		if before.Valve != nil && !before.Valve.Locked.Is("open") {
			f.Word, f.At = "yes", before.Pointer
			break
		}
	}
	v.l.Note(f)
}

// lift enters what one pump does in one state.
func (r *run) lift(p pumped, all []pumped) {
	id, pump := p.piece.ID(), p.piece.Pump
	level := working.In("z1", r.level(p.line.From.Vessel))
	r.cover(p, working.In("z1", r.balancedLevel(p.line.From.Vessel)))
	least := working.In("Qasked", working.File("least flow asked", r.WorkingFlow.Least))
	over := func(name string, asked working.Input, flows []working.Input) {
		r.work(r.address(id, name), p.at(), func(x []float64) (float64, string) {
			if x[0] <= 0 {
				return math.NaN(), "no flow is asked for"
			}
			q := 0.0
			for _, one := range x[1:] {
				q += one
			}
			return q / x[0], ""
		}, append([]working.Input{asked}, flows...)...)
	}
	if r.runCase == working.RunLeast {
		var flows []working.Input
		for _, one := range all {
			flows = append(flows, working.In("Q", r.flow(one.line)))
		}
		over("flow_over_asked", least, flows)
	}
	if r.runCase != working.RunClean {
		return
	}
	var open []working.Input
	for _, one := range all {
		open = append(open, working.In("Q", r.wide(one)))
	}
	over("open_reserve", least, open)
	most := least
	if r.WorkingFlow.Most.Given() {
		most = working.In("Qasked", working.File("most flow asked", r.WorkingFlow.Most))
	}
	over("open_excess", most, open)

	s := newShape()
	head := curve(s, pump)
	k := s.take(working.In("Q", r.flow(p.line)), level, working.In("zm", r.mouth(p.line)))
	if z := r.drowning(p.line); z != nil {
		k = append(k, s.take(working.In("z2", z))...)
	}
	if crest, at := highest(p.line); crest != nil {
		k = append(k, s.take(working.In("zc", r.linear("crest of the line", at)))...)
	}
	r.work(r.address(id, "lift_share"), p.at(), func(x []float64) (float64, string) {
		c, err := head(x)
		if err != nil {
			return math.NaN(), err.Error()
		}
		top := x[k[2]]
		for _, i := range k[3:] {
			top = math.Max(top, x[i])
		}
		return (top - x[k[1]]) / sure(c.Head(0)), ""
	}, s.inputs...)
	r.work(r.address(id, "duty_share"), p.at(), func(x []float64) (float64, string) {
		c, err := head(x)
		if err != nil {
			return math.NaN(), err.Error()
		}
		return x[k[0]] / sure(c.Flow(0)), ""
	}, s.inputs...)
}

// wide is the flow of a pump with the valves of its line fully open.
func (r *run) wide(p pumped) *working.Node {
	if r.divides(p.line) {
		return r.flow(p.line)
	}
	return r.pump.once("flow, valves open", p.line.ID, func() *working.Node {
		b := newBench(r.surveyor, r.nu[r.temperature], r.pump.walls).opened()
		f, in := b.duty(p.line, r.level(p.line.From.Vessel), r.drowning(p.line), true)
		return working.Step("flow with the valves of the line open", quantity.Flow, "H(Q) = z2 - z1 + losses(Q), valves open", duty, f, in...)
	})
}

// cover enters how far the water stands over the depth at which the pump draws air and, in a fish tank, how much of the depth it leaves.
func (r *run) cover(p pumped, level working.Input) {
	vessel, pump := p.line.From.Vessel, p.piece.Pump
	floor := working.In("z0", working.File("floor above the datum", vessel.StandsAt))
	dry := working.In("zd", working.File("depth under which the pump draws air", pump.DryBelow))
	r.work(r.address(p.piece.ID(), "pump_cover"), pump.DryBelow.Pointer(), func(x []float64) (float64, string) {
		return x[0] - x[1] - x[2], ""
	}, level, floor, dry)
	if !vessel.Role.Is("fish-tank") {
		return
	}
	in := []working.Input{level, floor}
	if first := p.line.Pieces[0]; first.Intake != nil {
		in = append(in, working.In("zi", working.File("height of the intake", first.Intake.At)))
	}
	if pump.DryBelow.Given() || len(in) == 2 {
		in = append(in, dry)
	}
	r.work(r.address(p.piece.ID(), "left_by_pump"), pump.DryBelow.Pointer(), func(x []float64) (float64, string) {
		depth, left := x[0]-x[1], 0.0
		for _, one := range x[2:] {
			left = math.Max(left, one)
		}
		if depth <= 0 {
			return math.NaN(), "no water stands in the tank"
		}
		return left / depth, ""
	}, in...)
}

// mouths notes for every line that takes water out of a fish tank whether a guard keeps the fish out.
func (v *surveyor) mouths() {
	for _, line := range v.Lines {
		if line.From.Vessel == nil || !line.From.Vessel.Role.Is("fish-tank", "quarantine-tank") || len(line.Pieces) == 0 || line.Duty == "vent" {
			continue
		}
		p := line.Pieces[0]
		v.l.Put("fish_mouths", p.ID())
		v.l.Note(working.Fact{Subject: p.ID(), Name: "guarded", Word: yesNo(len(v.Keys(p.Value+"/guard")) > 0), At: p.Pointer})
	}
}

// ahead notes for every settler whether a pump stands between a fish tank and it.
func (v *surveyor) ahead() {
	for _, vessel := range v.Vessels {
		if !vessel.Role.Is("radial-flow-settler", "swirl-settler", "cone-settler") {
			continue
		}
		v.l.Put("settlers_on_the_way", vessel.ID)
		f := working.Fact{Subject: vessel.ID, Name: "pump_before_settler", Word: "no", At: vessel.Pointer}
		if p := v.pumpUp(vessel, nil, map[*system.Vessel]bool{}); p != nil {
			f.Word, f.At = "yes", p.Pointer
		}
		v.l.Note(f)
	}
}

// pumpUp is the last pump that water passes on its way from a fish tank to a vessel.
func (v *surveyor) pumpUp(vessel *system.Vessel, pump *system.Piece, seen map[*system.Vessel]bool) *system.Piece {
	if seen[vessel] {
		return nil
	}
	seen[vessel] = true
	for _, line := range v.Lines {
		if line.To.Vessel != vessel || !daily(line) {
			continue
		}
		passed := pump
		for l, hops := line, 0; l != nil && hops < 20; l, hops = l.From.Line, hops+1 {
			for _, p := range l.Pieces {
				if p.Pump != nil && passed == nil {
					passed = p
				}
			}
			line = l
		}
		if line.From.Vessel == nil {
			continue
		}
		if line.From.Vessel.Role.Is("fish-tank") {
			if passed != nil {
				return passed
			}
			continue
		}
		if p := v.pumpUp(line.From.Vessel, passed, seen); p != nil {
			return p
		}
	}
	return nil
}

// turnovers enters, for each fish tank that lines run into, the time in which the flow brings as much water as it holds.
func (r *run) turnovers() {
	for _, vessel := range r.Vessels {
		if !vessel.Role.Is("fish-tank") {
			continue
		}
		if r.temperature == "low" && r.runCase == working.RunLeast {
			r.l.Put("fish_tanks_fed", vessel.ID)
		}
		volume := r.l.Find(r.address(vessel.ID, "water_volume"))
		if volume == nil {
			volume = working.Unknown("water in it", quantity.Volume, vessel.Pointer, "no line in which water runs leads to "+vessel.ID)
		}
		flow := r.l.Find(r.address(vessel.ID, "inflow"))
		if flow == nil {
			flow = working.Unknown("flow", quantity.Flow, "", "no line in which water runs leads into "+vessel.ID)
		}
		r.work(r.address(vessel.ID, "turnover_time"), vessel.Form.Pointer, func(x []float64) (float64, string) {
			if x[1] <= 0 {
				return math.NaN(), "nothing flows into " + vessel.ID
			}
			return x[0] / x[1], ""
		}, working.In("V", volume), working.In("Q", flow))
	}
}
