package loop

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// unpumped says that water and what it carries go through a line by gravity, in daily use, at an overflow or at cleaning.
// A draw-down line is none: clear water is drawn through it by hand.
func unpumped(l *system.Line) bool {
	if l.Pumped || l.Duty != "flow" && l.Duty != "waste" && l.Duty != "overflow" {
		return false
	}
	_, from := top(l)
	return from
}

// top is the vessel from which the water of a line comes down, through other lines if it starts at their tees; false where
// a pump or the mains stands before it.
func top(l *system.Line) (*system.Vessel, bool) {
	for range 20 { // lines that start at each other lead nowhere
		switch {
		case l.Pumped:
			return nil, false
		case l.From.Line == nil:
			return l.From.Vessel, l.From.Vessel != nil
		}
		l = l.From.Line
	}
	return nil, false
}

// narrows enters what may hold solids up in each unpumped line: bores that shrink, guards too coarse, check valves.
func (v *surveyor) narrows() {
	b := newBench(v, nil, walls{"gravity", "clean"})
	for _, line := range v.Lines {
		if !unpumped(line) || len(line.Pieces) == 0 {
			continue
		}
		v.l.Put("unpumped_lines", line.ID)
		v.boreShare(b, line)
		v.checkValve(line)
		for _, p := range line.Pieces {
			if guard := p.Value + "/guard"; p.Index == 0 && len(v.Keys(guard)) > 0 {
				v.l.Put("guards", p.ID())
				v.slotShare(b, p, guard)
			}
		}
	}
}

// place is where a line has a bore: in the pipe of a piece, or in what the piece puts into the pipe.
type place struct {
	piece *system.Piece
	pipe  bool
}

// bores is the clear bore of each piece of a line, of its pipe and of what stands in that. What a
// valve or check valve leaves open has to be stated; of a union it is the pipe's, if nothing is said.
func (v *surveyor) bores(b *bench, line *system.Line) (places []place, in []working.Input) {
	stated := func(p *system.Piece, what, key string) {
		places, in = append(places, place{p, false}), append(in, working.In("D", working.File(what, v.Number(p.Value+"/"+key, quantity.Length))))
	}
	for _, p := range line.Pieces {
		places, in = append(places, place{p, true}), append(in, working.In("D", clearBore(b, p)))
		switch {
		case p.Kind == "valve" || p.Kind == "check_valve" || p.Kind == "device":
			stated(p, "bore of the "+map[string]string{"valve": "valve", "check_valve": "check valve", "device": "device"}[p.Kind], "bore")
		case p.Kind == "union" && v.Number(p.Value+"/bore", quantity.Length).Given():
			stated(p, "bore of the union", "bore")
		case p.Outlet != nil && p.Outlet.Nozzle.Given():
			stated(p, "bore of the nozzle", "nozzle")
		case p.Hose != nil && v.Number(p.Value+"/barb", quantity.Length).Given():
			stated(p, "bore of the spigots in the hose", "barb")
		}
	}
	return places, in
}

func (v *surveyor) boreShare(b *bench, line *system.Line) {
	places, in := v.bores(b, line)
	at := line.Pointer + "/pipe"
	if len(gapsOf(in)) == 0 {
		if _, i := narrowest(values(in), places); i > 0 {
			at = places[i].piece.Pointer
		}
	}
	v.work(working.Address{Subject: line.ID, Name: "bore_share", Case: working.Always}, at, func(x []float64) (float64, string) {
		share, _ := narrowest(x, places)
		return share, ""
	}, in...)
}

// narrowest is the least bore over the greatest bore of the pipe before it along a line, and where it is. A valve wider
// than the pipe lets nothing through that the pipe did not.
func narrowest(bores []float64, places []place) (share float64, at int) {
	share = 1
	widest := 0.0
	for i, d := range bores {
		if widest > 0 && d/widest < share {
			share, at = d/widest, i
		}
		if places[i].pipe {
			widest = math.Max(widest, d)
		}
	}
	return share, at
}

func (v *surveyor) checkValve(line *system.Line) {
	f := working.Fact{Subject: line.ID, Name: "check_valve", Word: "no", At: line.Pointer}
	for _, p := range line.Pieces {
		if p.Kind == "check_valve" {
			f.Word, f.At = "yes", p.Pointer
			break
		}
	}
	v.l.Note(f)
}

// slotWidth is the clear width of a guard: of its slots, holes or mesh.
func (v *surveyor) slotWidth(guard string) *working.Node {
	if mesh := v.Number(guard+"/mesh", quantity.Length); mesh.Given() {
		return working.File("opening of the guard's mesh", mesh)
	}
	return working.File("clear width of the guard", v.Number(guard+"/width", quantity.Length))
}

func (v *surveyor) slotShare(b *bench, p *system.Piece, guard string) {
	_, in := v.bores(b, p.Line)
	width := v.slotWidth(guard)
	v.work(working.Address{Subject: p.ID(), Name: "slot_share", Case: working.Always}, width.Pointer, func(x []float64) (float64, string) {
		least := math.Inf(1)
		for _, d := range x[1:] {
			least = math.Min(least, d)
		}
		return x[0] / least, ""
	}, append([]working.Input{working.In("w", width)}, in...)...)
}

