package judge

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"runtime"
	"slices"
	"strings"

	"github.com/open-policy-agent/opa/v1/ast"
)

// How much a book may hold. The largest clause of ours has 4 kB.
const (
	mostBytes = 64 << 10 // of a file
	mostFiles = 2000     // of a book with its tests
)

// source is one file of clauses or of the vocabulary.
type source struct {
	file   string
	module *ast.Module // parsed; nil if it cannot be
	house  bool        // of a house, not of the book
	test   bool
}

// regoFiles is the names of the Rego files below a folder, at most so many of them.
func regoFiles(folder fs.FS, tests bool, most int) ([]string, error) {
	var names []string
	err := fs.WalkDir(folder, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || path.Ext(name) != ".rego" || isTest(name) && !tests {
			return err
		}
		if len(names) == most {
			return fmt.Errorf("it holds more than %d files", most)
		}
		names = append(names, name)
		return nil
	})
	if err != nil {
		return nil, fmt.Errorf("cannot be read: %w", err)
	}
	return names, nil
}

// isTest says that a file holds the tests of the clause beside it.
func isTest(name string) bool { return strings.HasSuffix(name, "_test.rego") }

// parse reads every Rego file of the book with its vocabulary.
func parse(book fs.FS, tests bool) ([]source, Problems) {
	names, err := regoFiles(book, tests, mostFiles)
	if err != nil {
		return nil, Problems{{File: "folder of clauses", Text: err.Error()}}
	}
	all, problems := make([]source, len(names)), make([]Problems, len(names))
	language := capabilities()
	var wrong Problems
	err = newTurns(len(all), runtime.GOMAXPROCS(0)).take(func(i int) error {
		all[i] = source{file: names[i], test: isTest(names[i])}
		return guarded(func() string { return names[i] }, func() error {
			all[i].module, problems[i] = parseFile(book, names[i], all[i].test, language)
			return nil
		})
	})
	if err != nil {
		wrong = append(wrong, Problem{File: "folder of clauses", Text: err.Error()})
	}
	wrong = append(wrong, slices.Concat(problems...)...)
	return slices.DeleteFunc(all, func(s source) bool { return s.module == nil }), wrong
}

func parseFile(folder fs.FS, name string, test bool, language *ast.Capabilities) (*ast.Module, Problems) {
	info, err := fs.Stat(folder, name)
	if err != nil {
		return nil, Problems{{File: name, Text: "cannot be read: " + err.Error()}}
	}
	if !info.Mode().IsRegular() || info.Size() > mostBytes {
		return nil, Problems{{File: name, Text: fmt.Sprintf("is no plain file of at most %d bytes; split it into one clause a file", mostBytes)}}
	}
	text, err := fs.ReadFile(folder, name)
	if err != nil {
		return nil, Problems{{File: name, Text: "cannot be read: " + err.Error()}}
	}
	options := ast.ParserOptions{ProcessAnnotation: true, RegoVersion: ast.RegoV1}
	if !test {
		options.Capabilities = language
	}
	module, err := ast.ParseModuleWithOpts(name, string(text), options)
	if err != nil {
		return nil, compilerProblems(name, err)
	}
	return module, nil
}

// problemsIn is an error as what is wrong with a file.
func problemsIn(file string, err error) Problems {
	var list Problems
	switch {
	case err == nil:
		return nil
	case errors.As(err, &list):
		return list
	}
	return Problems{{File: file, Text: err.Error()}}
}

// compilerProblems is what the parser or the compiler of Rego has to say.
func compilerProblems(file string, err error) Problems {
	var list ast.Errors
	var one *ast.Error
	if errors.As(err, &one) {
		list = ast.Errors{one}
	} else if !errors.As(err, &list) {
		return Problems{{File: file, Text: err.Error()}}
	}
	var out Problems
	for _, e := range list {
		p := Problem{File: file, Text: oneLine(e.Message)}
		if name, ok := strings.CutPrefix(e.Message, "undefined function "); ok {
			p.Text = forbidden(name)
		}
		if e.Location != nil {
			p.File, p.Row = e.Location.File, e.Location.Row
		}
		if d, ok := e.Details.(*ast.RefErrInvalidDetail); ok && len(d.OneOf) > 0 && d.Pos < len(d.Ref) {
			p.Text = misspelt(d)
		}
		out = append(out, p)
	}
	return out
}

// forbidden says of a function that clauses do not have why they do not.
func forbidden(name string) string {
	for _, b := range ast.CapabilitiesForThisVersion().Builtins {
		if b.Name == name {
			return "a clause may not call " + name + ", which reaches outside or builds what has no end; compare and count what input holds"
		}
	}
	return "there is no function " + name + "; data.vocab has held, asked, any_of, all_of, excused and on"
}

// misspelt says which name of a reference is not known.
func misspelt(d *ast.RefErrInvalidDetail) string {
	written, ok := d.Ref[d.Pos].Value.(ast.String)
	if !ok {
		return "there is nothing at " + d.Ref.String()
	}
	var known []string
	for _, v := range d.OneOf {
		if s, ok := v.(ast.String); ok {
			known = append(known, string(s))
		}
	}
	return unknown("name", string(written), known) + " in " + d.Ref[:d.Pos+1].String()
}
