package report

import (
	"math"
	"strconv"
	"strings"

	"dryfit/internal/compare"
	"dryfit/internal/making"
	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/working"
)

// moveRow is one row of a comparison, for people.
type moveRow struct {
	what, was, now, by string
	verdict            string // "shall, was met, is not met"
	note               string
	direction          compare.Direction
	ink                ink
}

// none stands where there is nothing on one side.
const none = "none"

// subjectWords is a subject as a builder reads it: "solids-run, piece 6".
func subjectWords(subject string) string {
	line, piece := ofLine(subject)
	if piece == "" {
		return strings.ReplaceAll(subject, "/", ", ")
	}
	return line + ", " + piece
}

// subjectThen is the subject of what is gone: pieces are numbered as they were then.
func subjectThen(subject string, gone bool) string {
	if _, piece := ofLine(subject); gone && piece != "" {
		return subjectWords(subject) + " then"
	}
	return subjectWords(subject)
}

// judgedRow is what became of a judgement.
func judgedRow(j compare.Judged, in quantity.System) moveRow {
	one := j.Now
	if one == nil {
		one = j.Was
	}
	row := moveRow{what: one.Title + ", " + subjectThen(j.Subject, j.Now == nil), ink: noInk, direction: j.Direction, was: none, now: none}
	if j.Was != nil {
		row.was = foundWords(j.Was, in)
	}
	if j.Now != nil {
		row.now, row.ink = foundWords(j.Now, in), verdictInk(j.Now)
	}
	if j.Was != nil && j.Now != nil && j.Was.Name != j.Now.Name { // another thing was asked
		row.was, row.now = string(j.Was.Verdict), string(j.Now.Verdict)
	} else if j.Was != nil && j.Now != nil && row.was == row.now && !one.Fact && j.Was.Verdict != review.Undetermined {
		row.was, row.now = apart2(j.Now.Kind, j.Was.Value.X, j.Now.Value.X, in)
	}
	if j.Margin {
		row.by = byShare(j, in)
	}
	row.verdict, row.note = string(j.Clause.Strength)+", "+verdictsWords(j), j.Clause.ID
	if limit := wantedWords(one, in); limit != "" {
		row.note += "; " + limit
		if j.Was != nil && j.Now != nil && j.Was.Name == j.Now.Name {
			if before := wantedWords(j.Was, in); before != limit { // a house asks otherwise on one side
				row.note += ", before " + before
			}
		}
	}
	row.note += houseTail(one, in)
	if j.Leave != nil {
		row.note += "; there is leave until " + j.Leave.Until
	}
	return row
}

// verdictsWords is what became of the verdict: "was met, is not met".
func verdictsWords(j compare.Judged) string {
	say := map[review.Verdict]string{review.Undetermined: "could not be said"}
	was := func(v review.Verdict) string {
		if words := say[v]; words != "" {
			return words
		}
		return "was " + string(v)
	}
	is := func(v review.Verdict) string {
		if v == review.Undetermined {
			return "cannot be said now"
		}
		return "is " + string(v)
	}
	switch {
	case j.Was == nil:
		return "new, " + is(j.Now.Verdict)
	case j.Now == nil:
		return was(j.Was.Verdict) + ", gone now"
	case j.Was.Verdict == j.Now.Verdict:
		return is(j.Now.Verdict) + " as it was"
	}
	return was(j.Was.Verdict) + ", " + is(j.Now.Verdict)
}

// byShare is how far a margin moved: "0.35 more of limit", "12 mm less left".
func byShare(j compare.Judged, in quantity.System) string {
	size := math.Abs(j.Moved)
	if j.OfLimit {
		text := "over 99"
		if size <= 99 {
			text = fixed(size, 2)
		}
		return text + moreLess(j.Moved, " more", " less") + " of limit"
	}
	kind := j.Now.Kind
	if kind == quantity.Temperature {
		kind = quantity.TemperatureDifference
	}
	return shown(kind, size, in) + moreLess(j.Moved, " less left", " more left")
}

func moreLess(x float64, more, less string) string {
	if x < 0 {
		return less
	}
	return more
}

// apart2 is two values in one unit with as many digits as it takes to tell them apart.
func apart2(kind quantity.Kind, a, b float64, in quantity.System) (was, now string) {
	was, now = shown(kind, a, in), shown(kind, b, in)
	_, unit := numberUnit(was)
	for digits := 4; digits <= 9 && was == now && a != b; digits++ {
		was, now = strings.TrimSpace(inUnit(kind, a, unit, digits)+" "+unit), strings.TrimSpace(inUnit(kind, b, unit, digits)+" "+unit)
	}
	return was, now
}

