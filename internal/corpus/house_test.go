package corpus

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"dryfit/internal/quantity"
	"dryfit/internal/report"
	"dryfit/internal/review"
	"dryfit/internal/survey"
)

const demoFile = "../../testdata/systems/quarry-road.yaml"

// houseOf is a reviewer by house rules of these changes.
func houseOf(t testing.TB, changes string) (*Reviewer, []string) {
	t.Helper()
	name := filepath.Join(t.TempDir(), "house.yaml")
	if err := os.WriteFile(name, []byte("dryfit_house: 1\nname: Quarry Road school\nby: site manager\nchanges:\n"+changes), 0o644); err != nil {
		t.Fatal(err)
	}
	r, problems, err := NewHouseReviewer(name)
	if err != nil {
		t.Fatal(err)
	}
	var said []string
	for _, p := range problems {
		said = append(said, p.String())
	}
	return r, said
}

func inHouse(t testing.TB, changes string) *Reviewer {
	t.Helper()
	r, problems := houseOf(t, changes)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return r
}

// judgedDemo is the demo by a reviewer, with something else written in it.
func judgedDemo(t testing.TB, r *Reviewer, swap ...string) *review.Review {
	t.Helper()
	data, err := os.ReadFile(demoFile)
	if err != nil {
		t.Fatal(err)
	}
	text := strings.NewReplacer(swap...).Replace(string(data))
	out, err := r.Judge(context.Background(), "loop.yaml", []byte(text))
	if err != nil || out.Review == nil {
		t.Fatal(err, out.Problems)
	}
	return out.Review
}

func verdictOf(t testing.TB, r *review.Review, clause string) *review.Judgement {
	t.Helper()
	for _, j := range r.Judgements {
		if j.Clause.ID == clause {
			return j
		}
	}
	t.Fatalf("%s is not judged", clause)
	return nil
}

// A limit that a house moves is held exactly: at it, just inside it and just outside.
func TestATightenedLimitIsHeld(t *testing.T) {
	plain, err := NewReviewer()
	if err != nil {
		t.Fatal(err)
	}
	was := verdictOf(t, judgedDemo(t, plain), "overflow_rate")
	if was.Verdict != review.Met || len(was.Clause.Changed) > 0 {
		t.Fatalf("by the book: %s", was.Verdict)
	}
	at, _ := strconv.ParseFloat(strconv.FormatFloat(was.Value.X*1000, 'g', 6, 64), 64) // mm/s, as far as a clause sees it
	for _, one := range []struct {
		by   float64
		want review.Verdict
	}{{0, review.Met}, {1e-4, review.Met}, {-1e-4, review.NotMet}} {
		most := strconv.FormatFloat(at+one.by, 'f', -1, 64)
		r := judgedDemo(t, inHouse(t, "  - {clause: overflow_rate, most: "+most+" mm/s, reason: sun}\n"))
		j := verdictOf(t, r, "overflow_rate")
		if j.Verdict != one.want || fmt.Sprintf("%.7g", *j.Limit.Most*1000) != fmt.Sprintf("%.7g", at+one.by) {
			t.Errorf("%s mm/s beside %v: %s, held against %v", most, at, j.Verdict, *j.Limit.Most)
		}
		if changes := j.ChangesOf(); len(changes) != 1 || *changes[0].Was.Most != *was.Limit.Most || changes[0].Reason != "sun" {
			t.Errorf("the judgement says of the house %+v", changes)
		}
		if r.House == nil || r.House.Changes[0].Bears != review.InForce {
			t.Errorf("the summary says of the house %+v", r.House)
		}
	}
}

// A change of a setting is for its loops alone, and a strength that is changed counts.
func TestAChangeOfASetting(t *testing.T) {
	r := inHouse(t, `  - {clause: well_depth, least: 0.55, strength: shall, settings: [school], reason: pupils stir}
  - {clause: turnover, strength: shall, settings: [farm], reason: dense}
  - {clause: bell_siphon_stops, strength: may, reason: there is none}
`)
	school, home := judgedDemo(t, r), judgedDemo(t, r, "setting: school", "setting: home")
	silent := judgedDemo(t, r, "setting: school, ", "")
	if j := verdictOf(t, school, "well_depth"); j.Verdict != review.NotMet || j.Clause.Strength != review.Shall || school.ExitStatus(review.Shall) != review.Act {
		t.Errorf("school: %s %s", j.Clause.Strength, j.Verdict)
	}
	for name, rev := range map[string]*review.Review{"home": home, "no setting": silent} {
		if j := verdictOf(t, rev, "well_depth"); j.Verdict != review.Met || j.Clause.Strength != review.Should || len(j.ChangesOf()) > 0 {
			t.Errorf("%s: %s %s", name, j.Clause.Strength, j.Verdict)
		}
	}
	var bears []review.Bearing
	for _, c := range school.House.Changes {
		bears = append(bears, c.Bears)
	}
	if fmt.Sprint(bears) != "[in force another setting nothing to judge]" {
		t.Error(bears)
	}
}

