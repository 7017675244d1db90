package report

import (
	"math"
	"slices"
	"sort"
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
	list := p.order()
	if len(list) > 0 {
		out = append(out, p.steps(list)...)
		out = append(out, line{})
	}
	return append(out, paragraph(p.outcome(), noteText, bodyWidth)...)
}

// order is the findings in the order in which to act: safety, then what is not
// met before what is undetermined, then shall before should, then the share of the limit.
func (p *page) order() []*review.Finding {
	list := slices.Clone(p.Findings)
	rank := func(f *review.Finding) int {
		n := 0
		if !f.Clause.Safety {
			n += 8
		}
		if f.Verdict == review.Undetermined {
			n += 4
		}
		return n + map[review.Strength]int{review.Shall: 0, review.Should: 1, review.May: 2}[f.Clause.Strength]
	}
	share := func(f *review.Finding) float64 {
		if x, ok := f.OfLimit(); ok {
			return x
		}
		return math.Inf(-1)
	}
	sort.SliceStable(list, func(i, j int) bool {
		a, b := list[i], list[j]
		if rank(a) != rank(b) {
			return rank(a) < rank(b)
		}
		if share(a) != share(b) {
			return share(a) > share(b)
		}
		return a.Number < b.Number
	})
	return list
}

func (p *page) steps(list []*review.Finding) []line {
	const at, most = 13, 20
	longest, flags := 0, 0
	for _, f := range list {
		longest = max(longest, min(most, width(safe(p.partOf(f.Subject)))))
		flags = max(flags, len(flag(f.Number)))
	}
	var out []line
	for i, f := range list {
		label := "then"
		if i < 2 {
			label = []string{"first", "next"}[i]
		}
		head := line{}.at(noteText).add(label, noInk).at(at).add(flag(f.Number), verdictInk(f.Judgement)).at(at+flags+1).add(clip(safe(p.partOf(f.Subject)), most), noInk)
		body := paragraph(p.stepWords(f), at+flags+1+longest+3, bodyWidth)
		body[0] = append(head.at(at+flags+1+longest+3), body[0][1:]...)
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
				keys = append(keys, "`"+m[strings.LastIndexByte(m, '/')+1:]+"`")
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
	if t.notMetN > 0 {
		text += capital(strengths(t.notMet)) + " " + are(t.notMetN) + " not met; "
	}
	switch {
	case t.unsettleN > 0:
		text += strengths(t.unsettled) + " " + are(t.unsettleN) + " undetermined. "
	case t.notMetN > 0:
		text += "nothing is undetermined. "
	default:
		text += "Nothing is undetermined. "
	}
	if t.notMetN == 0 && t.unsettleN > 0 {
		text = strings.Replace(text, strengths(t.unsettled), capital(strengths(t.unsettled)), 1)
	}
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
		places[k] = append(places[k], strings.TrimPrefix(n.Pointer, "/"))
	}
	out := []line{line{}.add("ASSUMED", waterInk).add(", because the file does not say", noInk)}
	for _, k := range keys {
		head := capital(k.title) + ": " + k.value
		out = append(out, paragraph(head, noteText, bodyWidth)...)
		out = append(out, labelled("Source", sentence(reason(of[k])), noteText+2, noteText+11, bodyWidth, referenceInk)...)
		at := places[k][0]
		if n := len(places[k]); n > 1 {
			at += " and " + strconv.Itoa(n-1) + " more"
			if n == 2 {
				at = places[k][0] + " and " + places[k][1]
			}
		}
		out = append(out, labelled("For", at, noteText+2, noteText+11, bodyWidth, noInk)...)
	}
	return out
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
