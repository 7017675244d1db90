package loop

import (
	"math"

	"dryfit/internal/pipeflow"
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/water"
	"dryfit/internal/working"
)

// How the water fills a piece of pipe. Each moves solids in its own way, and each is judged by its own measure.
const (
	drowned  = "drowned"       // full, with water standing over it
	riser    = "riser"         // full, and the water climbs
	partFull = "part full"     // level or sloping, with air above the water
	airOpen  = "air-open drop" // upright, the water falls with air beside it
)

// regimes names, for each of them, the fact that a line has such a stretch and the slowest speed in one.
var regimes = []struct{ regime, fact, slowest string }{
	{drowned, "drowned_pieces", "drowned_speed"},
	{riser, "riser_pieces", "riser_speed"},
	{partFull, "part_full_pieces", "part_full_speed"},
	{airOpen, "air_open_drops", ""},
}

// stretch says that a piece is pipe with a length of its own, in which solids may come to rest.
func stretch(p *system.Piece) bool {
	switch p.Kind {
	case "across", "rise", "fall", "slope", "standpipe", "hose":
		return true
	}
	return false
}

// standing is how high the water stands, or presses, at the end of each piece of a gravity line: held up by the
// level at the end of the line, or by an edge that it has still to get over.
//
//	z(i) = the higher of max(level below, mouth + what stands over it) + losses behind piece i
//	       and, for each edge behind it, invert + head(Q) + losses up to there
type standing struct {
	inputs []working.Input
	over   func(i int, x []float64) float64
}

func (r *run) standing(line *system.Line) standing {
	b, s := r.gravity, newShape()
	elements := b.elements(line)
	loss := s.loss(elements)
	_, film := b.roughness("smooth-plastic")
	q := s.take(working.In("Q", r.flow(line)))[0]
	controls := b.controls(line, elements)
	at := make([][]int, len(controls))
	for i, c := range controls {
		at[i] = s.take(working.In("zi", c.height), working.In("D", b.bore(c.piece)), working.In("t", film))
	}
	ends := s.take(working.In("z2", r.below(line)), working.In("zm", r.mouth(line)))
	return standing{s.inputs, func(i int, x []float64) float64 {
		n := passed(elements, line.Pieces[i])
		gone := loss(x[q], x, n)
		if n >= len(elements) {
			gone = loss(x[q], x, -1)
		}
		z := math.Max(x[ends[0]], x[ends[1]]) + loss(x[q], x, -1) - gone
		for k, c := range controls {
			if c.piece.Index <= i {
				continue
			}
			head, _ := c.over(x[q], x[at[k][1]]-2*x[at[k][2]])
			z = math.Max(z, x[at[k][0]]+head+math.Max(0, loss(x[q], x, c.before)-gone))
		}
		return z
	}}
}

// regimesOf says how the water fills each stretch of a line at the least flow. Where
// a level or height is missing there is no answer, and the inputs carry the gaps.
func (r *run) regimesOf(line *system.Line) (map[*system.Piece]string, []working.Input) {
	out := map[*system.Piece]string{}
	if line.Pumped || pressed(line) {
		for _, p := range line.Pieces {
			if stretch(p) {
				out[p] = map[bool]string{true: riser, false: drowned}[p.Kind == "rise"]
			}
		}
		return out, nil
	}
	s := r.standing(line)
	inputs := append([]working.Input{}, s.inputs...)
	for _, p := range line.Pieces {
		if stretch(p) {
			inputs = append(inputs, working.In("z", r.linear("start of the piece", p.From)), working.In("z", r.linear("end of the piece", p.To)), working.In("D", r.boreOf(p)))
		}
	}
	for _, in := range inputs {
		if _, known := in.Value(); !known {
			return nil, inputs
		}
	}
	x := values(s.inputs)
	for i, p := range line.Pieces {
		if stretch(p) {
			out[p] = r.fills(p, s.over(i, x))
		}
	}
	return out, inputs
}

