package remedy

import (
	"math"
	"strings"

	"dryfit/internal/quantity"
)

// move says which value of the file to change: heights are raised or lowered, all
// else is changed from one value to another.
func move(pointer string, kind quantity.Kind, from, to string, change float64, unit string) string {
	if kind != quantity.Length {
		return "change " + name(pointer) + " from " + from + " to " + to
	}
	word := "raise "
	if change < 0 {
		word = "lower "
	}
	return word + name(pointer) + " by " + in(kind, math.Abs(change), unit) + ", from " + from + " to " + to + " above " + above(pointer)
}

// name is what a builder calls the thing whose value stands at a pointer.
func name(pointer string) string {
	keys := strings.Split(strings.TrimPrefix(pointer, "/"), "/")
	last := keys[len(keys)-1]
	switch {
	case last == "lip_at":
		return "the lip of the inlet well"
	case last == "crest_at":
		return "the crest"
	case last == "stands_at" && len(keys) == 3:
		return "the " + keys[1]
	case last == "at" && len(keys) > 2 && keys[len(keys)-2] == "through":
		return "the hole in the wall"
	}
	return "`" + strings.TrimPrefix(pointer, "/") + "`"
}

// above is what the height at a pointer is measured from.
func above(pointer string) string {
	if strings.HasSuffix(pointer, "/stands_at") {
		return "the datum"
	}
	return "the floor"
}
