package judge

import (
	"cmp"
	"context"
	"fmt"
	"io/fs"
	"slices"
	"strings"
	"sync"
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
	bounds   bounds
	gathered func() (map[string]*ast.Module, error) // waits for clauses and reads
	load     func() error                           // waits for all
	clauses  []*review.Clause
	queries  []ast.Body // beside clauses
	reads    reads
	compiler *ast.Compiler
	store    storage.Store
	limits   *ast.Term // as Rego sees them
	cases    *ast.Term
}

// Load reads the folders of clauses and checks them. The first folder is the book,
// with its vocabulary; the others are house folders, which add clauses. The error
// is [Problems] with everything that is wrong, not only the first.
func Load(c working.Catalogue, folders ...fs.FS) (*Book, error) {
	return load(c, bounds{deadline, heap}, folders...)
}

func load(c working.Catalogue, within bounds, folders ...fs.FS) (*Book, error) {
	b := newBook(c, within, full, folders...)
	if err := b.load(); err != nil {
		return nil, err
	}
	return b, nil
}

// Open is a book in which [Load] is known to find nothing wrong, as a test holds for
// the one in the program. It does not wait for it, so that a file can be read meanwhile,
// and it does not look for the mistakes that only the compiler finds, which takes longer
// than all the rest.
func Open(c working.Catalogue, book fs.FS) *Book {
	b := newBook(c, bounds{deadline, heap}, little, book)
	go b.load()
	return b
}

// newBook is a book that loads when it is first used.
func newBook(c working.Catalogue, within bounds, care care, folders ...fs.FS) *Book {
	b := &Book{names: namesOf(c), store: inmem.New(), bounds: within, reads: newReads()}
	what := func() string { return "loading the clauses" }
	b.gathered = sync.OnceValues(func() (map[string]*ast.Module, error) {
		out := make(chan map[string]*ast.Module, 1)
		err := within.run(context.Background(), what, func(context.Context) error {
			modules, wrong := b.gather(parse(folders, false))
			out <- modules
			return wrong.err()
		})
		if err != nil {
			return nil, err
		}
		return <-out, nil
	})
	b.load = sync.OnceValue(func() error {
		modules, err := b.gathered()
		if err != nil {
			return err
		}
		return within.run(context.Background(), what, func(context.Context) error { return b.compile(modules, care) })
	})
	return b
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
func (b *Book) Clauses() []*review.Clause {
	if _, err := b.gathered(); err != nil {
		panic(fault(err))
	}
	return b.clauses
}

// must waits until the book is loaded.
func (b *Book) must() {
	if err := b.load(); err != nil {
		panic(fault(err))
	}
}

// fault is what is said when a book that was opened as known does not load after all:
// a mistake of the program, not of its user.
func fault(err error) string { return "judge: the book does not load: " + err.Error() }
