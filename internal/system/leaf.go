package system

import (
	"sync"

	"dryfit/internal/quantity"
)

// A Leaf is one value of the system file: where it stands, or would stand, and
// whether the author gave it. Reading its value marks it as looked at; what the
// author stated and nothing read is listed as "stated, not yet looked at".
type Leaf struct {
	pointer string
	given   bool
	text    string
	looked  *looked
}

// looked collects the pointers that were read. It is shared by all leaves of a
// system, which several goroutines may read.
type looked struct {
	mutex sync.Mutex
	at    map[string]bool
}

func (l *looked) mark(pointer string) {
	l.mutex.Lock()
	l.at[pointer] = true
	l.mutex.Unlock()
}

func (l *looked) has(pointer string) bool {
	l.mutex.Lock()
	defer l.mutex.Unlock()
	return l.at[pointer]
}

// Pointer is the JSON pointer of the value, also when it is not given.
func (l Leaf) Pointer() string { return l.pointer }

// Given says whether the author stated the value. Asking does not count as reading.
func (l Leaf) Given() bool { return l.given }

// Text is the value as the author wrote it.
func (l Leaf) Text() string { return l.text }

func (l Leaf) look() {
	if l.given && l.looked != nil {
		l.looked.mark(l.pointer)
	}
}

// Number is a leaf with a unit, or a plain number of kind quantity.Number.
type Number struct {
	Leaf
	kind  quantity.Kind
	si    float64
	unit  string
	basis string
}

// Kind is the kind of quantity that the file wants here.
func (n Number) Kind() quantity.Kind { return n.kind }

// SI is the value in SI units and whether it is given. Reading it marks the leaf as looked at.
func (n Number) SI() (float64, bool) {
	n.look()
	return n.si, n.given
}

// Unit is the unit in which the value is written; empty for a plain number.
func (n Number) Unit() string { return n.unit }

// Basis is the substance that a concentration is stated as, such as CaCO3; else empty.
func (n Number) Basis() string { return n.basis }

// Word is a leaf of text: a name, or one of several fixed words.
type Word struct{ Leaf }

// Value is the word and whether it is given. Reading it marks the leaf as looked at.
func (w Word) Value() (string, bool) {
	w.look()
	return w.text, w.given
}

// Is says whether the word is given and is one of the words named. It marks the leaf as looked at.
func (w Word) Is(words ...string) bool {
	w.look()
	for _, one := range words {
		if w.given && w.text == one {
			return true
		}
	}
	return false
}

// Switch is a leaf that is true or false.
type Switch struct {
	Leaf
	on bool
}

// On is the value and whether it is given. Reading it marks the leaf as looked at.
func (s Switch) On() (on, given bool) {
	s.look()
	return s.on, s.given
}