// No limit of any safety clause of the book can be made weaker, nor its strength; each can be made stricter.
func TestWhatGuardsLifeIsNeverMadeWeaker(t *testing.T) {
	plain, err := NewReviewer()
	if err != nil {
		t.Fatal(err)
	}
	kinds := map[string]quantity.Kind{}
	for _, d := range survey.Catalogue().Quantities {
		kinds[d.Name] = d.Kind
	}
	var weaker, stricter strings.Builder
	wrong := 0
	for _, c := range plain.Book().Clauses() {
		if !c.Safety {
			continue
		}
		fmt.Fprintf(&weaker, "  - {clause: %s, strength: may, reason: r}\n", c.ID)
		wrong++
		for _, l := range c.Limits {
			write := func(to *strings.Builder, key string, x float64) {
				text := quantity.Format(kinds[l.Quantity], x, quantity.Metric)
				if kinds[l.Quantity] == quantity.Fraction { // which may be over one only so
					text = fmt.Sprintf("%.6g %%", 100*x)
				}
				fmt.Fprintf(to, "  - {clause: %s, limit: %s, %s: %s, reason: r}\n", c.ID, l.Name, key, text)
			}
			if l.Least != nil {
				write(&weaker, "least", *l.Least/2-0.1)
				write(&stricter, "least", *l.Least*1.5+0.1)
				wrong++
			}
			if l.Most != nil {
				write(&weaker, "most", *l.Most*1.5+0.1)
				write(&stricter, "most", *l.Most/2)
				wrong++
			}
		}
	}
	if wrong < 20 {
		t.Fatalf("only %d things of safety clauses were found", wrong)
	}
	_, said := houseOf(t, weaker.String())
	if len(said) != wrong {
		t.Errorf("%d of %d are refused: %q", len(said), wrong, said)
	}
	for _, text := range said {
		if !strings.Contains(text, "made weaker") || !strings.Contains(text, "may be made stricter, never weaker") {
			t.Error(text)
		}
	}
	inHouse(t, stricter.String())
}

// What is kept of a loop says the same as a fresh result, and is not taken for that of another house.
func TestKeptResultsSayWhatTheHouseChanged(t *testing.T) {
	folder := t.TempDir()
	run := func(changes string, afresh bool) string {
		r := inHouse(t, changes)
		hash, err := r.Hash()
		if err != nil {
			t.Fatal(err)
		}
		cache, err := OpenCache(folder, "program", hash)
		if err != nil {
			t.Fatal(err)
		}
		var b strings.Builder
		for _, form := range report.Forms() {
			w, err := report.NewWriter(form, &b, report.Run{HeldTo: review.Should, Version: "v", Book: hash, Clauses: r.Book().Clauses})
			if err != nil {
				t.Fatal(err)
			}
			b.WriteString("\n== " + form + "\n")
			batch := Batch{Workers: 1, Most: time.Minute, Cache: cache, Afresh: afresh, Whole: report.WantsAll(form)}
			if err := r.Run(context.Background(), []File{Named(demoFile), Named(demoFile)}, batch, w.Add); err != nil {
				t.Fatal(err)
			}
			if err := w.Close(); err != nil {
				t.Fatal(err)
			}
		}
		return b.String()
	}
	one := "  - {clause: well_depth, least: 0.55, strength: shall, settings: [school], reason: pupils stir}\n"
	fresh := run(one, true)
	if kept := run(one, false); kept != fresh {
		t.Error("what is kept says something else")
	}
	if n := strings.Count(fresh, "the house asks 0.55 to 0.6, the book 0.4 to 0.6"); n < 2*len(report.Forms()) {
		t.Errorf("the change is said %d times in %d forms", n, len(report.Forms()))
	}
	if other := run("  - {clause: well_depth, least: 0.56, reason: other}\n", false); strings.Contains(other, "pupils stir") || !strings.Contains(other, "0.56") {
		t.Error("a result of another house was taken")
	}
}

// A house is a folder or a file; what is neither is refused with what to do.
func TestWhatIsNoHouse(t *testing.T) {
	empty := t.TempDir()
	for name, want := range map[string]string{filepath.Join(empty, "gone"): "there is no such file", empty: "it holds neither house.yaml nor a clause"} {
		if _, _, err := NewHouseReviewer(name); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", name, err)
		}
	}
	_, problems, err := NewHouseReviewer(demoFile)
	if err != nil || len(problems) != 1 || problems[0].Found != "a system file" {
		t.Errorf("a system file as house rules: %v %v", problems, err)
	}
}
