package loop

import (
	"dryfit/internal/network"
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// happens enters what every scene comes to, and what the cases ask beside.
func (v *surveyor) happens(runs_ []*run) {
	for _, set := range caseSets {
		v.l.Put(set.Name)
	}
	worst := runOf(runs_, working.RunWorst, "usual")
	g := worst.stage()
	v.caseSets(g)
	running := g.running(worst.balance)
	var stopped *told
	for _, sc := range g.scenes(running) {
		t := g.solve(sc)
		t.enter()
		if sc.kase == Stopped && sc.fault == breakOpen {
			stopped = t
		}
		v.told = append(v.told, t)
	}
	t := g.solve(scene{kase: Restart, fault: "start", subject: "pumps", at: "/pumps", from: stopped.ends(), lasts: aDay, deep: true, change: func(*network.Network, []float64) {}})
	t.enter()
	v.told = append(v.told, t)
	g.nothingOpens()
	v.returns(runs_)
	v.overflows(g, runs_)
	v.siphons(runs_)
	v.beds(g, runs_)
	v.alone(g, runs_)
	v.dropRooms(runs_)
}

// running is the levels at which the loop runs, and a full store.
func (g *stage) running(b *balanced) []*working.Node {
	var out []*working.Node
	for i := range g.nodes {
		if i < len(b.y.nodes) {
			out = append(out, b.z(i))
		} else {
			out = append(out, working.Fixed("level in the store: full", quantity.Length, 1, geometry))
		}
	}
	return out
}

// caseSets puts the vessels and pieces that the cases are about into their sets.
func (v *surveyor) caseSets(g *stage) {
	for _, p := range g.nodes {
		if !p.body {
			continue
		}
		v.l.Put("water_vessels", p.name)
		if p.vessel.Role.Is("fish-tank") {
			v.l.Put("fish_tanks", p.name)
		}
		if v.boils(p.vessel) {
			v.l.Put("foaming_vessels", p.name)
		}
		if g.pumpDraws(p.vessel) {
			v.l.Put("pump_vessels", p.name)
		}
		if _, rains := g.rain[p.vessel]; rains || len(g.rain) > 0 && g.pumpDraws(p.vessel) {
			v.l.Put("rained_on", p.name)
		}
	}
	drawn := map[string]bool{}
	for _, line := range v.Lines {
		if line.Duty == "draw-down" && line.To.Vessel != nil && g.pumpDraws(line.To.Vessel) && !drawn[line.To.Vessel.ID] {
			drawn[line.To.Vessel.ID] = true
			v.l.Put("settlers_drawn_down", line.To.Vessel.ID)
		}
	}
	if g.top != nil {
		v.l.Put("topped_up", g.top.vessel.ID)
		f := working.Fact{Subject: g.top.vessel.ID, Name: "second_stop", Word: "yes", At: "/top_up"}
		stop, given := v.Word("/top_up/second_stop").Value()
		source, known := v.Word("/top_up/from").Value()
		switch {
		case known && source != "mains": // a store is empty at last
		case given:
			f.Word = yesNo(stop != "none")
		default:
			f.Word, f.Missing = "", []string{"/top_up/second_stop"}
		}
		v.l.Note(f)
	}
}

// pumpDraws says that a pump draws from a vessel.
func (v *surveyor) pumpDraws(vessel *system.Vessel) bool {
	for _, line := range v.Lines {
		if runs(line) && line.Pumped && line.From.Vessel == vessel {
			return true
		}
	}
	return false
}

// boils says that air makes the water of a vessel boil: stones under moving media.
func (v *surveyor) boils(vessel *system.Vessel) bool {
	kind := v.Word(vessel.Pointer + "/media/kind")
	if _, given := kind.Value(); given && !kind.Is("carriers") || len(v.Keys(vessel.Pointer+"/media")) == 0 {
		return false
	}
	for _, stone := range v.Items("/air/stones") {
		if in, given := v.Word(stone + "/in").Value(); given && in == vessel.ID {
			return true
		}
	}
	return false
}

// enter enters what a scene comes to.
func (t *told) enter() {
	g := t.g
	g.l.Follow(working.Scene{Case: t.sc.kase, Fault: t.sc.fault, Subject: t.sc.subject, At: t.sc.at})
	for i, p := range g.nodes {
		if p.body {
			t.vessel(i, p.vessel)
		}
	}
	enter := func(name string, which int, kind quantity.Kind, more ...working.Input) {
		f := func(x []float64) (float64, string) { return x[0], "" }
		in := append([]working.Input{working.In("x", t.whole(which, name, kind))}, more...)
		g.work(t.address(t.sc.subject, name), t.sc.at, f, in...)
	}
	switch t.sc.kase {
	case OneBlocked:
		enter("to_floor", toFloor, quantity.Volume)
		enter("time_to_spill", spillsAt, quantity.Time)
		enter("time_to_dry", dryAt, quantity.Time, g.dryness()...)
	case WrongValve:
		enter("to_floor", toFloor, quantity.Volume)
		enter("time_to_spill", spillsAt, quantity.Time)
		g.l.Put("valves", t.sc.subject)
	case OpenJoint, DrainLeftOpen:
		enter("to_floor", toFloor, quantity.Volume)
	}
}

// dryness is the depths under which the pumps draw air, which the file has to state for what depends on them.
func (v *surveyor) dryness() []working.Input {
	var in []working.Input
	for _, line := range v.Lines {
		if runs(line) {
			for _, pump := range pumpsOf(line) {
				in = append(in, working.In("zd", working.File("depth under which the pump draws air", pump.DryBelow)))
			}
		}
	}
	return in
}

// vessel enters what a scene comes to in one vessel.
func (t *told) vessel(node int, vessel *system.Vessel) {
	g := t.g
	of := func(name string, which int, kind quantity.Kind, more ...working.Input) {
		in := append([]working.Input{working.In("x", t.of(vessel, which, name, kind))}, more...)
		g.work(t.address(vessel.ID, name), vessel.Form.Pointer, func(x []float64) (float64, string) { return x[0], "" }, in...)
	}
	highest := working.In("z", t.level(node, atMost))
	edge := working.In("rim", t.g.rim(vessel))
	under := func(name, at string) {
		g.work(t.address(vessel.ID, name), at, func(x []float64) (float64, string) { return x[0] - x[1], "" }, edge, highest)
	}
	switch t.sc.kase {
	case OneBlocked, WrongValve, Cleaning, Stopped:
		g.take(t.address(vessel.ID, "highest_level"), vessel.Pointer, highest.Node)
		under("least_freeboard", vessel.Form.Pointer)
	}
	fish := vessel.Role.Is("fish-tank")
	switch t.sc.kase {
	case OneBlocked:
		of("blocked_share", share, quantity.Fraction)
	case Stopped:
		g.take(t.address(vessel.ID, "static_level"), vessel.Pointer, t.level(node, atEnd))
		if fish {
			of(map[bool]string{true: "tank_kept", false: "tank_kept_capped"}[t.sc.fault == breakOpen], kept, quantity.Fraction)
		}
	case OpenJoint:
		if fish {
			capped := t.sc.fault == t.sc.subject+" open"+capsVents
			if !capped {
				of("tank_kept", kept, quantity.Fraction)
			}
			if capped || !vented(g.Line(t.sc.subject)) {
				of("tank_kept_capped", kept, quantity.Fraction)
			}
		}
	case DrainLeftOpen:
		if fish {
			of("tank_kept", kept, quantity.Fraction)
		}
	case Rain:
		under("rain_room", vessel.Form.Pointer)
	case TopupStuck:
		if vessel == g.top.vessel {
			under("stuck_room", "/top_up")
		}
	}
	if !g.pumpDraws(vessel) {
		return
	}
	switch t.sc.kase {
	case Stopped, Cleaning:
		of("run_back", ranBack, quantity.Volume)
		of("run_back_share", backShare, quantity.Fraction)
	case Restart:
		of("start_share", startShare, quantity.Number, g.dryness()...)
		g.work(t.address(vessel.ID, "start_cover"), vessel.Form.Pointer, func(x []float64) (float64, string) { return x[0] - x[1] - x[2], "" },
			append([]working.Input{working.In("z", t.level(node, atLeast)), working.In("z0", working.File("floor above the datum", vessel.StandsAt))}, g.dryness()...)...)
	}
}

// nothingOpens enters that a fish tank keeps its water where no joint outside may come
// apart, and where there is no drain to be left open.
func (g *stage) nothingOpens() {
	drains, joints := 0, len(g.joints)
	for _, line := range g.Lines {
		if line.Duty == "waste" || line.Duty == "empty" {
			drains++
		}
	}
	for key := range g.gaps {
		if _, open := key.(joint); open {
			joints++
		}
	}
	for _, p := range g.nodes {
		if !p.body || !p.vessel.Role.Is("fish-tank") {
			continue
		}
		all := func(kase, name, why string) {
			g.take(working.Address{Subject: p.name, Name: name, Case: kase}, p.vessel.Form.Pointer, working.Fixed(why, quantity.Fraction, 1, geometry))
		}
		if joints == 0 {
			all(OpenJoint, "tank_kept", "no joint outside the vessels may come apart")
			all(OpenJoint, "tank_kept_capped", "no joint outside the vessels may come apart")
		}
		if drains == 0 {
			all(DrainLeftOpen, "tank_kept", "there is no drain to be left open")
		}
	}
}

// dropRooms enters how far the level over an air-open drop stays under its spill when the drop is choked at its head.
func (v *surveyor) dropRooms(runs_ []*run) {
	for _, line := range v.Lines {
		if v.l.Find(working.Address{Subject: line.ID, Name: "drop_froude", Case: working.RunWorst, Water: "usual"}) == nil || line.From.Vessel == nil {
			continue
		}
		v.l.Put("drop_lines", line.ID)
		for _, r := range runs_ {
			if r.runCase == working.RunWorst {
				r.work(r.address(line.ID, "drop_room"), line.Pointer+"/pipe", func(x []float64) (float64, string) { return x[0] - x[1], "" },
					working.In("spill", v.spill(line.From.Vessel)), working.In("z", r.above(line)))
			}
		}
	}
}
