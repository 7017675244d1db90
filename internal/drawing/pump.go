package drawing

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// pumped is a pump with the line that it stands in.
type pumped struct {
	l          *working.Ledger
	pump       *system.Pump
	flow, head func(kase string) working.Address
}

// PumpCurve draws what a pump gives, and what its line asks for when its walls are
// clean, fouled, and with its valve half shut; where they cross, the loop runs. The
// line's curves are the balances of the ledger worked again with a weaker and a
// stronger pump, the pump's between its points those with its valve moved. It
// answers with why where the pump stands in no line, or its balance is not known.
func PumpCurve(s *system.System, l *working.Ledger, pump string) (svg, why string) {
	p := s.Pump(pump)
	if p == nil {
		return "", "there is no pump " + pump
	}
	line, why := lineOf(s, p)
	if why != "" {
		return "", why
	}
	at := func(subject, name string) func(string) working.Address {
		return func(kase string) working.Address {
			return working.Address{Subject: subject, Name: name, Case: kase, Water: "usual"}
		}
	}
	d := pumped{l, p, at(line.ID, "flow"), at(p.ID, "pump_head")}
	duty, ok := d.again(working.RunClean, nil)
	if !ok {
		return "", "the flow of " + line.ID + " is not known" + gaps(l.Find(d.flow(working.RunClean)))
	}
	points := d.stated()
	if len(points) < 2 {
		return "", "the curve of " + pump + " is not known: write " + p.Pointer + "/curve"
	}
	valve := d.valve(line)
	own := slices.Clone(points)
	own = append(own, duty)
	if valve != "" {
		for _, open := range []float64{0.15, 0.2, 0.25, 0.3, 0.37, 0.45, 0.6} {
			if at, ok := d.again(working.RunClean, map[string]float64{valve: open}); ok && at[0] > 0 {
				own = append(own, at)
			}
		}
	}
	slices.SortFunc(own, func(a, b [2]float64) int { return cmp.Compare(a[0], b[0]) })
	plot := Plot{
		Title: fmt.Sprintf("Pump %s and its line, %s", pump, line.ID),
		X:     Axis{Title: "flow", Kind: quantity.Flow, Unit: "L/h", High: own[len(own)-1][0] * 1.02},
		Y:     Axis{Title: "head", Kind: quantity.Head, Unit: "m", High: own[0][1] * 1.08},
	}
	plot.Curves = append(plot.Curves, curveOf("pump", own), curveOf("points of the file", points))
	plot.Curves[1].Bare = true
	said := []string{}
	add := func(name, kase string, moved map[string]float64) {
		list := d.asked(kase, moved)
		now, ok := d.again(kase, moved)
		if !ok || len(list) < 2 {
			return
		}
		plot.Curves = append(plot.Curves, curveOf(name, list))
		plot.Marks = append(plot.Marks, Mark{X: now[0], Y: now[1]})
		said = append(said, fmt.Sprintf("%s %s at %s", name, quantity.Format(quantity.Flow, now[0], quantity.Metric), quantity.Format(quantity.Head, now[1], quantity.Metric)))
	}
	add("line clean", working.RunClean, nil)
	add("line fouled", working.RunLeast, nil)
	if valve != "" {
		open := 1.0
		if x, ok := si(s.Number(valve, quantity.Fraction)); ok {
			open = x
		}
		if open > 0 {
			add("valve at "+quantity.FormatIn(quantity.Fraction, open/2, "%", 0), working.RunClean, map[string]float64{valve: open / 2})
		}
	}
	plot.Notes = []string{"Rings: where the loop runs, " + strings.Join(said, "; ") + ".", "Dots: points of the file. Pumps give less with age; heads are those of water as usual."}
	plot.Description = "Head against flow. " + plot.Notes[0]
	return Chart(plot)
}

