package marking

import (
	"strings"

	"dryfit/internal/system"
	"dryfit/schema"
)

var (
	guideNotation = system.NewNotation("dryfit_guide", "a marking guide", "a name, a total and items", schema.Guide)
	changes       = system.NewNotation("dryfit_moderation", "a file of changed marks", "a list of changes", schema.Moderation)
)

// quoted puts text of a file between backquotes, on one line.
func quoted(text string) string { return "`" + strings.Join(strings.Fields(text), " ") + "`" }

// orNearest is what to write in place of a word that is not known: the nearest that is, else where to look.
func orNearest(word string, known []string, look string) string {
	if near := system.Nearest(word, known); near != "" {
		return "the nearest is " + quoted(near)
	}
	return look
}

// series is a list in a sentence.
func series(items []string) string {
	last := len(items) - 1
	if last < 1 {
		return strings.Join(items, "")
	}
	return strings.Join(items[:last], ", ") + " and " + items[last]
}
