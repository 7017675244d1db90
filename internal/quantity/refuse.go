package quantity

import (
	"math/big"
	"slices"
	"strconv"
	"strings"
	"unicode"
)

// Error says why text was refused and what to write instead.
type Error struct {
	Kind    Kind
	Text    string // as it was written, cut short if long
	Problem string // what is wrong: "a unit is missing"
	Write   string // what to write: "1350 mm", or several joined by " or "; each is accepted
}

func (e *Error) Error() string {
	return strconv.Quote(e.Text) + ": " + e.Problem + "; write " + e.Write
}

// refuse finds what is wrong with text that was not accepted, and what may be
// written instead, if that can be seen. A fault that is found is mended and the
// result tried, up to depth faults in one text.
func (k *info) refuse(s string, depth int) (problem string, write []string) {
	if s == "" {
		return "nothing is written here", nil
	}
	for _, f := range faults {
		if mended := f.mend(k, s); len(mended) > 0 {
			return f.problem, k.alternatives(mended, depth)
		}
	}
	w, ok := split(s)
	if !ok {
		return "a number must stand first", nil
	}
	if n, _, ok := k.after(w.rest); ok {
		return k.doubt(w, n, n.toSI(w.value)), k.alternatives(k.settle(w, n), depth)
	}
	problem, rests := k.misspelt(w)
	var mended []string
	for _, rest := range rests {
		mended = append(mended, w.number+" "+rest)
	}
	return problem, k.alternatives(mended, depth)
}

// alternatives keeps of the mended texts what is accepted, in canonical spelling,
// and mends the others further.
func (k *info) alternatives(mended []string, depth int) []string {
	var write []string
	for _, m := range mended {
		found := []string{k.canonical(m)}
		if found[0] == "" && depth > 1 && m != "" {
			_, found = k.refuse(m, depth-1)
		}
		for _, text := range found {
			if text != "" && !slices.Contains(write, text) {
				write = append(write, text)
			}
		}
	}
	return write
}

// canonical is accepted text with its number as written, empty if Parse would not
// take it.
func (k *info) canonical(s string) string {
	q, problem := k.accept(s)
	if problem != "" {
		return ""
	}
	w, _ := split(s)
	if k.kind == Money {
		q.Basis = ""
	}
	text := strings.TrimSpace(strings.TrimSpace(w.number+" "+q.Unit) + " " + q.Basis)
	if len(text) > longest {
		return ""
	}
	return text
}

// settle offers other ways to write a number that [info.doubt] refused.
func (k *info) settle(w written, n unit) []string {
	switch {
	case w.fraction && !n.fractions:
		return []string{decimal(w.value, 4) + " " + n.name}
	case k.kind == Fraction && n.name == "":
		mended := []string{w.number + " %"}
		if w.value.Cmp(big.NewRat(2, 1)) <= 0 {
			percent := new(big.Rat).Mul(w.value, big.NewRat(100, 1))
			mended = append(mended, decimal(percent, 12)+" %")
		}
		return mended
	}
	return nil
}

// decimal writes a fraction with at most so many decimals.
func decimal(x *big.Rat, decimals int) string {
	text := x.FloatString(decimals)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return text
}

// clip cuts text that is shown back to its writer.
func clip(text string) string {
	const most = 60
	text = strings.ToValidUTF8(text, "\ufffd")
	if len(text) <= most {
		return text
	}
	return strings.ToValidUTF8(text[:most], "") + "..."
}

// show is a word from the text, fit to stand in a sentence.
func show(word string) string {
	for _, r := range word {
		if !unicode.IsPrint(r) {
			return strconv.QuoteToASCII(clip(word))
		}
	}
	return clip(word)
}
