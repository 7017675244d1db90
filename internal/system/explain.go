package system

import (
	"fmt"
	"strings"

	"github.com/santhosh-tekuri/jsonschema/v5"
)

// An explainer turns the validator's errors into problems in plain words, one for each mistake.
type explainer struct {
	book *Rules
	doc  *Document
	ps   *problems
}

// explain walks down to the errors that have no cause below them. Unknown keys
// come first, so that a misspelt key is not also called missing; missing keys come last.
func (e *explainer) explain(err *jsonschema.ValidationError) {
	leaves := e.leaves(err, nil)
	turn := map[string]int{"additionalProperties": -1, "unevaluatedProperties": -1, "required": 1, "minProperties": 1}
	for now := -1; now <= 1; now++ {
		for _, leaf := range leaves {
			if _, keyword := e.book.rule(leaf.AbsoluteKeywordLocation); turn[keyword] == now {
				e.one(leaf)
			}
		}
	}
}

func (e *explainer) leaves(err *jsonschema.ValidationError, out []*jsonschema.ValidationError) []*jsonschema.ValidationError {
	if len(err.Causes) == 0 {
		return append(out, err)
	}
	for _, cause := range err.Causes {
		out = e.leaves(cause, out)
	}
	return out
}

// one explains one error.
func (e *explainer) one(leaf *jsonschema.ValidationError) {
	part, keyword := e.book.rule(leaf.AbsoluteKeywordLocation)
	rule, _ := part.(map[string]any)
	pointer := unescaped(leaf.InstanceLocation)
	n := e.doc.at(pointer)
	if e.ps.broken[pointer] && n != nil && (n.scalar() || n.doubtful) {
		return // said already
	}
	if strings.Contains(leaf.KeywordLocation, "/propertyNames") {
		e.name(pointer, rule)
		return
	}
	if version, ok := rule["const"]; ok && pointer == "/dryfit" {
		e.ps.add(pointer, n.short(), fmt.Sprintf("this dryfit reads notation %v: write `dryfit: %[1]v`", version))
		return
	}
	found, write := n.short(), ""
	switch keyword {
	case "additionalProperties":
		e.unknown(pointer, rule)
		return
	case "unevaluatedProperties":
		parent, _, _ := cutLast(pointer)
		e.unknown(parent, rule)
		return
	case "required":
		e.required(pointer, n, rule)
		return
	case "maxProperties":
		if rule[keyword] != 1.0 {
			found, write = fmt.Sprintf("a mapping with %d keys", len(n.keys)), fmt.Sprintf("give at most %v", rule[keyword])
			break
		}
		found, write = "the keys "+together(n)+" in one", "keep one key, and put what belongs to it inside: `"+firstKey(n)+": {...}`"
	case "minProperties":
		if len(n.lacks) > 0 {
			return // they were left out
		}
		write = "put at least one into it"
		if keys := e.keys(rule, 0); len(keys) > 0 {
			write = "write one of the keys " + e.few(keys)
		}
	case "enum", "const":
		found, write = n.short(), e.choice(n, rule)
	case "format", "type":
		found, write = e.value(pointer, n, rule)
	case "pattern":
		write = e.form(rule)
	case "minimum", "exclusiveMinimum":
		write = fmt.Sprintf("write %v or more", rule[keyword])
		if keyword == "exclusiveMinimum" {
			write = fmt.Sprintf("write more than %v", rule[keyword])
		}
	case "maximum", "exclusiveMaximum":
		write = fmt.Sprintf("write %v or less", rule[keyword])
		if keyword == "exclusiveMaximum" {
			write = fmt.Sprintf("write less than %v", rule[keyword])
		}
	case "minItems":
		found, write = fmt.Sprintf("a list of %d", len(n.items)), fmt.Sprintf("give at least %v", rule[keyword])
	case "maxItems":
		found, write = fmt.Sprintf("a list of %d", len(n.items)), fmt.Sprintf("give at most %v", rule[keyword])
	case "uniqueItems":
		found, write = "the same value twice in a list", "keep one"
	case "minLength":
		write = "write some text"
	case "maxLength":
		write = fmt.Sprintf("write at most %v letters", rule[keyword])
	case "dependentRequired":
		write = "add what belongs to it: " + leaf.Message
	default: // a schema that is `false`: the key may not stand here
		if parent, name, ok := cutLast(pointer); ok {
			e.ps.addAt(e.doc.key(parent, name), pointer, quoted(name), "take it out: it does not go with the other keys here")
			return
		}
		write = leaf.Message
	}
	e.ps.add(pointer, found, write)
}

// required explains keys that are not there, but for those that are misspelt or left out.
func (e *explainer) required(pointer string, n *node, rule map[string]any) {
	wanted, _ := rule["required"].([]any)
	properties, _ := rule["properties"].(map[string]any)
	for _, w := range wanted {
		name, _ := w.(string)
		if _, there := n.find(name); there || e.ps.broken[child(pointer, name)] {
			continue
		}
		write := "add the key " + quoted(name)
		if example := e.example(properties[name]); example != "" {
			write += ", as in `" + name + ": " + example + "`"
		}
		e.ps.add(child(pointer, name), "no "+quoted(name), write)
	}
}

// name explains a name that the author chose and that has not the form of one.
func (e *explainer) name(pointer string, rule map[string]any) {
	parent, name, _ := cutLast(pointer)
	write := e.form(rule)
	if format, ok := rule["format"].(string); ok {
		_, write = misfit(format, name)
	}
	e.ps.addAt(e.doc.key(parent, name), pointer, "the name "+quoted(name), write)
}

// form says what text must look like, in the words of the schema.
func (e *explainer) form(rule map[string]any) string {
	description, _ := rule["description"].(string)
	description, _, _ = strings.Cut(description, " Left out:")
	description = strings.TrimSuffix(description, ".")
	if description == "" {
		return fmt.Sprintf("write text of the form %v", rule["pattern"])
	}
	write := "write " + strings.ToLower(description[:1]) + description[1:]
	if example := e.example(rule); example != "" {
		write += "; as in `" + example + "`"
	}
	return write
}

// cutLast splits the last token off a pointer.
func cutLast(pointer string) (parent, name string, ok bool) {
	i := strings.LastIndexByte(pointer, '/')
	if i < 0 {
		return "", "", false
	}
	return pointer[:i], tokens(pointer[i:])[0], true
}

func together(n *node) string {
	var names []string
	for _, k := range n.keys {
		names = append(names, quoted(k.name))
	}
	if len(names) > 6 {
		names = append(names[:6], "others")
	}
	return strings.Join(names, " and ")
}

func firstKey(n *node) string { return n.keys[0].name }
