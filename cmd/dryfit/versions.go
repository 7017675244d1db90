package main

import (
	"context"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"dryfit/internal/corpus"
	"dryfit/internal/git"
	"dryfit/internal/report"
)

// side is one of two versions: a file, under an empty path, or the system files of a folder
// under their paths in it.
type side struct {
	folder bool
	files  map[string]*stored
}

func (s side) paths() []string {
	var out []string
	for path := range s.files {
		out = append(out, path)
	}
	slices.Sort(out)
	return out
}

// stored is a file with its content, and a way to the files beside it.
type stored struct {
	name   string
	data   []byte
	err    error // why it cannot be read
	beside func(name string) ([]byte, error)
}

// permits is the permits that stand beside the file, as they are written.
func (f *stored) permits() []byte {
	stem := path.Base(filepath.ToSlash(f.name))
	stem = strings.TrimSuffix(stem, path.Ext(stem))
	var out []byte
	for _, ending := range []string{".yaml", ".yml", ".json"} {
		if data, err := f.beside(stem + ".permits" + ending); err == nil {
			out = append(append(out, ending...), data...)
		}
	}
	return out
}

// version reads what a word of the call names. The error is a misuse, or the end of the context.
func (a *app) version(ctx context.Context, name string) (side, error) {
	info, err := os.Stat(name)
	rev, at, isRev := revision(name)
	switch {
	case err == nil && info.IsDir():
		return folderSide(name)
	case err != nil && isRev && name != "-":
		return gitSide(ctx, name, rev, at)
	}
	f := &stored{name: report.ShownFile(name), beside: besideIn(filepath.Dir(name))}
	if name == "-" {
		f.beside = noFile
	}
	f.data, f.err = a.read(name)
	if f.err != nil {
		f.err = corpus.Reason(f.err)
	}
	return side{files: map[string]*stored{"": f}}, nil
}

// besideIn reads files of one folder, and nothing that a link leads to outside it.
func besideIn(folder string) func(string) ([]byte, error) {
	return func(name string) ([]byte, error) {
		root, err := os.OpenRoot(folder)
		if err != nil {
			return nil, err
		}
		defer root.Close()
		f, err := root.Open(name)
		if err != nil {
			return nil, err
		}
		defer f.Close()
		return io.ReadAll(io.LimitReader(f, mostBytes))
	}
}

func noFile(string) ([]byte, error) { return nil, fs.ErrNotExist }

// revision splits REV:PATH at the first colon that stands in no braces, as git does:
// HEAD^{/new: sump}:loop.yaml has its path behind the second.
func revision(name string) (rev, at string, is bool) {
	depth := 0
	for i, r := range name {
		switch {
		case r == '{':
			depth++
		case r == '}' && depth > 0:
			depth--
		case r == ':' && depth == 0 && i > 0:
			return name[:i], name[i+1:], true
		}
	}
	return "", "", false
}

// folderSide is the system files of a folder on the disk.
func folderSide(name string) (side, error) {
	out := side{folder: true, files: map[string]*stored{}}
	files, err := corpus.Find([]string{name})
	if err != nil {
		return out, misusef("%v", err)
	}
	for _, f := range files {
		rel, err := filepath.Rel(name, f.Name)
		if err != nil {
			return out, err
		}
		one := &stored{name: f.Name, beside: besideIn(filepath.Dir(f.Name))}
		if one.data, err = f.Data(); err != nil {
			one.err = corpus.Reason(err)
		}
		out.files[filepath.ToSlash(rel)] = one
	}
	return out, nil
}

// gitSide is what stands at a path of a revision.
func gitSide(ctx context.Context, name, rev, at string) (side, error) {
	out := side{files: map[string]*stored{}}
	cannot := func(err error) (side, error) {
		if ctx.Err() != nil {
			return out, ctx.Err()
		}
		return out, misusef("%s cannot be read: %v", name, err)
	}
	repo, err := git.Open(ctx, ".")
	if err != nil {
		return cannot(err)
	}
	top, err := repo.Path(at)
	if err != nil {
		return cannot(err)
	}
	if out.folder, err = repo.IsFolder(ctx, rev, top); err != nil {
		return cannot(err)
	}
	paths := []string{top}
	if out.folder {
		if paths, err = repo.Files(ctx, rev, top); err != nil {
			return cannot(err)
		}
	}
	listed := func(p string) bool {
		return !out.folder || slices.Contains(paths, p)
	}
	for _, p := range paths {
		below := strings.TrimPrefix(strings.TrimPrefix(p, top), "/")
		if top == "." {
			below = p
		}
		if out.folder && (hidden(below) || !corpus.IsNamed(p)) {
			continue
		}
		f := &stored{name: rev + ":" + p, beside: func(other string) ([]byte, error) {
			beside := path.Join(path.Dir(p), other)
			if !listed(beside) {
				return nil, fs.ErrNotExist
			}
			data, err := repo.Read(ctx, rev, beside)
			if err != nil && !out.folder { // most often it is not there
				return nil, fs.ErrNotExist
			}
			return data, err
		}}
		if f.data, err = repo.Read(ctx, rev, p); err != nil {
			return cannot(err)
		}
		if !out.folder {
			below = ""
		} else if !corpus.IsSystemFile(p, f.data) {
			continue
		}
		out.files[below] = f
	}
	return out, nil
}

// hidden says that a path leads through a name that begins with a dot.
func hidden(p string) bool { return strings.HasPrefix(p, ".") || strings.Contains(p, "/.") }
