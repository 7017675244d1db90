//go:build unix

package corpus_test

import (
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"dryfit/internal/corpus"
	"dryfit/internal/report"
)

// A pipe that nobody writes to is passed over in a folder and in a pattern, is no file of
// permits, and is given up where it was named.
func TestAPipeThatNobodyWritesTo(t *testing.T) {
	t.Chdir(tree(t, map[string]string{"a.yaml": small, "m.yaml": small, "z.yaml": small}))
	for _, name := range []string{"pipe.yaml", "m.permits.yaml"} {
		if err := syscall.Mkfifo(name, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	soon(t, func() {
		for _, arg := range []string{".", "*.yaml"} {
			files, err := corpus.Find([]string{arg})
			if got := strings.Join(names(".", files), " "); err != nil || got != "a.yaml m.yaml z.yaml" {
				t.Errorf("%s gives %q %v", arg, got, err)
			}
			texts := everyForm(t, files, corpus.Batch{Workers: 2}, report.Options{Width: 80})
			if !strings.Contains(texts["lines"], "it is no plain file") || strings.Count(texts["lines"], `"exit_status":2`) != 1 {
				t.Error(texts["lines"])
			}
		}
		named := []corpus.File{corpus.Named("a.yaml"), corpus.Named("pipe.yaml"), corpus.Named("z.yaml")}
		texts := everyForm(t, named, corpus.Batch{Workers: 1, Most: 2 * time.Second}, report.Options{Width: 80})
		if !strings.Contains(texts["lines"], "took more than 2s") || strings.Count(texts["lines"], `"exit_status":2`) != 1 {
			t.Error(texts["lines"])
		}
		if !corpus.Named("pipe.yaml").Other() || corpus.Named(filepath.Join(".", "a.yaml")).Other() {
			t.Error("a pipe is taken for a system file, or a system file for none")
		}
	})
}
