package corpus_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"dryfit/internal/corpus"
)

// tree writes files into a new folder; a name with -> is a link.
func tree(t testing.TB, files map[string]string) string {
	t.Helper()
	folder := t.TempDir()
	for name, text := range files {
		path := filepath.Join(folder, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if to, link := strings.CutPrefix(text, "-> "); link {
			if err := os.Symlink(to, path); err != nil {
				t.Fatal(err)
			}
		} else if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return folder
}

func names(folder string, files []corpus.File) []string {
	var out []string
	for _, f := range files {
		rel, err := filepath.Rel(folder, f.Name)
		if err != nil {
			rel = f.Name
		}
		out = append(out, filepath.ToSlash(rel))
	}
	return out
}

const small = "dryfit: 1\nname: small\nvessels: {tub: {role: sump, form: {box: {length: 900 mm, width: 600 mm, height: 500 mm}}, stands_at: 0 mm}}\n"

func TestAFolderGivesItsSystemFilesByTheirKey(t *testing.T) {
	outside := tree(t, map[string]string{"secret.yaml": small})
	folder := tree(t, map[string]string{
		"b/loop.yaml":                small,
		"a.yml":                      "# a comment\n\"dryfit\": 1\n",
		"c.json":                     "{\n  \"name\": {\"dryfit\": 2}, \"dryfit\": 1}",
		"broken.yaml":                "name: x\ndryfit: 1\nvessels: [\n",
		"broken.json":                "{\"dryfit\": 1, \"vessels\": {",
		"loop.permits.yaml":          "permits: []\n",
		"services.yaml":              "services:\n  dryfit: {image: x}\n",
		"nested.json":                "{\"other\": {\"dryfit\": 1}}",
		"value.json":                 "{\"name\": \"dryfit\", \"x\": [\"dryfit\", 1]}",
		"review.json":                "{\"dryfit_review\": 1, \"files\": []}",
		"notes.txt":                  small,
		".hidden/loop.yaml":          small,
		".loop.yaml":                 small,
		"deep/er/UPPER.YAML":         small,
		"out.yaml":                   "-> " + outside + "/secret.yaml",
		"outside":                    "-> " + outside,
		"again.yaml":                 "-> b/loop.yaml",
		"dangling.yaml":              "-> nowhere.yaml",
		"empty.yaml":                 "",
		"a folder with blanks/l.yml": small,
	})
	files, err := corpus.Find([]string{folder, filepath.Join(folder, "a.yml")})
	if err != nil {
		t.Fatal(err)
	}
	want := []string{"a folder with blanks/l.yml", "a.yml", "b/loop.yaml", "broken.json", "broken.yaml", "c.json", "deep/er/UPPER.YAML", "loop.permits.yaml"}
	if got := names(folder, files); !slices.Equal(got, want) {
		t.Errorf("found %q\nwant  %q", got, want)
	}
	for _, f := range files[:len(files)-1] { // permits that stand beside no loop come last here
		if _, err := f.Data(); err != nil {
			t.Errorf("%s: %v", f.Name, err)
		}
	}
}

// A link that takes the place of a file after it was found does not lead out of the folder.
func TestNoLinkLeadsOutOfAFolder(t *testing.T) {
	outside := tree(t, map[string]string{"secret.yaml": small})
	folder := tree(t, map[string]string{"loop.yaml": small})
	files, err := corpus.Find([]string{folder})
	if err != nil || len(files) != 1 {
		t.Fatal(files, err)
	}
	path := filepath.Join(folder, "loop.yaml")
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(filepath.Join(outside, "secret.yaml"), path); err != nil {
		t.Fatal(err)
	}
	if data, err := files[0].Data(); err == nil {
		t.Errorf("it reads %q", data)
	}
}

func TestPatterns(t *testing.T) {
	folder := tree(t, map[string]string{"a/x.yaml": small, "a/b/y.yaml": small, "z.yaml": small, "x.permits.yaml": "permits: []", "n.txt": small})
	for pattern, want := range map[string]string{
		"**/*.yaml": "a/b/y.yaml a/x.yaml z.yaml", "*.yaml": "z.yaml", "a/?.yaml": "a/x.yaml", "a/{x,q}.yaml": "a/x.yaml",
	} {
		files, err := corpus.Find([]string{filepath.Join(folder, pattern)})
		if got := strings.Join(names(folder, files), " "); err != nil || got != want {
			t.Errorf("%s: %q %v, want %q", pattern, got, err, want)
		}
	}
	for _, pattern := range []string{"q*.yaml", "[z"} {
		if files, err := corpus.Find([]string{filepath.Join(folder, pattern)}); err == nil {
			t.Errorf("%s gives %v and no error", pattern, files)
		}
	}
	if _, err := corpus.Find([]string{tree(t, map[string]string{"n.txt": small})}); err == nil || !strings.Contains(err.Error(), "no system file") {
		t.Errorf("a folder without a system file: %v", err)
	}
}

func TestSharesTakeEveryFileOnce(t *testing.T) {
	var files []corpus.File
	for i := range 103 {
		files = append(files, corpus.Named(string(rune('a'+i%26))+strings.Repeat("x", i)))
	}
	for _, n := range []int{1, 2, 8, 103, 200} {
		taken := map[string]int{}
		least, most := len(files), 0
		for k := 1; k <= n; k++ {
			part := corpus.Share(files, k, n)
			least, most = min(least, len(part)), max(most, len(part))
			for _, f := range part {
				taken[f.Name]++
			}
		}
		if len(taken) != len(files) || most-least > 1 {
			t.Errorf("%d parts take %d of %d files, %d to %d each", n, len(taken), len(files), least, most)
		}
		for name, times := range taken {
			if times != 1 {
				t.Errorf("%s is taken %d times", name, times)
			}
		}
	}
}
