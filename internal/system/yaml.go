package system

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v4"
	"go.yaml.in/yaml/v4/plugin/loaderlimits"
)

// Limits on a file from a stranger. Each is far above what a loop needs.
const (
	mostBytes   = 1_000_000
	mostDepth   = 40
	mostAliases = 100
	mostNodes   = 50_000
	mostLetters = 2_000 // in one scalar
	mostKeys    = 500   // in one mapping
	mostItems   = 300   // in one list
	mostPercent = 20    // lines that start with %: each directive of YAML is held against all before it
)

// parse reads YAML 1.2, of which JSON is a part, into a tree of our own. What is
// wrong with the file as text goes to the problems; the root is nil when nothing can be read.
func parse(data []byte, ps *problems) *node {
	if !readable(data, ps) {
		return nil
	}
	top, err := load(data)
	if err != nil {
		syntax(err, data, ps)
		return nil
	}
	if top == nil || len(top.Content) == 0 {
		ps.addAt(Place{ps.doc.File, 1, 1}, "", "an empty file", "start with `dryfit: 1` and a name")
		return nil
	}
	c := composer{ps: ps, open: map[*yaml.Node]bool{}}
	root := c.compose(top.Content[0], "", 0)
	if c.spent {
		return nil
	}
	return root
}

// readable says whether the bytes are text within the limits.
func readable(data []byte, ps *problems) bool {
	if len(data) > mostBytes {
		ps.addAt(Place{ps.doc.File, 1, 1}, "", fmt.Sprintf("a file of %.1f MB", math.Ceil(float64(len(data))/1e5)/10),
			fmt.Sprintf("a system file has at most %d MB", mostBytes/1_000_000))
		return false
	}
	line, column, percent := 1, 1, 0
	for i := 0; i < len(data); {
		r, size := utf8.DecodeRune(data[i:])
		at := Place{ps.doc.File, line, column}
		if r == utf8.RuneError && size == 1 {
			ps.addAt(at, "", fmt.Sprintf("the byte %#02x", data[i]), "save the file as UTF-8 text")
			return false
		}
		if control(r) {
			ps.addAt(at, "", fmt.Sprintf("the control character U+%04X", r), "take it out: a system file is plain text")
			return false
		}
		if r == '%' && column == 1 {
			percent++
		}
		if percent > mostPercent {
			ps.addAt(at, "", "one directive too many", "take out the lines that start with `%`: a system file needs none")
			return false
		}
		if i += size; r == '\n' {
			line, column = line+1, 1
		} else {
			column++
		}
	}
	return true
}

func control(r rune) bool {
	return r < ' ' && r != '\t' && r != '\n' && r != '\r' || r >= 0x7f && r <= 0x9f || r == 0xfffe || r == 0xffff
}

// secondDocument is the error for a stream of several documents, with the line at which the second starts.
type secondDocument struct{ line int }

func (secondDocument) Error() string { return "a second document" }

// load runs the YAML library. Version 4 is used because it tells the place of a
// mistake as numbers and bounds the depth while it reads; version 3 does neither.
func load(data []byte) (top *yaml.Node, err error) {
	loader, err := yaml.NewLoader(bytes.NewReader(data), yaml.WithPlugin(loaderlimits.New(loaderlimits.DepthValue(2*mostDepth))))
	if err != nil {
		return nil, err
	}
	var first, second yaml.Node
	if err := loader.Load(&first); err != nil {
		if errors.Is(err, io.EOF) {
			return nil, nil
		}
		return nil, err
	}
	if err := loader.Load(&second); err == nil {
		return nil, secondDocument{second.Line}
	} else if !errors.Is(err, io.EOF) {
		return nil, err
	}
	return &first, nil
}

