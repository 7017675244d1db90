package system

import "dryfit/internal/quantity"

// Number reads the quantity at a JSON pointer, for what the model has no field
// of. The leaf keeps its pointer when nothing is given there.
func (s *System) Number(pointer string, kind quantity.Kind) Number {
	return s.cursor(pointer).number(kind)
}

// Word reads the text at a JSON pointer.
func (s *System) Word(pointer string) Word { return s.cursor(pointer).word() }

// Switch reads the true or false at a JSON pointer.
func (s *System) Switch(pointer string) Switch { return s.cursor(pointer).toggle() }

// Keys is the keys of the mapping at a JSON pointer, in file order.
func (s *System) Keys(pointer string) []string {
	var out []string
	s.cursor(pointer).each(func(name string, _ cursor) { out = append(out, name) })
	return out
}

// Items is the pointers of the elements of the list at a JSON pointer.
func (s *System) Items(pointer string) []string {
	var out []string
	s.cursor(pointer).items(func(_ int, c cursor) { out = append(out, c.pointer) })
	return out
}

func (s *System) cursor(pointer string) cursor {
	return cursor{s.Document.at(pointer), pointer, s.reading}
}
