package judge

import (
	"testing"

	"github.com/open-policy-agent/opa/v1/ast"

	"dryfit/internal/survey"
	"dryfit/rules"
)

// TestRego runs the tests that stand beside the vocabulary and the clauses, with
// the limits and cases in force as data, and wants every line of them covered.
func TestRego(t *testing.T) {
	b, err := Load(survey.Catalogue(), rules.Book)
	if err != nil {
		t.Fatal(err)
	}
	sources, wrong := parse(rules.Book, true)
	if err := wrong.err(); err != nil {
		t.Fatal(err)
	}
	all := map[string]*ast.Module{}
	var measured []string
	for _, s := range sources {
		all[s.file] = s.module
		if !s.test {
			measured = append(measured, s.file)
		}
	}
	trial, err := b.try(t.Context(), all, ast.CapabilitiesForThisVersion(), measured...)
	if err != nil {
		t.Fatal(err)
	}
	ran := map[string]int{}
	for _, test := range trial.Tests {
		ran[test.File]++
		if test.Why != "" {
			t.Errorf("%s:%d %s failed: %s", test.File, test.Row, test.Name, test.Why)
		}
	}
	for _, file := range measured {
		if ran[testsOf(file)] < 4 {
			t.Errorf("%s: met, just inside, just outside and missing each want a test beside it", file)
		}
	}
	for _, r := range trial.Untried {
		t.Errorf("%s: rows %d to %d are not reached by a test", r.File, r.From, r.To)
	}
	if len(trial.Tests) < 4*len(measured) {
		t.Errorf("%d tests of %d files", len(trial.Tests), len(measured))
	}
}
