package fishload

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

// bedsOf is the beds of plants, in file order.
func (v *surveyor) bedsOf() []*system.Vessel {
	var out []*system.Vessel
	for _, vessel := range v.Vessels {
		if vessel.Role.Is("media-bed", "raft-bed", "channel-bed") {
			out = append(out, vessel)
		}
	}
	return out
}

func (v *surveyor) planted() bool { return len(v.bedsOf()) > 0 }

// cropOf is the word for what grows in a bed.
func (v *surveyor) cropOf(bed *system.Vessel) system.Word {
	if kind := v.Word(bed.Pointer + "/crop/kind"); kind.Given() {
		return kind
	}
	return v.Word(bed.Pointer + "/crop")
}

// crop is a figure of the table of crops for a bed.
func (v *surveyor) crop(bed *system.Vessel, symbol, title string, kind quantity.Kind, get func(tables.Crop) float64) working.Input {
	word := v.cropOf(bed)
	name, given := word.Value()
	row, known := v.t.Crop(name)
	if !given || !known {
		return working.In(symbol, working.Unknown(title, kind, word.Pointer(), ""))
	}
	return working.In(symbol, working.Row(title+", "+name, kind, working.Exactly(get(row)), word.Pointer(), row.Source, string(row.Sure)))
}

// beds enters what the beds get of the feed, and how the water goes through them.
func (v *surveyor) beds() {
	beds := v.bedsOf()
	if len(beds) == 0 {
		return
	}
	var areas, most, fewest []working.Input
	for _, bed := range beds {
		area := working.In("A", v.bedArea(bed))
		areas = append(areas, area)
		most = append(most, area, v.mostFeed(bed))
		fewest = append(fewest, area, v.crop(bed, "f", "feed that feeds a square metre at least", quantity.ArealFeed, func(c tables.Crop) float64 { return c.FeedLeast }))
		v.throughBed(bed)
	}
	all := working.In("A", v.work(always(theWater, "beds_area"), "/vessels", sum, areas...))
	ratio := func(x []float64) (float64, string) {
		y := 0.0
		for i := 1; i+1 < len(x); i += 2 {
			y += x[i] * x[i+1]
		}
		switch {
		case x[0] <= 0:
			return 0, "nothing is fed"
		case y <= 0:
			return unending, "nothing grows"
		}
		return math.Min(x[0]/y, unending), ""
	}
	for _, w := range working.Waters {
		feed := working.In("F", v.l.Find(day(theWater, "feed_a_day", w)))
		v.work(day(theWater, "bed_feed", w), "/fish", func(x []float64) (float64, string) {
			if x[1] <= 0 {
				return math.NaN(), "the beds have no area"
			}
			return x[0] / x[1], ""
		}, feed, all)
		v.work(day(theWater, "bed_feed_share", w), "/fish", ratio, append([]working.Input{feed}, most...)...)
		if w == "usual" { // in cold water plants and fish rest
			v.work(day(theWater, "bed_feed_enough", w), "/fish", ratio, append([]working.Input{feed}, fewest...)...)
		}
	}
}

// mostFeed is the feed that a crop can use: as the author of the file says, else from the table.
func (v *surveyor) mostFeed(bed *system.Vessel) working.Input {
	if own := v.Number(bed.Pointer+"/crop/feed", quantity.ArealFeed); own.Given() {
		return working.In("f", working.File("feed that the author allows for a square metre", own))
	}
	return v.crop(bed, "f", "feed that feeds a square metre at most", quantity.ArealFeed, func(c tables.Crop) float64 { return c.FeedMost })
}

// bedArea enters the planted area of a bed.
func (v *surveyor) bedArea(bed *system.Vessel) *working.Node {
	a, own := always(bed.ID, "bed_area"), v.Number(bed.Pointer+"/crop/area", quantity.Area)
	if own.Given() {
		return v.take(a, own.Pointer(), working.File("planted area", own))
	}
	return v.take(a, bed.Form.Pointer, v.found("A", least(bed.ID, "water_surface", "usual"), "water surface", quantity.Area).Node)
}

// throughBed enters how long the water stays in a bed, how deep it is, and what runs in a channel.
func (v *surveyor) throughBed(bed *system.Vessel) {
	v.l.Put("beds", bed.ID)
	switch {
	case bed.Role.Is("raft-bed"):
		v.l.Put("raft_beds", bed.ID)
	case bed.Role.Is("media-bed"):
		v.l.Put("media_beds", bed.ID)
	default:
		v.l.Put("channel_beds", bed.ID)
		v.take(always(bed.ID, "channel_length"), bed.Form.Length.Pointer(), working.File("length of the channel", bed.Form.Length))
	}
	for _, w := range working.Waters {
		flow := v.inflow(bed.ID, w)
		switch {
		case bed.Role.Is("channel-bed"):
			v.take(least(bed.ID, "channel_flow", w), bed.Pointer, flow.Node)
		case bed.Role.Is("raft-bed"):
			v.work(least(bed.ID, "bed_time", w), bed.Form.Pointer, func(x []float64) (float64, string) {
				if x[1] <= 0 {
					return math.NaN(), "nothing flows through the bed"
				}
				return x[0] / x[1], ""
			}, v.volume("V", bed.ID, w), flow)
			v.work(least(bed.ID, "bed_depth", w), bed.Form.Pointer, difference,
				v.found("z", least(bed.ID, "water_level", w), "level of the water", quantity.Length), working.In("z0", working.File("floor above the datum", bed.StandsAt)))
		default:
			v.take(least(bed.ID, "bed_depth", w), bed.Pointer+"/media/depth", v.mediaDepth(bed))
		}
	}
}

// mediaDepth is the depth of a bed's media: as stated, or their volume over the area.
func (v *surveyor) mediaDepth(bed *system.Vessel) *working.Node {
	at := bed.Pointer + "/media"
	depth, volume := v.Number(at+"/depth", quantity.Length), v.Number(at+"/volume", quantity.Volume)
	if depth.Given() || !volume.Given() {
		return working.File("depth of the media", depth)
	}
	return working.Step("depth of the media", quantity.Length, "volume/area", geometry, func(x []float64) (float64, string) {
		if x[1] <= 0 {
			return math.NaN(), "the bed has no area"
		}
		return x[0] / x[1], ""
	}, working.In("Vm", working.File("volume of the media", volume)), v.found("A", least(bed.ID, "water_surface", "usual"), "area", quantity.Area))
}
