package system

import (
	"fmt"
	"math"
)

const (
	flat      = 0.0
	plumb     = math.Pi / 2
	turnSlack = 2 * math.Pi / 180 // fittings and files are rounded
)

// elevation is the angle from the level at which the water runs in a straight
// piece, up positive; false when the piece has no direction of its own or it is not known.
func (p *Piece) elevation() (float64, bool) {
	switch {
	case p.Kind == "across", p.FloorDrain != nil, p.Over != nil:
		return flat, true
	case p.Kind == "rise":
		return plumb, true
	case p.Kind == "fall", p.upright():
		return -plumb, true
	case p.Kind == "slope":
		angle, given := p.Run.Angle.si, p.Run.Angle.given
		if p.Run.Down {
			angle = -angle
		}
		return angle, given
	case p.Through != nil && p.Through.WallOf.given:
		return flat, true
	case p.Through != nil && p.Through.LidOf.given:
		switch v := p.Through.Vessel; {
		case v == nil || p.Line.From.Vessel == p.Line.To.Vessel:
			return 0, false
		case v == p.Line.From.Vessel:
			return plumb, true
		case v == p.Line.To.Vessel:
			return -plumb, true
		}
	case p.Through != nil && p.Through.FloorOf.given:
		switch v := p.Through.Vessel; {
		case v == nil || p.Line.From.Vessel == p.Line.To.Vessel:
			return 0, false
		case v == p.Line.From.Vessel:
			return -plumb, true
		case v == p.Line.To.Vessel:
			return plumb, true
		}
	case p.Outlet != nil:
		return facing(p.Outlet.Facing, 1)
	case p.Intake != nil:
		return facing(p.Intake.Facing, -1)
	}
	return 0, false
}

// facing is the direction of the water at an open end: out of it (1) or into it (-1).
func facing(w Word, way float64) (float64, bool) {
	word, given := w.Value()
	e, ok := map[string]float64{"up": plumb, "down": -plumb, "level": flat}[word]
	return e * way, ok && given
}

// turnOf is the angle by which the water turns in a piece.
func turnOf(p *Piece) float64 {
	switch {
	case p.Bend != nil:
		return p.Bend.Angle.si
	case p.Tee != nil && p.Tee.Way.text == "turn":
		return plumb
	}
	return 0
}

// turns says whether a piece may change the direction of the water.
func (p *Piece) turns() bool {
	return p.Bend != nil || p.Tee != nil && p.Tee.Way.text != "through" || p.Hose != nil || p.Pump != nil
}

// free says whether a piece may turn the water by any angle: nothing is said of its turn.
func (p *Piece) free() bool {
	return p.Hose != nil || p.Pump != nil || p.unknown() || p.Bend != nil && !p.Bend.Angle.given || p.Tee != nil && !p.Tee.Way.given
}

// directionAfter is the direction in which the water moves on after a piece:
// its own, else that of the next straight piece with no turn in between.
func (l *Line) directionAfter(i int) (float64, bool) {
	if e, ok := l.Pieces[i].elevation(); ok {
		return e, true
	}
	for k := i + 1; k < len(l.Pieces) && !l.Pieces[k].turns(); k++ {
		if e, ok := l.Pieces[k].elevation(); ok {
			return e, true
		}
	}
	for k := i; k > 0 && !l.Pieces[k].turns(); k-- {
		if e, ok := l.Pieces[k-1].elevation(); ok {
			return e, true
		}
	}
	return 0, false
}

// elevationNear is the direction in which a row of tees lies: that of the
// straight piece before it, or after it, with no turn in between; else level.
func (l *Line) elevationNear(i int) float64 {
	for k := i - 1; k >= 0 && !l.Pieces[k].turns(); k-- {
		if e, ok := l.Pieces[k].elevation(); ok {
			return e
		}
	}
	for k := i + 1; k < len(l.Pieces) && !l.Pieces[k].turns(); k++ {
		if e, ok := l.Pieces[k].elevation(); ok {
			return e
		}
	}
	return flat
}

// turns holds each change of direction along a line against the bends, tees,
// hoses and pumps that stand there. The plan is not known, so two directions at
// elevations e1 and e2 enclose any angle from |e1-e2| to 180 deg - |e1+e2|; bends
// in a row can be turned about the pipe and make any angle up to their sum.
func (w *walker) turns(l *Line) {
	var before *Piece // the last piece with a direction
	var bends []float64
	free := true // whether any direction may follow
	for _, p := range l.Pieces {
		free = free || p.free()
		if turn := turnOf(p); turn > 0 {
			bends = append(bends, turn)
		}
		e, ok := p.elevation()
		if w.ps.broken[p.Pointer] || !ok && (p.Run != nil || p.Through != nil) {
			before, free = nil, true // its own direction is not known
			continue
		}
		if !ok {
			continue
		}
		if before != nil && !free {
			w.turn(before, p, bends, e)
		}
		before, bends, free = p, nil, false
	}
}

func (w *walker) turn(before, after *Piece, bends []float64, e2 float64) {
	e1, _ := before.elevation()
	least, most := math.Abs(e1-e2), math.Pi-math.Abs(e1+e2)
	sum, longest := 0.0, 0.0
	for _, b := range bends {
		sum, longest = sum+b, max(longest, b)
	}
	low, high := max(0, 2*longest-sum), min(math.Pi, sum)
	if high >= least-turnSlack && low <= most+turnSlack {
		return
	}
	span := degrees(least)
	if most-least > turnSlack {
		span = "between " + fmt.Sprintf("%.0f", least*180/math.Pi) + " and " + degrees(most)
	}
	if len(bends) == 0 {
		w.ps.add(after.Pointer, fmt.Sprintf("a turn without a bend, from %s to %s", heading(e1), heading(e2)),
			"put a bend, tee or hose before it that turns "+span)
		return
	}
	write := "this takes a turn of " + span
	if most < turnSlack {
		write = "take out what turns: the pipe goes straight on here"
	}
	w.ps.add(after.Pointer, fmt.Sprintf("bends of %s together, from %s to %s", degrees(sum), heading(e1), heading(e2)), write)
}

func degrees(rad float64) string { return fmt.Sprintf("%.0f deg", rad*180/math.Pi) }

// heading names a direction in words.
func heading(e float64) string {
	switch {
	case math.Abs(e) < turnSlack:
		return "level"
	case e > plumb-turnSlack:
		return "straight up"
	case e < turnSlack-plumb:
		return "straight down"
	case e > 0:
		return "up at " + degrees(e)
	}
	return "down at " + degrees(-e)
}
