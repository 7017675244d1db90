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

// The swaps of the chapter on fish that change what is kept, fed, grown and
// filtered; those of air and water stand in exchange_breath.go.
func init() {
	maps.Copy(exchanges, map[string]func(*review.Review, *review.Finding, string) []proposal{
		"fewer_fish":     fewerFish,
		"less_feed":      lessFeed,
		"stop_feeding":   stopFeeding,
		"warmed":         warmed,
		"cooled":         cooled,
		"more_media":     moreMedia,
		"honest_surface": honestSurface,
		"deeper_media":   deeperMedia,
		"more_beds":      moreBeds,
		"less_bed":       lessBed,
		"bed_level":      bedLevel,
		"slow_start":     slowStart,
	})
}

// lotsOf is the places of the lots that a finding is about: one lot, those of a tank, or all.
func lotsOf(r *review.Review, f *review.Finding) []string {
	if strings.HasPrefix(f.Subject, "fish/") {
		return []string{"/" + f.Subject}
	}
	return slices.DeleteFunc(r.System.Items("/fish"), func(lot string) bool {
		return r.System.Vessel(f.Subject) != nil && !r.System.Word(lot+"/in").Is(f.Subject)
	})
}

// feedsOf is the places of the amounts of feed of a lot.
func feedsOf(r *review.Review, lot string) []string {
	list := r.System.Items(lot + "/feed")
	if len(list) == 0 {
		return []string{lot + "/feed"}
	}
	for i := range list {
		list[i] += "/amount"
	}
	return list
}

// share is how much of what it judges a finding leaves, where one goes with the other.
func share(f *review.Finding) float64 {
	switch {
	case f.Fact || f.Value.X <= 0:
		return 0.9
	case f.Limit.Most != nil && f.Value.X > *f.Limit.Most:
		return *f.Limit.Most / f.Value.X
	case f.Limit.Least != nil && f.Value.X < *f.Limit.Least:
		return f.Value.X / *f.Limit.Least
	}
	return 0.9
}

// fewerFish keeps the largest share of the fish that will do, with their share of the feed.
func fewerFish(r *review.Review, f *review.Finding, _ string) []proposal {
	now := map[string]float64{}
	lots := lotsOf(r, f)
	for _, lot := range lots {
		for _, at := range append(feedsOf(r, lot), lot+"/mass") {
			kind := quantity.FeedRate
			if strings.HasSuffix(at, "/mass") {
				kind = quantity.Mass
			}
			x, given := r.System.Number(at, kind).SI()
			if !given {
				return nil
			}
			now[at] = x
		}
	}
	k, ok := farthest(r, f, 1, 0.02, func(k float64) map[string]float64 {
		return changed(now, func(x float64) float64 { return k * x })
	})
	if !ok || len(lots) == 0 {
		return nil
	}
	var edits []system.Edit
	var masses, feeds []string
	for _, lot := range lots {
		most := ""
		for _, at := range feedsOf(r, lot) {
			if feed, ok := cutTo(r, at, quantity.FeedRate, k*now[at]); ok {
				edits = append(edits, feed)
				if most == "" || now[at] >= greatest(r, lot) {
					most = feed.Value.(string)
				}
			}
		}
		mass, ok := cutTo(r, lot+"/mass", quantity.Mass, k*now[lot+"/mass"])
		if !ok || most == "" {
			return nil
		}
		edits, masses, feeds = append(edits, mass), append(masses, mass.Value.(string)), append(feeds, most)
		if n, err := strconv.Atoi(textAt(r, lot+"/count")); err == nil {
			edits = append(edits, system.Edit{Op: system.Set, Pointer: lot + "/count", Value: max(1, int(float64(n)*k))})
		}
	}
	return []proposal{{"at most " + strings.Join(masses, " and ") + " of fish with " + strings.Join(feeds, " and ") + " of feed: the stock that this loop can carry", edits}}
}

