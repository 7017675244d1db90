package judge

import (
	"context"
	"io/fs"
	"strings"
	"testing"
	"time"

	"github.com/open-policy-agent/opa/v1/ast"
	"github.com/open-policy-agent/opa/v1/cover"
	"github.com/open-policy-agent/opa/v1/storage"
	"github.com/open-policy-agent/opa/v1/storage/inmem"
	"github.com/open-policy-agent/opa/v1/tester"

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
	sources, wrong := parse([]fs.FS{rules.Book}, true)
	if err := wrong.err(); err != nil {
		t.Fatal(err)
	}
	all, measured := map[string]*ast.Module{}, map[string]*ast.Module{}
	for _, s := range sources {
		all[s.file] = s.module
		if !s.test {
			measured[s.file] = s.module
		}
	}
	data := map[string]any{}
	for name, term := range map[string]*ast.Term{"limits": b.limits, "cases": b.cases} {
		x, err := ast.JSON(term.Value)
		if err != nil {
			t.Fatal(err)
		}
		data[name] = x
	}
	ctx := context.Background()
	store := inmem.NewFromObject(data)
	txn := storage.NewTransactionOrDie(ctx, store)
	defer store.Abort(ctx, txn)
	coverage := cover.New()
	results, err := tester.NewRunner().
		SetCompiler(ast.NewCompiler().WithSchemas(b.schemas()).WithDefaultRegoVersion(ast.RegoV1)).
		SetStore(store).
		SetModules(all).
		SetTimeout(30*time.Second).
		RaiseBuiltinErrors(true).
		SetCoverageQueryTracer(coverage).
		RunTests(ctx, txn)
	if err != nil {
		t.Fatal(err)
	}
	ran := map[string]int{}
	for r := range results {
		ran[r.Location.File]++
		if r.Fail || r.Error != nil || r.Skip {
			t.Errorf("%s:%d %s failed: %v", r.Location.File, r.Location.Row, r.Name, r.Error)
		}
	}
	report := coverage.Report(measured)
	for file := range measured {
		if ran[strings.TrimSuffix(file, ".rego")+"_test.rego"] < 4 {
			t.Errorf("%s: met, just inside, just outside and missing each want a test beside it", file)
		}
		covered := report.Files[file]
		if covered == nil || covered.CoveredLines == 0 {
			t.Errorf("%s is not reached by its tests", file)
			continue
		}
		for _, r := range covered.NotCovered {
			t.Errorf("%s: rows %d to %d are not reached by a test", file, r.Start.Row, r.End.Row)
		}
	}
}
