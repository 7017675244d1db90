package editor

import (
	"strconv"
	"strings"
)

// A form says what a node is.
type form int

const (
	nothing form = iota
	scalar
	mapping
	list
)

// A node is one value of a text with the stretches where it and its key stand. The reader
// of system files decides what a file says; nodes say where, also in a text that is only half typed.
type node struct {
	up     *node
	key    string // under which it stands in a mapping
	index  int    // in a list
	inList bool
	bare   bool // a word on its own where a key or a value could be meant
	form   form
	name   span   // of the key
	value  span   // of a scalar, or of a mapping or list in braces
	word   string // a scalar without its quotes
	quote  byte   // of a scalar
	braced bool
	column int // of its key or dash, in bytes of the line
	below  []*node
}

// mostScanned bounds the work on a text that is no system file.
const (
	mostText    = 1 << 20 // bytes; the reader takes no more either
	mostScanned = 60_000  // nodes
	deepest     = 60      // braces in braces, dashes in a line
)

// path is the keys and numbers of elements from the top.
func (n *node) path() []string {
	var out []string
	for ; n.up != nil; n = n.up {
		switch {
		case n.bare: // it may become a part of what it stands in
		case n.inList:
			out = append(out, strconv.Itoa(n.index))
		default:
			out = append(out, n.key)
		}
	}
	for i, k := 0, len(out)-1; i < k; i, k = i+1, k-1 {
		out[i], out[k] = out[k], out[i]
	}
	return out
}

// step is what stands under a key or number, or nil.
func (n *node) step(token string) *node {
	for _, b := range n.below {
		if !b.bare && (b.inList && strconv.Itoa(b.index) == token || !b.inList && b.key == token) {
			return b
		}
	}
	return nil
}

// at is the node at a path, or nil.
func (n *node) at(path ...string) *node {
	for _, token := range path {
		if n = n.step(token); n == nil {
			return nil
		}
	}
	return n
}

// each visits the node and all below it.
func (n *node) each(visit func(*node)) {
	visit(n)
	for _, b := range n.below {
		b.each(visit)
	}
}

// touched is the node whose key or scalar stands at an offset, and whether it is the key; nil where there is none.
func (n *node) touched(offset int) (found *node, key bool) {
	n.each(func(b *node) {
		switch {
		case !b.name.empty() && b.name.holds(offset):
			found, key = b, true
		case b.form == scalar && !b.value.empty() && b.value.holds(offset):
			found, key = b, false
		}
	})
	return found, key
}

// A scanner makes nodes of a text: blocks by their columns, what stands in braces by its signs.
type scanner struct {
	text  string
	at    int
	open  []*node // what later lines may add to, innermost last
	count int
}

// scan makes nodes of a text. It takes every text, and finds as much in it as it can.
func scan(text string) *node {
	root := &node{column: -1}
	if len(text) > mostText {
		return root
	}
	s := &scanner{text: text, open: []*node{root}}
	for s.at < len(text) && s.count < mostScanned {
		s.line()
	}
	root.each(func(n *node) {
		if n.form == nothing && len(n.below) > 0 && n.below[0].bare { // a value on the next line
			only := n.below[0]
			n.form, n.value, n.word = scalar, only.value, only.word
		}
	})
	return root
}

func (s *scanner) add(up *node, n *node) *node {
	s.count++
	n.up = up
	switch {
	case n.bare:
	case n.inList:
		up.form = list
		for i := len(up.below) - 1; i >= 0; i-- {
			if up.below[i].inList {
				n.index = up.below[i].index + 1
				break
			}
		}
	default:
		up.form = mapping
	}
	up.below = append(up.below, n)
	return n
}

func (s *scanner) peek() byte {
	if s.at < len(s.text) {
		return s.text[s.at]
	}
	return 0
}

func (s *scanner) blanks() {
	for s.peek() == ' ' || s.peek() == '\t' {
		s.at++
	}
}

