package judge

import "dryfit/internal/working"

// names is the catalogue by name.
type names struct {
	quantities map[string]working.Definition
	facts      map[string]working.FactDefinition
	sets       map[string]bool
	relations  map[string]bool
	cases      map[string]bool
}

func namesOf(c working.Catalogue) names {
	n := names{
		quantities: make(map[string]working.Definition, len(c.Quantities)),
		facts:      make(map[string]working.FactDefinition, len(c.Facts)),
		sets:       setOf(c.Sets),
		relations:  setOf(c.Relations),
		cases:      setOf(c.Cases),
	}
	for _, q := range c.Quantities {
		n.quantities[q.Name] = q
	}
	for _, f := range c.Facts {
		n.facts[f.Name] = f
	}
	return n
}

func setOf(list []working.Named) map[string]bool {
	set := make(map[string]bool, len(list))
	for _, l := range list {
		set[l.Name] = true
	}
	return set
}
