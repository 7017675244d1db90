package system

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"
)

func TestPlaces(t *testing.T) {
	s := mustRead(t, "base.yaml", []byte(base))
	for pointer, want := range map[string]Place{
		"":                              {"base.yaml", 1, 1},
		"/dryfit":                       {"base.yaml", 1, 9},
		"/vessels":                      {"base.yaml", 5, 1},
		"/vessels/tank":                 {"base.yaml", 6, 3},
		"/vessels/tank/stands_at":       {"base.yaml", 9, 16},
		"/vessels/tank/form/cylinder":   {"base.yaml", 8, 12},
		"/vessels/tank/weir/ring":       {"base.yaml", 6, 3}, // nothing there: the vessel
		"/lines/down/pieces/2":          {"base.yaml", 25, 9},
		"/lines/down/pieces/2/bend":     {"base.yaml", 25, 15},
		"/lines/down/pieces/0/through":  {"base.yaml", 23, 9},
		"/lines/down/pieces/99/across":  {"base.yaml", 22, 5},
		"/nowhere/at/all":               {"base.yaml", 1, 1},
		"/lines/down/pieces/-1":         {"base.yaml", 22, 5},
		"/lines/down/pieces/2/bend/low": {"base.yaml", 25, 15},
	} {
		if got := s.Document.Place(pointer); got != want {
			t.Errorf("place of %q: %v, want %v", pointer, got, want)
		}
	}
}

// TestTokens uses the table of RFC 6901 (2013), section 5.
func TestTokens(t *testing.T) {
	for pointer, want := range map[string][]string{
		"": nil, "/foo": {"foo"}, "/foo/0": {"foo", "0"}, "/": {""}, "/a~1b": {"a/b"}, "/c%d": {"c%d"}, "/e^f": {"e^f"},
		"/g|h": {"g|h"}, "/i\\j": {"i\\j"}, "/k\"l": {"k\"l"}, "/ ": {" "}, "/m~0n": {"m~n"}, "/~01": {"~1"},
	} {
		got := tokens(pointer)
		if !slices.Equal(got, want) {
			t.Errorf("tokens(%q) = %q, want %q", pointer, got, want)
		}
		back := ""
		for _, token := range want {
			back = child(back, token)
		}
		if back != pointer {
			t.Errorf("the pointer of %q is %q, want %q", want, back, pointer)
		}
	}
}

// TestScalars uses the JSON schema of YAML 1.2.2 (2021), section 10.2: what a
// plain scalar is, and its example 10.6; numbers that JSON does not have are text here.
func TestScalars(t *testing.T) {
	for written, want := range map[string]form{
		"null": null, "~": null, "": null, "true": boolean, "false": boolean,
		"0": number, "-0": number, "3": number, "-19": number, "0.": number, "12e03": number, "-2E+05": number, "6.9": number,
		"True": text, "yes": text, "off": text, "007": text, "0o7": text, "0x3A": text, ".inf": text, "-.INF": text, ".nan": text,
		"+12.3": text, "1_000": text, "190:20:30": text, "2001-12-14": text, "'12'": text, `"true"`: text, "12 mm": text, "1e999": text,
	} {
		ps := newProblems(&Document{File: "x"})
		root := parse([]byte("a: "+written+"\n"), ps)
		if got := root.get("a"); got.form != want {
			t.Errorf("%q is read as %d, want %d", written, got.form, want)
		}
		if written == "1e999" != (len(ps.list) > 0) {
			t.Errorf("%q: %v", written, ps.list)
		}
	}
}

func TestFileAsText(t *testing.T) {
	deep := strings.Repeat("[", 60) + strings.Repeat("]", 60)
	for name, c := range map[string]struct{ data, want string }{
		"empty":          {"", "1:1: found an empty file: start with `dryfit: 1` and a name"},
		"comments only":  {"# nothing\n\n", "1:1: found an empty file: start with `dryfit: 1` and a name"},
		"list":           {"- 1\n- 2\n", "1:1: found a list at the top: start with `dryfit: 1`, then one key a line"},
		"text":           {"hello\n", "1:1: found `hello` at the top: start with `dryfit: 1`, then one key a line"},
		"NUL":            {"dryfit: 1\nname: a\x00b\n", "2:8: found the control character U+0000: take it out: a system file is plain text"},
		"not UTF-8":      {"dryfit: 1\nname: caf\xe9\n", "2:10: found the byte 0xe9: save the file as UTF-8 text"},
		"UTF-16":         {"\xff\xfed\x00r\x00", "1:1: found the byte 0xff: save the file as UTF-8 text"},
		"escape":         {"name: \"\\e[31m\"\n", "1:7: found a control character in text: take it out: values are plain text"},
		"deep":           {"name: " + deep, "1:47: found values nested too deep: nest at most 40 deep"},
		"large":          {strings.Repeat("# x\n", 1_500_000), "1:1: found a file of 6.0 MB: a system file has at most 1 MB"},
		"just too large": {strings.Repeat("# x\n", 250_000) + "x", "1:1: found a file of 1.1 MB: a system file has at most 1 MB"},
		"long text":      {"name: " + strings.Repeat("x", 2001), "1:7: found a text that is too long: use at most 2000 letters"},
		"many keys":      {"name: {" + strings.Repeat("a: 1, ", 501) + "}", "1:7: found a mapping with 501 keys: a mapping holds at most 500 keys"},
		"long list":      {"name: [" + strings.Repeat("1, ", 301) + "]", "1:7: found a list of 301: a list holds at most 300 values"},
		"key of a list":  {"? [a]\n: 1\n", "1:3: found a key that is no plain text: write `key: value`"},
		"aliases":        {"a: &a 1\nb: [" + strings.Repeat("*a, ", 101) + "]\n", "2:405: found one alias too many: use at most 100"},
		"doublings":      {doublings(), "found one alias too many: use at most 100"},
		"billion laughs": {laughs(), "found more values than a loop can need: a file holds at most 50000 values, aliases written out"},
	} {
		s, problems := Read("x", []byte(c.data))
		if s != nil {
			t.Errorf("%s: read", name)
		}
		if got := table(problems); !strings.Contains(got, c.want+"\n") {
			t.Errorf("%s: got\n%swant %s", name, got, c.want)
		}
	}
}

