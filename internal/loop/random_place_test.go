package loop

import "math"

// anyOutlet is a gravity line before it is drawn. Heights in mm above the datum.
type anyOutlet struct {
	kind   string // side, slope, riser, standpipe, drowned
	duty   string
	to     *anyVessel // nil for outside
	flow   float64
	pipe   anyPipe
	centre int // of the level pipe with which it leaves; crest of a standpipe
	lead   int // length of that pipe
	mouth  int
	second int        // length of a level pipe at its end; 0 where it ends downwards
	valve  *anyPiece  // in the level pipe
	guard  *anyPiece  // before it
	branch *anyOutlet // parts from it at a tee in the level pipe
}

// anyFeed is a pumped line before it is drawn.
type anyFeed struct {
	to     *anyVessel
	flow   float64
	bypass *anyVessel // nil for none
	part   float64    // what goes through the bypass
}

const gee = 9.80665

// ways chooses which vessel gives to which, and about how much.
func (g *anyLoop) ways(q float64) {
	r, n := g.r, len(g.Vessels)
	feed := func(to *anyVessel, q float64) {
		f := &anyFeed{to: to, flow: q}
		to.flow += q
		if r.IntN(4) == 0 {
			f.bypass, f.part = g.Vessels[n-1], q*between(r, 0.2, 1)
			if k := r.IntN(n); k > 0 && r.IntN(2) == 0 {
				f.bypass = g.Vessels[k]
			}
			if f.bypass == to {
				f.bypass = g.Vessels[n-1]
			}
			f.bypass.flow += f.part
		}
		g.feeds = append(g.feeds, f)
	}
	feed(g.Vessels[0], q)
	if n > 3 && r.IntN(6) == 0 {
		feed(g.Vessels[1+r.IntN(n-2)], q*between(r, 0.3, 1))
	}
	for i, v := range g.Vessels[:n-1] {
		first := i + 1
		if g.Vessels[first].flow > 0 {
			first += r.IntN(n - 1 - i)
		}
		other := g.Vessels[i+1+r.IntN(n-1-i)]
		if k := i + 2; k < n-1 && g.Vessels[k].flow == 0 && r.IntN(2) == 0 {
			other = g.Vessels[k]
		}
		o := &anyOutlet{to: g.Vessels[first], flow: v.flow, duty: "flow"}
		v.out = []*anyOutlet{o}
		switch r.IntN(10) {
		case 0, 1:
			o.flow /= 2
			v.out = append(v.out, &anyOutlet{to: other, flow: o.flow, duty: "flow"})
		case 2, 3:
			o.branch = &anyOutlet{to: other, flow: o.flow / 2, duty: "flow"}
		}
		o.to.flow += v.flow
		if len(v.out) > 1 || o.branch != nil {
			o.to.flow -= v.flow / 2
			other.flow += v.flow / 2
		}
	}
}

// place sets the outlets of a vessel at heights at which they carry about their
// flow, over the vessels that they lead to, and the vessel round them.
func (g *anyLoop) place(v *anyVessel) {
	r := g.r
	if r.IntN(3) == 0 {
		v.Weir = &anyWeir{}
	}
	main := v.out[0]
	v.level = g.first(v, main)
	for _, o := range v.out[1:] {
		g.beside(v, main, o)
	}
	if v.Weir != nil {
		g.weir(v)
	}
	if r.IntN(6) == 0 { // an overflow, mostly dry
		o := &anyOutlet{kind: "side", duty: "overflow", to: g.Vessels[len(g.Vessels)-1], flow: v.flow, pipe: g.pipe(g.bore(v.flow)), lead: g.mm(60, 400)}
		o.centre = int(v.level + 500*o.pipe.bore + between(r, 15, 50))
		g.end(o)
		v.out = append(v.out, o)
	}
	if main.kind != "drowned" {
		v.floor = int(v.level - between(r, 280, 800))
	}
	rim := v.level + between(r, 50, 200)
	if r.IntN(25) == 0 {
		rim = v.level + between(r, 3, 15)
	}
	for _, o := range v.out {
		v.floor = min(v.floor, o.centre-o.pipe.hole/2-60)
		rim = math.Max(rim, float64(o.centre+o.pipe.hole/2+2))
	}
	for _, o := range v.out {
		if o.kind == "standpipe" { // it leaves by the floor
			v.floor = max(v.floor, o.to.floor+80)
			o.mouth = min(o.mouth, v.floor-40)
		}
	}
	v.height = int(rim) - v.floor + 1
	if main.kind == "drowned" {
		main.centre = max(v.floor, main.to.floor) + main.pipe.hole/2 + g.mm(5, 40)
		main.mouth = main.centre
	}
}

