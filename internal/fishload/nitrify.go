package fishload

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// leastFactor bounds the product of the factors of temperature and pH: studies
// contradict each other, and no filter that is alive was found under it.
const leastFactor = 0.25

// Factor is what temperature and pH together leave of a rate.
//
//	f = max(0.25, fT fpH/fpH0)
//
//	fT, fpH  shares of the rate at 25 degC and pH 8, 0 to 1
//	fpH0     share at the pH at which the rate was measured
//
// Source: project judgement on Tyson et al. 2008 and a guideline by temperature, both contradicted by others.
func Factor(temperature, ph, measured float64) float64 {
	return math.Max(leastFactor, temperature*ph/measured)
}

// SmoothGrainSurface is a, the surface of a cubic metre of smooth round grains.
//
//	a = 6 (1 - e)/d
//
//	e  share open to water, 0 to 1
//	d  diameter of a grain, m, above zero
//
// Source: geometry of spheres.
func SmoothGrainSurface(void, grain float64) (float64, string) {
	if grain <= 0 || void < 0 || void >= 1 {
		return math.NaN(), "grains have a size, and leave less than all of the room open"
	}
	return 6 * (1 - void) / grain, ""
}

// media says that a vessel is there to hold media, or holds some.
func (v *surveyor) hasMedia(vessel *system.Vessel) bool {
	return vessel.Role.Is("biofilter", "media-bed") || len(v.Keys(vessel.Pointer+"/media")) > 0
}

func isRaft(vessel *system.Vessel) bool { return vessel.Role.Is("raft-bed") }

// mediaVolume is the volume of a vessel's media: as stated, or of a bed its depth over its area.
func (v *surveyor) mediaVolume(vessel *system.Vessel) *working.Node {
	at := vessel.Pointer + "/media"
	stated, depth := v.Number(at+"/volume", quantity.Volume), v.Number(at+"/depth", quantity.Length)
	if stated.Given() || !depth.Given() {
		return working.File("volume of the media", stated)
	}
	return working.Step("volume of the media", quantity.Volume, "depth x area", geometry, product, working.In("h", working.File("depth of the media", depth)),
		v.found("A", least(vessel.ID, "water_surface", "usual"), "area", quantity.Area))
}

// nitrify enters what the bacteria of every vessel turn, and all of them together.
func (v *surveyor) nitrify() {
	var growing []*system.Vessel
	for _, vessel := range v.Vessels {
		if v.hasMedia(vessel) || isRaft(vessel) {
			growing = append(growing, vessel)
			v.l.Put("nitrifying", vessel.ID)
		}
		if v.hasMedia(vessel) {
			v.mediaArea(vessel)
			v.mediaShape(vessel)
		}
	}
	at := v.filterAt(growing)
	for _, w := range working.Waters {
		var all []working.Input
		for _, vessel := range growing {
			all = append(all, working.In("N", v.turned(vessel, w)))
		}
		if len(all) == 0 {
			all = append(all, working.In("N", working.Fixed("no media and no rafts", quantity.FeedRate, 0, geometry)))
		}
		if !v.stocked() {
			continue
		}
		n := v.work(day(theWater, "nitrification", w), at, sum, all...)
		v.work(day(theWater, "nitrification_share", w), at, func(x []float64) (float64, string) {
			switch {
			case x[0] <= 0:
				return 0, "no ammonia is made"
			case x[1] <= 0:
				return unending, "there is nothing on which bacteria grow"
			}
			return x[0] / x[1], ""
		}, working.In("P", v.l.Find(day(theWater, "ammonia_made", w))), working.In("N", n))
	}
}

// filterAt is the place in the file of the most media, where what all bacteria turn is put right.
func (v *surveyor) filterAt(growing []*system.Vessel) string {
	at, most := "/vessels", -1.0
	for _, vessel := range growing {
		pointer := vessel.Pointer + "/media/volume"
		if !v.hasMedia(vessel) {
			pointer = vessel.Pointer
		}
		if x, _ := v.Number(pointer, quantity.Volume).SI(); x > most {
			at, most = pointer, x
		}
	}
	return at
}

// unending stands for a ratio to nothing.
const unending = 1000

// mediaArea enters the surface of a vessel's media.
func (v *surveyor) mediaArea(vessel *system.Vessel) *working.Node {
	at := vessel.Pointer + "/media"
	a := always(vessel.ID, "media_area")
	if mats := v.Number(at+"/area", quantity.Area); mats.Given() {
		return v.take(a, mats.Pointer(), working.File("area of the mats", mats))
	}
	surface := working.File("usable surface of a cubic metre of media", v.Number(at+"/surface", quantity.SpecificSurface))
	if surface.Origin == working.Absent {
		if row, known := v.t.Medium(v.Word(at + "/kind").Text()); known {
			surface = working.Assume("usable surface of a cubic metre of "+row.Kind, quantity.SpecificSurface, row.Surface, at+"/surface", row.Source, string(row.Sure))
		}
	}
	return v.work(a, at+"/volume", product, working.In("a", surface), working.In("Vm", v.mediaVolume(vessel)))
}