// slotSpeed enters how fast the water comes through a guard that is half grown over, at the flow of the run.
func (r *run) slotSpeed(p *system.Piece) {
	guard := p.Value + "/guard"
	if len(r.Keys(guard)) == 0 {
		return
	}
	if r.temperature == "usual" {
		r.l.Put("running_guards", p.ID())
	}
	at := guard
	var area *working.Node
	number := func(title, key string, kind quantity.Kind) *working.Node {
		return working.File(title, r.Number(guard+"/"+key, kind))
	}
	switch {
	case r.Number(guard+"/area", quantity.Area).Given():
		area = number("open area of the guard", "area", quantity.Area)
	case r.Number(guard+"/holes", quantity.Number).Given():
		at = guard + "/holes"
		area = working.Step("open area of the guard", quantity.Area, "n pi/4 w^2", geometry, func(x []float64) (float64, string) {
			return x[0] * math.Pi / 4 * x[1] * x[1], ""
		}, working.In("n", number("number of holes", "holes", quantity.Number)), working.In("w", number("diameter of a hole", "width", quantity.Length)))
	default:
		at = guard + "/slots"
		area = working.Step("open area of the guard", quantity.Area, "n w l", geometry, func(x []float64) (float64, string) {
			return x[0] * x[1] * x[2], ""
		}, working.In("n", number("number of slots", "slots", quantity.Number)), working.In("w", number("width of a slot", "width", quantity.Length)), working.In("l", number("length of a slot", "length", quantity.Length)))
	}
	r.work(r.address(p.ID(), "slot_speed"), at, func(x []float64) (float64, string) {
		if x[1] <= 0 {
			return math.NaN(), "the guard has no open area"
		}
		return x[0] / (x[1] / 2), ""
	}, working.In("Q", r.flow(p.Line)), working.In("A", area))
}

// profile is the heights of a line, of the start of its first piece and of the end of every piece.
func (v *surveyor) profile(line *system.Line) []working.Input {
	in := []working.Input{working.In("z", v.linear("start of the line", line.Pieces[0].From))}
	for _, p := range line.Pieces {
		in = append(in, working.In("z", v.linear("end of the piece", p.To)))
	}
	return in
}

// trapped is how high air can stand in a line: the greatest rise of a place over the higher of the lowest places on its two
// sides, each as far as the next vent or the end of the line; and the piece that ends there.
//
//	z      heights along the line, m
//	vents  whether the line has a vent there
func trapped(z []float64, vents []bool) (rise float64, at int) {
	low := func(i, step int) float64 {
		least := z[i]
		for k := i; k >= 0 && k < len(z); k += step {
			least = math.Min(least, z[k])
			if vents[k] {
				break
			}
		}
		return least
	}
	for i := range z {
		if h := math.Min(z[i]-low(i, -1), z[i]-low(i, 1)); h > rise {
			rise, at = h, i
		}
	}
	return rise, at
}

// highPoints enters how high air can stand in each unpumped line, and how far its vents reach over the water.
func (v *surveyor) highPoints(runs_ []*run) {
	b := newBench(v, nil, walls{"gravity", "clean"})
	for _, line := range v.Lines {
		if !unpumped(line) || len(line.Pieces) == 0 {
			continue
		}
		in := v.profile(line)
		n := len(in)
		vents := make([]bool, n)
		for i, p := range line.Pieces {
			vents[i+1] = lets(p)
			in = append(in, working.In("D", clearBore(b, p)))
			if p.Tee == nil {
				continue
			}
			if _, given := p.Tee.Third.Value(); !given || p.Tee.Third.Is("vent") {
				v.vent(p, runs_)
			}
		}
		at := line.Pointer
		if len(gapsOf(in)) == 0 {
			z := values(in)[:n]
			if _, i := trapped(z, vents); i > 0 {
				at = line.Pieces[i-1].Pointer
				for k := i; k < n && z[k] > z[i]-1e-9; k++ { // where a tee could let the air out
					if line.Pieces[k-1].Tee != nil {
						at = line.Pieces[k-1].Pointer
						break
					}
				}
			}
		}
		v.work(working.Address{Subject: line.ID, Name: "trapped_rise", Case: working.Always}, at, func(x []float64) (float64, string) {
			rise, i := trapped(x[:n], vents)
			return rise / x[n+max(0, i-1)], ""
		}, in...)
	}
}

// vent enters how far the top of a vent stands over the water: inside the vessel that the line comes from over its
// running level, outside over its rim, to which the water rises when the line is blocked.
func (v *surveyor) vent(p *system.Piece, runs_ []*run) {
	vessel, _ := top(p.Line)
	v.l.Put("vents", p.ID())
	height := system.Of(p.Tee.TopAt)
	if p.Line.From.Vessel != nil {
		height = p.Line.From.Vessel.Above(p.Tee.TopAt)
	}
	top := v.linear("top of the vent", height)
	if _, given := p.Tee.Third.Value(); !given { // it may be one
		top = working.Unknown("top of the vent", quantity.Length, p.Tee.Third.Pointer(), "")
	}
	tall := working.In("z", top)
	over := func(a working.Address, level *working.Node) {
		v.work(a, p.Tee.TopAt.Pointer(), func(x []float64) (float64, string) { return x[0] - x[1], "" }, tall, working.In("z1", level))
	}
	for _, r := range runs_ {
		switch {
		case p.In != nil && p.In == vessel && runs(p.Line):
			over(r.address(p.ID(), "vent_margin"), r.level(vessel))
		case r.temperature == "usual":
			over(r.address(p.ID(), "vent_margin"), v.rim(vessel))
		}
	}
}

// froudes enters what the water does in air-open drops, at the greatest flow.
func (v *surveyor) froudes(runs_ []*run, fill fillings) {
	for _, r := range runs_ {
		for _, line := range v.Lines {
			if f, ok := fill[line]; ok && !line.Pumped && r.runCase != working.RunLeast {
				r.drops(line, f.of, f.from)
			}
		}
	}
}
