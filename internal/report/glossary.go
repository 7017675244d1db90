package report

import (
	"strings"
	"unicode"
)

// A term of the trade and what it means in plain words.
type term struct {
	words   []string // the forms in which it shows
	meaning string
}

var terms = []term{
	{[]string{"of limit"}, "share of the limit used"},
	{[]string{"undetermined"}, "cannot be said yet: a number is missing"},
	{[]string{"overflow rate"}, "upward speed of the water"},
	{[]string{"downflow"}, "downward speed in the well"},
	{[]string{"inlet well"}, "the inner pipe of a settler"},
	{[]string{"lip"}, "lower edge of the inlet well"},
	{[]string{"crest"}, "edge the water spills over"},
	{[]string{"notch", "notches"}, "V cut in the edge"},
	{[]string{"invert"}, "inside bottom of a pipe"},
	{[]string{"datum"}, "zero height"},
	{[]string{"freeboard"}, "room left below the rim"},
	{[]string{"head lost", "head loss"}, "height of water used up in pipes and fittings"},
	{[]string{"head"}, "height of water that pushes"},
	{[]string{"duty point"}, "where pump and pipes agree"},
	{[]string{"shut-off head"}, "greatest height the pump can hold"},
	{[]string{"throttle reserve"}, "spare flow, so that a valve can be part closed later"},
	{[]string{"fouled"}, "with slime inside"},
	{[]string{"drowned"}, "full and under water"},
	{[]string{"self-venting"}, "runs down with its air"},
	{[]string{"Froude number"}, "speed against pipe size; too high traps air"},
	{[]string{"residence"}, "time that water stays"},
	{[]string{"scour"}, "stirring settled waste up again"},
	{[]string{"capture"}, "share of the waste caught"},
	{[]string{"stand-off", "curtain area"}, "gap round the drain's open end"},
	{[]string{"cuff"}, "rubber coupling"},
	{[]string{"preload"}, "push of the squeezed rubber"},
	{[]string{"relaxation"}, "how the push of rubber fades"},
	{[]string{"sagitta"}, "gap behind a flat flange on a round wall"},
	{[]string{"take-off"}, "fitting length, centre to pipe end"},
	{[]string{"decant", "draw-down"}, "letting clear water off the top first"},
	{[]string{"bridge siphon"}, "pipe that climbs over a wall"},
	{[]string{"siphon break"}, "air hole that stops a siphon"},
	{[]string{"residual-current device"}, "safety switch (RCD, GFCI)"},
	{[]string{"residual current"}, "current that leaks to earth"},
	{[]string{"can turn"}, "that its bacteria can make into nitrate"},
	{[]string{"fish at ease"}, "with the oxygen that they grow at"},
	{[]string{"TAN"}, "total ammonia"},
	{[]string{"un-ionised ammonia"}, "the poisonous part of the ammonia"},
	{[]string{"nitrification"}, "bacteria turning ammonia to nitrate"},
	{[]string{"alkalinity"}, "acid buffer in the water"},
	{[]string{"specific surface"}, "area in each litre of media"},
	{[]string{"mineralisation tank"}, "sludge-rotting tank"},
}

// glossary remembers which terms a page has explained.
type glossary struct{ said map[int]bool }

// explain is one sentence on the terms that show for the first time in some lines; empty if none do.
func (g *glossary) explain(lines []line) string {
	if g.said == nil {
		g.said = map[int]bool{}
	}
	var all strings.Builder
	for _, l := range lines {
		all.WriteString(l.text() + "\n")
	}
	page := all.String()
	var out []string
	for i, t := range terms {
		if g.said[i] {
			continue
		}
		for _, w := range t.words {
			if holdsWord(page, w) {
				g.said[i] = true
				if holdsWord(page, t.meaning) {
					break
				}
				out = append(out, w+": "+t.meaning)
				break
			}
		}
	}
	return sentence(strings.Join(out, "; "))
}

// holdsWord says whether a word stands by itself in a text.
func holdsWord(text, word string) bool {
	lower := strings.ToLower(text)
	if word != strings.ToLower(word) {
		lower = text
	}
	for from := 0; ; {
		i := strings.Index(lower[from:], word)
		if i < 0 {
			return false
		}
		start, end := from+i, from+i+len(word)
		if !joins(lower, start-1) && !joins(lower, end) {
			return true
		}
		from = end
	}
}

// joins says whether the character there makes a longer word.
func joins(text string, i int) bool {
	if i < 0 || i >= len(text) {
		return false
	}
	r := rune(text[i])
	return r == '-' || r == '_' || r == '/' || unicode.IsLetter(r) || unicode.IsDigit(r)
}