// fills says how the water fills a piece at whose end it stands at level z. A slope whose foot is drowned counts
// as drowned: there the solids lie.
func (r *run) fills(p *system.Piece, z float64) string {
	from, _ := p.From.Value()
	to, _ := p.To.Value()
	d, _ := r.boreOf(p).Value()
	if p.Line.Pieces[0].BellSiphon != nil { // it runs full, by turns
		return drowned
	}
	switch p.Kind {
	case "rise":
		return riser
	case "fall", "standpipe":
		if z >= from {
			return drowned
		}
		return airOpen
	}
	if p.Kind == "hose" || z >= math.Min(from, to)+d.X/2 {
		return drowned
	}
	return partFull
}

func values(in []working.Input) []float64 {
	x := make([]float64, len(in))
	for i, one := range in {
		v, _ := one.Value()
		x[i] = v.X
	}
	return x
}

// boreOf is the clean bore of a piece, of a hose its own.
func (r *run) boreOf(p *system.Piece) *working.Node { return clearBore(r.gravity, p) }

func clearBore(b *bench, p *system.Piece) *working.Node {
	if p.Hose != nil {
		return b.once("hose", p.Pointer, func() *working.Node { return working.File("inside diameter of the hose", p.Hose.Inside) })
	}
	return b.bore(p)
}

// fillings is how the stretches of each running line are filled.
type fillings map[*system.Line]struct {
	of   map[*system.Piece]string
	from []working.Input
}

// regimes notes how each stretch of the running gravity lines and solids lines is filled at the least flow.
func (v *surveyor) regimes(runs_ []*run) fillings {
	out := fillings{}
	r := runOf(runs_, working.RunLeast, "usual")
	for _, line := range v.Lines {
		if !daily(line) || (line.Pumped || pressed(line)) && !carriesSolids(line) {
			continue
		}
		of, from := r.regimesOf(line)
		out[line] = struct {
			of   map[*system.Piece]string
			from []working.Input
		}{of, from}
		missing := gapsOf(from)
		for _, p := range line.Pieces {
			if stretch(p) {
				v.l.Note(working.Fact{Subject: p.ID(), Name: "piece_regime", Word: of[p], At: p.Pointer, Missing: unless(of != nil, missing)})
			}
		}
		for _, one := range regimes {
			regime := one.regime
			f := working.Fact{Subject: line.ID, Name: one.fact, Word: "no", At: line.Pointer + "/pipe"}
			if of == nil {
				f.Word, f.Missing = "", missing
			}
			for _, one := range of {
				if one == regime {
					f.Word = "yes"
				}
			}
			v.l.Note(f)
		}
	}
	return out
}

func unless(known bool, missing []string) []string {
	if known {
		return nil
	}
	return missing
}

// gapsOf is what is missing from inputs: pointers, or reasons where there is no pointer.
func gapsOf(in []working.Input) []string {
	var out []string
	seen := map[string]bool{}
	for _, one := range in {
		for _, g := range one.Gaps() {
			text := g.Pointer
			if text == "" {
				text = g.Why
			}
			if !seen[text] {
				seen[text] = true
				out = append(out, text)
			}
		}
	}
	return out
}

func runOf(runs_ []*run, runCase, temperature string) *run {
	for _, r := range runs_ {
		if r.runCase == runCase && r.temperature == temperature {
			return r
		}
	}
	return nil
}

// speeds enters, at the least flow, how fast the water runs in each stretch of a solids line, and the slowest of each regime.
func (r *run) speeds(line *system.Line, fill map[*system.Piece]string, from []working.Input) {
	b := r.bench(line)
	_, film := b.roughness("smooth-plastic")
	of := map[string][]*working.Node{}
	var judged []*working.Node
	for i, p := range line.Pieces {
		if !stretch(p) || fill[p] == airOpen {
			continue
		}
		a := r.address(p.ID(), "piece_speed")
		in := []working.Input{working.In("Q", r.flowIn(p)), working.In("D", clearBore(b, p)), working.In("t", film)}
		var v *working.Node
		switch {
		case fill == nil:
			v = r.work(a, p.Pointer, full, append(in, from...)...)
		case fill[p] == partFull:
			v = r.partFull(line, i, a, in)
		default:
			v = r.work(a, p.Pointer, full, in...)
			r.shear(p, in)
		}
		of[fill[p]] = append(of[fill[p]], v)
		judged = append(judged, v)
	}
	for _, one := range regimes {
		nodes := of[one.regime]
		if fill == nil {
			nodes = judged
		}
		if len(nodes) > 0 && one.slowest != "" {
			r.slowest(line, one.slowest, nodes)
		}
	}
	if len(judged) == 0 {
		judged = []*working.Node{r.l.Find(r.address(line.ID, "velocity"))}
	}
	r.slowest(line, "slowest_speed", judged)
}

