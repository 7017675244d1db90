package report

import (
	"slices"
	"strconv"
	"strings"

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
	head := line{{text: " "}}.add(flagText(f.Number), i).at(noteText).add(verdictWords(f.Judgement), i).add(": "+c.ID, noInk)
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
	first, again := p.explained[c]
	if again {
		add("Source", "as at "+flagText(first), referenceInk)
	}
	for k, s := range c.Sources {
		if again {
			break
		}
		label := "Source"
		if k > 0 {
			label = ""
		}
		add(label, sourceWords(s), referenceInk)
	}
	if !again {
		p.explained[c] = f.Number
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
	text := withoutGrade(s)
	if text == "" {
		return s.Grade
	}
	return s.Grade + ": " + text
}

// withoutGrade is the text of a source without the words that only repeat its grade.
func withoutGrade(s review.Source) string {
	text := strings.TrimSuffix(strings.TrimRight(s.Text, ". "), s.Grade+", no source")
	return strings.TrimRight(text, ";:, ")
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
	key, where := p.missingKey(missing)
	text := "`" + key + "`"
	if where != "" {
		text += " of " + where
	}
	return text + ". " + capital(howToFind(key))
}

// missingKey is the key that a pointer to a missing value names, and what it
// belongs to. Of a range that is not there at all, that is the range.
func (p *page) missingKey(pointer string) (key, where string) {
	parts := strings.Split(strings.TrimPrefix(pointer, "/"), "/")
	last := len(parts) - 1
	switch key = parts[last]; key {
	case "low", "usual", "high":
		above := "/" + strings.Join(parts[:last], "/")
		if last > 0 && (p.System == nil || !p.System.Document.Has(above)) {
			parts, last = parts[:last], last-1
		}
	}
	key, parts = parts[last], parts[:last]
	if len(parts) > 1 && slices.Contains([]string{"vessels", "lines", "pumps", "pipes"}, parts[0]) {
		parts = parts[1:]
	}
	var words []string
	for i, part := range parts {
		n, err := strconv.Atoi(part)
		switch {
		case err == nil && i > 0 && parts[i-1] == "pieces":
			words = append(words, "piece "+strconv.Itoa(n+1))
		case err == nil:
			words = append(words, "number "+strconv.Itoa(n+1))
		case part != "pieces":
			words = append(words, part)
		}
	}
	return key, strings.Join(words, ", ")
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
	"lip_at":           "measure from the inner floor of the vessel up to the lip",
	"crest_at":         "measure from the inner floor of the vessel up to the edge",
	"at":               "measure from the inner floor of the vessel up to the centre of the hole or pipe end",
	"inside":           "measure across the inside",
	"height":           "measure from the inner floor up to the rim",
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
