package report_test

import (
	"bytes"
	"html"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
	"unicode"

	"dryfit/internal/remedy"
	"dryfit/internal/report"
	"dryfit/internal/review"
	"dryfit/internal/survey"
)

// printed is the book with some more clauses in it, in both forms.
func printed(t testing.TB, more ...*review.Clause) (page, marked string) {
	t.Helper()
	r, err := reviewer()
	if err != nil {
		t.Fatal(err)
	}
	book := report.NewBook(report.BookOf{
		Clauses: append(slices.Clone(r.Book().Clauses()), more...), Catalogue: survey.Catalogue(), Lever: remedy.Words, Stamp: stampOfTests,
	})
	var h, m bytes.Buffer
	if err := report.BookHTML(&h, book); err != nil {
		t.Fatal(err)
	}
	if err := report.BookMarkdown(&m, book); err != nil {
		t.Fatal(err)
	}
	return h.String(), m.String()
}

// asPrinted is the book as it is, once for all tests.
var asPrinted = sync.OnceValue(func() [2]string {
	page, marked := printed(&testing.T{})
	return [2]string{page, marked}
})

var (
	bookPlaces = regexp.MustCompile(` id="([^"]*)"`)
	bookHrefs  = regexp.MustCompile(`href="#([^"]*)"`)
	bookLinks  = regexp.MustCompile(`\]\(#([^)]*)\)`)
)

func allOf(re *regexp.Regexp, text string) []string {
	var out []string
	for _, found := range re.FindAllStringSubmatch(text, -1) {
		out = append(out, found[1])
	}
	return out
}

// Every clause, quantity, fact, set, relation and case stands in the book once, under a place that links lead to.
func TestBookHoldsEverythingOnce(t *testing.T) {
	r, err := reviewer()
	if err != nil {
		t.Fatal(err)
	}
	k, wanted := survey.Catalogue(), []string{}
	add := func(what, name string) { wanted = append(wanted, what+"-"+name) }
	for _, c := range r.Book().Clauses() {
		add("clause", c.ID)
	}
	for _, d := range k.Quantities {
		add("quantity", d.Name)
	}
	for _, f := range k.Facts {
		add("fact", f.Name)
	}
	for _, n := range k.Sets {
		add("set", n.Name)
	}
	for _, n := range k.Relations {
		add("relation", n.Name)
	}
	for _, n := range k.Cases {
		add("case", n.Name)
	}
	for _, form := range asPrinted() {
		got := map[string]int{}
		for _, id := range allOf(bookPlaces, form) {
			got[id]++
		}
		for _, id := range wanted {
			if got[id] != 1 {
				t.Errorf("%s stands in the book %d times", id, got[id])
			}
		}
	}
	page := strings.Join(strings.Fields(html.UnescapeString(asPrinted()[0])), " ")
	bare := regexp.MustCompile(`<[^>]*>`).ReplaceAllString(page, "")
	for _, c := range r.Book().Clauses() {
		for _, s := range append(slices.Clone(c.Sources), review.Source{Text: c.Title}, review.Source{Text: c.Why}) {
			if text := strings.TrimRight(s.Text, ". "); !strings.Contains(bare, text) && !strings.HasSuffix(text, ", no source") {
				t.Errorf("the book does not say of %s: %s", c.ID, text)
			}
		}
	}
}

func TestBookLinksResolve(t *testing.T) {
	for i, re := range []*regexp.Regexp{bookHrefs, bookLinks} {
		form := asPrinted()[i]
		places := map[string]bool{}
		for _, id := range allOf(bookPlaces, form) {
			if places[id] {
				t.Errorf("%s is a place twice", id)
			}
			places[id] = true
		}
		all := allOf(re, form)
		if len(all) < 2000 {
			t.Errorf("there are only %d links", len(all))
		}
		for _, to := range all {
			if !places[to] {
				t.Errorf("a link leads to %s, which there is not", to)
			}
		}
	}
}

