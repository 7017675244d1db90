package report

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// Right ends of the columns of the table of levels, counted from 0.
const (
	restEnd    = 32
	runningEnd = 42
	slimeEnd   = 52
	rimEnd     = 62
	roomEnd    = 74
	highestEnd = 86
)

// standing is the levels of one vessel, above the datum; NaN where one is not known.
type standing struct {
	name                             string
	rest, running, fouled, rim, room float64
	highest                          float64
	in                               string // the scene of the highest
}

// levels is the table of where the water stands, vessel by vessel round the loop.
func (p *page) levels() []line {
	if p.System == nil {
		return nil
	}
	var rows []standing
	for _, stop := range p.System.Round() {
		if v := stop.Vessel; v != nil {
			if s := p.standing(v); !math.IsNaN(s.rest) || !math.IsNaN(s.running) || !math.IsNaN(s.fouled) {
				rows = append(rows, s)
			}
		}
	}
	if len(rows) == 0 {
		return nil
	}
	out := []line{line{}.add("LEVELS", waterInk).at(13).add("room left: the least under the rim while the pump runs", noInk), {}}
	head := line{}.at(caseAt).add("vessel", noInk).right("at rest", restEnd, noInk).right("running", runningEnd, noInk).
		right("fouled", slimeEnd, noInk).right("rim", rimEnd, noInk).right("room left", roomEnd, noInk)
	more := p.wide > bodyWidth
	if more {
		head = head.right("highest", highestEnd, noInk).at(highestEnd+2).add("when", noInk)
	}
	out = append(out, head)
	for _, s := range rows {
		out = append(out, s.line(s.name, p.in, more))
		if p.both && p.in != quantity.US {
			out = append(out, s.line("  in inches", quantity.US, more))
		}
	}
	return out
}

func (p *page) standing(v *system.Vessel) standing {
	nan := math.NaN()
	s := standing{name: v.ID, rest: nan, running: nan, fouled: nan, rim: nan, room: nan, highest: nan}
	if z, known := p.atRest(v.ID); known {
		s.rest = z
	}
	if z, known := p.usual(v.ID, "water_level", working.RunClean); known {
		s.running, s.highest, s.in = z, z, "running"
	}
	if z, known := p.usual(v.ID, "water_level", working.RunWorst); known {
		if s.fouled = z; !(z < s.highest) {
			s.highest, s.in = z, "running fouled"
		}
	}
	floor, stands := v.StandsAt.SI()
	if height, given := v.Form.Height.SI(); given && stands {
		s.rim = floor + height
	}
	working.EachRunning(func(in, water string) {
		if room, known := p.value(v.ID, "freeboard", in, water); known && !(room > s.room) {
			s.room = room
		}
	})
	if p.Ledger != nil {
		for _, sc := range p.Ledger.Scenes {
			for _, r := range sc.Reached {
				if r.Subject == v.ID && !(r.Most < s.highest+sameLevel) {
					s.highest, s.in = r.Most, sceneName(sc)
				}
			}
		}
	}
	return s
}

// atRest is the level of a vessel when the pump has stopped and all stands still.
func (p *page) atRest(vessel string) (float64, bool) {
	return p.known(working.Address{Subject: vessel, Name: "static_level", Case: "stopped", Fault: "siphon break open"})
}

func (s standing) line(name string, in quantity.System, more bool) line {
	l := line{}.at(caseAt).add(clip(safe(name), 20), noInk)
	put := func(z float64, end int, i ink) {
		if math.IsNaN(z) {
			l = l.right("?", end, noInk)
			return
		}
		l = l.right(heightShown(z, in), end, i)
	}
	put(s.rest, restEnd, waterInk)
	put(s.running, runningEnd, waterInk)
	put(s.fouled, slimeEnd, waterInk)
	put(s.rim, rimEnd, noInk)
	put(s.room, roomEnd, noInk)
	if more {
		put(s.highest, highestEnd, waterInk)
		l = l.at(highestEnd+2).add(s.in, noInk)
	}
	return l
}
