package judge

import (
	"context"
	"fmt"
	"os"
	"testing"

	"dryfit/internal/survey"
	"dryfit/internal/system"
	"dryfit/internal/working"
	"dryfit/rules"
)

func BenchmarkLoad(b *testing.B) {
	for b.Loop() {
		if _, err := Load(catalogue(), firstSeven); err != nil {
			b.Fatal(err)
		}
	}
}

// The book of the program, with all that Load checks.
func BenchmarkLoadTheBook(b *testing.B) {
	for b.Loop() {
		if _, err := Load(survey.Catalogue(), rules.Book); err != nil {
			b.Fatal(err)
		}
	}
}

// The same as it is known to be sound.
func BenchmarkOpenTheBook(b *testing.B) {
	for b.Loop() {
		Open(survey.Catalogue(), rules.Book).must()
	}
}

// The same with the clauses of a house, which are checked in full.
func BenchmarkOpenTheBookWithAHouse(b *testing.B) {
	house := quarryRoad(b)
	for b.Loop() {
		Open(survey.Catalogue(), rules.Book, house).must()
	}
}

func BenchmarkJudgeTheDemo(b *testing.B) {
	book := Open(survey.Catalogue(), rules.Book)
	l := surveyed(b, "quarry-road.yaml")
	for b.Loop() {
		if _, _, err := book.Judge(context.Background(), l); err != nil {
			b.Fatal(err)
		}
	}
}

// surveyed is what is worked out about a system file of testdata.
func surveyed(t testing.TB, name string) *working.Ledger {
	t.Helper()
	data, err := os.ReadFile("../../testdata/systems/" + name)
	if err != nil {
		t.Fatal(err)
	}
	s, problems := system.Read(name, data)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return survey.Survey(s)
}

// A medium loop: 12 lines with 8 bends each, 6 settlers, five values in each of three cases.
func BenchmarkJudge(b *testing.B) {
	book, err := Load(catalogue(), firstSeven)
	if err != nil {
		b.Fatal(err)
	}
	l := soundLoop()
	for i := range 12 {
		line := fmt.Sprintf("line-%d", i)
		l.Put("solids_lines", line)
		l.Put("running_gravity_lines", line)
		for j := range 8 {
			bend := fmt.Sprintf("%s/%d", line, j)
			l.Relate("bends_of", line, bend)
			l.number(bend, "turn", "always", working.Exactly(float64(j)*0.3))
			l.number(bend, "bend_radius_ratio", "always", working.Within(0.9, 0.7, 1.1))
			l.word(bend, "opens_to_brush", "no")
		}
		for k := range 5 {
			l.number(line, "flow_reserve", fmt.Sprintf("run_worst/%d", k), working.Exactly(1.2+float64(k)/10))
		}
	}
	for i := range 6 {
		settler := fmt.Sprintf("settler-%d", i)
		l.Put("radial_flow_settlers", settler)
		for _, name := range []string{"run_clean", "run_least", "run_worst"} {
			for k := range 5 {
				l.number(settler, "lip_depth_fraction", fmt.Sprintf("%s/%d", name, k), working.Exactly(0.45+float64(k)/50))
			}
		}
	}
	for b.Loop() {
		if _, _, err := book.Judge(context.Background(), l.Ledger); err != nil {
			b.Fatal(err)
		}
	}
}
