package git

import (
	"context"
	"errors"
	"fmt"
	"path"
	"slices"
	"strings"
)

// Commit is one revision of a repository, resolved once: what is asked of it later is
// answered from the same commit, whatever becomes of the branch it was named by.
type Commit struct {
	repo Repo
	rev  string // as it was named
	name string // in full
}

// File is a plain file of a commit: no symbolic link and no submodule.
type File struct {
	Path   string // from the top
	object string
}

// ErrAbsent is what stands nowhere in a commit.
var ErrAbsent = errors.New("paths go from the top of the repository, or with ./ from this folder")

// At finds the commit that a revision names.
func (r Repo) At(ctx context.Context, rev string) (Commit, error) {
	name, err := r.commit(ctx, rev)
	return Commit{r, rev, name}, err
}

// entry is one line of a tree of git.
type entry struct{ mode, kind, object, path string }

// file says that an entry is a plain file.
func (e entry) file() bool { return e.kind == "blob" && (e.mode == "100644" || e.mode == "100755") }

// tree lists what stands at some paths of the commit; without a path, at its top. With deep
// it is all below them.
func (c Commit) tree(ctx context.Context, deep bool, paths ...string) ([]entry, error) {
	args := []string{"ls-tree", "-z", "--full-tree"}
	if deep {
		args = append(args, "-r")
	}
	args = append(append(args, c.name, "--"), paths...)
	out, err := run(ctx, c.repo.top, args...)
	if err != nil {
		return nil, plainly(err)
	}
	var entries []entry
	for _, one := range list(out) {
		about, name, ok := strings.Cut(one, "\t")
		words := strings.Fields(about)
		if !ok || len(words) != 3 || !hexadecimal(words[2]) {
			return nil, errors.New("git lists a tree in a way that dryfit does not know; a newer dryfit may")
		}
		entries = append(entries, entry{words[0], words[1], words[2], name})
	}
	return entries, nil
}

// find is what stands at a path.
func (c Commit) find(ctx context.Context, at string) (entry, error) {
	at = path.Clean(at)
	if at == "." {
		return entry{kind: "tree"}, nil
	}
	entries, err := c.tree(ctx, false, at)
	if err != nil {
		return entry{}, err
	}
	for _, e := range entries {
		if e.path == at {
			return e, nil
		}
	}
	return entry{}, fmt.Errorf("there is no %s in %s; %w", quoted(at), quoted(c.rev), ErrAbsent)
}

// IsFolder says whether a folder stands at a path, from the top. Where nothing stands the
// error is [ErrAbsent].
func (c Commit) IsFolder(ctx context.Context, at string) (bool, error) {
	e, err := c.find(ctx, at)
	return e.kind == "tree", err
}

// File is the plain file at a path.
func (c Commit) File(ctx context.Context, at string) (File, error) {
	e, err := c.find(ctx, at)
	switch {
	case err != nil:
		return File{}, err
	case e.kind == "tree":
		return File{}, fmt.Errorf("%s is a folder in %s; name a file in it", quoted(at), quoted(c.rev))
	case !e.file():
		return File{}, fmt.Errorf("%s is no plain file in %s but a symbolic link or a submodule; name what it leads to", quoted(at), quoted(c.rev))
	}
	return File{e.path, e.object}, nil
}

// Beside is the plain files in the folder of a file, by path, itself among them.
func (c Commit) Beside(ctx context.Context, f File) ([]File, error) {
	if folder := path.Dir(f.Path); folder != "." {
		return plainOf(c.tree(ctx, false, folder+"/"))
	}
	return plainOf(c.tree(ctx, false))
}

// Files is the plain files below a folder, by path.
func (c Commit) Files(ctx context.Context, folder string) ([]File, error) {
	e, err := c.find(ctx, folder)
	switch {
	case err != nil:
		return nil, err
	case e.kind != "tree":
		return nil, fmt.Errorf("%s is no folder in %s; name the folder that it is in", quoted(folder), quoted(c.rev))
	case e.path == "":
		return plainOf(c.tree(ctx, true))
	}
	return plainOf(c.tree(ctx, true, e.path))
}

func plainOf(entries []entry, err error) ([]File, error) {
	var out []File
	for _, e := range entries {
		if e.file() {
			out = append(out, File{e.path, e.object})
		}
	}
	slices.SortFunc(out, func(a, b File) int { return strings.Compare(a.Path, b.Path) })
	return out, err
}
