package corpus

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"dryfit/internal/house"
	"dryfit/internal/judge"
	"dryfit/internal/report"
	"dryfit/internal/review"
	"dryfit/internal/survey"
	"dryfit/internal/system"
	"dryfit/rules"
)

// NewHouseReviewer is a reviewer by the book and by the rules of a house: a folder with a file
// house.yaml, clauses, or both, or such a file alone. Problems are those of the file, for its author; the
// error says why something cannot be opened. A clause that does not load fails when a loop is judged.
func NewHouseReviewer(name string) (*Reviewer, []system.Problem, error) {
	info, err := os.Stat(name)
	if err != nil {
		return nil, nil, Reason(err)
	}
	file, folder := name, fs.FS(nil)
	open := func() (*os.File, error) { return os.OpenFile(name, reading, 0) }
	if info.IsDir() {
		root, err := os.OpenRoot(name) // nothing outside the folder is read
		if err != nil {
			return nil, nil, Reason(err)
		}
		defer root.Close()
		folder, file = root.FS(), filepath.Join(name, house.File)
		open = func() (*os.File, error) { return root.OpenFile(house.File, reading, 0) }
		for _, other := range []string{"house.yml", "house.json"} {
			if _, err := root.Lstat(other); err == nil {
				return nil, nil, fmt.Errorf("it holds %s, which is not read; name it %s", other, house.File)
			}
		}
		if _, err := root.Lstat(house.File); errors.Is(err, fs.ErrNotExist) {
			file = ""
		}
	}
	sum := sha256.New()
	own, err := clausesIn(folder, func(path string, data []byte) { fmt.Fprintf(sum, "%s\x00%x\x00", path, sha256.Sum256(data)) })
	switch {
	case err != nil:
		return nil, nil, err
	case file == "" && !own:
		return nil, nil, fmt.Errorf("it holds neither %s nor a clause; write `dryfit_house: 1` and the changes into %s", house.File, house.File)
	}
	r, err := NewReviewer()
	if own {
		r = &Reviewer{book: judge.Open(survey.Catalogue(), rules.Book, folder)}
	}
	if err != nil {
		return nil, nil, err
	}
	h := &review.House{Name: filepath.Base(filepath.Clean(name))}
	if file != "" {
		data, err := limited(plain(open()))
		if err != nil {
			return nil, nil, fmt.Errorf("%s: %w", file, Reason(err))
		}
		var problems []system.Problem
		if h, problems = house.Read(file, data, r.book.Clauses(), survey.Catalogue()); len(problems) > 0 {
			return nil, problems, nil
		}
		fmt.Fprintf(sum, "%s\x00%x\x00", house.File, sha256.Sum256(data))
	}
	for _, c := range r.book.Clauses() {
		if c.Own {
			h.Adds = append(h.Adds, c.ID)
		}
	}
	h.Hash = hex.EncodeToString(sum.Sum(nil))
	r.house, r.rules = h, map[string]*judge.Book{}
	return r, nil, nil
}

// clausesIn gives every file of clauses in a folder to take, tests apart, and says whether there is one.
func clausesIn(folder fs.FS, take func(path string, data []byte)) (bool, error) {
	if folder == nil {
		return false, nil
	}
	any := false
	err := fs.WalkDir(folder, ".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".rego") || strings.HasSuffix(path, "_test.rego") {
			return err
		}
		any = true
		if !d.Type().IsRegular() {
			return nil // it is refused when the clauses are loaded
		}
		f, err := folder.Open(path)
		if err != nil {
			return err
		}
		data, err := limited(f, nil)
		take(path, data)
		return err
	})
	return any, err
}

// House is the rules of the house that the reviewer judges by, for loops of a setting; nil without a house.
func (r *Reviewer) House(setting string) *review.House {
	if r.house == nil {
		return nil
	}
	return r.house.Of(setting)
}

// Hash is the SHA-256 of all that a loop is judged by: the book, its tables and the rules of the house.
func (r *Reviewer) Hash() (string, error) {
	book, err := report.BookHash(rules.Book, rules.Tables)
	if err != nil || r.house == nil {
		return book, err
	}
	return report.HashOf([]byte(book + "\n" + r.house.Hash)), nil
}

// under is the book as it is in a setting.
func (r *Reviewer) under(setting string) *judge.Book {
	if r.house == nil {
		return r.book
	}
	r.mutex.Lock()
	defer r.mutex.Unlock()
	if r.rules[setting] == nil {
		r.rules[setting] = r.book.With(r.House(setting).Over(r.book.Clauses()))
	}
	return r.rules[setting]
}

// Book is the book that loops are judged by whose setting is not known.
func (r *Reviewer) Book() *judge.Book { return r.under("") }

// BookOf is the book that a loop is judged by.
func (r *Reviewer) BookOf(s *system.System) *judge.Book { return r.under(settingOf(s)) }

func settingOf(s *system.System) string {
	setting, _ := s.Site.Setting.Value()
	return setting
}

// Clauses is every clause as it is in force, with all that the house changes in it, also in some settings alone.
func (r *Reviewer) Clauses() []*review.Clause { return r.House("").Explain(r.Book().Clauses()) }
