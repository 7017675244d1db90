//go:build outside

package report_test

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"dryfit/internal/remedy"
	"dryfit/internal/report"
	"dryfit/internal/review"
)

// printedAlone is a book of one clause as Markdown.
func printedAlone(t testing.TB, c *review.Clause) string {
	t.Helper()
	var b bytes.Buffer
	if err := report.BookMarkdown(&b, report.NewBook(report.BookOf{Clauses: []*review.Clause{c}, Lever: remedy.Words, Stamp: stampOfTests})); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// rendered is what two renderers of Markdown make of texts: the tags of each, and the ids and the places that links lead to.
func rendered(t *testing.T, texts []string) [][]struct{ Tags, IDs, To []string } {
	t.Helper()
	return node[[]struct{ Tags, IDs, To []string }](t, `
		const {marked} = require("marked"), MarkdownIt = require("markdown-it");
		const of = html => ({
			Tags: html.match(/<[^>]*>/g).map(tag => tag.replace(/ (id|href)="[^"]*"/, "")),
			IDs: [...html.matchAll(/ id="([^"]*)"/g)].map(m => m[1]), To: [...html.matchAll(/href="([^"]*)"/g)].map(m => m[1])});
		return [of(marked.parse(text, {gfm: true})), of((MarkdownIt.default || MarkdownIt)({html: true, linkify: true}).render(text))];`, texts)
}

// Rendered by either, the printed book has the same headings, tables and links, and every link leads to a place in it.
func TestBookRendersAlike(t *testing.T) {
	both := rendered(t, []string{asPrinted()[1]})[0]
	headings := strings.Count("\n"+asPrinted()[1], "\n#")
	for i, got := range both {
		count := func(tag string) (n int) {
			for _, one := range got.Tags {
				if strings.HasPrefix(one, tag) {
					n++
				}
			}
			return n
		}
		if n := count("<h2") + count("<h3") + count("<h1"); n != headings {
			t.Errorf("renderer %d makes %d headings of %d", i, n, headings)
		}
		if count("<table") != 8 || count("<pre") != 0 || count("<img") != 0 {
			t.Errorf("renderer %d makes %d tables, %d blocks of code and %d pictures", i, count("<table"), count("<pre"), count("<img"))
		}
		for _, to := range got.To {
			if id, inside := strings.CutPrefix(to, "#"); !inside || !slices.Contains(got.IDs, id) {
				t.Errorf("renderer %d: a link leads to %s", i, to)
			}
		}
	}
	if !slices.Equal(both[0].To, both[1].To) || !slices.Equal(both[0].IDs, both[1].IDs) {
		t.Error("the two make other links or places of the same book")
	}
}

// A house clause of any words renders with the same tags as one of a plain word.
func TestHostileClausesRenderTheSame(t *testing.T) {
	words := append([]string{"A plain word", "| a | b", "@x #1 :tada: GH-1", "a\\", "**a** __b__ ~~c~~ `d`", "- [ ] a", "[a](#b)", "&copy; <!-- x"}, hostile...)
	var texts []string
	for _, word := range words {
		texts = append(texts, printedAlone(t, houseClause(strings.Join(strings.Fields(word), " "))))
	}
	all := rendered(t, texts)
	for k, renderings := range all {
		for i, got := range renderings {
			if !slices.Equal(got.Tags, all[0][i].Tags) {
				t.Errorf("%q: %s", words[k], differs(got.Tags, all[0][i].Tags))
			}
		}
	}
}
