package review

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// Verdict is what a judgement comes to.
type Verdict string

const (
	Met          Verdict = "met"
	NotMet       Verdict = "not met"
	Undetermined Verdict = "undetermined"
	DoesNotApply Verdict = "does not apply"
)

// Worse says that a verdict weighs more than another one: the worst of a clause's judgements is its own.
func (v Verdict) Worse(than Verdict) bool { return gravity[v] > gravity[than] }

var gravity = map[Verdict]int{DoesNotApply: 0, Met: 1, Undetermined: 2, NotMet: 3}

// Judgement is one clause held against one subject.
type Judgement struct {
	Clause  *Clause
	Subject string // the vessel, line, piece or supply judged
	On      string // the larger thing that it is part of: the line of a bend; empty if none
	Name    string // of the quantity or fact
	Fact    bool   // Name is a fact: Word and Wanted count, not Value and the limits
	Value   working.Value
	Limit   Limit
	Word    string
	Wanted  []string
	When    string // the state that governs
	Verdict Verdict
	Missing []string // file pointers or reasons, where it is undetermined
	At      string   // file pointer of the place
	Title   string   // of the quantity or fact, in plain words
	Kind    quantity.Kind
	Node    *working.Node // the working of the value; nil for facts and where there is none
}

// noZero holds the kinds whose zero is only a point on a scale, so that shares of a limit mean nothing.
var noZero = map[quantity.Kind]bool{quantity.Temperature: true}

// OfLimit is the share of the limit that is used: value over limit for an upper
// limit, limit over value for a lower one, and in a band the distance from the
// middle over half the width. It is not known where the judgement is on a fact,
// where the limit is not above zero or the value below it, or at zero against a
// lower limit, and where the scale has no natural zero.
func (j *Judgement) OfLimit() (float64, bool) {
	if j.Fact || (j.Verdict != Met && j.Verdict != NotMet) || noZero[j.Kind] || heights[j.Name] {
		return 0, false
	}
	x, least, most := j.Value.X, j.Limit.Least, j.Limit.Most
	switch {
	case least != nil && most != nil:
		half := (*most - *least) / 2
		if half <= 0 {
			return 0, false
		}
		return math.Abs(x-(*least+half)) / half, true
	case most != nil && *most > 0 && x >= 0:
		return x / *most, true
	case least != nil && *least > 0 && x > 0:
		return *least / x, true
	}
	return 0, false
}

// heights names quantities on a scale whose zero is a matter of choice: levels above the datum and pH.
var heights = map[string]bool{"water_level": true, "height": true, "ph_low": true}

// Margin is the room left to the nearer limit, in SI units; below zero it is missed by so much.
func (j *Judgement) Margin() (float64, bool) {
	if j.Fact || (j.Verdict != Met && j.Verdict != NotMet) {
		return 0, false
	}
	m := math.Inf(1)
	if j.Limit.Least != nil {
		m = j.Value.X - *j.Limit.Least
	}
	if j.Limit.Most != nil {
		m = math.Min(m, *j.Limit.Most-j.Value.X)
	}
	return m, !math.IsInf(m, 1)
}

// WithinSpread says that the sources differ so far that the limit lies inside
// the range of the value: the verdict holds for the named source only.
func (j *Judgement) WithinSpread() bool {
	in := func(limit *float64) bool {
		return limit != nil && j.Value.Low < *limit && *limit < j.Value.High
	}
	return !j.Fact && (in(j.Limit.Least) || in(j.Limit.Most))
}

// round rounds what was judged, so that whatever is said of it is the same before and after it was
// written and read back. A range without an end stays so.
func (j *Judgement) round() {
	finite := func(x float64) float64 {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return x
		}
		return quantity.Rounded(x)
	}
	j.Value = working.Value{X: finite(j.Value.X), Low: finite(j.Value.Low), High: finite(j.Value.High)}
	for _, limit := range []**float64{&j.Limit.Least, &j.Limit.Most} {
		if *limit != nil {
			x := quantity.Rounded(**limit)
			*limit = &x
		}
	}
}
