package system

import "github.com/santhosh-tekuri/jsonschema/v5"

// validator is the schema compiled, at least as far as the document needs it. To
// compile takes longer than to read a file, and goes by the size of the schema, of
// which one file uses a third. So the first document has only the rules of its own
// keys compiled, and the whole is left to the first that has others.
func (book *Rules) validator(doc *Document) (*jsonschema.Schema, error) {
	book.mutex.Lock()
	defer book.mutex.Unlock()
	if book.schema != nil && book.covers == nil {
		return book.schema, nil
	}
	keys := map[string]bool{}
	doc.root.collect(keys)
	if book.schema != nil && within(keys, book.covers) {
		return book.schema, nil
	}
	text := book.text
	if book.schema == nil {
		book.covers, text = keys, needed(book.text, keys)
	} else {
		book.covers = nil
	}
	var err error
	book.schema, err = book.compile(text)
	return book.schema, err
}

// collect adds the keys of all mappings at and below the node.
func (n *node) collect(keys map[string]bool) {
	for _, k := range n.keys {
		keys[k.name] = true
	}
	for _, item := range n.items {
		item.collect(keys)
	}
}

func within(keys, others map[string]bool) bool {
	for k := range keys {
		if !others[k] {
			return false
		}
	}
	return true
}

// needed is a schema without what says nothing about a document with these keys:
// the rules of other keys, and what is only for people. Everything that is left stays in its place.
func needed(part any, keys map[string]bool) any {
	switch p := part.(type) {
	case map[string]any:
		out := make(map[string]any, len(p))
		for keyword, value := range p {
			switch keyword {
			case "title", "description", "examples":
			case "const", "enum", "default":
				out[keyword] = value
			case "properties":
				out[keyword] = neededOf(value, keys, keys)
			case "$defs", "patternProperties", "dependentSchemas":
				out[keyword] = neededOf(value, keys, nil)
			default:
				out[keyword] = needed(value, keys)
			}
		}
		return out
	case []any:
		out := make([]any, len(p))
		for i, value := range p {
			out[i] = needed(value, keys)
		}
		return out
	}
	return part
}

// neededOf is the same for schemas under names: all of them, or only those named.
func neededOf(part any, keys, names map[string]bool) any {
	p, ok := part.(map[string]any)
	if !ok {
		return part
	}
	out := make(map[string]any, len(p))
	for name, value := range p {
		if names == nil || names[name] {
			out[name] = needed(value, keys)
		}
	}
	return out
}
