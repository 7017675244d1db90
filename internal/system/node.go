package system

import (
	"strconv"
	"strings"
)

// A form says what sort of value a node is.
type form int

const (
	null form = iota
	boolean
	number
	text
	list
	mapping
)

// A node is one value of the document, with the place where it was written.
// A mapping holds keys and items side by side, in file order.
type node struct {
	form         form
	text         string  // of a scalar: as written, without its quotes
	value        float64 // of a number
	on           bool    // of a boolean
	line, column int
	keys         []key
	items        []*node
	byName       map[string]int // of a mapping: the place of a key among its keys
	lacks        []string       // of a mapping: keys that were left out of it; see [ReadAsFar]
	doubtful     bool           // a mapping that was refused as a whole and stands without its values
}

// A key names a value of a mapping.
type key struct {
	name         string
	line, column int
}

func (n *node) scalar() bool { return n != nil && n.form < list }

// get is the value under a name, or nil.
func (n *node) get(name string) *node {
	if i, ok := n.find(name); ok {
		return n.items[i]
	}
	return nil
}

func (n *node) find(name string) (int, bool) {
	if n == nil || n.form != mapping {
		return 0, false
	}
	i, ok := n.byName[name]
	return i, ok
}

// put sets the value under a name: the one that is there, or a new one at the end.
func (n *node) put(k key, value *node) {
	if i, ok := n.find(k.name); ok {
		n.items[i] = value
		return
	}
	if n.byName == nil {
		n.byName = map[string]int{}
	}
	n.byName[k.name] = len(n.keys)
	n.keys = append(n.keys, k)
	n.items = append(n.items, value)
}

// remove takes the value at a place out of a mapping or list.
func (n *node) remove(i int) {
	n.items = append(n.items[:i:i], n.items[i+1:]...)
	if n.form != mapping {
		return
	}
	n.keys = append(n.keys[:i:i], n.keys[i+1:]...)
	n.byName = map[string]int{}
	for at, k := range n.keys {
		n.byName[k.name] = at
	}
}

// step is the value one pointer token further down, or nil.
func (n *node) step(token string) *node {
	if n == nil {
		return nil
	}
	if n.form == list {
		if i, ok := listIndex(token); ok && i < len(n.items) {
			return n.items[i]
		}
		return nil
	}
	return n.get(token)
}

// copy is the node and all below it, so that the copy can be edited alone.
func (n *node) copy() *node {
	if n == nil {
		return nil
	}
	c := *n
	c.keys = append([]key(nil), n.keys...)
	c.items = make([]*node, len(n.items))
	for i, item := range n.items {
		c.items[i] = item.copy()
	}
	if n.byName != nil {
		c.byName = make(map[string]int, len(n.byName))
		for name, i := range n.byName {
			c.byName[name] = i
		}
	}
	return &c
}

// plain is the value as the schema's validator wants it.
func (n *node) plain() any {
	switch n.form {
	case boolean:
		return n.on
	case number:
		return n.value
	case text:
		return n.text
	case list:
		out := make([]any, len(n.items))
		for i, item := range n.items {
			out[i] = item.plain()
		}
		return out
	case mapping:
		out := make(map[string]any, len(n.keys))
		for i, k := range n.keys {
			out[k.name] = n.items[i].plain()
		}
		return out
	}
	return nil
}

// short says in a few words what stands here, for the column "found" of a table of problems.
func (n *node) short() string {
	switch {
	case n == nil:
		return "nothing"
	case n.form == list && len(n.items) == 0:
		return "an empty list"
	case n.form == list:
		return "a list"
	case n.form == mapping && len(n.keys) == 0:
		return "an empty mapping"
	case n.form == mapping:
		return "a mapping with " + quoted(n.keys[0].name)
	case n.form == null:
		return "nothing"
	}
	return quoted(n.text)
}

// quoted puts text between backquotes, on one line and not too long.
func quoted(s string) string {
	s = strings.Join(strings.Fields(s), " ")
	if r := []rune(s); len(r) > 60 {
		s = string(r[:57]) + "..."
	}
	return "`" + s + "`"
}

// listIndex reads a pointer token as the place of an element of a list.
func listIndex(token string) (int, bool) {
	if token == "" || len(token) > 6 || len(token) > 1 && token[0] == '0' {
		return 0, false
	}
	i, err := strconv.Atoi(token)
	return i, err == nil && i >= 0 && token[0] != '+' && token[0] != '-'
}

// tokens splits a JSON pointer (RFC 6901) into its unescaped parts.
func tokens(pointer string) []string {
	if pointer == "" || pointer[0] != '/' {
		return nil
	}
	parts := strings.Split(pointer[1:], "/")
	for i, p := range parts {
		parts[i] = strings.ReplaceAll(strings.ReplaceAll(p, "~1", "/"), "~0", "~")
	}
	return parts
}

// child is the pointer of a value inside another.
func child(pointer, name string) string {
	if strings.ContainsAny(name, "~/") {
		name = strings.ReplaceAll(strings.ReplaceAll(name, "~", "~0"), "/", "~1")
	}
	return pointer + "/" + name
}

// element is the pointer of an element of a list.
func element(pointer string, i int) string { return pointer + "/" + strconv.Itoa(i) }