// TestBrokenJSON wants JSON to be named as such, by the name of the file or its first letters.
func TestBrokenJSON(t *testing.T) {
	for _, c := range []struct{ file, data, want string }{
		{"a.json", `{"dryfit": 1 "name": "x"}`, "1:14: found broken JSON: no comma or closing brace before this: put a comma between the values"},
		{"a.json", "{\n  \"dryfit\": 1,\n  \"name\": \"é\"\n  \"vessels\": {}\n}", "4:3: found broken JSON: no comma or closing brace before this: put a comma between the values"},
		{"a.json", `{"dryfit": 1, "name" "x"}`, "1:22: found broken JSON: a key without its colon: write `\"key\": value`"},
		{"a.JSON", "{\n  dryfit: 1\n}}\n", "2:3: found broken JSON: a key that is not in double quotes: write `\"key\": value`, and no comma after the last one"},
		{"a.json", `{"dryfit": 1, "name": }}`, "1:23: found broken JSON: no value that JSON has: put text in double quotes; write no comma after the last value"},
		{"a.json", `{"x": [1 2]]}`, "1:10: found broken JSON: no comma or closing bracket before this: put a comma between the values"},
		{"-", "{\n\"dryfit\": 1\n}\n}\n", "4:1: found broken JSON: more after the closing brace: take it out: one pair of braces holds the whole file"},
		{"-", `{"name": "a\qb"}`, "1:13: found broken JSON: a backslash that JSON does not know: write two for one backslash"},
		{"a.json", `{"dryfit": 1, "name": "x"`, "1:1: found a bracket that is not closed: close it, and put commas between the values"},
		{"a.json", `{"dryfit": 1, "name": "x}`, "1:23: found a quote that is not closed: close the quote"},
		{"a.json", `{"name": trua}}`, "1:13: found broken JSON: a word that JSON does not know: put text in double quotes"},
		{"a.json", `{"x": 1.x}}`, "1:11: found a line that is not JSON: "},
		{"a.yaml", "{dryfit: 1}\n}\n", "2:1: found a line that is not YAML: "},
	} {
		s, problems := Read(c.file, []byte(c.data))
		if got := table(problems); s != nil || len(problems) != 1 || !strings.HasPrefix(got, c.file+":"+c.want) {
			t.Errorf("%s: got\n%swant %s", c.data, got, c.want)
		}
	}
}

// laughs uses a large anchored list several times.
func laughs() string {
	return "a: &a [" + strings.Repeat("["+strings.Repeat("x, ", 20)+"], ", 300) + "]\nb: [*a, *a, *a, *a, *a, *a, *a, *a]\n"
}

// doublings uses a list three times in the next, twelve times over.
func doublings() string {
	var b strings.Builder
	b.WriteString("a: &a [x, x, x]\n")
	for n := 'a'; n < 'm'; n++ {
		fmt.Fprintf(&b, "%c: &%[1]c [*%[2]c, *%[2]c, *%[2]c]\n", n+1, n)
	}
	return b.String()
}

// TestLineEnds reads the base with the line ends and the byte order mark of other editors.
func TestLineEnds(t *testing.T) {
	want := fingerprint(mustRead(t, "x", []byte(base)))
	for name, data := range map[string][]byte{
		"CRLF": bytes.ReplaceAll([]byte(base), []byte("\n"), []byte("\r\n")),
		"BOM":  append([]byte("\xef\xbb\xbf"), base...),
	} {
		if got := fingerprint(mustRead(t, name, data)); got != want {
			t.Errorf("%s: got\n%s\nwant\n%s", name, got, want)
		}
	}
}

// TestAnchors lets an anchored value be used twice; its mistake is told once, where it stands.
func TestAnchors(t *testing.T) {
	text := "dryfit: 1\nname: x\nvessels:\n  a: &v {role: store, form: {cylinder: {inside: 1 m, height: 1 m}}}\n  b: *v\n"
	mustRead(t, "x", []byte(text))
	_, problems := Read("x", []byte(strings.Replace(text, "inside: 1 m", "inside: 1", 1)))
	if got := table(problems); got != "x:4:49: found `1`: a unit is missing: write 1 mm\n" {
		t.Error(got)
	}
}
