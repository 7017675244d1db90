package review

import (
	"slices"

	"dryfit/internal/system"
)

// Permit is leave to differ from one clause on one subject until a day: a deviation
// permit before building, a concession after (ISO 9000:2015, 3.12.6 and 3.12.5). It changes
// the exit status, never the verdict. A safety clause has none.
type Permit struct {
	system.Deviation
	Standing Standing
	Near     []string // where there is no such clause or subject: those that are nearest
}

// Standing is what a permit comes to on the day of the review.
type Standing string

const (
	Holds     Standing = "holds"
	NotYet    Standing = "not yet"    // its first day is still to come
	RunOut    Standing = "run out"    // its last day is over
	Refused   Standing = "refused"    // it names a safety clause
	NoClause  Standing = "no clause"  // the book has none of that name
	NoSubject Standing = "no subject" // the clause does not judge what it names
	NotNeeded Standing = "not needed" // the clause is met
)

// Stale says that a permit does not serve: it has run out, is refused, or fits nothing.
func (p *Permit) Stale() bool { return p.Standing != Holds && p.Standing != NotYet }

// Kind is the word for it.
func (p *Permit) Kind() string {
	if p.Concession {
		return "concession"
	}
	return "deviation permit"
}

// Hold holds the permits of the file, and those that stand beside it, against the
// judgements on a day, written as 2026-03-14. The first and the last day of a permit count. It
// fits a judgement whose clause and subject it names exactly, and never a safety clause. The
// book is that which the file was judged by.
func (s *Summary) Hold(asOf string, book []*Clause, beside ...system.Deviation) {
	for _, d := range beside {
		s.Permits = append(s.Permits, &Permit{Deviation: d})
	}
	if s.AsOf = ""; len(s.Permits) > 0 {
		s.AsOf = asOf
	}
	for _, f := range s.Findings {
		f.Permit = nil
	}
	for _, p := range s.Permits {
		p.Standing, p.Near = s.standing(p.Deviation, asOf, book)
		for _, f := range s.Findings {
			if p.Standing == Holds && fits(p.Deviation, f.Judgement) && f.Permit == nil {
				f.Permit = p
			}
		}
	}
}

func fits(d system.Deviation, j *Judgement) bool {
	return d.Clause == j.Clause.ID && d.Subject == j.Subject
}

func (s *Summary) standing(d system.Deviation, asOf string, book []*Clause) (Standing, []string) {
	i := slices.IndexFunc(book, func(c *Clause) bool { return c.ID == d.Clause })
	switch {
	case i < 0:
		return NoClause, near(d.Clause, book)
	case book[i].Safety:
		return Refused, nil
	}
	var subjects []string
	judged, open := false, false
	for _, j := range s.Judgements {
		if j.Clause.ID != d.Clause {
			continue
		}
		subjects = append(subjects, j.Subject)
		if fits(d, j) {
			judged = true
			open = open || j.Verdict == NotMet || j.Verdict == Undetermined
		}
	}
	switch {
	case !judged:
		slices.Sort(subjects)
		return NoSubject, slices.Compact(subjects)
	case !open:
		return NotNeeded, nil
	case d.Since != "" && asOf < d.Since:
		return NotYet, nil
	case asOf > d.Until:
		return RunOut, nil
	}
	return Holds, nil
}

// near is the clause of the nearest name, if one is near.
func near(written string, book []*Clause) []string {
	var ids []string
	for _, c := range book {
		ids = append(ids, c.ID)
	}
	if id := system.Nearest(written, ids); id != "" {
		return []string{id}
	}
	return nil
}
