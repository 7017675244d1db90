package fishload

import (
	"math"
	"slices"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// backup is what blows air when the mains or the air pump fail.
type backup struct {
	there, byItself bool
	unsaid          []string      // file pointers that would say more of it
	lasts           working.Input // how long
	air             working.Input // water that it fills with oxygen in time, in the tank
}

// stands is the scene in which the pump stands still and siphon breaks do their work.
const stands = "siphon break open"

func outage(subject, name, kase, w string) working.Address {
	return working.Address{Subject: subject, Name: name, Case: kase, Water: w}
}

// outages enters how long the fish of every tank last when the power or the air fails.
func (v *surveyor) outages() {
	for _, tank := range v.tanks() {
		starts := ""
		for _, w := range working.Waters {
			b := v.backup(tank, w, PowerCut)
			v.cut(tank, w, b)
			v.airFails(tank, w, v.backup(tank, w, AirPumpFails))
			starts = yesNo(b.there && b.byItself)
			if len(b.unsaid) > 0 {
				starts = ""
			}
		}
		f := working.Fact{Subject: tank.ID, Name: "backup_starts", Word: starts, At: "/backup_air"}
		if starts == "" {
			f.Missing = v.backup(tank, "usual", PowerCut).unsaid
		}
		v.l.Note(f)
	}
	v.filters()
}

func yesNo(yes bool) string {
	if yes {
		return "yes"
	}
	return "no"
}

// backup is the air that a tank gets when the mains fail: from a blower of its own,
// or from the air pump itself on a supply that takes over.
func (v *surveyor) backup(tank *system.Vessel, w, kase string) backup {
	none := backup{lasts: working.In("tb", working.Fixed("no backup air", quantity.Time, 0, "as the schema says")),
		air: working.In("Kb", working.Fixed("no backup air", quantity.Flow, 0, "as the schema says"))}
	switch {
	case len(v.Keys("/backup_air")) > 0:
		return v.blower(tank, w, kase, none)
	case kase == AirPumpFails:
	case slices.ContainsFunc(v.Items("/backup/carries"), func(at string) bool { return v.Word(at).Is("air") }):
		b := backup{there: true, lasts: v.file("tb", "time that the backup lasts", "/backup/lasts", quantity.Time), air: v.transfer(tank, w)}
		b.starts(v.Word("/backup/starts"))
		return b
	case len(v.Keys("/backup")) > 0 && len(v.Items("/backup/carries")) == 0:
		none.unsaid = []string{"/backup/carries"}
		none.air = working.In("Kb", working.Unknown("whether the backup carries the air pump", quantity.Flow, "/backup/carries", ""))
	}
	return none
}

func (b *backup) starts(how system.Word) {
	word, given := how.Value()
	b.byItself = word == "by-itself"
	if !given {
		b.unsaid = append(b.unsaid, how.Pointer())
	}
}

// blower is the backup air of its own kind: its air is shared alike by the vessels that it feeds.
func (v *surveyor) blower(tank *system.Vessel, w, kase string, none backup) backup {
	feeds := v.Items("/backup_air/feeds")
	if len(feeds) == 0 {
		none.unsaid = []string{"/backup_air/feeds"}
		none.air = working.In("Kb", working.Unknown("the vessels that the backup air feeds", quantity.Flow, "/backup_air/feeds", ""))
		return none
	}
	if !slices.ContainsFunc(feeds, func(at string) bool { return v.Word(at).Is(tank.ID) }) {
		return none
	}
	b := backup{there: true, lasts: v.file("tb", "time that the backup air lasts", "/backup_air/lasts", quantity.Time)}
	b.starts(v.Word("/backup_air/starts"))
	level := v.found("z", least(tank.ID, "water_level", w), "level of the water", quantity.Length)
	if kase == PowerCut {
		level = v.found("z", working.Address{Subject: tank.ID, Name: "static_level", Case: "stopped", Fault: stands}, "level at rest", quantity.Length)
	}
	depth := deep(tank, level)
	kind := working.In("s", working.Unknown("stones in the tank", quantity.Number, "/air/stones", "no air stone lies in "+tank.ID))
	for _, stone := range v.Items("/air/stones") {
		if v.Word(stone + "/in").Is(tank.ID) {
			kind = v.share(stone)
		}
	}
	b.air = working.In("Kb", working.Step("water that the backup air would fill with oxygen in time", quantity.Flow, "S a 1.024^(T - 20)/9.09 mg/L, its air shared alike by what it feeds", "ASCE 2-06", func(x []float64) (float64, string) {
		s, why := StandardTransfer(x[0]/float64(len(feeds)), x[2], x[1])
		if why != "" {
			return math.NaN(), why
		}
		return FieldTransfer(s, x[4], x[3])
	}, v.file("A", "air that the backup gives", "/backup_air/flow", quantity.Flow), depth, kind, v.temperature(w), v.figure("al", "transfer_alpha", quantity.Number)))
	return b
}

// left is the water that a tank keeps when the pump stands.
func (v *surveyor) left(tank *system.Vessel, w string) working.Input {
	kept := v.found("c", working.Address{Subject: tank.ID, Name: "tank_kept", Case: "stopped", Fault: stands}, "share of its water that it keeps", quantity.Fraction)
	if !tank.Role.Is("fish-tank") {
		kept = working.In("c", working.Unknown(kept.Title, quantity.Fraction, tank.Role.Pointer(), "what "+tank.ID+" keeps when the pump stands is worked out for vessels whose role is fish-tank"))
	}
	return working.In("V", working.Step("water that the tank keeps when the pump stands", quantity.Volume, "V c", mixed, product, v.volume("V", tank.ID, w), kept))
}

// cut enters how long the fish last when the mains fail.
func (v *surveyor) cut(tank *system.Vessel, w string, b backup) {
	at := v.lotsIn(tank)[0].pointer + "/mass"
	start, danger, volume := v.before(tank, w), v.danger(tank), v.left(tank, w)
	mass := working.In("m", v.l.Find(always(tank.ID, "fish_mass")))
	used := working.In("R", v.breath(tank, w))
	alone := v.work(outage(tank.ID, "time_to_danger", PowerCut, w), at, func(x []float64) (float64, string) {
		return StillTime(x[0], x[1], x[2], x[3], x[4])
	}, start, danger, volume, mass, used)
	for _, like := range []struct {
		name    string
		density float64 // kg/m3
	}{{"time_at_60", 60}, {"time_at_5", 5}, {"time_at_2", 2}} {
		v.work(outage(tank.ID, like.name, PowerCut, w), at, func(x []float64) (float64, string) {
			return StillTime(x[0], x[1], x[2]/like.density, x[2], x[3])
		}, start, danger, mass, used)
	}
	full := v.full(w)
	if b.there {
		v.work(outage(tank.ID, "backup_oxygen", PowerCut, w), "/backup_air", func(x []float64) (float64, string) {
			c, why := SteadyOxygen(0, 0, x[0], x[1], x[2])
			return math.Max(c, 0), why
		}, b.air, full, used)
	}
	lasts := working.In("t", v.withBackup(tank, w, PowerCut, b, alone, start, volume, used))
	v.work(outage(tank.ID, "cut_share", PowerCut, w), "/site/power_cut", func(x []float64) (float64, string) {
		if x[1] <= 0 {
			return unending, "the danger is there already"
		}
		return x[0] / x[1], ""
	}, v.file("tc", "longest power cut to be expected", "/site/power_cut", quantity.Time), lasts)
}

// WithBackup is the time that the fish last when the air fails and backup air comes on.
//
//	first without it, until somebody has started it, if it does not start by itself;
//	then with it, for as long as it lasts, the level going towards Cs - R/K;
//	then without it again, down to the danger
//
//	wait     time until it starts, s; zero if by itself
//	lasts    time that it lasts, s
//	the rest as in SinkTime and StillTime
//
// Source: balance of a stirred tank, one stretch after the other.
func WithBackup(wait, lasts, start, danger, volume, mass, transfer, full, used float64) (float64, string) {
	alone, why := StillTime(start, danger, volume, mass, used)
	if math.IsNaN(alone) || alone <= wait || lasts <= 0 || transfer <= 0 {
		return alone, why
	}
	water := volume - mass/1000
	level := start - used*wait/water
	held, why := SinkTime(level, danger, volume, mass, transfer, full, used)
	if held < lasts {
		return wait + held, why
	}
	end := full - used/transfer
	level = end + (level-end)*math.Exp(-transfer*lasts/water)
	after, why := StillTime(level, danger, volume, mass, used)
	return math.Min(wait+lasts+after, aYear), why
}

// withBackup enters the time that the fish of a tank last with the backup air.
func (v *surveyor) withBackup(tank *system.Vessel, w, kase string, b backup, alone *working.Node, start, volume, used working.Input) *working.Node {
	a := outage(tank.ID, "time_with_backup", kase, w)
	if !b.there && len(b.unsaid) == 0 {
		return v.work(a, "/backup_air", same, working.In("t", alone))
	}
	wait := working.In("tw", working.Fixed("it starts by itself", quantity.Time, 0, stated))
	switch {
	case len(b.unsaid) > 0:
		wait = working.In("tw", working.Unknown("how the backup starts", quantity.Time, b.unsaid[0], ""))
	case !b.byItself:
		wait = v.file("tw", "time from an alarm until somebody is there", "/site/response", quantity.Time)
	}
	return v.work(a, "/backup_air", func(x []float64) (float64, string) {
		return WithBackup(x[0], x[1], x[2], x[3], x[4], x[5], x[6], x[7], x[8])
	}, wait, b.lasts, start, v.danger(tank), volume, working.In("m", v.l.Find(always(tank.ID, "fish_mass"))), b.air, v.full(w), used)
}

// LeastOfLoop is C, the oxygen of the water of a whole loop whose tank is to be
// kept out of danger, in water that goes round with nothing bringing oxygen in: the
// tank, in which most is used, runs ahead of the rest by what the flow does not make up.
//
//	C = C0 - Vo (Rf - R Vt/V)/(Q V)
//
//	C0         oxygen of the tank at the start, kg/m3
//	Vt, Vo, V  water of the tank, of the rest, and of both, m3
//	Rf, R      oxygen that the fish of the tank use, and all of the loop, kg/s
//	Q          flow through the tank, m3/s, above zero
//
// Source: balance of two stirred tanks in a ring, once their difference is steady.
func LeastOfLoop(start, tank, loop, fish, all, flow float64) (float64, string) {
	if flow <= 0 || loop <= 0 {
		return math.NaN(), "nothing flows through the tank"
	}
	return start - math.Max(0, (loop-tank)*(fish-all*tank/loop)/(flow*loop)), ""
}

// airFails enters how long the fish last when the air pump fails and the pump runs on: the
// water of the whole loop gives what it holds, and only backup air brings more.
func (v *surveyor) airFails(tank *system.Vessel, w string, b backup) {
	at := v.lotsIn(tank)[0].pointer + "/mass"
	all := working.In("R", v.l.Find(day(theWater, "oxygen_used", w)))
	start := working.In("C0", working.Step("oxygen of all the water", quantity.Concentration, "C0 - Vo (Rf - R Vt/V)/(Q V)", "balance of two stirred tanks in a ring", func(x []float64) (float64, string) {
		c, why := LeastOfLoop(x[0], x[1], x[2], x[3], x[4], x[5])
		return math.Max(c, 0), why
	}, v.before(tank, w), v.volume("Vt", tank.ID, w), v.loopVolume(w), working.In("Rf", v.breath(tank, w)), all, v.inflow(tank.ID, w)))
	alone := v.work(outage(tank.ID, "time_to_danger", AirPumpFails, w), at, func(x []float64) (float64, string) {
		all, why := StillTime(x[0], x[1], x[2], x[3], x[4])
		own, _ := StillTime(x[5], x[1], x[6], x[3], x[7]) // the flow only adds to what the tank's own water holds
		return math.Max(all, own), why
	}, start, v.danger(tank), v.loopVolume(w), working.In("m", v.l.Find(always(tank.ID, "fish_mass"))), all,
		v.before(tank, w), v.volume("Vt", tank.ID, w), working.In("Rf", v.breath(tank, w)))
	v.withBackup(tank, w, AirPumpFails, b, alone, v.before(tank, w), v.loopVolume(w), all)
}

// filters notes which filters under water get backup air.
func (v *surveyor) filters() {
	if !v.stocked() {
		return
	}
	feeds := v.Items("/backup_air/feeds")
	for _, vessel := range v.Vessels {
		if !vessel.Role.Is("biofilter") || v.Word(vessel.Pointer+"/works").Is("trickling", "flood-and-drain") {
			continue // a bed that stands in air breathes on
		}
		v.l.Put("flowing_filters", vessel.ID)
		f := working.Fact{Subject: vessel.ID, Name: "filter_on_backup", At: "/backup_air",
			Word: yesNo(slices.ContainsFunc(feeds, func(at string) bool { return v.Word(at).Is(vessel.ID) }))}
		if len(v.Keys("/backup_air")) > 0 && len(feeds) == 0 {
			f.Word, f.Missing = "", []string{"/backup_air/feeds"}
		}
		v.l.Note(f)
	}
}
