package corpus_test

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime/metrics"
	"strings"
	"testing"
	"time"
	"unicode"

	"dryfit/internal/corpus"
	"dryfit/internal/report"
)

// Names that mean something to a terminal, a shell, a table, a page or a build server.
var hostileNames = []string{
	"one\nand ::error::another.yaml", "\x1b[2J\x1b]0;x\x07.yaml", "-rf.yaml", "=cmd().yaml", "<script>alert(1).yaml", "](javascript:alert(1)).yaml",
	"::error file=x::y.yaml", "%0a.yaml", "\u202etxt.yaml", "a|b`c.yaml", "@everyone #1.yaml", "\u009b2J.yaml", "&amp;\"'.yaml",
}

// bomb is nine to the power of twenty words, written with aliases.
func bomb() string {
	var b strings.Builder
	b.WriteString("dryfit: 1\na0: &a0 [x, x, x, x, x, x, x, x, x]\n")
	for i := range 20 {
		fmt.Fprintf(&b, "a%d: &a%d [%s*a%d]\n", i+1, i+1, strings.Repeat(fmt.Sprintf("*a%d, ", i), 8), i)
	}
	return b.String()
}

// hostileFolder is a folder in which somebody has put the worst there is between small loops
// that are sound. It gives the names of those.
func hostileFolder(t *testing.T) (folder string, sound []string) {
	t.Helper()
	deep := strings.Repeat("d/", 200) + "loop.yaml"
	files := map[string]string{
		"bomb.yaml":           bomb(),
		"brackets.yaml":       "dryfit: 1\nx: " + strings.Repeat("[", 999_000),
		"braces.json":         `{"dryfit": 1, "x": ` + strings.Repeat(`{"a":`, 190_000),
		"crowded.yaml":        manifold(94),
		"bombed.yaml":         small,
		"bombed.permits.yaml": strings.Replace(bomb(), "dryfit: 1", "permits: []", 1),
		"led.yaml":            small,
		"led.permits.yaml":    "-> /etc/hostname",
		"chain-1.yaml":        "-> chain-2.yaml",
		"chain-2.yaml":        "-> chain-1.yaml",
		"round":               "-> .",
	}
	for i, name := range hostileNames {
		files[fmt.Sprintf("named/%02d", i)+name] = "dryfit: 1\nname: [x\n"
	}
	for _, name := range []string{"a.yaml", "bombs.yaml", "m.yaml", "named/a.yaml", deep, "z.yaml"} {
		files[name] = small
		sound = append(sound, filepath.FromSlash(name))
	}
	folder = tree(t, files)
	for _, name := range []string{"sparse.yaml", "sparse-too.yaml"} {
		path := filepath.Join(folder, name)
		if err := errors.Join(os.WriteFile(path, []byte(small), 0o644), os.Truncate(path, 10<<30)); err != nil {
			t.Fatal(err)
		}
	}
	return folder, sound
}

// peak is by how many bytes the heap grows while something is done.
func peak(do func()) uint64 {
	read := func() uint64 {
		s := []metrics.Sample{{Name: "/memory/classes/heap/objects:bytes"}}
		metrics.Read(s)
		return s[0].Value.Uint64()
	}
	start, stop, most := read(), make(chan struct{}), make(chan uint64)
	go func() {
		top := start
		for tick := time.NewTicker(2 * time.Millisecond); ; {
			select {
			case <-tick.C:
				top = max(top, read())
			case <-stop:
				most <- top - start
				return
			}
		}
	}()
	do()
	close(stop)
	return <-most
}

// soon fails a test that hangs; it is far more than is needed, for slow machines.
func soon(t *testing.T, do func()) {
	t.Helper()
	done := make(chan struct{})
	go func() {
		defer close(done)
		do()
	}()
	select {
	case <-done:
	case <-time.After(3 * time.Minute):
		t.Fatal("it does not end")
	}
}

// Nothing that lies in a folder keeps its neighbours from being reviewed, for long or at
// all; and whatever it is called, each form stays what it is.
func TestAHostileFolder(t *testing.T) {
	folder, sound := hostileFolder(t)
	t.Chdir(folder)
	var texts map[string]string
	grown := peak(func() {
		soon(t, func() {
			files, err := corpus.Find([]string{"."})
			if err != nil {
				t.Error(err)
				return
			}
			texts = everyForm(t, files, corpus.Batch{Workers: 2, Most: 5 * time.Second, Whole: true, Cache: cacheIn(t, t.TempDir())}, report.Options{Width: 80})
		})
	})
	if grown > 1<<30 {
		t.Errorf("the heap grew by %d MB", grown>>20)
	}
	said := map[string]map[string]any{}
	for _, l := range strings.Split(strings.TrimSpace(texts["lines"]), "\n") {
		if m := object(t, l); m["line"] == "file" {
			said[m["file"].(string)] = m
		}
	}
	for _, name := range sound {
		if m := said[name]; m == nil || m["exit_status"] == 2. || m["exit_status"] == 3. {
			t.Errorf("%.40s, which is sound, is not reviewed: %v", name, m)
		}
	}
	for _, name := range []string{"bomb.yaml", "brackets.yaml", "braces.json", "bombed.yaml", "led.yaml", "sparse.yaml"} {
		if m := said[name]; m == nil || m["exit_status"] != 2. {
			t.Errorf("%s comes to %v", name, m)
		}
	}
	// The crowded loop has its verdicts where the machine is fast enough for them, and never its remedies.
	unread, _ := said["crowded.yaml"]["unread"].(string)
	if !strings.Contains(unread, "took more than 5s") && !strings.Contains(texts["json"], `"no_remedies":"to look for remedies of a loop of this size takes more than 5s`) {
		t.Errorf("the crowded loop comes to %v", said["crowded.yaml"])
	}
	if n := len(said); n != len(sound)+len(hostileNames)+8 {
		t.Errorf("%d files are spoken of", n)
	}
	plainForms(t, texts)
}

