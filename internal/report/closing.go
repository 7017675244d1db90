package report

import (
	"slices"
	"strings"

	"dryfit/internal/review"
)

// closing says what to do first, and what the review comes to.
func (p *page) closing() []line {
	out := []line{line{}.add("BEFORE A HOLE IS CUT", waterInk)}
	if p.Status == "as-built" {
		out = []line{line{}.add("WHAT TO PUT RIGHT", waterInk)}
	}
	list := acted(&p.Summary)
	if len(list) > 0 {
		out = append(out, p.steps(list)...)
		out = append(out, line{})
	}
	return append(out, paragraph(comesTo(&p.Summary), noteText, bodyWidth)...)
}

// step is one thing to do, which may settle several findings, or a reason why
// nothing can be said yet.
type step struct {
	words    string
	parts    []string // that its findings belong to, in their order
	findings [][]*review.Finding
	open     bool // there is nothing to do: dryfit has no answer yet
}

// take enters a finding under its part.
func (s *step) take(part string, f *review.Finding) {
	i := slices.Index(s.parts, part)
	if i < 0 {
		i = len(s.parts)
		s.parts, s.findings = append(s.parts, part), append(s.findings, nil)
	}
	s.findings[i] = append(s.findings[i], f)
}

// flags is the flags of the findings of one part.
func (s *step) flags(part int) line {
	var l line
	for i, f := range s.findings[part] {
		if i > 0 {
			l = l.add(" ", noInk)
		}
		l = l.add(flagText(f.Number), verdictInk(f.Judgement))
	}
	return l
}

// todo sorts findings to what settles them, and says where to read more.
func (p *page) todo(list []*review.Finding) []*step {
	return todo(&p.Summary, list, p.partOf, p.gapsOf, "; see the note")
}

// todo sorts findings to what settles them: the same change in the same part, the
// same missing value, the same reason stand once. Reasons come last.
func todo(s *review.Summary, list []*review.Finding, partOf func(string) string, gapsOf func(*review.Finding) gaps, more string) []*step {
	none := "no change of one value was found that meets "
	if s.Unsought != "" {
		none = "what meets "
		more = " was not looked for" + more
	}
	var does, waits []*step
	take := func(to *[]*step, words, only string, open bool, f *review.Finding) {
		for _, s := range *to {
			if s.words == words && (only == "" || s.parts[0] == only) {
				s.take(partOf(f.Subject), f)
				return
			}
		}
		s := &step{words: words, open: open}
		s.take(partOf(f.Subject), f)
		*to = append(*to, s)
	}
	for _, f := range list {
		g := gapsOf(f)
		switch {
		case f.Verdict == review.Undetermined && len(g.keys)+len(g.reasons) > 0:
			for _, words := range g.asks() {
				take(&does, words, "", false, f)
			}
			for _, words := range g.reasons {
				take(&waits, words, "", true, f)
			}
		case len(f.Remedies) > 0 && f.Remedies[0].Text != "":
			take(&does, strings.TrimRight(f.Remedies[0].Text, "."), partOf(f.Subject), false, f)
		default:
			take(&does, none+f.Clause.ID+more, partOf(f.Subject), false, f)
		}
	}
	return append(does, waits...)
}

// Columns of the list of what to do, and how wide its names and flags may be.
const (
	stepAt    = 13
	mostName  = 20
	mostFlags = 16
)

// aside says that flags and part fit beside the words.
func (s *step) aside() bool { return len(s.parts) == 1 && s.flags(0).width() <= mostFlags }

// steps lists what to do, in order.
func (p *page) steps(list []*review.Finding) []line {
	todo := p.todo(list)
	names, flags := 0, 0
	for _, s := range todo {
		if s.aside() {
			names = max(names, min(mostName, width(safe(s.parts[0]))))
			flags = max(flags, s.flags(0).width())
		}
	}
	var out []line
	for i, s := range todo {
		label := "then"
		switch {
		case s.open:
			label = "not yet"
		case i < 2:
			label = []string{"first", "next"}[i]
		}
		head := line{}.at(noteText).add(label, noInk).at(stepAt)
		wordsAt := stepAt
		if s.aside() {
			head = append(head, s.flags(0)...).at(stepAt+flags+1).add(clip(safe(s.parts[0]), mostName), noInk)
			wordsAt = stepAt + flags + 1 + names + 3
		}
		body := paragraph(s.words, wordsAt, bodyWidth)
		if len(body) > 0 {
			body[0] = append(head.at(wordsAt), body[0][1:]...)
		}
		out = append(out, body...)
		if !s.aside() {
			out = append(out, s.where()...)
		}
	}
	return out
}

