package loop

import "dryfit/internal/working"

// lines enters what the clauses on lines ask: how fast solids are carried, how a line is opened and joined, what
// may hold solids or air up in it. The lines in which water runs are worked out by then.
func (v *surveyor) lines(runs_ []*run) {
	for _, set := range lineSets {
		v.l.Put(set.Name)
	}
	fill := v.regimes(runs_)
	for _, line := range v.Lines {
		if !carriesSolids(line) {
			continue
		}
		if f, ok := fill[line]; ok {
			v.l.Put("running_solids_lines", line.ID)
			for _, r := range runs_ {
				if r.runCase == working.RunLeast {
					r.speeds(line, f.of, f.from)
				}
			}
		}
		v.flushes(line, runs_)
	}
	v.froudes(runs_, fill)
	v.reaches()
	v.narrows()
	for _, line := range v.Lines {
		if unpumped(line) && daily(line) && len(line.Pieces) > 0 {
			for _, r := range runs_ {
				if r.runCase == working.RunWorst {
					r.slotSpeed(line.Pieces[0])
				}
			}
		}
	}
	v.highPoints(runs_)
	v.joints()
	v.sleeves()
	v.apart()
}
