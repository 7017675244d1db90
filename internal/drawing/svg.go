// Package drawing draws a loop as SVG, in black and white: plain drafting after
// ISO 128 (lines), ISO 129 (dimensions) and ISO 6412 (pipework). It takes its
// numbers from the system and the ledger and works nothing out but where on the
// paper they stand.
//
// Every drawing is in millimetres of paper, no wider than the text of an A4 or
// Letter page, with no text under 9 point. Text is text; a title and a
// description speak for the drawing to those who do not see it. A drawing that
// wants a number that is missing is not made: its function answers with why.
package drawing

import (
	"math"
	"strconv"
	"strings"
	"unicode"
)

// Widths and text sizes on paper, mm.
const (
	pageWidth  = 180.0 // text of an A4 page with margins of 15 mm
	pageHeight = 250.0
	small      = 3.2 // 9 point
	usual      = 3.6
	heading    = 4.4
)

// A pen is a line of ISO 128-2: its width and, broken lines, its dashes in widths.
type pen struct {
	width float64
	dash  []float64
}

// The pens. Broken lines have their lengths from ISO 128-2, table 3.
var (
	wide   = pen{width: 0.5}
	narrow = pen{width: 0.25}
	hair   = pen{width: 0.13}
	hidden = pen{0.25, []float64{12, 3}}
	centre = pen{0.25, []float64{24, 3, 0.5, 3}}
	heavy  = pen{width: 0.7}
	dotted = pen{0.45, []float64{1, 2.5}}
)

// A point is a place on the paper, mm to the right and down.
type point struct{ x, y float64 }

// A sheet is a drawing in the making.
type sheet struct {
	b             strings.Builder
	width, height float64
}

// svg is the drawing with its title and description.
func (s *sheet) svg(title, description string) string {
	w, h := number(s.width), number(s.height)
	return `<svg xmlns="http://www.w3.org/2000/svg" role="img" width="` + w + `mm" height="` + h + `mm" viewBox="0 0 ` + w + ` ` + h +
		`" font-family="Helvetica, Arial, sans-serif" fill="none" stroke="none">` +
		"<title>" + escape(title) + "</title><desc>" + escape(description) + "</desc>\n" +
		`<rect width="` + w + `" height="` + h + `" fill="#fff"/>` + "\n" + s.b.String() + "</svg>\n"
}

// number writes a length on paper to a thousandth of a millimetre.
func number(x float64) string {
	t := strconv.FormatFloat(math.Round(x*1000)/1000, 'f', -1, 64)
	if t == "-0" {
		return "0"
	}
	return t
}

var escaper = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;", "'", "&#39;")

// escape makes text safe in XML and HTML: markup is written out, and what no
// XML document may hold, or what turns the direction of text, is left away.
func escape(text string) string {
	return escaper.Replace(strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t':
			return ' '
		case unicode.Is(unicode.C, r), r == unicode.ReplacementChar, r == 0xfffe, r == 0xffff:
			return -1
		}
		return r
	}, text))
}

func (s *sheet) add(parts ...string) {
	for _, p := range parts {
		s.b.WriteString(p)
	}
	s.b.WriteByte('\n')
}

func (p pen) String() string {
	out := ` stroke="#000" stroke-width="` + number(p.width) + `"`
	if len(p.dash) == 0 {
		return out
	}
	list := make([]string, len(p.dash))
	for i, d := range p.dash {
		list[i] = number(d * p.width)
	}
	return out + ` stroke-dasharray="` + strings.Join(list, " ") + `"`
}

// named is the attribute by which a part of the drawing can be found again.
func named(name string) string {
	if name == "" {
		return ""
	}
	return ` data-part="` + escape(name) + `"`
}

func (s *sheet) line(name string, p pen, a, b point) {
	s.add(`<line x1="`, number(a.x), `" y1="`, number(a.y), `" x2="`, number(b.x), `" y2="`, number(b.y), `"`, p.String(), named(name), `/>`)
}

