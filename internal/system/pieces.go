package system

import (
	"math"

	"dryfit/internal/quantity"
)

func readLine(id string, c cursor) *Line {
	l := &Line{
		ID: id, Pointer: c.pointer, Duty: "flow",
		From: End{Pointer: c.get("from").pointer}, To: End{Pointer: c.get("to").pointer},
		Carries: c.get("carries").word(),
		Joints:  c.get("joints").word(),
		Made:    c.get("pipe").word(),
		DutyAt:  c.get("duty").word(),
		from:    c.get("from").word(), to: c.get("to").word(),
	}
	if duty, given := l.DutyAt.Value(); given {
		l.Duty = duty
	}
	c.get("pieces").items(func(i int, item cursor) {
		p := readPiece(item)
		p.Line, p.Index = l, i
		if p.Joint.pointer == "" || !p.Joint.given && l.Joints.given {
			p.Joint = l.Joints
		}
		l.Pumped = l.Pumped || p.Kind == "pump"
		l.Pieces = append(l.Pieces, p)
	})
	return l
}

// readPiece reads one piece; see the notation of each kind in the schema.
func readPiece(item cursor) *Piece {
	kind, c := item.only()
	p := &Piece{Kind: kind, Pointer: item.pointer, Value: c.pointer, Joint: c.get("joint").word()}
	switch kind {
	case "intake":
		p.Intake = &Intake{At: c.get("at").length(), Facing: c.get("facing").word(), Guard: readGuard(c.get("guard"))}
	case "floor_drain":
		p.FloorDrain = &FloorDrain{
			Flange: c.get("flange").length(), Standoff: c.get("standoff").length(), TailAt: c.get("tail_at").length(),
			NearEdge: c.get("near_edge").length(), FootReach: c.get("foot_reach").length(),
			FeetCount: c.at("feet", "count").count(), FootWidth: c.at("feet", "width").length(),
			WeightInWater: c.get("weight_in_water").number(quantity.Force),
		}
		if screws := c.get("fixings"); screws.given() {
			p.FloorDrain.Fixings = readFixings(screws)
		}
	case "standpipe":
		p.Standpipe = &Standpipe{CrestAt: c.get("crest_at").length()}
	case "bell_siphon":
		bell, snorkel := c.get("bell"), c.get("snorkel")
		p.BellSiphon = &BellSiphon{
			CrestAt: c.get("crest_at").length(),
			Inside:  bell.get("inside").length(), TopAt: bell.get("top_at").length(), FootAt: bell.get("foot_at").length(),
			SnorkelInside: snorkel.get("inside").length(), SnorkelEndAt: snorkel.get("ends_at").length(),
		}
	case "siphon_break":
		p.SiphonBreak = &SiphonBreak{Count: c.get("count").count(), Bore: c.get("bore").length(), At: c.get("at").length()}
	case "across", "rise", "fall", "slope":
		p.Run, p.Made = readRun(kind, c), c.get("pipe").word()
	case "bend", "sweep":
		p.Bend = &Bend{Angle: c.short("angle").number(quantity.Angle), Radius: c.get("radius").length()}
	case "tee":
		p.Tee = &Tee{
			ID: c.get("id").word(), At: c.get("at").length(), Way: c.get("way").word(), Third: c.get("third").word(),
			TopAt: c.get("top_at").length(), Count: c.get("count").count(), Every: c.get("every").length(),
		}
	case "valve":
		p.Valve = &Valve{
			Kind: c.short("kind").word(), Open: c.get("open").number(quantity.Fraction),
			Bore: c.get("bore").length(), Locked: c.get("locked").word(),
		}
	case "through":
		p.Through = readThrough(c)
	case "over":
		p.Over = &Over{RimOf: c.get("rim_of").word(), At: c.get("at").length()}
	case "cuff":
		p.Cuff = &Cuff{
			Inside: c.get("inside").length(), Span: c.get("span").length(), Wall: c.get("wall").length(),
			Hardness: c.get("hardness").number(quantity.Hardness), Clamps: c.get("clamps").word(),
		}
	case "hose":
		p.Hose = &Hose{Length: c.short("length").length(), Inside: c.get("inside").length(), Clamps: c.get("clamps").word()}
	case "outlet":
		p.Outlet = &Outlet{
			At: c.get("at").length(), Facing: c.get("facing").word(),
			Nozzle: c.get("nozzle").length(), Cap: c.get("cap").word(), Holes: readHoles(c.get("holes")),
		}
	case "pump":
		p.names = c.word()
	case "reducer":
		p.names = c.short("to").word()
	}
	return p
}

// readRun reads straight pipe: its length along the pipe or, of a slope, its climb.
func readRun(kind string, c cursor) *Run {
	r := &Run{Clipped: c.get("clipped").toggle()}
	if kind != "slope" {
		length := c.short("length")
		r.Length, r.Fit = length.length(), length.is("fit")
		if r.Fit {
			length.leaf().look()
		}
		return r
	}
	r.Angle = c.get("angle").number(quantity.Angle)
	if gradient := c.get("gradient").number(quantity.Fraction); gradient.given && !r.Angle.given {
		gradient.kind, gradient.si = quantity.Angle, math.Atan(gradient.si)
		r.Angle = gradient
	}
	r.Length = c.get("length").length()
	r.Down = c.get("way").is("down")
	for _, way := range []string{"rise", "fall"} {
		if climb := c.get(way); climb.given() {
			r.Height, r.Down, r.Fit = climb.length(), way == "fall", climb.is("fit")
			if r.Fit {
				r.Length = r.Height
			}
			if r.Fit {
				climb.leaf().look()
			}
		}
	}
	c.get("way").leaf().look()
	return r
}

func readHoles(c cursor) *Holes {
	if !c.given() {
		return nil
	}
	return &Holes{Count: c.get("count").count(), Bore: c.get("bore").length(), Every: c.get("every").length()}
}

func readGuard(c cursor) *Guard {
	if !c.given() {
		return nil
	}
	return &Guard{
		Slots: c.get("slots").count(), Width: c.get("width").length(), Length: c.get("length").length(),
		Holes: c.get("holes").count(), Area: c.get("area").number(quantity.Area),
	}
}

func readThrough(c cursor) *Through {
	t := &Through{
		WallOf: c.get("wall_of").word(), FloorOf: c.get("floor_of").word(), LidOf: c.get("lid_of").word(),
		At: c.get("at").length(), Projects: c.get("projects").length(),
	}
	hole := c.at("seal", "hole")
	for _, way := range []string{"seal", "bulkhead"} {
		if c.get(way).given() {
			t.Seal, hole = way, c.at(way, "hole")
		}
	}
	t.Hole = hole.length()
	return t
}
