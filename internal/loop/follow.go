package loop

import (
	"slices"

	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

// Follow plays every scene of a system whose case and fault are asked for, and
// keeps how its levels and flows go in time. An empty word asks for all.
func Follow(s *system.System, t *tables.Tables, kase, fault string) []working.Followed {
	v := survey(s, t, working.NewLedger())
	var out []working.Followed
	for _, told := range v.told {
		if (kase == "" || told.sc.kase == kase) && (fault == "" || told.sc.fault == fault) {
			out = append(out, told.follow())
		}
	}
	return out
}

func (t *told) follow() working.Followed {
	out := working.Followed{Scene: working.Scene{Case: t.sc.kase, Fault: t.sc.fault, Subject: t.sc.subject, At: t.sc.at}}
	if gaps := t.node.Gaps(); len(gaps) > 0 {
		out.Missing = gaps
		return out
	}
	g, x := t.g, values(t.node.Inputs)
	n, r := g.play(t.sc, x)
	out.Still, out.Reason = r.Still, r.Reason
	for i, p := range g.nodes {
		if p.volume == nil {
			continue
		}
		level := working.Series{Subject: p.name, Name: "level", T: r.T, Rim: n.Nodes[i].Rim}
		for _, z := range r.Z {
			level.Y = append(level.Y, z[i])
		}
		out.Levels = append(out.Levels, level)
		if !p.body {
			continue
		}
		if at, spills := r.Reaches(i, n.Nodes[i].Rim+1e-6); spills {
			out.Happened = append(out.Happened, working.Happened{At: at, Subject: p.name, What: "spills"})
		}
		if dry, ok := g.drawn[p.vessel]; ok {
			if at, falls := falls(r, i, x[dry]+band/2); falls {
				out.Happened = append(out.Happened, working.Happened{At: at, Subject: p.name, What: "draws-air"})
			}
		}
	}
	for i, k := range g.lines {
		flow := working.Series{Subject: k.name, Name: "flow", T: r.T}
		runs := false
		for _, q := range r.Q {
			flow.Y = append(flow.Y, q[i])
			runs = runs || q[i] > 1e-9 || q[i] < -1e-9
		}
		if runs {
			out.Flows = append(out.Flows, flow)
		}
	}
	slices.SortStableFunc(out.Happened, func(a, b working.Happened) int {
		switch {
		case a.At < b.At:
			return -1
		case a.At > b.At:
			return 1
		}
		return 0
	})
	return out
}
