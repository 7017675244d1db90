package review

import (
	"slices"

	"dryfit/internal/quantity"
)

// House is the rules of a house that a loop was judged by: what they change in the book, and what
// that comes to in this loop.
type House struct {
	Name, By string
	Hash     string // SHA-256 of its files
	Setting  string // whose loop it is, as its file says; empty where it does not
	Changes  []HouseChange
	Adds     []string // ids of the clauses that it has of its own
}

// HouseChange is one change that a house makes to a clause, beside what the book says.
type HouseChange struct {
	Clause       string
	Was, Now     Limit         // without bounds where no limit is changed
	Kind         quantity.Kind // of the limit
	WasStrength  Strength      // both empty where the strength is not changed
	Strength     Strength
	Settings     []string // of which it is asked; none: of all
	Reason, File string
	Line         int
	Bears        Bearing
}

// Bearing is what a change of the house comes to in one loop.
type Bearing string

const (
	InForce   Bearing = "in force"
	Idle      Bearing = "nothing to judge" // the clause finds no subject in this loop
	Replaced  Bearing = "replaced"         // one for the setting of the loop stands in its place
	Elsewhere Bearing = "another setting"
)

// LimitChanged says that the change is one of a limit.
func (c *HouseChange) LimitChanged() bool { return c.Was.Least != nil || c.Was.Most != nil }

// asked says that a change is for loops of a setting.
func (c *HouseChange) asked(setting string) bool {
	return len(c.Settings) == 0 || slices.Contains(c.Settings, setting)
}

// Of is the rules of the house for loops of a setting. A change for that setting stands in the place of one
// for all.
func (h *House) Of(setting string) *House {
	out := *h
	out.Setting, out.Changes = setting, slices.Clone(h.Changes)
	for i := range out.Changes {
		c := &out.Changes[i]
		c.Bears = Elsewhere
		if c.asked(setting) {
			c.Bears = InForce
		}
		for _, o := range h.Changes {
			if c.Bears == InForce && len(c.Settings) == 0 && len(o.Settings) > 0 && o.asked(setting) {
				c.yield(&o)
			}
		}
	}
	return &out
}

// yield takes out of a change what another one, for the setting of the loop, says of the same clause.
func (c *HouseChange) yield(to *HouseChange) {
	limit := c.LimitChanged() && to.LimitChanged() && to.Was.Name == c.Was.Name
	strength := c.Strength != "" && to.Strength != ""
	switch {
	case c.Clause != to.Clause || !limit && !strength:
	case (limit || !c.LimitChanged()) && (strength || c.Strength == ""):
		c.Bears = Replaced
	case limit:
		c.Was, c.Now = Limit{}, Limit{}
	default:
		c.WasStrength, c.Strength = "", ""
	}
}

// Over is some clauses as they are once the changes in force are made. Those that are not changed are the
// same; those that are, carry their changes. A change for one setting is made after one for all.
func (h *House) Over(book []*Clause) []*Clause {
	if h == nil {
		return book
	}
	out := slices.Clone(book)
	for _, special := range []bool{false, true} {
		for i := range h.Changes {
			c := &h.Changes[i]
			at := slices.IndexFunc(out, func(b *Clause) bool { return b.ID == c.Clause })
			if at < 0 || (c.Bears != InForce && c.Bears != Idle) || special != (len(c.Settings) > 0) {
				continue
			}
			out[at] = out[at].changed(c)
		}
	}
	return out
}

// changed is a clause with one change made.
func (c *Clause) changed(by *HouseChange) *Clause {
	now := *c
	now.Changed = append(slices.Clip(c.Changed), by)
	if by.Strength != "" {
		now.Strength = by.Strength
	}
	if !by.LimitChanged() {
		return &now
	}
	now.Limits = slices.Clone(c.Limits)
	for i := range now.Limits {
		if now.Limits[i].Name == by.Now.Name {
			now.Limits[i].Least, now.Limits[i].Most = by.Now.Least, by.Now.Most
		}
	}
	return &now
}

// ChangesOf is the changes of the house that bear on a judgement: of the limit that it was held against, and
// of the strength.
func (j *Judgement) ChangesOf() []*HouseChange {
	var out []*HouseChange
	for _, c := range j.Clause.Changed {
		if c.Strength != "" || c.LimitChanged() && c.Was.Name == j.Limit.Name {
			out = append(out, c)
		}
	}
	return out
}

// Bear says of each change in force whether its clause judges anything in this loop.
func (s *Summary) Bear(h *House) {
	if s.House = h; h == nil {
		return
	}
	for i := range h.Changes {
		c := &h.Changes[i]
		if c.Bears == InForce && slices.ContainsFunc(s.Silent, func(k *Clause) bool { return k.ID == c.Clause }) {
			c.Bears = Idle
		}
	}
}

// Explain is clauses that also carry the changes for settings, which are in force in some loops alone.
func (h *House) Explain(clauses []*Clause) []*Clause {
	if h == nil {
		return clauses
	}
	out := slices.Clone(clauses)
	for i := range h.Changes {
		change := &h.Changes[i]
		at := slices.IndexFunc(out, func(c *Clause) bool { return c.ID == change.Clause })
		if at < 0 || len(change.Settings) == 0 {
			continue
		}
		c := *out[at]
		c.Changed = append(slices.Clip(c.Changed), change)
		out[at] = &c
	}
	return out
}
