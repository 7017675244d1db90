package judge

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"
	"time"

	"github.com/open-policy-agent/opa/v1/ast"
	"github.com/open-policy-agent/opa/v1/cover"
	"github.com/open-policy-agent/opa/v1/storage/inmem"

	"dryfit/internal/working"
)

// Trial is what came of the Rego tests of clauses.
type Trial struct {
	Tests   []Test // by file and row
	Untried []Rows // that no test reached
}

// Test is one rule of a test file whose name begins with test_.
type Test struct {
	File string
	Row  int
	Name string
	Why  string // it failed; empty where it holds
}

// Rows is part of a file.
type Rows struct {
	File     string
	From, To int
}

// Sound says that every test holds and every line was tried.
func (t *Trial) Sound() bool {
	return len(t.Untried) == 0 && !slices.ContainsFunc(t.Tests, func(t Test) bool { return t.Why != "" })
}

// tryDeadline is how long the tests of one clause of a house may take together. Their memory
// is bounded as that of the clause is.
const tryDeadline = 5 * time.Second

// Try runs the tests that stand beside the clauses of a house, those of each clause by
// themselves, with the limits and cases in force as data. The problems are what keeps clauses
// or tests from loading; what loads is tried all the same.
func Try(ctx context.Context, c working.Catalogue, book, house fs.FS) (*Trial, Problems) {
	all, _, wrong := try(ctx, c, book, house)
	wrong, _ = wrong.err().(Problems)
	return all, wrong
}

func try(ctx context.Context, c working.Catalogue, book, house fs.FS) (*Trial, *Book, Problems) {
	b := newBook(c, bounds{deadline, heap}, bounds{ownDeadline, ownHeap}, little, book, house)
	b.must()
	modules, _ := b.gathered() // must has seen its error
	wrong := b.wrong
	all := &Trial{}
	for _, o := range b.owns {
		tests := testsOf(o.file)
		if _, err := fs.Stat(house, tests); errors.Is(err, fs.ErrNotExist) {
			wrong = append(wrong, Problem{File: o.file, Text: "it has no tests; write " + path.Base(tests) + " beside it"})
			continue
		}
		t, problems := b.tryWithin(ctx, bounds{tryDeadline, ownHeap}, o, house, tests, vocabulary(modules))
		all.Tests, all.Untried, wrong = append(all.Tests, t.Tests...), append(all.Untried, t.Untried...), append(wrong, problems...)
	}
	return all, b, wrong
}

// testsOf is the file of tests that stands beside a clause.
func testsOf(file string) string { return strings.TrimSuffix(file, ".rego") + "_test.rego" }

// tryWithin runs the tests of one clause of a house within bounds.
func (b *Book) tryWithin(ctx context.Context, within bounds, o *own, house fs.FS, tests string, vocabulary map[string]*ast.Module) (*Trial, Problems) {
	out := make(chan *Trial, 1)
	err := within.run(ctx, nameless, func(ctx context.Context) error {
		module, wrong := parseFile(house, tests, true, nil)
		if module == nil {
			return wrong
		}
		if want := "house." + o.clause.Chapter + "." + o.clause.ID + "_test"; module.Package.Path.String() != "data."+want {
			return Problems{{tests, module.Package.Location.Row, "the package of these tests has another name; write package " + want}}
		}
		modules := map[string]*ast.Module{o.file: o.module, tests: module}
		for name, m := range vocabulary {
			modules[name] = m
		}
		t, err := b.try(ctx, modules, ofTests(), o.file)
		out <- t
		return err
	})
	if err != nil {
		return &Trial{}, problemsIn(tests, err)
	}
	return <-out, nil
}

// ofTests is the language of tests of a house: that of clauses, with what joins small inputs
// out of parts.
func ofTests() *ast.Capabilities {
	c, all := capabilities(), ast.CapabilitiesForThisVersion()
	for _, more := range all.Builtins {
		if more.Name == "object.union" || more.Name == "array.concat" {
			c.Builtins = append(c.Builtins, more)
		}
	}
	return c
}

// try runs the tests in modules and sees which lines of the measured files they reach.
func (b *Book) try(ctx context.Context, modules map[string]*ast.Module, language *ast.Capabilities, measured ...string) (*Trial, error) {
	compiler := ast.NewCompiler().WithCapabilities(language).WithDefaultRegoVersion(ast.RegoV1).WithSchemas(b.names.schemas(b.clauses...))
	if compiler.Compile(modules); compiler.Failed() {
		return nil, compilerProblems("", compiler.Errors).err()
	}
	data := map[string]any{}
	for name, term := range map[string]*ast.Term{"limits": b.limits, "cases": b.cases} {
		x, err := ast.JSON(term.Value)
		if err != nil {
			return nil, fmt.Errorf("the %s in force: %w", name, err)
		}
		data[name] = x
	}
	store, reached, out := inmem.NewFromObject(data), cover.New(), &Trial{}
	for _, file := range sorted(modules) {
		seen := map[string]bool{}
		for _, rule := range modules[file].Rules {
			name := rule.Head.Name.String()
			if !isTest(file) || !strings.HasPrefix(name, "test_") {
				continue
			}
			test := Test{File: file, Row: rule.Location.Row, Name: name}
			query := ast.NewBody(ast.Equality.Expr(ast.NewTerm(answers), ast.NewTerm(rule.Ref())))
			got, err := evaluate(ctx, ready{compiler, query}, store, ast.NewObject(), reached)
			switch {
			case ctx.Err() != nil:
				return nil, context.Cause(ctx)
			case seen[name]:
				test.Why = "there is a test of this name already; give it another"
			case err != nil:
				test.Why = oneLine(err.Error())
			case got == nil || got.Value.Compare(ast.Boolean(true)) != 0:
				test.Why = "what it says is not so"
			}
			seen[name] = true
			out.Tests = append(out.Tests, test)
		}
	}
	files := map[string]*ast.Module{}
	for _, file := range measured {
		files[file] = modules[file]
	}
	report := reached.Report(files)
	for _, file := range measured {
		for _, r := range report.Files[file].NotCovered {
			out.Untried = append(out.Untried, Rows{file, r.Start.Row, r.End.Row})
		}
	}
	out.Untried = slices.Compact(out.Untried) // a row that is not reached in two places
	return out, nil
}
