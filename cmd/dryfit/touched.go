package main

import (
	"context"
	"path/filepath"
	"strings"

	"dryfit/internal/corpus"
	"dryfit/internal/git"
)

// touchedSince is those of the files that have changed since a revision, or whose permits have.
func touchedSince(ctx context.Context, rev string, files []corpus.File) ([]corpus.File, error) {
	changed := map[string]map[string]bool{} // by repository
	repos := map[string]git.Repo{}          // by folder
	var out []corpus.File
	for _, f := range files {
		path, err := filepath.Abs(f.Name)
		if err != nil {
			return nil, err
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
				set[filepath.Join(repo.Top(), filepath.FromSlash(name))] = true
			}
			changed[repo.Top()] = set
		}
		path = filepath.Join(folder, filepath.Base(path))
		stem := strings.TrimSuffix(path, filepath.Ext(path)) + ".permits"
		set := changed[repo.Top()]
		if set[path] || set[stem+".yaml"] || set[stem+".yml"] || set[stem+".json"] {
			out = append(out, f)
		}
	}
	return out, nil
}
