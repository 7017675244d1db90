package system

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"dryfit/internal/quantity"
)

// choice says which word of a fixed set to write.
func (e *explainer) choice(n *node, rule map[string]any) string {
	allowed := choices(rule)
	if near := nearest(n.text, allowed); near != "" && n.form == text {
		return "the nearest word is " + quoted(near)
	}
	if len(allowed) == 1 {
		return "write " + quoted(allowed[0])
	}
	return "write one of " + listed(allowed)
}

// choices is the fixed values that a part of the schema allows.
func choices(rule map[string]any) []string {
	values, _ := rule["enum"].([]any)
	if v, ok := rule["const"]; ok {
		values = append(slices.Clone(values), v)
	}
	var out []string
	for _, v := range values {
		out = append(out, fmt.Sprint(v))
	}
	return out
}

// value says what is wrong with a value of the wrong sort, and what to write.
func (e *explainer) value(n *node, rule map[string]any) (found, write string) {
	format, _ := rule["format"].(string)
	if n.scalar() && n.form != null && format != "" {
		if problem, write := misfit(format, n.text); problem != "" {
			return quoted(n.text) + ": " + problem, write
		}
		return n.short(), "put it in quotes, so that it is text"
	}
	options := e.described(rule)
	if len(options) == 0 {
		return n.short(), "write something else here"
	}
	if n.form == number && options[0] == "text" {
		return n.short(), "put it in quotes, so that it is text"
	}
	return n.short(), "write " + strings.Join(options, ", or ")
}

// described says in words which values a part of the schema takes.
func (e *explainer) described(rule map[string]any) []string {
	if allowed := choices(rule); len(allowed) > 0 {
		return []string{listed(allowed)}
	}
	sorts, _ := rule["type"].([]any)
	if one, ok := rule["type"].(string); ok {
		sorts = []any{one}
	}
	var out []string
	for _, sort := range sorts {
		out = append(out, e.sort(fmt.Sprint(sort), rule))
	}
	return out
}

// sort says a type of the schema in words.
func (e *explainer) sort(name string, rule map[string]any) string {
	say := map[string]string{
		"number": "a plain number", "integer": "a whole number", "boolean": "`true` or `false`",
		"string": "text", "array": "a list", "null": "nothing", "object": "a mapping",
	}[name]
	switch name {
	case "object":
		if keys := e.keys(rule, 0); len(keys) > 0 && len(keys) <= 12 {
			say += " with keys such as " + listed(keys)
		}
	case "string":
		if format, ok := rule["format"].(string); ok {
			kind, word, either := strings.Cut(format, "-or-")
			say = "a " + quantity.Kind(kind).Title() + " with its unit, as in `" + quantity.Kind(kind).Example() + "`"
			if either {
				say += ", or the word `" + word + "`"
			}
		}
	}
	return say
}

// example is a value that a part of the schema shows, or that its format or words allow.
func (e *explainer) example(part any) string {
	rule := e.book.resolved(part)
	if rule == nil {
		return ""
	}
	if examples, _ := rule["examples"].([]any); len(examples) > 0 {
		if s, ok := examples[0].(string); ok {
			return s
		}
		if b, err := json.Marshal(examples[0]); err == nil && len(b) <= 60 {
			return string(b)
		}
		return ""
	}
	if allowed := choices(rule); len(allowed) > 0 {
		return allowed[0]
	}
	if format, ok := rule["format"].(string); ok {
		kind, _, _ := strings.Cut(format, "-or-")
		return quantity.Kind(kind).Example()
	}
	return ""
}
