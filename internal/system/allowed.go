package system

import (
	"slices"

	"dryfit/internal/quantity"
)

// Allowed is what the notation of a system file says of one place in it.
type Allowed struct {
	Means    string        // its description
	Examples []string      // as they may stand in a file
	Kind     quantity.Kind // of a value with a unit; empty where there is none
	Words    []string      // fixed words that may stand there, beside a quantity where it has a kind
	Keys     []AllowedKey  // of the mapping that may stand there, in the order of the notation
	List     bool          // a list may stand there
}

// AllowedKey is one key of a mapping.
type AllowedKey struct {
	Name string
	Allowed
	Wanted bool // the notation wants it
}

// AllowedAt is what may stand at a path of keys and of numbers of elements, and
// whether anything may. Keys are given one level deep.
func AllowedAt(path []string) (Allowed, bool) {
	rules, err := systemRules()
	if err != nil {
		return Allowed{}, false
	}
	e := explainer{book: rules}
	at := []any{rules.text}
	for _, step := range path {
		var below []any
		for _, part := range at {
			below = append(below, e.parts(rules.resolved(part), step)...)
		}
		at = below
	}
	if len(at) == 0 {
		return Allowed{}, false
	}
	out := e.allowed(at[0])
	rule := rules.resolved(at[0])
	wanted, _ := rule["required"].([]any)
	properties, _ := rule["properties"].(map[string]any)
	for _, name := range e.keys(rule, 0) {
		out.Keys = append(out.Keys, AllowedKey{name, e.allowed(properties[name]), slices.Contains(wanted, any(name))})
	}
	return out, true
}

// parts is the parts of the schema under a key or number, with what they say beside a reference.
func (e *explainer) parts(rule map[string]any, step string) []any {
	properties, _ := rule["properties"].(map[string]any)
	if part := properties[step]; part != nil {
		return []any{part}
	}
	if rule["propertyNames"] != nil && rule["additionalProperties"] != nil && identifier.MatchString(step) {
		return []any{rule["additionalProperties"]}
	}
	i, isIndex := listIndex(step)
	if !isIndex {
		return nil
	}
	if first, _ := rule["prefixItems"].([]any); i < len(first) {
		return []any{first[i]}
	}
	if items, ok := rule["items"].(map[string]any); ok {
		return []any{items}
	}
	return nil
}

// allowed is what a part of the schema says itself; what stands beside a reference goes first.
func (e *explainer) allowed(part any) Allowed {
	own, _ := part.(map[string]any)
	rule := e.book.resolved(part)
	out := Allowed{Words: choices(rule)}
	for _, holder := range []map[string]any{own, rule} {
		if text, ok := holder["description"].(string); ok && out.Means == "" {
			out.Means = text
		}
		if examples, _ := holder["examples"].([]any); len(out.Examples) == 0 {
			for _, example := range examples {
				out.Examples = append(out.Examples, flow(e.book.node(example)))
			}
		}
	}
	if then, ok := rule["then"].(map[string]any); ok { // a word in place of the mapping
		out.Words = append(out.Words, choices(e.book.resolved(then))...)
	}
	if format, ok := rule["format"].(string); ok && format != "id" && format != "date" {
		m, word := measured(format)
		out.Kind = m.kind
		if word != "" {
			out.Words = append(out.Words, word)
		}
	}
	sorts, _ := rule["type"].([]any)
	if one, ok := rule["type"].(string); ok {
		sorts = []any{one}
	}
	out.List = slices.Contains(sorts, any("array"))
	if slices.Contains(sorts, any("boolean")) {
		out.Words = append(out.Words, "true", "false")
	}
	return out
}

// OnOneLine is a value on one line, as it may stand in a file; see [Edit] for what it may be.
func OnOneLine(value any) (string, bool) {
	n, ok := made(value, Place{}, 0)
	if !ok {
		return "", false
	}
	return flow(n), true
}
