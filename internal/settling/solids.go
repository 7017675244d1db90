package settling

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

// isSettler says that a vessel is a settler of any kind.
func isSettler(v *system.Vessel) bool {
	return v.Role.Is("radial-flow-settler", "swirl-settler", "cone-settler")
}

// SludgeFlow is q, the sludge that solids make.
//
//	q = S/(c rho)
//
//	S    dry solids in time, kg/s, zero or more
//	c    share of dry matter in the sludge, by mass, above zero, at most 1
//	rho  density of the sludge, taken as 1000 kg/m3: fresh sludge is 0.5 to 3 % heavier (from memory)
//
// Source: balance of masses.
func SludgeFlow(solids, dry float64) (float64, string) {
	if !(dry > 0 && dry <= 1) || solids < 0 {
		return math.NaN(), "sludge has some dry matter in it, and no more than all"
	}
	return solids / (dry * 1000), ""
}

// days enters the solids and the sludge of a day, of every settler and of the whole loop.
func days(s *system.System, t *tables.Tables, l *working.Ledger) {
	for _, w := range working.Waters {
		p := newPass(s, t, l, w)
		made := working.In("P", found(l, working.Address{Subject: "water", Name: "solids_made", Case: working.Always, Water: w}, "solids that the fish make", quantity.FeedRate, "/fish"))
		keeps := []working.Input{made}
		for _, v := range s.Vessels {
			switch {
			case isSettler(v):
				keeps = append(keeps, basinOf(s, t, l, v).day(p, made)...)
			case p.filters(v):
				keeps = append(keeps, working.In("s", p.reach(v)), working.In("k", p.kept(v)))
			}
		}
		p.beyond(keeps)
	}
	for _, v := range s.Vessels {
		if v.Role.Is("mineralisation-tank") {
			l.Put("mineralisation_tanks", v.ID)
			mineralise(s, l, v)
		}
	}
}

// day enters what the settler catches, the sludge it makes and when its store is full; it gives what reaches it and what it keeps.
func (b basin) day(p *pass, made working.Input) []working.Input {
	w, full := p.water, b.fullAt().Pointer()
	s := working.In("s", b.state("solids_reached", w, b.v.Pointer, same, working.In("s", p.reach(b.v))))
	k := working.In("Ra", p.kept(b.v))
	caught := working.In("S", b.state("solids_caught", w, b.v.Pointer, product, made, s, k))
	sludge := working.In("q", b.state("sludge_a_day", w, b.v.Pointer, func(x []float64) (float64, string) { return SludgeFlow(x[0], x[1]) },
		caught, working.In("c", b.dryMatter())))
	store := working.In("V", b.find("sludge_store", working.Always, ""))
	b.state("sludge_days", w, full, func(x []float64) (float64, string) {
		if x[1] <= 0 {
			return math.NaN(), "no sludge comes"
		}
		return x[0] / x[1], ""
	}, store, sludge)
	b.state("store_share", w, full, func(x []float64) (float64, string) {
		if x[2] <= 0 {
			return math.NaN(), "there is no room for sludge"
		}
		return x[0] * x[1] / x[2], ""
	}, working.In("T", working.File("time from one cleaning to the next", b.every())), sludge, store)
	return []working.Input{s, k}
}

// dryMatter is the share of dry matter in the sludge: as stated, else as assumed.
func (b basin) dryMatter() *working.Node {
	stated := b.number("/sludge/dry_matter", quantity.Fraction)
	if stated.Given() {
		return working.File("share of dry matter in the sludge", stated)
	}
	return b.t.Assume("sludge_dry_matter", "share of dry matter in the sludge", quantity.Fraction, stated.Pointer())
}

// beyond enters what no settler or filter keeps: keeps is the solids made, then what reaches each of them and what it keeps.
func (p *pass) beyond(keeps []working.Input) {
	if keeps[0].Address.Name == "" && len(keeps) == 1 {
		return // no fish, and nothing that would wait for them
	}
	a := working.Address{Subject: "water", Case: working.RunClean, Water: p.water}
	a.Name = "solids_passed_on"
	on := working.In("S", p.l.Work(a, define(a.Name), "/fish", func(x []float64) (float64, string) {
		left := 1.0
		for i := 1; i < len(x); i += 2 {
			left -= x[i] * x[i+1]
		}
		return x[0] * math.Max(left, 0), ""
	}, keeps...))
	in := []working.Input{on}
	for _, v := range p.s.Vessels {
		if v.Role.Is("media-bed") {
			in = append(in, working.In("A", found(p.l, working.Address{Subject: v.ID, Name: "bed_area", Case: working.Always}, "area of "+v.ID, quantity.Area, v.Pointer)))
		}
	}
	if len(in) == 1 {
		return
	}
	a.Name = "solids_on_beds"
	p.l.Work(a, define(a.Name), "/fish", func(x []float64) (float64, string) {
		area, _ := total(x[1:])
		if area <= 0 {
			return math.NaN(), "the beds have no area"
		}
		return x[0] / area, ""
	}, in...)
}

// mineralise enters how long the sludge of all settlers can stay in a tank.
func mineralise(s *system.System, l *working.Ledger, v *system.Vessel) {
	sludge := []working.Input{working.In("V", holdsWater(s, l, v))}
	for _, one := range s.Vessels {
		if isSettler(one) {
			sludge = append(sludge, working.In("q", found(l, working.Address{Subject: one.ID, Name: "sludge_a_day", Case: working.RunClean, Water: "usual"}, "sludge of "+one.ID, quantity.Flow, one.Pointer)))
		}
	}
	if len(sludge) == 1 {
		sludge = append(sludge, working.In("q", working.Unknown("sludge of the settlers", quantity.Flow, "/vessels", "no settler gives it sludge")))
	}
	a := working.Address{Subject: v.ID, Name: "mineralisation_time", Case: working.RunClean, Water: "usual"}
	l.Work(a, define(a.Name), v.Form.Pointer, func(x []float64) (float64, string) {
		q, _ := total(x[1:])
		if q <= 0 {
			return math.NaN(), "no sludge comes"
		}
		return x[0] / q, ""
	}, sludge...)
}

// holdsWater is the water in a vessel beside the loop: as the loop has it, else up to the depth
// that its keeper states or, without one, to the lowest line that leaves it.
func holdsWater(s *system.System, l *working.Ledger, v *system.Vessel) *working.Node {
	if n := l.Find(working.Address{Subject: v.ID, Name: "water_volume", Case: working.RunClean, Water: "usual"}); n != nil {
		return n
	}
	depth := working.File("depth of water in "+v.ID, v.Running)
	if !v.Running.Given() {
		var ends []working.Input
		for _, line := range s.Lines {
			if line.From.Vessel == v && line.Duty != "waste" && line.Duty != "empty" {
				ends = append(ends, working.In("end", innerEnd(line)))
			}
		}
		if len(ends) > 0 {
			depth = working.Step("lowest line out of "+v.ID+" above its floor", quantity.Length, "the lowest", geometry, least, ends...)
		}
	}
	below, form := volumeBelow(v.Form)
	return working.Step("water in "+v.ID, quantity.Volume, "volume below the depth", geometry, func(x []float64) (float64, string) { return below(x[0], x[1:]) },
		append([]working.Input{working.In("h", depth)}, form...)...)
}
