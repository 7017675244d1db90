package judge

import (
	"context"
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/open-policy-agent/opa/v1/ast"
	"github.com/open-policy-agent/opa/v1/topdown"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/working"
)

func TestSoundLoopMeetsEveryClause(t *testing.T) {
	b := theBook(t)
	all := judge(t, b, soundLoop().Ledger)
	heard := map[string]bool{}
	for _, j := range all {
		heard[j.Clause.ID] = true
		if j.Verdict != review.Met || len(j.Missing) > 0 {
			t.Errorf("%s of %s: %s, missing %v", j.Clause.ID, j.Subject, j.Verdict, j.Missing)
		}
	}
	for _, c := range b.Clauses() {
		if !heard[c.ID] {
			t.Errorf("clause %s judged nothing", c.ID)
		}
	}
}

func TestJudgementCarriesItsWorking(t *testing.T) {
	b := theBook(t)
	l := soundLoop()
	j := of(judge(t, b, l.Ledger), "well_depth", "settler")
	if j.Name != "lip_depth_fraction" || j.Fact || j.Title != "lip depth fraction" || j.Kind != quantity.Fraction || j.At != "/by/hand" {
		t.Errorf("got %+v", j)
	}
	if j.Value != working.Within(0.5057, 0.49, 0.52) || j.When == "" {
		t.Errorf("value %v in state %q", j.Value, j.When)
	}
	if j.Node == nil || j.Node.Address.State() != j.When || j.Node.Address.Name != j.Name {
		t.Errorf("the working is %v", j.Node)
	}
	if l := j.Limit; l.Name != "fraction" || l.Quantity != j.Name || *l.Least != 0.4 || *l.Most != 0.6 {
		t.Errorf("the limit is %+v", l)
	}
	j = of(judge(t, b, l.Ledger), "sharp_bend", "solids-run/2")
	if !j.Fact || j.Name != "opens_to_brush" || j.Word != "yes" || !slices.Equal(j.Wanted, []string{"yes"}) || j.On != "solids-run" || j.Node != nil {
		t.Errorf("got %+v", j)
	}
}

// The value is rounded for the comparison, as the limit is, and given back as it was.
func TestValuesAreComparedAsRounded(t *testing.T) {
	b := theBook(t)
	for _, c := range []struct {
		degrees float64
		want    review.Verdict
	}{{60, review.Met}, {60 + 1e-7, review.Met}, {60.001, review.NotMet}, {59.999, review.Met}} {
		l := soundLoop()
		l.Put("solids_lines", "second")
		l.Relate("bends_of", "second", "second/0")
		x := c.degrees * math.Pi / 180
		l.number("second/0", "turn", "always", working.Exactly(x))
		l.number("second/0", "bend_radius_ratio", "always", working.Exactly(1))
		l.word("second/0", "opens_to_brush", "no")
		j := of(judge(t, b, l.Ledger), "sharp_bend", "second/0")
		if j.Verdict != c.want || j.Value.X != x {
			t.Errorf("%v degrees: %s with %v, want %s", c.degrees, j.Verdict, j.Value.X, c.want)
		}
	}
}

func TestWorstStateGoverns(t *testing.T) {
	l := soundLoop()
	l.Put("running_gravity_lines", "return")
	l.number("return", "flow_reserve", "run_worst/low", working.Exactly(1.2))
	l.number("return", "flow_reserve", "run_worst/usual", working.Exactly(1.3))
	l.number("return", "flow_reserve", "run_worst/high", working.Exactly(1.6))
	l.number("return", "flow_reserve", "stopped", working.Exactly(0.1)) // not a case of the clause
	all := judge(t, theBook(t), l.Ledger)
	j := of(all, "throttle_reserve", "return")
	if j.Verdict != review.NotMet || j.Value.X != 1.2 || j.When != "run_worst, water low" {
		t.Errorf("got %s with %v in %q", j.Verdict, j.Value.X, j.When)
	}
	if j := of(all, "carries_flow", "return"); j.Verdict != review.Met || j.Value.X != 1.2 {
		t.Errorf("got %s with %v", j.Verdict, j.Value.X)
	}
}

