package remedy

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// The swaps of the chapter on fish that change the air, its backup and what is in the water.
func init() {
	maps.Copy(exchanges, map[string]func(*review.Review, *review.Finding, string) []proposal{
		"more_air":         moreAir,
		"backup_by_itself": backupByItself,
		"backup_air":       backupAir,
		"feed_filter":      feedFilter,
		"non_return":       put("/air/pump/non_return", true, "a non-return valve in the tube next to the air pump, and a new one every year"),
		"doser":            doser,
		"base_to_fit":      baseToFit,
		"lower_ph":         lowerPH,
		"keep_ph":          keepPH,
		"shaded":           shaded,
		"dechlorinate":     put("/top_up/dechlorinated", true, "let the top-up stand for a day in an open store with an air stone, or run it through carbon; chloramine wants carbon or thiosulfate"),
		"salt_bath":        put("/water/salt_treatment", "none", "give salt baths in the quarantine vessel, and keep salt out of the loop"),
	})
}

// fullStone is the air that a stone is given before another one is put beside it, m3/s.
const fullStone = 10e-3 / 60

// moreAir gives a tank more air: more through each of its stones, then more stones, and an air pump for all of it.
func moreAir(r *review.Review, f *review.Finding, _ string) []proposal {
	for _, stone := range r.System.Items("/air/stones") {
		if !r.System.Word(stone + "/in").Is(f.Subject) {
			continue
		}
		n, counted := r.System.Number(stone+"/count", quantity.Number).SI()
		each, stated := r.System.Number(stone+"/flow", quantity.Flow).SI()
		pump, given := r.System.Number("/air/pump/flow", quantity.Flow).SI()
		if !counted || !stated || !given || n <= 0 || each <= 0 {
			continue
		}
		k, ok := farthest(r, f, 1, 30, func(k float64) map[string]float64 { return map[string]float64{stone + "/flow": k * each} })
		if !ok {
			return nil
		}
		one := math.Max(each, math.Min(fullStone, roundUp(each*k, 1e-3/60)))
		count := math.Ceil(n*each*k/one - 1e-9)
		air, blown := in(quantity.Flow, one, "L/min"), in(quantity.Flow, roundUp(pump+count*one-n*each, 5e-3/60), "L/min")
		return []proposal{{
			fmt.Sprintf("air stones in %s: %.0f of %s, and an air pump that gives %s at their depth", f.Subject, count, air, blown),
			[]system.Edit{
				{Op: system.Set, Pointer: stone + "/count", Value: int(count)},
				{Op: system.Set, Pointer: stone + "/flow", Value: air},
				{Op: system.Set, Pointer: "/air/pump/flow", Value: blown},
			}}}
	}
	return firstAir(r, f)
}

// firstAir puts air stones into a tank that has none, on the air pump that is there or on a new one.
func firstAir(r *review.Review, f *review.Finding) []proposal {
	v := r.System.Vessel(f.Subject)
	if v == nil {
		return nil
	}
	deep, measured := v.Form.Height.SI()
	pump, given := r.System.Number("/air/pump/flow", quantity.Flow).SI()
	if !measured || !given && len(r.System.Keys("/air")) > 0 {
		return nil
	}
	var out []proposal
	for _, n := range []int{1, 2, 3, 5, 8, 12, 20} {
		stones := system.Map{{Key: "in", Value: v.ID}, {Key: "count", Value: n}, {Key: "flow", Value: "10 L/min"}, {Key: "kind", Value: "fine"}, {Key: "from_intake", Value: "300 mm"}}
		blown := in(quantity.Flow, roundUp(pump+float64(n)*fullStone, 5e-3/60), "L/min")
		edits := []system.Edit{
			{Op: system.Insert, Pointer: "/air/stones/" + strconv.Itoa(len(r.System.Items("/air/stones"))), Value: stones},
			{Op: system.Set, Pointer: "/air/pump/flow", Value: blown},
		}
		if !given {
			against := in(quantity.Pressure, roundUp(deep*9810+3000, 1000), "kPa")
			edits = []system.Edit{{Op: system.Set, Pointer: "/air", Value: system.Map{
				{Key: "pump", Value: system.Map{{Key: "flow", Value: blown}, {Key: "against", Value: against}, {Key: "non_return", Value: true}}},
				{Key: "stones", Value: []any{stones}}}}}
		}
		out = append(out, proposal{fmt.Sprintf("air stones in %s: %d of 10 L/min with fine bubbles, 300 mm or more from the intake, and an air pump that gives %s at their depth", v.ID, n, blown), edits})
	}
	return out
}

