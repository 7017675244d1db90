package drawing

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"dryfit/internal/quantity"
)

// An Axis is one side of a chart. Its numbers are SI; it shows them in its unit.
type Axis struct {
	Title     string
	Kind      quantity.Kind
	Unit      string
	Low, High float64 // SI
	Log       bool    // by decades
}

// A Curve is one line of a chart, SI.
type Curve struct {
	Name   string // written at its end
	X, Y   []float64
	Points bool // dots at its points
	Bare   bool // the dots alone, without the line
}

// A Mark is one place in a chart with a word beside it, SI.
type Mark struct {
	X, Y float64
	Name string
}

// A Limit is a straight line across a chart, level, or upright at an X.
type Limit struct {
	At      float64
	Upright bool
	Name    string
}

// A Plot is all of a chart.
type Plot struct {
	Title, Description string
	X, Y               Axis
	Curves             []Curve
	Marks              []Mark
	Limits             []Limit
	Notes              []string // beneath
}

// dashes tell the curves of a chart apart without colour.
var dashes = []pen{
	{width: 0.6}, {0.6, []float64{7, 3}}, {0.6, []float64{1.5, 2.5}}, {0.6, []float64{9, 2.5, 1.5, 2.5}},
	{0.3, nil}, {0.3, []float64{14, 5}}, {0.3, []float64{3, 4}}, {0.3, []float64{20, 4, 3, 4, 3, 4}},
}

// A chart is a plot on paper.
type chart struct {
	*sheet
	Plot
	left, right, top, bottom float64
}

// Chart draws a plot: two axes with round numbers, curves in lines of their own,
// each with its name at its end. It answers with why if there is nothing to draw.
func Chart(p Plot) (svg, why string) {
	if why := p.unfit(); why != "" {
		return "", why
	}
	c := chart{&sheet{width: pageWidth}, p, 18, pageWidth - 2, 11, 101}
	for _, curve := range p.Curves {
		c.right = math.Min(c.right, pageWidth-5-math.Min(60, broad(small, curve.Name)))
	}
	c.height = c.bottom + 15 + 4.6*float64(len(p.Notes))
	c.bold(heading, start, point{0, 5}, fitted(heading, pageWidth, p.Title))
	c.axes()
	for _, l := range p.Limits {
		c.limit(l)
	}
	for i, curve := range p.Curves {
		c.curve(i, curve)
	}
	c.names()
	for _, m := range p.Marks {
		c.mark(m)
	}
	for i, note := range p.Notes {
		c.text("", small, start, point{0, c.bottom + 18 + 4.6*float64(i)}, fitted(small, pageWidth, note))
	}
	return c.svg(p.Title, p.Description), ""
}

// unfit says why a plot cannot be drawn.
func (p Plot) unfit() string {
	n := 0
	for _, c := range p.Curves {
		if len(c.X) != len(c.Y) {
			return "the curve " + c.Name + " has not as many heights as places"
		}
		n += len(c.X)
		for i := range c.X {
			if !finite(c.X[i], c.Y[i]) {
				return "the curve " + c.Name + " has a place that is no number"
			}
		}
	}
	for _, a := range []Axis{p.X, p.Y} {
		low, okLow := quantity.Convert(a.Kind, a.Low, a.Unit)
		high, okHigh := quantity.Convert(a.Kind, a.High, a.Unit)
		long, size := high-low, math.Max(math.Abs(low), math.Abs(high))
		if !okLow || !okHigh || !(long > 1e-9*size) || a.Log && (low <= 0 || high/low > 1e12) {
			return "the axis " + a.Title + " has no length"
		}
		if !(size < 1e12) || long < 1e-12 {
			return "the axis " + a.Title + " is too long or too short to draw"
		}
	}
	if n == 0 {
		return "there is nothing to draw"
	}
	return ""
}