func TestMissing(t *testing.T) {
	l := soundLoop()
	l.Put("radial_flow_settlers", "second", "third")
	l.gap("second", "lip_depth_fraction", "run_clean", "/vessels/second/well/lip_at")
	l.number("second", "lip_depth_fraction", "run_least", working.Exactly(0.5))
	l.gap("second", "lip_depth_fraction", "run_worst", "/vessels/second/well/lip_at")
	l.gap("second", "lip_depth_fraction", "stopped", "/not/asked/for")
	l.Put("mains_supplies", "shed")
	all := judge(t, theBook(t), l.Ledger)
	for _, c := range []struct {
		clause, subject string
		missing         []string
	}{
		{"well_depth", "second", []string{"/vessels/second/well/lip_at"}},
		{"well_depth", "third", []string{
			"nothing was worked out for the case run_clean",
			"nothing was worked out for the case run_least",
			"nothing was worked out for the case run_worst",
		}},
		{"residual_current", "shed", []string{"nothing was worked out for the case always"}},
	} {
		j := of(all, c.clause, c.subject)
		if j == nil || j.Verdict != review.Undetermined || !slices.Equal(j.Missing, c.missing) {
			t.Errorf("%s of %s: got %+v", c.clause, c.subject, j)
		}
	}
}

// No judgement may vanish and none may become met because something was taken out
// of the ledger: every single number and word is left out in turn.
func TestNothingIsMetByLeavingOut(t *testing.T) {
	b := theBook(t)
	full := soundLoop()
	before := judge(t, b, full.Ledger)
	nodes, facts := full.Nodes(), full.Facts()
	for skip := range len(nodes) + len(facts) {
		l := working.NewLedger()
		l.Sets, l.Relations = full.Sets, full.Relations
		for i, n := range nodes {
			if i != skip {
				l.Take(n.Address, working.Definition{Name: n.Address.Name, Kind: n.Kind}, n.At, n)
			}
		}
		for i, f := range facts {
			if len(nodes)+i != skip {
				l.Note(*f)
			}
		}
		after := judge(t, b, l)
		for _, j := range before {
			got := of(after, j.Clause.ID, j.Subject)
			if got == nil {
				t.Errorf("without %d: %s of %s is gone", skip, j.Clause.ID, j.Subject)
			} else if got.Verdict == review.NotMet || got.Verdict == review.DoesNotApply {
				t.Errorf("without %d: %s of %s turned %s", skip, j.Clause.ID, j.Subject, got.Verdict)
			}
		}
		if len(after) != len(before) {
			t.Errorf("without %d: %d judgements in place of %d", skip, len(after), len(before))
		}
	}
}

func TestSubjectsFarApartAreInOrder(t *testing.T) {
	b := theBook(t)
	var text [2]string
	for i := range text {
		l := soundLoop()
		l.Put("radial_flow_settlers", "b", "a")
		for _, j := range judge(t, b, l.Ledger) {
			text[i] += fmt.Sprintln(j.Clause.Chapter, j.Clause.ID, j.Subject)
		}
	}
	lines := strings.Split(strings.TrimSpace(text[0]), "\n")
	if !slices.IsSorted(lines) || text[0] != text[1] {
		t.Errorf("got\n%s\nthen\n%s", text[0], text[1])
	}
}

func TestManyAtATime(t *testing.T) {
	b := theBook(t)
	var wait sync.WaitGroup
	for range 8 {
		wait.Go(func() {
			for range 5 {
				got, _, err := b.Judge(context.Background(), soundLoop().Ledger)
				if err != nil || len(got) == 0 {
					t.Errorf("%d judgements, error %v", len(got), err)
				}
			}
		})
	}
	wait.Wait()
}