// plainForms holds texts to signs that print, and XML to be well formed.
func plainForms(t *testing.T, texts map[string]string) {
	t.Helper()
	for form, text := range texts {
		for i, r := range text {
			if r != '\n' && !unicode.IsPrint(r) {
				t.Errorf("%s holds %U: %q", form, r, text[max(0, i-40):i+4])
				break
			}
		}
	}
	for d := xml.NewDecoder(strings.NewReader(texts["junit"])); ; {
		if _, err := d.Token(); err == io.EOF {
			break
		} else if err != nil {
			t.Fatal(err)
		}
	}
}

// The permits of a folder are not read through a link that leads out of it, nor are the files of a pattern.
func TestNoLinkLeadsOutOfAPattern(t *testing.T) {
	outside := tree(t, map[string]string{"secret.yaml": small, "secret.permits.yaml": "permits: []\n"})
	folder := tree(t, map[string]string{
		"loop.yaml":         small,
		"loop.permits.yaml": "-> " + outside + "/secret.permits.yaml",
		"link.yaml":         "-> " + outside + "/secret.yaml",
		"near.yaml":         "-> loop.yaml",
		"out":               "-> " + outside,
		"round":             "-> .",
	})
	for _, arg := range []string{folder, folder + "/*.yaml", folder + "/**/*.yaml", folder + "/{loop,link}.yaml"} {
		files, err := corpus.Find([]string{arg})
		if got := strings.Join(names(folder, files), " "); err != nil || got != "loop.yaml" {
			t.Errorf("%s gives %q %v", arg, got, err)
			continue
		}
		if list, data, problems := files[0].Permits(); len(problems) != 1 || data != nil || list != nil {
			t.Errorf("%s: the permits elsewhere are read: %q", arg, data)
		}
	}
}

// A file that is written to while it is read comes to what one of its states comes to, and
// what is kept of it is kept under the bytes that were read.
func TestFilesThatChangeWhileTheyAreRead(t *testing.T) {
	other := strings.Replace(small, "name: small", "name: other", 1)
	t.Chdir(tree(t, map[string]string{"a.yaml": small, "b.yaml": other}))
	files := []corpus.File{corpus.Named("a.yaml"), corpus.Named("b.yaml")}
	cache, look := cacheIn(t, t.TempDir()), report.Options{Width: 80}
	stop, stopped := make(chan struct{}), make(chan struct{})
	go func() {
		defer close(stopped)
		for i := 0; ; i++ {
			select {
			case <-stop:
				return
			default:
				for k, name := range []string{"a.yaml", "b.yaml"} {
					text := []string{small, other, small[:60], ""}[(i+k)%4]
					if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
						t.Error(err)
					}
				}
			}
		}
	}()
	for range 10 {
		texts := everyForm(t, files, corpus.Batch{Workers: 2, Whole: true, Cache: cache}, look)
		if strings.Contains(texts["lines"], `"fault"`) {
			t.Errorf("it falls over: %s", texts["lines"])
		}
	}
	close(stop)
	<-stopped
	for name, text := range map[string]string{"a.yaml": other, "b.yaml": small} {
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	same(t, "after the changes", everyForm(t, files, corpus.Batch{Whole: true, Cache: cache}, look), everyForm(t, files, corpus.Batch{Whole: true}, look))
}

// A file that may not be read hides only itself.
func TestAFileThatMayNotBeRead(t *testing.T) {
	if os.Geteuid() == 0 {
		t.Skip("whoever may do everything may read it")
	}
	t.Chdir(tree(t, map[string]string{"a.yaml": small, "shut.yaml": small, "z.yaml": small}))
	if err := os.Chmod("shut.yaml", 0); err != nil {
		t.Fatal(err)
	}
	texts := everyForm(t, []corpus.File{corpus.Named("a.yaml"), corpus.Named("shut.yaml"), corpus.Named("z.yaml")}, corpus.Batch{Workers: 2}, report.Options{Width: 80})
	if !strings.Contains(texts["text"], "may not be opened") || strings.Count(texts["lines"], `"line":"file"`) != 3 {
		t.Error(texts["text"])
	}
}
