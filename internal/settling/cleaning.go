package settling

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// bucket is what one bucket holds that a person carries, m3.
const bucket = 0.010

// RunsOut is t, the time in which a vessel runs out through a drain.
//
//	t = 2 V/(Q (1 + sqrt(h1/h)))
//
//	V   water that runs out, m3
//	Q   flow when the drain is opened, m3/s, above zero
//	h   head over the drain's end when it is opened, m, above zero
//	h1  head left when the floor is dry, m; at zero and below the last of it runs more and more slowly
//
// The walls are taken as upright and the flow as the root of the head: in laminar flow the end takes longer.
// Source: continuity with Torricelli's law.
func RunsOut(volume, flow, head, left float64) (float64, string) {
	if flow <= 0 || head <= 0 {
		return math.NaN(), "the end of the drain stands as high as the water: nothing runs"
	}
	note := ""
	if left < 0 {
		note = "the end of the drain stands higher than the floor: some water stays"
	}
	return 2 * volume / (flow * (1 + math.Sqrt(math.Max(left, 0)/head))), note
}

// every is the time from one cleaning to the next.
func (b basin) every() system.Number { return b.number("/cleaning/every", quantity.Time) }

// store enters the room for sludge and how often it is emptied.
func (b basin) store() {
	full := b.fullAt()
	if stated := b.number("/sludge/volume", quantity.Volume); stated.Given() {
		b.work("sludge_store", stated.Pointer(), same, working.In("V", working.File("volume of the store", stated)))
	} else {
		below, form := volumeBelow(b.v.Form)
		b.work("sludge_store", full.Pointer(), func(x []float64) (float64, string) { return below(x[0], x[1:]) },
			append([]working.Input{working.In("full", working.File("sludge above the inner floor when its store is full", full))}, form...)...)
	}
	b.work("cleaning_every", b.every().Pointer(), same, working.In("T", working.File("time from one cleaning to the next", b.every())))
}

// cleans enters the water that a cleaning costs.
func (b basin) cleans() {
	at := b.every().Pointer()
	rinse := working.In("Vr", working.Fixed("nothing is rinsed", quantity.Volume, 0, "as the schema says"))
	if stated := b.number("/cleaning/rinse", quantity.Volume); stated.Given() {
		rinse = working.In("Vr", working.File("water to rinse with", stated))
	}
	whole := working.In("V", b.volume("usual"))
	b.work("water_a_clean_whole", at, total, whole, rinse)
	clean := working.In("V", b.work("water_a_clean", at, total, working.In("Vo", b.letOff()), rinse))
	b.work("clean_share_week", at, func(x []float64) (float64, string) {
		if x[1] <= 0 || x[2] <= 0 {
			return math.NaN(), "a cleaning comes after some time, and the loop has water"
		}
		return x[0] * 7 * 86400 / (x[1] * x[2]), ""
	}, clean, working.In("T", working.File("time from one cleaning to the next", b.every())),
		working.In("Vl", found(b.l, working.Address{Subject: "water", Name: "loop_volume", Case: working.RunClean, Water: "usual"}, "water in the loop", quantity.Volume, "/vessels")))
	for _, line := range b.s.Lines {
		if line.From.Vessel == b.v && (line.Duty == "waste" || line.Duty == "empty") && line.To.Outer == "bucket" {
			b.work("bucket_loads", at, func(x []float64) (float64, string) { return math.Ceil(x[0] / bucket), "" }, clean)
			break
		}
	}
}

// clears says that only the sludge has to be let off: it slides down a cone to a valve that is opened until clear water comes.
func (b basin) clears() bool {
	return b.v.Form.Kind == "cone_bottom" && b.s.Word(b.v.Pointer+"/cleaning/how").Is("drain")
}

// letOff is the water that goes out with the sludge: the store of a cone that is drained, else what a line has not drawn down into the loop before.
func (b basin) letOff() *working.Node {
	whole := working.In("V", b.volume("usual"))
	if b.clears() {
		return working.Step("water let off until it comes clear", quantity.Volume, "room for sludge, at most all", judgement, least,
			whole, working.In("Vs", b.find("sludge_store", working.Always, "")))
	}
	ends := b.decants(true)
	if len(ends) == 0 {
		return whole.Node
	}
	below, form := volumeBelow(b.v.Form)
	end := working.In("end", working.Step("lowest inner end of the draw-down above the floor", quantity.Length, "the lowest", geometry, least, ends...))
	return working.Step("water left once the clear water is drawn down", quantity.Volume, "volume below the inner end, at most all", geometry, func(x []float64) (float64, string) {
		left, why := below(x[1], x[2:])
		return math.Min(x[0], left), why
	}, append([]working.Input{whole, end}, form...)...)
}

// falls is how far the water sinks in the settler while it is let off.
func (b basin) falls() *working.Node {
	running := working.In("z", working.Step("running depth", quantity.Length, "z - floor", geometry, difference,
		working.In("z", found(b.l, working.Address{Subject: b.v.ID, Name: "water_level", Case: working.RunClean, Water: "usual"}, "level of "+b.v.ID, quantity.Length, b.v.Pointer)),
		working.In("floor", b.floorAt())))
	if b.clears() {
		return working.Step("fall of the water until it comes clear", quantity.Length, "V/A, at most the depth", geometry, func(x []float64) (float64, string) {
			if x[2] <= 0 {
				return math.NaN(), "the settler has no area"
			}
			return math.Min(x[0], x[1]/x[2]), ""
		}, running, working.In("V", b.letOff()), working.In("A", b.plan()))
	}
	return working.Step("depth when it is opened", quantity.Length, "the least of running depth and inner end of the draw-down", geometry, least,
		append([]working.Input{running}, b.decants(false)...)...)
}

// decants is the inner ends of the lines that draw the clear water down; kept leaves out those that lead it out of the loop.
func (b basin) decants(kept bool) []working.Input {
	var ends []working.Input
	for _, line := range b.s.Lines {
		if line.From.Vessel == b.v && line.Duty == "draw-down" && (line.To.Vessel != nil || !kept) {
			ends = append(ends, working.In("end", innerEnd(line)))
		}
	}
	return ends
}

// drains puts the drains that run by their own weight into their set and enters how long the settler takes to run out.
func (b basin) drains() {
	for _, line := range b.s.Lines {
		if line.From.Vessel != b.v || line.Pumped || line.Duty != "waste" && line.Duty != "empty" {
			continue
		}
		b.l.Put("opened_drains", line.ID)
		a := working.Address{Subject: line.ID, Case: "cleaning", Water: "usual"}
		the := func(name, title string, kind quantity.Kind) *working.Node {
			a.Name = name
			return found(b.l, a, title, kind, line.Pointer)
		}
		flow, head := the("drain_flow", "flow in the drain", quantity.Flow), the("drain_head", "head over its end", quantity.Head)
		a.Name = "drain_time"
		b.l.Work(a, define(a.Name), line.Pointer, func(x []float64) (float64, string) { return RunsOut(x[0], x[1], x[2], x[2]-x[3]) },
			working.In("V", b.letOff()), working.In("Q", flow), working.In("h", head), working.In("d", b.falls()))
	}
}
