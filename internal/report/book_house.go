package report

import "dryfit/internal/review"

// houseLead says whose rules change the book.
func (w *booker) houseLead() string {
	return "This is the book with the rules of " + houseName(w.House) + ". What it changes stands under House at each clause, beside what the book says; its own clauses stand in their chapters and are marked."
}

// changes is what the house changes in a clause, a line each.
func (w *booker) changes(c *review.Clause) []Words {
	var out []Words
	if w.House == nil {
		return nil
	}
	for i := range w.House.Changes {
		if change := &w.House.Changes[i]; change.Clause == c.ID {
			out = append(out, plainly(changePrinted(change, len(c.Limits) > 1)))
		}
	}
	return out
}

// changePrinted is one change of a house in both families of units, with the loops that it is for and the reason.
func changePrinted(h *review.HouseChange, named bool) string {
	text := changeShown(h, func(l review.Limit) string { return limitBoth(h.Kind, l) })
	if named && h.LimitChanged() {
		text = "limit " + h.Was.Name + ": " + text
	}
	if len(h.Settings) > 0 {
		text += "; for loops whose setting is " + series(h.Settings, "or")
	}
	return sentence(capital(text)) + " Reason: " + sentence(h.Reason)
}
