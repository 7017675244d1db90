package drawing

import (
	"encoding/xml"
	"io"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"dryfit/internal/survey"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

const demo = "../../testdata/systems/quarry-road.yaml"

func load(t testing.TB, file string) (*system.System, *working.Ledger) {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	s, problems := system.Read(file, data)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return s, survey.Survey(s)
}

// An element is one part of a drawing, read back.
type element struct {
	kind, part, text string
	attr             map[string]string
}

// A picture is a drawing, read back.
type picture struct {
	t    testing.TB
	list []element
}

func read(t testing.TB, svg, why string) picture {
	t.Helper()
	if why != "" {
		t.Fatal(why)
	}
	p := picture{t: t}
	d := xml.NewDecoder(strings.NewReader(svg))
	var open []int
	for {
		token, err := d.Token()
		if err == io.EOF {
			return p
		}
		if err != nil {
			t.Fatalf("no XML: %v\n%s", err, svg)
		}
		switch token := token.(type) {
		case xml.StartElement:
			e := element{kind: token.Name.Local, attr: map[string]string{}}
			for _, a := range token.Attr {
				e.attr[a.Name.Local] = a.Value
			}
			e.part = e.attr["data-part"]
			open = append(open, len(p.list))
			p.list = append(p.list, e)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			if len(open) > 0 {
				p.list[open[len(open)-1]].text += string(token)
			}
		}
	}
}

// parts are the elements of a name, of which there must be one at least.
func (p picture) parts(name string) []element {
	p.t.Helper()
	var out []element
	for _, e := range p.list {
		if e.part == name {
			out = append(out, e)
		}
	}
	if len(out) == 0 {
		p.t.Fatalf("%s is not drawn", name)
	}
	return out
}

func (p picture) part(name string) element {
	p.t.Helper()
	return p.parts(name)[0]
}

func (e element) num(name string) float64 {
	x, err := strconv.ParseFloat(strings.TrimSuffix(e.attr[name], "mm"), 64)
	if err != nil {
		return math.NaN()
	}
	return x
}

// points are the corners of a line, polyline or polygon.
func (e element) points() []point {
	if e.kind == "line" {
		return []point{{e.num("x1"), e.num("y1")}, {e.num("x2"), e.num("y2")}}
	}
	var out []point
	for _, pair := range strings.Fields(e.attr["points"]) {
		x, y, _ := strings.Cut(pair, ",")
		a, _ := strconv.ParseFloat(x, 64)
		b, _ := strconv.ParseFloat(y, 64)
		out = append(out, point{a, b})
	}
	return out
}

func (e element) last() point { return e.points()[len(e.points())-1] }

// scale reads an axis as a person does, from two of its numbers: it answers with
// the number that belongs to a place.
func (p picture) scale(part, along string) func(at float64) float64 {
	p.t.Helper()
	ticks := p.parts(part)
	a, b := ticks[0], ticks[len(ticks)-1]
	x0, err0 := strconv.ParseFloat(a.text, 64)
	x1, err1 := strconv.ParseFloat(b.text, 64)
	if err0 != nil || err1 != nil || x0 == x1 {
		p.t.Fatalf("the axis %s cannot be read: %q to %q", part, a.text, b.text)
	}
	off := 0.0
	if along == "y" {
		off = 1.1 // from the line to the foot of its number
	}
	at0, at1 := a.num(along)-off, b.num(along)-off
	return func(at float64) float64 { return x0 + (at-at0)*(x1-x0)/(at1-at0) }
}

func stands(t testing.TB, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is drawn at %.2f, not at %.2f within %.2f", what, got, want, within)
	}
}