// path is a polyline, closed and filled if there is a fill.
func (s *sheet) path(name string, p pen, fill string, points ...point) {
	list := make([]string, len(points))
	for i, at := range points {
		list[i] = number(at.x) + "," + number(at.y)
	}
	shape, end := "polyline", ` stroke-linejoin="round"`
	if fill != "" {
		shape, end = "polygon", ` fill="`+fill+`"`
	}
	s.add(`<`, shape, ` points="`, strings.Join(list, " "), `"`, p.String(), end, named(name), `/>`)
}

// tube is a pipe of some outside width along its middle line, its two walls drawn.
func (s *sheet) tube(name string, width float64, points ...point) {
	list := make([]string, len(points))
	for i, at := range points {
		list[i] = number(at.x) + "," + number(at.y)
	}
	width = math.Max(width, 1)
	for i, colour := range []string{"#000", "#fff"} {
		s.add(`<polyline points="`, strings.Join(list, " "), `" stroke="`, colour, `" stroke-width="`, number(width-0.6*float64(i)), `" stroke-linejoin="round"`, named(name), `/>`)
		name = ""
	}
}

func (s *sheet) circle(name string, p pen, fill string, at point, r float64) {
	if fill != "" {
		fill = ` fill="` + fill + `"`
	}
	s.add(`<circle cx="`, number(at.x), `" cy="`, number(at.y), `" r="`, number(r), `"`, p.String(), fill, named(name), `/>`)
}

// Where a text stands by its point.
const (
	start  = ""
	middle = ` text-anchor="middle"`
	end    = ` text-anchor="end"`
)

// text writes on the baseline through a point.
func (s *sheet) text(name string, size float64, anchor string, at point, words string) {
	s.add(`<text x="`, number(at.x), `" y="`, number(at.y), `" font-size="`, number(size), `" fill="#000"`, anchor, named(name), `>`, escape(words), `</text>`)
}

// label is a text on a white ground, which keeps lines off it.
func (s *sheet) label(name string, size float64, anchor string, at point, words string) {
	w := broad(size, words) + 0.8
	left := at.x - 0.4
	switch anchor {
	case middle:
		left = at.x - w/2
	case end:
		left = at.x - w + 0.4
	}
	s.add(`<rect x="`, number(left), `" y="`, number(at.y-0.82*size), `" width="`, number(w), `" height="`, number(1.05*size), `" fill="#fff"/>`)
	s.text(name, size, anchor, at, words)
}

func (s *sheet) bold(size float64, anchor string, at point, words string) {
	s.add(`<text x="`, number(at.x), `" y="`, number(at.y), `" font-size="`, number(size), `" font-weight="bold" fill="#000"`, anchor, `>`, escape(words), `</text>`)
}

// upright writes from below to above.
func (s *sheet) upright(size float64, anchor string, at point, words string) {
	s.add(`<text transform="translate(`, number(at.x), ` `, number(at.y), `) rotate(-90)" font-size="`, number(size), `" fill="#000"`,
		anchor, `>`, escape(words), `</text>`)
}

// helvetica is the widths of the letters from space to ~ in thousandths of the
// text size, as in the metrics of Helvetica, which the common fonts of a page share.
var helvetica = [...]float64{
	278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
	1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
	333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
}

// broad is how wide a text comes out, mm: other letters count as wide as they may be.
func broad(size float64, words string) float64 {
	w := 0.0
	for _, r := range words {
		switch {
		case r >= ' ' && r <= '~':
			w += helvetica[r-' ']
		default:
			w += 1000
		}
	}
	return w * size / 1000
}

// fitted is a text cut to a width, with dots where it was cut.
func fitted(size, width float64, words string) string {
	if broad(size, words) <= width {
		return words
	}
	runes := []rune(words)
	for len(runes) > 1 && broad(size, string(runes)+"...") > width {
		runes = runes[:len(runes)-1]
	}
	return string(runes) + "..."
}
