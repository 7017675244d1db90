package report

import (
	"slices"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// title is the head of the page: name and status, flow and temperature, and
// what the columns of heights mean.
func (p *page) title(named bool) []line {
	var out []line
	if named {
		out = append(out, line{}.add(clip(safe(p.File), bodyWidth), referenceInk))
	}
	out = append(out, nameLines(&p.Summary)...)
	unit := "mm"
	if p.in == quantity.US {
		unit = "inches"
	}
	text := p.flowWords() + " Heights are " + unit + " above the datum. ~ marks a water surface."
	return append(out, paragraph(text, 0, bodyWidth)...)
}

// nameLines is the name of a loop with its status at the right.
func nameLines(s *review.Summary) []line {
	status := statusWords(s.Status)
	names := wrap(s.Name, bodyWidth-width(status)-2)
	if len(names) == 0 {
		names = []string{"Loop without a name"}
	}
	out := []line{plain(names[0]).right(status, bodyWidth, noInk)}
	for _, more := range names[1:] {
		out = append(out, plain(more))
	}
	return out
}

// flowWords is the flow of each pumped line with the temperature of the water.
func (p *page) flowWords() string {
	if p.System == nil {
		return ""
	}
	var flows []string
	for _, l := range p.System.Lines {
		if !l.Pumped {
			continue
		}
		if q, known := p.usual(l.ID, "flow", working.RunClean); known {
			flows = append(flows, shown(quantity.Flow, q, p.in)+" through "+l.ID)
		}
	}
	if len(flows) == 0 {
		return "The flow cannot be said yet."
	}
	text := series(flows, "and")
	if len(flows) == 1 {
		text, _, _ = strings.Cut(text, " through ")
	}
	if t, given := p.System.Water.Temperature.Usual.SI(); given {
		text += " at " + shown(quantity.Temperature, t, p.in)
	}
	return text + "."
}

// partHead is the name of a part in capitals with what it is.
func (p *page) partHead(q *part) []line {
	var texts []string
	switch {
	case q.line != nil:
		texts = append(texts, p.lineWords(q.line))
		texts = append(texts, p.pipeWords(q.line)...)
	case q.vessel != nil:
		texts = append(texts, p.vesselWords(q.vessel))
	}
	name := strings.ToUpper(safe(q.name))
	indent := max(13, width(name)+3)
	head := line{}.add(clip(name, bodyWidth), waterInk)
	var lines []line
	for _, t := range texts {
		from := indent
		if indent > 24 {
			from = 13
		}
		lines = append(lines, paragraph(t, from, bodyWidth)...)
	}
	if len(lines) == 0 || indent > 24 {
		return append([]line{head}, lines...)
	}
	lines[0] = append(head.at(indent), lines[0][1:]...)
	return lines
}

// dutyWords says what a line is for when it is not the daily flow.
var dutyWords = map[string]string{"empty": "emptying, ", "draw-down": "draw-down, ", "waste": "waste, ", "overflow": "overflow, ", "vent": "vent, "}

func (p *page) lineWords(l *system.Line) string {
	words := "by gravity "
	for _, piece := range l.Pieces {
		if piece.Pump != nil {
			words = "pumped by " + piece.Pump.ID + " "
		}
	}
	if l.Duty != "" && l.Duty != "flow" {
		duty := dutyWords[l.Duty]
		if duty == "" {
			duty = l.Duty + ", "
		}
		words = duty + words
	}
	words += "from " + endWords(l.From) + " to " + endWords(l.To)
	if what, given := l.Carries.Value(); given {
		words += ", carries " + hyphenless(what)
	}
	return words
}

// pipeWords is the pipes of a line with their diameters, and how it is joined.
func (p *page) pipeWords(l *system.Line) []string {
	var pipes []*system.Pipe
	for _, piece := range l.Pieces {
		if piece.Pipe != nil && !slices.Contains(pipes, piece.Pipe) {
			pipes = append(pipes, piece.Pipe)
		}
	}
	var out []string
	for _, pipe := range pipes {
		var words []string
		for _, w := range []system.Word{pipe.Size, pipe.Class} {
			if text, given := w.Value(); given {
				words = append(words, text)
			}
		}
		text := strings.Join(words, " ")
		if text == "" {
			text = pipe.ID
		}
		if pipe.Outside > 0 {
			text += ", " + diameter(pipe.Outside, p.in) + " outside"
		}
		if pipe.Inside > 0 {
			text += ", " + diameter(pipe.Inside, p.in) + " inside"
		}
		out = append(out, text)
	}
	if joint, given := l.Joints.Value(); given && len(out) > 0 {
		out[0] += ", " + hyphenless(joint)
	}
	return out
}

// diameter is a diameter to a tenth of a millimetre or a hundredth of an inch.
func diameter(d float64, in quantity.System) string {
	return lossShown(d, in) + " " + smallUnit(in)
}

func (p *page) vesselWords(v *system.Vessel) string {
	words := "vessel"
	if role, given := v.Role.Value(); given {
		words = strings.Replace(hyphenless(role), "radial flow", "radial-flow", 1)
	}
	say := func(n system.Number, what string) {
		if x, given := n.SI(); given {
			words += ", " + heightShown(x, p.in) + " " + smallUnit(p.in) + " " + what
		}
	}
	say(v.Form.Inside, "inside")
	say(v.Form.Length, "long")
	say(v.Form.Width, "wide")
	say(v.Form.Height, "tall")
	return words
}
