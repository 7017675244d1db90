package report

import (
	"slices"
	"strconv"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// valve is one valve of the loop with the name that the sheet gives it.
type valve struct {
	*system.Piece
	name string
}

// valvesOf is the valves of a line.
func (w *sheeter) valvesOf(l *system.Line) []valve {
	var out []valve
	for _, p := range l.Pieces {
		if p.Valve != nil {
			out = append(out, valve{p, "the valve of " + l.ID})
		}
	}
	if len(out) > 1 {
		for i := range out {
			out[i].name += ", piece " + strconv.Itoa(out[i].Index+1)
		}
	}
	return out
}

// valveNames is the valves of some lines in a sentence; empty without any.
func (w *sheeter) valveNames(lines ...*system.Line) string {
	var names []string
	for _, l := range lines {
		for _, v := range w.valvesOf(l) {
			names = append(names, v.name)
		}
	}
	return series(names, "and")
}

// openWords is how far a valve is open.
func openWords(share float64) string {
	switch {
	case share <= 0:
		return "shut"
	case share < 1:
		return inUnit(quantity.Fraction, share, "%", 0) + " % open"
	}
	return "open"
}

// runs is how a valve stands while the loop runs as usual.
func (v valve) runs() string {
	words := "open"
	if share, given := v.Valve.Open.SI(); given {
		words = openWords(share)
	}
	if locked, given := v.Valve.Locked.Value(); given {
		if locked == words {
			return words + ", locked"
		}
		words += ", locked " + locked
	}
	return words
}

// mode is one way of running, with the lines whose valves are open and shut in it.
type mode struct {
	title      string
	id         string // in the file; empty for one that follows from the lines
	open, shut []*system.Line
}

// modes is the ways of running that the file names, and those in which settlers are
// drawn down and emptied.
func (w *sheeter) modes() []mode {
	var out []mode
	for _, id := range w.System.Keys("/modes") {
		title := id
		if text, given := w.System.Word("/modes/" + id + "/title").Value(); given {
			title = text
		}
		out = append(out, mode{title: title, id: id})
	}
	for _, v := range w.System.Vessels {
		down, waste := w.dutyFrom(v, "draw-down"), w.dutyFrom(v, "waste", "empty")
		if len(down) > 0 {
			out = append(out, mode{title: v.ID + " drawn down", open: down, shut: waste})
		}
		if len(waste) > 0 {
			out = append(out, mode{title: v.ID + " emptied", open: waste, shut: down})
		}
	}
	return out
}

// dutyFrom is the lines of some duties out of a vessel.
func (w *sheeter) dutyFrom(v *system.Vessel, duties ...string) []*system.Line {
	var out []*system.Line
	for _, l := range w.System.LinesFrom(v) {
		if slices.Contains(duties, l.Duty) {
			out = append(out, l)
		}
	}
	return out
}

// stands is how a valve stands in a mode.
func (w *sheeter) stands(v valve, m mode) string {
	switch {
	case m.id != "":
		if share, given := w.System.Number(v.Value+"/positions/"+m.id, quantity.Fraction).SI(); given {
			return openWords(share)
		}
	case slices.Contains(m.open, v.Line):
		return "open"
	case slices.Contains(m.shut, v.Line):
		return "shut"
	}
	return v.runs()
}

// valves is the table of valves by mode, and what comes of each in its other position.
func (w *sheeter) valves() []Section {
	if w.System == nil {
		return nil
	}
	modes := w.modes()
	t := Table{Name: "valves", Caption: "How each valve stands in each mode, and what comes of it the other way", Columns: []Column{{Head: "valve"}, {Head: "kind"}, w.lengths("height"), {Head: "running"}}}
	for _, m := range modes {
		t.Columns = append(t.Columns, Column{Head: m.title})
	}
	t.Columns = append(t.Columns, Column{Head: "the other way while it runs"})
	for _, l := range w.System.Lines {
		for _, v := range w.valvesOf(l) {
			height := Cell{Text: "?"}
			if z, known := w.heightAfter(v.Piece); known {
				height = w.whole(z)
			}
			kind, _ := v.Valve.Kind.Value()
			row := []Cell{{Text: strings.TrimPrefix(v.name, "the ")}, {Text: hyphenless(kind) + w.boreWords(v)}, height, {Text: v.runs()}}
			for _, m := range modes {
				row = append(row, Cell{Text: w.stands(v, m)})
			}
			t.Rows = append(t.Rows, append(row, Cell{Text: w.otherWay(v)}))
		}
	}
	if len(t.Rows) == 0 {
		return nil
	}
	var followed []working.Scene
	for _, sc := range w.Ledger.Scenes {
		if sc.Case == "wrong_valve" {
			followed = append(followed, sc)
		}
	}
	return section(2, "valves", "Valves by mode", t, w.openWhy(followed))
}

func (w *sheeter) boreWords(v valve) string {
	d, given := v.Valve.Bore.SI()
	if !given {
		return ""
	}
	c := w.length(d)
	text := ", bore " + c.Text + " " + smallUnit(w.in)
	if c.US != "" {
		text += " (" + c.US + " in)"
	}
	return text
}

// otherWay is what comes of a valve in its other position, if that was followed.
func (w *sheeter) otherWay(v valve) string {
	for _, sc := range w.Ledger.Scenes {
		if sc.Case != "wrong_valve" || sc.Subject != v.ID() {
			continue
		}
		to := sc.Fault[strings.LastIndexByte(sc.Fault, ' ')+1:]
		return to + ": " + w.sceneSaid(sc)
	}
	return ""
}

// openWhy is what keeps some scenes from being followed, each reason once.
func (w *sheeter) openWhy(scenes []working.Scene) Text {
	var reasons []string
	for _, sc := range scenes {
		if why := w.gapsOfScene(sc); why != "" && !slices.Contains(reasons, why) {
			reasons = append(reasons, why)
		}
	}
	return openText(reasons)
}

// openText says beneath a table what its question marks wait for; empty when they wait for nothing.
func openText(reasons []string) Text {
	if len(reasons) == 0 {
		return ""
	}
	return Text("? cannot be said yet: " + sentence(strings.Join(reasons, "; ")))
}

// sceneSaid is what a scene comes to, in a sentence without its stop; ? where it could not be followed.
func (w *sheeter) sceneSaid(sc working.Scene) string {
	if len(sc.Missing) > 0 {
		return "?"
	}
	var words []string
	for _, o := range w.outcomes(sc) {
		text := o.words
		if when := whenWords(o); when != "" {
			text += " after " + when
		}
		words = append(words, text)
	}
	if len(words) == 0 {
		return "nothing rises, spills or runs dry"
	}
	return strings.Join(words, "; ")
}
