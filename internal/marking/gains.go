package marking

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"dryfit/internal/review"
	"dryfit/internal/system"
)

// mostGains is how many changes a student is told.
const mostGains = 3

// mostTried is how many remedies are tried to learn what each would gain.
const mostTried = 6

// Gains finds the changes that would gain most. What a remedy gains is found by marking the loop
// anew with it made, which again reviews; the other items stay as they are. Stated values are not
// looked at then: whoever changes the loop works them out anew.
func Gains(g *Guide, m *Marked, again func(edits []system.Edit) (*review.Review, error)) error {
	if m.Changed != nil {
		return nil // the total was set by hand
	}
	if m.Review == nil {
		if most := g.Total - m.Total; len(m.Problems) > 0 && most > 0 {
			m.Gains = []Gain{{Marks: most, UpTo: true, Do: fmt.Sprintf("put right what keeps the file from being read: %s", places(len(m.Problems)))}}
		}
		return nil
	}
	k := newMarker(g, m.Review)
	all := k.ofLines(m, m.heldDown())
	remedied, err := k.ofRemedies(m, again)
	if err != nil {
		return err
	}
	all = append(all, remedied...)
	all = append(all, k.ofCaps(m, all)...)
	if len(m.LeftOut) > 0 {
		all = append(all, Gain{Marks: k.unsaid(m), UpTo: true, After: m.heldDown(), Do: "put right the values that could not be read: " + strings.Join(short(dottedAll(m.LeftOut)), ", ")})
	}
	sort.SliceStable(all, func(i, j int) bool {
		if all[i].After != all[j].After {
			return all[j].After
		}
		return all[i].Marks > all[j].Marks
	})
	all = slices.DeleteFunc(all, func(one Gain) bool { return one.Marks <= 0 })
	m.Gains = all[:min(len(all), mostGains)]
	return nil
}

// unsaid is the most that is lost by what could not be judged for want of a value.
func (k *marker) unsaid(m *Marked) float64 {
	marks := map[*Item]float64{}
	for _, line := range m.Lines {
		wants := false
		switch task := line.Item.Task.(type) {
		case *InputsGiven:
			wants = true
		case *StatedRight:
			wants = line.Worked != nil && line.Worked.Right == nil
		case *ClausesMet:
			wants = slices.ContainsFunc(task.Which.Picked, func(c *review.Clause) bool { return k.verdictOf(c.ID) == review.Undetermined })
		}
		if wants && line.Changed == nil {
			marks[line.Item] = line.Item.Marks
		}
	}
	free := func(*Cap) bool { return m.heldDown() }
	return m.with(marks, free) - m.with(nil, free)
}

func places(n int) string {
	if n == 1 {
		return "one place"
	}
	return fmt.Sprintf("%d places", n)
}

func dottedAll(pointers []string) []string {
	var out []string
	for _, p := range pointers {
		out = append(out, system.Dotted(p))
	}
	return out
}

// with is the total of a submission with some items at other marks, and without some caps.
func (m *Marked) with(marks map[*Item]float64, lifted func(*Cap) bool) float64 {
	other := Marked{Lines: slices.Clone(m.Lines)}
	for i := range other.Lines {
		if x, there := marks[other.Lines[i].Item]; there {
			other.Lines[i].Marks = x
		}
	}
	for _, c := range m.Caps {
		if lifted == nil || !lifted(c.Cap) {
			other.Caps = append(other.Caps, c)
		}
	}
	other.add()
	return other.Total
}

// heldDown says that a cap takes marks off.
func (m *Marked) heldDown() bool { return len(m.Caps) > 0 && m.Sum > m.Caps[0].Cap.Most }

// ofLines is what each item would gain that does not hang on a clause. Under a cap it brings that once the cap is gone.
func (k *marker) ofLines(m *Marked, after bool) []Gain {
	var out []Gain
	free := func(*Cap) bool { return after }
	was := m.with(nil, free)
	for _, line := range m.Lines {
		lost := line.Item.Marks - line.Marks
		if lost <= 0 || line.Changed != nil {
			continue
		}
		var do string
		switch task := line.Item.Task.(type) {
		case *StatedRight:
			do = k.toState(task, line)
		case *InputsGiven:
			do = "say in the file what is missing: " + strings.Join(short(line.Lost), ", ")
		case *GroundsGiven:
			do = "give " + strings.Join(short(line.Lost), ", ")
		case *Requirement:
			do = "reach what the brief asks (" + line.Item.Title + "): " + strings.Join(line.Reasons, "; ")
		default:
			continue
		}
		gain := m.with(map[*Item]float64{line.Item: line.Item.Marks}, free) - was
		out = append(out, Gain{Marks: gain, Do: do, Item: line.Item, After: after})
	}
	return out
}

// toState is what to do about a stated value.
func (k *marker) toState(task *StatedRight, line Line) string {
	w := line.Worked
	switch {
	case w == nil:
		return "work out and state " + line.Item.Title
	case w.Right == nil && w.Carried == nil:
		return "give the inputs from which " + line.Item.Title + " follows"
	case len(w.Slips) > 0:
		return "work out anew " + line.Item.Title + ": likely " + w.Slips[0].Words
	case w.Band != 0:
		return "work out anew " + line.Item.Title
	}
	return "write " + line.Item.Title + " in full: " + strings.Join(line.Lost, ", ")
}

