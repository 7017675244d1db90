package loop

import (
	"fmt"
	"math"
	"strings"
)

// pen draws one line twice: as pieces of a system file, and as what takes head from its water.
type pen struct {
	g      *anyLoop
	pipe   anyPipe
	said   []string
	strand *anyStrand
	z      int // mm: where it is
}

// begin starts a line at a vessel or tee.
func (g *anyLoop) begin(line, from string, z int, pipe anyPipe, duty string) *pen {
	p := &pen{g: g, pipe: pipe, z: z}
	p.part(line, line, from, duty)
	p.strand.First = true
	return p
}

// part starts a strand of the line.
func (p *pen) part(name, line, from, duty string) {
	p.strand = &anyStrand{Name: name, Line: line, From: from, Duty: duty, Bore: p.pipe.bore, Nominal: p.pipe.nominal}
	p.g.Strands = append(p.g.Strands, p.strand)
}

// close ends the line and writes it into the file.
func (p *pen) close(from, to string) {
	duty := ""
	if p.strand.Duty != "flow" {
		duty = "    duty: " + p.strand.Duty + "\n"
	}
	fmt.Fprintf(&p.g.lines, "  %s:\n%s    from: %s\n    to: %s\n    pipe: %s\n    joints: cemented\n    pieces:\n      - %s\n",
		p.strand.Line, duty, from, to, p.pipe.id, strings.Join(p.said, "\n      - "))
}

func (p *pen) say(format string, a ...any) { p.said = append(p.said, fmt.Sprintf(format, a...)) }

func (p *pen) takes(is string, length float64) {
	p.strand.Pieces = append(p.strand.Pieces, &anyPiece{Is: is, Length: length})
}

func (p *pen) edge(is string, height float64) {
	p.strand.Edges = append(p.strand.Edges, &anyEdge{is, height, len(p.strand.Pieces)})
}

// invert is the inside bottom of a level pipe where the pen is.
func (p *pen) invert() float64 { return metres(p.z) - p.pipe.bore/2 }

func (p *pen) intake(above int, guard *anyPiece) {
	said := fmt.Sprintf("intake: {at: %d mm", above)
	if guard != nil {
		said += fmt.Sprintf(", guard: {slots: %d, width: %.0f mm, length: %.0f mm}", guard.Count, 1000*guard.Width, 1000*guard.Length)
		p.strand.Pieces = append(p.strand.Pieces, guard)
	}
	p.say("%s}", said)
	p.takes("projecting", 0)
}

func (p *pen) wall(v *anyVessel) {
	p.say("through: {wall_of: %s, at: %d mm, seal: {hole: %d mm}}", v.Name, p.z-v.floor, p.pipe.hole)
}

func (p *pen) across(mm int) {
	p.say("across: %d mm", mm)
	p.takes("pipe", metres(mm))
}

// upright goes straight up or down to a height.
func (p *pen) upright(to int) {
	p.say("%s: fit", map[bool]string{true: "rise", false: "fall"}[to > p.z])
	if to < p.z && p.strand.Drop == 0 {
		p.strand.Drop = metres(p.z)
	}
	p.takes("pipe", math.Abs(metres(to-p.z)))
	p.z = to
}

// slope goes down at 45 degrees.
func (p *pen) slope(to int) {
	p.say("slope: {angle: 45 deg, fall: fit}")
	p.takes("pipe", metres(p.z-to)*math.Sqrt2)
	p.z = to
}

func (p *pen) bend(degrees int) {
	p.say("bend: %d deg", degrees)
	p.takes(fmt.Sprintf("bend%d", degrees), 0)
}

func (p *pen) union() {
	p.say("union: {}")
	p.takes("union", 0)
}

func (p *pen) valve(v *anyPiece) {
	if v == nil {
		return
	}
	if v.Open == 100 {
		p.say("valve: %s", v.Is)
	} else {
		p.say("valve: {kind: %s, open: %.2f %%}", v.Is, v.Open)
	}
	p.strand.Pieces = append(p.strand.Pieces, v)
}

// tee parts the line: what comes after it is another strand.
func (p *pen) tee(id, line string) *anyTee {
	p.say("tee: {id: %s, way: through, third: line}", id)
	t := &anyTee{Name: line + "." + id, Common: p.strand.Name, Bore: p.pipe.bore}
	p.strand.To = t.Name
	t.Run = line + " behind " + id
	p.part(t.Run, line, t.Name, p.strand.Duty)
	p.g.Tees = append(p.g.Tees, t)
	return t
}

func (p *pen) outlet(to *anyVessel, facing string, nozzle float64) {
	said := fmt.Sprintf("outlet: {at: %d mm, facing: %s", p.z-to.floor, facing)
	if nozzle > 0 {
		said += fmt.Sprintf(", nozzle: %.1f mm", 1000*nozzle)
	}
	p.say("%s}", said)
	p.strand.Mouth = &anyMouth{metres(p.z), facing, nozzle}
	p.strand.To = to.Name
}

