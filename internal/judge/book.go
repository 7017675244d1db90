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

// Limits on what the clauses of the book may take together.
const (
	deadline = 5 * time.Second // for loading, and for judging one ledger
	heap     = 512 << 20       // bytes that the heap may grow by meanwhile
)

// Book is every clause in force, ready to judge. It can be used by several
// goroutines at the same time.
type Book struct {
	names    names
	bounds   bounds                                 // of the clauses of the book together
	each     bounds                                 // of each clause of a house
	gathered func() (map[string]*ast.Module, error) // waits for clauses and reads of the book
	load     func() error                           // waits for all
	finished bool                                   // drafts are not in force
	housed   bool                                   // houses may add clauses to it
	clauses  []*review.Clause
	ready    map[string]ready // by the id of the clause
	owns     []*own           // clauses of houses, by folder and file
	wrong    Problems         // with clauses of houses, which do not load
	failed   []review.Failure // those clauses
	reads    reads
	store    storage.Store
	limits   *ast.Term // as Rego sees them
	cases    *ast.Term
}

// ready is a clause that can be judged by.
type ready struct {
	compiler *ast.Compiler
	query    ast.Body
}

// Load reads the folders of clauses and checks them. The first folder is the book,
// with its vocabulary; the others are house folders, which add clauses. The error
// is [Problems] with everything that is wrong, not only the first.
func Load(c working.Catalogue, book fs.FS, houses ...fs.FS) (*Book, error) {
	return load(c, bounds{deadline, heap}, bounds{ownDeadline, ownHeap}, book, houses...)
}

func load(c working.Catalogue, together, each bounds, book fs.FS, houses ...fs.FS) (*Book, error) {
	b := newBook(c, together, each, full, book, houses...)
	if err := b.load(); err != nil {
		return nil, err
	}
	return b, nil
}

// Open is a book in which [Load] is known to find nothing wrong, as a test holds for
// the one in the program. It does not wait for it, so that a file can be read meanwhile,
// and it does not look for the mistakes that only the compiler finds, which takes longer
// than all the rest. The clauses of houses are checked in full; those with mistakes are
// not judged by, and [Book.Judge] lists them as failed.
func Open(c working.Catalogue, book fs.FS, houses ...fs.FS) *Book {
	b := newBook(c, bounds{deadline, heap}, bounds{ownDeadline, ownHeap}, little, book, houses...)
	b.finished = true
	go b.load()
	return b
}

// newBook is a book that loads when it is first used.
func newBook(c working.Catalogue, together, each bounds, care care, book fs.FS, houses ...fs.FS) *Book {
	b := &Book{
		names: namesOf(c), store: inmem.New(), bounds: together, each: each, reads: newReads(),
		housed: len(houses) > 0, ready: map[string]ready{},
	}
	what := func() string { return "loading the clauses" }
	b.gathered = sync.OnceValues(func() (map[string]*ast.Module, error) {
		out := make(chan map[string]*ast.Module, 1)
		err := together.run(context.Background(), what, func(context.Context) error {
			modules, wrong := b.gather(parse(book, false))
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
		if err := together.run(context.Background(), what, func(context.Context) error { return b.compile(modules, care) }); err != nil {
			return err
		}
		b.wrong = b.join(houses, vocabulary(modules))
		sortClauses(b.clauses)
		b.limits, b.cases = inForce(b.clauses)
		if care == full {
			return b.wrong.err()
		}
		return nil
	})
	return b
}

// gather takes the clauses of the book out of its files and tells all that is wrong with them.
func (b *Book) gather(sources []source, wrong Problems) (map[string]*ast.Module, Problems) {
	modules := map[string]*ast.Module{}
	ids := map[string]string{}
	for _, s := range sources {
		modules[s.file] = s.module
		r := newReads()
		wrong = append(wrong, s.hold(r)...)
		b.reads.join(r)
		if s.vocabulary() {
			continue
		}
		clause, problems := s.clause(b.names)
		r.tell(clause, b.names)
		wrong = append(wrong, problems...)
		if other, twice := ids[clause.ID]; twice && clause.ID != "" {
			wrong = append(wrong, Problem{File: s.file, Text: fmt.Sprintf("there is a clause %s already, in %s", clause.ID, other)})
		}
		ids[clause.ID] = s.file
		b.clauses = append(b.clauses, clause)
	}
	sortClauses(b.clauses)
	return modules, wrong
}

// vocabulary is the modules that clauses are written in.
func vocabulary(modules map[string]*ast.Module) map[string]*ast.Module {
	out := map[string]*ast.Module{}
	for name, m := range modules {
		if (source{module: m}).vocabulary() {
			out[name] = m
		}
	}
	return out
}

// sortClauses puts clauses in order, by chapter and id.
func sortClauses(all []*review.Clause) {
	slices.SortFunc(all, func(x, y *review.Clause) int {
		return cmp.Or(strings.Compare(x.Chapter, y.Chapter), strings.Compare(x.ID, y.ID))
	})
}

// Clauses is every clause in force, by chapter and id.
func (b *Book) Clauses() []*review.Clause {
	if b.housed {
		b.must()
	} else if _, err := b.gathered(); err != nil {
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
