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
