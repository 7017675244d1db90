package report

import (
	"slices"
	"strconv"
	"strings"

	"dryfit/internal/review"
	"dryfit/internal/working"
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
		l = l.add(flag(f.Number), verdictInk(f.Judgement))
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

// assumed lists every value that a table gave because the file is silent.
func (p *page) assumed() []line {
	if len(p.Assumed) == 0 {
		return nil
	}
	type same struct{ title, value, source string }
	var keys []same
	places := map[same][]string{}
	of := map[same]*working.Node{}
	for _, n := range p.Assumed {
		v, known := n.Value()
		value := "?"
		if known {
			value = shown(n.Kind, v.X, p.in)
			if spread := spreadShown(n.Kind, v, p.in); spread != "" {
				value += " (" + spread + ")"
			}
		}
		k := same{n.Title, value, n.Source}
		if of[k] == nil {
			of[k], keys = n, append(keys, k)
		}
		places[k] = append(places[k], p.pointerWords(n.Pointer))
	}
	out := []line{line{}.add("ASSUMED", waterInk).add(", because the file does not say", noInk)}
	for _, k := range keys {
		head := capital(k.title) + ": " + k.value
		out = append(out, paragraph(head, noteText, bodyWidth)...)
		out = append(out, labelled("Source", sentence(reason(of[k])), noteText+2, noteText+11, bodyWidth, referenceInk)...)
		at, more := places[k], ""
		if len(at) > 3 {
			more = " and " + strconv.Itoa(len(at)-2) + " more"
			at = at[:2]
		}
		text := strings.Join(at, ", ") + more
		out = append(out, labelled("For", text, noteText+2, noteText+11, bodyWidth, noInk)...)
	}
	return out
}

// pointerWords says where in the file a value would stand: "riser, file line 108".
func (p *page) pointerWords(pointer string) string {
	group, _ := splitPointer(pointer)
	if p.System == nil || p.System.Document == nil {
		return group
	}
	return group + " " + p.placeWords(p.System.Document.Place(pointer))
}

func reason(n *working.Node) string {
	if n.Sure == "" || strings.Contains(n.Source, n.Sure) {
		return n.Source
	}
	return n.Source + " (" + n.Sure + ")"
}

// notLooked lists the keys of the file that nothing read, by the part they belong to.
func (p *page) notLooked() []line {
	if len(p.NotLooked) == 0 {
		return nil
	}
	var groups []string
	keys := map[string][]string{}
	for _, r := range p.NotLooked {
		group, key := splitPointer(r.Pointer)
		if keys[group] == nil {
			groups = append(groups, group)
		}
		if !slices.Contains(keys[group], key) {
			keys[group] = append(keys[group], key)
		}
	}
	var rows [][]string
	for _, g := range groups {
		rows = append(rows, []string{g, strings.Join(keys[g], ", ")})
	}
	head := line{}.add("STATED, NOT YET LOOKED AT", waterInk)
	return append([]line{head}, table(rows, noteText, bodyWidth, 22)...)
}

// splitPointer names the part that a pointer belongs to, and the key within it
// without the numbers of list elements.
func splitPointer(pointer string) (group, key string) {
	parts := strings.Split(strings.TrimPrefix(pointer, "/"), "/")
	group, rest := parts[0], parts[1:]
	switch group {
	case "vessels", "lines", "pumps", "pipes":
		if len(rest) > 0 {
			group, rest = rest[0], rest[1:]
		}
	}
	var names []string
	for _, name := range rest {
		if _, err := strconv.Atoi(name); err != nil && name != "pieces" {
			names = append(names, name)
		}
	}
	if len(names) == 0 {
		return group, group
	}
	return group, strings.Join(names, ".")
}

// silent names the clauses that found nothing to judge in this loop.
func (p *page) silent() []line {
	if len(p.Silent) == 0 {
		return nil
	}
	var ids []string
	for _, c := range p.Silent {
		ids = append(ids, c.ID)
	}
	out := []line{line{}.add("NOTHING TO JUDGE HERE", waterInk)}
	return append(out, paragraph("Clauses that found no such part in this loop: "+strings.Join(ids, ", ")+".", noteText, bodyWidth)...)
}