// Counting is the findings of a review on clauses for which the guide gives marks, or by which it caps
// them, in the order in which to act.
func (g *Guide) Counting(r *review.Review) []*review.Finding {
	ids := g.Clauses()
	return slices.DeleteFunc(r.ToDo(), func(f *review.Finding) bool { return !ids[f.Clause.ID] })
}

// Clauses is the ids of the clauses for which the guide gives marks, or by which it caps them.
func (g *Guide) Clauses() map[string]bool {
	ids := map[string]bool{}
	for _, item := range g.Items {
		switch task := item.Task.(type) {
		case *ClausesMet:
			for _, c := range task.Which.Picked {
				ids[c.ID] = true
			}
		case *ShareUsed:
			ids[task.Clause.ID] = true
		}
	}
	for _, cap := range g.Caps {
		for _, c := range cap.Which.Picked {
			ids[c.ID] = true
		}
	}
	return ids
}

// ofRemedies is what each finding would gain: by its first remedy, or by what would follow if its clause were met.
func (k *marker) ofRemedies(m *Marked, again func([]system.Edit) (*review.Review, error)) ([]Gain, error) {
	var out []Gain
	tried := 0
	done := map[string]bool{}
	for _, f := range k.g.Counting(k.Review) {
		if len(f.Remedies) == 0 || tried == mostTried {
			if !done[f.Clause.ID] {
				done[f.Clause.ID] = true
				out = append(out, Gain{Marks: k.ifMet(m, f.Clause.ID) - m.Total, Do: toMeet(f), Finding: f})
			}
			continue
		}
		tried++
		remedy := f.Remedies[0]
		r, err := again(remedy.Edits)
		if err != nil {
			return nil, err
		}
		if r != nil {
			out = append(out, Gain{Marks: k.anew(m, r) - m.Total, Do: remedy.Text, Finding: f, Remedy: &remedy})
		}
	}
	return out, nil
}

// toMeet is what to do about a finding without a remedy.
func toMeet(f *review.Finding) string {
	if f.Verdict == review.Undetermined {
		return "say what is missing, so that " + f.Clause.ID + " can be judged: " + strings.Join(short(dottedAll(missingIn([]*review.Judgement{f.Judgement}))), ", ")
	}
	return "meet " + f.Clause.ID + ": " + strings.TrimSuffix(f.Clause.Title, ".")
}

// anew is the total with another review in the place of the one that was marked, the stated values left as they are.
func (k *marker) anew(m *Marked, r *review.Review) float64 {
	other := Marked{}
	then := newMarker(k.g, r)
	for _, line := range m.Lines {
		if fresh := (Line{Item: line.Item}); then.counts(line, &fresh) {
			line.Marks = k.g.rounded(min(max(fresh.Marks, 0), line.Item.Marks))
		}
		other.Lines = append(other.Lines, line)
	}
	other.Caps = then.caps()
	other.add()
	return other.Total
}

// counts marks an item anew after a change of the loop, and says that this counts: what was changed by hand
// stays, stated values are worked out anew by their author, and a part that the change brings and that has no price yet
// says nothing of the cost.
func (k *marker) counts(was Line, fresh *Line) bool {
	if _, stated := was.Item.Task.(*StatedRight); stated || was.Changed != nil {
		return false
	}
	k.mark(fresh)
	task, is := was.Item.Task.(*Requirement)
	return !is || task.Quantity != Cost || k.costs().Unpriced == 0 || slices.Contains(was.Lost, "prices")
}

// ifMet is the total if a clause were met everywhere.
func (k *marker) ifMet(m *Marked, clauses ...string) float64 {
	then := *k
	then.verdicts = map[string][]*review.Judgement{}
	for id, list := range k.verdicts {
		if slices.Contains(clauses, id) {
			met := *list[0]
			met.Verdict = review.Met
			list = []*review.Judgement{&met}
		}
		then.verdicts[id] = list
	}
	marks := map[*Item]float64{}
	for _, line := range m.Lines {
		if task, ok := line.Item.Task.(*ClausesMet); ok && line.Changed == nil {
			fresh := Line{Item: line.Item}
			then.clausesMet(&fresh, task)
			marks[line.Item] = k.g.rounded(fresh.Marks)
		}
	}
	held := map[*Cap]bool{}
	for _, c := range then.caps() {
		held[c.Cap] = true
	}
	return m.with(marks, func(c *Cap) bool { return !held[c] })
}

// ofCaps is what meeting all clauses behind the lowest cap would gain, where no single one lifts it.
func (k *marker) ofCaps(m *Marked, have []Gain) []Gain {
	if len(m.Caps) == 0 {
		return nil
	}
	var ids []string
	for _, j := range m.Caps[0].Among {
		if !slices.Contains(ids, j.Clause.ID) {
			ids = append(ids, j.Clause.ID)
		}
	}
	if len(ids) < 2 {
		return nil
	}
	return []Gain{{Marks: k.ifMet(m, ids...) - m.Total, Do: "meet all of " + strings.Join(short(ids), ", ") + ", which keep the mark down together"}}
}