// greatest is the most feed that a lot is given at any temperature.
func greatest(r *review.Review, lot string) float64 {
	most := 0.0
	for _, at := range feedsOf(r, lot) {
		x, _ := r.System.Number(at, quantity.FeedRate).SI()
		most = math.Max(most, x)
	}
	return most
}

// lessFeed caps the feed of the same fish; in colder water, where they eat less, it is left as it is.
func lessFeed(r *review.Review, f *review.Finding, _ string) []proposal {
	now, peak := map[string]float64{}, map[string]float64{}
	for _, lot := range lotsOf(r, f) {
		for _, at := range feedsOf(r, lot) {
			now[at], _ = r.System.Number(at, quantity.FeedRate).SI()
			peak[at] = greatest(r, lot)
		}
	}
	capped := func(k float64) map[string]float64 {
		out := map[string]float64{}
		for at, x := range now {
			out[at] = math.Min(x, k*peak[at])
		}
		return out
	}
	k, ok := farthest(r, f, 1, 0.02, capped)
	if !ok {
		return nil
	}
	var edits []system.Edit
	var most []string
	for _, lot := range lotsOf(r, f) {
		bound := ""
		for _, at := range feedsOf(r, lot) {
			if now[at] <= k*peak[at] {
				continue
			}
			if down, ok := cutTo(r, at, quantity.FeedRate, k*peak[at]); ok {
				edits, bound = append(edits, down), down.Value.(string)
			}
		}
		most = append(most, bound)
	}
	return []proposal{{"feed at most " + strings.Join(most, " and "), edits}}
}

func textAt(r *review.Review, pointer string) string {
	text, _ := r.System.Document.Text(pointer)
	return text
}

// cutTo sets a number of the file, cut down to two digits in its own unit.
func cutTo(r *review.Review, pointer string, kind quantity.Kind, si float64) (system.Edit, bool) {
	was, err := quantity.Parse(kind, textAt(r, pointer))
	if err != nil {
		return system.Edit{}, false
	}
	x, ok := quantity.Convert(kind, si, was.Unit)
	if !ok || x <= 0 {
		return system.Edit{}, false
	}
	digit := math.Pow(10, math.Floor(math.Log10(x))-1)
	x = math.Floor(x/digit+1e-9) * digit
	return system.Edit{Op: system.Set, Pointer: pointer, Value: strings.TrimSpace(strconv.FormatFloat(x, 'g', 3, 64) + " " + was.Unit)}, true
}

// usual is a quantity at the usual temperature of the water, in a case.
func usual(r *review.Review, subject, name, kase string) float64 {
	if n := r.Ledger.Find(working.Address{Subject: subject, Name: name, Case: kase, Water: "usual"}); n != nil {
		if v, ok := n.Value(); ok {
			return v.X
		}
	}
	return 0
}

// degrees writes a temperature on a full half degree.
func degrees(kelvin float64, round func(float64) float64) string {
	return in(quantity.Temperature, round((kelvin-273.15)*2)/2+273.15, "degC")
}

// stopFeeding stops the feed under the temperature that the finding is about.
func stopFeeding(r *review.Review, f *review.Finding, _ string) []proposal {
	low, given := r.System.Water.Temperature.Low.SI()
	if !given {
		return nil
	}
	stop := degrees(low-f.Value.X, func(x float64) float64 { return math.Ceil(x - 1e-6) })
	return one("give no feed while the water is under "+stop, "/"+f.Subject+"/stops_below", stop)
}

// warmed keeps the coldest water as warm as is wanted.
func warmed(r *review.Review, f *review.Finding, _ string) []proposal {
	low := r.System.Water.Temperature.Low
	x, given := low.SI()
	if !given {
		return nil
	}
	to := degrees(x-f.Value.X, func(x float64) float64 { return math.Ceil(x - 1e-6) })
	return one("keep the water at "+to+" or above: a lid and insulation, then a heater with a thermostat", low.Pointer(), to)
}

