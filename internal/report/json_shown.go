package report

import (
	"dryfit/internal/quantity"
	"dryfit/internal/review"
)

// shownIn is a record with its values to be read in other units. A value without a kind is
// shown as the file has it.
func (r *reviewRecord) shownIn(in quantity.System) *reviewRecord {
	out := *r
	value := func(v *valueRecord) *valueRecord {
		if v == nil || v.Kind == "" {
			return v
		}
		again := *v
		again.Shown = shown(quantity.Kind(v.Kind), v.SI, in)
		return &again
	}
	var node func(n nodeRecord) nodeRecord
	node = func(n nodeRecord) nodeRecord {
		n.Value, n.Inputs = value(n.Value), each(n.Inputs, node)
		return n
	}
	out.House = houseRecordOf(r.House.house(), in)
	out.Judgements = each(r.Judgements, func(j judgementRecord) judgementRecord {
		j.Value = value(j.Value)
		if l := j.Limit; l != nil {
			j.Limit = limitOf(quantity.Kind(l.Kind), review.Limit{Name: l.Name, Least: l.Least, Most: l.Most}, in)
		}
		return j
	})
	out.Findings = each(r.Findings, func(f findingRecord) findingRecord {
		f.Beside = each(f.Beside, node)
		if f.Working != nil {
			n := node(*f.Working)
			f.Working = &n
		}
		f.Remedies = each(f.Remedies, func(m remedyRecord) remedyRecord {
			if m.Then != nil {
				then := *m.Then
				then.Value = value(then.Value)
				m.Then = &then
			}
			return m
		})
		return f
	})
	out.Scenes = each(r.Scenes, func(s sceneRecord) sceneRecord {
		s.Lasted = value(s.Lasted)
		s.Happens = each(s.Happens, func(h happensRecord) happensRecord {
			h.At = *value(&h.At)
			return h
		})
		s.Quantities = each(s.Quantities, func(q quantityRecord) quantityRecord {
			q.Value = value(q.Value)
			return q
		})
		return s
	})
	out.Stated = each(r.Stated, func(s statedRecord) statedRecord {
		s.Value, s.WorkedOut = value(s.Value), value(s.WorkedOut)
		return s
	})
	out.Assumed = each(r.Assumed, node)
	return &out
}

// each applies f to a copy of a list; a missing list stays missing.
func each[T any](list []T, f func(T) T) []T {
	if list == nil {
		return nil
	}
	out := make([]T, len(list))
	for i, x := range list {
		out[i] = f(x)
	}
	return out
}
