package loop

import (
	"dryfit/internal/network"
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// Cases in which something has gone wrong, or is done by hand.
const (
	OneBlocked    = "one_blocked"
	Stopped       = "stopped"
	Restart       = "restart"
	OpenJoint     = "open_joint"
	DrainLeftOpen = "drain_left_open"
	AllBedsDrain  = "all_beds_drain"
	Rain          = "rain"
	TopupStuck    = "topup_stuck"
	WrongValve    = "wrong_valve"
	Cleaning      = "cleaning"
	Unattended    = "unattended"
)

// How long a scene is followed, s: a day where the file does not say how long nobody looks.
const (
	aDay       = 24 * 3600.0
	rainLasts  = 6 * 3600.0
	capsVents  = ", vents capped"
	breakOpen  = "siphon break open"
	breakShut  = "siphon break blocked"
	topupFault = "top-up stuck open"
)

// scenes is every scene of a loop, in the order of the cases.
func (g *stage) scenes(running []*working.Node) []scene {
	nobody := aDay
	if t, given := g.Number("/site/unattended", quantity.Time).SI(); given && t > 0 {
		nobody = t
	}
	looked := nobody
	if t, given := g.Number("/site/looked_at_every", quantity.Time).SI(); given && t > 0 && g.Word("/site/setting").Is("farm") {
		looked = t
	}
	var out []scene
	add := func(sc scene) {
		if sc.from == nil {
			sc.from = running
		}
		out = append(out, sc)
	}
	for _, line := range g.Lines {
		if !daily(line) {
			continue
		}
		k := g.strands(line)
		if len(k) == 0 {
			continue
		}
		add(scene{kase: OneBlocked, fault: line.ID + " blocked", subject: line.ID, at: line.Pointer, lasts: looked, needs: g.topNeeds(),
			change: func(n *network.Network, _ []float64) {
				n.Links[k[0]].Shut = true
				g.float(n)
			}})
	}
	for i, fault := range []string{breakOpen, breakShut} {
		add(scene{kase: Stopped, fault: fault, subject: "pumps", at: "/pumps", lasts: aDay, change: func(n *network.Network, _ []float64) { g.stop(n, i) }})
	}
	for _, line := range g.Lines {
		if line.Duty == "draw-down" {
			add(scene{kase: Cleaning, fault: line.ID + " open", subject: line.ID, at: line.Pointer, lasts: aDay, needs: g.gaps[line], change: func(n *network.Network, x []float64) {
				g.stop(n, 1)
				g.opens(line)(n, x)
			}})
		}
	}
	for _, line := range g.Lines {
		g.openJoint(line, add)
	}
	for _, line := range g.Lines {
		if line.Duty != "waste" && line.Duty != "empty" {
			continue
		}
		add(scene{kase: DrainLeftOpen, fault: line.ID + " open", subject: line.ID, at: line.Pointer, lasts: looked, needs: g.gaps[line],
			change: g.opens(line), floor: g.toFloor(line)})
	}
	if len(g.rain) > 0 {
		add(scene{kase: Rain, fault: "rain", subject: "rain", at: "/site/under", lasts: rainLasts, change: func(n *network.Network, _ []float64) {
			for _, k := range g.rain {
				n.Links[k].Shut = false
			}
		}})
	}
	if g.top != nil {
		add(scene{kase: TopupStuck, fault: topupFault, subject: g.top.vessel.ID, at: "/top_up", lasts: nobody, needs: g.top.needs,
			change: func(n *network.Network, _ []float64) { n.Links[g.top.stuck].Shut = false }})
	}
	for _, line := range g.Lines {
		for _, p := range line.Pieces {
			if p.Valve != nil {
				g.wrong(line, p, looked, add)
			}
		}
	}
	return out
}

// float lets the top-up in as its float says.
func (g *stage) float(n *network.Network) {
	if g.top != nil {
		n.Links[g.top.float].Shut = false
	}
}

func (g *stage) topNeeds() []working.Input {
	if g.top == nil {
		return nil
	}
	return g.top.needs
}

// stop stands the pumps still; their lines run backwards, with their siphon breaks open (0) or blocked (1).
func (g *stage) stop(n *network.Network, which int) {
	for i, k := range g.lines {
		if k.pumped {
			n.Links[i].Shut = true
		}
	}
	for _, k := range g.backs {
		n.Links[k[which]].Shut = false
	}
}

// openJoint adds the scenes of a line that comes open at its lowest joint outside the vessels.
func (g *stage) openJoint(line *system.Line, add func(scene)) {
	j, ok := g.joints[line]
	if !ok {
		return
	}
	k := g.strands(line)
	for _, capped := range []bool{false, true} {
		if capped && !vented(line) {
			continue
		}
		fault, open, below := line.ID+" open", j.open, j.below
		if capped {
			fault, open, below = fault+capsVents, j.capped, j.belowCapped
		}
		floor := []int{open}
		if below >= 0 {
			floor = append(floor, below)
		}
		add(scene{kase: OpenJoint, fault: fault, subject: line.ID, at: j.at.Pointer, lasts: aDay, floor: floor,
			change: func(n *network.Network, _ []float64) {
				for _, one := range k {
					n.Links[one].Shut = true
				}
				for _, one := range floor {
					n.Links[one].Shut = false
				}
			}})
	}
}

// vented says that air gets into a line on its way.
func vented(line *system.Line) bool { return len(line.Pieces) > 0 && aired(line, line.Pieces[0]) }

// opens opens a drain; one that could not be laid out changes nothing.
func (g *stage) opens(line *system.Line) func(n *network.Network, x []float64) {
	return func(n *network.Network, _ []float64) {
		if k, ok := g.opened[line]; ok {
			n.Links[k].Shut = false
		}
	}
}

// toFloor is the strand of a drain whose water does harm where it ends.
func (g *stage) toFloor(line *system.Line) []int {
	k, ok := g.opened[line]
	if !ok || line.To.Vessel != nil || safeEnd(g.System, line) {
		return nil
	}
	return []int{k}
}

// safeEnd says that a line ends where its water does no harm: in a vessel, a sewer, a gully, a garden or a soakaway.
func safeEnd(s *system.System, line *system.Line) bool {
	return line.To.Vessel != nil || s.Word(line.Pointer+"/leads_to").Is("sewer", "gully", "garden", "soakaway")
}

// wrong adds the scene of a valve in its other position.
func (g *stage) wrong(line *system.Line, p *system.Piece, lasts float64, add func(scene)) {
	sc := scene{kase: WrongValve, fault: p.ID() + " shut", subject: p.ID(), at: p.Pointer, lasts: lasts, needs: g.topNeeds()}
	if k := g.strands(line); len(k) > 0 && flows(line) {
		shut := k[0]
		for _, one := range k {
			if pieces := g.lines[one].pieces; len(pieces) > 0 && pieces[0].Index <= p.Index {
				shut = one
			}
		}
		sc.change = func(n *network.Network, _ []float64) {
			n.Links[shut].Shut = true
			g.float(n)
		}
		add(sc)
		return
	}
	open, given := p.Valve.Open.SI()
	if given && open > 0 || line.Duty == "overflow" {
		return // it stands open already, and shut it changes nothing while all is well
	}
	sc.fault, sc.needs = p.ID()+" open", append(sc.needs, g.gaps[line]...)
	sc.change, sc.floor = g.opens(line), g.toFloor(line)
	if closed(line) { // by a cap behind it: nothing comes out
		sc.change, sc.floor = func(*network.Network, []float64) {}, nil
	}
	add(sc)
}

// closed says that a line has a second closure beside its valve: a cap, or another valve that is shut.
func closed(line *system.Line) bool {
	shut := 0
	for _, p := range line.Pieces {
		if p.Valve != nil {
			if open, given := p.Valve.Open.SI(); given && open <= 0 {
				shut++
			}
		}
		if p.Kind == "cap" || p.Outlet != nil && isCapped(p.Outlet.Cap) {
			return true
		}
	}
	return shut > 1
}

func isCapped(w system.Word) bool {
	kind, given := w.Value()
	return given && kind != "none"
}
