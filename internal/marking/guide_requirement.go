package marking

import (
	"slices"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// requirement reads an item on what the brief asks of the loop.
func (r *guideReader) requirement(at string, marks float64, f requirementForm) Task {
	task := &Requirement{Quantity: f.Quantity, Of: f.Of, Case: f.Case, Together: f.Together}
	d, known := r.asked(at, f)
	if !known {
		return task
	}
	task.Kind = d.Kind
	if f.Least == nil && f.Most == nil {
		r.Add(at, "a requirement without a bound", "add `least`, `most` or both")
		return task
	}
	m := measure{name: d.Name, title: d.Title, kind: d.Kind}
	ok := true
	bound := func(key string, w *written) *float64 {
		if w == nil {
			return nil
		}
		q, read := r.value(at+"/"+key, *w, m)
		switch {
		case !read:
		case q.SI < 0 && !signed[d.Kind]:
			r.Add(at+"/"+key, quoted(string(*w))+", which is below zero", "write 0 or more")
			read = false
		case m.unit == "":
			m.unit = q.Unit
		case d.Kind == quantity.Money && q.Unit != m.unit:
			r.Add(at+"/"+key, quoted(string(*w))+", where `least` is in "+m.unit, "write both in one currency")
			read = false
		}
		ok = ok && read
		return &q.SI
	}
	task.Least, task.Most = bound("least", f.Least), bound("most", f.Most)
	if !ok {
		return task
	}
	if f.Least != nil && f.Most != nil && *task.Least > *task.Most {
		r.Add(at+"/least", quoted(string(*f.Least))+", more than `most`, "+quoted(string(*f.Most)), "write a least that is not above the most")
	}
	task.Unit = m.unit
	task.Close, _ = r.bands(at+"/close", f.Close, m)
	for j, band := range f.Close {
		if band.Marks >= marks {
			r.Add(system.Element(at+"/close", j)+"/marks", quoted(MarksNumber(band.Marks))+" for coming close, no less than the "+MarksWords(marks)+" for reaching it", "write less than "+MarksNumber(marks))
		}
	}
	return task
}

// signed is the kinds of which a value may be below zero.
var signed = map[quantity.Kind]bool{
	quantity.Length: true, quantity.Head: true, quantity.TemperatureDifference: true, quantity.Number: true, quantity.Pressure: true, quantity.Force: true,
}

// asked finds the quantity of a requirement. The cost and the footprint are those of the whole loop.
func (r *guideReader) asked(at string, f requirementForm) (working.Definition, bool) {
	whole := func(key string, given bool) {
		if given {
			r.Add(at+"/"+key, quoted(key)+" beside "+quoted(f.Quantity)+", which is that of the whole loop", "take it out")
		}
	}
	switch f.Quantity {
	case Cost:
		whole("of", f.Of != "")
		whole("case", f.Case != "")
		whole("together", f.Together)
		return working.Definition{Name: Cost, Title: "what is still to be bought", Kind: quantity.Money}, true
	case Footprint:
		whole("of", f.Of != "" && f.Of != "site")
		whole("together", f.Together)
		r.whose(at, "", f.Case)
		if d, known := quantityIn(r.catalogue, Footprint); known {
			return d, true
		}
		return working.Definition{Name: Footprint, Title: "floor that vessels and stands cover", Kind: quantity.Area}, true
	}
	if f.Of == "" {
		r.Add(at, "a requirement that does not say whose: "+f.Quantity, "add the key `of` with the id of a subject or the name of a set, as in `of: fish_tanks`")
	}
	r.whose(at, f.Of, f.Case)
	return r.quantity(at, f.Quantity)
}

// exclude refuses requirements that cannot all be reached.
func (r *guideReader) exclude(items []*Item) {
	for j, item := range items {
		here, ok := item.Task.(*Requirement)
		i := slices.IndexFunc(items[:j], func(other *Item) bool {
			there, also := other.Task.(*Requirement)
			return ok && also && !item.Bonus && !other.Bonus && here.excludes(there)
		})
		if i >= 0 {
			r.Add(item.Pointer+"/requirement", "a requirement that nobody reaches who reaches that of "+quoted(items[i].ID), "write bounds that meet, or make one of them a bonus")
		}
	}
}

// excludes says that the bounds of two requirements on the same thing do not meet.
func (task *Requirement) excludes(other *Requirement) bool {
	if task.Quantity != other.Quantity || task.Of != other.Of || task.Case != other.Case || task.Together != other.Together ||
		task.Kind == quantity.Money && task.Unit != other.Unit {
		return false
	}
	over := func(least, most *float64) bool { return least != nil && most != nil && *least > *most }
	return over(task.Least, other.Most) || over(other.Least, task.Most)
}
