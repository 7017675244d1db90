package making

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// drain is a drain on the floor, the cuff that holds it, and the hole it leads to.
type drain struct {
	stands, sleeve, wall *system.Piece
	clipped              bool
	beyond               *system.Piece // the pipe that follows the wall
}

// drains enters the mechanics of every drain that stands on a floor.
func (v *surveyor) drains() {
	v.l.Put("cuffed_drains")
	v.l.Put("floor_drains")
	for _, line := range v.Lines {
		d := drain{}
		for _, p := range line.Pieces {
			switch {
			case p.Kind == "floor_drain":
				d.stands = p
			case p.Kind == "cuff" && d.stands != nil && d.wall == nil:
				d.sleeve = p
			case p.Kind == "through" && d.stands != nil && d.wall == nil:
				d.wall = p
			case d.wall != nil && d.beyond == nil: // a clip behind the next fitting holds that, and not the spigot
				d.beyond = p
				if p.Run != nil {
					on, given := p.Run.Clipped.On()
					d.clipped = given && on
				}
			}
		}
		if d.stands == nil {
			continue
		}
		v.l.Put("floor_drains", d.stands.ID())
		v.standoff(d)
		if d.sleeve != nil && d.wall != nil {
			v.l.Put("cuffed_drains", d.stands.ID())
			v.l.Relate("wall_of_drain", d.stands.ID(), d.wall.ID())
			v.preload(d)
		}
		v.gap(d)
	}
}

func (v *surveyor) standoff(d drain) {
	f := d.stands.FloorDrain
	v.work(always(d.stands.ID(), "standoff_share"), f.Standoff.Pointer(), func(x []float64) (float64, string) {
		return CurtainShare(x[0], x[1]*x[2]/(math.Pi*x[4]), x[3])
	},
		working.In("s", working.File("stand-off", f.Standoff)),
		working.In("n", working.File("number of feet", f.FeetCount)),
		working.In("w", working.File("width of a foot", f.FootWidth)),
		working.In("D", pipe(d.stands, "inside")),
		working.In("flange", working.File("diameter of the flange, on which the feet stand", f.Flange)))
}

func (v *surveyor) preload(d drain) {
	f, c, id := d.stands.FloorDrain, d.sleeve.Cuff, d.stands.ID()
	span := working.In("g", working.File("free span of the cuff", c.Span))
	offset := working.In("d", v.work(always(id, "drain_offset"), d.wall.Through.At.Pointer(), difference,
		working.In("tail", working.File("height of the drain's tail", f.TailAt)),
		working.In("hole", working.File("height of the hole", d.wall.Through.At))))
	v.work(always(id, "drain_offset_ratio"), d.wall.Through.At.Pointer(), func(x []float64) (float64, string) {
		if x[1] <= 0 {
			return math.NaN(), "the cuff has no span"
		}
		return x[0] / x[1], ""
	}, offset, span)

	in := []working.Input{offset, span,
		working.In("OD", pipe(d.stands, "outside")),
		working.In("w", working.File("wall of the cuff", c.Wall)),
		working.In("b", working.File("tail end to the near edge of the foot", f.NearEdge)),
		working.In("E", young(working.File("hardness of the cuff", c.Hardness))),
		working.In("1/k", v.give(d)),
	}
	cuff := func(x []float64) Cuff {
		return Cuff{Span: x[1], PipeOutside: x[2], Wall: x[3], ToFoot: x[4], Young: x[5], WallSpring: 1 / x[6]}
	}
	force := v.work(always(id, "cuff_force"), d.sleeve.Pointer, func(x []float64) (float64, string) {
		return cuff(x).Force(x[0])
	}, in...)
	tilt := v.work(always(id, "drain_tilt"), d.sleeve.Pointer, func(x []float64) (float64, string) {
		push, why := cuff(x).Force(x[0])
		return cuff(x).Tilt(push), why
	}, in...)
	left := v.t.Assume("cuff_force_left", "share of the push left once the rubber has relaxed", quantity.Number, d.sleeve.Pointer+"/cuff/relaxed")
	v.work(always(id, "cuff_force_left"), d.sleeve.Pointer, func(x []float64) (float64, string) {
		return ForceLeft(x[1], x[0], x[2]), ""
	}, working.In("s", left), working.In("F", force),
		working.In("W", working.File("weight of the drain in water", f.WeightInWater)))
	v.hold(d, force, tilt, left)
}

// young is the modulus of rubber of a hardness: the middle of two relations, both kept as its spread.
func young(hardness *working.Node) *working.Node {
	between := working.Row("between the softer and the stiffer relation", quantity.Number, working.Within(0.5, 0, 1), "",
		"Gent 1958 (from memory) and the Ruess relation differ by a factor of 1.6 at 60 Shore A", "published")
	return working.Step("Young's modulus of the cuff", quantity.Stress, "E_Gent^(1-s) E_Ruess^s", "Gent 1958; Ruess", func(x []float64) (float64, string) {
		low, why := YoungLow(x[0])
		high, _ := YoungHigh(x[0])
		return math.Pow(low, 1-x[1]) * math.Pow(high, x[1]), why
	}, working.In("S", hardness), working.In("s", between))
}

// give is how far the spigot in the wall turns for each newton metre: not at all
// where the pipe outside is clipped.
func (v *surveyor) give(d drain) *working.Node {
	const title = "give of the wall seal, 1/k"
	if d.clipped {
		return working.Fixed(title, quantity.Number, 0, "the pipe outside is clipped")
	}
	stiff := v.t.Assume("seal_stiffness_unclipped", "turning stiffness of the wall seal", quantity.Number, d.wall.Pointer)
	return working.Step(title, quantity.Number, "1/k", "", func(x []float64) (float64, string) { return 1 / x[0], "" },
		working.In("k", stiff))
}

func difference(x []float64) (float64, string) { return x[0] - x[1], "" }

// pipe is the inside or outside diameter of the pipe of a piece.
func pipe(p *system.Piece, which string) *working.Node {
	title := which + " diameter"
	if p.Pipe == nil {
		return working.Unknown(title, quantity.Length, p.Line.Pointer+"/pipe", "")
	}
	d := p.Pipe.Inside
	if which == "outside" {
		d = p.Pipe.Outside
	}
	return working.Row(title+" of "+p.Pipe.ID, quantity.Length, working.Exactly(d), p.Pipe.Pointer, p.Pipe.Source, "")
}
