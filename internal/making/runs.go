package making

import (
	"math"
	"slices"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

var runQuantities = []working.Definition{
	{Name: "cut_length", Title: "pipe to cut, end of socket to end of socket", Symbol: "L", Kind: quantity.Length, Of: "each straight run that ends in a fitting",
		Formula: "CC - G1 - G2", Source: "plumbers' trade textbooks", Sure: "derived"},
	{Name: "run_spare", Title: "pipe left between the faces of the two fittings", Symbol: "e", Kind: quantity.Length, Of: "each straight run that ends in a fitting",
		Formula: "CC - G1 - G2 - C1 - C2", Source: "tables of take-offs and of sockets", Sure: "derived"},
	{Name: "dry_excess", Title: "how much longer it measures while only pushed together dry", Symbol: "e", Kind: quantity.Length, Of: "each straight run with tapered sockets",
		Formula: "n (1 - (A - OD)/(A - B)) C", Source: "geometry of a cone, with the diameters of ASTM D2466", Sure: "published"},
}

var runSets = []working.Named{
	{Name: "straight_runs", Title: "straight pipe between two fittings, or between a fitting and a wall or an open end"},
}

// stretch is straight pipe between two pieces that are no pipe; nil where the line begins or ends.
type stretch struct {
	before, after *system.Piece
	pipes         []*system.Piece
}

// stretches lists the straight pipe of a line.
func stretches(line *system.Line) []stretch {
	var out []stretch
	now := stretch{}
	end := func(p *system.Piece) {
		now.after = p
		if len(now.pipes) > 0 || now.before != nil && p != nil && elbow(now.before) && elbow(p) {
			out = append(out, now)
		}
		now = stretch{before: p}
	}
	for _, p := range line.Pieces {
		switch {
		case p.Run != nil:
			now.pipes = append(now.pipes, p)
		case p.Over != nil || p.SiphonBreak != nil: // the pipe goes on
		default:
			end(p)
		}
	}
	end(nil)
	return out
}

// elbow says that a piece is a fitting whose length from its middle is known.
func elbow(p *system.Piece) bool { return p.Bend != nil || p.Tee != nil }

// socketed says that a piece is a fitting with sockets that pipe goes into. Of valves, unions and the like only
// the sockets count, since their length is in no table.
func socketed(p *system.Piece) bool {
	if p == nil {
		return false
	}
	switch p.Kind {
	case "valve", "check_valve", "union", "clean_out", "cap", "reducer":
		return true
	}
	return elbow(p)
}

// runs enters what is left of each straight run once the fittings at its ends have their pipe.
func (v *surveyor) runs() {
	v.l.Put("straight_runs")
	for _, line := range v.Lines {
		for _, s := range stretches(line) {
			if socketed(s.before) || socketed(s.after) {
				v.run(s)
			}
		}
	}
}

func (v *surveyor) run(s stretch) {
	first := s.after // no pipe stands between two elbows
	length := system.Linear{}
	for i, p := range s.pipes {
		if i == 0 {
			first = p
		}
		length = length.Plus(p.Length)
	}
	at := first.Pointer
	if len(s.pipes) > 0 && !first.Run.Fit && first.Run.Length.Given() {
		at = first.Run.Length.Pointer()
	}
	cut := []working.Input{working.In("CC", sum("centre to centre", length))}
	sockets := []working.Input{}
	for i, p := range []*system.Piece{s.before, s.after} {
		if !socketed(p) {
			continue
		}
		if elbow(p) {
			cut = append(cut, working.In("G", v.takeoff(p, first)))
		}
		joint := first.Joint // of the pipe to what stands before it
		if i == 1 {
			joint = p.Joint
		}
		if solvent(joint) {
			sockets = append(sockets, working.In("C", v.socket(first)))
		}
	}
	v.l.Put("straight_runs", first.ID())
	n := len(cut)
	left := func(x []float64) (float64, string) {
		cut := CutLength(x[0], x[1:n]...)
		return CutLength(cut, x[n:]...), ""
	}
	v.work(always(first.ID(), "cut_length"), at, left, cut...)
	v.work(always(first.ID(), "run_spare"), at, left, slices.Concat(cut, sockets)...)
	v.dry(first, at, len(sockets))
}

// dry enters how much longer a piece with its fittings measures while it is only pushed together: in a tapered
// socket dry pipe stops short.
func (v *surveyor) dry(p *system.Piece, at string, sockets int) {
	if p.Pipe == nil || sockets == 0 {
		return
	}
	row, ok := v.t.SocketFor(p.Pipe.Standard.Text(), p.Pipe.Size.Text())
	if !ok || !row.Entrance.Known {
		return
	}
	figure := func(title string, x float64) *working.Node {
		return working.Row(title, quantity.Length, working.Exactly(x), "", row.Source, string(row.Sure))
	}
	v.work(always(p.ID(), "dry_excess"), at, func(x []float64) (float64, string) {
		f, why := DryStop(x[1], x[2], x[0])
		return float64(sockets) * (1 - math.Max(0, math.Min(1, f))) * x[3], why
	}, working.In("OD", outside(p.Pipe, p)), working.In("A", figure("entrance of the socket", row.Entrance.Value)),
		working.In("B", figure("bottom of the socket", row.Bottom.Value)), working.In("C", figure("depth of the socket", row.Depth)))
}

// solvent says that a joint is made in a solvent socket, or may be: cemented, pinned or only pushed in.
func solvent(joint system.Word) bool {
	_, given := joint.Value()
	return !given || joint.Is("cemented", "pinned", "uncemented")
}

// sum is a node for a length of the line.
func sum(title string, l system.Linear) *working.Node {
	in := make([]working.Input, len(l.Terms))
	factors := make([]float64, len(l.Terms))
	for i, t := range l.Terms {
		in[i] = working.In("l", working.File("length or height in the line", t.Number))
		factors[i] = t.Factor
	}
	return working.Step(title, quantity.Length, "sum of lengths of the file", "", func(x []float64) (float64, string) {
		z := 0.0
		for i := range x {
			z += factors[i] * x[i]
		}
		return z, ""
	}, in...)
}

// takeoff is the length of a fitting from its middle to the bottom of its socket: after the table, else by the rule.
func (v *surveyor) takeoff(p, pipe *system.Piece) *working.Node {
	title := "middle of the " + p.Kind + " to the bottom of its socket"
	angle := working.Fixed("turn of a tee's branch", quantity.Angle, math.Pi/2, "geometry")
	if p.Bend != nil {
		angle = working.File("angle of the "+p.Kind, p.Bend.Angle)
	}
	plain := p.Kind != "sweep" && (p.Bend == nil || !p.Bend.Radius.Given())
	if row, ok := v.listedTakeoff(pipe.Pipe); ok && plain {
		turn, _ := angle.Value()
		for at, g := range map[float64]float64{90: row.Elbow90.Value, 45: row.Elbow45.Value} {
			if g > 0 && math.Abs(turn.X-at*math.Pi/180) < 0.01 {
				return working.Row(title, quantity.Length, working.Within(g, g-2*millimetre, g+2*millimetre), "", row.Source, string(row.Sure))
			}
		}
	}
	key := "elbow_takeoff_inch"
	if pipe.Pipe != nil && v.t.Metric(pipe.Pipe.Standard.Text()) {
		key = "elbow_takeoff_metric"
	}
	in := []working.Input{working.In("OD", outside(pipe.Pipe, pipe)), working.In("a", angle),
		working.In("t", v.t.Assume(key, "what the maker of fittings adds to half the pipe", quantity.Length, p.Pointer))}
	switch {
	case p.Bend != nil && p.Bend.Radius.Given():
		in = append(in, working.In("r", working.File("radius of the "+p.Kind, p.Bend.Radius)))
	case p.Kind == "sweep":
		ratio := v.t.Assume("sweep_radius_ratio", "radius of a sweep over its bore", quantity.Number, p.Bend.Radius.Pointer())
		in = append(in, working.In("r", working.Step("radius of the sweep", quantity.Length, "ratio D", "", func(x []float64) (float64, string) { return x[0] * x[1], "" },
			working.In("ratio", ratio), working.In("D", bore(pipe)))))
	}
	return working.Step(title, quantity.Length, "max(OD/2, r) tan(a/2) + t", "ISO 264 pattern", func(x []float64) (float64, string) {
		r := 0.0
		if len(x) > 3 {
			r = x[3]
		}
		return TakeOff(x[0], r, x[1], x[2])
	}, in...)
}

func bore(p *system.Piece) *working.Node {
	if p.Pipe == nil {
		return working.Unknown("bore", quantity.Length, p.Line.Pointer+"/pipe", "")
	}
	return pipe(p, "inside")
}

func (v *surveyor) listedTakeoff(p *system.Pipe) (tables.Takeoff, bool) {
	if p == nil {
		return tables.Takeoff{}, false
	}
	return v.t.Takeoff(p.Standard.Text(), p.Size.Text())
}

// socket is the depth of the socket that a pipe goes into: measured, else the least of its standard.
func (v *surveyor) socket(p *system.Piece) *working.Node {
	const title = "depth of the socket"
	if p.Pipe == nil {
		return working.Unknown(title, quantity.Length, p.Line.Pointer+"/pipe", "")
	}
	stated := v.Number(p.Pipe.Pointer+"/socket", quantity.Length)
	if stated.Given() {
		return working.File(title, stated)
	}
	row, ok := v.t.SocketFor(p.Pipe.Standard.Text(), p.Pipe.Size.Text())
	if !ok {
		return working.Unknown(title, quantity.Length, stated.Pointer(), "")
	}
	return working.Row(title, quantity.Length, working.Exactly(row.Depth), p.Pipe.Pointer, row.Source, string(row.Sure))
}
