package report

import (
	"io"
	"strings"

	"github.com/fatih/color"
)

// ink says in which colour a piece of text stands. The sign beside it carries
// the meaning; the colour only helps the eye.
type ink int

const (
	noInk        ink = iota
	waterInk         // part names, levels
	shallInk         // a shall that is not met
	shouldInk        // a should that is not met
	openInk          // undetermined
	cautionInk       // caution
	referenceInk     // source, file line
)

// Attributes of a 256-colour terminal: 38;5;n is the text, 48;5;n the ground.
var attributes = map[ink][]color.Attribute{
	waterInk:     {38, 5, 31},
	shallInk:     {color.Bold, 38, 5, 130},
	shouldInk:    {38, 5, 130},
	openInk:      {color.Bold, 38, 5, 98},
	cautionInk:   {color.Bold, 38, 5, 16, 48, 5, 220},
	referenceInk: {38, 5, 243},
}

// span is text in one ink.
type span struct {
	text string
	ink  ink
}

// line is one line of a report.
type line []span

// plain is a line without colour.
func plain(text string) line { return line{{text: safe(text)}} }

// add puts text behind what is there.
func (l line) add(text string, i ink) line { return append(l, span{safe(text), i}) }

// at fills up with blanks so that what is added next starts in a column, counted
// from 0; at least one blank when something stands there already.
func (l line) at(column int) line {
	have := l.width()
	switch {
	case have < column:
		return append(l, span{text: strings.Repeat(" ", column-have)})
	case have > 0 && !strings.HasSuffix(l[len(l)-1].text, " "):
		return append(l, span{text: " "})
	}
	return l
}

// right puts text so that it ends before a column; at least one blank stands before it.
func (l line) right(text string, end int, i ink) line {
	return l.at(end-width(text)).add(text, i)
}

func (l line) width() int {
	sum := 0
	for _, s := range l {
		sum += width(s.text)
	}
	return sum
}

func (l line) text() string {
	var b strings.Builder
	for _, s := range l {
		b.WriteString(s.text)
	}
	return b.String()
}

// clip cuts a line to a width. Only names of absurd length come to that.
func (l line) clip(most int) line {
	if l.width() <= most {
		return l
	}
	var out line
	for _, s := range l {
		room := most - out.width()
		if width(s.text) > room {
			return append(out, span{clip(s.text, room), s.ink})
		}
		out = append(out, s)
	}
	return out
}

// write puts lines out, none wider than most, with or without colour. It never
// looks at, or changes, what the colour library holds for the whole program.
func write(w io.Writer, lines []line, most int, colour bool) error {
	pens := map[ink]*color.Color{}
	for i, a := range attributes {
		pens[i] = color.New(a...)
		pens[i].EnableColor()
	}
	var b strings.Builder
	for _, l := range lines {
		l = l.trimmed().clip(most)
		for _, s := range l {
			if pen := pens[s.ink]; pen != nil && colour && s.text != "" {
				b.WriteString(pen.Sprint(s.text))
				continue
			}
			b.WriteString(s.text)
		}
		b.WriteByte('\n')
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// trimmed is the line without the blanks at its end.
func (l line) trimmed() line {
	for len(l) > 0 {
		last := len(l) - 1
		if text := strings.TrimRight(l[last].text, " "); text != "" {
			return append(l[:last:last], span{text, l[last].ink})
		}
		l = l[:last]
	}
	return l
}

// beside puts two columns of lines next to each other.
func beside(left, right []line, column int) []line {
	out := make([]line, max(len(left), len(right)))
	for i := range out {
		if i < len(left) {
			out[i] = left[i].trimmed()
		}
		if i < len(right) && len(right[i]) > 0 {
			out[i] = append(out[i].at(column), right[i]...)
		}
	}
	return out
}
