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
	house  bool        // from a house folder, not from the book
	test   bool
}

// parse reads every Rego file below the folders. The first one holds the book
// with its vocabulary; the others may only add clauses.
func parse(folders []fs.FS, tests bool) ([]source, Problems) {
	var all []source
	var from []fs.FS // beside all
	var wrong Problems
	for i, folder := range folders {
		err := fs.WalkDir(folder, ".", func(name string, d fs.DirEntry, err error) error {
			test := strings.HasSuffix(name, "_test.rego")
			if err != nil || d.IsDir() || path.Ext(name) != ".rego" || test && !tests {
				return err
			}
			if len(all) == mostFiles {
				return fmt.Errorf("more than %d files", mostFiles)
			}
			all, from = append(all, source{name, nil, i > 0, test}), append(from, folder)
			return nil
		})
		if err != nil {
			wrong = append(wrong, Problem{File: "folder of clauses", Text: "cannot be read: " + err.Error()})
		}
	}
	language, problems := capabilities(), make([]Problems, len(all))
	err := newTurns(len(all), runtime.GOMAXPROCS(0)).take(func(i int) error {
		return guarded(func() string { return all[i].file }, func() error {
			all[i].module, problems[i] = parseFile(from[i], all[i].file, all[i].test, language)
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
		p := Problem{File: file, Text: e.Message}
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
