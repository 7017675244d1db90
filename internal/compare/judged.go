package compare

import (
	"cmp"
	"math"
	"slices"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
)

// Judged is what became of one clause on one subject: another verdict, a new or a
// vanished judgement, or a margin that moved. Was and Now are nil where the clause judges no
// such subject.
type Judged struct {
	Clause    *review.Clause
	Subject   string // as the present file calls it; as the former one did if it is gone
	Was, Now  *review.Judgement
	Direction Direction
	Moved     float64        // of a margin: how much more of the limit is used; else how much less is left, SI
	OfLimit   bool           // Moved is a share of the limit
	Margin    bool           // there is a Moved
	Leave     *review.Permit // leave to differ that the present side has for it
}

// Verdict says that the verdict is another one, or that there was or is none.
func (j Judged) Verdict() bool { return j.Was == nil || j.Now == nil || j.Was.Verdict != j.Now.Verdict }

// Quiet says that a judgement is only new, or only gone, and is or was met.
func (j Judged) Quiet() bool { return (j.Was == nil || j.Now == nil) && j.Direction == Other }

// Open is what stands open in a file that has nothing to be held against: what makes a
// review of it one to act on, in the order in which to act.
func Open(r *review.Review) []Judged {
	var out []Judged
	for _, f := range r.ToDo() {
		if r.Counts(f, review.Shall) {
			out = append(out, Judged{Clause: f.Clause, Subject: f.Subject, Now: f.Judgement, Direction: Worse})
		}
	}
	return out
}

// StillOpen is what was open and is open: the same clause on the same subject, with the same
// verdict, however little it moved. It stands in the order in which to act.
func (c Comparison) StillOpen() []Judged {
	_, m := inputs(c.Was.Review.System.Document, c.Now.Review.System.Document)
	before := map[judging]*review.Judgement{}
	for _, j := range c.Was.Review.Judgements {
		before[judging{j.Clause.ID, m.key(j.Subject)}] = j
	}
	var out []Judged
	for _, f := range c.Now.Review.ToDo() {
		was := before[judging{f.Clause.ID, f.Subject}]
		if was == nil || was.Verdict != f.Verdict {
			continue
		}
		out = append(out, Judged{Clause: f.Clause, Subject: f.Subject, Was: was, Now: f.Judgement, Leave: f.Permit})
	}
	return out
}

type judging struct{ clause, subject string }

// judged finds what became of the judgements, what got worse first; then in order round the loop.
func judged(was, now *review.Review, m moves) []Judged {
	before := map[judging]*review.Judgement{}
	for _, j := range was.Judgements {
		if applies(j) {
			before[judging{j.Clause.ID, m.key(j.Subject)}] = j
		}
	}
	leave := map[*review.Judgement]*review.Permit{}
	for _, f := range now.Findings {
		leave[f.Judgement] = f.Permit
	}
	var out []Judged
	met := map[*review.Judgement]bool{}
	for _, j := range now.Judgements {
		if !applies(j) {
			continue
		}
		old := before[judging{j.Clause.ID, j.Subject}]
		met[old] = true
		one := Judged{Clause: j.Clause, Subject: j.Subject, Was: old, Now: j, Leave: leave[j]}
		if one.Moved, one.OfLimit, one.Margin = moved(old, j); one.Verdict() || one.Margin {
			one.Direction = one.direction()
			out = append(out, one)
		}
	}
	for _, j := range was.Judgements {
		if applies(j) && !met[j] {
			one := Judged{Clause: j.Clause, Subject: j.Subject, Was: j}
			one.Direction = one.direction()
			out = append(out, one)
		}
	}
	slices.SortStableFunc(out, func(a, b Judged) int { return cmp.Compare(a.rank(), b.rank()) })
	return out
}

// applies says that there is a judgement at all.
func applies(j *review.Judgement) bool { return j.Verdict != review.DoesNotApply }

// rank puts what got worse before what got better, before all else; in each what is
// binding before what is advised, and verdicts before margins.
func (j Judged) rank() int {
	out := map[Direction]int{Worse: 0, Better: 100, Other: 200}[j.Direction]
	if !j.Clause.Safety {
		out += 10
	}
	out += map[review.Strength]int{review.Shall: 0, review.Should: 20, review.May: 40}[j.Clause.Strength]
	if !j.Verdict() {
		out += 5
	}
	return out
}

// direction says whether it got worse. What is only allowed has no bad end. That a number
// is no longer given makes nothing better.
func (j Judged) direction() Direction {
	if j.Clause.Strength == review.May {
		return Other
	}
	open := func(j *review.Judgement) bool { return j.Verdict == review.NotMet || j.Verdict == review.Undetermined }
	switch {
	case j.Was == nil && open(j.Now):
		return Worse
	case j.Now == nil && j.Was.Verdict == review.NotMet:
		return Better
	case j.Was == nil || j.Now == nil:
		return Other
	case j.Was.Verdict != j.Now.Verdict:
		grade := map[review.Verdict]int{review.Met: 0, review.Undetermined: 1, review.NotMet: 2}
		was, now := grade[j.Was.Verdict], grade[j.Now.Verdict]
		switch {
		case now > was:
			return Worse
		case j.Now.Verdict == review.Met:
			return Better
		}
		return Other
	case j.Moved > 0:
		return Worse
	}
	return Better
}

// moved is how much more of its limit a value uses, as a share of the limit; where there is no
// share, how much less is left to the limit. It is nothing unless it is more than [Share] of
// the limit.
func moved(was, now *review.Judgement) (by float64, ofLimit, much bool) {
	const hair = 1e-9
	if was == nil || now == nil || was.Fact || now.Fact || was.Name != now.Name {
		return 0, false, false
	}
	a, one := was.OfLimit()
	b, two := now.OfLimit()
	if one && two {
		return b - a, true, math.Abs(b-a) > Share+hair
	}
	left, one := was.Margin()
	still, two := now.Margin()
	if !one || !two {
		return 0, false, false
	}
	by = left - still
	return by, false, math.Abs(by) > Share*scale(now, left, still)*(1+hair)
}

// scale is the size of a limit: in degrees Celsius for a temperature; where the limit is
// nothing, the greater distance from it.
func scale(j *review.Judgement, margins ...float64) float64 {
	size := 0.0
	for _, limit := range []*float64{j.Limit.Least, j.Limit.Most} {
		if limit == nil {
			continue
		}
		x := *limit
		if j.Kind == quantity.Temperature {
			x -= 273.15
		}
		size = max(size, math.Abs(x))
	}
	if size == 0 {
		size = max(math.Abs(margins[0]), math.Abs(margins[1]))
	}
	return size
}