// cooled keeps the warmest water as cool as is wanted.
func cooled(r *review.Review, f *review.Finding, _ string) []proposal {
	high := r.System.Water.Temperature.High
	x, given := high.SI()
	if !given {
		return nil
	}
	to := degrees(x+f.Value.X, func(x float64) float64 { return math.Floor(x + 1e-6) })
	return one("keep the water at "+to+" or under: shade over tank and beds, the sump in the ground, then a cooler", high.Pointer(), to)
}

// Of moving carriers, how much of their water they may fill.
const carriersFill = 0.70

// moreMedia gives the filter that has most of them more media, and says so when it cannot hold them.
func moreMedia(r *review.Review, f *review.Finding, _ string) []proposal {
	var filter *system.Vessel
	most := 0.0
	for _, id := range r.Ledger.Sets["nitrifying"] {
		v := r.System.Vessel(id)
		if v == nil || v.Role.Is("media-bed", "raft-bed") {
			continue
		}
		if x, given := r.System.Number(v.Pointer+"/media/volume", quantity.Volume).SI(); given && x > most {
			filter, most = v, x
		}
	}
	if filter == nil {
		return nil
	}
	at := filter.Pointer + "/media/volume"
	k, ok := farthest(r, f, 1, 20, func(k float64) map[string]float64 { return map[string]float64{at: k * most} })
	if !ok {
		return nil
	}
	x := roundUp(most*k, 0.001)
	text := in(quantity.Volume, x, "L") + " of media in " + filter.ID + " in place of " + in(quantity.Volume, most, "L")
	if water := usual(r, filter.ID, "water_volume", working.RunLeast); r.System.Word(filter.Pointer+"/media/kind").Is("carriers") && x > carriersFill*water {
		text += "; they want " + in(quantity.Volume, roundUp(x/carriersFill, 0.005), "L") + " of water to move in, and it has " + in(quantity.Volume, math.Floor(water*1000)/1000, "L") + ": a larger filter or a second one"
	}
	return one(text, at, in(quantity.Volume, x, "L"))
}

// honestSurface puts what smooth grains of the size have in the place of what is claimed.
func honestSurface(r *review.Review, f *review.Finding, _ string) []proposal {
	at := "/vessels/" + f.Part() + "/media/surface"
	x, given := r.System.Number(at, quantity.SpecificSurface).SI()
	if !given || f.Value.X <= 0 {
		return nil
	}
	to := in(quantity.SpecificSurface, math.Round(x/f.Value.X/5)*5, "m2/m3")
	return one("count on "+to+", what smooth round grains of this size have", at, to)
}

// deeperMedia fills a bed of media as deep as is wanted.
func deeperMedia(r *review.Review, f *review.Finding, _ string) []proposal {
	if f.Limit.Least == nil || f.Value.X <= 0 {
		return nil
	}
	at := "/vessels/" + f.Part() + "/media"
	depth := mm(*f.Limit.Least)
	edits := []system.Edit{{Op: system.Set, Pointer: at + "/depth", Value: depth}}
	text := "fill the bed " + depth + " deep"
	if x, given := r.System.Number(at+"/volume", quantity.Volume).SI(); given {
		volume := in(quantity.Volume, roundUp(x**f.Limit.Least/f.Value.X, 0.001), "L")
		edits = append(edits, system.Edit{Op: system.Set, Pointer: at + "/volume", Value: volume})
		text += ", with " + volume + " of media"
	}
	return []proposal{{text, edits}}
}

// largestBed is the bed with the largest planted area, and that area.
func largestBed(r *review.Review) (*system.Vessel, float64) {
	var bed *system.Vessel
	most := 0.0
	for _, id := range r.Ledger.Sets["beds"] {
		if x, ok := known(r, id, "bed_area"); ok && x > most {
			bed, most = r.System.Vessel(id), x
		}
	}
	return bed, most
}

