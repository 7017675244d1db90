package editor

import (
	"sort"
	"strings"
	"unicode/utf8"
)

// A text is what stands in an editor. It is never changed: a change makes another one.
type text struct {
	all    string
	starts []int // of each line, in bytes
	utf8   bool  // positions count bytes of a line; else code units of UTF-16
}

func newText(all string, inUTF8 bool) *text {
	t := &text{all: all, starts: []int{0}, utf8: inUTF8}
	for i := 0; i < len(all); i++ {
		if all[i] == '\n' || all[i] == '\r' && !strings.HasPrefix(all[i+1:], "\n") {
			t.starts = append(t.starts, i+1)
		}
	}
	return t
}

// line is where a line begins, and where it ends before its line break.
func (t *text) line(i int) (from, to int) {
	from, to = t.starts[i], len(t.all)
	if i+1 < len(t.starts) {
		to = t.starts[i+1]
	}
	return from, from + len(strings.TrimRight(t.all[from:to], "\r\n"))
}

// offset is a position in bytes. One behind the end of its line means that end, one behind the
// last line the end of the text; within a character it means its beginning.
func (t *text) offset(p position) int {
	switch {
	case p.Line < 0:
		return 0
	case p.Line >= len(t.starts):
		return len(t.all)
	}
	at, to := t.line(p.Line)
	for units := 0; at < to; {
		r, size := utf8.DecodeRuneInString(t.all[at:to])
		units += t.units(r, size)
		if units > p.Character {
			break
		}
		at += size
	}
	return at
}

// position is the place of a byte.
func (t *text) position(offset int) position {
	offset = min(max(offset, 0), len(t.all))
	line := sort.SearchInts(t.starts, offset+1) - 1
	p := position{Line: line}
	for at := t.starts[line]; at < offset; {
		r, size := utf8.DecodeRuneInString(t.all[at:])
		if at+size > offset {
			break
		}
		p.Character += t.units(r, size)
		at += size
	}
	return p
}

func (t *text) units(r rune, size int) int {
	switch {
	case t.utf8:
		return size
	case r > 0xffff:
		return 2
	}
	return 1
}

func (t *text) span(s span) textRange { return textRange{t.position(s.from), t.position(s.to)} }

// place is the byte at a line and a column in characters, both from 1, as the reader of system files counts them.
func (t *text) place(line, column int) int {
	if line < 1 || line > len(t.starts) {
		return len(t.all)
	}
	at, to := t.line(line - 1)
	for i := 1; i < column && at < to; i++ {
		_, size := utf8.DecodeRuneInString(t.all[at:to])
		at += size
	}
	return at
}

// with is the text with a stretch of it replaced.
func (t *text) with(r textRange, replacement string) *text {
	from, to := t.offset(r.Start), t.offset(r.End)
	if to < from {
		from, to = to, from
	}
	return newText(t.all[:from]+replacement+t.all[to:], t.utf8)
}

// A span is a stretch of a text, in bytes.
type span struct{ from, to int }

func (s span) empty() bool           { return s.to <= s.from }
func (s span) holds(offset int) bool { return s.from <= offset && offset <= s.to }
func (s span) meets(o span) bool     { return s.from <= o.to && o.from <= s.to }
