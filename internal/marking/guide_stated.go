package marking

import (
	"slices"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// statedRight reads the item on a number that the student worked out.
func (r *guideReader) statedRight(at string, marks float64, f statedForm) Task {
	task := &StatedRight{
		Quantity: f.Quantity, Of: f.Of, Case: f.Case, Unit: f.Unit, NoUnit: marks, BadUnit: marks,
		Sources: f.WithinSources, Alone: f.CarriedForward != nil && !*f.CarriedForward,
	}
	for _, less := range []struct {
		key   string
		given *float64
		into  *float64
	}{{"no_unit", f.NoUnit, &task.NoUnit}, {"wrong_unit", f.WrongUnit, &task.BadUnit}, {"no_working", f.NoWorking, &task.NoWork}} {
		if less.given == nil {
			continue
		}
		if *less.into = *less.given; *less.given > marks {
			r.Add(at+"/"+less.key, quoted(MarksNumber(*less.given))+", more than the "+MarksWords(marks)+" of the item", "write at most "+MarksNumber(marks))
		}
	}
	r.whose(at, f.Of, f.Case)
	d, known := r.quantity(at, f.Quantity)
	if !known {
		return task
	}
	task.Kind = d.Kind
	r.unit(at, f.Unit, d)
	var top float64
	task.Bands, top = r.bands(at+"/bands", f.Bands, measure{d.Name, d.Title, d.Kind, f.Unit})
	r.top(at+"/bands", top, marks)
	return task
}

// quantity finds a quantity by its name.
func (r *guideReader) quantity(at, name string) (working.Definition, bool) {
	d, known := quantityIn(r.catalogue, name)
	if known || name == "" { // the schema has refused that
		return d, known
	}
	if slices.ContainsFunc(r.catalogue.Facts, func(f working.FactDefinition) bool { return f.Name == name }) {
		r.Add(at+"/quantity", quoted(name)+", which is a fact and no number", "write the name of a quantity, which `dryfit quantities` lists; facts are judged by clauses")
		return d, false
	}
	var names []string
	for _, d := range r.catalogue.Quantities {
		names = append(names, d.Name)
	}
	r.Add(at+"/quantity", "the quantity "+quoted(name)+", which nothing works out", orNearest(name, names, "`dryfit quantities` lists them"))
	return d, false
}

// whose wants a set and a case to be among those that there are. The id of a subject is the student's.
func (r *guideReader) whose(at, of, kase string) {
	look := func(key, what, word string, among []working.Named) {
		var names []string
		for _, n := range among {
			names = append(names, n.Name)
		}
		if len(names) > 0 && !slices.Contains(names, word) {
			r.Add(at+"/"+key, "the "+what+" "+quoted(word)+", which is not known", orNearest(word, names, "`dryfit quantities` lists the "+what+"s at its end"))
		}
	}
	if strings.Contains(of, "_") && !strings.Contains(of, "/") {
		look("of", "set", of, r.catalogue.Sets)
	}
	if kase != "" {
		look("case", "case", kase, r.catalogue.Cases)
	}
}

// unit wants the unit of a stated value to be one of its quantity.
func (r *guideReader) unit(at, unit string, d working.Definition) {
	units := d.Kind.Units()
	switch {
	case d.Kind == quantity.Number && unit != "":
		r.Add(at+"/unit", "the unit "+quoted(unit)+" of "+d.Name+", which is a plain number", "take it out")
	case d.Kind == quantity.Number || d.Kind == quantity.Fraction && unit == "":
	case unit == "":
		write := "add the key `unit`"
		if len(units) > 0 {
			write += ", as in `unit: " + units[0] + "`"
		}
		r.Add(at, "a "+d.Kind.Title()+" without a `unit`: "+d.Name, write)
	default:
		if _, known := quantity.Convert(d.Kind, 1, unit); !known {
			r.Add(at+"/unit", quoted(unit)+", which is no unit of "+d.Kind.Title(), orNearest(unit, units, "write one of "+series(quotedAll(units))))
		}
	}
}

func quotedAll(words []string) []string {
	var out []string
	for _, w := range words {
		out = append(out, quoted(w))
	}
	return out
}

// twice refuses a second item on one number, for which a file would have to state it again.
func (r *guideReader) twice(items []*Item) {
	seen := map[[3]string]*Item{}
	for _, item := range items {
		task, ok := item.Task.(*StatedRight)
		if !ok || slices.ContainsFunc(r.catalogue.Sets, func(n working.Named) bool { return n.Name == task.Of }) {
			continue
		}
		key := [3]string{task.Quantity, task.Of, task.Case}
		if other := seen[key]; other != nil {
			r.Add(item.Pointer+"/stated", "the stated value that "+quoted(other.ID)+" asks for, too", "give both their marks in one item, or ask for another quantity, subject or case")
			continue
		}
		seen[key] = item
	}
}

// inputsGiven reads the item on inputs.
func (r *guideReader) inputsGiven(at string, f inputsForm) Task {
	if len(f.Keys) == 0 && !f.Undetermined {
		r.Add(at, "inputs of which none is asked for", "add `keys`, or `undetermined: true`")
	}
	r.keys(at+"/keys", f.Keys)
	return &InputsGiven{Keys: f.Keys, Undetermined: f.Undetermined}
}

// groundsGiven reads the item on sources and assumptions.
func (r *guideReader) groundsGiven(at string, f groundsForm) Task {
	if len(f.SourcesFor) == 0 && f.Assumptions == 0 {
		r.Add(at, "grounds of which none is asked for", "add `sources_for`, or a number of `assumptions`")
	}
	r.keys(at+"/sources_for", f.SourcesFor)
	return &GroundsGiven{SourcesFor: f.SourcesFor, Assumptions: f.Assumptions}
}

// keys wants keys that a system file may have.
func (r *guideReader) keys(at string, keys []string) {
	for i, key := range keys {
		bad, near, known := system.KnownKey(key)
		if known {
			continue
		}
		write := "take the key from schema/system.schema.json, its parts joined by dots"
		if near != "" {
			write = "the nearest is " + quoted(near)
		}
		r.Add(system.Element(at, i), "the key "+quoted(bad)+", which no system file has", write)
	}
}