// bore is one in which a flow runs quietly, gulps, or fills the pipe.
func (g *anyLoop) bore(q float64) float64 {
	r := g.r
	if q < 8e-5 && r.IntN(2) == 0 {
		return between(r, 0.03, 0.15)
	}
	froude := between(r, 0.08, 0.3)
	switch r.IntN(10) {
	case 0, 1, 2:
		froude = between(r, 0.3, 1)
	case 3:
		froude = between(r, 1, 2)
	}
	return math.Pow(q/(froude*math.Pi/4*math.Sqrt(gee)), 0.4)
}

// lost is about what a line takes from a flow, mm.
func lost(q, bore, k, length float64) float64 {
	v := q / (math.Pi / 4 * bore * bore)
	f := math.Max(0.03, 64e-6/(v*bore))
	return 1000 * (k + f*length/bore) * v * v / (2 * gee)
}

// headOver is about how high still water stands over the invert of a level pipe that takes a flow, mm.
func headOver(q, bore float64) float64 {
	froude := q / (math.Pi / 4 * bore * bore * math.Sqrt(gee*bore))
	if froude > 0.6 {
		return 1000 * bore * (0.67 + 1.28*froude*froude)
	}
	return 1000 * 1.5 * 1.01 * math.Pow(bore, -0.26) * math.Pow(q*q/gee, 0.25)
}

// first places the main outlet of a vessel and gives the level above it.
func (g *anyLoop) first(v *anyVessel, o *anyOutlet) float64 {
	r := g.r
	o.pipe = g.pipe(g.bore(o.flow))
	o.lead = g.mm(80, 900)
	g.furnish(v, o)
	o.kind = oneOf(r, "side", "side", "side", "slope", "riser", "riser", "standpipe", "standpipe", "drowned", "drowned")
	if v.Weir != nil && o.kind != "drowned" || o.branch != nil {
		o.kind = oneOf(r, "side", "side", "slope")
	}
	below := o.to.level
	if o.branch != nil {
		o.kind = "side"
		below = math.Max(below, o.branch.to.level)
	}
	if len(v.out) > 1 && v.out[1].to.level+60 > below {
		below = v.out[1].to.level + 60
		if o.kind == "drowned" {
			o.kind = "side"
		}
	}
	if o.kind == "drowned" && o.to.level-float64(o.to.floor) < float64(o.pipe.hole+120) {
		o.kind = "side"
	}
	k := map[string]float64{"side": 2.5, "slope": 2.4, "riser": 4.2, "standpipe": 2.6, "drowned": 1.7}[o.kind]
	if o.valve != nil {
		k += valveGuess[*o.valve]
	}
	loss := lost(o.flow, o.pipe.bore, k, metres(o.lead)+0.4)
	gap := loss + between(r, 20, 350)
	if r.IntN(3) == 0 {
		gap = loss * between(r, 0.2, 1.1)
	}
	d := 1000 * o.pipe.bore
	switch o.kind {
	case "drowned":
		v.floor = o.to.floor + g.mm(-60, 60)
		o.centre = v.floor + 200
		return below + loss
	case "standpipe":
		o.centre = int(below + gap)
		head := 1000 * math.Pow(o.flow/(1.6*math.Pi*o.pipe.bore), 2.0/3)
		head = math.Max(head, lost(o.flow, o.pipe.bore, 2.8, 0))
		g.end(o)
		return math.Max(float64(o.centre)+head, below+loss)
	}
	o.centre = int(below + gap + d/2)
	g.end(o)
	if o.branch != nil {
		g.fork(o)
	}
	return math.Max(float64(o.centre)-d/2+headOver(o.flow, o.pipe.bore), below+loss)
}

// fork gives the branch of an outlet its pipe and its end.
func (g *anyLoop) fork(o *anyOutlet) {
	r, b := g.r, o.branch
	b.pipe, b.kind, b.centre, b.lead = o.pipe, "side", o.centre, g.mm(60, 500)
	if r.IntN(2) == 0 {
		b.pipe = g.pipe(o.pipe.bore * between(r, 0.35, 0.62))
	}
	if b.pipe.bore > 0.66*o.pipe.bore { // between two thirds and one the source of the tees says nothing
		b.pipe = o.pipe
	}
	g.furnish(nil, b)
	g.end(b)
}

