package marking

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// diameters tries half or twice each diameter, and all diameters of one step.
func (k *marker) diameters(r *reach, _ *entry) []attempt {
	var out []attempt
	try := func(what string, inputs ...*working.Node) {
		out = append(out,
			attempt{name: radiusDiameter, words: "the radius was put in for the diameter: " + what, changes: r.by(times(0.5), inputs...)},
			attempt{name: radiusDiameter, words: "the diameter was put in for the radius: " + what, changes: r.by(times(2), inputs...)})
	}
	var all []*working.Node
	for _, in := range r.inputs {
		if diameter(in.Node) {
			all = append(all, in.Node)
			try(in.Title, in.Node)
		}
	}
	for _, step := range r.steps {
		var of []*working.Node
		for _, in := range step.Inputs {
			if slices.Contains(all, in.Node) && !slices.Contains(of, in.Node) {
				of = append(of, in.Node)
			}
		}
		if len(of) > 1 {
			try(titles(of), of...)
		}
	}
	return out
}

func titles(nodes []*working.Node) string {
	var out []string
	for _, n := range nodes {
		out = append(out, n.Title)
	}
	return strings.Join(out, " and ")
}

// imperialOverUS is how many gallons of the United States are in an imperial one.
//
// Source: NIST SP 811 (2008), appendix B.8: one imperial gallon is 4.546 09 L, one of the United States 3.785 411 784 L (published).
var imperialOverUS = func() float64 {
	imperial, _ := quantity.FromUnit(quantity.Volume, 1, "gal(imp)")
	us, _ := quantity.FromUnit(quantity.Volume, 1, "gal(US)")
	return imperial / us
}()

// gallons tries the other gallon for all values of the file in gallons, and for the answer.
func (k *marker) gallons(r *reach, e *entry) []attempt {
	var out []attempt
	for _, g := range []struct {
		sign, of, other string
		times           float64
	}{{"gal(US)", "the United States", "imperial ones", imperialOverUS}, {"gal(imp)", "imperial measure", "those of the United States", 1 / imperialOverUS}} {
		var in []working.Change
		for _, n := range r.given {
			if v, known := n.Value(); known && strings.Contains(k.unitOf(n), g.sign) {
				in = append(in, working.Change{Node: n, X: v.X * g.times})
			}
		}
		if len(in) > 0 {
			out = append(out,
				attempt{name: otherGallon, words: "gallons of " + g.of + " in the file were taken for " + g.other, changes: in},
				attempt{name: otherGallon, words: "the answer was turned from gallons of " + g.of + " as if they were " + g.other, last: times(g.times)})
		}
		if strings.Contains(e.unit, g.sign) {
			out = append(out, attempt{name: otherGallon, words: "the answer was turned into the other country's gallons, and is given in " + e.unit, last: times(1 / g.times)})
		}
	}
	return out
}

// unitOf is the value of the file at a node as it is written, with its unit.
func (k *marker) unitOf(n *working.Node) string {
	text, _ := k.System.Document.Text(n.Pointer)
	return text
}

// minutes tries a flow by the minute for one by the hour, and the other way round: on each flow of
// the working, on all flows of the file behind it, and on an answer that is a flow or a time.
func (k *marker) minutes(r *reach, _ *entry) []attempt {
	var out []attempt
	for _, way := range []struct {
		words string
		times float64
	}{{"litres an hour were taken for litres a minute", 60}, {"litres a minute were taken for litres an hour", 1.0 / 60}} {
		for _, in := range r.inputs {
			if in.Kind == quantity.Flow {
				out = append(out, attempt{name: minutesHours, words: way.words + ": " + in.Title, changes: r.by(times(way.times), in.Node)})
			}
		}
		var file []working.Change
		for _, n := range r.given {
			if v, known := n.Value(); known && n.Kind == quantity.Flow && r.taking[n] == nil {
				file = append(file, working.Change{Node: n, X: v.X * way.times})
			}
		}
		if len(file) > 0 {
			out = append(out, attempt{name: minutesHours, words: way.words + " in the file", changes: file})
		}
		if r.target.Kind == quantity.Flow {
			out = append(out, attempt{name: minutesHours, words: way.words + " in the answer", last: times(way.times)})
		}
	}
	if r.target.Kind == quantity.Time {
		for _, t := range []float64{60, 1.0 / 60} {
			out = append(out, attempt{name: minutesHours, words: "minutes were taken for hours, or seconds for minutes, or the other way round", last: times(t)})
		}
	}
	return out
}

