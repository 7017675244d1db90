package drawing

import (
	"encoding/xml"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"dryfit/internal/quantity"
	"dryfit/internal/survey"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// every is all drawings of a system by name; those that want a number are left out.
func every(t testing.TB, s *system.System, l *working.Ledger, pumps bool) map[string]string {
	out := map[string]string{}
	put := func(name, svg, why string) {
		t.Helper()
		if (svg == "") == (why == "") {
			t.Errorf("%s: a drawing or a reason, not both or none", name)
		}
		if svg != "" {
			out[name] = svg
		}
	}
	svg, why := Levels(s, l)
	put("levels", svg, why)
	for _, v := range s.Vessels {
		svg, why = Settler(s, l, v.ID)
		put("section of "+v.ID, svg, why)
		svg, why = Capture(s, l, v.ID)
		put("capture of "+v.ID, svg, why)
		svg, why = Oxygen(s, l, v.ID)
		put("oxygen of "+v.ID, svg, why)
		sheets, why := Template(s, l, v.ID)
		if len(sheets) == 0 && why == "" {
			t.Errorf("%s: neither a template nor a reason", v.ID)
		}
		for i, svg := range sheets {
			put(fmt.Sprintf("template %d of %s", i, v.ID), svg, "")
		}
	}
	for _, line := range s.Lines {
		svg, why = Run(s, l, line.ID)
		put("run "+line.ID, svg, why)
	}
	for _, p := range s.Pumps {
		if pumps {
			svg, why = PumpCurve(s, l, p.ID)
			put("pump "+p.ID, svg, why)
		}
	}
	return out
}

// least is 9 point in mm: a point is 1/72 inch.
const least = 9 * 25.4 / 72

// sound holds what every drawing must be: XML, alone on its page, in black and white,
// no text under 9 point or out of the page, nothing that runs or calls out.
func sound(t *testing.T, name, svg string) {
	t.Helper()
	for _, one := range strings.SplitAfter(svg, "</svg>\n") {
		if one == "" {
			continue
		}
		p := read(t, one, "")
		root := p.list[0]
		if root.attr["role"] != "img" || p.list[1].kind != "title" || p.list[1].text == "" || p.list[2].kind != "desc" || p.list[2].text == "" {
			t.Errorf("%s has no role, title or description", name)
		}
		if root.num("width") > pageWidth {
			t.Errorf("%s is %s wide", name, root.attr["width"])
		}
		for _, e := range p.list {
			if !slices.Contains([]string{"svg", "title", "desc", "rect", "line", "polyline", "polygon", "circle", "text"}, e.kind) {
				t.Errorf("%s holds <%s>", name, e.kind)
			}
			for a, v := range e.attr {
				switch {
				case (a == "fill" || a == "stroke") && !slices.Contains([]string{"#000", "#fff", "#ccc", "none"}, v):
					t.Errorf("%s is coloured %s", name, v)
				case strings.HasPrefix(a, "on"), a == "href", a == "style", a == "id":
					t.Errorf("%s has the attribute %s", name, a)
				case strings.Contains(v, "NaN"), strings.Contains(v, "Inf"):
					t.Errorf("%s has %s=%q", name, a, v)
				}
			}
			if e.kind == "text" && e.attr["transform"] == "" {
				size := e.num("font-size")
				if size < least {
					t.Errorf("%s: %q is written in %v mm", name, e.text, size)
				}
				left, wide := e.num("x"), broad(size, e.text)
				switch e.attr["text-anchor"] {
				case "middle":
					left -= wide / 2
				case "end":
					left -= wide
				}
				if left < -0.3 || left+wide > root.num("width")+0.3 || e.num("y") > root.num("height") || e.num("y") < size*0.7 {
					t.Errorf("%s: %q runs out of the page: %.1f to %.1f, down %.1f of %.1f", name, e.text, left, left+wide, e.num("y"), root.num("height"))
				}
			}
		}
	}
}

func TestEveryDrawingIsSound(t *testing.T) {
	files, _ := filepath.Glob("../../testdata/systems/*.yaml")
	n := 0
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		s, problems := system.Read(file, data)
		if len(problems) > 0 {
			continue // those that are there to be wrong
		}
		l := survey.Survey(s)
		for name, svg := range every(t, s, l, file == demo || strings.HasSuffix(file, "inch-loop.yaml")) {
			sound(t, filepath.Base(file)+": "+name, svg)
			n++
		}
	}
	if n < 100 {
		t.Errorf("only %d drawings were looked at", n)
	}
}

