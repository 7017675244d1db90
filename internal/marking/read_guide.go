package marking

import (
	"crypto/sha256"
	"encoding/hex"
	"math"
	"slices"
	"strconv"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// What a guide means that says nothing.
const (
	usualRounding = 0.5
	usualAlike    = 6
)

// ReadGuide reads a marking guide. It tells all that is wrong with it at once, and refuses one
// whose total nobody can reach. The clauses that it picks are those of the book; quantities, sets and
// cases are those of the catalogue.
func ReadGuide(file string, data []byte, book []*review.Clause, c working.Catalogue) (*Guide, []system.Problem) {
	var form guideForm
	r := &guideReader{Checker: guideNotation.Read(file, data, &form), book: book, catalogue: c, ids: map[string]bool{}}
	sum := sha256.Sum256(data)
	g := &Guide{
		File: file, Hash: hex.EncodeToString(sum[:]), Name: form.Name, Note: form.Note,
		Total: form.Total, RoundTo: usualRounding, Alike: usualAlike,
	}
	if form.RoundTo != nil {
		g.RoundTo = *form.RoundTo
	}
	if form.Alike != nil {
		g.Alike = *form.Alike
	}
	for i, f := range form.Items {
		g.Items = append(g.Items, r.item(g, system.Element("/items", i), f))
	}
	r.sum(g)
	r.exclude(g.Items)
	r.twice(g.Items)
	for i, f := range form.Caps {
		g.Caps = append(g.Caps, r.cap(g, system.Element("/caps", i), f))
	}
	if len(r.Problems()) > 0 {
		return nil, r.Problems()
	}
	return g, nil
}

// guideReader reads the parts of a guide.
type guideReader struct {
	*system.Checker
	book      []*review.Clause
	catalogue working.Catalogue
	ids       map[string]bool
}

// item reads one item with its one task.
func (r *guideReader) item(g *Guide, at string, f itemForm) *Item {
	item := &Item{ID: f.ID, Title: f.Title, Marks: f.Marks, Bonus: f.Bonus, Pointer: at, Place: r.Doc.Place(at)}
	r.id(at, f.ID)
	if !r.Sound(at + "/marks") {
		f.Marks = math.NaN() // which is neither more nor less than anything
	}
	if steps := f.Marks / g.RoundTo; r.Sound("/round_to") && math.Abs(steps-math.Round(steps)) > guard*math.Max(1, steps) {
		r.Add(at+"/marks", quoted(MarksNumber(f.Marks))+", which is no multiple of "+MarksNumber(g.RoundTo)+", to which marks are rounded",
			"write "+MarksNumber(math.Max(1, math.Round(steps))*g.RoundTo)+", or another `round_to`")
	}
	var tasks []string
	take := func(key string, given bool, read func(at string) Task) {
		if given {
			tasks = append(tasks, quoted(key))
			item.Task = read(at + "/" + key)
		}
	}
	take("clauses", f.Clauses != nil, func(at string) Task { return r.clausesMet(at, *f.Clauses) })
	take("stated", f.Stated != nil, func(at string) Task { return r.statedRight(at, f.Marks, *f.Stated) })
	take("inputs", f.Inputs != nil, func(at string) Task { return r.inputsGiven(at, *f.Inputs) })
	take("grounds", f.Grounds != nil, func(at string) Task { return r.groundsGiven(at, *f.Grounds) })
	take("requirement", f.Requirement != nil, func(at string) Task { return r.requirement(at, f.Marks, *f.Requirement) })
	take("of_limit", f.OfLimit != nil, func(at string) Task { return r.shareUsed(at, f.Marks, *f.OfLimit) })
	switch {
	case len(tasks) == 0:
		r.Add(at, "an item without a task", "add one of `clauses`, `stated`, `inputs`, `grounds`, `requirement` and `of_limit`")
	case len(tasks) > 1:
		r.Add(at, "an item with "+strconv.Itoa(len(tasks))+" tasks: "+series(tasks), "keep one, and make an item of each other")
	}
	return item
}

// id wants the id of an item or a cap to stand for nothing else.
func (r *guideReader) id(at, id string) {
	if slices.Contains(columns, id) {
		r.Add(at+"/id", quoted(id)+", which is a column of the table of marks already", "give it another id")
	}
	if r.ids[id] && id != "" {
		r.Add(at+"/id", "the id "+quoted(id)+" again", "give each item and each cap an id of its own")
	}
	r.ids[id] = true
}

// sum wants the items that are no bonus to come to the total.
func (r *guideReader) sum(g *Guide) {
	if !r.Sound("/items") || len(g.Items) == 0 {
		return // the sum is not known yet
	}
	sum := 0.0
	for _, item := range g.Items {
		if !item.Bonus {
			sum += item.Marks
		}
	}
	if sum = quantity.Rounded(sum); sum != quantity.Rounded(g.Total) {
		r.Add("/total", quoted(MarksNumber(g.Total))+", where the items that are no bonus come to "+MarksNumber(sum),
			"write `total: "+MarksNumber(sum)+"`, or other marks of the items")
	}
}

// cap reads one cap.
func (r *guideReader) cap(g *Guide, at string, f capForm) *Cap {
	r.id(at, f.ID)
	if f.Most >= g.Total && r.Sound("/total") {
		r.Add(at+"/most", quoted(MarksNumber(f.Most))+", which takes nothing off a total of "+MarksNumber(g.Total), "write less than "+MarksNumber(g.Total))
	}
	return &Cap{ID: f.ID, Which: r.clauses(at+"/clauses", f.Clauses), Most: f.Most, Why: f.Why, Pointer: at, Place: r.Doc.Place(at)}
}

// columns is the heads that the table of marks has beside those of the items.
var columns = []string{"number", "submission", "sha256", "total", "cap", "guide", "book", "version", "house"}
