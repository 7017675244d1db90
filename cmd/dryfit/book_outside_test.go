//go:build outside

package main

import (
	"path/filepath"
	"testing"

	"dryfit/internal/review"
)

// fewer takes the middle out of the page: its clauses and quantities are alike, and axe-core would take minutes.
const fewer = `[...document.querySelectorAll('main > *')].slice(120, -12).forEach(e => e.remove()); `

// The printed book in Chromium: it fits a telephone and a desk, complains of nothing, breaks no rule of
// accessibility that axe-core can try, and fits the paper.
func TestTheBookInABrowser(t *testing.T) {
	t.Parallel()
	path := filepath.Join(t.TempDir(), "book.html")
	said(t, review.NothingToAct, "book", "-o", path)
	source := axe(t)
	for _, size := range [][2]int64{{360, 740}, {1280, 900}} {
		o := open(t, path, size[0], size[1])
		var over float64
		o.ask(`document.documentElement.scrollWidth - document.documentElement.clientWidth`, &over)
		var wide []string
		o.ask(tooWide, &wide)
		if over > 0 || len(wide) > 0 {
			t.Errorf("at %d it is %v px too wide: %v", size[0], over, wide)
		}
		var nothing any
		o.ask(fewer+source+"; 1", &nothing)
		var found []string
		o.ask(`axe.run(document, {runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'best-practice']}).then(r => r.violations.flatMap(v => v.nodes.slice(0, 3).map(n => v.id + ': ' + n.html.slice(0, 120))))`, &found)
		for _, one := range found {
			t.Errorf("at %d: %s", size[0], one)
		}
		if len(*o.faults) > 0 {
			t.Errorf("the page complains: %v", *o.faults)
		}
	}
	for paper := range papers {
		o := open(t, path, 700, 900)
		pdf := o.printed(t, paper)
		if on := pagesWith(t, pdf, "Index of clauses"); len(on) == 0 {
			t.Errorf("on %s the index is not printed", paper)
		}
	}
}
