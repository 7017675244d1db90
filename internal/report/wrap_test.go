package report

import (
	"strings"
	"testing"
	"unicode"
)

func TestSafe(t *testing.T) {
	for text, want := range map[string]string{
		"plain":           "plain",
		"a\x1b[31mb":      `a\u001b[31mb`,
		"two\nlines\tx":   "two lines x",
		"\u202eabc":       `\u202eabc`,
		"\xff":            `\xff`,
		"caf\u00e9":       "caf\u00e9",
		"a\u00a0b":        "a b",
		"\U000e0041":      `\U000e0041`,
		"replaced \ufffd": "replaced \ufffd",
	} {
		if got := safe(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// Source: Unicode Standard Annex 11, East Asian Width: wide and full-width
// characters take two columns; marks that do not space (UAX 44, Mn) none.
func TestWidth(t *testing.T) {
	for text, want := range map[string]int{"abc": 3, "\u6c34": 2, "\uff21": 2, "e\u0301": 1, "\u00e9": 1, "": 0} {
		if got := width(text); got != want {
			t.Errorf("%q takes %d columns, want %d", text, got, want)
		}
	}
}

func FuzzWrap(f *testing.F) {
	f.Add("A line that carries solids shall not turn.", 20)
	f.Add("\x1b[2J \u6c34\u6c34\u6c34\u6c34\u6c34\u6c34\u6c34", 9)
	f.Add(strings.Repeat("x", 100), 30)
	f.Fuzz(func(t *testing.T, text string, most int) {
		if most < 8 || most > 200 {
			return // narrower or wider than any page
		}
		var all strings.Builder
		for _, l := range wrap(text, most) {
			if width(l) > most {
				t.Errorf("%q is wider than %d", l, most)
			}
			for _, r := range l {
				if !unicode.IsPrint(r) {
					t.Errorf("%U is left in %q", r, l)
				}
			}
			all.WriteString(l)
		}
		if want := strings.Join(strings.Fields(safe(text)), ""); strings.ReplaceAll(all.String(), " ", "") != want {
			t.Errorf("letters are lost: %q became %q", want, all.String())
		}
		if again := safe(safe(text)); again != safe(text) {
			t.Errorf("made safe twice: %q, once: %q", again, safe(text))
		}
	})
}

func TestGlossary(t *testing.T) {
	var g glossary
	first := g.explain([]line{plain("The datum and the freeboard; a slip of a lipstick.")})
	if want := "datum: zero height; freeboard: room left below the rim."; first != want {
		t.Errorf("got %q, want %q", first, want)
	}
	if again := g.explain([]line{plain("freeboard of the lip-seal"), plain("DATUM")}); again != "" {
		t.Errorf("explained again: %q", again)
	}
	if said := g.explain([]line{plain("upward speed of the water (overflow rate)")}); said != "" {
		t.Errorf("explained though the page says it: %q", said)
	}
	for _, term := range terms {
		for _, w := range term.words {
			if !holdsWord("the "+w+", here", w) {
				t.Errorf("%q is never found", w)
			}
		}
	}
}
