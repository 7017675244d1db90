package judge

import (
	"context"
	"fmt"
	"io/fs"
	"path"
	"regexp"
	"strings"

	"github.com/open-policy-agent/opa/v1/ast"

	"dryfit/internal/review"
	"dryfit/internal/working"
)

// Examined is what there is to say of the clauses of a house before they are used.
type Examined struct {
	Clauses  []*review.Clause // those without a problem, by chapter and id
	Problems Problems
}

// Examine holds the clauses of a house to what is asked of those of the book: that they load, that
// they say what they ask, why, and where it comes from, that nothing is left to fill in, that an
// example breaks them, and that their tests hold, try what has to be tried, and reach every line.
func Examine(ctx context.Context, c working.Catalogue, book, house fs.FS) *Examined {
	trial, b, wrong := try(ctx, c, book, house)
	wrong = append(wrong, unfinished(house)...)
	wrong = append(wrong, trial.wrong()...)
	for _, o := range b.owns {
		wrong = append(wrong, o.unsaid()...)
		wrong = append(wrong, o.untested(trial.Tests)...)
	}
	out := &Examined{}
	out.Problems, _ = wrong.err().(Problems)
	bad := map[string]bool{}
	for _, p := range out.Problems {
		bad[p.File] = true
	}
	for _, o := range b.owns {
		if !bad[o.file] && !bad[testsOf(o.file)] {
			out.Clauses = append(out.Clauses, o.clause)
		}
	}
	sortClauses(out.Clauses)
	return out
}

// wrong is the tests that fail and the lines that none of them reached.
func (t *Trial) wrong() Problems {
	var wrong Problems
	for _, test := range t.Tests {
		if test.Why != "" {
			wrong = append(wrong, Problem{test.File, test.Row, test.Name + " fails, " + test.Why + "; put the test or the clause right"})
		}
	}
	for _, r := range t.Untried {
		wrong = append(wrong, Problem{r.File, r.From, r.String() + " never tried; write a test that needs it, or take it out"})
	}
	return wrong
}

// String is the rows in words.
func (r Rows) String() string {
	if r.From == r.To {
		return fmt.Sprintf("line %d is", r.From)
	}
	return fmt.Sprintf("lines %d to %d are", r.From, r.To)
}

// unsaid is what the words of a clause leave out that the clauses of the book say.
func (o *own) unsaid() Problems {
	var wrong Problems
	c, row := o.clause, o.module.Annotations[0].Location.Row
	say := func(format string, args ...any) {
		wrong = append(wrong, Problem{o.file, row, fmt.Sprintf(format, args...)})
	}
	if len(c.Example) == 0 {
		say("example is missing; under custom, list what breaks this clause in a sound file: example: [{at: /vessels/tank/height, value: 2 m}]")
	}
	if strength := string(c.Strength); !regexp.MustCompile(`\b` + strength + `\b`).MatchString(c.Title) {
		say("the title does not say %s, which is its strength; write what %s be", strength, strength)
	}
	return wrong
}

// untested is the tests that a clause lacks.
func (o *own) untested(all []Test) Problems {
	wanted := []string{"test_met", "test_just_inside", "test_just_outside", "test_missing"}
	if len(o.clause.Limits) == 0 {
		wanted = []string{"test_met", "test_not_met", "test_missing", "test_does_not_apply"}
	}
	tests, any := testsOf(o.file), false
	have := map[string]bool{}
	for _, t := range all {
		if t.File != tests {
			continue
		}
		any = true
		for _, w := range wanted {
			have[w] = have[w] || strings.HasPrefix(t.Name, w)
		}
	}
	var wrong Problems
	for _, w := range wanted {
		if any && !have[w] {
			wrong = append(wrong, Problem{File: tests, Text: "no test is called " + w + "; write one, its name may go on"})
		}
	}
	return wrong
}

// toFill is what a comment says where something is left to fill in.
const toFill = "to fill in"

// unfinished is the comments of a house that say that something is left to fill in, and the tests
// that stand beside no clause.
func unfinished(house fs.FS) Problems {
	files, err := regoFiles(house, true, 2*mostOwn)
	if err != nil {
		return Problems{{File: "folder of clauses", Text: err.Error()}}
	}
	var wrong Problems
	for _, file := range files {
		if clause := strings.TrimSuffix(file, "_test.rego") + ".rego"; isTest(file) {
			if _, err := fs.Stat(house, clause); err != nil {
				wrong = append(wrong, Problem{File: file, Text: "there is no clause beside these tests; write " + path.Base(clause) + ", or take them out"})
			}
		}
		for _, c := range commentsOf(house, file) {
			if _, what, found := strings.Cut(string(c.Text), toFill); found {
				text := toFill + ": " + strings.ReplaceAll(strings.Trim(what, " :\"'{}[]"), ";", ",")
				wrong = append(wrong, Problem{file, c.Location.Row, strings.TrimSuffix(text, ": ") + "; write it and take these words out"})
			}
		}
	}
	return wrong
}

// commentsOf is the comments of a file that can be parsed; of others the parser has its say.
func commentsOf(house fs.FS, file string) []*ast.Comment {
	var out []*ast.Comment
	_ = bounds{ownDeadline, ownHeap}.run(context.Background(), nameless, func(context.Context) error {
		if m, _ := parseFile(house, file, true, nil); m != nil {
			out = m.Comments
		}
		return nil
	})
	return out
}
