package marking

import (
	"fmt"
	"sort"
	"strings"

	"dryfit/internal/review"
)

// clausesMet gives marks for the share of the clauses that is met, of those that apply.
func (k *marker) clausesMet(line *Line, task *ClausesMet) {
	var applying, met int
	var open []string
	for _, c := range task.Which.Picked {
		verdict := k.verdictOf(c.ID)
		switch verdict {
		case review.DoesNotApply:
			continue
		case review.Met:
			met++
		default:
			line.lose(c.ID)
			open = append(open, c.ID+" is "+string(verdict))
		}
		applying++
	}
	switch {
	case applying == 0 && task.Full && k.leftOut: // what they would judge may be what could not be read
		line.say("none of its clauses finds anything to judge in what could be read")
	case applying == 0 && task.Full:
		line.Marks = line.Item.Marks
		line.say("none of its clauses finds anything to judge in this loop")
	case applying == 0:
		line.say("none of its clauses finds anything to judge in this loop, so nothing was shown")
	case met == applying:
		line.Marks = line.Item.Marks
		line.say(metWords(met, applying))
	case task.All:
		line.say(metWords(met, applying) + ", and all are asked for: " + strings.Join(open, ", "))
	default:
		line.Marks = line.Item.Marks * float64(met) / float64(applying)
		line.say(metWords(met, applying) + ": " + strings.Join(open, ", "))
	}
}

func metWords(met, applying int) string {
	switch {
	case met == applying && met == 1:
		return "its clause is met"
	case met == applying:
		return fmt.Sprintf("all %d clauses that apply are met", met)
	case applying == 1:
		return "its clause is not met, or cannot be judged"
	}
	return fmt.Sprintf("%d of %d clauses that apply are met", met, applying)
}

// verdictOf is the worst verdict of a clause over its subjects; it does not apply where it has none.
func (k *marker) verdictOf(clause string) review.Verdict {
	worst := review.DoesNotApply
	for _, j := range k.verdicts[clause] {
		if j.Verdict.Worse(worst) {
			worst = j.Verdict
		}
	}
	return worst
}

// shareUsed gives marks by the greatest share of its limit that a clause uses.
func (k *marker) shareUsed(line *Line, task *ShareUsed) {
	share, known := k.shareOf(task.Clause.ID)
	if !known {
		line.lose(task.Clause.ID)
		line.say("no share of the limit of " + task.Clause.ID + " is known")
		return
	}
	for _, b := range task.Bands {
		if share >= b.Least-guard && share <= b.Most+guard {
			line.Marks = b.Marks
			break
		}
	}
	line.say(fmt.Sprintf("%.2f of the limit of %s is used", share, task.Clause.ID))
	if line.Marks < line.Item.Marks {
		line.lose(task.Clause.ID)
	}
}

// shareOf is the greatest share of its limit that a clause uses. One that is open somewhere without a
// share, or undetermined, has none.
func (k *marker) shareOf(clause string) (float64, bool) {
	most, known := 0.0, false
	for _, j := range k.verdicts[clause] {
		share, ok := j.OfLimit()
		if !ok {
			if j.Verdict == review.Undetermined || j.Verdict == review.NotMet {
				return 0, false
			}
			continue
		}
		most, known = max(most, share), true
	}
	return most, known
}

// caps is the caps that hold, the lowest first.
func (k *marker) caps() []Capped {
	var out []Capped
	for _, c := range k.g.Caps {
		var among []*review.Judgement
		for _, clause := range c.Which.Picked {
			for _, j := range k.verdicts[clause.ID] {
				if j.Verdict != review.Met {
					among = append(among, j)
				}
			}
		}
		if len(among) > 0 {
			out = append(out, Capped{c, among})
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Cap.Most < out[j].Cap.Most })
	return out
}
