package report

import (
	"dryfit/internal/quantity"
	"dryfit/internal/review"
)

// The rules of a house as they stand in JSON.
type (
	houseRecord struct {
		Name    string              `json:"name"`
		By      string              `json:"by,omitempty"`
		Hash    string              `json:"sha256"`
		Setting string              `json:"setting,omitempty"`
		Changes []houseChangeRecord `json:"changes"`
		Adds    []string            `json:"adds,omitempty"`
	}
	houseChangeRecord struct {
		Clause      string       `json:"clause"`
		Was         *limitRecord `json:"was,omitempty"`
		Now         *limitRecord `json:"now,omitempty"`
		WasStrength string       `json:"was_strength,omitempty"`
		Strength    string       `json:"strength,omitempty"`
		Settings    []string     `json:"settings,omitempty"`
		Reason      string       `json:"reason"`
		Bears       string       `json:"bears"`
		Says        string       `json:"says"`
	}
)

// houseRecordOf is the rules of a house with their values in some units; nil without a house.
func houseRecordOf(h *review.House, in quantity.System) *houseRecord {
	if h == nil {
		return nil
	}
	out := &houseRecord{h.Name, h.By, h.Hash, h.Setting, []houseChangeRecord{}, h.Adds}
	for i := range h.Changes {
		c := &h.Changes[i]
		one := houseChangeRecord{
			Clause: c.Clause, WasStrength: string(c.WasStrength), Strength: string(c.Strength), Settings: c.Settings,
			Reason: c.Reason, Bears: string(c.Bears), Says: changeSaid(c, in),
		}
		if c.LimitChanged() {
			one.Was, one.Now = limitOf(c.Kind, c.Was, in), limitOf(c.Kind, c.Now, in)
		}
		out.Changes = append(out.Changes, one)
	}
	return out
}

// house reads the record back.
func (r *houseRecord) house() *review.House {
	if r == nil {
		return nil
	}
	out := &review.House{Name: r.Name, By: r.By, Hash: r.Hash, Setting: r.Setting, Adds: r.Adds}
	for _, c := range r.Changes {
		one := review.HouseChange{
			Clause: c.Clause, WasStrength: review.Strength(c.WasStrength), Strength: review.Strength(c.Strength), Settings: c.Settings,
			Reason: c.Reason, Bears: review.Bearing(c.Bears),
		}
		if c.Was != nil && c.Now != nil {
			one.Kind = quantity.Kind(c.Now.Kind)
			one.Was, one.Now = c.Was.limit(), c.Now.limit()
		}
		out.Changes = append(out.Changes, one)
	}
	return out
}

func (l *limitRecord) limit() review.Limit {
	return review.Limit{Name: l.Name, Least: l.Least, Most: l.Most}
}
