package reference

import (
	"fmt"
	"math"

	"dryfit/internal/making"
	"dryfit/internal/system"
	"dryfit/internal/tables"
)

// socketStandards are the standards of solvent sockets, by their number. Sizes above 8 are DN, else inches.
var socketStandards = map[float64]string{2466: "ASTM D2466", 2467: "ASTM D2467", 2665: "ASTM D2665", 727: "ISO 727-1", 1477: "AS/NZS 1477"}

func (in *inputs) socket() (tables.Socket, error) {
	standard, size := in.num("standard"), in.num("size")
	name := inchSizes[size]
	if size > 8 {
		name = fmt.Sprintf("DN%g", size)
	}
	s, ok := tables.Embedded().Socket(socketStandards[standard], name)
	if !ok {
		return s, fmt.Errorf("the tables have no socket %g, size %g", standard, size)
	}
	return s, nil
}

func (in *inputs) dryStop() (float64, string) {
	return making.DryStop(in.num("a"), in.num("b"), in.num("od"))
}

func (in *inputs) cure() (tables.Cure, error) {
	maker := []string{tables.Cautious, "quick", "graded"}[int(in.num("maker"))]
	c, ok := tables.Embedded().CureTime(maker, in.num("size"), in.num("t"))
	if !ok {
		return c, fmt.Errorf("the table of curing has no row for it")
	}
	return c, nil
}

// travel is the slope that the walk along a line fits between two heights so far apart.
func (in *inputs) travel() (float64, error) {
	text := fmt.Sprintf("dryfit: 1\nname: offset\nvessels: {tank: {role: fish-tank, form: {box: {length: 1 m, width: 1 m, height: 1 m}}, stands_at: 0 mm}}\n"+
		"pipes: {pipe: {standard: AS/NZS 1477, class: PN12, size: DN25}}\nlines: {run: {from: tank, to: outside, pipe: pipe, joints: cemented, pieces: "+
		"[{intake: {at: 500 mm}}, {slope: {angle: %.6f deg, fall: fit}}, {bend: %.6f deg}, {outlet: {at: %.6f mm, facing: down}}]}}\n",
		in.num("angle")*180/math.Pi, 90-in.num("angle")*180/math.Pi, 500-1000*in.num("s"))
	s, problems := system.Read("offset", []byte(text))
	if len(problems) > 0 {
		return 0, fmt.Errorf("the offset is no system: %v", problems)
	}
	length, ok := s.Lines[0].Pieces[1].Length.Value()
	if !ok {
		return 0, fmt.Errorf("the slope has no length")
	}
	return length, nil
}

func init() {
	register(map[string]function{
		"socket_depth": func(in *inputs) (float64, error) {
			s, err := in.socket()
			return s.Depth, err
		},
		"dry_stop": func(in *inputs) (float64, error) { return reasoned(in.dryStop()) },
		"stop_short": func(in *inputs) (float64, error) {
			f, why := in.dryStop()
			return reasoned((1-f)*in.num("c"), why)
		},
		"cut_length": func(in *inputs) (float64, error) {
			return making.CutLength(in.num("cc"), in.num("g1"), in.num("g2")), nil
		},
		// between the faces of two fittings the pipe goes into both: their take-offs count backwards
		"face_to_face": func(in *inputs) (float64, error) {
			return making.CutLength(in.num("ff"), -in.num("c1"), -in.num("c2")), nil
		},
		"travel": func(in *inputs) (float64, error) { return in.travel() },
		"offset_cut": func(in *inputs) (float64, error) {
			t, err := in.travel()
			return making.CutLength(t, in.num("g"), in.num("g")), err
		},
		"takeoff": func(in *inputs) (float64, error) {
			return reasoned(making.TakeOff(in.num("od"), 0, in.num("angle"), in.num("t")))
		},
		"centre_to_face": func(in *inputs) (float64, error) {
			size := inchSizes[in.num("size")]
			o, known := tables.Embedded().Takeoff("ASTM D1785", size)
			s, ok := tables.Embedded().SocketFor("ASTM D1785", size)
			if !known || !ok {
				return 0, fmt.Errorf("the tables have no fitting of %s", size)
			}
			return o.Elbow90.Value + s.Depth, nil
		},
		"end_thrust":  func(in *inputs) (float64, error) { return reasoned(making.EndThrust(in.num("h"), in.num("od"))) },
		"sagitta":     func(in *inputs) (float64, error) { return reasoned(making.Sagitta(in.num("r"), in.num("w"))) },
		"edge_stress": func(in *inputs) (float64, error) { return reasoned(making.EdgeStress(in.num("a"), in.num("r"))) },
		"bulkhead_hole": func(in *inputs) (float64, error) {
			size := inchSizes[in.num("size")]
			b, ok := tables.Embedded().Bulkhead(size, "Sch 40")
			if !ok {
				return 0, fmt.Errorf("the tables have no bulkhead fitting of %s", size)
			}
			return b.Hole, nil
		},
		"saw_beside": func(in *inputs) (float64, error) {
			hole := in.num("hole")
			return max(tables.Embedded().SawFor(hole).Size-hole, hole-tables.Embedded().SawFor(hole).Size), nil
		},
		"seal_against_pipe": func(in *inputs) (float64, error) {
			pipe, err := listedPipe(in, "")
			if err != nil {
				return 0, err
			}
			for _, s := range tables.Embedded().Seals() {
				if s.Size == inchSizes[in.num("seal")] {
					return max(s.Outside-pipe.Outside, pipe.Outside-s.Outside), nil
				}
			}
			return 0, fmt.Errorf("the tables have no such seal")
		},
		"cure_time": func(in *inputs) (float64, error) {
			c, err := in.cure()
			return c.Hold, err
		},
		"set_time": func(in *inputs) (float64, error) {
			c, err := in.cure()
			return c.Set.Value, err
		},
		"cure_damp": func(in *inputs) (float64, error) {
			c, err := in.cure()
			return c.Hold * making.DampAir(in.num("humidity")), err
		},
	})
}