// beside places a second outlet: as the first, or so that it carries about its share at the level there is.
func (g *anyLoop) beside(v *anyVessel, first, o *anyOutlet) {
	r := g.r
	o.lead = g.mm(80, 900)
	if first.kind == "side" && o.to == first.to && r.IntN(2) == 0 {
		*o = *first
		return
	}
	o.pipe = g.pipe(g.bore(o.flow))
	o.kind = "side"
	g.furnish(v, o)
	top := v.level - headOver(o.flow, o.pipe.bore)*between(r, 0.6, 1.2)
	o.centre = int(math.Max(top, o.to.level+10) + 500*o.pipe.bore)
	g.end(o)
}

// end gives an outlet its mouth: under water, or in the air.
func (g *anyLoop) end(o *anyOutlet) {
	r := g.r
	if r.IntN(3) == 0 || o.kind == "slope" {
		o.second = g.mm(60, 400)
	}
	highest := float64(o.centre - 40)
	low, high := float64(o.to.floor)+40, math.Min(o.to.level-15, highest)
	if l := o.to.level + 15; highest > l+20 && r.IntN(2) == 0 {
		low, high = l, highest
	}
	o.mouth = int(highest)
	if high > low {
		o.mouth = g.mm(low, high)
	}
}

// furnish puts a valve into a line now and then, and a guard before it.
func (g *anyLoop) furnish(v *anyVessel, o *anyOutlet) {
	r := g.r
	if r.IntN(3) == 0 {
		valve := oneOf(r, anyValves...)
		o.valve = &valve
	}
	if v != nil && r.IntN(3) == 0 {
		n := 1 + int(o.flow/(0.61*0.006*0.040*between(r, 0.05, 0.5)))
		o.guard = &anyPiece{Is: "slots", Count: min(500, n), Width: 0.006, Length: 0.040}
	}
}

// Valves at openings for which books give a coefficient, and about what that is.
var (
	anyValves  = []anyPiece{{Is: "ball", Open: 100}, {Is: "ball", Open: 66.67}, {Is: "ball", Open: 55.56}, {Is: "gate", Open: 100}, {Is: "gate", Open: 75}, {Is: "gate", Open: 50}, {Is: "gate", Open: 25}}
	valveGuess = map[anyPiece]float64{{Is: "ball", Open: 66.67}: 5.5, {Is: "ball", Open: 55.56}: 17, {Is: "gate", Open: 50}: 2, {Is: "gate", Open: 25}: 17}
)

// weir gives a vessel its edge, free or drowned, over the level that its lines hold behind it.
func (g *anyLoop) weir(v *anyVessel) {
	r, w, q := g.r, v.Weir, v.flow
	w.behind = v.level
	h := 0.0 // m
	switch w.Kind = oneOf(r, "notched_ring", "notched_ring", "ring", "straight", "rim", "notch", "slit"); w.Kind {
	case "notched_ring", "notch":
		w.Angle = oneOf(r, 90.0, 60, 40)
		one := 1.365 * math.Tan(w.Angle*math.Pi/360)
		w.Notches = min(40, 1+int(q/(one*math.Pow(between(r, 0.012, 0.06), 2.5))))
		h = math.Pow(q/(float64(w.Notches)*one), 0.4)
	case "ring":
		w.Across = metres(g.mm(150, 400))
		h = math.Pow(q/(1.84*math.Pi*w.Across), 2.0/3)
	case "rim":
		v.across = g.mm(400, 1200)
		w.Across = metres(v.across)
		h = math.Pow(q/(1.6*math.Pi*w.Across), 2.0/3)
	case "straight":
		w.Length = metres(g.mm(40, 500))
		h = math.Pow(q/(1.84*w.Length), 2.0/3)
	case "slit":
		w.Length, w.Notches = metres(g.mm(20, 80)), 1+r.IntN(4)
		h = math.Pow(q/(1.84*w.Length*float64(w.Notches)), 2.0/3)
	}
	crest := w.behind + between(r, 10, 60)
	if r.IntN(2) == 0 {
		crest = w.behind - 1000*h*between(r, 0.2, 1.2)
	}
	w.Crest = metres(int(crest))
	v.level = math.Max(crest+1000*h, w.behind+300*h)
}
