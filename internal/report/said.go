package report

import (
	"sort"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
)

// What is said of a finding in one line, by those forms that have no workings: of the
// finding alone, so that a result that was kept says the same as a fresh one.

// gapsAlone is what is missing for a finding, each value by its own name.
func gapsAlone(f *review.Finding) gaps {
	return gapsOf(f, func(pointer string) string { return pointer })
}

// foundWords is the number or word that was judged: "3.4 mm/s"; "?" where there is none.
func foundWords(j *review.Judgement, in quantity.System) string {
	switch {
	case j.Verdict == review.Undetermined:
		return "?"
	case j.Fact:
		return j.Word
	}
	f := figuresOf(j.Kind, j.Value.X, j.Limit, in)
	return strings.TrimSpace(f.number + " " + f.unit)
}

// wantedWords is what was wanted of it: "at most 3.1 mm/s", "A4 or plastic".
func wantedWords(j *review.Judgement, in quantity.System) string {
	switch {
	case j.Fact:
		wanted := append([]string{}, j.Wanted...)
		sort.Strings(wanted)
		return series(wanted, "or")
	case j.Verdict == review.Undetermined:
		return limitShown(j.Kind, j.Limit, in)
	}
	f := figuresOf(j.Kind, j.Value.X, j.Limit, in)
	return strings.TrimSpace(f.limitWords() + " " + f.unit)
}

// usedWords is how much of the limit is used: "1.10 of the limit", or "12 mm short".
func usedWords(j *review.Judgement, in quantity.System) string {
	text := shareShown(j, in)
	if _, ok := j.OfLimit(); ok {
		text += " of the limit"
	}
	return text
}

// said is a finding in one line: what was found, what was wanted, and how much of the limit is used.
func said(f *review.Finding, in quantity.System) string {
	j := f.Judgement
	switch {
	case j.Verdict == review.Undetermined:
		g := gapsAlone(f)
		text := j.Title + " cannot be said yet"
		if why := strings.Join(append(g.asks(), g.reasons...), "; "); why != "" {
			text += ": " + why
		}
		return text + houseTail(j, in)
	case j.Fact:
		return j.Title + ": " + j.Word + ", wanted: " + wantedWords(j, in) + houseTail(j, in)
	}
	text := j.Title + " " + foundWords(j, in) + ", " + wantedWords(j, in)
	if used := usedWords(j, in); used != "" {
		text += ": " + used
	}
	if j.WithinSpread() {
		text += "; the limit lies within the spread of the sources, " + spreadShown(j.Kind, j.Value, in)
	}
	return text + houseTail(j, in)
}

// houseTail is what the house changed, behind what is said of a finding.
func houseTail(j *review.Judgement, in quantity.System) string {
	if text := byHouse(j, in); text != "" {
		return "; " + text
	}
	return ""
}

// remedySaid is one remedy with what comes of it.
func remedySaid(m review.Remedy, in quantity.System) string {
	text := sentence(m.Text)
	if then := becomes(m.Then, in); then != "" {
		text += " " + capital(sentence(then))
	}
	return text
}

// remediesSaid is the remedies of a finding in one line; empty without any.
func remediesSaid(f *review.Finding, in quantity.System) string {
	var out []string
	for i, m := range f.Remedies {
		out = append(out, []string{"Remedy: ", "Or: "}[min(i, 1)]+remedySaid(m, in))
	}
	return strings.Join(out, " ")
}

// leaveSaid is the permit that holds, with its reason.
func leaveSaid(p *review.Permit) string {
	text := sentence(permitWords(p)) + " Reason: " + sentence(p.Reason)
	if p.Instead != "" {
		text += " Instead: " + sentence(p.Instead)
	}
	return text
}

// staleSaid is a permit that serves no more.
func staleSaid(p *review.Permit) string {
	return "the " + p.Kind() + " for " + p.Clause + " on " + p.Subject + " " + standingWords(p)
}

// stale is the permits that serve no more.
func stale(s *review.Summary) []*review.Permit {
	var out []*review.Permit
	for _, p := range s.Permits {
		if p.Stale() {
			out = append(out, p)
		}
	}
	return out
}

// acted is the findings in the order in which to act on them, leave to differ apart.
func acted(s *review.Summary) []*review.Finding {
	var out []*review.Finding
	for _, f := range s.ToDo() {
		if f.Permit == nil {
			out = append(out, f)
		}
	}
	return out
}