// lineOf is the one line in which a pump stands alone.
func lineOf(s *system.System, p *system.Pump) (*system.Line, string) {
	var found *system.Line
	for _, line := range s.Lines {
		n, here := 0, false
		for _, piece := range line.Pieces {
			if piece.Pump != nil {
				n, here = n+1, here || piece.Pump == p
			}
		}
		switch {
		case here && (n > 1 || found != nil):
			return nil, "the curve of a pump is drawn where it stands alone in one line"
		case here:
			found = line
		}
	}
	if found == nil {
		return nil, "the pump " + p.ID + " stands in no line"
	}
	return found, ""
}

// again is flow and head in a case with some values of the file moved.
func (d pumped) again(kase string, moved map[string]float64) ([2]float64, bool) {
	q, qGaps, err1 := d.l.AgainWith(d.flow(kase), moved)
	h, hGaps, err2 := d.l.AgainWith(d.head(kase), moved)
	ok := err1 == nil && err2 == nil && len(qGaps) == 0 && len(hGaps) == 0 && finite(q.X, h.X)
	return [2]float64{q.X, h.X}, ok
}

// stated is the pump's curve as the file has it.
func (d pumped) stated() [][2]float64 {
	var out [][2]float64
	for _, c := range d.pump.Curve {
		q, ok1 := si(c.Flow)
		h, ok2 := si(c.Head)
		if ok1 && ok2 {
			out = append(out, [2]float64{q, h})
		}
	}
	if h, ok := si(d.pump.ShutOff); ok && len(out) == 0 {
		if q, ok := si(d.pump.OpenFlow); ok {
			out = [][2]float64{{0, h}, {q, 0}}
		}
	}
	return out
}

// step is how much stronger the next pump is: in small steps about the one that is there.
func step(k float64) float64 {
	if k > 2 {
		return 1.6
	}
	return 1.2
}

// asked is what the line asks for: where the loop runs with weaker and stronger pumps.
func (d pumped) asked(kase string, moved map[string]float64) [][2]float64 {
	at := func(k float64) ([2]float64, bool) {
		with := map[string]float64{}
		for at, x := range moved {
			with[at] = x
		}
		for _, c := range d.pump.Curve {
			if h, ok := si(c.Head); ok {
				with[c.Head.Pointer()] = h * k
			}
		}
		if h, ok := si(d.pump.ShutOff); ok {
			with[d.pump.ShutOff.Pointer()] = h * k
		}
		return d.again(kase, with)
	}
	var out [][2]float64
	still := 0.0 // the strongest pump that gives nothing
	for k := 0.42; k < 8; k *= step(k) {
		one, ok := at(k)
		switch {
		case ok && one[0] > 0:
			if len(out) == 0 && still > 0 {
				for low, high, i := still, k, 0; i < 5; i++ {
					if first, ok := at((low + high) / 2); ok && first[0] > 0 {
						high, out = (low+high)/2, append([][2]float64{first}, out...)
					} else {
						low = (low + high) / 2
					}
				}
			}
			out = append(out, one)
		case ok:
			still = k
		}
	}
	return out
}

// valve is where the opening of a valve behind the pump stands in the file, or would stand.
func (d pumped) valve(line *system.Line) string {
	n := d.l.Find(d.flow(working.RunClean))
	if n == nil {
		return ""
	}
	reads := n.Reads()
	behind := false
	for _, p := range line.Pieces {
		behind = behind || p.Pump == d.pump
		if p.Valve != nil && behind && slices.Contains(reads, p.Valve.Open.Pointer()) {
			return p.Valve.Open.Pointer()
		}
	}
	return ""
}

func curveOf(name string, list [][2]float64) Curve {
	c := Curve{Name: name}
	for _, at := range list {
		c.X, c.Y = append(c.X, at[0]), append(c.Y, at[1])
	}
	return c
}

// gaps says why a node has no number.
func gaps(n *working.Node) string {
	if n == nil || len(n.Gaps()) == 0 {
		return ""
	}
	g := n.Gaps()[0]
	if g.Why != "" || g.Pointer == "" {
		return ": " + g.Why
	}
	return ": write " + g.Pointer
}

// greatest is the greatest of some numbers.
func greatest(list []float64) float64 {
	most := math.Inf(-1)
	for _, x := range list {
		most = math.Max(most, x)
	}
	return most
}
