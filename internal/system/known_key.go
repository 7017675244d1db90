package system

import (
	"reflect"
	"strings"
)

// KnownKey says whether a system file may have a value under a key whose parts are
// joined by dots, where `*` stands for every key or element. If not, bad is the key up to the
// first part that cannot stand there, and near the same with the nearest part that can; empty where none is near.
func KnownKey(key string) (bad, near string, known bool) {
	rules, err := systemRules()
	if err != nil {
		return key, "", false
	}
	e := explainer{book: rules}
	at := []map[string]any{rules.resolved(rules.text)}
	parts := strings.Split(key, ".")
	for i, part := range parts {
		var below []map[string]any
		var names []string
		seen := map[uintptr]bool{}
		for _, rule := range at {
			names = append(names, e.keys(rule, 0)...)
			for _, found := range e.under(rule, part) {
				if id := reflect.ValueOf(found).Pointer(); !seen[id] {
					seen[id] = true
					below = append(below, found)
				}
			}
		}
		if len(below) == 0 {
			before := strings.Join(parts[:i], ".") + "."
			if i == 0 {
				before = ""
			}
			if near = Nearest(part, names); near != "" {
				near = before + near
			}
			return before + part, near, false
		}
		at = below
	}
	return "", "", true
}

// under is the parts of the schema for what stands in a mapping or list under a key, a number or `*`.
func (e *explainer) under(rule map[string]any, key string) []map[string]any {
	var out []map[string]any
	add := func(part any) {
		if found := e.book.resolved(part); found != nil {
			out = append(out, found)
		}
	}
	properties, _ := rule["properties"].(map[string]any)
	_, index := listIndex(key)
	switch {
	case key == "*":
		for _, name := range e.book.names(properties) {
			add(properties[name])
		}
	case properties[key] != nil:
		add(properties[key])
	}
	if names, _ := rule["propertyNames"].(map[string]any); names != nil && (key == "*" || identifier.MatchString(key)) {
		add(rule["additionalProperties"])
	}
	if key == "*" || index {
		add(rule["items"])
		first, _ := rule["prefixItems"].([]any)
		for _, part := range first {
			add(part)
		}
	}
	return out
}
