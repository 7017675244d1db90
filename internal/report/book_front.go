package report

import (
	"slices"
	"strconv"

	"dryfit/internal/review"
)

// gradeOrder is the grades of a source, the surest first.
var gradeOrder = []string{"published", "common practice", "from memory", "project judgement"}

// front is how to read the book, and what stands where.
func (w *booker) front() []Passage {
	strengths := Ruled{Caption: "How binding a clause is", Heads: []string{"verb", "clause", "what it means"}}
	for _, s := range []struct{ verb, kind, means string }{
		{string(review.Shall), "requirement", "it must be so; who differs needs a permit with its reason"},
		{string(review.Should), "recommendation", "it is best so; there may be good reasons to differ"},
		{string(review.May), "permission", "it is allowed"},
	} {
		strengths.Rows = append(strengths.Rows, RuledRow{Cells: []Words{plainly(s.verb), plainly(s.kind), plainly(s.means)}})
	}
	grades := Ruled{Caption: "How sure a source is, and how many clauses name one of its kind", Heads: []string{"grade", "what it means", "clauses"}}
	for _, g := range gradeOrder {
		grades.Rows = append(grades.Rows, RuledRow{Cells: []Words{plainly(g), plainly(gradeMeans[g]), plainly(strconv.Itoa(w.graded(g)))}})
	}
	read := Passage{ID: "how-to-read", Title: "How to read this book", Level: 2, Blocks: []BookBlock{
		para("A clause is one sentence on the design of a loop. Its verb, which stands again under Strength, says how binding it is, as in the ISO/IEC Directives, Part 2."),
		strengths,
		para("A clause marked safety guards life: nobody is given leave to differ from it, and nothing that it needs is assumed where a file is silent."),
		para("Most clauses hold a quantity to a limit, and a value at its limit meets it. Others ask for a fact. A limit is given in metric units, with US units in brackets where those differ. A clause is judged in the cases that it names, and the worst state of them counts."),
		para("Where a number or a word is missing, the clause is neither met nor not met: it is undetermined until the file says it."),
		para("What breaks a clause is a change to the sound file quarry-road.yaml that makes it break this one and no other; long values are cut short here."),
		grades,
	}}
	if w.House != nil {
		read.Blocks = append(read.Blocks, para(w.houseLead()))
	}
	contents := Rows{}
	for _, chapter := range w.chapters() {
		contents = append(contents, BookRow{w.to("chapter", chapter), []Words{w.listed("clause", w.ids(chapter))}})
	}
	return []Passage{read, {ID: "contents", Title: "Contents", Level: 2, Blocks: []BookBlock{
		contents,
		Paragraph{Words: Words{{"Quantities", "quantities"}, {Text: ", "}, {"facts", "facts"}, {Text: ", "}, {"sets, relations and cases", "sets"}, {Text: ", "},
			{"words of the trade", "words"}, {Text: ", "}, {"all clauses by their ids", "index"}}},
	}}}
}

// gradeMeans says what stands behind a source.
var gradeMeans = map[string]string{
	"published":         "it stands in print, and the clause says where as far as that is known",
	"common practice":   "it is what people do, and no work says so",
	"from memory":       "it is held to be in a work that was not opened again",
	"project judgement": "it is our own judgement, and the clause says why",
}

func (w *booker) graded(grade string) int {
	n := 0
	for _, c := range w.Clauses {
		if slices.ContainsFunc(c.Sources, func(s review.Source) bool { return s.Grade == grade }) {
			n++
		}
	}
	return n
}

// ids is the ids of the clauses of a chapter.
func (w *booker) ids(chapter string) []string {
	var out []string
	for _, c := range w.Clauses {
		if c.Chapter == chapter {
			out = append(out, c.ID)
		}
	}
	return out
}

func para(text string) Paragraph { return Paragraph{Words: plainly(text)} }
