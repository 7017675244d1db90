package loop

import (
	"slices"

	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// reached tells of every scene in the ledger what its vessels come to and what happens when.
func (v *surveyor) reached() {
	for i, t := range v.told {
		t.reaches(&v.l.Scenes[i])
	}
}

func (t *told) reaches(s *working.Scene) {
	if s.Missing = t.node.Gaps(); len(s.Missing) > 0 {
		return
	}
	g, x := t.g, values(t.node.Inputs)
	number := func(node *working.Node) float64 {
		v, _ := node.Value()
		return v.X
	}
	spillsAt := number(t.whole(spillsAt, "time of the first spill", quantity.Time))
	dryAt := number(t.whole(dryAt, "time at which the pump draws air", quantity.Time))
	var spill, dry []string
	for i, p := range g.nodes {
		if !p.body {
			continue
		}
		most := t.level(i, atMost)
		s.Reason = most.Note()
		at := working.Reached{
			Subject: p.name, Began: x[g.n+i], Most: number(most), Least: number(t.level(i, atLeast)), Ends: number(t.level(i, atEnd)), Rim: p.rim(x),
		}
		s.Reached = append(s.Reached, at)
		if at.Most >= at.Rim+spillsOver {
			spill = append(spill, p.name)
		}
		if place, ok := g.drawn[p.vessel]; ok && at.Least <= x[place]+band/2 {
			dry = append(dry, p.name)
		}
	}
	s.Happened = append(happened(working.Spills, spill, spillsAt), happened(working.DrawsAir, dry, dryAt)...)
	slices.SortStableFunc(s.Happened, sooner)
	switch { // both times are that which was followed where nothing happened
	case len(spill) == 0:
		s.Lasted = spillsAt
	case len(dry) == 0:
		s.Lasted = dryAt
	}
}

// spillsOver is how far over the rim water stands when it counts as spilling, m.
const spillsOver = 1e-6

// happened is the same thing in some vessels, of which only the first has its time.
func happened(what string, subjects []string, at float64) []working.Happened {
	var out []working.Happened
	for _, name := range subjects {
		out = append(out, working.Happened{At: at, Subject: name, What: what, OrLater: len(subjects) > 1})
	}
	return out
}

func sooner(a, b working.Happened) int {
	switch {
	case a.At < b.At:
		return -1
	case a.At > b.At:
		return 1
	}
	return 0
}
