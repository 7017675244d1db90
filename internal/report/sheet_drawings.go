package report

import (
	"dryfit/internal/drawing"
	"dryfit/internal/working"
)

// drawings is every drawing of the loop, each with the flags of its part explained beneath.
func (w *sheeter) drawings() []Section {
	if w.System == nil || w.Ledger == nil {
		return nil
	}
	s, l := w.System, w.Ledger
	var out []Section
	under := func(id, title string, blocks ...Block) { out = append(out, section(3, id, title, blocks...)...) }
	one := func(name, title, part string, draw func() (string, string)) Block {
		svg, why := draw()
		d := w.drawn("drawing-"+name, title, svg, why)
		d.Notes = w.flagNotes(part)
		return d
	}
	under("drawing-levels", "Levels of the loop", one("levels", "Levels of all vessels on one datum, at rest and running", "", func() (string, string) { return drawing.Levels(s, l) }))
	for _, v := range s.Vessels {
		if v.Role.Is("radial-flow-settler", "swirl-settler", "settler") || v.Well != nil {
			under("drawing-"+v.ID, "Section of "+v.ID, one("section-"+v.ID, "Section of "+v.ID+", to scale", v.ID, func() (string, string) { return drawing.Settler(s, l, v.ID) }))
		}
	}
	for _, line := range s.Lines {
		under("drawing-"+line.ID, "Run of "+line.ID, one("run-"+line.ID, "Run of "+line.ID+" with its pieces, lengths and joints", line.ID, func() (string, string) { return drawing.Run(s, l, line.ID) }))
	}
	for _, p := range s.Pumps {
		under("drawing-pump-"+p.ID, "Pump "+p.ID, one("pump-"+p.ID, "Head of pump "+p.ID+" against what the pipes ask for", p.ID, func() (string, string) { return drawing.PumpCurve(s, l, p.ID) }))
	}
	for _, set := range []struct {
		name, id, title string
		draw            func(subject string) (string, string)
	}{
		{"settlers", "capture-", "Share caught by settling velocity, ", func(v string) (string, string) { return drawing.Capture(s, l, v) }},
		{"stocked_tanks", "oxygen-", "Oxygen after the power goes, ", func(v string) (string, string) { return drawing.Oxygen(s, l, v) }},
	} {
		for _, v := range l.Sets[set.name] {
			under(set.id+v, set.title+v, one(set.id+v, set.title+v, v, func() (string, string) { return set.draw(v) }))
		}
	}
	out = append(out, w.coursesDrawn()...)
	out = append(out, w.templates()...)
	if len(out) == 0 {
		return nil
	}
	lead := Text("Drawn from the same numbers as the tables. ~ marks a water surface. A flag such as /1\\ is explained under the drawing and in the findings.")
	return append(section(2, "drawings", "Drawings", lead), out...)
}

// drawn is a drawing, or why there is none. What is more than a drawing is left out.
func (w *sheeter) drawn(name, title, svg, why string) Drawing {
	switch {
	case svg != "" && !Harmless(svg):
		svg, why = "", "the drawing holds what a drawing has no need of"
	case svg != "":
		why = ""
	case why == "":
		why = "it cannot be drawn yet"
	}
	return Drawing{Name: w.name(slug(name)), Title: title, SVG: svg, Why: why}
}

// flagNotes explains the flags of a part beneath its drawing.
func (w *sheeter) flagNotes(part string) []string {
	var out []string
	for _, f := range w.Findings {
		if part != "" && w.partOf(f.Subject) == part {
			out = append(out, flagText(f.Number)+" "+verdictWords(f.Judgement)+": "+sentence(f.Clause.Title))
		}
	}
	return out
}

// coursesDrawn is the levels in time with the pump stopped and with each opening blocked.
// Scenes that go alike are drawn once.
func (w *sheeter) coursesDrawn() []Section {
	var out []Section
	var drawn []working.Followed
	for _, f := range w.followed {
		if f.Case != "stopped" && f.Case != "one_blocked" || len(f.Missing) > 0 || w.alreadyDrawn(drawn, f) {
			continue
		}
		drawn = append(drawn, f)
		svg, why := drawing.Courses(f, w.System)
		name := sceneName(f.Scene)
		if f.Case == "stopped" {
			name = caseHead(f.Case) + ", " + name
		}
		out = append(out, section(3, "course-"+name, "Levels in time: "+name, w.drawn("drawing-course-"+name, "Levels in time: "+sceneMeaning(f.Scene, w.System), svg, why))...)
	}
	return out
}

func (w *sheeter) alreadyDrawn(drawn []working.Followed, f working.Followed) bool {
	for _, other := range drawn {
		if sameCourse(other, f) {
			return true
		}
	}
	return false
}

// templates is the holes of each vessel at true size.
func (w *sheeter) templates() []Section {
	var out []Section
	for _, v := range w.System.Vessels {
		sheets, why := drawing.Template(w.System, w.Ledger, v.ID)
		var blocks []Block
		for _, svg := range sheets {
			d := w.drawn("template-"+v.ID, "Holes of "+v.ID+" at true size. Print at 100 % and measure the scale bar before you drill", svg, why)
			d.True = true
			blocks = append(blocks, d)
		}
		if len(sheets) == 0 && why != "" {
			blocks = append(blocks, w.drawn("template-"+v.ID, "Holes of "+v.ID, "", why))
		}
		if len(blocks) > 0 {
			out = append(out, section(3, "template-"+v.ID, "Template of "+v.ID, blocks...)...)
		}
	}
	return out
}
