package remedy

import (
	"dryfit/internal/review"
	"dryfit/internal/working"
)

// halvings is how often the stretch in which a remedy begins to hold is halved.
const halvings = 20

// farthest is the number nearest to from, on the way to to, with which what a
// finding judges comes to its limit in every state of its case, the values that it
// gives put into the file; everything else stays. It is not found where even to does not do.
func farthest(r *review.Review, f *review.Finding, from, to float64, values func(float64) map[string]float64) (float64, bool) {
	if f.Node == nil {
		return 0, false
	}
	var states []working.Address
	for _, n := range r.Ledger.Nodes() {
		if a := n.Address; a.Subject == f.Node.Address.Subject && a.Name == f.Node.Address.Name && a.Case == f.Node.Address.Case {
			states = append(states, a)
		}
	}
	holds := func(k float64) bool {
		with := values(k)
		for _, a := range states {
			v, gaps, err := r.Ledger.AgainWith(a, with)
			if err != nil || len(gaps) > 0 || f.Limit.Most != nil && !(v.X <= *f.Limit.Most) || f.Limit.Least != nil && !(v.X >= *f.Limit.Least) {
				return false
			}
		}
		return true
	}
	if !holds(to) {
		return 0, false
	}
	for range halvings {
		if middle := (from + to) / 2; holds(middle) {
			to = middle
		} else {
			from = middle
		}
	}
	return to, true
}

// changed is some values, each changed alike.
func changed(values map[string]float64, by func(float64) float64) map[string]float64 {
	out := make(map[string]float64, len(values))
	for at, x := range values {
		out[at] = by(x)
	}
	return out
}
