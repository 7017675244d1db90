// Package git asks the git command what stands in a revision of a repository. It
// only reads: nothing in the repository changes, and no hook, pager or other
// program that a repository may name is run.
package git

import (
	"context"
	"errors"
	"fmt"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
)

// Repo is a repository with a work tree. Its zero value is none: call [Open].
type Repo struct {
	top    string // folder of the work tree
	within string // the folder that was opened, from the top, with slashes; "." for the top
}

// Open finds the repository that a folder belongs to.
func Open(ctx context.Context, folder string) (Repo, error) {
	out, err := run(ctx, folder, "rev-parse", "--show-toplevel")
	var no refusal
	switch {
	case errors.As(err, &no) && strings.Contains(no.said, "dubious ownership"):
		return Repo{}, errors.New("git does not trust this folder, since it belongs to somebody else; `git config --global --add safe.directory FOLDER` says that it is to be trusted")
	case errors.As(err, &no):
		return Repo{}, errors.New("this folder is in no work tree of git; go to one, or name files that are there")
	case err != nil:
		return Repo{}, err
	}
	top := filepath.FromSlash(oneLine(out))
	out, err = run(ctx, folder, "rev-parse", "--show-prefix")
	if err != nil {
		return Repo{}, plainly(err)
	}
	return Repo{top, path.Clean(oneLine(out) + ".")}, nil
}

// Top is the folder of the work tree.
func (r Repo) Top() string { return r.top }

// Path is a path of a revision as git reads it: one that begins with ./ or ../
// from the folder that was opened, every other from the top of the work tree. The top
// is ".", written or not.
func (r Repo) Path(written string) (string, error) {
	at := written
	if at == "." || at == ".." || strings.HasPrefix(at, "./") || strings.HasPrefix(at, "../") {
		at = path.Join(r.within, at)
	}
	at = path.Clean(at)
	if at == ".." || strings.HasPrefix(at, "../") || strings.HasPrefix(at, "/") {
		return "", fmt.Errorf("%s leads out of the repository; write a path from its top, or with ./ from here", quoted(written))
	}
	return at, nil
}

// commit is the full name of a revision.
func (r Repo) commit(ctx context.Context, rev string) (string, error) {
	if rev == "" || strings.HasPrefix(rev, "-") || strings.ContainsAny(rev, "\x00\n") {
		return "", fmt.Errorf("%s is no revision: name a commit, a branch or a tag; `git branch --all` lists the branches", quoted(rev))
	}
	out, err := run(ctx, r.top, "rev-parse", "--verify", "--quiet", "--end-of-options", rev+"^{commit}")
	var no refusal
	if errors.As(err, &no) {
		return "", fmt.Errorf("there is no revision %s here; `git branch --all` lists the branches, `git log` the commits", quoted(rev))
	}
	name := oneLine(out)
	if err == nil && !hexadecimal(name) {
		err = fmt.Errorf("git does not say which commit %s is; name it in full", quoted(rev))
	}
	return name, err
}

// Touched is the paths, from the top, of the files that the work tree has otherwise than
// the commit at which it parted from a revision, those that git does not know yet among
// them, and those that are gone. They are sorted. What git ignores is no file of it.
func (r Repo) Touched(ctx context.Context, rev string) ([]string, error) {
	commit, err := r.commit(ctx, rev)
	if err != nil {
		return nil, err
	}
	here, err := r.commit(ctx, "HEAD")
	if err != nil {
		return nil, errors.New("this repository has no commit yet; make one first")
	}
	out, err := run(ctx, r.top, "merge-base", commit, here)
	base := oneLine(out)
	var no refusal
	if errors.As(err, &no) || err == nil && !hexadecimal(base) {
		return nil, fmt.Errorf("%s and what is checked out have no commit in common; a shallow clone has too little history for it: `git fetch --unshallow`", quoted(rev))
	} else if err != nil {
		return nil, err
	}
	changed, err := run(ctx, r.top, "diff", "--name-only", "-z", "--no-renames", "--no-ext-diff", "--no-textconv", "--no-relative",
		"--ignore-submodules=all", base, "--")
	if err != nil {
		return nil, plainly(err)
	}
	fresh, err := run(ctx, r.top, "ls-files", "-z", "--others", "--exclude-standard", "--full-name")
	if err != nil {
		return nil, plainly(err)
	}
	files := append(list(changed), list(fresh)...)
	slices.Sort(files)
	return slices.Compact(files), nil
}

// plainly is a call that git refused for a reason that we do not foresee.
func plainly(err error) error {
	var no refusal
	if errors.As(err, &no) {
		return errors.New("git cannot answer: " + strings.TrimPrefix(oneWord(no.said), "fatal: ") + "; `git fsck` looks whether the repository is whole")
	}
	return err
}

// oneLine is what git wrote without the line end behind it.
func oneLine(out []byte) string {
	return strings.TrimSuffix(strings.TrimSuffix(string(out), "\n"), "\r")
}

// oneWord is the first line of a message.
func oneWord(said string) string {
	line, _, _ := strings.Cut(said, "\n")
	return strings.Trim(strconv.QuoteToGraphic(line), `"`)
}

func hexadecimal(name string) bool {
	return len(name) >= 40 && strings.Trim(name, "0123456789abcdef") == ""
}

// quoted is a name in a sentence, on one line and harmless.
func quoted(name string) string {
	return "`" + strings.Trim(strconv.QuoteToGraphic(name), `"`) + "`"
}
