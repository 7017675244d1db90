package git

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// Many files come from one process, in their order, each cut at its bound; what is cut, empty or
// without an end of line does not shift the one behind it.
func TestManyFilesInOneProcess(t *testing.T) {
	p := newPlace(t)
	texts := map[string]string{"a.yaml": "", "b.yaml": strings.Repeat("x", 5000), "c.yaml": "no end", "d/e.yaml": "two\nlines\n", "d/f.yaml": "HEAD blob 3\n"}
	for name, text := range texts {
		p.write(name, text)
	}
	p.commit()
	ctx := context.Background()
	c, err := p.open("").At(ctx, "main")
	if err != nil {
		t.Fatal(err)
	}
	p.write("a.yaml", "later")
	p.commit() // the branch goes on; what was resolved stays
	files, err := c.Files(ctx, ".")
	if err != nil || len(files) != len(texts) {
		t.Fatalf("files are %v, %v", files, err)
	}
	var got []string
	if err := c.Read(ctx, files, 100, func(f File, data []byte) error {
		got = append(got, f.Path)
		if want := texts[f.Path]; string(data) != want[:min(len(want), 100)] {
			t.Errorf("%s reads as %d bytes, %.20q", f.Path, len(data), data)
		}
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	if want := []string{"a.yaml", "b.yaml", "c.yaml", "d/e.yaml", "d/f.yaml"}; !slices.Equal(got, want) {
		t.Errorf("read are %q", got)
	}
	enough := errors.New("enough")
	if err := c.Read(ctx, files, 100, func(File, []byte) error { return enough }); err != enough {
		t.Errorf("called off by the taker: %v", err)
	}
	if err := c.Read(ctx, nil, 100, nil); err != nil {
		t.Errorf("no file at all: %v", err)
	}
}

func TestFilesBesideAFile(t *testing.T) {
	p := newPlace(t)
	for _, name := range []string{"top.yaml", "d/a.yaml", "d/a.permits.yaml", "d/deep/b.yaml"} {
		p.write(name, name)
	}
	p.commit()
	ctx := context.Background()
	c, err := p.open("d").At(ctx, "HEAD")
	if err != nil {
		t.Fatal(err)
	}
	for at, want := range map[string][]string{"d/a.yaml": {"d/a.permits.yaml", "d/a.yaml"}, "top.yaml": {"top.yaml"}} {
		files, err := c.Beside(ctx, File{Path: at})
		var got []string
		for _, f := range files {
			got = append(got, f.Path)
		}
		if err != nil || !slices.Equal(got, want) {
			t.Errorf("beside %s stand %q, %v", at, got, err)
		}
	}
	if folder, err := c.IsFolder(ctx, "nowhere"); folder || !errors.Is(err, ErrAbsent) {
		t.Errorf("nowhere is a folder: %v, %v", folder, err)
	}
}

// A content that is lost is said by its path.
func TestALostContent(t *testing.T) {
	p := newPlace(t)
	p.write("a.yaml", "x")
	p.commit()
	object := p.git("rev-parse", "HEAD:a.yaml")
	if err := os.Remove(filepath.Join(p.folder, ".git", "objects", object[:2], object[2:])); err != nil {
		t.Fatal(err)
	}
	if _, err := p.open("").read("HEAD", "a.yaml"); err == nil || !strings.Contains(err.Error(), "git does not have the content of `a.yaml`") {
		t.Errorf("it says %v", err)
	}
}