func finite(list ...float64) bool {
	for _, x := range list {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}

// share is where a number stands along the axis, 0 to 1.
func (a Axis) share(x float64) float64 {
	far := (a.High - a.Low) * 1e4
	x = math.Max(a.Low-far, math.Min(a.High+far, x)) // far beyond the chart is far enough
	if a.Log {
		return math.Log(math.Max(x, a.Low*1e-3)/a.Low) / math.Log(a.High/a.Low)
	}
	return (x - a.Low) / (a.High - a.Low)
}

func (c *chart) at(x, y float64) point {
	return point{c.left + (c.right-c.left)*c.X.share(x), c.bottom - (c.bottom-c.top)*c.Y.share(y)}
}

func (c *chart) axes() {
	for _, t := range c.X.ticks(9) {
		at := c.at(t.si, c.Y.Low)
		at.y = c.bottom
		c.line("", hair, point{at.x, c.top}, at)
		c.line("", narrow, at, point{at.x, at.y + 1.2})
		c.text("x-tick", small, middle, point{at.x, at.y + 5}, t.words)
	}
	for _, t := range c.Y.ticks(8) {
		at := c.at(c.X.Low, t.si)
		at.x = c.left
		c.line("", hair, at, point{c.right, at.y})
		c.line("", narrow, point{at.x - 1.2, at.y}, at)
		c.text("y-tick", small, end, point{at.x - 2, at.y + 1.1}, t.words)
	}
	c.path("", narrow, "", point{c.left, c.top}, point{c.left, c.bottom}, point{c.right, c.bottom})
	c.text("", small, middle, point{(c.left + c.right) / 2, c.bottom + 10.5}, c.X.Title+", "+c.X.Unit)
	c.upright(small, middle, point{4, (c.top + c.bottom) / 2}, strings.TrimSuffix(c.Y.Title+", "+c.Y.Unit, ", "))
}

func (c *chart) curve(i int, curve Curve) {
	list := c.points(curve)
	name := "curve:" + curve.Name
	if !curve.Bare {
		for _, piece := range inside(list, c.left, c.right, c.top, c.bottom) {
			c.path(name, dashes[i%len(dashes)], "", piece...)
		}
	}
	for _, at := range list {
		if (curve.Points || curve.Bare) && c.holds(at) {
			c.circle(name+" point", narrow, "#000", at, 0.9)
		}
	}
}

func (c *chart) holds(at point) bool {
	const slack = 0.01
	return at.x >= c.left-slack && at.x <= c.right+slack && at.y >= c.top-slack && at.y <= c.bottom+slack
}

// An ending is where a curve leaves off, with its name.
type ending struct {
	at   point
	name string
}

// names writes the names of the curves at their ends: in the margin, one under
// the other, and beneath the end of what leaves off before.
func (c *chart) names() {
	var margin, early []ending
	for _, curve := range c.Curves {
		pieces := inside(c.points(curve), c.left, c.right, c.top, c.bottom)
		if len(pieces) == 0 || curve.Name == "" || curve.Bare {
			continue
		}
		last := pieces[len(pieces)-1]
		e := ending{last[len(last)-1], curve.Name}
		if e.at.x > c.right-0.15*(c.right-c.left) {
			margin = append(margin, e)
		} else {
			early = append(early, e)
		}
	}
	places := make([]float64, len(margin))
	for i, e := range margin {
		places[i] = e.at.y
	}
	for i, y := range apart(places, 4.2, c.top+1, c.bottom-1) {
		e := margin[i]
		c.path("", hair, "", e.at, point{c.right + 2, y})
		c.text("name:"+e.name, small, start, point{c.right + 2.6, y + 1.1}, fitted(small, pageWidth-c.right-3, e.name))
	}
	slices.SortStableFunc(early, func(a, b ending) int { return cmp.Compare(b.at.x, a.at.x) })
	for i, e := range early {
		down := 6 + 4.6*float64(i)
		if e.at.y+down > c.bottom-2 {
			down = -down
		}
		c.path("", hair, "", e.at, point{e.at.x + 4, e.at.y + down})
		c.label("name:"+e.name, small, start, point{e.at.x + 4.6, e.at.y + down + 1.1}, e.name)
	}
}

func (c *chart) points(curve Curve) []point {
	list := make([]point, len(curve.X))
	for j := range list {
		list[j] = c.at(curve.X[j], curve.Y[j])
	}
	return list
}

func (c *chart) limit(l Limit) {
	a, b := c.at(c.X.Low, l.At), c.at(c.X.High, l.At)
	if l.Upright {
		a, b = c.at(l.At, c.Y.Low), c.at(l.At, c.Y.High)
	}
	if !c.holds(a) || !c.holds(b) {
		return
	}
	c.line("limit:"+l.Name, hidden, a, b)
	if l.Upright {
		side, dx := start, 1.0
		if b.x+broad(small, l.Name) > c.right {
			side, dx = end, -1.0
		}
		c.label("", small, side, point{b.x + dx, b.y + 4}, l.Name)
		return
	}
	c.label("", small, middle, point{(a.x + b.x) / 2, a.y - 1}, l.Name)
}

func (c *chart) mark(m Mark) {
	at := c.at(m.X, m.Y)
	if !c.holds(at) {
		return
	}
	c.circle("mark:"+m.Name, wide, "#fff", at, 1.3)
	side, dx := start, 2.2
	if at.x+3+broad(small, m.Name) > c.right {
		side, dx = end, -2.2
	}
	c.label("", small, side, point{at.x + dx, at.y - 2}, m.Name)
}
