package making

import (
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// end is one end of a straight pipe: how much the fitting there takes off it, and how deep it goes in.
type end struct {
	takeoff, socket *working.Node
	socketed        bool // it goes into a fitting
	solvent         bool // in a socket for cement, of the depth of its standard
}

// free is an end in no fitting.
func free() end {
	none := working.Fixed("no fitting", quantity.Length, 0, "an open end")
	return end{takeoff: none, socket: none}
}

// end works out the end of a pipe at a fitting; at none, at the tee of another line that the line starts or ends at.
func (b *lister) end(p *system.Piece, at system.End, pipe *system.Piece, joint system.Word) end {
	if p == nil && at.Line != nil {
		p = at.Line.Tee(at.Tee)
	}
	if p == nil || openEnd(p) || p.Cuff != nil || p.Hose != nil {
		return free()
	}
	e := end{socketed: true, solvent: solvent(joint) && socketed(p)}
	e.socket = working.Unknown("depth of the socket", quantity.Length, "", "measure how deep the pipe goes into the "+plain(p))
	if e.solvent {
		e.socket = b.socket(pipe)
	}
	const title = "middle of the fitting to the bottom of its socket"
	switch {
	case elbow(p) && e.solvent:
		e.takeoff = b.takeoff(p, pipe)
	case elbow(p):
		e.takeoff = working.Unknown(title, quantity.Length, "", "measure the "+plain(p)+": the tables know only fittings for cement")
	case p.Through != nil:
		e.takeoff = working.Unknown(title, quantity.Length, "", "measure the bulkhead fitting: from the wall to the bottom of its socket")
	default:
		e.takeoff = working.Unknown(title, quantity.Length, "", "measure the "+plain(p)+": from its middle to the bottom of its socket")
	}
	return e
}

// jointOf is the joint of a piece with the pipe before it; at the end of a line that of the pipe.
func jointOf(p, pipe *system.Piece) system.Word {
	if p != nil {
		return p.Joint
	}
	return pipe.Joint
}

// endName is what stands at the end of a pipe, in words; where it ends bare in a wall, in which vessel.
func (b *lister) endName(p, wall *system.Piece) string {
	if p == nil && wall != nil && wall.Through.Vessel != nil {
		return "open end in " + wall.Through.Vessel.ID
	}
	if p != nil && openEnd(p) {
		if on := b.onEnd(p); on != "" {
			return on
		}
	}
	return what(p)
}

// openEnd says that a piece is only where pipe ends in the open.
func openEnd(p *system.Piece) bool { return p.Intake != nil || p.Outlet != nil }

// what is a piece in words, as it is written on a list.
func what(p *system.Piece) string {
	switch {
	case p == nil:
		return "open end"
	case p.Bend != nil && p.Bend.Angle.Given():
		return p.Kind + " of " + p.Bend.Angle.Text()
	case p.Valve != nil && p.Valve.Kind.Given():
		return p.Valve.Kind.Text() + " valve"
	case p.Through != nil:
		word := "hole"
		if p.Through.Seal == "bulkhead" {
			word = "bulkhead fitting"
		}
		if p.Through.Vessel != nil {
			word += " in " + p.Through.Vessel.ID
		}
		return word
	case p.Pump != nil:
		return "pump " + p.Pump.ID
	case p.Run != nil:
		return "pipe"
	}
	return plain(p)
}

// plain is the kind of a piece in plain words.
func plain(p *system.Piece) string {
	switch p.Kind {
	case "intake":
		return "open end"
	case "outlet":
		return "outlet"
	case "floor_drain":
		return "floor drain"
	case "check_valve":
		return "check valve"
	case "clean_out":
		return "clean-out"
	case "bell_siphon":
		return "bell siphon"
	case "siphon_break":
		return "siphon break"
	case "across", "rise", "fall", "slope":
		return "pipe"
	case "through":
		return "bulkhead fitting"
	}
	return p.Kind
}

// count is a whole number of the file, one where it says none.
func (b *lister) count(pointer string) int {
	if n, given := b.Number(pointer, quantity.Number).SI(); given && n >= 1 {
		return int(n)
	}
	return 1
}