// quantityRow is a quantity that moved.
func quantityRow(q compare.Quantity, in quantity.System) moveRow {
	a, _ := q.Was.Value()
	b, _ := q.Now.Value()
	row := moveRow{what: q.Now.Title + ", " + subjectWords(q.Now.Address.Subject), direction: compare.Other}
	row.was, row.now = apart2(q.Now.Kind, a.X, b.X, in)
	row.by = differenceWords(q.Now.Kind, a, b, in)
	if state := q.Now.Address; state.Case != working.Always {
		row.note = stateWords(state.State())
	}
	return row
}

func differenceWords(kind quantity.Kind, a, b working.Value, in quantity.System) string {
	if kind == quantity.Temperature {
		kind = quantity.TemperatureDifference
	}
	return shown(kind, math.Abs(b.X-a.X), in) + moreLess(b.X-a.X, " more", " less")
}

// inputRow is a value of the file.
func inputRow(i compare.Input) moveRow {
	key, of := keyWords(i.Pointer)
	row := moveRow{what: key, was: unbraced(i.Was), now: unbraced(i.Now), direction: compare.Other}
	if of != "" {
		row.what += " of " + of
	}
	switch {
	case i.Added:
		row.was = none
	case i.Gone:
		row.what, row.now = row.what+" then", none
	}
	return row
}

// unbraced is a mapping without the braces round it: "bend: 45 deg".
func unbraced(text string) string {
	if strings.HasPrefix(text, "{") && strings.HasSuffix(text, "}") {
		return text[1 : len(text)-1]
	}
	return text
}

// many is a count as it is read.
func many(count float64) string {
	return strconv.FormatFloat(count, 'f', -1, 64)
}

// countsWords is how many more or fewer there are; empty where as many.
func countsWords(was, now float64) string {
	switch d := now - was; {
	case d > 0:
		return many(quantity.Rounded(d)) + " more"
	case d < 0:
		return many(quantity.Rounded(-d)) + " fewer"
	}
	return ""
}

func (w worded) part(p compare.Pair[making.Part]) moveRow {
	say := func(p *making.Part) string {
		if p == nil {
			return none
		}
		text := many(p.Count)
		if p.Length > 0 {
			text += " of " + w.length(p.Length)
		}
		switch p.Got {
		case making.Have:
			text += ", there"
		case making.Make:
			text += ", made"
		}
		return text
	}
	one := firstOf(p.Now, p.Was)
	row := moveRow{what: one.Name + " for " + one.Use, was: say(p.Was), now: say(p.Now), by: paidWords(p), note: one.Spec, direction: compare.Other}
	if p.Was != nil && p.Now != nil && p.Was.Spec != p.Now.Spec {
		row.note = p.Was.Spec + "; now " + p.Now.Spec
	}
	return row
}

// paidWords is how much more or less a part costs; how many more or fewer there are, where
// that is not known or is nothing.
func paidWords(p compare.Pair[making.Part]) string {
	var was, now making.Part
	if p.Was != nil {
		was = *p.Was
	}
	if p.Now != nil {
		now = *p.Now
	}
	currency := now.Sum.Currency
	if currency == "" {
		currency = was.Sum.Currency
	}
	priced := (p.Was == nil || was.Sum.Known) && (p.Now == nil || now.Sum.Known)
	if d := now.Sum.Amount - was.Sum.Amount; priced && math.Abs(d) >= 0.005 && (was.Sum.Currency == "" || was.Sum.Currency == currency) {
		return amountWords(math.Abs(d), currency) + moreLess(d, " more", " less")
	}
	return countsWords(was.Count, now.Count)
}

func firstOf[T any](a, b *T) *T {
	if a != nil {
		return a
	}
	return b
}

// worded says lengths and amounts in one family of units.
type worded struct{ in quantity.System }

func (w worded) length(x float64) string { return tidy(lossShown(x, w.in)) + " " + smallUnit(w.in) }

func (w worded) figure(f making.Figure) string {
	if !f.Known {
		return "?"
	}
	return w.length(f.X)
}

func amountWords(amount float64, currency string) string {
	return moneyWords(making.Money{Amount: amount, Currency: currency, Known: true})
}

func (w worded) cut(p compare.Pair[making.Cut]) moveRow {
	say := func(c *making.Cut) string {
		if c == nil {
			return none
		}
		text := "?"
		if c.Known {
			text = w.figure(c.Length)
		}
		if c.Count > 1 {
			text = strconv.Itoa(c.Count) + " of " + text
		}
		return text
	}
	one := firstOf(p.Now, p.Was)
	row := moveRow{what: subjectThen(one.Piece, p.Now == nil) + ", " + one.Pipe, was: say(p.Was), now: say(p.Now), note: one.From + " to " + one.To, direction: compare.Other}
	if p.Was != nil && p.Now != nil {
		if d := p.Now.Length.X - p.Was.Length.X; p.Was.Known && p.Now.Known && math.Abs(d) > 1e-5 {
			row.by = w.length(math.Abs(d)) + moreLess(d, " longer", " shorter")
		}
		if p.Was.Pipe != p.Now.Pipe {
			row.note += "; was of " + p.Was.Pipe
		}
	}
	return row
}

