// Package internal_test holds the packages against the table of who may import whom.
package internal_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// The heavy engines and the one folder that may import each.
var engines = map[string]string{
	"github.com/open-policy-agent/opa":         "internal/judge",
	"github.com/santhosh-tekuri/jsonschema/v5": "internal/system",
	"go.yaml.in/yaml/v4":                       "internal/system",
}

func TestImportsFollowTheTable(t *testing.T) {
	allowed := layout(t)
	seen := map[string]bool{}
	root := ".."
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		rel, err := filepath.Rel(root, path)
		if err != nil {
			return err
		}
		folder := filepath.ToSlash(filepath.Dir(rel))
		may, listed := allowed[folder]
		if !listed {
			t.Errorf("%s is not in the layout table of DEVELOPERS.md", folder)
			return nil
		}
		seen[folder] = true
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, spec := range file.Imports {
			imported, err := strconv.Unquote(spec.Path.Value)
			if err != nil {
				return err
			}
			if ours, ok := strings.CutPrefix(imported, "dryfit/"); ok && !slices.Contains(may, strings.TrimPrefix(ours, "internal/")) {
				t.Errorf("%s imports %s, which its row in DEVELOPERS.md does not name", rel, ours)
			}
			for engine, home := range engines {
				if (imported == engine || strings.HasPrefix(imported, engine+"/")) && folder != home {
					t.Errorf("%s imports %s, which only %s may", rel, engine, home)
				}
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	for folder := range allowed {
		if !seen[folder] {
			t.Errorf("the table in DEVELOPERS.md names %s, which holds no Go code", folder)
		}
	}
}

// layout reads the table under the heading Layout.
func layout(t *testing.T) map[string][]string {
	t.Helper()
	data, err := os.ReadFile("../DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	_, after, ok := strings.Cut(string(data), "## Layout")
	if !ok {
		t.Fatal("DEVELOPERS.md has no heading Layout")
	}
	section, _, _ := strings.Cut(after, "\n## ")
	out := map[string][]string{}
	for _, line := range strings.Split(section, "\n") {
		cells := strings.Split(line, "|")
		if len(cells) != 5 || strings.Contains(line, "---") || strings.TrimSpace(cells[1]) == "folder" {
			continue
		}
		var may []string
		for _, name := range strings.Split(cells[3], ",") {
			if name = strings.TrimSpace(name); name != "nothing" {
				may = append(may, name)
			}
		}
		out[strings.TrimSpace(cells[1])] = may
	}
	if len(out) < 10 {
		t.Fatalf("only %d rows were read from the layout table", len(out))
	}
	return out
}
