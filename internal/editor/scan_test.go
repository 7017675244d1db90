package editor

import (
	"bufio"
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"dryfit/internal/system"
)

// In every system file of the project each value of the reader stands where the scanner says, and nothing else.
func TestScannerAgreesWithReader(t *testing.T) {
	files, err := filepath.Glob("../../testdata/systems/*.yaml")
	more, _ := filepath.Glob("../../testdata/systems/*/*.yaml")
	if err != nil || len(files) < 5 {
		t.Fatal(err, files)
	}
	for _, file := range append(files, more...) {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		s, _, _ := system.ReadAsFar(file, data)
		if s == nil || strings.Contains(file, "mistakes") {
			continue
		}
		root, x := scan(string(data)), newText(string(data), false)
		var walk func(p system.Part, path []string)
		walk = func(p system.Part, path []string) {
			n := root.at(path...)
			if n == nil {
				t.Errorf("%s: the scanner has nothing at %v", file, path)
				return
			}
			at := s.Document.Place(pointer(path))
			if items, is := p.Items(); is {
				for i, item := range items {
					walk(item, steps(system.Element(pointer(path), i)))
				}
				return
			}
			if p.IsMapping() {
				for _, k := range p.Keys() {
					v, _ := p.Key(k)
					walk(v, append(append([]string{}, path...), k))
				}
				return
			}
			if text, ok := s.Document.Text(pointer(path)); ok && (n.word != text || x.place(at.Line, at.Column) != n.value.from) {
				t.Errorf("%s: at %v the reader has %q at byte %d, the scanner %q at %d", file, path, text, x.place(at.Line, at.Column), n.word, n.value.from)
			}
		}
		walk(s.Document.Whole(), nil)
	}
}

// What is half typed does not take the rest of the file with it.
func TestScanHalfTyped(t *testing.T) {
	for _, one := range []struct {
		text, at, word string
	}{
		{"a: {b: 1, c\nd: 2\n", "d", "2"},
		{"a:\n  - x: {b: [1, 2\n  - y: 3\nd: 4\n", "a/1/y", "3"},
		{"a:\n  b\n  c: 1\n", "a/c", "1"},
		{"a: \"open\nb: 2\n", "b", "2"},
		{"a:\n- x\n- y: 1\n  z: 2\nb: 3\n", "a/1/z", "2"},
		{"a: &here {b: 1}\nc: *here\n", "a/b", "1"},
		{"note: |\n  key: 1\n  more\nb: 2\n", "b", "2"},
		{"note:\n  plain text\nb: 2\n", "note", "plain text"},
		{"{\"a\":1,\n\"b\":{\"c\":\"x, y\"}}\n", "b/c", "x, y"},
		{"a: x # no: {\nb: 'it''s'\n", "b", "it's"},
		{"---\na: 1\n", "a", "1"},
		{"\ufeffa: 1\r\nb: 2\r\n", "b", "2"},
		{"a: {b: 1,\n    c: 2}   # done\nd: 3\n", "a/c", "2"},
		{"- - 1\n  - 2\n", "0/1", "2"},
	} {
		n := scan(one.text).at(strings.Split(one.at, "/")...)
		if n == nil || n.word != one.word {
			t.Errorf("%q: at %s stands %+v, wanted %q", one.text, one.at, n, one.word)
		}
	}
}

// Whatever is typed, the scanner ends, and every stretch that it names is in the text.
func FuzzScan(f *testing.F) {
	data, err := os.ReadFile("../../testdata/systems/quarry-road.yaml")
	if err != nil {
		f.Fatal(err)
	}
	f.Add(string(data), 700)
	for _, s := range []string{"a: {b: [", "- - - -", "\"", "a: |\n", "{]}[", "a:\n b:\n  c", "\ufeff", "---", "? x\n: y", "{a: #\n", "'a': 1", "a\r: b\r", "{\"a\": \"\\"} {
		f.Add(s, len(s))
	}
	f.Fuzz(func(t *testing.T, text string, at int) {
		if len(text) > 5000 {
			return
		}
		root := scan(text)
		root.each(func(n *node) {
			for _, s := range []span{n.name, n.value} {
				if s.from < 0 || s.to < s.from || s.to > len(text) {
					t.Fatalf("%q: a stretch from %d to %d", text, s.from, s.to)
				}
			}
			n.path()
		})
		x := newText(text, at%2 == 0)
		p := x.position(at)
		x.offset(p)
		n, _ := root.touched(x.offset(p))
		if n != nil {
			meant(root, n)
			spanAt(x, root, p.Line+1, p.Character+1)
		}
		x.with(textRange{p, x.position(at / 2)}, pen)
	})
}

// Whatever comes in, a frame is read or refused.
func FuzzFrame(f *testing.F) {
	for _, s := range []string{"Content-Length: 2\r\n\r\n{}", "content-length:2\n\n{}", "Content-Length: -1\r\n\r\n", "Content-Length: 99999999999\r\n\r\n", "X: y\r\n\r\n", "Content-Length: 5\r\n\r\n{}", "\r\n", strings.Repeat("x", 9000)} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		r := bufio.NewReaderSize(bytes.NewReader(data), mostHeader)
		for range 100 {
			got, err := readFrame(r)
			if err != nil {
				return
			}
			if len(got) > len(data) {
				t.Fatalf("%d bytes were read of %d", len(got), len(data))
			}
		}
	})
}

// A message of any content is answered or passed over, and the server goes on.
func FuzzMessage(f *testing.F) {
	for _, s := range []string{
		`{"jsonrpc":"2.0","id":1,"method":"textDocument/hover","params":{"textDocument":{"uri":"file:///x.yaml"},"position":{"line":-5,"character":99999}}}`,
		`{"method":"textDocument/didChange","params":{"textDocument":{"uri":"file:///x.yaml","version":2},"contentChanges":[{"range":{"start":{"line":9,"character":9},"end":{"line":0,"character":0}},"text":"{"}]}}`,
		`{"id":[],"method":"textDocument/completion"}`, `[]`, `null`, `{"id":2,"method":"textDocument/codeAction","params":{"textDocument":{"uri":"file:///x.yaml"}}}`, `{"method":"$/cancelRequest","params":{"id":1}}`,
	} {
		f.Add([]byte(s))
	}
	r, err := theReviewer()
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		s := newServer(t.Context(), discard{}, Options{Reviewer: r, Today: func() string { return "" }})
		s.greeted = true
		s.opened(openParams{})
		s.take([]byte(`{"method":"textDocument/didOpen","params":{"textDocument":{"uri":"file:///x.yaml","version":1,"text":"dryfit: 1\nname: x\nvessels:\n  tank: {role: fi"}}}`))
		s.take(data)
		for _, d := range s.documents {
			d.cancel()
		}
		s.work.Wait()
		s.out.close()
	})
}