// vessel writes a vessel into the file.
func (g *anyLoop) vessel(v *anyVessel) {
	v.Floor, v.Rim = metres(v.floor), metres(v.floor+v.height)
	form := fmt.Sprintf("cylinder: {inside: %d mm, height: %d mm", v.across, v.height)
	if v.across == 0 {
		long, wide := g.mm(500, 1600), g.mm(400, 900)
		form = fmt.Sprintf("box: {length: %d mm, width: %d mm, height: %d mm", long, wide, v.height)
		if g.r.IntN(3) == 0 {
			form += fmt.Sprintf(", length_top: %d mm, width_top: %d mm", long+g.mm(5, 80), wide+g.mm(5, 80))
		}
	} else if v.Weir == nil && g.r.IntN(3) == 0 {
		form += fmt.Sprintf(", inside_top: %d mm", v.across+g.mm(4, 90))
	}
	fmt.Fprintf(&g.vessels, "  %s:\n    role: %s\n    form: {%s}}\n    stands_at: %d mm\n", v.Name, v.role, form, v.floor)
	if v.Held != nil {
		fmt.Fprintf(&g.vessels, "    water: {running: %.0f mm}\n", v.level-float64(v.floor))
	}
	w := v.Weir
	if w == nil {
		return
	}
	at := int(math.Round(1000*w.Crest)) - v.floor
	said := map[string]string{
		"notched_ring": fmt.Sprintf("notched_ring: {across: 300 mm, crest_at: %d mm, notches: %d, angle: %.0f deg}", at, w.Notches, w.Angle),
		"notch":        fmt.Sprintf("notch: {crest_at: %d mm, count: %d, angle: %.0f deg}", at, w.Notches, w.Angle),
		"slit":         fmt.Sprintf("notch: {crest_at: %d mm, count: %d, width: %.0f mm}", at, w.Notches, 1000*w.Length),
		"ring":         fmt.Sprintf("ring: {across: %.0f mm, crest_at: %d mm}", 1000*w.Across, at),
		"rim":          fmt.Sprintf("rim: {crest_at: %d mm}", at),
		"straight":     fmt.Sprintf("straight: {length: %.0f mm, crest_at: %d mm}", 1000*w.Length, at),
	}[w.Kind]
	low := v.out[0].centre
	for _, o := range v.out {
		low = min(low, o.centre)
	}
	fmt.Fprintf(&g.vessels, "    weir: {%s}\n    launder: {floor_at: %d mm}\n", said, max(5, low-v.floor-v.out[0].pipe.hole))
}

// outlet draws a gravity line.
func (g *anyLoop) outlet(v *anyVessel, o *anyOutlet, line string) {
	node, from := v.Name, v.Name
	if v.Weir != nil && o.duty == "flow" {
		node, from = v.Name+" behind", v.Name+".launder"
	}
	p := g.begin(line, node, o.centre, o.pipe, o.duty)
	switch o.kind {
	case "riser":
		p.z = v.floor + 30
		p.edge("mouth", metres(p.z))
		p.intake(30, o.guard)
		p.upright(o.centre)
		p.edge("inlet", p.invert())
		p.say("tee: {way: turn, third: vent, top_at: %d mm}", v.height)
		p.takes("tee_turn", 0)
		p.across(60)
		p.wall(v)
	case "standpipe":
		p.edge("rim", metres(p.z))
		p.takes("projecting", 0)
		p.say("standpipe: {crest_at: %d mm}", p.z-v.floor)
		p.takes("pipe", metres(p.z-v.floor))
		p.strand.Drop, p.z = metres(p.z), v.floor
		p.say("through: {floor_of: %s, bulkhead: {hole: %d mm}}", v.Name, p.pipe.hole)
		p.last(o)
		p.close(from, o.to.Name)
		return
	default:
		if o.guard != nil {
			p.intake(p.z-v.floor, o.guard)
			p.strand.Pieces, p.strand.Edges = p.strand.Pieces[:1], nil
			p.edge("inlet", p.invert()) // under the guard
			p.takes("projecting", 0)
		} else {
			p.edge("inlet", p.invert())
			p.takes("flush", 0)
		}
		p.wall(v)
	}
	p.across(o.lead)
	p.valve(o.valve)
	if o.kind == "drowned" {
		p.wall(o.to)
		p.across(g.mm(40, 150))
		p.outlet(o.to, "level", 0)
		p.close(from, o.to.Name)
		return
	}
	var tee *anyTee
	if o.branch != nil {
		tee = p.tee("fork", line)
		p.across(g.mm(50, 400))
	}
	p.down(o)
	p.close(from, o.to.Name)
	if tee != nil {
		b := g.begin(line+"-branch", tee.Name, o.centre, o.branch.pipe, o.branch.duty)
		b.across(o.branch.lead)
		b.valve(o.branch.valve)
		b.down(o.branch)
		b.close(line+".fork", o.branch.to.Name)
		tee.Branch, tee.Other = b.strand.Name, o.branch.pipe.bore
	}
}

// down turns a level pipe down, to its end.
func (p *pen) down(o *anyOutlet) {
	turn := 90
	if o.kind == "slope" {
		turn = 45
	}
	p.bend(turn)
	p.edge("brink", p.invert())
	if o.kind == "slope" {
		p.slope(o.mouth)
		p.bend(45)
		p.across(o.second)
		p.outlet(o.to, "level", 0)
		return
	}
	p.last(o)
}

// last falls to the end.
func (p *pen) last(o *anyOutlet) {
	p.upright(o.mouth)
	if o.second > 0 {
		p.bend(90)
		p.across(o.second)
		p.outlet(o.to, "level", 0)
		return
	}
	p.outlet(o.to, "down", 0)
}
