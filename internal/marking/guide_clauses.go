package marking

import (
	"cmp"
	"math"
	"slices"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// Pick is the clauses of the book that the conditions leave, in its order.
func (w Clauses) Pick(book []*review.Clause) []*review.Clause {
	var out []*review.Clause
	for _, c := range book {
		if (len(w.IDs) == 0 || slices.Contains(w.IDs, c.ID)) && (w.Chapter == "" || w.Chapter == c.Chapter) &&
			(w.Strength == "" || w.Strength == c.Strength) && (!w.Safety || c.Safety) {
			out = append(out, c)
		}
	}
	return out
}

// clauses reads a choice of clauses, which must pick some.
func (r *guideReader) clauses(at string, f clausesForm) Clauses {
	w := Clauses{IDs: f.IDs, Chapter: f.Chapter, Strength: f.Strength, Safety: f.Safety}
	var chapters []string
	for _, c := range r.book {
		chapters = append(chapters, c.Chapter)
	}
	known := r.Sound(at)
	for i, id := range f.IDs {
		known = r.clause(system.Element(at+"/ids", i), id) != nil && known
	}
	if f.Chapter != "" && !slices.Contains(chapters, f.Chapter) {
		slices.Sort(chapters)
		r.Add(at+"/chapter", "the chapter "+quoted(f.Chapter)+", which is not in the book",
			orNearest(f.Chapter, chapters, "the chapters are "+series(slices.Compact(chapters))))
		known = false
	}
	switch w.Picked = w.Pick(r.book); {
	case len(f.IDs) == 0 && f.Chapter == "" && f.Strength == "" && !f.Safety:
		r.Add(at, "clauses that are not named", "add one of `ids`, `chapter`, `strength` and `safety`")
	case known && len(w.Picked) == 0:
		r.Add(at, "a choice that picks no clause: none meets all of its conditions", "take a condition out; `dryfit clauses` lists the book")
	}
	return w
}

// clause finds a clause by its id; nil if there is none, which is a problem at a place.
func (r *guideReader) clause(at, id string) *review.Clause {
	var ids []string
	for _, c := range r.book {
		if c.ID == id {
			return c
		}
		ids = append(ids, c.ID)
	}
	if id == "" {
		return nil // the schema has refused that
	}
	r.Add(at, "the clause "+quoted(id)+", which is not in the book", orNearest(id, ids, "`dryfit clauses` lists the book"))
	return nil
}

func (r *guideReader) clausesMet(at string, f clausesForm) Task {
	return &ClausesMet{Which: r.clauses(at, f), All: f.Count == "all", Full: f.WhereNoneApplies == "full"}
}

// shareUsed reads marks by the share of a limit.
func (r *guideReader) shareUsed(at string, marks float64, f ofLimitForm) Task {
	task := &ShareUsed{Clause: r.clause(at+"/clause", f.Clause)}
	if c := task.Clause; c != nil && !r.hasShare(c) {
		r.Add(at+"/clause", "the clause "+quoted(c.ID)+", which uses no share of a limit: it asks for a fact, or holds a scale without a natural zero",
			"choose a clause with a limit, or give marks for meeting it, under `clauses`")
	}
	top := 0.0
	for _, b := range f.Bands {
		top = math.Max(top, b.Marks)
	}
	below := false // the top is given for a share at which the clause is met
	var before []ShareBand
	for i, b := range f.Bands {
		band, here := ShareBand(b), system.Element(at+"/bands", i)
		switch {
		case b.Least > b.Most:
			r.Add(here+"/least", quoted(MarksNumber(b.Least))+", above its `most` of "+MarksNumber(b.Most), "write at most "+MarksNumber(b.Most))
		case covered(band, before):
			r.Add(here, "a band from "+MarksNumber(b.Least)+" to "+MarksNumber(b.Most)+", all of which lies in bands before it", "put it before them, or take it out")
		}
		below = below || b.Marks == top && b.Least <= 1
		before, task.Bands = append(before, band), append(task.Bands, band)
	}
	r.top(at+"/bands", top, marks)
	if !below {
		r.Add(at+"/bands", "full marks only above 1, where the clause is not met", "give them for a share of at most 1")
	}
	return task
}

// hasShare says that a share of a limit of the clause can be told.
func (r *guideReader) hasShare(c *review.Clause) bool {
	for _, l := range c.Limits {
		d, _ := quantityIn(r.catalogue, l.Quantity)
		x := l.Most
		if x == nil {
			x = l.Least
		}
		if x == nil {
			return true // the limit is found as it is judged
		}
		j := review.Judgement{Verdict: review.Met, Name: l.Quantity, Kind: d.Kind, Limit: l, Value: working.Exactly(*x)}
		if _, told := j.OfLimit(); told {
			return true
		}
	}
	return false
}

// covered says that some bands leave nothing of another one.
func covered(b ShareBand, by []ShareBand) bool {
	by = slices.Clone(by)
	slices.SortStableFunc(by, func(x, y ShareBand) int { return cmp.Compare(x.Least, y.Least) })
	from, begun := b.Least, false // from there on nothing is covered yet
	for _, other := range by {
		if other.Least <= from && other.Most >= from {
			from, begun = other.Most, true
		}
		if begun && from >= b.Most {
			return true
		}
	}
	return false
}

// quantityIn finds a quantity by its name.
func quantityIn(c working.Catalogue, name string) (working.Definition, bool) {
	i := slices.IndexFunc(c.Quantities, func(d working.Definition) bool { return d.Name == name })
	if i < 0 {
		return working.Definition{Name: name, Kind: quantity.Number}, false
	}
	return c.Quantities[i], true
}
