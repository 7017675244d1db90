package reference

import (
	"fmt"
	"math"

	"dryfit/internal/tables"
)

// pipeStandards says how the tables write a standard and its classes, by the number of the standard.
var pipeStandards = map[float64][2]string{
	1785: {"ASTM D1785", "Sch %g"},
	2241: {"ASTM D2241", "SDR %g"},
	1477: {"AS/NZS 1477", "PN%g"},
	1260: {"AS/NZS 1260", "SN%g"}, // class 0: small drain pipe, which has no stiffness class
	4130: {"AS/NZS 4130", "PE100 PN%g"},
	8062: {"DIN 8062", "PN%g"},
	1452: {"EN ISO 1452", "PN%g"},
	1401: {"EN 1401", "SN%g"},
}

// inchSizes are the sizes of inch pipe by their number.
var inchSizes = map[float64]string{0.5: "1/2 in", 0.75: "3/4 in", 1: "1 in", 1.25: "1-1/4 in", 1.5: "1-1/2 in", 2: "2 in", 2.5: "2-1/2 in", 3: "3 in", 4: "4 in", 5: "5 in", 6: "6 in"}

// listedPipe finds the pipe that a row names by standard, class and size (a DN, or inches); beside lets a row name a second one.
func listedPipe(in *inputs, beside string) (tables.Pipe, error) {
	number, class, size := in.num(beside+"standard"), in.num(beside+"class"), in.num(beside+"size")
	names := pipeStandards[number]
	wanted := fmt.Sprintf("%g", size)
	if number == 1785 || number == 2241 {
		wanted = inchSizes[size]
	}
	as := fmt.Sprintf(names[1], class)
	if number == 1260 && class == 0 {
		as = "DWV"
	}
	p, ok := tables.Embedded().Pipe(names[0], as, wanted)
	if !ok {
		return p, fmt.Errorf("the tables have no pipe %g, class %g, size %g", number, class, size)
	}
	return p, nil
}

func init() {
	of := func(f func(tables.Pipe) float64) function {
		return func(in *inputs) (float64, error) {
			p, err := listedPipe(in, "")
			return f(p), err
		}
	}
	beside := func(f func(a, b tables.Pipe) float64) function {
		return func(in *inputs) (float64, error) {
			a, err := listedPipe(in, "")
			if err != nil {
				return 0, err
			}
			b, err := listedPipe(in, "other_")
			return f(a, b), err
		}
	}
	register(map[string]function{
		"pipe_outside":         of(func(p tables.Pipe) float64 { return p.Outside }),
		"pipe_outside_most":    of(func(p tables.Pipe) float64 { return p.OutsideMost }),
		"pipe_wall_mean":       of(func(p tables.Pipe) float64 { return p.Wall }),
		"pipe_wall_least":      of(func(p tables.Pipe) float64 { return p.WallLeast }),
		"pipe_inside_mean":     of(func(p tables.Pipe) float64 { return p.Inside }),
		"pipe_dimension_ratio": of(func(p tables.Pipe) float64 { return p.OutsideLeast / p.WallLeast }),
		// the mean wall of ASTM D2241 from the least: up to 12 % or 0.020 in more
		"pipe_wall_mean_by_tolerance": of(func(p tables.Pipe) float64 { return p.WallLeast + max(0.12*p.WallLeast, 0.000508)/2 }),
		"pipe_inside_by_walls":        of(func(p tables.Pipe) float64 { return p.Outside - 2*p.Wall }),
		"pipe_series_clash":           beside(func(a, b tables.Pipe) float64 { return math.Abs(a.Outside - b.Outside) }),
		"pipe_area_ratio":             beside(func(a, b tables.Pipe) float64 { return math.Pow(b.Inside/a.Inside, 2) }),
	})
}
