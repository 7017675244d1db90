package review

import (
	"slices"
	"sort"
	"strings"

	"dryfit/internal/system"
	"dryfit/internal/working"
)

// New makes a review of judgements: put in order round the loop, findings
// numbered and placed. Remedies are added to the findings afterwards.
func New(s *system.System, l *working.Ledger, c working.Catalogue, book []*Clause, judgements []*Judgement) *Review {
	r := &Review{
		Summary: Summary{File: s.Document.File, Judgements: judgements},
		System:  s, Ledger: l, Catalogue: c, Stated: StatedIn(s, l), Assumed: l.Assumptions(), Grounds: slices.Concat(s.Assumptions(), s.Sources()),
	}
	for _, d := range s.Deviations() {
		r.Permits = append(r.Permits, &Permit{Deviation: d})
	}
	r.Name, _ = s.Name.Value()
	r.Status, _ = s.Status.Value()
	r.order()
	named := map[string][]*working.Node{}
	for _, n := range l.Nodes() {
		named[n.Address.Name] = append(named[n.Address.Name], n)
	}
	heard := map[*Clause]bool{}
	for _, j := range judgements {
		heard[j.Clause] = true
		j.round()
		if j.Verdict == NotMet || j.Verdict == Undetermined {
			r.Findings = append(r.Findings, &Finding{
				Judgement: j, Number: len(r.Findings) + 1, Place: s.Document.Place(j.At), Shows: shown(named, j),
			})
		}
	}
	for _, c := range book {
		if !heard[c] {
			r.Silent = append(r.Silent, c)
		}
	}
	for _, leaf := range s.NotLooked() {
		r.NotLooked = append(r.NotLooked, Remark{leaf.Pointer(), leaf.Text(), s.Document.Place(leaf.Pointer())})
	}
	return r
}

// Part is the vessel, line or supply that a judgement belongs to.
func (j *Judgement) Part() string {
	if j.On != "" {
		return j.On
	}
	part, _, _ := strings.Cut(j.Subject, "/")
	return part
}

// order sorts judgements round the loop, then by place in the file, binding ones
// first, then by clause: the same input gives the same order.
func (r *Review) order() {
	rank := map[string]int{}
	for i, stop := range r.System.Round() {
		rank[stop.ID()] = i
	}
	place := func(j *Judgement) int {
		if i, ok := rank[j.Part()]; ok {
			return i
		}
		return len(rank)
	}
	sort.SliceStable(r.Judgements, func(i, k int) bool {
		a, b := r.Judgements[i], r.Judgements[k]
		if place(a) != place(b) {
			return place(a) < place(b)
		}
		at, bt := r.System.Document.Place(a.At), r.System.Document.Place(b.At)
		if at.Line != bt.Line {
			return at.Line < bt.Line
		}
		if a.Clause.Strength != b.Clause.Strength {
			return weight[a.Clause.Strength] < weight[b.Clause.Strength]
		}
		if a.Clause.ID != b.Clause.ID {
			return a.Clause.ID < b.Clause.ID
		}
		return a.Subject < b.Subject
	})
}

var weight = map[Strength]int{Shall: 0, Should: 1, May: 2}

// shown finds the quantities that a clause wants to see beside the judged one,
// in the state that governs, or in the first state that has them. All quantities are given by their names.
func shown(named map[string][]*working.Node, j *Judgement) []*working.Node {
	var out []*working.Node
	for _, name := range j.Clause.Shows {
		var best *working.Node
		for _, n := range named[name] {
			a := n.Address
			if a.Subject != j.Subject && a.Subject != j.On {
				continue
			}
			if best == nil || (j.Node != nil && a.Case == j.Node.Address.Case && a.Water == j.Node.Address.Water) {
				best = n
			}
		}
		if best != nil {
			out = append(out, best)
		}
	}
	return out
}

// ToDo is the findings in the order in which to act on them: safety first, then
// shall before should, then what uses most of its limit; what there is leave for comes last.
func (s *Summary) ToDo() []*Finding {
	out := append([]*Finding(nil), s.Findings...)
	share := func(f *Finding) float64 {
		u, _ := f.OfLimit()
		return u
	}
	sort.SliceStable(out, func(i, k int) bool {
		a, b := out[i], out[k]
		if (a.Permit == nil) != (b.Permit == nil) {
			return a.Permit == nil
		}
		if a.Clause.Safety != b.Clause.Safety {
			return a.Clause.Safety
		}
		if a.Clause.Strength != b.Clause.Strength {
			return weight[a.Clause.Strength] < weight[b.Clause.Strength]
		}
		if (a.Verdict == NotMet) != (b.Verdict == NotMet) {
			return a.Verdict == NotMet
		}
		return share(a) > share(b)
	})
	return out
}