// full is the speed in the full bore: flow, bore and film.
func full(x []float64) (float64, string) {
	y, valid := pipeflow.Velocity(x[0], x[1]-2*x[2])
	return y, beyond(valid)
}

// partFull is the speed of the water in a level or sloping stretch with air above it. A slope runs faster than
// at critical depth, so that depth is taken; a level stretch runs at the depth that what comes behind holds up.
func (r *run) partFull(line *system.Line, i int, a working.Address, in []working.Input) *working.Node {
	p := line.Pieces[i]
	if p.Kind != "across" {
		return r.work(a, p.Pointer, func(x []float64) (float64, string) {
			d := x[1] - 2*x[2]
			y := sure(pipeflow.CriticalDepth(x[0], d))
			return sure(pipeflow.PartFullVelocity(x[0], d, y)), "at critical depth: on a slope the water runs faster still"
		}, in...)
	}
	s := r.standing(line)
	n := len(in)
	in = append(in, working.In("z", r.linear("centreline of the pipe", p.To)))
	return r.work(a, p.Pointer, func(x []float64) (float64, string) {
		d := x[1] - 2*x[2]
		energy := s.over(i, x[n+1:]) - (x[n] - d/2)
		y, valid := pipeflow.QuietDepth(x[0], d, energy)
		return sure(pipeflow.PartFullVelocity(x[0], d, sure(y, valid))), ""
	}, append(in, s.inputs...)...)
}

// shear enters the drag of the water on the wall of a full stretch.
func (r *run) shear(p *system.Piece, in []working.Input) {
	b := r.bench(p.Line)
	surface := "smooth-plastic"
	if p.Hose != nil {
		surface = "hose"
	}
	ks, _ := b.roughness(surface)
	r.work(r.address(p.ID(), "wall_shear"), p.Pointer, func(x []float64) (float64, string) {
		y, valid := pipeflow.WallShear(x[0], x[1]-2*x[2], x[3], x[4], x[5])
		return sure(y, valid), beyond(valid)
	}, append(in, working.In("ks", ks), working.In("nu", b.nu), working.In("rho", r.density()))...)
}

// density is that of the water at the temperature of the run.
func (r *run) density() *working.Node {
	t := map[string]system.Number{"low": r.Water.Temperature.Low, "usual": r.Water.Temperature.Usual, "high": r.Water.Temperature.High}[r.temperature]
	return r.gravity.once("density", "water", func() *working.Node {
		return working.Step("density of the water", quantity.Concentration, "rho(T)", "Kell 1975", property(water.Density),
			working.In("T", working.File("temperature of the water, "+r.temperature, t)))
	})
}

func (r *run) slowest(line *system.Line, name string, nodes []*working.Node) {
	in := make([]working.Input, len(nodes))
	for i, n := range nodes {
		in[i] = working.In("V", n)
	}
	r.work(r.address(line.ID, name), line.Pointer+"/pipe", func(x []float64) (float64, string) {
		least := x[0]
		for _, one := range x[1:] {
			least = math.Min(least, one)
		}
		return least, ""
	}, in...)
}

// drops enters the Froude number of the air-open drops of a gravity line, the greatest of them.
func (r *run) drops(line *system.Line, fill map[*system.Piece]string, from []working.Input) {
	_, film := r.gravity.roughness("smooth-plastic")
	in := []working.Input{working.In("Q", r.flow(line)), working.In("t", film)}
	for _, p := range line.Pieces {
		if fill[p] == airOpen || fill == nil && stretch(p) {
			in = append(in, working.In("D", r.boreOf(p)))
		}
	}
	if len(in) == 2 {
		return
	}
	if fill == nil {
		in = append(in, from...)
	}
	r.work(r.address(line.ID, "drop_froude"), line.Pointer+"/pipe", func(x []float64) (float64, string) {
		most := 0.0
		for _, d := range x[2:] {
			most = math.Max(most, sure(pipeflow.Froude(x[0], d-2*x[1])))
		}
		return most, ""
	}, in...)
}
