// Package house reads the rules of a house: what it changes in the limits and strengths of clauses.
package house

import (
	"strings"

	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/working"
	"dryfit/schema"
)

// File is the name that the rules of a house have in its folder.
const File = "house.yaml"

var notation = system.NewNotation("dryfit_house", "house rules", "a name, by whom, and changes", schema.House)

// form is house rules as they are written. The schema says what each key means.
type form struct {
	Name, By, Note string
	Changes        []changeForm
}

type changeForm struct {
	Clause, Limit, Strength, Reason string
	Least, Most                     *system.Written
	Settings                        []string
}

// Read reads house rules for the clauses of a book, which may hold clauses of the house's own. It tells all
// that is wrong with them at once; only rules without a problem are given. Kinds of limits are those of
// the catalogue.
func Read(file string, data []byte, book []*review.Clause, c working.Catalogue) (*review.House, []system.Problem) {
	var f form
	r := &reader{Checker: notation.Read(file, data, &f), book: book, kinds: map[string]working.Definition{}, seen: map[string]bool{}}
	for _, d := range c.Quantities {
		r.kinds[d.Name] = d
	}
	h := &review.House{Name: f.Name, By: f.By}
	for i, change := range f.Changes {
		h.Changes = append(h.Changes, r.change(system.Element("/changes", i), change))
	}
	if problems := r.Problems(); len(problems) > 0 {
		return nil, problems
	}
	return h, nil
}

// quoted puts text of a file between backquotes, on one line.
func quoted(text string) string { return "`" + strings.Join(strings.Fields(text), " ") + "`" }

// listed is names in a sentence.
func listed(names []string) string {
	out := make([]string, len(names))
	for i, n := range names {
		out[i] = quoted(n)
	}
	last := len(out) - 1
	if last == 0 {
		return out[0]
	}
	return strings.Join(out[:last], ", ") + " or " + out[last]
}
