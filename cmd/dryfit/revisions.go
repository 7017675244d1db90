package main

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"

	"dryfit/internal/corpus"
	"dryfit/internal/git"
)

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

// gitSide is what stands at a path of a revision. The revision is resolved once.
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
	commit, err := repo.At(ctx, rev)
	if err != nil {
		return cannot(err)
	}
	out.folder, err = commit.IsFolder(ctx, top)
	if errors.Is(err, git.ErrAbsent) {
		_, out.absent = cannot(err)
		return out, nil
	}
	var files []git.File
	switch {
	case err != nil:
	case out.folder:
		files, err = commit.Files(ctx, top)
	default:
		files, err = fileAndBeside(ctx, commit, top)
	}
	if err != nil {
		return cannot(err)
	}
	below := func(p string) string {
		if top == "." {
			return p
		}
		return strings.TrimPrefix(p, top+"/")
	}
	var asked []git.File
	for _, f := range files {
		if corpus.IsNamed(f.Path) && !hidden(below(f.Path)) || f.Path == top {
			asked = append(asked, f)
		}
	}
	permits := map[string][]byte{} // by path
	err = commit.Read(ctx, asked, corpus.MostBytes, func(f git.File, data []byte) error {
		one := &stored{name: rev + ":" + f.Path, data: data, beside: func(other string) ([]byte, error) {
			if data, is := permits[path.Join(path.Dir(f.Path), other)]; is {
				return data, nil
			}
			return nil, fs.ErrNotExist
		}}
		switch _, isPermits := corpus.PermitsOf(f.Path); {
		case f.Path == top:
			out.files[""] = one
		case isPermits:
			permits[f.Path] = data
		case out.folder && corpus.IsSystemFile(f.Path, data):
			out.files[below(f.Path)] = one
		}
		return nil
	})
	if err != nil {
		return cannot(err)
	}
	if out.folder && len(out.files) == 0 {
		out.absent = misusef("there is no system file in %s: one has `dryfit: 1` as a key", name)
	}
	return out, nil
}

// fileAndBeside is a file of a commit and the permits in its folder.
func fileAndBeside(ctx context.Context, commit git.Commit, at string) ([]git.File, error) {
	f, err := commit.File(ctx, at)
	if err != nil {
		return nil, err
	}
	all, err := commit.Beside(ctx, f)
	files := []git.File{f}
	for _, other := range all {
		if _, is := corpus.PermitsOf(other.Path); is && other.Path != f.Path {
			files = append(files, other)
		}
	}
	return files, err
}

// hidden says that a path leads through a name that begins with a dot.
func hidden(p string) bool { return strings.HasPrefix(p, ".") || strings.Contains(p, "/.") }

// nowhere is what is said of a name that is no file, no folder and no revision with its colon.
// What stands on the other side tells what may have been meant.
func nowhere(ctx context.Context, name, other string) error {
	if strings.HasPrefix(name, ":") {
		return misusef("there is no file or folder `%s`; name a revision before the colon: `HEAD%s`", name, name)
	}
	repo, err := git.Open(ctx, ".")
	if err == nil {
		_, err = repo.At(ctx, name)
	}
	if err != nil {
		return misusef("there is no file or folder `%s`; check the name", name)
	}
	at := ""
	if _, err := os.Stat(other); err == nil && filepath.IsLocal(other) {
		if at, err = repo.Path("./" + filepath.ToSlash(other)); err != nil || at == "." {
			at = ""
		}
	} else if _, written, is := revision(other); is {
		at = written
	}
	return misusef("there is no file or folder `%s`; a revision is written with a colon: `%s:%s`", name, name, at)
}
