package system

// Of is the sum that is one value of the file.
func Of(n Number) Linear { return Linear{[]Term{{n, 1}}} }

// Plus is l + m, the terms of one value brought together. A value that drops
// out of the sum is no longer a term of it: the sum does not want it.
func (l Linear) Plus(m Linear) Linear {
	out := Linear{append([]Term(nil), l.Terms...)}
next:
	for _, t := range m.Terms {
		for i := range out.Terms {
			if out.Terms[i].Number.pointer == t.Number.pointer {
				out.Terms[i].Factor += t.Factor
				continue next
			}
		}
		out.Terms = append(out.Terms, t)
	}
	kept := out.Terms[:0]
	for _, t := range out.Terms {
		if t.Factor != 0 {
			kept = append(kept, t)
		}
	}
	out.Terms = kept
	return out
}

// Minus is l - m.
func (l Linear) Minus(m Linear) Linear { return l.Plus(m.Times(-1)) }

// Times is k l.
func (l Linear) Times(k float64) Linear {
	out := Linear{make([]Term, len(l.Terms))}
	for i, t := range l.Terms {
		out.Terms[i] = Term{t.Number, t.Factor * k}
	}
	return out
}

// Value is the sum in metres, and whether all of its values are given. Asking
// does not count as reading them.
func (l Linear) Value() (float64, bool) {
	sum := 0.0
	for _, t := range l.Terms {
		if !t.Number.given {
			return 0, false
		}
		sum += t.Factor * t.Number.si
	}
	return sum, true
}

// Missing is the pointers of the values that are not given.
func (l Linear) Missing() []string {
	var out []string
	for _, t := range l.Terms {
		if !t.Number.given {
			out = append(out, t.Number.pointer)
		}
	}
	return out
}
