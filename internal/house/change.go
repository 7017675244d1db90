package house

import (
	"errors"
	"slices"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// reader reads the changes of a house.
type reader struct {
	*system.Checker
	book  []*review.Clause
	kinds map[string]working.Definition
	seen  map[string]bool // clause, what is changed of it, and setting
}

// change reads one change.
func (r *reader) change(at string, f changeForm) review.HouseChange {
	place := r.Doc.Place(at)
	out := review.HouseChange{
		Clause: f.Clause, Settings: slices.Sorted(slices.Values(f.Settings)), Reason: strings.Join(strings.Fields(f.Reason), " "), File: place.File, Line: place.Line,
	}
	c := r.clause(at, f.Clause)
	switch {
	case c == nil || !r.Sound(at+"/least") || !r.Sound(at+"/most") || !r.Sound(at+"/limit") || !r.Sound(at+"/strength"):
		return out
	case f.Least == nil && f.Most == nil && f.Strength == "":
		r.Add(at, "a change that changes nothing", "add `least`, `most` or `strength`")
		return out
	case f.Least == nil && f.Most == nil && f.Limit != "":
		r.Add(at+"/limit", "the limit "+quoted(f.Limit)+" without a bound", "add `least` or `most`, or take `limit` out")
		return out
	}
	if f.Strength != "" {
		r.strength(at, c, review.Strength(f.Strength), &out)
	}
	if f.Least != nil || f.Most != nil {
		r.limit(at, c, f, &out)
	}
	return out
}

// clause is the clause of a change; nil where there is none.
func (r *reader) clause(at, id string) *review.Clause {
	i := slices.IndexFunc(r.book, func(c *review.Clause) bool { return c.ID == id })
	if i >= 0 {
		return r.book[i]
	}
	var ids []string
	for _, c := range r.book {
		ids = append(ids, c.ID)
	}
	r.Add(at+"/clause", "the clause "+quoted(id)+", which is not in the book and is none of the house that loads", orNearest(id, ids, "`dryfit clauses` lists them"))
	return nil
}

// orNearest is what to write in place of a name that is not known: the nearest that is, else where to look.
func orNearest(word string, known []string, look string) string {
	if near := system.Nearest(word, known); near != "" {
		return "the nearest is " + quoted(near)
	}
	return look
}

// binding orders the strengths.
var binding = map[review.Strength]int{review.May: 0, review.Should: 1, review.Shall: 2}

func (r *reader) strength(at string, c *review.Clause, to review.Strength, out *review.HouseChange) {
	switch {
	case to == c.Strength:
		r.Add(at+"/strength", quoted(string(to))+", which the clause is already", "take `strength` out, or write another one")
	case c.Safety && binding[to] < binding[c.Strength]:
		r.Add(at+"/strength", "the safety clause "+quoted(c.ID)+" made weaker, a "+string(to)+" where it is a "+string(c.Strength),
			"take it out: what guards life may be made stricter, never weaker")
	}
	r.once(at, c, "the strength", out)
	out.WasStrength, out.Strength = c.Strength, to
}

// limit reads the bounds of a change.
func (r *reader) limit(at string, c *review.Clause, f changeForm, out *review.HouseChange) {
	was, ok := r.limitOf(at, c, f.Limit)
	if !ok {
		return
	}
	d := r.kinds[was.Quantity]
	out.Kind, out.Was, out.Now = d.Kind, was, was
	r.once(at, c, "the limit "+quoted(was.Name), out)
	least := r.bound(at, "least", f.Least, was.Least, c, d)
	most := r.bound(at, "most", f.Most, was.Most, c, d)
	if least != nil {
		out.Now.Least = least
	}
	if most != nil {
		out.Now.Most = most
	}
	if n := out.Now; n.Least != nil && n.Most != nil && *n.Least > *n.Most {
		key, other := "least", "most"
		if least == nil {
			key, other = "most", "least"
		}
		r.Add(at+"/"+key, "a least of "+r.said(d, *n.Least)+" over a most of "+r.said(d, *n.Most), "write bounds between which there is room, also `"+other+"` where it is to move")
	}
}

// limitOf is the limit of a clause by its name, or its only one.
func (r *reader) limitOf(at string, c *review.Clause, name string) (review.Limit, bool) {
	var names []string
	for _, l := range c.Limits {
		if l.Name == name || name == "" && len(c.Limits) == 1 {
			return l, true
		}
		names = append(names, l.Name)
	}
	switch {
	case len(names) == 0:
		r.Add(at, "a limit for "+quoted(c.ID)+", which asks yes or no and has none", "change its `strength`, or take the change out")
	case name == "":
		r.Add(at, "a bound without the name of its limit, where "+quoted(c.ID)+" has several", "add `limit` with "+listed(names))
	default:
		r.Add(at+"/limit", "the limit "+quoted(name)+", which "+quoted(c.ID)+" does not have", orNearest(name, names, "write "+listed(names)))
	}
	return review.Limit{}, false
}

// bound reads one bound and holds it against that of the clause.
func (r *reader) bound(at, key string, w *system.Written, was *float64, c *review.Clause, d working.Definition) *float64 {
	if w == nil {
		return nil
	}
	at += "/" + key
	if was == nil {
		other := map[string]string{"least": "most", "most": "least"}[key]
		r.Add(at, "a `"+key+"`, where "+quoted(c.ID)+" has a `"+other+"` alone", "change `"+other+"`; a bound on the other side is a clause of its own")
		return nil
	}
	q, err := quantity.Parse(d.Kind, string(*w))
	var why *quantity.Error
	switch {
	case errors.As(err, &why):
		write := why.Write
		if write == d.Kind.Example() {
			write = "it as the clause has it, such as " + r.said(d, *was)
		}
		r.Add(at, quoted(why.Text)+": "+why.Problem, "write "+write)
		return nil
	case err != nil:
		r.Add(at, quoted(string(*w)), "write it as the clause has it, such as "+r.said(d, *was))
		return nil
	}
	if ours := review.BasisOf(d.Title); d.Kind == quantity.Concentration && q.Basis != "" && q.Basis != ours {
		r.Add(at, quoted(string(*w))+", where "+d.Name+" is not worked out "+q.Basis, "leave "+quoted(q.Basis)+" out")
		return nil
	}
	weaker := key == "least" && q.SI < *was || key == "most" && q.SI > *was
	switch {
	case quantity.Rounded(q.SI) == quantity.Rounded(*was):
		r.Add(at, quoted(string(*w))+", which is what the clause says already", "take `"+key+"` out, or write another value")
	case c.Safety && weaker:
		r.Add(at, "the safety clause "+quoted(c.ID)+" made weaker, "+quoted(string(*w))+" where it has "+r.said(d, *was),
			"take it out: what guards life may be made stricter, never weaker")
	}
	return &q.SI
}

func (r *reader) said(d working.Definition, x float64) string {
	return quantity.Format(d.Kind, x, quantity.Metric)
}

// once refuses a second change of the same thing for the same setting.
func (r *reader) once(at string, c *review.Clause, what string, out *review.HouseChange) {
	settings := out.Settings
	if len(settings) == 0 {
		settings = []string{""}
	}
	var again []string
	for _, s := range settings {
		key := c.ID + "\n" + what + "\n" + s
		if r.seen[key] {
			again = append(again, quoted(s))
		}
		r.seen[key] = true
	}
	if len(again) == 0 {
		return
	}
	whose := ""
	if out.Settings != nil {
		whose = " for " + strings.Join(again, ", ")
	}
	r.Add(at, what+" of "+quoted(c.ID)+" changed again"+whose, "keep the change that counts")
}