// mediaShape enters how moving carriers fill their vessel, and what surface grains can have.
func (v *surveyor) mediaShape(vessel *system.Vessel) {
	at := vessel.Pointer + "/media"
	kind := v.Word(at + "/kind")
	if kind.Is("carriers") {
		v.l.Put("moving_beds", vessel.ID)
		for _, w := range working.Waters {
			v.work(least(vessel.ID, "media_fill", w), at+"/volume", func(x []float64) (float64, string) {
				if x[1] <= 0 {
					return math.NaN(), "there is no water in it"
				}
				return x[0] / x[1], ""
			}, working.In("Vm", v.mediaVolume(vessel)), v.volume("V", vessel.ID, w))
		}
	}
	row, known := v.t.Medium(kind.Text())
	grain, surface := v.Number(at+"/grain", quantity.Length), v.Number(at+"/surface", quantity.SpecificSurface)
	if known && row.Grains && grain.Given() && surface.Given() {
		v.l.Put("grain_beds", vessel.ID)
		void := working.File("share open to water", v.Number(at+"/void", quantity.Fraction))
		if void.Origin == working.Absent {
			void = working.Assume("share open to water of "+row.Kind, quantity.Fraction, working.Exactly(row.Void), at+"/void", row.Source, string(row.Sure))
		}
		v.work(always(vessel.ID, "surface_over_grain"), surface.Pointer(), func(x []float64) (float64, string) {
			smooth, why := SmoothGrainSurface(x[1], x[2])
			return x[0] / smooth, why
		}, working.In("a", working.File("usable surface of a cubic metre of media", surface)), working.In("e", void), working.In("d", working.File("size of a grain", grain)))
	}
}

// doubt is where between the studies a factor lies: none says, so it spreads over all of them.
func doubt(of string) working.Input {
	return working.In("u"+of, working.Row("where between the studies the effect of "+of+" lies, 0 for the one that is used", quantity.Number, working.Within(0, -1, 1), "", "table of nitrification", "published"))
}

// between is a share moved by a doubt towards its least or its most.
func between(share working.Value, doubt float64) float64 {
	if doubt < 0 {
		return share.X + doubt*(share.X-share.Low)
	}
	return share.X + doubt*(share.High-share.X)
}

// turned enters the ammonia that a vessel's bacteria turn at a temperature of the water.
func (v *surveyor) turned(vessel *system.Vessel, w string) *working.Node {
	at := vessel.Pointer + "/media/volume"
	rate := func(name string, measured float64, size, of working.Input) *working.Node {
		return v.work(day(vessel.ID, name, w), at, func(x []float64) (float64, string) {
			t := between(v.t.Nitrification("temperature", x[2]), x[3])
			p := between(v.t.Nitrification("pH", x[4]), x[5])
			return x[0] * x[1] * Factor(t, p, measured), ""
		}, size, of, v.temperature(w), doubt("temperature"), v.ph("usual"), doubt("pH"))
	}
	if !v.hasMedia(vessel) {
		at = vessel.Pointer + "/raft/area"
		surface := working.In("A", v.raftArea(vessel, w))
		n := rate("nitrifies_by_surface", v.t.Nitrification("pH", raftPH).X, surface, v.figure("ra", "raft_rate", quantity.ArealRate))
		return v.take(day(vessel.ID, "nitrifies", w), at, n)
	}
	by := []working.Input{working.In("Na", rate("nitrifies_by_surface", 1, working.In("A", v.l.Find(always(vessel.ID, "media_area"))), v.figure("ra", "surface_rate", quantity.ArealRate)))}
	kind := v.Word(vessel.Pointer + "/media/kind")
	name, given := kind.Value()
	row, known := v.t.Medium(name)
	switch {
	case !given:
		by = append(by, working.In("Nv", working.Unknown("kind of the media", quantity.FeedRate, kind.Pointer(), "")))
	case known && row.HasBedRate:
		of := working.Row("ammonia that a cubic metre of "+row.Kind+" turns at 25 degC and pH 8", quantity.Number, row.BedRate, kind.Pointer(), row.Source, string(row.Sure))
		by = append(by, working.In("Nv", rate("nitrifies_by_bed", 1, working.In("Vm", v.mediaVolume(vessel)), working.In("rv", of))))
	}
	return v.work(day(vessel.ID, "nitrifies", w), at, func(x []float64) (float64, string) {
		y := math.Inf(1)
		for _, one := range x {
			y = math.Min(y, one)
		}
		return y, ""
	}, by...)
}

// raftPH is the pH at which the rate of rafts was measured.
const raftPH = 7

// raftArea is the area under rafts: as stated, else the water surface.
func (v *surveyor) raftArea(vessel *system.Vessel, w string) *working.Node {
	if area := v.Number(vessel.Pointer+"/raft/area", quantity.Area); area.Given() {
		return working.File("area of the rafts", area)
	}
	return v.found("A", least(vessel.ID, "water_surface", w), "water surface", quantity.Area).Node
}
