package remedy

import (
	"math"
	"strings"

	"dryfit/internal/quantity"
)

// move says which value of the file to change: heights are raised or lowered, all
// else is changed from one value to another.
func move(pointer string, kind quantity.Kind, from, to string, change float64, unit string) string {
	if strings.HasSuffix(pointer, "/shut_off") {
		return "a pump whose shut-off head is " + to + ", not " + from
	}
	if kind != quantity.Length || !isHeight(pointer) {
		return "change " + name(pointer) + " from " + from + " to " + to
	}
	word := "raise "
	if change < 0 {
		word = "lower "
	}
	return word + name(pointer) + " by " + in(kind, math.Abs(change), unit) + ", from " + from + " to " + to + " above " + above(pointer)
}

// isHeight says whether the length at a pointer is a height over the floor or the datum.
func isHeight(pointer string) bool {
	last := pointer[strings.LastIndex(pointer, "/")+1:]
	return last == "at" || last == "standoff" || strings.HasSuffix(last, "_at")
}

// name is what a builder calls the thing whose value stands at a pointer.
func name(pointer string) string {
	keys := strings.Split(strings.TrimPrefix(pointer, "/"), "/")
	last := keys[len(keys)-1]
	switch {
	case last == "lip_at":
		return "the lip of the inlet well"
	case last == "standoff":
		return "the drain"
	case last == "inside" && len(keys) == 4 && keys[2] == "well":
		return "the inside diameter of the inlet well"
	case last == "inside" && len(keys) == 5 && keys[2] == "form":
		return "the inside diameter of the " + keys[1]
	case last == "across" && len(keys) == 5 && keys[2] == "weir":
		return "the diameter of the ring"
	case last == "most" && keys[0] == "working_flow":
		return "the greatest flow asked"
	case last == "full_at":
		return "the height at which the sludge counts as full"
	case last == "at" && len(keys) > 2 && keys[len(keys)-2] == "outlet":
		return "the open end"
	case last == "at" && len(keys) > 2 && keys[len(keys)-2] == "intake":
		return "the inner end"
	case last == "sockets_at":
		return "the lowest socket"
	case last == "outlet_at":
		return "the outlet of the top-up"
	case last == "crest_at":
		return "the crest"
	case last == "stands_at" && keys[0] == "air":
		return "the air pump"
	case last == "stands_at" && len(keys) == 3:
		return "the " + keys[1]
	case last == "at" && len(keys) > 2 && keys[len(keys)-2] == "through":
		return "the hole in the wall"
	case last == "at" && len(keys) > 2 && keys[len(keys)-2] == "over":
		return "the pipe over the rim"
	case last == "running":
		return "the depth at which the " + keys[1] + " runs"
	case last == "spill_at":
		return "the lowest place in the rim of the " + keys[1]
	case last == "height" && len(keys) == 5 && keys[2] == "form":
		return "the height of the " + keys[1]
	case last == "store":
		return "the store of the top-up"
	case last == "from_intake":
		return "the air stones' distance from the intake"
	case last == "lasts" && keys[0] == "backup_air":
		return "the time that the backup air lasts"
	case last == "flow" && keys[0] == "backup_air":
		return "the air that the backup gives"
	case last == "flow" && len(keys) == 3 && keys[0] == "air":
		return "the air that the air pump gives"
	case last == "against":
		return "the pressure at which the air pump gives its air"
	case last == "usual" && len(keys) == 3 && keys[1] == "alkalinity":
		return "the usual alkalinity of the water"
	case last == "exchange" && keys[0] == "water":
		return "the water that is let off on purpose"
	case last == "salt_treatment":
		return "the strongest salt treatment"
	case last == "volume" && len(keys) == 4 && keys[2] == "media":
		return "the media in the " + keys[1]
	}
	return "`" + strings.TrimPrefix(pointer, "/") + "`"
}

// above is what the height at a pointer is measured from.
func above(pointer string) string {
	if strings.HasSuffix(pointer, "/stands_at") || strings.HasSuffix(pointer, "/sockets_at") {
		return "the datum"
	}
	return "the floor"
}
