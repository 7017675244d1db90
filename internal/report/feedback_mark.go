package report

import (
	"strings"

	"dryfit/internal/marking"
)

// theMark is the mark in a sentence, and what became of it on the way.
func (w *feedback) theMark() []Section {
	m := w.m
	if m.Fault != "" {
		why := "There is no mark: dryfit itself failed on this file. That is a fault of dryfit and nothing that you did; whoever marks the class sees it in the report."
		if m.Late {
			why = "There is no mark yet: there was too little time for this file. Whoever marks the class sees it in the report."
		}
		return section(2, "mark", "The mark", Text(why))
	}
	blocks := []Block{Text(w.markSentence())}
	switch {
	case unjudged(m) && m.Unread != "":
		blocks = append(blocks, Text(sentence("The file could not be read, so there was nothing to mark: "+w.nameless(m.Unread))))
	case unjudged(m):
		blocks = append(blocks, Text("The file could not be read as a loop, so there was nothing to mark. What stands in the way is listed below with what to write instead."))
	case inPart(m):
		blocks = append(blocks, Text("Parts of the file could not be read. They were left out, and what was left was marked; they are listed below with what to write instead."))
	}
	for i := range m.Caps {
		blocks = append(blocks, Text(w.capWords(i)))
	}
	for _, l := range m.Lines {
		if l.Changed != nil && l.Was != nil {
			blocks = append(blocks, Text(handWords(`The mark for "`+l.Item.Title+`"`, *l.Was, l.Changed)))
		}
	}
	if c := m.Changed; c != nil {
		blocks = append(blocks, Text(handWords("The total", workedOut(m), c)))
	} else if m.Was != nil {
		blocks = append(blocks, Text("Before the changes by hand the total was "+marking.MarksNumber(*m.Was)+"."))
	}
	by := `Marked by the guide "` + w.guide.Name + `".`
	if m.Judged {
		by += " What is worked out here is worked out from your own file."
	}
	blocks = append(blocks, Text(by))
	return section(2, "mark", "The mark", blocks...)
}

// markSentence is "41.5 of 60 marks, 2 of them bonus."
func (w *feedback) markSentence() string {
	text := marking.MarksNumber(w.m.Total) + " of " + marking.MarksWords(w.guide.Total)
	bonus := 0.0
	for _, l := range w.m.Lines {
		if l.Item.Bonus {
			bonus += l.Marks
		}
	}
	if bonus > 0 && w.m.Total == w.m.Sum {
		text += ", " + marking.MarksNumber(bonus) + " of them bonus"
	}
	return text + "."
}

// capWords says what a cap did, and why it is there. Only the lowest can take marks off.
func (w *feedback) capWords(i int) string {
	held := w.m.Caps[i]
	most := marking.MarksNumber(held.Cap.Most)
	var open []string
	for _, j := range held.Among {
		open = append(open, openSaid(j))
	}
	while := "while " + andMore(open, 4) + " " + are(len(open)) + " not met"
	text := "Your items come to " + marking.MarksWords(w.m.Sum) + ", but no more than " + most + " are given " + while + "."
	if i > 0 || bites(w.m) == nil {
		text = "No more than " + marking.MarksWords(held.Cap.Most) + " are given " + while + ". That took nothing off here."
	}
	return text + " " + sentence("The reason: "+held.Cap.Why)
}

// handWords says what was changed by hand, by which office and why.
func handWords(what string, was float64, c *marking.Moderation) string {
	by := nonEmpty([]string{c.By, c.On})
	text := what + " was changed by hand from " + marking.MarksNumber(was) + " to " + marking.MarksNumber(c.Marks) + " (" + strings.Join(by, ", ") + "). " + sentence("The reason: "+c.Reason)
	if c.Stale {
		text += " The file is another one now than was looked at then."
	}
	return text
}

// nameless is a text without the name of the file.
func (w *feedback) nameless(text string) string {
	for _, name := range nonEmpty([]string{w.m.File, baseName(w.m.File)}) {
		text = strings.ReplaceAll(text, name, "the file")
	}
	return text
}

