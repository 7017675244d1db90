package main

import (
	"context"
	"os"
	"path/filepath"
	"strings"

	"dryfit/internal/corpus"
	"dryfit/internal/git"
)

// touchedSince is those of the files that have changed since a revision, or whose permits have
// changed, come or gone.
func touchedSince(ctx context.Context, rev string, files []corpus.File) ([]corpus.File, error) {
	changed := map[string]map[string]bool{} // by repository
	repos := map[string]git.Repo{}          // by folder
	var out []corpus.File
	for _, f := range files {
		path, err := filepath.Abs(f.Name)
		if err != nil {
			return nil, err
		}
		if _, err := os.Lstat(path); f.Name == "-" || err != nil {
			out = append(out, f) // what git cannot know of: it says itself what is wrong with it
			continue
		}
		folder, err := filepath.EvalSymlinks(filepath.Dir(path))
		if err != nil {
			out = append(out, f) // it says itself that it is not there
			continue
		}
		repo, known := repos[folder]
		if !known {
			if repo, err = git.Open(ctx, folder); err != nil {
				return nil, err
			}
			repos[folder] = repo
		}
		if changed[repo.Top()] == nil {
			names, err := repo.Touched(ctx, rev)
			if err != nil {
				return nil, err
			}
			set := map[string]bool{}
			for _, name := range names {
				path := filepath.Join(repo.Top(), filepath.FromSlash(name))
				set[path] = true
				if stem, is := corpus.PermitsOf(path); is {
					set[stem] = true
				}
			}
			changed[repo.Top()] = set
		}
		path = filepath.Join(folder, filepath.Base(path))
		set := changed[repo.Top()]
		if set[path] || set[strings.TrimSuffix(path, filepath.Ext(path))] {
			out = append(out, f)
		}
	}
	return out, nil
}
