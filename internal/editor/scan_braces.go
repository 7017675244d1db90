package editor

import "strings"

// braces reads a mapping in braces or a list in brackets into a node. Where it is not closed, it
// ends before the first line that cannot belong to it any more, so that a brace that is being typed
// does not take the rest of the file. It says whether it was closed.
func (s *scanner) braces(n *node, base, depth int) bool {
	from, closing := s.at, byte('}')
	n.form, n.braced = mapping, true
	if s.peek() == '[' {
		closing, n.form = ']', list
	}
	s.at++
	form := n.form
	defer func() {
		n.form = form
		n.value = span{from, s.at}
	}()
	if depth > deepest {
		s.rest()
		return false
	}
	for s.count < mostScanned {
		if !s.gap(base) {
			return false
		}
		switch s.peek() {
		case closing:
			s.at++
			return true
		case '}', ']':
			return false
		case ',':
			s.at++
			continue
		}
		entered := s.at
		if closing == ']' {
			s.inBraces(s.add(n, &node{inList: true}), base, depth)
		} else {
			s.entry(n, base, depth)
		}
		if s.at == entered {
			s.at++ // a sign that means nothing here
		}
	}
	return false
}

// gap passes over blanks, line breaks and comments, and says whether what follows can still belong to the braces.
func (s *scanner) gap(base int) bool {
	for s.at < len(s.text) {
		switch {
		case s.peek() == '#' && isBlank(s.text[s.at-1]):
			for s.at < len(s.text) && s.peek() != '\n' {
				s.at++
			}
		case s.peek() == '\n':
			next, column := s.next()
			if column <= base {
				return false
			}
			s.at = next
		case isBlank(s.peek()):
			s.at++
		default:
			return true
		}
	}
	return false
}

// next is where the next line begins that has something on it, and at which column that is; in a
// line that stands at or left of where braces were opened in a block, these have ended. At the end of the text the column is -1.
func (s *scanner) next() (at, column int) {
	for i := s.at + 1; i < len(s.text); i++ {
		from := i
		for i < len(s.text) && (s.text[i] == ' ' || s.text[i] == '\t') {
			i++
		}
		if i < len(s.text) && s.text[i] != '\n' && s.text[i] != '\r' && s.text[i] != '#' {
			return from, i - from
		}
		for i < len(s.text) && s.text[i] != '\n' {
			i++
		}
	}
	return len(s.text), -1
}

// entry reads `key: value` in braces, or a word without its colon.
func (s *scanner) entry(up *node, base, depth int) {
	from := s.at
	key := &node{}
	if c := s.peek(); c == '"' || c == '\'' {
		s.quoted(key)
	} else {
		s.plain(key, s.stop(true))
	}
	after := s.at
	s.blanks()
	if s.peek() != ':' {
		s.at = after
		if key.value.empty() {
			s.at = from
			return
		}
		s.add(up, &node{bare: true, form: scalar, value: key.value, word: key.word, quote: key.quote})
		return
	}
	s.at++
	n := s.add(up, &node{key: key.word, name: key.value})
	s.blanks()
	if s.peek() == '\r' || s.peek() == '\n' || s.ends() {
		if !s.gap(base) {
			return
		}
	}
	s.inBraces(n, base, depth)
}

// inBraces reads a value in braces or brackets.
func (s *scanner) inBraces(n *node, base, depth int) {
	switch c := s.peek(); c {
	case ',', '}', ']':
	case '{', '[':
		s.braces(n, base, depth+1)
	case '"', '\'':
		s.quoted(n)
	default:
		s.plain(n, s.stop(false))
	}
}

// stop is where a plain word in braces ends; one that may be a key ends at its colon, too.
func (s *scanner) stop(key bool) int {
	for i := s.at; i < len(s.text); i++ {
		c := s.text[i]
		next := i+1 >= len(s.text) || isBlank(s.text[i+1]) || strings.IndexByte(",{}[]", s.text[i+1]) >= 0
		if strings.IndexByte(",{}[]\r\n", c) >= 0 || c == '#' && i > s.at && isBlank(s.text[i-1]) || key && c == ':' && next {
			return i
		}
	}
	return len(s.text)
}