// syntax turns the library's error into a problem in plain words.
func syntax(err error, data []byte, ps *problems) {
	if looksJSON(ps.doc.File, data) && jsonSyntax(data, ps) {
		return
	}
	var second secondDocument
	if errors.As(err, &second) {
		ps.addAt(Place{ps.doc.File, max(second.line, 1), 1}, "", "a second document", "keep one loop in one file: take out the line `---` and what follows")
		return
	}
	var e *yaml.LoadError
	if !errors.As(err, &e) {
		e = &yaml.LoadError{Message: err.Error()}
	}
	at := Place{ps.doc.File, e.Mark.Line, e.Mark.Column}
	if from := e.ContextMark; from.Line > 0 && from.Line < at.Line && strings.Contains(e.Message, "did not find expected ','") || e.Message == "found unexpected end of stream" {
		at.Line, at.Column = from.Line, from.Column // where the bracket or quote was opened
	}
	at.Line, at.Column = max(at.Line, 1), max(at.Column, 1)
	notation := "YAML"
	if looksJSON(ps.doc.File, data) {
		notation = "JSON"
	}
	found, write := "a line that is not "+notation+": "+e.Message, "look at this line and the one above for a missing colon, quote, bracket or blank"
	if rest := fromPlace(data, at); len(rest) > 0 && rest[0] == '\t' {
		ps.addAt(at, "", "a tab", "indent with blanks")
		return
	}
	for _, known := range [][3]string{
		{"exceeded max depth", "values nested too deep", fmt.Sprintf("nest at most %d deep", mostDepth)},
		{"cannot start any token", "a character that cannot stand here", "put text that starts with a sign in quotes"},
		{"mapping values are not allowed", "a colon inside a value", "put the value in quotes, or start a new line"},
		{"did not find expected ',' or", "a bracket that is not closed", "close it, and put commas between the values"},
		{"unexpected end of stream", "a quote that is not closed", "close the quote"},
		{"unknown anchor", "an alias without its anchor", "write the values out here"},
		{"could not find expected ':'", "a key without its colon", "write `key: value`, and indent what belongs together alike"},
		{"did not find expected key", "a line that is indented differently", "indent the keys of one mapping alike"},
		{"did not find expected '-' indicator", "a line that is indented differently", "indent the elements of one list alike"},
	} {
		if strings.Contains(e.Message, known[0]) {
			found, write = known[1], known[2]
			break
		}
	}
	ps.addAt(at, "", found, write)
}

// fromPlace is the text from a place to the end of its line.
func fromPlace(data []byte, at Place) []byte {
	lines := bytes.SplitN(data, []byte("\n"), at.Line+1)
	if at.Line > len(lines) {
		return nil
	}
	runes := []rune(string(lines[at.Line-1]))
	return []byte(string(runes[min(at.Column-1, len(runes)):]))
}

// A composer turns the library's nodes into ours, aliases written out.
type composer struct {
	ps      *problems
	open    map[*yaml.Node]bool // anchored nodes that are being written out
	aliases int
	nodes   int
	spent   bool // a limit was reached
}

func (c *composer) stop(y *yaml.Node, pointer, found, write string) *node {
	if !c.spent {
		c.spent = true
		c.ps.addAt(Place{c.ps.doc.File, max(y.Line, 1), max(y.Column, 1)}, pointer, found, write)
	}
	return &node{line: y.Line, column: y.Column}
}