// planted sets the planted area of a bed.
func planted(r *review.Review, bed *system.Vessel, to float64) []system.Edit {
	at, area := bed.Pointer+"/crop", in(quantity.Area, math.Round(to*100)/100, "m2")
	if crop, given := r.System.Word(at).Value(); given {
		return []system.Edit{{Op: system.Set, Pointer: at, Value: system.Map{{Key: "kind", Value: crop}, {Key: "area", Value: area}}}}
	}
	return []system.Edit{{Op: system.Set, Pointer: at + "/area", Value: area}}
}

// moreBeds plants more of the largest bed, and where it is full makes it longer.
func moreBeds(r *review.Review, f *review.Finding, _ string) []proposal {
	bed, area := largestBed(r)
	all, _ := known(r, "water", "beds_area")
	if bed == nil || all <= 0 {
		return nil
	}
	water := usual(r, bed.ID, "water_surface", working.RunLeast)
	var out []proposal
	for _, k := range []float64{1.01, 1.1, 1.25} {
		to := roundUp(area+all*(k/share(f)-1), 0.01)
		if to <= water {
			out = append(out, proposal{"plant " + in(quantity.Area, to, "m2") + " of " + bed.ID + " in place of " + in(quantity.Area, math.Round(area*100)/100, "m2"), planted(r, bed, to)})
			continue
		}
		long, given := bed.Form.Length.SI()
		if !given || r.System.Number(bed.Pointer+"/crop/area", quantity.Area).Given() {
			continue
		}
		more := roundUp(long*(to/area-1), 0.010)
		var edits []system.Edit
		for _, side := range []system.Number{bed.Form.Length, bed.Form.LengthTop} {
			if x, given := side.SI(); given {
				edits = append(edits, system.Edit{Op: system.Set, Pointer: side.Pointer(), Value: mm(x + more)})
			}
		}
		out = append(out, proposal{fmt.Sprintf("make %s %s longer", bed.ID, mm(more)), edits})
	}
	return out
}

// lessBed plants no more of the largest bed than the feed can feed.
func lessBed(r *review.Review, f *review.Finding, _ string) []proposal {
	bed, area := largestBed(r)
	all, _ := known(r, "water", "beds_area")
	if bed == nil || all <= 0 {
		return nil
	}
	to := math.Floor((area-all*(1-share(f)))*100) / 100
	if to <= 0 {
		return nil
	}
	return []proposal{{"plant no more than " + in(quantity.Area, to, "m2") + " of " + bed.ID + " in those weeks", planted(r, bed, to)}}
}

// bedLevel moves what holds the water of a bed, just so far that the limit is kept.
func bedLevel(r *review.Review, f *review.Finding, _ string) []proposal {
	v := r.System.Vessel(f.Subject)
	if v == nil {
		return nil
	}
	j, g := *f.Judgement, *f
	if j.Limit.Least != nil && j.Value.X < *j.Limit.Least {
		j.Limit.Most = nil
	} else {
		j.Limit.Least = nil
	}
	g.Judgement = &j
	var out []proposal
	for _, line := range byGravity(r, v) {
		if p := line.Pieces[0].Standpipe; p != nil {
			out = append(out, solveAt(r, &g, p.CrestAt.Pointer(), "5 mm")...)
		}
	}
	return out
}

// slowStart brings a new loop to its full feed by quarters.
func slowStart(r *review.Review, _ *review.Finding, _ string) []proposal {
	var edits []system.Edit
	for _, one := range []struct {
		key, to     string
		kind        quantity.Kind
		least, most float64
	}{
		{"lasts", "6 week", quantity.Time, 28 * 86400, math.Inf(1)},
		{"first_feed", "25 %", quantity.Fraction, 0, 0.25},
		{"step", "25 %", quantity.Fraction, 0, 0.25},
	} {
		if n := r.System.Number("/start_up/"+one.key, one.kind); n.Given() && !within(n, one.least, one.most) {
			edits = append(edits, system.Edit{Op: system.Set, Pointer: n.Pointer(), Value: one.to})
		}
	}
	return []proposal{{"six weeks to the full feed: a quarter of it in the first week with fish, and a quarter more each week while ammonia and nitrite stay under 1 mg/L", edits}}
}
