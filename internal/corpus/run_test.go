package corpus_test

import (
	"bytes"
	"context"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"dryfit/internal/corpus"
	"dryfit/internal/quantity"
	"dryfit/internal/report"
	"dryfit/internal/review"
)

// the run of a call, for writing.
func called(t testing.TB, look report.Options) report.Run {
	t.Helper()
	r, err := reviewer()
	if err != nil {
		t.Fatal(err)
	}
	return report.Run{HeldTo: review.Shall, Look: look, Version: "test", Book: "book", Clauses: r.Book().Clauses, AsOf: "2026-03-14"}
}

// everyForm reviews files and writes what comes of them in every form.
func everyForm(t testing.TB, files []corpus.File, b corpus.Batch, look report.Options) map[string]string {
	t.Helper()
	r, err := reviewer()
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]*bytes.Buffer{}
	var writers []report.Writer
	for _, form := range report.Forms() {
		out[form] = &bytes.Buffer{}
		w, err := report.NewWriter(form, out[form], called(t, look))
		if err != nil {
			t.Fatal(err)
		}
		writers = append(writers, w)
	}
	b.AsOf, b.Workers = "2026-03-14", max(1, b.Workers)
	err = r.Run(context.Background(), files, b, func(i report.Item) error {
		for _, w := range writers {
			if err := w.Add(i); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	texts := map[string]string{}
	for i, form := range report.Forms() {
		if err := writers[i].Close(); err != nil {
			t.Fatal(err)
		}
		texts[form] = out[form].String()
	}
	return texts
}

func same(t *testing.T, what string, got, want map[string]string) {
	t.Helper()
	for form, text := range want {
		if got[form] != text {
			a, b := strings.Split(got[form], "\n"), strings.Split(text, "\n")
			for i := range min(len(a), len(b)) {
				if a[i] != b[i] {
					t.Errorf("%s: %s differs at line %d: %q, want %q", what, form, i+1, a[i], b[i])
					break
				}
			}
			if len(a) != len(b) {
				t.Errorf("%s: %s has %d lines, want %d", what, form, len(a), len(b))
			}
		}
	}
}

func folderOf(t testing.TB, n int) []corpus.File {
	t.Helper()
	folder := t.TempDir()
	writeCorpus(t, folder, varied(t, n, 3))
	for name, text := range map[string]string{"class-00/loop-0000.permits.yaml": `permits:
  - {clause: throttle_reserve, subject: clear-run, reason: it is read each week, who: club board, until: 2026-12-31}
  - {clause: well_depth, subject: settler, reason: not needed, who: club board, until: 2026-12-31}
  - {clause: nothing_such, subject: settler, reason: misspelt, who: club board, until: 2026-12-31}
`, "class-01/bad.permits.yaml": "permits: 3\n", "class-01/bad.yaml": small} {
		if err := os.WriteFile(filepath.Join(folder, filepath.FromSlash(name)), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	t.Chdir(folder) // so that names are the same in every folder
	files, err := corpus.Find([]string{"."})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

func cacheIn(t testing.TB, folder string) *corpus.Cache {
	t.Helper()
	c, err := corpus.OpenCache(folder, "program", "book")
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// What is written does not depend on how many work at it, nor on what was kept from an earlier run.
func TestKeptResultsAndManyWorkersGiveTheSameBytes(t *testing.T) {
	files := folderOf(t, 5)
	kept := t.TempDir()
	for _, look := range []report.Options{{Width: 80}, {Width: 160, Units: quantity.US}} {
		want := everyForm(t, files, corpus.Batch{Whole: true}, look)
		same(t, "three workers", everyForm(t, files, corpus.Batch{Whole: true, Workers: 3}, look), want)
		same(t, "first with a cache", everyForm(t, files, corpus.Batch{Whole: true, Cache: cacheIn(t, kept)}, look), want)
		same(t, "again with a cache", everyForm(t, files, corpus.Batch{Whole: true, Cache: cacheIn(t, kept), Workers: 2}, look), want)
		same(t, "afresh", everyForm(t, files, corpus.Batch{Whole: true, Cache: cacheIn(t, kept), Afresh: true}, look), want)
		short := everyForm(t, files, corpus.Batch{Cache: cacheIn(t, kept)}, look)
		for _, form := range report.Forms() {
			if !report.WantsAll(form) && short[form] != want[form] {
				same(t, "short", map[string]string{form: short[form]}, map[string]string{form: want[form]})
			}
		}
		live := everyForm(t, files, corpus.Batch{Live: true, Whole: true, Cache: cacheIn(t, kept)}, look)
		same(t, "with workings, remedies kept", live, want)
	}
}

// A result is never read by another program, of another book, or of other bytes.
func TestKeptResultsAreThoseOfTheSameFileProgramAndBook(t *testing.T) {
	kept := t.TempDir()
	folder := tree(t, map[string]string{"loop.yaml": small})
	t.Chdir(folder)
	entries := func() int {
		found, err := filepath.Glob(filepath.Join(kept, "??", "*.short"))
		if err != nil {
			t.Fatal(err)
		}
		return len(found)
	}
	data, err := os.ReadFile(filepath.Join(start, systems, "common-drum.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	review := func(made string, data []byte) {
		t.Helper()
		if err := os.WriteFile("loop.yaml", data, 0o644); err != nil {
			t.Fatal(err)
		}
		c, err := corpus.OpenCache(kept, made)
		if err != nil {
			t.Fatal(err)
		}
		everyForm(t, []corpus.File{corpus.Named("loop.yaml")}, corpus.Batch{Cache: c}, report.Options{Width: 80})
	}
	review("one", data)
	review("one", data)
	if n := entries(); n != 1 {
		t.Fatalf("%d results are kept of one file", n)
	}
	review("two", data)
	review("one", append(data, '\n'))
	if n := entries(); n != 3 {
		t.Errorf("%d results are kept of two programs and two files", n)
	}
}

// Whatever happens to what is kept, the next run gives what it would have given without.
func TestTornResultsAreWorkedOutAgain(t *testing.T) {
	files := folderOf(t, 3)
	kept := t.TempDir()
	look := report.Options{Width: 80}
	want := everyForm(t, files, corpus.Batch{Whole: true, Cache: cacheIn(t, kept)}, look)
	entries, err := filepath.Glob(filepath.Join(kept, "??", "*"))
	if err != nil || len(entries) < 6 {
		t.Fatal(entries, err)
	}
	for what, harm := range map[string]func(path string, data []byte) error{
		"emptied": func(path string, _ []byte) error { return os.WriteFile(path, nil, 0o644) },
		"cut":     func(path string, d []byte) error { return os.WriteFile(path, d[:len(d)/2], 0o644) },
		"one bit": func(path string, d []byte) error {
			d = slices.Clone(d)
			d[len(d)-9] ^= 4
			return os.WriteFile(path, d, 0o644)
		},
		"of another one": func(path string, _ []byte) error { return os.WriteFile(path, []byte(strings.Repeat("x", 500)), 0o644) },
		"a folder":       func(path string, _ []byte) error { return errors.Join(os.Remove(path), os.Mkdir(path, 0o755)) },
	} {
		for _, path := range entries {
			data, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if err := harm(path, data); err != nil {
				t.Fatal(err)
			}
		}
		same(t, what, everyForm(t, files, corpus.Batch{Whole: true, Cache: cacheIn(t, kept)}, look), want)
		for _, path := range entries {
			if what == "a folder" {
				os.Remove(path)
			}
		}
		everyForm(t, files, corpus.Batch{Whole: true, Cache: cacheIn(t, kept)}, look)
	}
}

// What is old and unread goes, what is no result stays.
func TestTidyTakesOnlyWhatIsItsOwn(t *testing.T) {
	kept := t.TempDir()
	c := cacheIn(t, kept)
	long := strings.Repeat("ab", 31)
	old := time.Now().Add(-40 * 24 * time.Hour)
	for _, name := range []string{"ab/" + long + ".short", "ab/" + long + ".whole", "ab/new-123", "ab/mine.txt", "notes.txt", "abc/" + long + ".short"} {
		path := filepath.Join(kept, filepath.FromSlash(name))
		if err := errors.Join(os.MkdirAll(filepath.Dir(path), 0o755), os.WriteFile(path, nil, 0o644), os.Chtimes(path, old, old)); err != nil {
			t.Fatal(err)
		}
	}
	fresh := filepath.Join(kept, "ab", strings.Repeat("cd", 31)+".short")
	if err := os.WriteFile(fresh, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	if err := c.Tidy(); err != nil {
		t.Fatal(err)
	}
	var left []string
	for _, pattern := range []string{"*", "*/*"} {
		found, _ := filepath.Glob(filepath.Join(kept, pattern))
		for _, path := range found {
			if info, err := os.Stat(path); err == nil && !info.IsDir() {
				rel, _ := filepath.Rel(kept, path)
				left = append(left, filepath.ToSlash(rel))
			}
		}
	}
	slices.Sort(left)
	want := []string{"ab/" + strings.Repeat("cd", 31) + ".short", "ab/mine.txt", "abc/" + long + ".short", "notes.txt", "tidied"}
	if !slices.Equal(left, want) {
		t.Errorf("left: %v\nwant: %v", left, want)
	}
}

// A file that takes too long or that breaks something is said to be so, and its neighbours are reviewed.
func TestOneFileNeverHidesTheOthers(t *testing.T) {
	r, err := reviewer()
	if err != nil {
		t.Fatal(err)
	}
	folder := tree(t, map[string]string{"a.yaml": small, "b.yaml": "dryfit: 1\nname: [", "gone.yaml": small, "z.yaml": small})
	t.Chdir(folder)
	files := []corpus.File{corpus.Named("a.yaml"), corpus.Given("-", fails{}), corpus.Named("b.yaml"), corpus.Given("-", breaks{}), corpus.Named("none.yaml"), corpus.Named("."), corpus.Named("z.yaml")}
	var got []string
	err = r.Run(context.Background(), files, corpus.Batch{Workers: 3, AsOf: "2026-03-14"}, func(i report.Item) error {
		what := "reviewed"
		switch {
		case i.Fault != "":
			what = "fault"
		case i.Unread != "":
			what = "unread"
		case len(i.Problems) > 0:
			what = "problems"
		}
		got = append(got, i.File+" "+what)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	want := []string{"a.yaml reviewed", "- unread", "b.yaml problems", "- fault", "none.yaml unread", ". unread", "z.yaml reviewed"}
	if !slices.Equal(got, want) {
		t.Errorf("%q\nwant %q", got, want)
	}
}

func TestAFileThatTakesTooLongIsGivenUp(t *testing.T) {
	r, err := reviewer()
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(systems, "quarry-road-as-found.yaml")
	err = r.Run(context.Background(), []corpus.File{corpus.Named(file)}, corpus.Batch{Workers: 1, Most: time.Millisecond, AsOf: "2026-03-14"}, func(i report.Item) error {
		if !strings.Contains(i.Unread, "took more than 1ms") {
			t.Errorf("%+v", i)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

type fails struct{}

func (fails) Read([]byte) (int, error) { return 0, errors.New("the cable is out") }

type breaks struct{}

func (breaks) Read([]byte) (int, error) { panic("it breaks") }

// start is the folder in which the tests began.
var start = func() string {
	folder, err := os.Getwd()
	if err != nil {
		panic(err)
	}
	return folder
}()