// backupByItself lets the backup that is there come on without help.
func backupByItself(r *review.Review, _ *review.Finding, _ string) []proposal {
	for _, at := range []string{"/backup_air", "/backup"} {
		if len(r.System.Keys(at)) > 0 {
			return one("let the backup come on by itself when the power goes: a relay on the mains, tested every month with the plug pulled", at+"/starts", "by-itself")
		}
	}
	return nil
}

// Backup air that is offered where none is: how long it blows, s, and what each vessel gets, m3/s.
const (
	backupLasts = 8 * 3600.0
	backupEach  = 10e-3 / 60
)

// backupAir puts air with a battery of its own into all tanks with fish and the filters under water, where the tank has none.
func backupAir(r *review.Review, f *review.Finding, _ string) []proposal {
	if slices.ContainsFunc(r.System.Items("/backup_air/feeds"), func(at string) bool { return r.System.Word(at).Is(f.Subject) }) {
		return nil
	}
	lasts := backupLasts
	if cut, given := r.System.Number("/site/power_cut", quantity.Time).SI(); given {
		lasts = math.Max(lasts, roundUp(cut*1.25, 3600))
	}
	feeds := slices.Concat(r.Ledger.Sets["stocked_tanks"], r.Ledger.Sets["flowing_filters"])
	var names []any
	for _, id := range feeds {
		names = append(names, id)
	}
	var out []proposal
	for _, k := range []float64{1, 2, 4, 8} {
		flow, time := in(quantity.Flow, k*backupEach*float64(len(feeds)), "L/min"), in(quantity.Time, lasts, "h")
		out = append(out, one("backup air that comes on by itself: "+flow+" for "+time+", shared by "+strings.Join(feeds, ", "), "/backup_air",
			system.Map{{Key: "lasts", Value: time}, {Key: "flow", Value: flow}, {Key: "feeds", Value: names}, {Key: "starts", Value: "by-itself"}})...)
	}
	return out
}

// feedFilter gives a filter its share of the backup air, out of what there is or out of more.
func feedFilter(r *review.Review, f *review.Finding, _ string) []proposal {
	feeds := r.System.Items("/backup_air/feeds")
	if len(feeds) == 0 {
		return backupAir(r, f, "")
	}
	add := system.Edit{Op: system.Insert, Pointer: "/backup_air/feeds/" + strconv.Itoa(len(feeds)), Value: f.Subject}
	text := "lead the backup air into " + f.Subject + " too"
	out := []proposal{{text, []system.Edit{add}}}
	if flow, given := r.System.Number("/backup_air/flow", quantity.Flow).SI(); given {
		n := float64(len(feeds))
		more := in(quantity.Flow, roundUp(flow*(n+1)/n, 1e-3/60), "L/min")
		out = append(out, proposal{text + ", with " + more + " in all", []system.Edit{add, {Op: system.Set, Pointer: "/backup_air/flow", Value: more}}})
	}
	return out
}

// A base that is offered where none is named, and how much of it a gram of alkalinity (as CaCO3) takes.
const (
	mildBase = "potassium-bicarbonate"
	mildMass = 100.12 / 50.04
)