func (w worded) hole(p compare.Pair[making.Hole]) moveRow {
	say := func(h *making.Hole) string {
		switch {
		case h == nil:
			return none
		case h.Across <= 0:
			return "?"
		case h.Count > 1:
			return strconv.Itoa(h.Count) + " of " + w.length(h.Across)
		}
		return w.length(h.Across)
	}
	height := func(h *making.Hole) string {
		if h.In != making.InWall {
			return ""
		}
		return "middle at " + w.figure(h.At)
	}
	saw := func(h *making.Hole) string {
		if h.Tool == "" {
			return ""
		}
		return "saw of " + h.Tool
	}
	one := firstOf(p.Now, p.Was)
	row := moveRow{what: subjectThen(one.Piece, p.Now == nil) + ", " + string(one.In) + " of " + one.Vessel, was: say(p.Was), now: say(p.Now), direction: compare.Other}
	notes := []string{height(one), saw(one)}
	if p.Was != nil && p.Now != nil {
		for i, of := range []func(*making.Hole) string{height, saw} {
			if was := of(p.Was); was != notes[i] && was != "" {
				notes[i] += ", was " + strings.TrimPrefix(strings.TrimPrefix(was, "middle "), "saw ")
			}
		}
		if p.Was.Fit != p.Now.Fit || p.Was.Pipe != p.Now.Pipe {
			notes = append(notes, "for "+p.Now.Pipe+" in a "+p.Now.Fit+", was for "+p.Was.Pipe+" in a "+p.Was.Fit)
		}
		if p.Was.Round.X != p.Now.Round.X && p.Was.Round.Known && p.Now.Round.Known {
			notes = append(notes, "round the wall at "+shown(quantity.Angle, p.Now.Round.X, w.in)+", was at "+shown(quantity.Angle, p.Was.Round.X, w.in))
		}
	}
	row.note = strings.Join(nonEmpty(notes), "; ")
	return row
}

func (w worded) joint(p compare.Pair[making.Joint]) moveRow {
	say := func(j *making.Joint) string {
		switch {
		case j == nil:
			return none
		case j.Kind == "":
			return "?"
		case j.Count > 1:
			return strconv.Itoa(j.Count) + " " + j.Kind
		}
		return j.Kind
	}
	one := firstOf(p.Now, p.Was)
	return moveRow{what: subjectThen(one.Piece, p.Now == nil), was: say(p.Was), now: say(p.Now), note: one.Before + " to " + one.After, direction: compare.Other}
}

// costWords is what became of the cost, a sentence for each currency.
func costWords(c compare.Comparison) []string {
	var out []string
	for _, m := range c.Cost {
		if !m.Moved() {
			continue
		}
		var by []string
		if m.More >= 0.005 {
			by = append(by, amountWords(m.More, m.Currency)+" more")
		}
		if m.Less >= 0.005 {
			by = append(by, amountWords(m.Less, m.Currency)+" less")
		}
		text := series(by, "and")
		if d := m.Together(); len(by) > 1 {
			text += ", together " + amountWords(math.Abs(d), m.Currency) + moreLess(d, " more", " less")
		}
		out = append(out, text+": it was "+amountWords(m.Was, m.Currency)+" and is "+amountWords(m.Now, m.Currency)+".")
	}
	was, now := c.Was.Book.Unpriced, c.Now.Book.Unpriced
	if len(out) > 0 && was+now > 0 {
		out = append(out, "Parts without a price are in none of it: "+strconv.Itoa(was)+" then, "+strconv.Itoa(now)+" now.")
	}
	return out
}

// permitChange is leave to differ that is not as it was, in a sentence.
func permitChange(p compare.Permit) string {
	one := firstOf(p.Now, p.Was)
	text := "the " + one.Kind() + " for " + one.Clause + " on " + one.Subject
	switch p.What {
	case compare.Given:
		text += " is given, until " + one.Until + "; it " + standingWords(one)
	case compare.Withdrawn:
		text += " is withdrawn; it was given until " + one.Until
	case compare.RunOut:
		text += " has run out on " + one.Until
	default:
		text += " is another one: it was until " + p.Was.Until + " and is until " + p.Now.Until + "; it " + standingWords(p.Now)
	}
	return sentence(capital(text))
}
