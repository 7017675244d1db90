package git

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// place is a repository that a test makes.
type place struct {
	*testing.T
	folder string
}

// newPlace makes an empty repository. Without a git command the test is skipped, on a
// machine of one's own; where the variable CI is set it fails.
func newPlace(t *testing.T) place {
	t.Helper()
	if _, err := exec.LookPath("git"); err != nil {
		if os.Getenv("CI") != "" {
			t.Fatal("there is no git command")
		}
		t.Skip("there is no git command")
	}
	t.Setenv("HOME", t.TempDir())
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	folder, err := filepath.EvalSymlinks(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	p := place{t, folder}
	p.git("init", "-q", "-b", "main")
	return p
}

func (p place) git(args ...string) string {
	p.Helper()
	cmd := exec.Command("git", append([]string{"-c", "user.name=school", "-c", "user.email=school@example.org", "-c", "protocol.file.allow=always"}, args...)...)
	cmd.Dir, cmd.Env = p.folder, surroundings(os.Environ())
	out, err := cmd.CombinedOutput()
	if err != nil {
		p.Fatalf("git %v: %v\n%s", args, err, out)
	}
	return strings.TrimSpace(string(out))
}

func (p place) write(name, text string) {
	p.Helper()
	at := filepath.Join(p.folder, filepath.FromSlash(name))
	if err := os.MkdirAll(filepath.Dir(at), 0o755); err != nil {
		p.Fatal(err)
	}
	if err := os.WriteFile(at, []byte(text), 0o644); err != nil {
		p.Fatal(err)
	}
}

func (p place) commit() {
	p.Helper()
	p.git("add", "-A")
	p.git("commit", "-q", "-m", "x")
}

func (p place) open(below string) opened {
	p.Helper()
	r, err := Open(context.Background(), filepath.Join(p.folder, below))
	if err != nil {
		p.Fatal(err)
	}
	return opened{r}
}

// opened is a repository with the ways through a commit in one call.
type opened struct{ Repo }

// read is the content of one file of a revision.
func (r opened) read(rev, at string) ([]byte, error) {
	ctx := context.Background()
	c, err := r.At(ctx, rev)
	if err != nil {
		return nil, err
	}
	f, err := c.File(ctx, at)
	if err != nil {
		return nil, err
	}
	var out []byte
	err = c.Read(ctx, []File{f}, 1<<20, func(_ File, data []byte) error {
		out = data
		return nil
	})
	return out, err
}

// files is the paths below a folder of a revision.
func (r opened) files(rev, folder string) ([]string, error) {
	ctx := context.Background()
	c, err := r.At(ctx, rev)
	if err != nil {
		return nil, err
	}
	files, err := c.Files(ctx, folder)
	var out []string
	for _, f := range files {
		out = append(out, f.Path)
	}
	return out, err
}

// Names that are awkward for quoting, pathspecs and line ends.
var awkward = []string{"a b.yaml", "bæd.yaml", "*.yaml", ":(top)x.yaml", "-x.yaml", "new\nline.yaml", `q"uote.yaml`}

func TestReadsWhatStoodInARevision(t *testing.T) {
	p := newPlace(t)
	for _, name := range awkward {
		p.write("loops/"+name, "old "+name)
	}
	p.commit()
	for _, name := range awkward {
		p.write("loops/"+name, "new")
	}
	r := p.open("loops")
	for _, name := range awkward {
		at, err := r.Path("./" + name)
		if err != nil {
			t.Fatal(err)
		}
		if got, err := r.read("HEAD", at); err != nil || string(got) != "old "+name {
			t.Errorf("%q reads as %q, %v", name, got, err)
		}
	}
	for _, below := range []string{"loops", "loops/", "."} {
		got, err := r.files("main", below)
		if err != nil || len(got) != len(awkward) || !slices.IsSorted(got) || !slices.Contains(got, "loops/new\nline.yaml") {
			t.Errorf("below %s stand %q, %v", below, got, err)
		}
	}
}

func TestPathsGoFromTheTopOrFromHere(t *testing.T) {
	r := Repo{within: "loops/old"}
	for written, want := range map[string]string{
		"a.yaml": "a.yaml", "./a.yaml": "loops/old/a.yaml", "../a.yaml": "loops/a.yaml", "": ".", ".": "loops/old", "./": "loops/old", "a/../b": "b", "../..": ".",
	} {
		if got, err := r.Path(written); err != nil || got != want {
			t.Errorf("%q is %q, %v", written, got, err)
		}
	}
	for _, out := range []string{"../../../a", "a/../../b", "/etc/passwd", "../../.."} {
		if got, err := r.Path(out); err == nil {
			t.Errorf("%q is %q", out, got)
		}
	}
}

func TestLinksAndSubmodulesAreNoFiles(t *testing.T) {
	other := newPlace(t)
	other.write("inner.yaml", "x")
	other.commit()
	p := newPlace(t)
	p.write("loop.yaml", "x")
	if err := os.Symlink("/etc/passwd", filepath.Join(p.folder, "link.yaml")); err != nil {
		t.Fatal(err)
	}
	p.git("submodule", "--quiet", "add", other.folder, "sub")
	p.commit()
	r := p.open("")
	got, err := r.files("HEAD", ".")
	if want := []string{".gitmodules", "loop.yaml"}; err != nil || !slices.Equal(got, want) {
		t.Errorf("files are %q, %v", got, err)
	}
	for _, name := range []string{"link.yaml", "sub"} {
		if _, err := r.read("HEAD", name); err == nil || !strings.Contains(err.Error(), "symbolic link or a submodule") {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestWhatWasTouchedSinceItParted(t *testing.T) {
	p := newPlace(t)
	for _, name := range []string{"same.yaml", "changed.yaml", "gone.yaml", "staged.yaml", "moved.yaml"} {
		p.write(name, "old text of "+name)
	}
	p.write(".gitignore", "*.tmp\n")
	p.commit()
	p.git("checkout", "-q", "-b", "work")
	p.write("committed.yaml", "x")
	p.commit()
	p.git("checkout", "-q", "main")
	p.write("elsewhere.yaml", "x") // on the other side: not ours
	p.commit()
	p.git("checkout", "-q", "work")
	p.write("changed.yaml", "new")
	p.write("staged.yaml", "new")
	p.git("add", "staged.yaml")
	p.git("mv", "moved.yaml", "sub-moved.yaml")
	p.write("bæ\nd.yaml", "x")
	p.write("notes.tmp", "x")
	if err := os.Remove(filepath.Join(p.folder, "gone.yaml")); err != nil {
		t.Fatal(err)
	}
	got, err := p.open("").Touched(context.Background(), "main")
	want := []string{"bæ\nd.yaml", "changed.yaml", "committed.yaml", "gone.yaml", "moved.yaml", "staged.yaml", "sub-moved.yaml"}
	if err != nil || !slices.Equal(got, want) {
		t.Errorf("touched are %q, %v", got, err)
	}
}

func TestErrorsSayWhatToDo(t *testing.T) {
	p := newPlace(t)
	r := p.open("")
	if _, err := r.Touched(context.Background(), "HEAD"); err == nil {
		t.Error("a repository without a commit has touched files")
	}
	p.write("loops/a.yaml", "x")
	p.commit()
	ctx := context.Background()
	for _, c := range []struct {
		name, want string
		call       func() error
	}{
		{"no revision", "there is no revision `nope` here; `git branch --all` lists", func() error { _, err := r.read("nope", "loops/a.yaml"); return err }},
		{"an option", "`--help` is no revision", func() error { _, err := r.files("--help", "."); return err }},
		{"an option that writes", "is no revision", func() error { _, err := r.Touched(ctx, "--output=stolen"); return err }},
		{"nothing", "`` is no revision", func() error { _, err := r.Touched(ctx, ""); return err }},
		{"a blob for a commit", "there is no revision", func() error { _, err := r.Touched(ctx, "HEAD:loops/a.yaml"); return err }},
		{"no file", "there is no `b.yaml` in `HEAD`", func() error { _, err := r.read("HEAD", "b.yaml"); return err }},
		{"a folder", "`loops` is a folder in `HEAD`", func() error { _, err := r.read("HEAD", "loops"); return err }},
		{"a file for a folder", "`loops/a.yaml` is no folder", func() error { _, err := r.files("HEAD", "loops/a.yaml"); return err }},
		{"two lines", "is no revision", func() error { _, err := r.read("HEAD\nx", "loops/a.yaml"); return err }},
		{"no repository", "in no work tree of git", func() error { _, err := Open(ctx, t.TempDir()); return err }},
		{"no folder", "check that the folder is there", func() error { _, err := Open(ctx, p.folder+"/nowhere"); return err }},
	} {
		if err := c.call(); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	if _, err := os.Stat(filepath.Join(p.folder, "stolen")); err == nil {
		t.Error("an option in place of a revision wrote a file")
	}
}

func TestNothingOfTheRepositoryIsRun(t *testing.T) {
	p := newPlace(t)
	p.write("a.yaml", "old")
	p.write(".gitattributes", "*.yaml diff=shout\n")
	p.commit()
	mark := filepath.Join(t.TempDir(), "ran")
	for _, key := range []string{"core.fsmonitor", "core.pager", "pager.diff", "pager.ls-tree", "diff.external", "diff.shout.command", "diff.shout.textconv", "core.sshCommand", "core.editor"} {
		p.git("config", key, "touch "+mark+"; true")
	}
	hooks := t.TempDir()
	for _, hook := range []string{"post-index-change", "post-checkout", "reference-transaction"} {
		if err := os.WriteFile(filepath.Join(hooks, hook), []byte("#!/bin/sh\ntouch "+mark+"\n"), 0o755); err != nil {
			t.Fatal(err)
		}
	}
	p.git("config", "core.hooksPath", hooks)
	p.write("a.yaml", "new")
	if err := os.RemoveAll(mark); err != nil { // the calls of the test itself may have run some
		t.Fatal(err)
	}
	r := p.open("")
	ctx := context.Background()
	text, err := r.read("HEAD", "a.yaml")
	if err != nil || string(text) != "old" {
		t.Errorf("it reads %q, %v", text, err)
	}
	if _, err := r.files("HEAD", "."); err != nil {
		t.Error(err)
	}
	if got, err := r.Touched(ctx, "HEAD"); err != nil || !slices.Equal(got, []string{"a.yaml"}) {
		t.Errorf("touched are %q, %v", got, err)
	}
	if _, err := os.Stat(mark); err == nil {
		t.Error("a program that the repository names was run")
	}
}

// The surroundings do not lead to another repository.
func TestSurroundingsDoNotLeadElsewhere(t *testing.T) {
	other := newPlace(t)
	other.write("a.yaml", "other")
	other.commit()
	p := newPlace(t)
	p.write("a.yaml", "ours")
	p.commit()
	for name, value := range map[string]string{
		"GIT_DIR": other.folder + "/.git", "GIT_WORK_TREE": other.folder, "GIT_INDEX_FILE": "/nowhere", "GIT_EXTERNAL_DIFF": "false", "GIT_OBJECT_DIRECTORY": "/nowhere",
		"GIT_CONFIG_COUNT": "1", "GIT_CONFIG_KEY_0": "core.bare", "GIT_CONFIG_VALUE_0": "true", "GIT_CONFIG_PARAMETERS": "'core.bare=true'", "GIT_LITERAL_PATHSPECS": "0",
	} {
		t.Setenv(name, value)
	}
	if text, err := p.open("").read("HEAD", "a.yaml"); err != nil || string(text) != "ours" {
		t.Errorf("it reads %q, %v", text, err)
	}
}

func TestBoundsAndEnds(t *testing.T) {
	p := newPlace(t)
	p.write("a.yaml", strings.Repeat("x", 5000))
	p.commit()
	if _, err := runBounded(context.Background(), p.folder, 4999, "cat-file", "blob", "HEAD:a.yaml"); err != errTooMuch {
		t.Errorf("beyond its bound: %v", err)
	}
	if out, err := runBounded(context.Background(), p.folder, 5000, "cat-file", "blob", "HEAD:a.yaml"); err != nil || len(out) != 5000 {
		t.Errorf("at its bound: %d bytes, %v", len(out), err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	r := p.open("").Repo
	cancel()
	if _, err := r.At(ctx, "HEAD"); err != context.Canceled {
		t.Errorf("once it is called off: %v", err)
	}
}
