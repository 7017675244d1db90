package system

import (
	"fmt"
	"slices"
	"strings"
)

// choice says which word of a fixed set to write.
func (e *explainer) choice(n *node, rule map[string]any) string {
	allowed := choices(rule)
	if n.form == text {
		switch near := likely(n.text, allowed); len(near) {
		case 0:
		case 1:
			return "the nearest word is " + quoted(near[0])
		default:
			return "the nearest words are " + joined(near)
		}
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
func (e *explainer) value(pointer string, n *node, rule map[string]any) (found, write string) {
	format, _ := rule["format"].(string)
	if n.scalar() && n.form != null && format != "" {
		if problem, write := misfit(format, n.text); problem != "" {
			return quoted(n.text) + ": " + problem, write
		}
		return n.short(), "put it in quotes, so that it is text"
	}
	if n.form == text && rule["maxProperties"] == 1.0 {
		if write := e.alone(pointer, n, rule); write != "" {
			return n.short(), write
		}
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

// alone sees the key of a mapping that has one, written as a bare word: `- union`.
func (e *explainer) alone(pointer string, n *node, rule map[string]any) string {
	keys := e.keys(rule, 0)
	name, lead := strings.NewReplacer("-", "_", " ", "_").Replace(n.text), ""
	if !slices.Contains(keys, name) {
		if name = alsoCalled[name]; !slices.Contains(keys, name) {
			name = Nearest(n.text, keys)
		}
		if name == "" {
			return ""
		}
		lead = "the nearest is " + quoted(name) + ": "
	}
	properties, _ := rule["properties"].(map[string]any)
	value := e.example(properties[name])
	if value == "" {
		value = "{...}"
	}
	write := name + ": " + value
	if holder, _, _ := cutLast(pointer); e.doc.at(holder) == nil || e.doc.at(holder).form != list {
		write = "{" + write + "}"
	}
	return lead + "write `" + write + "`"
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
		if keys := e.keys(rule, 0); len(keys) > 0 {
			say += " with keys such as " + e.few(keys)
		}
	case "string":
		if format, ok := rule["format"].(string); ok {
			m, word := measured(format)
			say = described(m.kind) + " with its unit, as in `" + m.kind.Example() + "`"
			if word != "" {
				say += ", or the word `" + word + "`"
			}
		}
	}
	return say
}

// example is a value that a part of the schema shows, or that its format or
// words allow, as it is written in a file.
func (e *explainer) example(part any) string {
	own, _ := part.(map[string]any)
	rule := e.book.resolved(part)
	for _, holder := range []map[string]any{own, rule} {
		examples, _ := holder["examples"].([]any)
		if len(examples) == 0 {
			continue
		}
		if s, ok := examples[0].(string); ok {
			return s
		}
		if line := flow(e.book.node(examples[0])); len(line) <= 60 {
			return line
		}
		return ""
	}
	if allowed := choices(rule); len(allowed) > 0 {
		return allowed[0]
	}
	if format, ok := rule["format"].(string); ok {
		m, _ := measured(format)
		return m.kind.Example()
	}
	return ""
}
