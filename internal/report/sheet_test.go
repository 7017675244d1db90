package report_test

import (
	"bytes"
	"context"
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"dryfit/internal/corpus"
	"dryfit/internal/making"
	"dryfit/internal/quantity"
	"dryfit/internal/report"
	"dryfit/internal/review"
	"dryfit/internal/survey"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

var reviewer = sync.OnceValues(corpus.NewReviewer)

var stampOfTests = report.Stamp{File: strings.Repeat("a", 64), Book: strings.Repeat("b", 64), Version: "v0 test", Units: "metric", AsOf: "2026-03-14"}

// reviewOf takes a system file all the way.
func reviewOf(t testing.TB, name string, data []byte) *review.Review {
	t.Helper()
	r, err := reviewer()
	if err != nil {
		t.Fatal(err)
	}
	o, err := r.Review(context.Background(), name, data)
	if err != nil {
		t.Fatal(err)
	}
	if o.Review == nil {
		t.Fatalf("%s is not read: %v", name, o.Problems)
	}
	return o.Review
}

func sheetOf(r *review.Review, o report.Options) report.Sheet {
	return report.NewSheet(report.SheetOf{Review: r, Lists: making.Lists(r.System, tables.Embedded(), r.Ledger), Followed: survey.Follow(r.System, "", "")}, stampOfTests, o)
}

const systems = "../../testdata/systems/"

// told is a review with its sheet, once for all tests.
type told struct {
	once   sync.Once
	review *review.Review
	sheet  report.Sheet
}

var toldOf sync.Map

func demo(t testing.TB, name string) (*review.Review, report.Sheet) {
	t.Helper()
	data, err := os.ReadFile(systems + name)
	if err != nil {
		t.Fatal(err)
	}
	kept, _ := toldOf.LoadOrStore(name, &told{})
	one := kept.(*told)
	one.once.Do(func() {
		one.review = reviewOf(t, name, data)
		one.sheet = sheetOf(one.review, report.Options{})
	})
	if one.review == nil {
		t.Fatalf("%s has no sheet", name)
	}
	return one.review, one.sheet
}

// written is a sheet in its three forms.
func written(t testing.TB, s report.Sheet) (page, marked, lists string) {
	t.Helper()
	var b [3]bytes.Buffer
	for i, err := range []error{report.SheetHTML(&b[0], s), report.SheetMarkdown(&b[1], s, "drawings"), report.SheetCSV(&b[2], s)} {
		if err != nil {
			t.Fatal(i, err)
		}
	}
	return b[0].String(), b[1].String(), b[2].String()
}

func listOf(t testing.TB, s report.Sheet, name string) report.Table {
	t.Helper()
	for _, l := range s.Lists() {
		if l.Name == name {
			return l
		}
	}
	t.Fatalf("there is no list %s", name)
	return report.Table{}
}

func TestTheSheetHasItsSectionsInOrder(t *testing.T) {
	_, s := demo(t, "quarry-road.yaml")
	at := -1
	for _, id := range []string{"title-block", "ready", "cautions", "findings", "levels", "drawings", "lists", "cuts", "bars", "holes",
		"choices", "joints", "parts", "start-up", "wet-checks", "cleaning", "when-it-fails", "valves", "day", "cases", "assumed", "permits", "calculations", "words"} {
		next := slices.IndexFunc(s.Sections, func(one report.Section) bool { return one.ID == id })
		if next <= at {
			t.Errorf("%s stands at %d, after %d", id, next, at)
		}
		at = next
	}
}

// Nothing that was judged, and no quantity that was worked out, is left out of the calculations.
func TestTheCalculationsAreWhole(t *testing.T) {
	for _, name := range []string{"quarry-road.yaml", "quarry-road-as-found.yaml", "siphon-beds.yaml"} {
		r, s := demo(t, name)
		held, rows := 0, 0
		for _, one := range s.Sections {
			for _, b := range one.Blocks {
				if c, is := b.(report.Calculation); is {
					rows += len(c.Rows)
					for _, row := range c.Rows {
						held += len(row.Held)
					}
				}
			}
		}
		judged, asked := 0, 0
		numbers := map[[2]string]bool{}
		for _, n := range r.Ledger.Nodes() {
			if n.Address.Name != "height" {
				numbers[[2]string{n.Address.Subject, n.Address.Name}] = true
			}
		}
		for _, j := range r.Judgements {
			if j.Verdict == review.DoesNotApply {
				continue
			}
			judged++
			if j.Fact || !numbers[[2]string{j.Subject, j.Name}] {
				asked++
			}
		}
		if held != judged || rows != len(numbers)+asked {
			t.Errorf("%s: %d of %d judgements, %d rows for %d quantities and %d questions", name, held, judged, rows, len(numbers), asked)
		}
	}
}

func TestEveryFindingIsToldWithItsRemedies(t *testing.T) {
	r, s := demo(t, "quarry-road-as-found.yaml")
	page, marked, _ := written(t, s)
	for _, f := range r.Findings {
		list := listOf(t, s, "finding-"+strconv.Itoa(f.Number))
		remedies := 0
		for _, row := range list.Rows {
			if row[0].Text == "Remedy" || row[0].Text == "or" {
				remedies++
			}
		}
		if remedies != len(f.Remedies) {
			t.Errorf("%s: %d of %d remedies", f.Clause.ID, remedies, len(f.Remedies))
		}
		if flag := "/" + strconv.Itoa(f.Number) + `\`; !strings.Contains(page, flag) || !strings.Contains(marked, "/"+strconv.Itoa(f.Number)+`\\`) {
			t.Errorf("there is no flag %s", flag)
		}
	}
	if !strings.Contains(page, "Not right as built.") && !strings.Contains(page, "Not ready to build as drawn.") {
		t.Error("it does not say whether it is ready")
	}
}

// Each caution stands at the head, and again beside work that needs it.
func TestCautionsStandFirstAndBesideTheWork(t *testing.T) {
	r, s := demo(t, "quarry-road.yaml")
	first, beside := map[string]bool{}, map[string]bool{}
	for _, one := range s.Sections {
		for _, b := range one.Blocks {
			switch b := b.(type) {
			case report.Caution:
				if one.ID == "cautions" {
					first[b.Text] = true
				} else {
					beside[b.Text] = true
				}
			case report.Steps:
				for _, step := range b {
					for _, c := range step.Cautions {
						beside[c.Text] = true
					}
				}
			}
		}
	}
	for _, j := range r.Judgements {
		if c := j.Clause; c.Safety && c.Caution != "" && j.Verdict != review.DoesNotApply {
			text := strings.TrimSpace(c.Caution)
			if !strings.HasSuffix(text, ".") {
				text += "."
			}
			if !first[text] || !beside[text] {
				t.Errorf("%s: first %v, beside its work %v", c.ID, first[text], beside[text])
			}
		}
	}
}

// What is to be expected with water in, worked out here again from levels and flows with a pencil:
// ten litres over the flow; depths as differences of heights.
func TestWetChecksExpectWhatTheLevelsSay(t *testing.T) {
	r, s := demo(t, "quarry-road.yaml")
	of := func(subject, name, in, water, fault string) float64 {
		n := r.Ledger.Find(working.Address{Subject: subject, Name: name, Case: in, Water: water, Fault: fault})
		if n == nil {
			t.Fatalf("no %s of %s", name, subject)
		}
		v, _ := n.Value()
		return v.X
	}
	checks := listOf(t, s, "wet-checks")
	expected := func(do, look string) string {
		for _, row := range checks.Rows {
			if strings.Contains(row[1].Text, do) && strings.HasPrefix(row[2].Text, look) {
				return row[3].Text
			}
		}
		t.Errorf("there is no check %q, %q", do, look)
		return ""
	}
	// From the file: the floor of the tank stands 380 mm over the datum, that of the settler 300 mm.
	for _, c := range []struct {
		do, look string
		kind     quantity.Kind
		want     float64
	}{
		{"bucket under the end of riser", "time for ten litres", quantity.Time, 0.010 / of("riser", "flow", "run_clean", "usual", "")},
		{"Let the pump run", "depth of the water in tank", quantity.Length, of("tank", "water_level", "run_clean", "usual", "") - 0.380},
		{"Let the pump run", "depth of the water in settler", quantity.Length, of("settler", "water_level", "run_clean", "usual", "") - 0.300},
		{"Switch the pump off", "depth of the water in tank", quantity.Length, of("tank", "static_level", "stopped", "", "siphon break open") - 0.380},
		{"Switch the pump off", "rise of the water in sump", quantity.Length, of("sump", "static_level", "stopped", "", "siphon break open") - of("sump", "water_level", "run_clean", "usual", "")},
		{"Shut the valve of solids-run", "greatest depth of the water in tank", quantity.Length, of("tank", "highest_level", "one_blocked", "", "solids-run blocked") - 0.380},
		{"Shut the valve of solids-run", "time until the pump draws air", quantity.Time, of("solids-run", "time_to_dry", "one_blocked", "", "solids-run blocked")},
		{"open the valve of settler-waste", "what runs out", quantity.Volume, of("settler", "water_a_clean", "always", "", "")},
	} {
		if got, want := expected(c.do, c.look), quantity.Format(c.kind, c.want, quantity.Metric); got != want {
			t.Errorf("%s, %s: %s, and not %s", c.do, c.look, got, want)
		}
	}
	for _, row := range checks.Rows {
		if len(row) != len(checks.Columns) {
			t.Errorf("check %s has %d cells", row[0].Text, len(row))
		}
	}
}

// 25.4 mm are an inch by definition (NIST Special Publication 811, 2008, Appendix B).
func TestBothUnitsSayTheSame(t *testing.T) {
	r, _ := demo(t, "quarry-road.yaml")
	s := sheetOf(r, report.Options{Both: true})
	for _, name := range []string{"levels", "cuts", "holes", "pieces-of-solids-run"} {
		list := listOf(t, s, name)
		seen := 0
		for _, row := range list.Rows {
			for i, c := range row {
				if list.Columns[i].US == "" || c.US == "" {
					continue
				}
				mm, in := number(t, c.Text), number(t, c.US)
				if math.Abs(mm-in*25.4) > 2.54*0.5+0.5 {
					t.Errorf("%s: %s mm beside %s in", name, c.Text, c.US)
				}
				seen++
			}
		}
		if seen == 0 {
			t.Errorf("%s has no lengths in inches", name)
		}
	}
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	q, err := quantity.Parse(quantity.Length, text+" mm")
	if strings.HasPrefix(text, "-") {
		q, err = quantity.Parse(quantity.Length, text[1:]+" mm")
		q.SI = -q.SI
	}
	if err != nil {
		t.Fatal(err)
	}
	return q.SI * 1000
}

// Every system file comes out whole in every form, twice the same, and no number is but finite.
func TestEverySystemHasASheet(t *testing.T) {
	files, err := filepath.Glob(systems + "*.yaml")
	if err != nil || len(files) < 5 {
		t.Fatal(files, err)
	}
	for _, file := range files {
		if strings.Contains(file, "ten-mistakes") {
			continue // it cannot be read
		}
		t.Run(filepath.Base(file), func(t *testing.T) {
			t.Parallel()
			r, s := demo(t, filepath.Base(file))
			page, marked, lists := written(t, s)
			again, _, _ := written(t, sheetOf(r, report.Options{}))
			if page != again {
				t.Error("the second sheet is another one")
			}
			for _, text := range []string{page, marked, lists} {
				if bad := regexp.MustCompile(`\b(NaN|[+-]?Inf)\b|%!|<nil>`).FindString(text); bad != "" {
					t.Errorf("it holds %q", bad)
				}
			}
			holdPage(t, page)
			rows, err := csv.NewReader(strings.NewReader(lists)).ReadAll() // every row has as many cells, else an error
			if err != nil || len(rows) < 20 {
				t.Errorf("%d rows of lists: %v", len(rows), err)
			}
		})
	}
}

var (
	headings = regexp.MustCompile(`<h([1-6])[ >]`)
	ids      = regexp.MustCompile(` id="([^"]*)"`)
	links    = regexp.MustCompile(`href="#([^"]*)"`)
)

