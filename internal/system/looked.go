package system

// Looked is the values of the file that were read, in file order.
func (s *System) Looked() []Leaf { return s.leaves(true) }

// NotLooked is the values that the file states and nothing read yet, in file order.
func (s *System) NotLooked() []Leaf { return s.leaves(false) }

func (s *System) leaves(wanted bool) []Leaf {
	var out []Leaf
	var visit func(c cursor)
	visit = func(c cursor) {
		if c.n.scalar() {
			if l := c.leaf(); l.given && l.pointer != "/dryfit" && s.looked.has(l.pointer) == wanted {
				out = append(out, l)
			}
			return
		}
		c.each(func(_ string, v cursor) { visit(v) })
		c.items(func(_ int, v cursor) { visit(v) })
	}
	visit(s.cursor(""))
	return out
}