// where is the flags that a step settles with the parts where they stand, beneath it.
func (s *step) where() []line {
	var out []line
	now := line{}.at(stepAt + 2)
	begun := false
	put := func(l line) {
		if begun && now.width()+1+l.width() > bodyWidth {
			out, now, begun = append(out, now), line{}.at(stepAt+2), false
		}
		if begun {
			now = now.add(" ", noInk)
		}
		now, begun = append(now, l...), true
	}
	for i, part := range s.parts {
		name := line{}.add(" "+clip(safe(part), mostName), noInk)
		if i < len(s.parts)-1 {
			name = name.add(",", noInk)
		}
		if all := append(s.flags(i), name...); all.width() <= bodyWidth-stepAt-2 {
			put(all)
			continue
		}
		for k := range s.findings[i] {
			one := step{findings: [][]*review.Finding{s.findings[i][k : k+1]}}
			l := one.flags(0)
			if k == len(s.findings[i])-1 {
				l = append(l, name...)
			}
			put(l)
		}
	}
	return append(out, now)
}

// comesTo is the closing sentences.
func comesTo(s *review.Summary) string {
	t := s.Tally()
	if t.Applying == 0 {
		none := "No clause of the book applies to this loop as it is described, so nothing can be said about it."
		return strings.Join(append([]string{none}, failures(s)...), " ")
	}
	text := capital(counted(t.Applying)) + " clauses apply to this loop and "
	if t.Applying == 1 {
		text = "One clause applies to this loop and "
	}
	text += counted(t.Met) + " " + are(t.Met) + " met. "
	if t.Met == t.Applying && t.Met > 1 {
		text = capital(counted(t.Applying)) + " clauses apply to this loop and all are met. "
	}
	open := "nothing is undetermined. "
	if n := total(t.Undetermined); n > 0 {
		open = strengths(t.Undetermined) + " " + are(n) + " undetermined. "
	}
	if n := total(t.NotMet); n > 0 {
		open = strengths(t.NotMet) + " " + are(n) + " not met; " + open
	}
	text += capital(open) + leave(s) + readiness(s)
	if s.Unsought != "" {
		text += " No remedies were looked for: " + s.Unsought + "."
	}
	return strings.Join(append([]string{text}, failures(s)...), " ")
}

// leave says for how many clauses there is leave to differ.
func leave(s *review.Summary) string {
	given := map[*review.Clause]bool{}
	for _, f := range s.Findings {
		if f.Permit != nil {
			given[f.Clause] = true
		}
	}
	if len(given) == 0 {
		return ""
	}
	return "There is leave to differ from " + counted(len(given)) + " of them. "
}

func total(n map[review.Strength]int) int {
	sum := 0
	for _, k := range n {
		sum += k
	}
	return sum
}

// strengths is "one shall and two should".
func strengths(n map[review.Strength]int) string {
	var out []string
	for _, s := range []review.Strength{review.Shall, review.Should, review.May} {
		if n[s] > 0 {
			out = append(out, counted(n[s])+" "+string(s))
		}
	}
	return series(out, "and")
}

// readiness is the last sentence: what stands against the loop, leave to differ apart.
func readiness(s *review.Summary) string {
	open := map[review.Verdict]map[review.Strength]bool{review.NotMet: {}, review.Undetermined: {}}
	any := false
	for _, f := range s.Findings {
		if f.Permit == nil {
			open[f.Verdict][f.Clause.Strength] = true
			any = true
		}
	}
	built := s.Status == "as-built"
	switch {
	case open[review.NotMet][review.Shall] && built:
		return "Not right as built."
	case open[review.NotMet][review.Shall]:
		return "Not ready to build as drawn."
	case open[review.Undetermined][review.Shall]:
		return "Whether it is sound cannot be said yet."
	case any:
		return "Nothing that shall be is against it; what should be is worth a thought."
	case len(s.Findings) > 0:
		return "Beyond what there is leave for, nothing in the book stands against it."
	}
	return "Nothing in the book stands against it."
}
