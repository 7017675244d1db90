package reference

import (
	"fmt"

	"dryfit/internal/making"
	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

// shedCut is the pipe between two elbows of 90 degrees, as the list of cuts has it. Standards are those of pipes, by
// their number; a size above 8 is a dn, else inches.
func (in *inputs) shedCut() (making.Cut, error) {
	pipe := fmt.Sprintf("{standard: DIN 8062, class: PN10, size: dn %g}", in.num("size"))
	if size := in.num("size"); size < 8 {
		pipe = fmt.Sprintf("{standard: ASTM D1785, class: Sch 40, size: %s}", inchSizes[size])
	}
	text := fmt.Sprintf("dryfit: 1\nname: cut\nvessels: {tank: {role: fish-tank, form: {box: {length: 1 m, width: 1 m, height: 1 m}}, stands_at: 1 m}}\n"+
		"pipes: {pipe: %s}\nlines: {run: {from: tank, to: outside, pipe: pipe, joints: cemented, pieces: [{intake: {at: 900 mm, facing: level}}, "+
		"{across: 300 mm}, {bend: 90 deg}, {across: %.6f mm}, {bend: 90 deg}, {fall: fit}, {outlet: {at: 500 mm, facing: down}}]}}\n", pipe, 1000*in.num("cc"))
	s, problems := system.Read("cut", []byte(text))
	if len(problems) > 0 {
		return making.Cut{}, fmt.Errorf("the run is no system: %v", problems)
	}
	l := working.NewLedger()
	making.Survey(s, tables.Embedded(), l)
	cut := making.Lists(s, tables.Embedded(), l).Cuts[1]
	if !cut.Known {
		return cut, fmt.Errorf("the cut is not known: %s", cut.Why)
	}
	return cut, nil
}

// lengths are up to four kinds of length, so many of each.
func (in *inputs) lengths() []float64 {
	var out []float64
	for _, k := range []string{"a", "b", "c", "d"} {
		for range int(in.or("n"+k, 0)) {
			out = append(out, in.num(k))
		}
	}
	return out
}

func init() {
	register(map[string]function{
		"shed_cut": func(in *inputs) (float64, error) {
			c, err := in.shedCut()
			return c.Length.X, err
		},
		"shed_dry": func(in *inputs) (float64, error) {
			c, err := in.shedCut()
			return c.Length.X + c.Excess.X, err
		},
		"bars": func(in *inputs) (float64, error) {
			bars, left := making.Nest(in.lengths(), nil, in.num("stock"), in.num("kerf"))
			if len(left) > 0 {
				return 0, fmt.Errorf("%d lengths fit on no bar", len(left))
			}
			return float64(len(bars)), nil
		},
		"joined": func(in *inputs) (float64, error) {
			return float64(len(making.Joined(in.num("l"), in.num("stock"), in.num("gap")))), nil
		},
		"cement_used": func(in *inputs) (float64, error) {
			return reasoned(making.CementUsed(in.num("size"), int(in.num("n"))))
		},
	})
}
