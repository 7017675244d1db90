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
	list := p.ToDo()
	if len(list) > 0 {
		out = append(out, p.steps(list)...)
		out = append(out, line{})
	}
	return append(out, paragraph(p.outcome(), noteText, bodyWidth)...)
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

// todo sorts findings to what settles them: the same change in the same part, the
// same missing value, the same reason stand once. Reasons come last.
func (p *page) todo(list []*review.Finding) []*step {
	var does, waits []*step
	take := func(to *[]*step, words, only string, open bool, f *review.Finding) {
		for _, s := range *to {
			if s.words == words && (only == "" || s.parts[0] == only) {
				s.take(p.partOf(f.Subject), f)
				return
			}
		}
		s := &step{words: words, open: open}
		s.take(p.partOf(f.Subject), f)
		*to = append(*to, s)
	}
	for _, f := range list {
		g := p.gapsOf(f)
		switch {
		case f.Verdict == review.Undetermined && len(g.keys)+len(g.reasons) > 0:
			for _, words := range g.asks() {
				take(&does, words, "", false, f)
			}
			for _, words := range g.reasons {
				take(&waits, words, "", true, f)
			}
		case len(f.Remedies) > 0 && f.Remedies[0].Text != "":
			take(&does, strings.TrimRight(f.Remedies[0].Text, "."), p.partOf(f.Subject), false, f)
		default:
			take(&does, "no change of one value was found that meets "+f.Clause.ID+"; see the note", p.partOf(f.Subject), false, f)
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

// tally is how many clauses came to a verdict: the worst of its judgements is a clause's own.
type tally struct {
	applying, met      int
	notMet, unsettled  map[review.Strength]int
	notMetN, unsettleN int
}

func (p *page) tally() tally {
	worst := map[*review.Clause]review.Verdict{}
	weight := map[review.Verdict]int{review.Met: 1, review.Undetermined: 2, review.NotMet: 3}
	for _, j := range p.Judgements {
		if weight[j.Verdict] > weight[worst[j.Clause]] {
			worst[j.Clause] = j.Verdict
		}
	}
	t := tally{notMet: map[review.Strength]int{}, unsettled: map[review.Strength]int{}}
	for c, v := range worst {
		t.applying++
		switch v {
		case review.Met:
			t.met++
		case review.NotMet:
			t.notMet[c.Strength]++
			t.notMetN++
		default:
			t.unsettled[c.Strength]++
			t.unsettleN++
		}
	}
	return t
}

// outcome is the closing sentences.
func (p *page) outcome() string {
	t := p.tally()
	if t.applying == 0 {
		return "No clause of the book applies to this loop as it is described, so nothing can be said about it."
	}
	text := capital(counted(t.applying)) + " clauses apply to this loop and "
	if t.applying == 1 {
		text = "One clause applies to this loop and "
	}
	text += counted(t.met) + " " + are(t.met) + " met. "
	if t.met == t.applying && t.met > 1 {
		text = capital(counted(t.applying)) + " clauses apply to this loop and all are met. "
	}
	open := "nothing is undetermined. "
	if t.unsettleN > 0 {
		open = strengths(t.unsettled) + " " + are(t.unsettleN) + " undetermined. "
	}
	if t.notMetN > 0 {
		open = strengths(t.notMet) + " " + are(t.notMetN) + " not met; " + open
	}
	text += capital(open)
	return text + p.readiness(t)
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

func (p *page) readiness(t tally) string {
	built := p.Status == "as-built"
	switch {
	case t.notMet[review.Shall] > 0 && built:
		return "Not right as built."
	case t.notMet[review.Shall] > 0:
		return "Not ready to build as drawn."
	case t.unsettled[review.Shall] > 0:
		return "Whether it is sound cannot be said yet."
	case t.notMetN+t.unsettleN > 0:
		return "Nothing that shall be is against it; what should be is worth a thought."
	}
	return "Nothing in the book stands against it."
}
