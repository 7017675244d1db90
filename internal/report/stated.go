package report

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
)

// Right ends of the columns of the table of stated numbers, counted from 0.
const (
	statedEnd  = 44
	workedEnd  = 58
	differsEnd = 69
)

// stated is the table of the numbers that the file states and measures, beside
// what is worked out.
func (p *page) stated() []line {
	if len(p.Stated) == 0 {
		return nil
	}
	heads := []string{"STATED AND MEASURED", "STATED", "MEASURED"}
	for i, measured := range []bool{true, false} {
		if !slices.ContainsFunc(p.Stated, func(c review.Stated) bool { return c.Measured == measured }) {
			heads = heads[i+1:]
		}
	}
	head := line{}.add(heads[0], waterInk).add(", beside what is worked out here", noInk)
	columns := line{}.right("in the file", statedEnd, noInk).right("worked out", workedEnd, noInk).right("differs", differsEnd, noInk).right("file line", bodyWidth, noInk)
	out := []line{head, {}, columns}
	for _, c := range p.Stated {
		out = append(out, p.statedRow(c)...)
	}
	return out
}

// statedRow is one of them: a line of numbers, and beneath it what they are and
// how near they come.
func (p *page) statedRow(c review.Stated) []line {
	theirs, ours, differs := p.statedCells(c)
	var out []line
	theirs = clip(safe(theirs), statedEnd-caseAt)
	l := line{}.at(caseAt).add(c.Quantity, noInk)
	if l.width()+1+width(theirs) > statedEnd {
		out, l = append(out, l), line{}
	}
	l = l.right(theirs, statedEnd, noInk)
	if ours == "?" {
		l = l.right(ours, workedEnd, openInk)
	} else {
		l = l.right(ours, workedEnd, noInk).right(differs, differsEnd, noInk)
	}
	if c.Place.Line > 0 {
		l = l.right(strconv.Itoa(c.Place.Line), bodyWidth, referenceInk)
	}
	out = append(out, l)
	return append(out, paragraph(p.statedWords(c, differs), noteText, bodyWidth)...)
}

// How two numbers differ that are the same, or as good as.
const (
	same   = "not at all"
	nearly = "hardly"
)

// statedCells is the author's value, the one worked out, and how they differ. The
// one worked out stands in the unit that the author chose, but in US units where
// those are asked for.
func (p *page) statedCells(c review.Stated) (theirs, ours, differs string) {
	if c.Fact != nil {
		if ours = c.Fact.Word; ours == "" {
			ours = "?"
		}
		return c.Text, ours, ""
	}
	v, ok := c.Compared()
	if !ok {
		return c.Text, "?", ""
	}
	theirs, ours = c.Text, p.inTheirUnit(c, c.Node.Kind, v.X)
	if p.in == quantity.US {
		theirs = shown(c.Node.Kind, *c.Value, p.in)
	}
	d, share, _ := c.Difference()
	switch kind := c.Node.Kind; {
	case d == 0:
		differs = same
	case math.Abs(share) < 1e-4:
		differs = nearly
	case !math.IsNaN(share) && math.Abs(share) < 10:
		differs = signed(share*100, inUnit(quantity.Number, math.Abs(share)*100, "", 2)+" %")
	default:
		if kind == quantity.Temperature {
			kind = quantity.TemperatureDifference
		}
		differs = signed(d, p.inTheirUnit(c, kind, math.Abs(d)))
	}
	return theirs, ours, differs
}

// inTheirUnit is a number in the unit that the author chose.
func (p *page) inTheirUnit(c review.Stated, kind quantity.Kind, x float64) string {
	if p.in == quantity.US || c.Unit == "" {
		return shown(kind, x, p.in)
	}
	return strings.TrimSpace(inUnit(kind, x, c.Unit, 0) + " " + c.Unit)
}

// signed puts the sign of x before its size.
func signed(x float64, size string) string {
	if x < 0 {
		return "-" + size
	}
	return "+" + size
}

// statedWords says what was held against what, how near it comes, and what the
// author says of it.
func (p *page) statedWords(c review.Stated, differs string) string {
	var out []string
	say := func(text string) {
		if text != "" {
			out = append(out, sentence(capital(text)))
		}
	}
	switch {
	case c.Node != nil:
		say(c.Node.Title + ", " + stateWords(c.Node.Address.State()))
	case c.Fact != nil:
		say(titleOfFact(p.Review, c.Fact.Name))
	}
	say(p.agreement(c))
	if c.Measured {
		say(readingWords(c))
	} else if c.Working != "" {
		say("the author's working: " + c.Working)
	}
	apart := differs != "" && differs != same && differs != nearly && c.Agrees() == review.Apart
	if apart && c.Node.Formula != "" && c.Node.Formula != "as stated" {
		say("worked out here as " + c.Node.Formula)
	}
	if c.Note != "" {
		say("note: " + c.Note)
	}
	if len(c.Missing) > 0 {
		say("? " + capital(p.missingWords(c.Missing)))
	}
	return strings.Join(out, " ")
}

// agreement says how near the numbers come, where there is a measure for it.
func (p *page) agreement(c review.Stated) string {
	v, ok := c.Compared()
	between := ""
	if ok && v.Spread() {
		between = p.rangeInTheirUnit(c)
	}
	switch c.Agrees() {
	case review.SameWord:
		return "the two agree"
	case review.WithinTolerance:
		if c.Measured {
			return "they agree within the spread of the readings, " + c.Allowed + " either way"
		}
		return "they agree within the " + c.Allowed + " that the file allows"
	case review.WithinSpread:
		return "they agree within what the sources leave, " + between
	}
	switch {
	case between != "":
		return "the sources leave " + between
	case c.Fact != nil && len(c.Missing) == 0:
		return "the two differ"
	}
	return ""
}

// rangeInTheirUnit is the range of what is worked out: "1.98 to 2.05 mm/s".
func (p *page) rangeInTheirUnit(c review.Stated) string {
	v, _ := c.Node.Value()
	if p.in == quantity.US || c.Unit == "" {
		return spreadShown(c.Node.Kind, v, p.in)
	}
	return inUnit(c.Node.Kind, v.Low, c.Unit, 0) + " to " + inUnit(c.Node.Kind, v.High, c.Unit, 0) + " " + c.Unit
}

// readingWords is how a measured number was found: "measured on 2026-03-14 by pupils with a steel rule".
func readingWords(c review.Stated) string {
	text := "measured"
	for _, part := range []struct{ word, what string }{{"on", c.On}, {"by", c.By}, {"with", c.With}} {
		if part.what != "" {
			text += " " + part.word + " " + part.what
		}
	}
	if c.Allowed != "" && c.Agrees() != review.WithinTolerance {
		text += ", " + c.Allowed + " either way"
	}
	return text
}

// missingWords is what to find, and reasons, in a sentence.
func (p *page) missingWords(missing []string) string {
	g := p.gapsOf(&review.Finding{Judgement: &review.Judgement{Missing: missing}})
	return strings.Join(append(g.asks(), g.reasons...), "; ")
}