// Both forms say the same words in the same order.
func TestBookSaysTheSameInBothForms(t *testing.T) {
	page, marked := asPrinted()[0], asPrinted()[1]
	_, page, _ = strings.Cut(page, "<body>")
	_, marked, _ = strings.Cut(marked, "-->")
	page = regexp.MustCompile(`<[^>]*>`).ReplaceAllString(page, " ")
	marked = bookLinks.ReplaceAllString(strings.ReplaceAll(strings.ReplaceAll(marked, `\`, ""), "| --- ", ""), " ")
	marked = regexp.MustCompile(`<a id=[^>]*></a>`).ReplaceAllString(marked, " ")
	letters := func(text string) []string {
		return strings.FieldsFunc(html.UnescapeString(text), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	}
	a, b := letters(page), letters(marked)
	for i := range min(len(a), len(b)) {
		if a[i] != b[i] {
			t.Fatalf("word %d: the page has %v and the Markdown %v", i, a[i:min(i+12, len(a))], b[i:min(i+12, len(b))])
		}
	}
	if len(a) != len(b) {
		t.Errorf("the page has %d words and the Markdown %d", len(a), len(b))
	}
}

func TestBookIsTheSameTwice(t *testing.T) {
	page, marked := printed(t)
	if page != asPrinted()[0] || marked != asPrinted()[1] {
		t.Error("two runs print two books")
	}
}

// houseClause is a clause of a house with a word wherever its author may write one.
func houseClause(word string) *review.Clause {
	most := 1.0
	return &review.Clause{
		ID: "ours " + word, Chapter: "zz " + word, Own: true, Title: word, Why: word, Strength: review.Should, Safety: true, Caution: word,
		Limits:  []review.Limit{{Name: word, Quantity: "flow", Most: &most}, {Name: "two " + word, Quantity: word, Most: &most}},
		Sources: []review.Source{{Grade: "published", Text: word}}, Cases: []string{word, "always"}, Shows: []string{word}, Reads: []string{word},
		Over: []string{word}, Asks: []string{word + ": " + word}, Levers: []review.Lever{{Replace: word, Toward: word}, {Solve: "/vessels/{subject}/" + word, Toward: word}},
		Example: []review.Change{{Pointer: "/vessels/tank/a", Value: word}},
	}
}

// Whatever a house writes in a clause, the book has the same elements as with a plain word.
func TestHostileClausesStayWords(t *testing.T) {
	page, marked := printed(t, houseClause("plain word"))
	ids := regexp.MustCompile(`(id="|href="#)[a-z0-9_-]*`)
	tags := func(page string) []string {
		var out []string
		for _, tag := range shape(page) {
			out = append(out, ids.ReplaceAllString(tag, ""))
		}
		return out
	}
	bars := func(text string) int { return strings.Count(strings.ReplaceAll(text, `\|`, ""), "|") }
	wanted := tags(page)
	for _, word := range hostile {
		p, m := printed(t, houseClause(strings.Join(strings.Fields(word), " "))) // a clause is read with one blank between words
		if got := tags(p); !slices.Equal(got, wanted) {
			t.Errorf("%q changes the page: %s", word, differs(got, wanted))
		}
		if strings.Count(m, "\n") != strings.Count(marked, "\n") || bars(m) != bars(marked) {
			t.Errorf("%q changes the lines or cells of the Markdown", word)
		}
		for _, r := range p + m {
			if r != '\n' && !unicode.IsPrint(r) {
				t.Errorf("%q lets %U through", word, r)
				break
			}
		}
	}
}

// Names that differ in nothing that a link may hold still have places of their own.
func TestAlikeNamesHavePlacesOfTheirOwn(t *testing.T) {
	clauses := []*review.Clause{{ID: "a b", Chapter: "x"}, {ID: "a-b", Chapter: "x"}, {ID: "A.b", Chapter: "x"}}
	var b bytes.Buffer
	if err := report.BookMarkdown(&b, report.NewBook(report.BookOf{Clauses: clauses})); err != nil {
		t.Fatal(err)
	}
	for _, place := range []string{"clause-a-b", "clause-a-b-2", "clause-a-b-3"} {
		if strings.Count(b.String(), `<a id="`+place+`">`) != 1 {
			t.Errorf("%s is not there once", place)
		}
	}
}
