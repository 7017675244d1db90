package report

import (
	"strconv"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
)

// Columns of notes, counted from their left edge.
const (
	noteText  = 5
	noteInner = 14
)

// note explains a flag: the verdict, the clause in words, the remedy, the source.
func (p *page) note(f *review.Finding, wide int) []line {
	c, i := f.Clause, verdictInk(f.Judgement)
	head := line{{text: " "}}.add(flag(f.Number), i).at(noteText).add(verdictWords(f.Judgement), i).add(": "+c.ID, noInk)
	out := []line{head}
	if place := p.placeWords(f.Place); head.width()+1+width(place) <= wide {
		out[0] = head.right(place, wide, referenceInk)
	} else {
		out = append(out, line{}.at(noteText).add(place, referenceInk))
	}
	add := func(label, text string, ink ink) {
		out = append(out, labelled(label, sentence(text), noteText, noteInner, wide, ink)...)
	}
	out = append(out, paragraph(sentence(c.Title), noteText, wide)...)
	if f.Verdict == review.NotMet {
		add("State", stateNote(f.Judgement), noInk)
	}
	if f.WithinSpread() && f.Verdict == review.NotMet {
		add("Spread", "the sources put it at "+spreadShown(f.Kind, f.Value, p.in)+"; the limit lies within, so another source may find it met", noInk)
	}
	add("Beside", p.besideWords(f), noInk)
	for _, missing := range f.Missing {
		add("Missing", p.missingWords(missing), noInk)
	}
	for k, r := range f.Remedies {
		label := "Remedy"
		if k > 0 {
			label = "or"
		}
		text := sentence(r.Text)
		if r.Then != "" {
			text += " " + capital(sentence(r.Then))
		}
		add(label, text, noInk)
	}
	for k, s := range c.Sources {
		label := "Source"
		if k > 0 {
			label = ""
		}
		add(label, sourceWords(s), referenceInk)
	}
	if c.Safety && c.Caution != "" {
		out = append(out, line{{text: " "}}.add(cautionFlag+" CAUTION", cautionInk))
		out = append(out, paragraph(sentence(c.Caution), noteText, wide)...)
	}
	return out
}

func stateNote(j *review.Judgement) string {
	if j.When == "" || j.When == "always" {
		return ""
	}
	return "worst with " + stateWords(j.When)
}

// besideWords is the quantities that the clause wants seen beside the judged one.
func (p *page) besideWords(f *review.Finding) string {
	var out []string
	seen := map[string]bool{}
	for _, n := range f.Shows {
		if n == nil || f.Node == n {
			continue
		}
		v, known := n.Value()
		if !known {
			continue
		}
		text := n.Title + " " + shown(n.Kind, v.X, p.in)
		if spread := spreadShown(n.Kind, v, p.in); spread != "" {
			text += " (" + spread + ")"
		}
		if !seen[text] {
			seen[text] = true
			out = append(out, text)
		}
	}
	return strings.Join(out, "; ")
}

func sourceWords(s review.Source) string {
	if s.Text == "" || strings.HasPrefix(s.Text, s.Grade) {
		return s.Text + strings.Repeat(s.Grade, b2i(s.Text == ""))
	}
	return s.Grade + ": " + s.Text
}

func b2i(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

func (p *page) placeWords(at system.Place) string {
	if at.Line == 0 {
		return ""
	}
	return "file line " + strconv.Itoa(at.Line)
}

// missingWords names a value that the file does not give and how to find it. It
// never says which value would be met.
func (p *page) missingWords(missing string) string {
	if !strings.HasPrefix(missing, "/") {
		return missing
	}
	parts := strings.Split(strings.TrimPrefix(missing, "/"), "/")
	key := parts[len(parts)-1]
	where := strings.Join(parts[:len(parts)-1], "/")
	text := "`" + key + "`"
	if where != "" {
		text += " of " + where
	}
	return text + ". " + capital(howToFind(key))
}

// finding holds how to find what a key wants.
var finding = map[string]string{
	"pH":               "measure it over some weeks and give the lowest too",
	"low":              "measure it over some weeks, at the time of day when it is lowest",
	"high":             "measure it over some weeks, at the time of day when it is highest",
	"usual":            "measure it over some weeks",
	"chloride":         "ask the water supplier for the analysis, or measure with a test strip",
	"salt_treatment":   "say the strongest salt bath that is planned, or `none`",
	"alkalinity":       "measure with a drop test",
	"temperature":      "measure it in the coldest and in the warmest week",
	"grade":            "read the letters on the head of the fastener; without letters, ask the seller",
	"residual_current": "read the figure with mA on the safety switch that feeds the sockets",
	"curve":            "take points of flow and height from the maker's curve, not the figure on the box",
	"wall":             "measure the plug that the hole saw cuts out",
	"hardness":         "ask the seller of the rubber for its Shore A figure",
	"standoff":         "measure from the floor up to the drain's open edge",
	"weight_in_water":  "weigh the part while it hangs under water",
	"stands_at":        "measure from the datum up to the inner floor, not to the top of the stand",
	"class":            "read the print along the pipe",
	"size":             "read the print along the pipe",
	"standard":         "read the print along the pipe",
	"joint":            "say how the joint is made: cemented, pinned, uncemented ...",
	"material":         "look for the mark in the base of the vessel",
}

func howToFind(key string) string {
	if how := finding[key]; how != "" {
		return how
	}
	return "measure it or look it up, and write it there"
}

// limitOf is the kind of a quantity by the catalogue.
func (p *page) kindOf(name string) quantity.Kind { return p.defined[name].Kind }
