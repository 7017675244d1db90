package report

import (
	"math"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
)

// pieceWords says a piece as it stands in the levelling table: "bend 45, pinned".
func pieceWords(p *system.Piece, in quantity.System) string {
	words := kindWords(p, in)
	if joint, given := p.Joint.Value(); given && !lineJoint(p, joint) && p.Run == nil && joint != p.Kind {
		words += ", " + hyphenless(joint)
	}
	return words
}

// lineJoint says that the joint is the one that the head of the line names.
func lineJoint(p *system.Piece, joint string) bool {
	of, given := p.Line.Joints.Value()
	return given && of == joint
}

func kindWords(p *system.Piece, in quantity.System) string {
	switch {
	case p.Intake != nil:
		if g := p.Intake.Guard; g != nil {
			if n, given := g.Slots.SI(); given {
				return "intake, " + fixed(n, 0) + " slots"
			}
		}
		return "intake"
	case p.FloorDrain != nil:
		if up, given := p.FloorDrain.Standoff.SI(); given {
			return "drain, " + heightShown(up, in) + " off the floor"
		}
		return "drain on the floor"
	case p.Standpipe != nil:
		if crest, known := p.From.Value(); known {
			return "standpipe, crest at " + heightShown(crest, in)
		}
		return "standpipe"
	case p.Run != nil:
		return runWords(p, in)
	case p.Bend != nil:
		return p.Kind + angleWords(p.Bend.Angle)
	case p.Tee != nil:
		return teeWords(p)
	case p.Valve != nil:
		return valveWords(p.Valve)
	case p.Through != nil:
		return throughWords(p)
	case p.Over != nil:
		if rim, given := p.Over.RimOf.Value(); given {
			return "over the rim of the " + rim
		}
		return "over a rim"
	case p.Cuff != nil:
		return "cuff" + measure(p.Cuff.Span, " over ", in)
	case p.Hose != nil:
		return "hose" + measure(p.Hose.Length, " ", in)
	case p.Pump != nil:
		return "pump " + p.Pump.ID
	case p.Outlet != nil:
		words := "outlet"
		if facing, given := p.Outlet.Facing.Value(); given {
			words += ", facing " + facing
		}
		return words + measure(p.Outlet.Nozzle, ", nozzle ", in)
	case p.Kind == "reducer" && p.Pipe != nil:
		return "reducer to " + p.Pipe.ID
	}
	return strings.ReplaceAll(p.Kind, "_", " ")
}

// runWords says straight pipe. What was worked out from the heights is marked.
func runWords(p *system.Piece, in quantity.System) string {
	words := p.Kind
	if p.Kind == "slope" {
		words += angleWords(p.Run.Angle)
		if p.Run.Down {
			words += " down,"
		} else {
			words += " up,"
		}
	}
	return words + lengthWords(p, in)
}

func lengthWords(p *system.Piece, in quantity.System) string {
	length, known := p.Length.Value()
	switch {
	case !known:
		return " ?"
	case p.Fitted:
		return " " + heightShown(length, in) + " (fit)"
	}
	return " " + heightShown(length, in)
}

func angleWords(n system.Number) string {
	angle, given := n.SI()
	if !given {
		return ""
	}
	return " " + inUnit(quantity.Angle, angle, "deg", 0)
}

func measure(n system.Number, before string, in quantity.System) string {
	x, given := n.SI()
	if !given {
		return ""
	}
	return before + heightShown(x, in)
}

func teeWords(p *system.Piece) string {
	words := "tee"
	if id, given := p.Tee.ID.Value(); given {
		words += " " + id
	}
	if n, given := p.Tee.Count.SI(); given && n > 1 {
		words = fixed(n, 0) + " tees in a row"
	}
	if p.Tee.Way.Is("turn") {
		words += ", turning"
	}
	switch third, _ := p.Tee.Third.Value(); third {
	case "vent":
		words += ", open vent"
	case "cap":
		words += ", capped"
	case "air":
		words += ", takes air"
	}
	return words
}

func valveWords(v *system.Valve) string {
	words := "valve"
	if kind, given := v.Kind.Value(); given {
		words = hyphenless(kind) + " valve"
	}
	open, given := v.Open.SI()
	switch {
	case given && open <= 0:
		words += ", shut"
	case given && open < 1:
		words += ", " + inUnit(quantity.Fraction, open, "%", 0) + " % open"
	default:
		words += ", open"
	}
	if _, locked := v.Locked.Value(); locked {
		words += " and locked"
	}
	return words
}

func throughWords(p *system.Piece) string {
	if floor, given := p.Through.FloorOf.Value(); given {
		return "through the floor of the " + floor
	}
	if wall, given := p.Through.WallOf.Value(); given {
		return "through the " + wall + " wall"
	}
	return "through a wall"
}

func hyphenless(word string) string { return strings.ReplaceAll(word, "-", " ") }

// shortWords names a piece in a title: "bend 45 at 660".
func shortWords(p *system.Piece, in quantity.System) string {
	words, _, _ := strings.Cut(kindWords(p, in), ",")
	if z, known := p.From.Value(); known && !math.IsNaN(z) {
		words += " at " + heightShown(z, in)
	}
	return words
}

// endWords says where a line starts or stops.
func endWords(e system.End) string {
	switch {
	case e.Vessel != nil && e.Part != "":
		return "the " + own(e.Vessel.ID) + " " + hyphenless(e.Part)
	case e.Vessel != nil:
		return "the " + e.Vessel.ID
	case e.Line != nil:
		return "the tee " + e.Tee + " of " + e.Line.ID
	case e.Outer == "bucket":
		return "a bucket"
	case e.Outer == "outside":
		return "the outside"
	case e.Outer == "mains":
		return "the mains"
	}
	return "an open end"
}
