package judge

import (
	"cmp"
	"context"
	"fmt"
	"io/fs"
	"slices"
	"strings"
	"time"

	"github.com/open-policy-agent/opa/v1/ast"
	"github.com/open-policy-agent/opa/v1/storage"
	"github.com/open-policy-agent/opa/v1/storage/inmem"

	"dryfit/internal/review"
	"dryfit/internal/working"
)

// Limits on what the clauses may take together.
const (
	deadline = 5 * time.Second // for loading, and for judging one ledger
	heap     = 512 << 20       // bytes that the heap may grow by meanwhile
)

// Book is every clause in force, ready to judge. It can be used by several
// goroutines at the same time.
type Book struct {
	names    names
	clauses  []*review.Clause
	queries  []query // beside clauses
	reads    reads
	compiler *ast.Compiler
	store    storage.Store
	bounds   bounds
}

// Load reads the folders of clauses and checks them. The first folder is the book,
// with its vocabulary; the others are house folders, which add clauses. The error
// is [Problems] with everything that is wrong, not only the first.
func Load(c working.Catalogue, folders ...fs.FS) (*Book, error) {
	return load(c, bounds{deadline, heap}, folders...)
}

func load(c working.Catalogue, within bounds, folders ...fs.FS) (*Book, error) {
	b := &Book{names: namesOf(c), store: inmem.New(), bounds: within, reads: newReads()}
	what := func() string { return "loading the clauses" }
	err := within.run(context.Background(), what, func(context.Context) error {
		modules, wrong := b.gather(parse(folders, false))
		if err := wrong.err(); err != nil {
			return err
		}
		return b.compile(modules)
	})
	if err != nil {
		return nil, err
	}
	return b, nil
}

// gather takes the clauses out of the files and tells all that is wrong with them.
func (b *Book) gather(sources []source, wrong Problems) (map[string]*ast.Module, Problems) {
	modules := map[string]*ast.Module{}
	ids := map[string]string{}
	for _, s := range sources {
		if modules[s.file] != nil {
			wrong = append(wrong, Problem{File: s.file, Text: "there are two files of this name; a house clause has a name of its own"})
			continue
		}
		modules[s.file] = s.module
		r := newReads()
		wrong = append(wrong, s.hold(r)...)
		b.reads.join(r)
		if !s.house && s.module.Package.Path.String() == "data.vocab" {
			continue
		}
		clause, problems := s.clause(b.names)
		clause.Asks = r.asks(b.names)
		wrong = append(wrong, problems...)
		if other, twice := ids[clause.ID]; twice && clause.ID != "" {
			wrong = append(wrong, Problem{File: s.file, Text: fmt.Sprintf("there is a clause %s already, in %s", clause.ID, other)})
		}
		ids[clause.ID] = s.file
		b.clauses = append(b.clauses, clause)
	}
	slices.SortFunc(b.clauses, func(x, y *review.Clause) int {
		return cmp.Or(strings.Compare(x.Chapter, y.Chapter), strings.Compare(x.ID, y.ID))
	})
	return modules, wrong
}

// Clauses is every clause in force, by chapter and id.
func (b *Book) Clauses() []*review.Clause { return b.clauses }

func (b *Book) compile(modules map[string]*ast.Module) error {
	b.compiler = ast.NewCompiler().
		WithCapabilities(capabilities()).
		WithSchemas(b.schemas()).
		WithStrict(true).
		WithDefaultRegoVersion(ast.RegoV1)
	b.compiler.Compile(modules)
	if b.compiler.Failed() {
		return compilerProblems("", b.compiler.Errors).err()
	}
	for _, c := range b.clauses {
		q, err := b.prepare(c)
		if err != nil {
			return err
		}
		b.queries = append(b.queries, q)
	}
	return nil
}
