package report

import (
	"slices"
	"strconv"
	"strings"

	"dryfit/internal/marking"
	"dryfit/internal/quantity"
	"dryfit/internal/review"
)

// What all pages on marks have in common.

// meanShown is a mean of marks, to a tenth.
func meanShown(marks float64) string { return tidy(fixed(quantity.Rounded(marks), 1)) }

// bonusOf is the marks that a guide gives beyond its total.
func bonusOf(g *marking.Guide) float64 {
	sum := 0.0
	for _, item := range g.Items {
		if item.Bonus {
			sum += item.Marks
		}
	}
	return sum
}

// itemTitle is an item in words.
func itemTitle(item *marking.Item) string {
	if item.Bonus {
		return item.Title + " (bonus)"
	}
	return item.Title
}

// letterOf is the letter of an item in tables, by its place in the guide: A to Z, then AA.
func letterOf(i int) string {
	letter := string(rune('A' + i%26))
	if i < 26 {
		return letter
	}
	return letterOf(i/26-1) + letter
}

// lettersOf is the letters of some items of a guide.
func lettersOf(g *marking.Guide, items []*marking.Item) []string {
	var out []string
	for i, item := range g.Items {
		if slices.Contains(items, item) {
			out = append(out, letterOf(i))
		}
	}
	return out
}

// bites is the cap that takes marks off; nil where none does.
func bites(m *marking.Marked) *marking.Capped {
	if len(m.Caps) > 0 && m.Caps[0].Cap.Most < m.Sum {
		return &m.Caps[0]
	}
	return nil
}

// unjudged says that a submission is nothing that could be judged.
func unjudged(m *marking.Marked) bool { return m.Fault == "" && !m.Judged }

// inPart says that some values of a submission were left out so that the rest could be judged.
func inPart(m *marking.Marked) bool { return m.Fault == "" && m.Judged && len(m.Problems) > 0 }

// remarks is what is to be known about a total, in words.
func remarks(m *marking.Marked) []string {
	var out []string
	switch {
	case m.Fault != "":
		if m.Late {
			return []string{"not marked: too little time"}
		}
		return []string{"dryfit failed on it"}
	case unjudged(m):
		out = append(out, "could not be read")
	case inPart(m):
		out = append(out, "errors in the file")
	}
	if cap := bites(m); cap != nil {
		out = append(out, "capped at "+marking.MarksNumber(cap.Cap.Most))
	}
	changes := m.ByHand()
	if len(changes) > 0 {
		out = append(out, "changed by hand")
	}
	if slices.ContainsFunc(changes, func(c *marking.Moderation) bool { return c.Stale }) {
		out = append(out, "file changed since")
	}
	return out
}

// openSaid is a judgement that is not met or not determined, in a list: "sharp_bend on solids-run/2".
func openSaid(j *review.Judgement) string {
	text := j.Clause.ID + " on " + j.Subject
	if j.Verdict == review.Undetermined {
		text += " (cannot be said yet)"
	}
	return text
}

// andMore is a list of which no more than so many are named.
func andMore(list []string, most int) string {
	if len(list) <= most {
		return series(list, "and")
	}
	return series(append(slices.Clone(list[:most]), counted(len(list)-most)+" more"), "and")
}

// numberOf is what a submission is called where names do not belong.
func numberOf(m *marking.Marked) string { return strconv.Itoa(m.Number) }

// spreadWords says how marks lie.
func spreadWords(s marking.Spread) string {
	n := marking.MarksNumber
	return "median " + n(s.Median) + ", the middle half from " + n(s.Lower) + " to " + n(s.Upper) + ", mean " + meanShown(s.Mean) +
		", least " + n(s.Least) + ", greatest " + n(s.Greatest)
}

// worthWords is what a guide gives in all: "60 marks, and 4 of bonus beyond them".
func worthWords(g *marking.Guide) string {
	text := marking.MarksWords(g.Total)
	if bonus := bonusOf(g); bonus > 0 {
		text += ", and " + marking.MarksNumber(bonus) + " of bonus beyond them"
	}
	return text
}

// pairMeans is what is said of every pair.
const pairMeans = "People who work side by side share values, and so do those who read the same page. That two files agree says where to look, and nothing about how it came about."

// unfitWords is a change by hand that found nothing to change. Its place stands for the name.
func unfitWords(c marking.Moderation, names bool) string {
	text := "the change by hand at file line " + strconv.Itoa(c.Place.Line) + " of the moderation file fits no submission"
	if names {
		text += ": " + c.Submission
	}
	return text
}

// classHash is the SHA-256 of the hashes of all submissions, in their order, each on a line.
func classHash(c *marking.Class) string {
	var b strings.Builder
	for _, m := range c.Marked {
		b.WriteString(m.Hash + "\n")
	}
	return HashOf([]byte(b.String()))
}

// madeWith is what marks were made with, in short.
func madeWith(stamp Stamp) string {
	house := ""
	if stamp.House != "" {
		house = ", house " + firstDigits(stamp.House)
	}
	return "guide " + digitsOrNone(stamp.Guide) + ", book " + firstDigits(stamp.Book) + house + ", dryfit " + strings.Join(strings.Fields(stamp.Version), " ")
}
