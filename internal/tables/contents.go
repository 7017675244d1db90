package tables

import (
	"io/fs"
	"strings"
	"unicode"
)

// What is known of the contents of a second-hand vessel.
const (
	Harmless = "harmless"
	Harmful  = "harmful"
	Unheard  = "unknown" // the author says that nobody knows
)

func (t *Tables) readContents(files fs.FS) error {
	t.contents = map[string]string{}
	return each(files, "contents.csv", "words kind note", func(r row) {
		words := r.text("words")
		if words != strings.Join(letters(words), " ") {
			r.wrong("words: write small letters, with single blanks between words")
		}
		t.contents[r.key(words)] = r.oneOf("kind", Harmless, Harmful, Unheard, "filler")
		r.maybe("note")
		r.origin()
	})
}

// Contents says what the words that an author gives for the contents of a vessel
// come to: the worst that any of them names. Words in no entry of the table are
// given back, and then the answer is empty unless another word is harmful or
// unknown: what is not understood is not taken as harmless.
func (t *Tables) Contents(text string) (kind string, strange []string) {
	words := letters(text)
	seen := map[string]bool{}
	for i := 0; i < len(words); {
		length := 1
		kind := ""
		for n := min(3, len(words)-i); n > 0 && kind == ""; n-- {
			kind, length = t.contents[strings.Join(words[i:i+n], " ")], n
		}
		if kind == "" {
			strange = append(strange, words[i])
		}
		seen[kind] = true
		i += length
	}
	for _, worst := range []string{Harmful, Unheard} {
		if seen[worst] {
			return worst, strange
		}
	}
	if len(strange) > 0 || !seen[Harmless] {
		return "", strange
	}
	return Harmless, nil
}

// letters splits a text into its words, in small letters.
func letters(text string) []string {
	return strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) })
}
