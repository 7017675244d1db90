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

// step is one thing to do, which may settle several findings of a part.
type step struct {
	part, words string
	findings    []*review.Finding
}

func (s step) flags() line {
	var l line
	for i, f := range s.findings {
		if i > 0 {
			l = l.add(" ", noInk)
		}
		l = l.add(flagText(f.Number), verdictInk(f.Judgement))
	}
	return l
}

// steps lists what to do, in order; the same words for one part stand once.
func (p *page) steps(list []*review.Finding) []line {
	const at, mostName, mostFlags = 13, 20, 4
	var todo []step
	for _, f := range list {
		s := step{p.partOf(f.Subject), p.stepWords(f), []*review.Finding{f}}
		if last := len(todo) - 1; last >= 0 && todo[last].part == s.part && todo[last].words == s.words && len(todo[last].findings) < mostFlags {
			todo[last].findings = append(todo[last].findings, f)
			continue
		}
		todo = append(todo, s)
	}
	names, flags := 0, 0
	for _, s := range todo {
		names = max(names, min(mostName, width(safe(s.part))))
		flags = max(flags, s.flags().width())
	}
	nameAt := at + flags + 1
	wordsAt := nameAt + names + 3
	var out []line
	for i, s := range todo {
		label := "then"
		if i < 2 {
			label = []string{"first", "next"}[i]
		}
		head := append(line{}.at(noteText).add(label, noInk).at(at), s.flags()...)
		head = head.at(nameAt).add(clip(safe(s.part), mostName), noInk)
		body := paragraph(s.words, wordsAt, bodyWidth)
		body[0] = append(head.at(wordsAt), body[0][1:]...)
		out = append(out, body...)
	}
	return out
}

// stepWords is what to do about a finding, short.
func (p *page) stepWords(f *review.Finding) string {
	switch {
	case len(f.Remedies) > 0 && f.Remedies[0].Text != "":
		return strings.TrimRight(f.Remedies[0].Text, ".")
	case f.Verdict == review.Undetermined && len(f.Missing) > 0:
		var keys []string
		for _, m := range f.Missing {
			if strings.HasPrefix(m, "/") {
				key, _ := p.missingKey(m)
				keys = append(keys, "`"+key+"`")
			}
		}
		if len(keys) > 0 {
			return "find and give " + series(slices.Compact(keys), "and")
		}
		return f.Missing[0]
	}
	return "no change of one value was found that meets " + f.Clause.ID + "; see the note"
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