// baseName is the last part of the name of a file.
func baseName(file string) string { return file[strings.LastIndexAny(file, `/\`)+1:] }

// toGain is the changes that would gain most.
func (w *feedback) toGain() []Section {
	if len(w.m.Gains) == 0 {
		return nil
	}
	t := Table{Name: "gains", Caption: "What to do, and the marks that it would bring", Columns: []Column{
		{Head: "order"}, {Head: "what to do", Long: true}, {Head: "for", Long: true}, {Head: "marks", Number: true}}}
	for i, g := range w.m.Gains {
		t.Rows = append(t.Rows, cells(fixed(float64(i+1), 0), w.gainWords(g), w.gainFor(g), upTo(g)))
	}
	title, each := "The change that would gain most", ""
	if n := len(w.m.Gains); n > 1 {
		title = capital(counted(n)) + " changes that would gain most"
		each = "Each is reckoned by itself; two that touch the same item, or a cap, may bring less together."
	}
	return section(2, "gains", title, t, Text(each))
}

// upTo is the marks that a change brings, or the most that it may bring.
func upTo(g marking.Gain) string {
	if g.UpTo {
		return "up to " + marking.MarksNumber(g.Marks)
	}
	return marking.MarksNumber(g.Marks)
}

// gainWords is what to do, with what comes of it.
func (w *feedback) gainWords(g marking.Gain) string {
	out := []string{sentence(capital(g.Do))}
	if r := g.Remedy; r != nil {
		if !strings.Contains(strings.ToLower(g.Do), strings.ToLower(strings.TrimRight(r.Text, ". "))) {
			out = append(out, "Remedy: "+sentence(r.Text))
		}
		out = append(out, capital(sentence(becomes(r.Then, w.in))))
	}
	if g.After {
		out = append(out, "It brings this once the mark is no longer held down.")
	}
	return strings.Join(nonEmpty(out), " ")
}

// gainFor is what a change is about: an item, a clause with its flag and place, the cap or the whole file.
func (w *feedback) gainFor(g marking.Gain) string {
	var out []string
	if g.Item != nil {
		out = append(out, g.Item.Title)
	}
	if f := g.Finding; f != nil {
		out = append(out, flagText(f.Number)+" "+f.Clause.ID+comma(w.placeWords(f.Place)))
	}
	switch {
	case len(out) > 0:
		return strings.Join(out, "; ")
	case g.UpTo:
		return "the whole file"
	}
	return "the cap"
}

// byItem is the marks of every item, with the reasons.
func (w *feedback) byItem() []Section {
	if len(w.m.Lines) == 0 || w.m.Fault != "" {
		return nil
	}
	t := Table{Name: "items", Caption: "What each item came to, and why", Columns: []Column{{Head: "item"}, {Head: "marks", Number: true}, {Head: "of", Number: true}, {Head: "why", Long: true}}}
	for _, l := range w.m.Lines {
		why := reasonsWords(l)
		if !w.m.Judged && l.Changed == nil {
			why = "" // it is the same of all, and stands above
		}
		t.Rows = append(t.Rows, cells(itemTitle(l.Item), marking.MarksNumber(l.Marks), marking.MarksNumber(l.Item.Marks), why))
	}
	t.Rows = append(t.Rows, cells("together", marking.MarksNumber(w.m.Sum), marking.MarksNumber(w.guide.Total), ""))
	return section(2, "items", "Marks by item", t)
}

// notReadable is what of the file could not be read, and what was left out for it.
func (w *feedback) notReadable() []Section {
	if len(w.m.Problems) == 0 {
		return nil
	}
	t := Table{Name: "to-put-right", Caption: "What stands there, and what to write instead", Columns: []Column{{Head: "place"}, {Head: "found", Long: true}, {Head: "write instead", Long: true}}}
	for _, p := range w.m.Problems {
		t.Rows = append(t.Rows, cells(placeOf(p), p.Found, p.Write))
	}
	var out Text
	if len(w.m.LeftOut) > 0 {
		var keys []string
		for _, pointer := range w.m.LeftOut {
			key, of := keyWords(pointer)
			keys = append(keys, strings.TrimSpace(key+map[bool]string{true: " of " + of}[of != ""]))
		}
		out = Text("So that the rest could be marked, this was left out: " + series(keys, "and") + ". What follows from it could not be worked out.")
	}
	return section(2, "to-put-right", "What could not be read", t, out)
}
