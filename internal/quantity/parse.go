package quantity

import (
	"math"
	"math/big"
	"strings"
	"unicode/utf8"
)

// Bounds of what is read. They are far outside anything in a loop.
const (
	longest  = 100   // bytes of text
	greatest = 1e12  // SI
	least    = 1e-15 // SI, but for zero
)

// Parse reads a quantity of the kind from text such as "1350 mm", "1 1/2 in",
// "40 mg/L CaCO3" or "36 %". The number has a decimal point and no exponent; in
// a customary unit it may be a fraction. What could be read in two ways is
// refused. The error is an [*Error].
func Parse(kind Kind, text string) (Quantity, error) {
	k, ok := facts[kind]
	if !ok {
		return Quantity{}, &Error{kind, clip(text), show(string(kind)) + " is no kind of quantity", string(Length)}
	}
	if len(text) > longest {
		return Quantity{}, &Error{kind, clip(text), "the text is too long", k.example}
	}
	if !utf8.ValidString(text) {
		return Quantity{}, &Error{kind, clip(text), "the text is not UTF-8", k.example}
	}
	clean := tidy(text)
	q, problem := k.accept(clean)
	if problem == "" {
		return q, nil
	}
	problem, write := k.refuse(clean, 4)
	if len(write) == 0 {
		write = []string{k.example}
	}
	return Quantity{}, &Error{kind, clip(text), problem, strings.Join(write, " or ")}
}

// tidy turns look-alikes with one meaning into what is meant, and trims.
func tidy(text string) string {
	for i := range len(text) {
		if text[i] >= utf8.RuneSelf || text[i] == '\t' {
			text = lookalikes.Replace(text)
			break
		}
	}
	return strings.TrimSpace(text)
}

var lookalikes = strings.NewReplacer(
	"\t", " ", "\u00a0", " ", "\u2007", " ", "\u2009", " ", "\u202f", " ", // tab and spaces that do not break
	"\u00b5", "u", "\u03bc", "u", // micro sign, Greek mu
	"²", "2", "³", "3",
	"°C", "degC", "° C", "degC", "℃", "degC", "ºC", "degC",
	"°F", "degF", "° F", "degF", "℉", "degF", "ºF", "degF",
)

// written is a number and what stands after it.
type written struct {
	number   string
	value    *big.Rat
	fraction bool
	rest     string
}

// split reads the number at the start of the text: -5, 2.34, 1/2, 1 1/2, 1-1/2.
func split(s string) (written, bool) {
	start := 0
	if s != "" && (s[0] == '-' || s[0] == '+') {
		start = 1
	}
	end := start + digits(s[start:])
	if end == start {
		return written{}, false
	}
	whole := s[start:end]
	value := new(big.Rat)
	w := written{value: value}
	if top, bottom, size := ratio(s[start:]); size > 0 {
		w.fraction = true
		end = start + size
		w.number = top + "/" + bottom
		value.SetFrac(integer(top), integer(bottom))
	} else if top, bottom, size := mixed(s[end:]); size > 0 {
		w.fraction = true
		end += size
		w.number = whole + " " + top + "/" + bottom
		value.SetFrac(integer(top), integer(bottom))
		value.Add(value, new(big.Rat).SetInt(integer(whole)))
	} else {
		if end < len(s) && s[end] == '.' {
			if n := digits(s[end+1:]); n > 0 {
				end += 1 + n
			}
		}
		w.number = s[start:end]
		value.SetString(w.number)
	}
	if s[0] == '-' {
		w.number = "-" + w.number
		value.Neg(value)
	}
	w.rest = strings.TrimLeft(s[end:], " ")
	return w, true
}

// mixed reads the fraction after a whole number: " 1/2" or "-1/2". It is less
// than one.
func mixed(s string) (top, bottom string, size int) {
	body := strings.TrimLeft(s, " ")
	if body == s {
		body = strings.TrimPrefix(s, "-")
	}
	if body == s {
		return "", "", 0
	}
	top, bottom, n := ratio(body)
	if n == 0 || integer(top).Cmp(integer(bottom)) >= 0 {
		return "", "", 0
	}
	return top, bottom, len(s) - len(body) + n
}

// ratio reads "1/2"; size is 0 if there is none.
func ratio(s string) (top, bottom string, size int) {
	n := digits(s)
	if n == 0 || n == len(s) || s[n] != '/' {
		return "", "", 0
	}
	m := digits(s[n+1:])
	top, bottom = s[:n], s[n+1:n+1+m]
	if strings.Trim(bottom, "0") == "" {
		return "", "", 0
	}
	return top, bottom, n + 1 + m
}

func digits(s string) int {
	n := 0
	for n < len(s) && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	return n
}

func integer(s string) *big.Int {
	n, _ := new(big.Int).SetString(s, 10)
	return n
}

// accept reads text that follows the rules. The problem is empty if it does.
func (k *info) accept(s string) (q Quantity, problem string) {
	w, ok := split(s)
	if !ok {
		return Quantity{}, "a number must stand first"
	}
	n, basis, ok := k.after(w.rest)
	if !ok {
		return Quantity{}, "the unit is not known"
	}
	q = Quantity{Kind: k.kind, SI: n.toSI(w.value), Unit: n.name, Basis: basis}
	return q, k.doubt(w, n, q.SI)
}

// after reads the unit, and the basis if the kind has one.
func (k *info) after(rest string) (n unit, basis string, ok bool) {
	if k.basis {
		if name, word, cut := strings.Cut(rest, " "); cut {
			rest, basis = name, strings.TrimLeft(word, " ")
			if !isBasis(basis) {
				return unit{}, "", false
			}
		}
	}
	n, ok = k.unit(rest)
	if k.kind == Money {
		basis = n.name
	}
	return n, basis, ok
}

// doubt says what is wrong with a number that has a good unit, if anything.
func (k *info) doubt(w written, n unit, si float64) string {
	size := math.Abs(si)
	switch {
	case w.fraction && !n.fractions:
		return "a fraction like 1/2 goes with inches, feet, pounds and gallons only"
	case k.kind == Fraction && n.name == "" && size > 1:
		return "a fraction without % lies between 0 and 1"
	case k.kind == Temperature && si < 0:
		return "this is colder than absolute zero"
	case !(size <= greatest):
		return "the value is too large to be meant"
	case size < least && w.value.Sign() != 0 && (size != 0 || n.offset == nil):
		return "the value is too small to be meant, and it is not zero"
	}
	return ""
}
