package report

import (
	"path/filepath"
	"strconv"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
)

// titleBlock is what a drawing carries in its lower corner: what it is, whose, as
// of when, and what it was made from.
func (w *sheeter) titleBlock() []Section {
	t := Table{Name: "title-block", Caption: "Title block", Columns: []Column{{Head: "field"}, {Head: "entry"}}}
	put := func(field, entry string) {
		if entry != "" {
			t.Rows = append(t.Rows, cells(field, entry))
		}
	}
	word := func(key string) string {
		if w.System == nil {
			return ""
		}
		text, _ := w.System.Word("/title_block/" + key).Value()
		return text
	}
	put("Loop", w.Name)
	put("Status", statusWords(w.Status))
	put("Number", word("number"))
	put("Revision", word("revision"))
	put("Date of the revision", word("date"))
	for _, one := range []struct{ field, key string }{{"Drawn by", "drawn_by"}, {"Checked by", "checked_by"}, {"Approved by", "approved_by"}} {
		if text := word(one.key); text != "" {
			put(one.field, text)
		} else {
			put(one.field, "________________")
		}
	}
	put("Sheet as of", w.stamp.AsOf)
	put("Units", map[string]string{"us": "US", "both": "metric, US in brackets"}[w.stamp.Units])
	put("Heights", "in "+map[bool]string{true: "inches", false: "mm"}[w.in == quantity.US]+" above the datum, where nothing else is said; lengths centre to centre")
	put("System file", filepath.Base(w.File))
	put("SHA-256 of the file", w.stamp.File)
	put("Made with", "dryfit "+w.stamp.Version)
	put("SHA-256 of the book and its tables", w.stamp.Book)
	if w.stamp.House != "" {
		put("SHA-256 of the rules of the house", w.stamp.House)
	}
	return section(2, "title-block", "Title block", t)
}

// standingOf says what the loop is, what it comes to, and what to do first.
func (w *sheeter) standingOf() []Section {
	var out []Block
	out = append(out, Text(w.runsAt()))
	if w.System != nil {
		t := Table{Name: "parts-of-the-loop", Caption: "The parts, in the order in which the water meets them", Columns: []Column{{Head: "part"}, {Head: "what it is"}}}
		for _, stop := range w.System.Round() {
			switch {
			case stop.Vessel != nil:
				t.Rows = append(t.Rows, cells(stop.Vessel.ID, w.vesselWords(stop.Vessel)))
			case stop.Line != nil:
				t.Rows = append(t.Rows, cells(stop.Line.ID, strings.Join(append([]string{w.lineWords(stop.Line)}, w.pipeWords(stop.Line)...), "; ")))
			}
		}
		out = append(out, t, Text(w.siteWords()))
		if note, given := w.System.Word("/note").Value(); given {
			out = append(out, Text("The file adds: "+note))
		}
	}
	out = append(out, Text(comesTo(&w.Summary)))
	todo := Table{Name: "first", Caption: "What to do, in this order", Columns: []Column{{Head: "order"}, {Head: "what"}, {Head: "flags and parts"}}}
	for i, s := range w.todo(w.ToDo()) {
		label := strconv.Itoa(i + 1)
		if s.open {
			label = "not yet"
		}
		var where []string
		for k, part := range s.parts {
			where = append(where, s.flags(k).text()+" "+part)
		}
		todo.Rows = append(todo.Rows, cells(label, capital(s.words), strings.Join(where, ", ")))
	}
	return section(2, "ready", "What it is and whether it is ready", append(out, todo)...)
}

// runsAt says the flow with the temperature of the water.
func (w *sheeter) runsAt() string {
	text := w.flowWords()
	if strings.HasPrefix(text, "The flow") {
		return text
	}
	return "The water runs at " + text
}

// siteWords says where the loop stands.
func (w *sheeter) siteWords() string {
	s := w.System
	var out []string
	if setting, given := s.Site.Setting.Value(); given {
		out = append(out, "setting: "+hyphenless(setting))
	}
	for _, one := range []struct{ key, what string }{{"under", "under"}, {"floor", "on"}} {
		if text, given := s.Word("/site/" + one.key).Value(); given {
			out = append(out, one.what+" "+hyphenless(text))
		}
	}
	if x, given := s.Site.Altitude.SI(); given {
		out = append(out, w.say(quantity.Length, x)+" above the sea")
	}
	if x, given := s.Number("/site/unattended", quantity.Time).SI(); given {
		out = append(out, "nobody looks for up to "+w.say(quantity.Time, x))
	}
	if len(out) == 0 {
		return ""
	}
	return sentence(capital(strings.Join(out, "; ")))
}

// cautions is every caution of the safety clauses that are judged here, those not met first.
func (w *sheeter) cautions() []Section {
	blocks := []Block{Text("Read these before anything is lifted, cut, cemented, plugged in or filled. Each stands again beside the work that needs it.")}
	for _, open := range []bool{true, false} {
		for _, c := range w.cautioned() {
			words, isOpen := w.cautionFor(c)
			if isOpen == open {
				blocks = append(blocks, Caution{Text: sentence(c.Caution), For: words})
			}
		}
	}
	for _, more := range alwaysMind {
		blocks = append(blocks, more)
	}
	return section(2, "cautions", "Cautions", blocks...)
}

// alwaysMind is what holds for every loop and no clause judges.
//
// Source: common practice, no source; stale air and gas over rotting sludge in vessels, from memory.
var alwaysMind = []Caution{
	{"Nobody leans head and shoulders into a vessel that holds sludge, and nobody climbs in: rotting sludge gives off hydrogen sulphide, which kills without being smelt for long.", "settler, sump, every deep vessel"},
	{"Wear gloves over cuts, and wash hands with soap after work at the water and before eating.", "all work in the water"},
}

// cautioned is the safety clauses with a caution that were judged, each once, in the order of the loop.
func (w *sheeter) cautioned() []*review.Clause {
	var out []*review.Clause
	seen := map[*review.Clause]bool{}
	for _, j := range w.Judgements {
		if c := j.Clause; c.Safety && c.Caution != "" && j.Verdict != review.DoesNotApply && !seen[c] {
			seen[c] = true
			out = append(out, c)
		}
	}
	return out
}

// cautionFor says what a caution is about, with the flags of what is open.
func (w *sheeter) cautionFor(c *review.Clause) (words string, open bool) {
	const most = 4
	words = c.ID
	count := 0
	for _, f := range w.Findings {
		if f.Clause != c {
			continue
		}
		if count++; count <= most {
			words += " " + flagText(f.Number)
		}
	}
	if count > most {
		words += " and " + counted(count-most) + " more"
	}
	return words, count > 0
}

// mind is the cautions of the clauses named, as far as they are judged here.
func (w *sheeter) mind(ids ...string) []Caution {
	var out []Caution
	for _, id := range ids {
		for _, c := range w.cautioned() {
			if c.ID == id {
				words, _ := w.cautionFor(c)
				out = append(out, Caution{Text: sentence(c.Caution), For: words})
			}
		}
	}
	return out
}
