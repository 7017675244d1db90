package report

import (
	"fmt"
	"strings"

	"dryfit/internal/marking"
	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// The sentences on what the items of a marking guide ask.

// pickedWords is how many clauses there are, and how they were chosen.
func pickedWords(w marking.Clauses) string {
	text := fmt.Sprintf("these %s clauses", counted(len(w.Picked)))
	if len(w.Picked) == 1 {
		text = "this clause"
	}
	if len(w.IDs) > 0 {
		return text
	}
	var how []string
	if w.Strength != "" {
		how = append(how, string(w.Strength))
	}
	if w.Chapter != "" {
		how = append(how, "chapter "+w.Chapter)
	}
	if w.Safety {
		how = append(how, "safety")
	}
	return text + " (" + strings.Join(how, ", ") + ")"
}

// unmetWords says that one of some clauses is not met.
func unmetWords(w marking.Clauses) string {
	if len(w.Picked) == 1 {
		return "this clause is not met or cannot be said yet"
	}
	return "one of " + pickedWords(w) + " is not met or cannot be said yet"
}

func clausesMetWords(task *marking.ClausesMet) []string {
	none := "nothing"
	if task.Full {
		none = "all of it"
	}
	picked := pickedWords(task.Which)
	switch {
	case len(task.Which.Picked) == 1:
		return []string{"All of it if " + picked + " is met, " + none + " where it finds nothing to judge."}
	case task.All:
		return []string{"All of it if all of " + picked + " are met that apply to the loop, else nothing; " + none + " where none applies."}
	}
	return []string{"By the share that is met of " + picked + ", of those that apply to the loop; " + none + " where none applies."}
}

func (p *guidePage) statedWords(task *marking.StatedRight, marks float64) []string {
	d, _ := quantityOf(p.k, task.Quantity)
	out := []string{"The student states, " + p.whose("", task.Of) + ", the " + d.Title + "."}
	out = append(out, caseSentence(task.Case)...)
	out = append(out, bandsWords(task.Bands, task.Kind, task.Unit)+".")
	var off []string
	take := func(x float64, why string) {
		switch {
		case x >= marks:
			off = append(off, "all "+why)
		case x > 0:
			off = append(off, marking.MarksNumber(x)+" "+why)
		}
	}
	if task.Kind != quantity.Number {
		if task.Unit != "" {
			take(task.NoUnit, "without a unit ("+task.Unit+" is then taken)")
		}
		take(task.BadUnit, "with a unit of another kind")
	}
	take(task.NoWork, "where it is not said how it was found")
	if len(off) > 0 {
		out = append(out, "Taken off: "+strings.Join(off, "; ")+".")
	}
	if task.Sources {
		out = append(out, "A value in the range in which the sources leave the right one counts as right.")
	}
	if task.Alone {
		return append(out, "Errors are not carried forward.")
	}
	return append(out, "Errors are carried forward.")
}

// bandsWords is "6 marks within 2 %, 3 within 10 %".
func bandsWords(bands []marking.Band, kind quantity.Kind, unit string) string {
	var out []string
	for i, b := range bands {
		marks := marking.MarksNumber(b.Marks)
		if i == 0 {
			marks = marking.MarksWords(b.Marks)
		}
		out = append(out, marks+" within "+b.Within.Words(kind, unit))
	}
	return strings.Join(out, "; ")
}

// caseSentence says in which case a quantity is meant, where a guide says one that matters.
func caseSentence(kase string) []string {
	if kase == "" || kase == working.Always {
		return nil
	}
	return []string{"Case: " + stateWords(kase) + "."}
}

func inputsWords(task *marking.InputsGiven) []string {
	if len(task.Keys) == 0 {
		return []string{"All of it if the file gives all that the clauses need, with units, else nothing."}
	}
	text := "By the share that the file gives, with units, of " + series(task.Keys, "and")
	if task.Undetermined {
		text += "; what else clauses need and do not find counts as missing, too"
	}
	return []string{text + "."}
}

func groundsWords(task *marking.GroundsGiven) []string {
	var what []string
	if len(task.SourcesFor) > 0 {
		what = append(what, "a source for "+series(task.SourcesFor, "and"))
	}
	switch task.Assumptions {
	case 0:
	case 1:
		what = append(what, "an assumption with its reason, about something in the file")
	default:
		what = append(what, counted(task.Assumptions)+" assumptions with their reasons, about something in the file")
	}
	return []string{"By the share that the file gives of " + strings.Join(what, "; and of ") + "."}
}

func (p *guidePage) requirementWords(task *marking.Requirement) []string {
	subject := map[string]string{marking.Cost: " what is still to be bought", marking.Footprint: " the floor that vessels and stands cover"}[task.Quantity]
	if subject == "" {
		d, _ := quantityOf(p.k, task.Quantity)
		some := "each of "
		if task.Together {
			some = "the sum of "
		}
		subject = ", " + p.whose(some, task.Of) + ", the " + d.Title
	}
	var bounds []string
	for _, b := range []struct {
		words string
		at    *float64
	}{{"at least ", task.Least}, {"at most ", task.Most}} {
		if b.at != nil {
			bounds = append(bounds, b.words+valueWords(task.Kind, *b.at, task.Unit))
		}
	}
	out := []string{"All of it if" + subject + " is " + series(bounds, "and") + "."}
	out = append(out, caseSentence(task.Case)...)
	if len(task.Close) > 0 {
		out = append(out, "Where it is missed: "+bandsWords(task.Close, task.Kind, task.Unit)+".")
	}
	return out
}

func shareUsedWords(task *marking.ShareUsed) []string {
	var bands []string
	for i, b := range task.Bands {
		marks := marking.MarksNumber(b.Marks)
		if i == 0 {
			marks = marking.MarksWords(b.Marks)
		}
		reach := "from " + marking.MarksNumber(b.Least) + " to " + marking.MarksNumber(b.Most)
		if b.Least == 0 {
			reach = "up to " + marking.MarksNumber(b.Most)
		}
		bands = append(bands, marks+" "+reach)
	}
	return []string{"By the share of its limit that this clause uses: " + strings.Join(bands, "; ") + "."}
}
