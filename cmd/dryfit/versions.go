package main

import (
	"context"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"dryfit/internal/corpus"
	"dryfit/internal/report"
)

// side is one of two versions: a file, under an empty path, or the system files of a folder
// under their paths in it.
type side struct {
	folder bool
	files  map[string]*stored
	absent error // why nothing is there; a folder may begin with nothing
}

// contents is the content of each file by its path.
func (s side) contents() map[string][]byte {
	out := map[string][]byte{}
	for path, f := range s.files {
		out[path] = f.data
	}
	return out
}

// stored is a file with its content, and a way to the files beside it.
type stored struct {
	name   string
	data   []byte
	err    error // why it cannot be read
	beside func(name string) ([]byte, error)
}

// file is the file as it is reviewed.
func (f *stored) file() corpus.File { return corpus.Stored(f.name, f.data, f.beside) }

// versions reads what the two words of the call name. The error is a misuse, or the end of the context.
func (a *app) versions(ctx context.Context, was, now string) (one, two side, err error) {
	if was == "-" && now == "-" {
		return one, two, misusef("the standard input can be read only once: write `-` once")
	}
	one, err = a.version(ctx, was, now)
	two, other := a.version(ctx, now, was)
	if err := errors.Join(err, other); err != nil {
		return one, two, err
	}
	if was == "-" || now == "-" {
		for _, files := range []map[string]*stored{one.files, two.files} {
			for _, f := range files {
				f.beside = noFile
			}
		}
	}
	if one.absent != nil && two.folder && two.absent == nil {
		one.folder, one.absent = true, nil // all are new
	}
	if err := errors.Join(one.absent, two.absent); err != nil {
		return one, two, err
	}
	if one.folder != two.folder {
		return one, two, misusef("a folder and a file cannot be held against each other: name two files or two folders")
	}
	return one, two, nil
}

// version reads what a word of the call names; other is the other one.
func (a *app) version(ctx context.Context, name, other string) (side, error) {
	info, err := os.Stat(name)
	rev, at, isRev := revision(name)
	switch {
	case name == "":
		return side{}, misusef("the name of a version is empty; name a file, a folder, or REV:PATH of git")
	case err == nil && info.IsDir():
		return folderSide(name)
	case err != nil && isRev && name != "-":
		return gitSide(ctx, name, rev, at)
	case errors.Is(err, fs.ErrNotExist) && name != "-":
		return side{}, nowhere(ctx, name, other)
	}
	f := &stored{name: report.ShownFile(name), beside: besideIn(filepath.Dir(name))}
	f.data, f.err = a.read(name)
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
		if info, err := root.Stat(name); err != nil {
			return nil, err
		} else if !info.Mode().IsRegular() { // a pipe would be waited for
			return nil, errors.New("it is no plain file")
		}
		f, err := root.Open(name)
		if err != nil {
			return nil, err
		}
		defer f.Close()
		return io.ReadAll(io.LimitReader(f, corpus.MostBytes))
	}
}

func noFile(string) ([]byte, error) { return nil, fs.ErrNotExist }

// folderSide is the system files of a folder on the disk.
func folderSide(name string) (side, error) {
	out := side{folder: true, files: map[string]*stored{}}
	files, err := corpus.Find([]string{name})
	if _, open := os.ReadDir(name); open == nil && err != nil { // there is none in it
		out.absent = misusef("%v", err)
		return out, nil
	} else if err != nil {
		return out, misusef("%v", err)
	}
	for _, f := range files {
		if _, is := corpus.PermitsOf(f.Name); is {
			continue
		}
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
