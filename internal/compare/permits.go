package compare

import "dryfit/internal/review"

// Permit is leave to differ that is not as it was. One of the two is nil where leave was
// given or withdrawn.
type Permit struct {
	What     string // one of the words below
	Was, Now *review.Permit
}

// What became of a permit.
const (
	Given     = "given"
	Withdrawn = "withdrawn"
	Altered   = "altered" // another day, kind or person
	RunOut    = "run out" // on the day of the comparison, whatever it was
)

// permits finds what became of leave to differ.
func permits(was, now *review.Review, m moves) []Permit {
	key := func(p *review.Permit, subject string) judging { return judging{p.Clause, subject} }
	before := map[judging][]*review.Permit{}
	for _, p := range was.Permits {
		k := key(p, m.key(p.Subject))
		before[k] = append(before[k], p)
	}
	var out []Permit
	paired := map[*review.Permit]bool{}
	for _, p := range now.Permits {
		one := Permit{Now: p}
		if k := key(p, p.Subject); len(before[k]) > 0 {
			one.Was, before[k] = before[k][0], before[k][1:]
			paired[one.Was] = true
		}
		switch {
		case p.Standing == review.RunOut:
			one.What = RunOut
		case one.Was == nil:
			one.What = Given
		case one.Was.Until != p.Until || one.Was.Since != p.Since || one.Was.Who != p.Who || one.Was.Concession != p.Concession || one.Was.Standing != p.Standing:
			one.What = Altered
		default:
			continue
		}
		out = append(out, one)
	}
	for _, p := range was.Permits {
		if !paired[p] {
			out = append(out, Permit{What: Withdrawn, Was: p})
		}
	}
	return out
}