func TestInputHoldsWhatClausesReadAndNoMore(t *testing.T) {
	b := theBook(t)
	l := soundLoop()
	l.number("solids-run", "capacity", "run_worst", working.Exactly(0.001)) // shown and not read
	text, err := b.Input(l.Ledger)
	if err != nil {
		t.Fatal(err)
	}
	var in struct {
		Quantities map[string]struct {
			Name string
			Of   map[string]struct {
				At string
				In map[string][]map[string]any
			}
		}
		Facts, Sets, Relations map[string]any
		Limits                 map[string]map[string]map[string]map[string]float64
		Cases                  map[string]map[string][]string
	}
	if err := json.Unmarshal(text, &in); err != nil {
		t.Fatal(err)
	}
	if _, ok := in.Quantities["capacity"]; ok {
		t.Error("capacity is in the input though no clause reads it")
	}
	if got := in.Quantities["flow_reserve"].Of["solids-run"].In["run_worst"]; len(got) != 2 || got[0]["value"] != 4.28 || got[1]["when"] != "run_worst, water high" {
		t.Errorf("flow_reserve is %v", got)
	}
	if len(in.Sets) != 6 || len(in.Relations) != 2 || len(in.Facts) != 5 {
		t.Errorf("%d sets, %d relations, %d facts", len(in.Sets), len(in.Relations), len(in.Facts))
	}
	if got := in.Limits["lines"]["sharp_bend"]["turn"]["most"]; got != 1.0472 {
		t.Errorf("60 degrees went in as %v", got)
	}
	if got := in.Cases["settler"]["well_depth"]; !slices.Equal(got, []string{"run_clean", "run_least", "run_worst"}) {
		t.Errorf("the cases of well_depth are %v", got)
	}
}

func TestNamesOutsideTheCatalogueAreRefused(t *testing.T) {
	b := theBook(t)
	for name, spoil := range map[string]func(bench){
		"set settlers":     func(l bench) { l.Put("settlers", "settler") },
		"relation feeds":   func(l bench) { l.Relate("feeds", "a", "b") },
		"fact wet":         func(l bench) { l.word("settler", "wet", "yes") },
		"quantity lip_gap": func(l bench) { l.number("settler", "lip_gap", "always", working.Exactly(1)) },
	} {
		l := soundLoop()
		spoil(l)
		_, _, err := b.Judge(context.Background(), l.Ledger)
		if err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("%s: error %v", name, err)
		}
	}
}

func TestSixSignificantDigits(t *testing.T) {
	for x, want := range map[float64]string{
		0: "0", math.Copysign(0, -1): "0", 1.0 / 3: "0.333333", 1234567: "1.23457e+06",
		-2.7e-7: "-2.7e-07", 60 * math.Pi / 180: "1.0472", 1e300: "1e+300",
	} {
		if got := round(x); got != want {
			t.Errorf("%v became %s, want %s", x, got, want)
		}
	}
}

// What goes in is what the schema says, held against it by the validator that the Rego engine has.
func TestInputFitsItsSchema(t *testing.T) {
	b := theBook(t)
	l := soundLoop()
	l.gap("settler", "lip_depth_fraction", "stopped", "/vessels/settler/well/lip_at")
	l.Note(working.Fact{Subject: "shed", Name: "mains_power", At: "/mains", Missing: []string{"/pumps/main/supply"}})
	schema, err := ast.InterfaceToValue(b.names.schema(b.clauses...))
	if err != nil {
		t.Fatal(err)
	}
	fits := func(in ast.Value) bool {
		query := topdown.NewQuery(ast.MustParseBody(`doc = input[0]; schema = input[1]; json.match_schema(doc, schema, [true, _])`)).
			WithCompiler(ast.NewCompiler()).
			WithStrictBuiltinErrors(true).
			WithInput(ast.ArrayTerm(ast.NewTerm(in), ast.NewTerm(schema)))
		got, err := query.Run(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		return len(got) == 1
	}
	// Columns that no clause reads stay out of the input, and the schema types them all.
	for _, q := range catalogue().Quantities {
		b.reads.quantities[q.Name] = true
	}
	in, err := b.input(evidenceOf(l.Ledger))
	if err != nil {
		t.Fatal(err)
	}
	if !fits(in) {
		t.Errorf("the input does not fit its schema")
	}
	in.(ast.Object).Insert(text("mood"), text("good"))
	if fits(in) {
		t.Error("the schema takes anything")
	}
}