func (c *composer) compose(y *yaml.Node, pointer string, depth int) *node {
	if c.spent {
		return &node{}
	}
	if c.nodes++; c.nodes > mostNodes {
		return c.stop(y, pointer, "more values than a loop can need", fmt.Sprintf("a file holds at most %d values, aliases written out", mostNodes))
	}
	if depth > mostDepth {
		return c.stop(y, pointer, "values nested too deep", fmt.Sprintf("nest at most %d deep", mostDepth))
	}
	if y.Kind == yaml.AliasNode {
		if c.aliases++; c.aliases > mostAliases {
			return c.stop(y, pointer, "one alias too many", fmt.Sprintf("use at most %d", mostAliases))
		}
		if y.Alias == nil || c.open[y.Alias] {
			return c.stop(y, pointer, "an alias inside its own anchor", "write the values out here")
		}
		return c.compose(y.Alias, pointer, depth)
	}
	if y.Anchor != "" {
		c.open[y] = true
		defer delete(c.open, y)
	}
	n := &node{line: y.Line, column: y.Column}
	at := Place{c.ps.doc.File, max(y.Line, 1), max(y.Column, 1)}
	if y.Style&yaml.TaggedStyle != 0 || y.Tag == "!" {
		c.ps.addAt(at, pointer, "the tag "+quoted(y.Tag), "take it out; put text in quotes instead")
	}
	switch y.Kind {
	case yaml.MappingNode:
		n.form = mapping
		c.mapping(n, y, pointer, depth)
	case yaml.SequenceNode:
		n.form = list
		if len(y.Content) > mostItems {
			return c.stop(y, pointer, fmt.Sprintf("a list of %d", len(y.Content)), fmt.Sprintf("a list holds at most %d values", mostItems))
		}
		for i, item := range y.Content {
			n.items = append(n.items, c.compose(item, element(pointer, i), depth+1))
		}
	default:
		c.scalar(n, y, pointer, at)
	}
	return n
}

func (c *composer) mapping(n *node, y *yaml.Node, pointer string, depth int) {
	if len(y.Content)/2 > mostKeys {
		c.stop(y, pointer, fmt.Sprintf("a mapping with %d keys", len(y.Content)/2), fmt.Sprintf("a mapping holds at most %d keys", mostKeys))
		return
	}
	for i := 0; i+1 < len(y.Content); i += 2 {
		k, v := y.Content[i], y.Content[i+1]
		at := Place{c.ps.doc.File, max(k.Line, 1), max(k.Column, 1)}
		switch old, twice := n.find(k.Value); {
		case k.Kind != yaml.ScalarNode:
			c.ps.addAt(at, pointer, "a key that is no plain text", "write `key: value`")
		case k.Tag == "!!merge":
			c.ps.addAt(at, pointer, "the merge key `<<`", "write the keys out here")
		case k.Value == "" || len(k.Value) > 200 || strings.ContainsFunc(k.Value, control) || strings.ContainsAny(k.Value, "\n\t"):
			c.ps.addAt(at, pointer, "a key that is no short plain text", "use a short word in its place")
		case twice:
			c.ps.addAt(at, child(pointer, k.Value), "the key "+quoted(k.Value)+" a second time",
				fmt.Sprintf("keep one: the first stands in line %d", n.keys[old].line))
		default:
			n.put(key{k.Value, k.Line, k.Column}, c.compose(v, child(pointer, k.Value), depth+1))
		}
	}
}

// decimal is a number of the YAML 1.2 JSON schema (section 10.2.1.4). Anything
// else that looks like a number, as 007, 0x1F or .inf, is text.
var decimal = regexp.MustCompile(`^-?(0|[1-9][0-9]*)(\.[0-9]*)?([eE][-+]?[0-9]+)?$`)

func (c *composer) scalar(n *node, y *yaml.Node, pointer string, at Place) {
	n.form, n.text = text, y.Value
	if utf8.RuneCountInString(y.Value) > mostLetters {
		c.stop(y, pointer, "a text that is too long", fmt.Sprintf("use at most %d letters", mostLetters))
		return
	}
	if strings.ContainsFunc(y.Value, control) {
		c.ps.addAt(at, pointer, "a control character in text", "take it out: values are plain text")
	}
	if y.Style&^yaml.TaggedStyle != 0 {
		return
	}
	switch y.Value {
	case "", "~", "null", "Null", "NULL":
		n.form = null
	case "true", "false":
		n.form, n.on = boolean, y.Value == "true"
	default:
		if !decimal.MatchString(y.Value) {
			return
		}
		v, err := strconv.ParseFloat(y.Value, 64)
		if err != nil || math.IsInf(v, 0) {
			c.ps.addAt(at, pointer, quoted(y.Value), "this number is too large for anything here")
			return
		}
		n.form, n.value = number, v
	}
}
