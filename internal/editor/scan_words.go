package editor

import "strings"

// plain makes a scalar of the text up to a byte.
func (s *scanner) plain(n *node, to int) {
	n.form = scalar
	n.word = strings.TrimRight(s.text[s.at:to], " \t")
	n.value = span{s.at, s.at + len(n.word)}
	s.at = to
}

// quoted makes a scalar of what stands in quotes on this line.
func (s *scanner) quoted(n *node) {
	from := s.at
	n.form, n.quote = scalar, s.peek()
	s.at, n.word, _ = quotedWord(s.text, from, true)
	n.value = span{from, s.at}
}

// literal passes over a text in lines of its own.
func (s *scanner) literal(n *node) {
	n.form = scalar
	n.value = span{s.at, s.at}
	for s.rest(); s.at < len(s.text); s.rest() {
		from := s.at
		s.blanks()
		column, empty := s.at-from, s.at >= len(s.text) || s.peek() == '\n' || s.peek() == '\r'
		s.at = from
		if !empty && column <= n.column {
			break
		}
	}
	n.value.to = s.at
	if s.at > 0 {
		s.at-- // whoever called goes on with the next line
	}
}

// quotedWord is the end and the content of a word in quotes. One that is not closed ends with its line.
func quotedWord(text string, from int, inLine bool) (to int, word string, closed bool) {
	quote := text[from]
	var b strings.Builder
	for i := from + 1; i < len(text); i++ {
		switch c := text[i]; {
		case inLine && (c == '\n' || c == '\r'):
			return i, b.String(), false
		case c == quote && quote == '\'' && strings.HasPrefix(text[i+1:], "'"):
			b.WriteByte(c)
			i++
		case c == quote:
			return i + 1, b.String(), true
		case c == '\\' && quote == '"' && i+1 < len(text) && (text[i+1] == '"' || text[i+1] == '\\'):
			b.WriteByte(text[i+1])
			i++
		default:
			b.WriteByte(c)
		}
	}
	return len(text), b.String(), false
}
