package corpus

import (
	"bytes"
	"context"
	"encoding/csv"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"dryfit/internal/marking"
	"dryfit/internal/survey"
	"dryfit/internal/system"
)

const marksFolder = "../../testdata/marking"

// classGuide is the guide of the class of Quarry Road with the marks that were changed by hand.
func classGuide(t testing.TB, r *Reviewer) Marking {
	t.Helper()
	read := func(name string) []byte {
		data, err := os.ReadFile(filepath.Join(marksFolder, name))
		if err != nil {
			t.Fatal(err)
		}
		return data
	}
	g, problems := marking.ReadGuide("guide.yaml", read("guide.yaml"), r.Book().Clauses(), survey.Catalogue())
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	changes, problems := marking.ReadModeration("moderation.yaml", read("class/moderation.yaml"), g)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return Marking{Guide: g, Changes: changes}
}

func markedClass(t testing.TB, folder string, how Marking, r *Reviewer, workers int) []*marking.Marked {
	t.Helper()
	class, _, err := Submissions(folder)
	if err != nil {
		t.Fatal(err)
	}
	var out []*marking.Marked
	if err := r.MarkClass(context.Background(), class, Batch{Workers: workers}, how, func(m *marking.Marked) error {
		out = append(out, m)
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	return out
}

// The marks of marks.csv were worked by hand; marks.md says how, and why marks are lost.
func TestTheClassGetsTheMarksWorkedByHand(t *testing.T) {
	r, err := NewReviewer()
	if err != nil {
		t.Fatal(err)
	}
	how := classGuide(t, r)
	data, err := os.ReadFile(filepath.Join(marksFolder, "marks.csv"))
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	class := markedClass(t, filepath.Join(marksFolder, "class"), how, r, 2)
	if len(class) != 12 || len(rows) != 13 {
		t.Fatalf("%d submissions, %d rows", len(class), len(rows)-1)
	}
	number := func(text string) float64 {
		x, err := strconv.ParseFloat(text, 64)
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	for i, m := range class {
		row := rows[i+1]
		if row[0] != m.Name {
			t.Fatalf("row of %s beside %s", row[0], m.Name)
		}
		for k, line := range m.Lines {
			if rows[0][k+1] != line.Item.ID || number(row[k+1]) != line.Marks {
				t.Errorf("%s, %s: %v, by hand %s %s\n%v", m.Name, line.Item.ID, line.Marks, rows[0][k+1], row[k+1], line.Reasons)
			}
		}
		last := row[len(m.Lines)+1:]
		if number(last[0]) != m.Sum || number(last[2]) != m.Total {
			t.Errorf("%s: sum %v, total %v, by hand %v", m.Name, m.Sum, m.Total, last)
		}
		if caps := ""; true {
			if len(m.Caps) > 0 {
				caps = marking.MarksNumber(m.Caps[0].Cap.Most)
			}
			if caps != last[1] {
				t.Errorf("%s: capped at %q, by hand %q", m.Name, caps, last[1])
			}
		}
	}
}

// The slips that were put into the class are named, and no others.
func TestTheSlipsOfTheClass(t *testing.T) {
	r, err := NewReviewer()
	if err != nil {
		t.Fatal(err)
	}
	got := map[string][]string{}
	for _, m := range markedClass(t, filepath.Join(marksFolder, "class"), classGuide(t, r), r, 2) {
		for _, line := range m.Lines {
			if line.Worked != nil {
				for _, s := range line.Worked.Slips {
					got[m.Name] = append(got[m.Name], line.Item.ID+": "+s.Name)
				}
			}
		}
	}
	want := map[string][]string{
		"02": {"ring-area: radius and diameter", "ring-area: a factor of 4"}, "03": {"flow: minutes and hours"}, "04": {"flow: gallons of the other country"},
		"08": {"solids-speed: size and bore of a pipe", "head-loss: a forgotten fitting"}, "09": {"feed: a factor of 10", "head-loss: Fanning and Darcy"},
		"10": {"overflow-rate: a factor of 1000"},
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("%v", got)
	}
}

// However many are marked at a time the marks are the same; a broken neighbour changes nothing.
func TestMarksDoNotHangOnTheOthers(t *testing.T) {
	r, err := NewReviewer()
	if err != nil {
		t.Fatal(err)
	}
	how := classGuide(t, r)
	folder := t.TempDir()
	for _, name := range []string{"01", "02"} {
		data, err := os.ReadFile(filepath.Join(marksFolder, "class", name+".yaml"))
		if err != nil {
			t.Fatal(err)
		}
		for _, to := range []string{name + ".yaml", "group-" + name + "/loop.yml"} {
			write(t, filepath.Join(folder, to), string(data))
		}
	}
	write(t, filepath.Join(folder, "broken.yaml"), "dryfit: 1\nvessels: [")
	write(t, filepath.Join(folder, "empty.json"), "")
	write(t, filepath.Join(folder, "other.yaml"), "shopping: [bread]\n")
	write(t, filepath.Join(folder, "guide.yaml"), "dryfit_guide: 1\n")
	write(t, filepath.Join(folder, "01.permits.yaml"), "permits: []\n")
	write(t, filepath.Join(folder, ".hidden.yaml"), "dryfit: 1\n")
	var first []string
	for _, workers := range []int{1, 3} {
		var names []string
		totals := map[string]float64{}
		for i, m := range markedClass(t, folder, how, r, workers) {
			if m.Number != i+1 || m.Fault != "" {
				t.Errorf("%+v", m)
			}
			names, totals[m.Name] = append(names, m.Name), m.Total
			if !m.Judged && (len(m.Problems) == 0 || m.Total != 0 || len(m.Gains) != 1) {
				t.Errorf("%s: %v, %v, %v", m.Name, m.Problems, m.Total, m.Gains)
			}
		}
		want := []string{"01", "02", "broken", "empty", "group-01/loop", "group-02/loop", "other"}
		if !slices.Equal(names, want) || totals["01"] != totals["group-01/loop"] || totals["02"] != totals["group-02/loop"] || totals["01"] == 0 {
			t.Errorf("%v, %v", names, totals)
		}
		if first == nil {
			first = names
		}
	}
}

// Two submissions that share inputs are shown with what they share, which the starter takes away; no pair has more.
func TestAlikePairs(t *testing.T) {
	r, err := NewReviewer()
	if err != nil {
		t.Fatal(err)
	}
	how := classGuide(t, r)
	data, err := os.ReadFile(filepath.Join(marksFolder, "starter.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	starter, _, _ := system.ReadAsFar("starter.yaml", data)
	if starter == nil {
		t.Fatal("the starter cannot be read")
	}
	counter := marking.NewCounter(how.Guide, starter.Document)
	for _, m := range markedClass(t, filepath.Join(marksFolder, "class"), how, r, 2) {
		counter.Add(m)
	}
	class := counter.Class("moderation.yaml", how.Changes)
	if len(class.Pairs) != 1 || class.Pairs[0].A.Name != "10" || class.Pairs[0].B.Name != "11" || len(class.Pairs[0].Agrees) < how.Guide.Alike {
		t.Errorf("%+v", class.Pairs)
	}
	for _, p := range class.Pairs {
		for _, one := range p.Agrees {
			if one.Others > 1 || one.Text == "" || strings.HasPrefix(one.Key, "name") {
				t.Errorf("%+v", one)
			}
		}
	}
}

// Copies are shown however many there are; files that would be called alike keep names of their own; what is no
// submission is counted and not marked.
func TestNamesAndCopiesInAClass(t *testing.T) {
	r, err := NewReviewer()
	if err != nil {
		t.Fatal(err)
	}
	how := classGuide(t, r)
	data, err := os.ReadFile(filepath.Join(marksFolder, "class", "02.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	for _, name := range []string{"a.yaml", "a.yml", "a.yaml.yaml", "b/loop.yaml", "c/loop.yaml"} {
		write(t, filepath.Join(folder, name), string(data))
	}
	for i, name := range []string{"01", "03", "07", "08", "09"} {
		other, err := os.ReadFile(filepath.Join(marksFolder, "class", name+".yaml"))
		if err != nil {
			t.Fatal(err)
		}
		write(t, filepath.Join(folder, "z"+strconv.Itoa(i)+".yaml"), string(other))
	}
	write(t, filepath.Join(folder, "marks.json"), "{\n  \"dryfit_marks\": 1}\n")
	write(t, filepath.Join(folder, "starter.yaml"), string(data))
	write(t, filepath.Join(folder, "late.txt"), "")
	class, passed, err := Submissions(folder, filepath.Join(folder, "starter.yaml"))
	if err != nil || passed != 2 {
		t.Errorf("%d passed over, %v", passed, err)
	}
	var names []string
	for _, h := range class {
		names = append(names, h.Name)
	}
	if want := []string{"a.yaml", "a.yaml.yaml", "a.yml", "b/loop", "c/loop", "z0", "z1", "z2", "z3", "z4"}; !slices.Equal(names, want) {
		t.Errorf("%v", names)
	}
	counter := marking.NewCounter(how.Guide, nil)
	if err := r.MarkClass(context.Background(), class, Batch{Workers: 2}, how, func(m *marking.Marked) error {
		counter.Add(m)
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	copies := 0
	for _, p := range counter.Class("", nil).Pairs {
		if p.A.Number <= 5 && p.B.Number <= 5 {
			copies++
		}
	}
	if copies != 10 {
		t.Errorf("%d of 10 pairs of five copies", copies)
	}
}

func write(t testing.TB, name, text string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}