// doser lets a machine add base while nobody is there.
func doser(r *review.Review, _ *review.Finding, _ string) []proposal {
	const at = "/water/buffer"
	wanted := usual(r, "water", "base_wanted", working.Always)
	var first []system.Edit
	if wanted <= 0 {
		wanted = usual(r, "water", "alkalinity_used", working.Always) * mildMass
		first = append(first, system.Edit{Op: system.Set, Pointer: at + "/with", Value: mildBase})
	}
	if wanted <= 0 {
		return nil
	}
	by := system.Edit{Op: system.Set, Pointer: at + "/by", Value: "doser"}
	var out []proposal
	if len(first) == 0 {
		out = append(out, proposal{"let a doser add the base that a hand adds now", []system.Edit{by}})
	}
	for _, k := range []float64{0.35, 0.7, 1} {
		amount := in(quantity.FeedRate, roundUp(k*wanted, 0.5e-3/86400), "g/d")
		out = append(out, proposal{
			"a doser that adds " + amount + " of " + strings.ReplaceAll(baseOf(r), "-", " "),
			append(slices.Clone(first), by, system.Edit{Op: system.Set, Pointer: at + "/amount", Value: amount}),
		})
	}
	return out
}

func baseOf(r *review.Review) string {
	if name, given := r.System.Word("/water/buffer/with").Value(); given {
		return name
	}
	return mildBase
}

// baseToFit adds a third of the base that theory asks for, or else a fifth or a half.
func baseToFit(r *review.Review, _ *review.Finding, _ string) []proposal {
	wanted := usual(r, "water", "base_wanted", working.Always)
	if wanted <= 0 {
		return nil
	}
	var out []proposal
	for _, k := range []struct {
		of   float64
		text string
	}{{1.0 / 3, "a third"}, {0.2, "a fifth"}, {0.5, "half"}} {
		amount := in(quantity.FeedRate, roundUp(k.of*wanted, 0.5e-3/86400), "g/d")
		out = append(out, one("begin with "+amount+" of "+strings.ReplaceAll(baseOf(r), "-", " ")+", "+k.text+" of what theory asks for, and go by pH and alkalinity each week", "/water/buffer/amount", amount)...)
	}
	return out
}

// lowerPH looks for the pH up to which the ammonia is harmless.
func lowerPH(r *review.Review, f *review.Finding, _ string) []proposal {
	high := r.System.Water.PH.High
	var out []proposal
	for _, p := range solveAt(r, f, high.Pointer(), "0.1") {
		if x, err := strconv.ParseFloat(p.edits[0].Value.(string), 64); err == nil {
			out = append(out, one(fmt.Sprintf("keep the pH at %g or under: less base at a time, no shells or limestone in the media, and shade against algae", x), high.Pointer(), x)...)
		}
	}
	return out
}

// keepPH keeps the pH off the end of the band that it has left.
func keepPH(r *review.Review, f *review.Finding, _ string) []proposal {
	const tenth, crumb = 10, 1e-6
	low, given := r.System.Water.PH.Low.SI()
	high, both := r.System.Water.PH.High.SI()
	if !given || !both {
		return nil
	}
	switch {
	case f.Name == "ph_lowest" && f.Limit.Least != nil:
		low = *f.Limit.Least
	case f.Name == "ph_over_band":
		low -= f.Value.X
	case f.Name == "ph_highest" && f.Limit.Most != nil:
		high = *f.Limit.Most
	case f.Name == "ph_under_band":
		high += f.Value.X
	}
	if f.Name == "ph_lowest" || f.Name == "ph_over_band" {
		to := math.Ceil(low*tenth-crumb) / tenth
		return one(fmt.Sprintf("keep the pH at %g or above: measure it each week, and add base a little at a time", to), r.System.Water.PH.Low.Pointer(), to)
	}
	to := math.Floor(high*tenth+crumb) / tenth
	return one(fmt.Sprintf("keep the pH at %g or under: less base, and no shells, limestone or concrete in the water", to), r.System.Water.PH.High.Pointer(), to)
}

// shaded lets less water go to the air.
func shaded(r *review.Review, f *review.Finding, _ string) []proposal {
	var out []proposal
	for _, p := range solveAt(r, f, "/site/evaporation", "0.001 m/d") {
		out = append(out, proposal{"lids, shade and a windbreak, until no more than " + p.edits[0].Value.(string) + " evaporates", p.edits})
	}
	return out
}