func TestSameInputSameBytes(t *testing.T) {
	s, l := load(t, demo)
	again, m := load(t, demo)
	first, second := every(t, s, l, true), every(t, again, m, true)
	for name, svg := range first {
		if second[name] != svg {
			t.Errorf("%s comes out otherwise the second time", name)
		}
	}
}

// What stands in a file is only ever text.
func TestHostileWordsStayWords(t *testing.T) {
	s, _ := load(t, demo)
	const hostile = `</text></svg><script>alert(1)</script>" onload='x' &lt; ]]> <!-- ` + "\x00\u202e\ufffe"
	changed, problems := s.Edited(system.Edit{Op: system.Set, Pointer: "/name", Value: strings.Map(func(r rune) rune {
		if r == 0 || r == 0xfffe {
			return -1
		}
		return r
	}, hostile)})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	l := survey.Survey(changed) // names of things cannot hold such words in a file; here they do all the same
	for _, v := range changed.Vessels {
		v.ID += hostile
	}
	for _, line := range changed.Lines {
		line.ID += hostile
	}
	for name, svg := range every(t, changed, l, true) {
		if strings.Contains(svg, "<script") || strings.Contains(svg, "\u202e") {
			t.Errorf("%s holds markup from the file", name)
		}
		sound(t, name, svg)
	}
}

// A value that is missing gives a drawing without it or a reason, never a panic.
func TestMissingValues(t *testing.T) {
	s, _ := load(t, demo)
	looked := s.Looked()
	n := 0
	for i := 0; i < len(looked); i += 9 {
		less, problems := s.Edited(system.Edit{Op: system.Delete, Pointer: looked[i].Pointer()})
		if len(problems) > 0 {
			continue
		}
		n++
		for name, svg := range every(t, less, survey.Survey(less), false) {
			sound(t, looked[i].Pointer()+" left out: "+name, svg)
		}
	}
	if n < 15 {
		t.Errorf("only %d values were left out", n)
	}
}

func FuzzEscape(f *testing.F) {
	for _, s := range []string{"", "a<b", `"'&`, "\x00\xff", "]]>", "\u202eabc", "\ud7ff\ufffd"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, words string) {
		var d sheet
		d.label(words, small, middle, point{1, 1}, words)
		svg := d.svg(words, words)
		x := xml.NewDecoder(strings.NewReader(svg))
		n := 0
		for {
			token, err := x.Token()
			if err == io.EOF {
				break
			}
			if err != nil {
				t.Fatalf("%q breaks the drawing: %v", words, err)
			}
			if _, ok := token.(xml.StartElement); ok {
				n++
			}
		}
		if n != 6 || !utf8.ValidString(svg) { // svg, title, desc, paper, ground, text
			t.Fatalf("%q makes %d elements", words, n)
		}
	})
}

func FuzzChart(f *testing.F) {
	f.Add(0.0, 1.0, 0.0, 1.0, 0.5, 0.5, false)
	f.Add(1e-300, 1e300, -1e308, 1e308, 3.0, 0.1, true)
	f.Fuzz(func(t *testing.T, x0, x1, y0, y1, x, y float64, log bool) {
		svg, why := Chart(Plot{Title: "t", Description: "d",
			X:      Axis{Title: "x", Kind: quantity.Length, Unit: "mm", Low: x0, High: x1, Log: log},
			Y:      Axis{Title: "y", Kind: quantity.Length, Unit: "m", Low: y0, High: y1},
			Curves: []Curve{{Name: "c", X: []float64{x0, x, x1}, Y: []float64{y0, y, y1}, Points: true}},
			Marks:  []Mark{{x, y, "m"}}, Limits: []Limit{{At: y, Name: "l"}, {At: x, Upright: true, Name: "u"}}})
		if (svg == "") == (why == "") {
			t.Fatal("a chart or a reason")
		}
		if strings.Contains(svg, "NaN") || strings.Contains(svg, "Inf") {
			t.Fatalf("no number in the chart: %s", svg)
		}
	})
}
