package working

// Catalogue is every word that a clause may use: the quantities, facts, sets,
// relations and cases that are worked out, each with what it means. A clause with
// a name that is not in it does not load.
type Catalogue struct {
	Quantities []Definition
	Facts      []FactDefinition
	Sets       []Named
	Relations  []Named
	Cases      []Named
}

// Only is the part of a catalogue that has a name, and whether there is any.
func (c Catalogue) Only(name string) (Catalogue, bool) {
	named := func(list []Named) []Named {
		return keep(list, func(n Named) bool { return n.Name == name })
	}
	out := Catalogue{
		Quantities: keep(c.Quantities, func(d Definition) bool { return d.Name == name }),
		Facts:      keep(c.Facts, func(f FactDefinition) bool { return f.Name == name }),
		Sets:       named(c.Sets), Relations: named(c.Relations), Cases: named(c.Cases),
	}
	return out, len(out.Quantities)+len(out.Facts)+len(out.Sets)+len(out.Relations)+len(out.Cases) > 0
}

func keep[T any](list []T, wanted func(T) bool) []T {
	var out []T
	for _, x := range list {
		if wanted(x) {
			out = append(out, x)
		}
	}
	return out
}

// Names is every name of a catalogue, in its order.
func (c Catalogue) Names() []string {
	var out []string
	for _, d := range c.Quantities {
		out = append(out, d.Name)
	}
	for _, f := range c.Facts {
		out = append(out, f.Name)
	}
	for _, list := range [][]Named{c.Sets, c.Relations, c.Cases} {
		for _, n := range list {
			out = append(out, n.Name)
		}
	}
	return out
}

// FactDefinition is one row of the catalogue of facts. Words are the values that
// the fact can have; with none, it can have any.
type FactDefinition struct {
	Name  string
	Title string // plain words, without article: "whether the bend opens to a brush"
	Words []string
	Of    string // whose it is: "each bend"
}

// Named is a set, a relation or a case: its name, and what is in it in plain words.
type Named struct {
	Name  string
	Title string
}

// Definer finds the definition of a quantity in a list by its name. A name that is
// not in it is a mistake of the caller and panics.
func Definer(list []Definition) func(name string) Definition {
	at := make(map[string]int, len(list))
	for i, d := range list {
		at[d.Name] = i
	}
	return func(name string) Definition {
		i, ok := at[name]
		if !ok {
			panic("working: no quantity is called " + name)
		}
		return list[i]
	}
}
