package loop

import (
	"dryfit/internal/pipeflow"
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// tight is the ways of joining that hold water under a metre or two of head.
var tight = []string{"cemented", "welded", "taped-thread", "ring-seal", "compression", "bolted"}

// joints enters, for each joint of a line that comes down by gravity, what presses on it and whether it holds.
func (v *surveyor) joints() {
	for _, line := range v.Lines {
		vessel, ok := top(line)
		if !ok || line.Pumped || line.Duty == "vent" || line.Duty == "rain" {
			continue
		}
		for i, p := range line.Pieces {
			if i > 0 && p.In == nil && line.Pieces[i-1].In == nil && p.Kind != "siphon_break" {
				v.l.Put("outside_joints", p.ID())
				tight := v.watertight(p)
				if slides := v.slides(line.Pieces[i-1], p); slides || !tight {
					v.pressed(p, vessel, slides)
				}
			}
			if p.In != nil && p.In == line.To.Vessel && line.To.Part == "well" && p.Outlet == nil {
				v.l.Put("inlet_joints", p.ID())
				v.inside(p)
			}
		}
	}
}

// pressed enters the head on a joint that is not known to be tight, or that slides, when the line is blocked behind it: the
// water then stands at the rim of the vessel above. Of one that slides it enters the thrust too.
func (v *surveyor) pressed(p *system.Piece, vessel *system.Vessel, slides bool) {
	always := func(name string) working.Address {
		return working.Address{Subject: p.ID(), Name: name, Case: working.Always}
	}
	h := v.work(always("joint_head"), p.Pointer, func(x []float64) (float64, string) { return x[0] - x[1], "" },
		working.In("rim", v.rim(vessel)), working.In("z", v.linear("height of the joint", p.From)))
	if !slides {
		return
	}
	outside := working.Unknown("outside diameter", quantity.Length, p.Line.Pointer+"/pipe", "")
	if p.Pipe != nil {
		outside = working.Unknown("outside diameter of "+p.Pipe.ID, quantity.Length, p.Pipe.Pointer, "")
		if p.Pipe.Outside > 0 {
			outside = working.Row("outside diameter of "+p.Pipe.ID, quantity.Length, working.Exactly(p.Pipe.Outside), p.Pipe.Pointer, p.Pipe.Source, "")
		}
	}
	v.work(always("joint_thrust"), p.Pointer, func(x []float64) (float64, string) {
		y, valid := pipeflow.JointThrust(x[0], x[1], x[2])
		return sure(y, valid), ""
	}, working.In("h", h), working.In("OD", outside), working.In("rho", working.Fixed("density of water", quantity.Concentration, 1000, "rounded; Kell 1975 has 999.97 at 4 degC")))
}

// watertight notes, and says, whether the joint between a piece and the one before it holds water.
func (v *surveyor) watertight(p *system.Piece) bool {
	f := working.Fact{Subject: p.ID(), Name: "joint_watertight", Word: "no", At: p.Pointer}
	before := p.Line.Pieces[p.Index-1]
	joint, given := p.Joint.Value()
	switch sleeve := sleeveOf(before, p); {
	case sleeve != nil:
		f.Word, f.Missing = v.clamped(sleeve)
	case p.Kind == "union" || before.Kind == "union" && joint == "":
		f.Word = "yes"
	case !given:
		f.Word, f.Missing = "", []string{p.Joint.Pointer()}
	case p.Joint.Is(tight...):
		f.Word = "yes"
	case p.Joint.Is("clamped", "cuff"): // a hose on its spigot, or a cuff that is no piece of its own
		f.Word = "yes"
	}
	v.l.Note(f)
	return f.Word == "yes"
}

// sleeveOf is the cuff or hose by which two pieces are joined; nil if there is none.
func sleeveOf(before, after *system.Piece) *system.Piece {
	for _, p := range []*system.Piece{after, before} {
		if p.Cuff != nil || p.Hose != nil {
			return p
		}
	}
	return nil
}

// clamped says whether a cuff or hose has clamps.
func (v *surveyor) clamped(p *system.Piece) (word string, missing []string) {
	clamps := v.Word(p.Value + "/clamps")
	class, given := clamps.Value()
	switch {
	case !given:
		return "", []string{clamps.Pointer()}
	case class == "none":
		return "no", nil
	}
	return "yes", nil
}

// slides notes, and says, whether a joint at a turn may slide apart under its thrust, and notes whether a clip holds it.
func (v *surveyor) slides(before, p *system.Piece) bool {
	turn := p
	switch {
	case turns(p):
	case turns(before):
		turn = before
	default:
		return false
	}
	v.l.Put("turn_joints", p.ID())
	ring := working.Fact{Subject: p.ID(), Name: "joint_slides", Word: "no", At: p.Pointer}
	if _, given := p.Joint.Value(); !given {
		ring.Word, ring.Missing = "", []string{p.Joint.Pointer()}
	} else if p.Joint.Is("ring-seal") {
		ring.Word = "yes"
	}
	v.l.Note(ring)
	held := working.Fact{Subject: p.ID(), Name: "thrust_held", Word: "no", At: p.Pointer}
	for _, one := range []*system.Piece{turn, p} {
		clip := v.Switch(one.Value + "/clipped")
		on, given := clip.On()
		switch {
		case on:
			held.Word, held.Missing = "yes", nil
			v.l.Note(held)
			return ring.Word != "no"
		case !given && one == turn:
			held.Word, held.Missing = "", []string{clip.Pointer()}
		}
	}
	v.l.Note(held)
	return ring.Word != "no"
}

// inside notes whether a joint of an inlet inside a settler may fall apart: then the water goes past the well.
func (v *surveyor) inside(p *system.Piece) {
	f := working.Fact{Subject: p.ID(), Name: "inlet_joint_holds", Word: "yes", At: p.Pointer}
	if joint, given := p.Joint.Value(); !given {
		f.Word, f.Missing = "", []string{p.Joint.Pointer()}
	} else if joint == "uncemented" {
		f.Word = "no"
	}
	v.l.Note(f)
}

// sleeves notes for every hose and cuff whether it has clamps.
func (v *surveyor) sleeves() {
	for _, line := range v.Lines {
		for _, p := range line.Pieces {
			if p.Cuff == nil && p.Hose == nil {
				continue
			}
			v.l.Put("sleeves", p.ID())
			word, missing := v.clamped(p)
			v.l.Note(working.Fact{Subject: p.ID(), Name: "clamps_fitted", Word: word, At: p.Pointer, Missing: missing})
		}
	}
}

// apart notes, for what has to be cleaned, whether it comes out of its line without a saw: pumps, guards that take water
// from a vessel, and the inlets of settlers.
func (v *surveyor) apart() {
	note := func(p *system.Piece, at, word string, missing []string) {
		v.l.Put("to_be_cleaned", p.ID())
		if word != "" {
			missing = nil
		}
		v.l.Note(working.Fact{Subject: p.ID(), Name: "comes_apart", Word: word, At: at, Missing: missing})
	}
	for _, line := range v.Lines {
		last := len(line.Pieces) - 1
		for i, p := range line.Pieces {
			switch guard := p.Value + "/guard"; {
			case p.Pump != nil:
				word, missing := both(line, i)
				note(p, p.Pointer, word, missing)
			case i == 0 && len(v.Keys(guard)) > 0:
				off := v.Switch(guard + "/comes_off")
				on, given := off.On()
				word := ""
				if given {
					word = yesNo(on)
				}
				if last > 0 && released(line.Pieces[1]) {
					word = "yes" // guard and mouth pull off together
				}
				note(p, guard, word, []string{off.Pointer()})
			case i == last && p.Outlet != nil && line.To.Part == "well":
				word, missing := releasedInside(line, i)
				note(p, p.Pointer, word, missing)
			}
		}
	}
}

// both says whether a line comes apart on both sides of a piece before it is held by a wall or a rim; a free end counts.
func both(line *system.Line, i int) (string, []string) {
	fixed := func(p *system.Piece) bool { return p.Through != nil || p.Over != nil }
	var missing []string
	word := "yes"
	for _, step := range []int{-1, 1} {
		free, unsaid := true, []string(nil)                                 // the end of the line is free
		for k := i + (step+1)/2; k > 0 && k < len(line.Pieces); k += step { // the joint between pieces k-1 and k
			p := line.Pieces[k]
			if _, given := p.Joint.Value(); !given {
				unsaid = append(unsaid, p.Joint.Pointer())
			}
			if released(p) || p.Joint.Is("uncemented") {
				break
			}
			if fixed(line.Pieces[k+(step-1)/2]) {
				free = false
				break
			}
		}
		if !free {
			word, missing = "no", append(missing, unsaid...)
		}
	}
	if word == "no" && len(missing) > 0 {
		return "", missing
	}
	return word, nil
}

// releasedInside says whether a line comes apart between the wall of the vessel that it ends in and its end.
func releasedInside(line *system.Line, last int) (string, []string) {
	var missing []string
	for k := last; k >= 0; k-- {
		p := line.Pieces[k]
		if p.In != line.To.Vessel || p.In == nil {
			if k < last && released(p) {
				return "yes", nil
			}
			break
		}
		if released(p) {
			return "yes", nil
		}
		if _, given := p.Joint.Value(); !given {
			missing = append(missing, p.Joint.Pointer())
		}
	}
	if len(missing) > 0 {
		return "", missing
	}
	return "no", nil
}

func yesNo(yes bool) string {
	if yes {
		return "yes"
	}
	return "no"
}
