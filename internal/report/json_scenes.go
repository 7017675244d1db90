package report

import (
	"math"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// scenes records what was followed in time: the levels that vessels come to, what
// happens when, and the quantities that clauses read.
func (r recorder) scenes() []sceneRecord {
	out := []sceneRecord{}
	if r.Ledger == nil {
		return out
	}
	type key struct{ in, fault string }
	nodes := map[key][]*working.Node{}
	for _, n := range r.Ledger.Nodes() {
		k := key{n.Address.Case, n.Address.Fault}
		nodes[k] = append(nodes[k], n)
	}
	for _, sc := range r.Ledger.Scenes {
		one := sceneRecord{Case: sc.Case, Fault: sc.Fault, Subject: sc.Subject, Place: r.place(sc.At), Reason: sc.Reason, Missing: gapTexts(sc.Missing)}
		if sc.Lasted > 0 {
			one.Lasted = r.value(quantity.Time, working.Exactly(sc.Lasted))
		}
		for _, v := range sc.Reached {
			if levels := []float64{v.Began, v.Least, v.Most, v.Ends, v.Rim}; allFinite(levels) {
				for i, z := range levels {
					levels[i] = quantity.Rounded(z)
				}
				one.Levels = append(one.Levels, reachedRecord{v.Subject, levels[0], levels[1], levels[2], levels[3], levels[4]})
			}
		}
		for _, h := range sc.Happened {
			if at := r.value(quantity.Time, working.Exactly(h.At)); at != nil {
				one.Happens = append(one.Happens, happensRecord{h.What, h.Subject, *at, h.OrLater})
			}
		}
		for _, n := range nodes[key{sc.Case, sc.Fault}] {
			q := quantityRecord{Address: n.Address.String(), Title: n.Title, Missing: gapTexts(n.Gaps())}
			if v, known := n.Value(); known {
				q.Value = r.value(n.Kind, v)
			}
			one.Quantities = append(one.Quantities, q)
		}
		out = append(out, one)
	}
	return out
}

// gapTexts is what stands between a number and its value, for programs: pointers and reasons.
func gapTexts(gaps []working.Gap) []string {
	var out []string
	for _, g := range gaps {
		out = append(out, strings.TrimSpace(g.Pointer+" "+g.Why))
	}
	return out
}

func allFinite(list []float64) bool {
	for _, x := range list {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}
