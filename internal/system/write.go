package system

import (
	"bytes"
	"encoding/json"
	"strings"
)

// YAML writes the document out, without its comments. It reads back to the same values.
func (d *Document) YAML() []byte {
	var b bytes.Buffer
	if d.root != nil {
		writeBlock(&b, d.root, 0)
	}
	return b.Bytes()
}

// wide is the length up to which a mapping or list goes on one line.
const wide = 100

// writeBlock writes a value as the lines of a block, each indented.
func writeBlock(b *bytes.Buffer, n *node, indent int) {
	margin := strings.Repeat(" ", indent)
	switch {
	case n.form == mapping && len(n.keys) > 0:
		for i, k := range n.keys {
			b.WriteString(margin + flowText(k.name) + ":")
			writeUnder(b, n.items[i], indent+2, indent > 0)
		}
	case n.form == list && len(n.items) > 0:
		for _, item := range n.items {
			b.WriteString(margin + "-")
			writeUnder(b, item, indent+2, true)
		}
	default:
		b.WriteString(margin + flow(n) + "\n")
	}
}

// writeUnder writes what follows a colon or dash: on the same line if it is short enough, else as a block.
func writeUnder(b *bytes.Buffer, n *node, indent int, mayFlow bool) {
	line := flow(n)
	if n.scalar() || len(n.items) == 0 || mayFlow && len(line)+indent <= wide {
		b.WriteString(" " + line + "\n")
		return
	}
	b.WriteString("\n")
	writeBlock(b, n, indent)
}

// flow is a value on one line.
func flow(n *node) string {
	switch n.form {
	case null:
		return "null"
	case text:
		return flowText(n.text)
	case list:
		parts := make([]string, len(n.items))
		for i, item := range n.items {
			parts[i] = flow(item)
		}
		return "[" + strings.Join(parts, ", ") + "]"
	case mapping:
		parts := make([]string, len(n.keys))
		for i, k := range n.keys {
			parts[i] = flowText(k.name) + ": " + flow(n.items[i])
		}
		return "{" + strings.Join(parts, ", ") + "}"
	}
	return n.text
}

// flowText is text as it may stand anywhere in YAML: bare if that cannot be
// misread, else in double quotes as in JSON.
func flowText(s string) string {
	bare := s != "" && !decimal.MatchString(s)
	for i, r := range s {
		letter := r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z'
		digit := r >= '0' && r <= '9'
		inside := i > 0 && (r == '-' || r == '.' || r == '/' || r == '%' || r == '_' || r == '(' || r == ')')
		blank := i > 0 && i < len(s)-1 && r == ' '
		bare = bare && (letter || digit || inside || blank)
	}
	switch s {
	case "null", "Null", "NULL", "true", "false", "True", "False", "TRUE", "FALSE":
		bare = false
	}
	if bare {
		return s
	}
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(s); err != nil {
		return `""`
	}
	return strings.TrimSuffix(b.String(), "\n")
}
