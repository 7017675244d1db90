package judge

import (
	"context"
	"io/fs"
	"path"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"dryfit/rules"
)

// FuzzClause loads any text as a clause and judges by it. Whatever it says, there
// is no panic, and no judgement but of a clause that loaded.
func FuzzClause(f *testing.F) {
	vocabulary, err := fs.ReadFile(rules.Book, "vocab/vocab.rego")
	if err != nil {
		f.Fatal(err)
	}
	err = fs.WalkDir(rules.Book, "book", func(name string, d fs.DirEntry, err error) error {
		if err != nil || path.Ext(name) != ".rego" {
			return err
		}
		text, err := fs.ReadFile(rules.Book, name)
		f.Add(strings.TrimSuffix(path.Base(name), ".rego"), strings.Replace(string(text), "package book.", "package house.", 1))
		return err
	})
	if err != nil {
		f.Fatal(err)
	}
	f.Add("house_turn", houseClause)
	book := fstest.MapFS{"vocab.rego": {Data: vocabulary}}
	ledger := soundLoop().Ledger
	f.Fuzz(func(t *testing.T, name, text string) {
		file := path.Clean("/" + name)[1:] + ".rego"
		if !fs.ValidPath(file) {
			return
		}
		b, err := load(catalogue(), bounds{time.Second, heap}, bounds{time.Second, ownHeap}, book, fstest.MapFS{file: {Data: []byte(text)}})
		if err != nil {
			if strings.Contains(err.Error(), "engine failed") {
				t.Fatal(err)
			}
			return
		}
		got, _, err := b.Judge(context.Background(), ledger)
		if err != nil && len(got) > 0 {
			t.Errorf("%d judgements with error %v", len(got), err)
		}
		for _, j := range got {
			if j.Clause == nil || j.Clause.Title == "" || len(j.Clause.Sources) == 0 || j.Verdict == "" {
				t.Errorf("judgement of a clause that is not documented: %+v", j)
			}
		}
	})
}
