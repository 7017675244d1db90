package judge

import (
	"encoding/json"
	"maps"
	"slices"

	"github.com/open-policy-agent/opa/v1/ast"

	"dryfit/internal/review"
)

// InputSchema is the JSON Schema of what Rego sees, as it is kept in the project
// for authors of clauses. It depends on the catalogue and on the limits of the
// loaded clauses only.
func (b *Book) InputSchema() []byte {
	b.must()
	s := b.names.schema(b.clauses...)
	s["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	s["title"] = "What a clause sees of a loop"
	text, err := json.MarshalIndent(s, "", "  ")
	if err != nil {
		panic("judge: the schema is made of strings, maps and booleans: " + err.Error())
	}
	return append(text, '\n')
}

type object = map[string]any

// schema types the input at its root. Every name of the catalogue is a property of
// its own and no other is allowed, so that a misspelt name does not compile. Limits and
// cases are those of the clauses.
func (n names) schema(clauses ...*review.Clause) object {
	value := closed(object{"value": typed("number"), "low": typed("number"), "high": typed("number"), "when": typed("string")})
	texts := object{"type": "array", "items": typed("string")}
	entry := object{"type": "object", "required": []string{"at"}, "additionalProperties": false, "properties": object{
		"at":      typed("string"),
		"in":      object{"type": "object", "additionalProperties": object{"type": "array", "items": value}},
		"missing": object{"type": "object", "additionalProperties": texts},
	}}
	answer := object{"type": "object", "required": []string{"at"}, "additionalProperties": false, "properties": object{
		"at": typed("string"), "word": typed("string"), "missing": texts,
	}}
	quantities, facts, sets, relations := object{}, object{}, object{}, object{}
	for name, d := range n.quantities {
		quantities[name] = described(column(entry), d.Title)
	}
	for name, d := range n.facts {
		facts[name] = described(column(answer), d.Title)
	}
	for name := range n.sets {
		sets[name] = texts
	}
	for name := range n.relations {
		relations[name] = object{"type": "object", "additionalProperties": texts}
	}
	limits, cases := object{}, object{}
	for _, c := range clauses {
		into(limits, c.Chapter)[c.ID] = limitSchema(c)
		into(cases, c.Chapter)[c.ID] = texts
	}
	for _, chapter := range slices.Collect(maps.Keys(limits)) {
		limits[chapter] = closed(limits[chapter].(object))
		cases[chapter] = closed(cases[chapter].(object))
	}
	return closed(object{
		"quantities": closed(quantities), "facts": closed(facts), "sets": closed(sets),
		"relations": closed(relations), "limits": closed(limits), "cases": closed(cases),
	})
}

func limitSchema(c *review.Clause) object {
	all := object{}
	for _, l := range c.Limits {
		one := object{}
		if l.Least != nil {
			one["least"] = typed("number")
		}
		if l.Most != nil {
			one["most"] = typed("number")
		}
		all[l.Name] = closed(one)
	}
	return closed(all)
}

func typed(name string) object { return object{"type": name} }

// closed is an object of which every property is there and no other is allowed.
func closed(properties object) object {
	return object{
		"type": "object", "properties": properties, "additionalProperties": false,
		"required": append([]string{}, slices.Sorted(maps.Keys(properties))...), // never null: a clause of facts has no limits
	}
}

func column(entry object) object {
	return closed(object{"name": typed("string"), "of": object{"type": "object", "additionalProperties": entry}})
}

func described(schema object, text string) object {
	if text != "" {
		schema["description"] = text
	}
	return schema
}

func into(m object, key string) object {
	if m[key] == nil {
		m[key] = object{}
	}
	return m[key].(object)
}

// schemas hands the schema of the root to the compiler.
func (n names) schemas(clauses ...*review.Clause) *ast.SchemaSet {
	set := ast.NewSchemaSet()
	set.Put(ast.SchemaRootRef, n.schema(clauses...))
	return set
}
