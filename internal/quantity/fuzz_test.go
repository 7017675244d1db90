package quantity

import (
	"errors"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"
)

// FuzzParse: what is read prints to text that reads the same; what is refused
// comes with a problem, and with text to write instead that is read.
func FuzzParse(f *testing.F) {
	kinds := Kinds()
	for _, c := range accepted {
		f.Add(uint8(slices.Index(kinds, c.kind)), c.text)
	}
	for _, c := range refused {
		f.Add(uint8(max(slices.Index(kinds, c.kind), 0)), c.text)
	}
	for i, k := range kinds {
		for _, unit := range spellings(k) {
			f.Add(uint8(i), "12.5 "+unit)
		}
	}
	for ours := range words {
		f.Add(uint8(0), "3 "+ours)
	}
	f.Fuzz(func(t *testing.T, kind uint8, text string) {
		k := kinds[int(kind)%len(kinds)]
		q, err := Parse(k, text)
		if err == nil {
			back, err := Parse(k, q.String())
			if err != nil || !same(q, back) {
				t.Fatalf("%q prints %q, which reads as %#v (%v)", text, q, back, err)
			}
			return
		}
		var e *Error
		if !errors.As(err, &e) || e.Problem == "" || e.Kind != k {
			t.Fatalf("%q: %#v", text, err)
		}
		if message := e.Error(); !utf8.ValidString(e.Text+e.Problem) || strings.ContainsAny(e.Problem+e.Write, "\n\r\x00") || len(message) > 1000 {
			t.Fatalf("%q: %q", text, message)
		}
		for _, write := range strings.Split(e.Write, " or ") {
			if _, err := Parse(k, write); err != nil {
				t.Fatalf("%q: told to write %q of %q, which is refused: %v", text, write, e.Write, err)
			}
		}
	})
}