// holdPage holds a page to what one of its kind has: headings in order, each table with a caption and heads with
// scopes, each id once, each link to a place that is there (WCAG 2.2, 1.3.1 and 2.4.6, techniques H39, H42, H63, H93).
func holdPage(t *testing.T, page string) {
	t.Helper()
	before := 0
	for _, h := range headings.FindAllStringSubmatch(page, -1) {
		level := int(h[1][0] - '0')
		if level > before+1 || level == 1 && before > 0 {
			t.Errorf("a heading %d follows a heading %d", level, before)
		}
		before = level
	}
	if a, b := strings.Count(page, "<table"), strings.Count(page, "<caption>"); a != b || a == 0 {
		t.Errorf("%d tables, %d captions", a, b)
	}
	for _, th := range regexp.MustCompile(`<th[ >][^>]*>?`).FindAllString(page, -1) {
		if !strings.Contains(th, "scope=") {
			t.Errorf("%s has no scope", th)
		}
	}
	seen := map[string]bool{}
	for _, id := range ids.FindAllStringSubmatch(page, -1) {
		if seen[id[1]] {
			t.Errorf("two things are called %s", id[1])
		}
		seen[id[1]] = true
	}
	for _, link := range links.FindAllStringSubmatch(page, -1) {
		if !seen[link[1]] {
			t.Errorf("nothing is called %s", link[1])
		}
	}
}