// ends says that nothing but a comment stands in the rest of the line.
func (s *scanner) ends() bool {
	return s.at >= len(s.text) || s.peek() == '\n' || s.peek() == '\r' || s.peek() == '#' && (s.at == 0 || isBlank(s.text[s.at-1]))
}

func isBlank(c byte) bool { return c == ' ' || c == '\t' || c == '\n' || c == '\r' }

// rest goes to the beginning of the next line.
func (s *scanner) rest() {
	if i := strings.IndexByte(s.text[s.at:], '\n'); i >= 0 {
		s.at += i + 1
	} else {
		s.at = len(s.text)
	}
}

// line reads one line of a block, with the lines that belong to a value that it begins.
func (s *scanner) line() {
	start := s.at
	defer s.rest()
	if strings.HasPrefix(s.text[s.at:], "---") || strings.HasPrefix(s.text[s.at:], "\ufeff") {
		s.at += 3
		if s.at == 3 && s.text[0] != '-' {
			start = 3
		}
	}
	for range deepest {
		s.blanks()
		column := s.at - start
		switch {
		case s.ends():
			return
		case s.peek() == '-' && (s.at+1 >= len(s.text) || isBlank(s.text[s.at+1])):
			up := s.within(column, true)
			s.open = append(s.open, s.add(up, &node{inList: true, column: column}))
			s.at++
			continue
		}
		if name, word, ok := s.blockKey(); ok {
			up := s.within(column, false)
			n := s.add(up, &node{key: word, name: name, column: column})
			s.open = append(s.open, n)
			s.value(n)
			return
		}
		up := s.within(column, false)
		if up.inList && up.form == nothing || up.up == nil && (s.peek() == '{' || s.peek() == '[') {
			s.value(up)
			return
		}
		n := s.add(up, &node{bare: true, column: column})
		s.value(n)
		return
	}
}

// within closes what a line that begins at a column does not belong to, and gives what it belongs to.
func (s *scanner) within(column int, dash bool) *node {
	for len(s.open) > 1 {
		top := s.open[len(s.open)-1]
		if top.column < column || dash && top.column == column && !top.inList {
			break
		}
		s.open = s.open[:len(s.open)-1]
	}
	return s.open[len(s.open)-1]
}

// blockKey reads `key:` and what follows the colon must be a blank.
func (s *scanner) blockKey() (name span, word string, ok bool) {
	from := s.at
	if c := s.peek(); c == '"' || c == '\'' {
		at, word, closed := quotedWord(s.text, from, true)
		after := at
		for after < len(s.text) && s.text[after] == ' ' {
			after++
		}
		if !closed || after >= len(s.text) || s.text[after] != ':' {
			return span{}, "", false
		}
		s.at = after + 1
		return span{from, at}, word, true
	} else if strings.IndexByte("{}[],#|>&*!%@`", c) >= 0 {
		return span{}, "", false
	}
	for i := from; i < len(s.text) && s.text[i] != '\n' && s.text[i] != '\r'; i++ {
		switch {
		case s.text[i] == '#' && isBlank(s.text[i-1]):
			return span{}, "", false
		case s.text[i] == ':' && (i+1 >= len(s.text) || isBlank(s.text[i+1])):
			s.at = i + 1
			word := strings.TrimRight(s.text[from:i], " \t")
			return span{from, from + len(word)}, word, word != ""
		}
	}
	return span{}, "", false
}

// value reads what stands behind a colon or dash, or on a line of its own.
func (s *scanner) value(n *node) {
	s.blanks()
	for s.peek() == '&' || s.peek() == '!' { // an anchor or tag before the value
		for !s.ends() && s.peek() != ' ' {
			s.at++
		}
		s.blanks()
	}
	if s.ends() {
		return
	}
	switch c := s.peek(); c {
	case '{', '[':
		s.braces(n, n.column, 0)
	case '|', '>':
		s.literal(n)
	case '"', '\'':
		s.quoted(n)
	default:
		to := s.at
		for to < len(s.text) && s.text[to] != '\n' && s.text[to] != '\r' && !(s.text[to] == '#' && isBlank(s.text[to-1])) {
			to++
		}
		s.plain(n, to)
	}
}
