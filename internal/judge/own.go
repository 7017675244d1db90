package judge

import (
	"context"
	"fmt"
	"io/fs"
	"path"
	"regexp"
	"strings"
	"time"

	"github.com/open-policy-agent/opa/v1/ast"

	"dryfit/internal/review"
)

// Limits on what one clause of a house may take, once while it loads and once for every
// loop that is judged by it.
const (
	ownDeadline = time.Second
	ownHeap     = 256 << 20 // bytes that the heap may grow by meanwhile
	mostOwn     = 200       // clauses of a house
)

// own is one clause of a house. It is compiled with the vocabulary and with nothing else,
// and judged by itself: whatever is wrong with it touches neither the book nor another clause.
type own struct {
	file   string
	module *ast.Module // as it was parsed
	clause *review.Clause
	ready
	reads
	wrong Problems
}

// join adds the clauses of the houses to those of the book. What is wrong with them is
// returned; the clauses that it is wrong with stay out of force, and are listed as failed.
func (b *Book) join(houses []fs.FS, vocabulary map[string]*ast.Module) (wrong Problems) {
	ids := map[string]string{}
	for _, c := range b.clauses {
		ids[c.ID] = "the book"
	}
	for _, house := range houses {
		files, err := regoFiles(house, false, mostOwn)
		if err != nil {
			files, wrong = nil, append(wrong, b.refuse("house", Problems{{File: "folder of clauses", Text: err.Error()}})...)
		}
		for _, file := range files {
			o := b.alone(house, file, vocabulary)
			if other := ids[o.clause.ID]; other != "" && o.clause.ID != "" {
				o.wrong = append(o.wrong, Problem{File: file, Text: fmt.Sprintf("there is a clause %s already, in %s; give this one and its file another name", o.clause.ID, other)})
			}
			if b.finished && len(o.wrong) == 0 && strings.Contains(o.clause.Title+o.clause.Why, toFill) {
				o.wrong = append(o.wrong, Problem{File: file, Row: 1, Text: "it is a draft, which is not in force before it is finished; write what says `" + toFill + "`"})
			}
			if len(o.wrong) > 0 {
				wrong = append(wrong, b.refuse(strings.TrimSuffix(path.Base(file), ".rego"), o.wrong)...)
				continue
			}
			ids[o.clause.ID] = file
			b.clauses = append(b.clauses, o.clause)
			b.ready[o.clause.ID] = o.ready
			b.reads.join(o.reads)
			b.owns = append(b.owns, o)
		}
	}
	return wrong
}

// refuse lists a clause as failed, with the first of what is wrong with it.
func (b *Book) refuse(id string, wrong Problems) Problems {
	wrong, _ = wrong.err().(Problems)
	why := "it does not load: " + oneLine(wrong[0].String())
	if more := len(wrong) - 1; more > 0 {
		why += fmt.Sprintf(" (and %d more)", more)
	}
	b.failed = append(b.failed, review.Failure{Clause: id, Why: why})
	return wrong
}

// alone loads one file of a house within its bounds.
func (b *Book) alone(house fs.FS, file string, vocabulary map[string]*ast.Module) *own {
	out := make(chan *own, 1)
	err := b.each.run(context.Background(), nameless, func(context.Context) error {
		o := &own{file: file, clause: &review.Clause{}}
		b.stand(o, house, vocabulary)
		out <- o
		return nil
	})
	if err != nil {
		return &own{file: file, clause: &review.Clause{}, wrong: Problems{{File: file, Text: err.Error()}}}
	}
	return <-out
}

// stand parses, checks and compiles a file of a house.
func (b *Book) stand(o *own, house fs.FS, vocabulary map[string]*ast.Module) {
	s := source{file: o.file, house: true}
	if s.module, o.wrong = parseFile(house, o.file, false, capabilities()); s.module == nil {
		return
	}
	o.module, o.reads = s.module, newReads()
	held := s.hold(o.reads)
	o.clause, o.wrong = s.clause(b.names)
	if o.wrong = append(o.wrong, held...); o.clause.ID == "" || len(held) > 0 {
		return
	}
	o.reads.tell(o.clause, b.names)
	var schemas *ast.SchemaSet // without sound words there are no limits to type by
	if len(o.wrong) == 0 {
		schemas = b.names.only(o.reads).schemas(o.clause)
	}
	modules := map[string]*ast.Module{"the clause": s.module}
	for name, m := range vocabulary {
		modules[name] = m
	}
	var err error
	if o.compiler, err = compiled(modules, full, schemas); err == nil {
		o.query, err = prepare(o.compiler, o.clause)
	}
	o.wrong = append(o.wrong, problemsIn(o.file, err)...)
}

// id is what a chapter and a clause may be called: they stand in names of files and in output.
var id = regexp.MustCompile(`^[a-z][a-z0-9_]{0,47}$`)