// degrees tries degrees where a function wants radians, and an answer in the other of the two.
func (k *marker) degrees(r *reach, _ *entry) []attempt {
	var out []attempt
	for _, in := range r.inputs {
		if in.Kind == quantity.Angle {
			out = append(out, attempt{name: degreesRadians, words: "degrees were put in where the function takes radians: " + in.Title, changes: r.by(times(180/math.Pi), in.Node)})
		}
	}
	if r.target.Kind == quantity.Angle {
		out = append(out,
			attempt{name: degreesRadians, words: "the answer is in radians, and is given as degrees", last: times(math.Pi / 180)},
			attempt{name: degreesRadians, words: "the answer is in degrees, and is given as radians", last: times(180 / math.Pi)})
	}
	return out
}

// powers tries ten and a thousand times too much or too little in each value of the file, and in the answer.
func (k *marker) powers(r *reach, _ *entry) []attempt {
	var out []attempt
	for _, p := range []struct {
		name, words string
		times       float64
	}{
		{factorTen, "ten times too %s, as by a point in the wrong place", 10},
		{factorThousand, "a thousand times too %s, as millimetres for metres or litres for cubic metres", 1000},
	} {
		for _, way := range []struct {
			in, of string
			times  float64
		}{{"much", "great", p.times}, {"little", "small", 1 / p.times}} {
			for _, in := range r.inputs {
				if in.Origin == working.Given && scales(in.Kind) && (way.times > 1 || !r.fades(in.Node, way.times)) {
					out = append(out, attempt{name: p.name, words: fmt.Sprintf(p.words, way.in) + ", was put in: " + in.Title, changes: r.by(times(way.times), in.Node)})
				}
			}
			if r.target.Kind != quantity.Temperature {
				out = append(out, attempt{name: p.name, words: "the answer is " + fmt.Sprintf(p.words, way.of), last: times(way.times)})
			}
		}
	}
	return out
}

// omissions tries the working without each input that is added or taken away: without a factor nothing
// would be left of it.
func (k *marker) omissions(r *reach, _ *entry) []attempt {
	var out []attempt
	for _, in := range r.inputs {
		if in.Kind != quantity.Number && in.Kind != quantity.Temperature && len(piecesOf(r.taking[in.Node][0])) == 0 {
			out = append(out, attempt{name: leftOut, words: "it was left out of a sum or a difference: " + in.Title, changes: r.by(times(0), in.Node)})
		}
	}
	return out
}

// fades says that an input made so small has all but dropped out: the number is then that without it.
func (r *reach) fades(in *working.Node, factor float64) bool {
	small, known := r.work(r.by(times(factor), in))
	without, there := r.work(r.by(times(0), in))
	return known && there && without != 0 && math.Abs(small-without) <= 2*mostWindow*math.Abs(without)
}

// scales says that values of a kind have units that differ by powers of ten.
func scales(kind quantity.Kind) bool {
	switch kind {
	case quantity.Number, quantity.Fraction, quantity.Temperature, quantity.Angle:
		return false
	}
	return true
}

// bores tries the nominal and the outside size of a pipe for its bore.
func (k *marker) bores(r *reach, _ *entry) []attempt {
	var out []attempt
	for _, in := range r.inputs {
		for _, pipe := range k.System.Pipes {
			if in.Origin != working.Listed || in.Pointer != pipe.Pointer || in.Title != "inside diameter of "+pipe.ID {
				continue
			}
			if size, known := nominal(pipe); known {
				out = append(out, attempt{name: sizeBore, words: "the nominal size was put in for the inside diameter of " + pipe.ID, changes: r.by(func(float64) float64 { return size }, in.Node)})
			}
			if pipe.Outside > 0 {
				out = append(out, attempt{name: sizeBore, words: "the outside diameter was put in for the inside diameter of " + pipe.ID, changes: r.by(func(float64) float64 { return pipe.Outside }, in.Node)})
			}
		}
	}
	return out
}

// nominal is the size by which a pipe is called as if it were a length: DN40 as 40 mm, and one of inches in inches.
func nominal(pipe *system.Pipe) (float64, bool) {
	size, _ := pipe.Size.Value()
	if millimetres, is := strings.CutPrefix(size, "DN"); is {
		x, err := strconv.ParseFloat(strings.TrimSpace(millimetres), 64)
		return x / 1000, err == nil
	}
	return pipe.Nominal * 0.0254, pipe.Nominal > 0
}

// cases offers the same quantity in another case, at the same temperature.
func (k *marker) cases(r *reach, _ *entry) []attempt {
	var out []attempt
	a := r.target.Address
	for _, n := range k.Ledger.Of(a.Subject, a.Name) {
		if v, known := n.Value(); known && n.Address.Case != a.Case && n.Address.Water == a.Water && len(r.base) == 0 {
			out = append(out, attempt{name: otherCase, words: "it is the value in the case " + n.Address.Case + ", where " + a.Case + " is asked", last: func(float64) float64 { return v.X }})
		}
	}
	return out
}
