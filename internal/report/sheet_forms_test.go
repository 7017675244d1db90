package report

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"unicode"

	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// FIPS 180-4 and the NIST example of SHA-256: the digest of "abc".
func TestHashOf(t *testing.T) {
	if got, want := HashOf([]byte("abc")), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"; got != want {
		t.Errorf("%s, and not %s", got, want)
	}
}

// The hash of the book changes with a word, a name and a folder, and with nothing else.
func TestBookHash(t *testing.T) {
	of := func(files map[string]string) string {
		folder := fstest.MapFS{}
		for name, text := range files {
			folder[name] = &fstest.MapFile{Data: []byte(text)}
		}
		sum, err := BookHash(folder)
		if err != nil {
			t.Fatal(err)
		}
		return sum
	}
	base := of(map[string]string{"a/x": "one", "b/y": "two"})
	if again := of(map[string]string{"b/y": "two", "a/x": "one"}); again != base {
		t.Error("the order in which files are put in counts")
	}
	for _, other := range []map[string]string{{"a/x": "one", "b/y": "too"}, {"a/x": "one", "c/y": "two"}, {"a/x": "one"}, {"a/x": "onetwo", "b/y": ""}} {
		if of(other) == base {
			t.Errorf("%v has the same hash", other)
		}
	}
}

func TestStamps(t *testing.T) {
	s := Stamp{File: HashOf([]byte("f")), Book: HashOf([]byte("b")), Version: "v1.2 +dirty", Units: "both", AsOf: "2026-03-14"}
	for _, form := range []string{`<meta content="` + strings.ReplaceAll(s.String(), "+", "&#43;") + `">`, "<!-- " + s.String() + " -->", "stamp,0," + s.String() + ",,"} {
		got, err := ReadStamp([]byte(form))
		if err != nil || got.File != s.File || got.Book != s.Book || got.Version != "v1.2_+dirty" || got.Units != "both" || got.AsOf != s.AsOf {
			t.Errorf("%s reads %+v, %v", form, got, err)
		}
		if changed := got.Since(s); len(changed) != 0 {
			t.Errorf("%v has changed", changed)
		}
	}
	plain := s
	s.Guide = HashOf([]byte("g"))
	if marked, err := ReadStamp([]byte(s.String())); err != nil || marked.Guide != s.Guide || marked.AsOf != s.AsOf || !strings.HasSuffix(s.String(), " guide="+s.Guide) {
		t.Errorf("%s reads %+v, %v", s, marked, err)
	}
	if changed := plain.Since(s); len(changed) != 2 || changed[0] != "the marking guide has changed: none then, "+s.Guide[:12]+" now" {
		t.Errorf("%q", changed) // and the version, which is not written as it is read
	}
	s = plain
	other := s
	other.File, other.Book, other.Version = HashOf(nil), HashOf(nil), "v2"
	was, _ := ReadStamp([]byte(s.String()))
	if changed := was.Since(other); len(changed) != 3 || !strings.HasPrefix(changed[0], "the system file has changed") || !strings.HasPrefix(changed[1], "the book") || !strings.HasPrefix(changed[2], "dryfit has changed") {
		t.Errorf("%q", changed)
	}
	for _, none := range []string{"", "dryfit-sheet file=x", strings.Repeat(" ", 2000) + s.String()} {
		if _, err := ReadStamp([]byte(none)); err == nil {
			t.Errorf("%.40q has a stamp", none)
		}
	}
}

// OWASP, CSV Injection: a cell that begins with one of = + - @ is worked out by a spreadsheet, also behind a tab or the end of a line.
func TestHarmlessCell(t *testing.T) {
	for text, want := range map[string]string{
		"":             "",
		"tank":         "tank",
		"-12.5":        "-12.5",
		"-":            "'-",
		"-2+3":         "'-2+3",
		"--1":          "'--1",
		"=1+1":         "'=1+1",
		"+1":           "'+1",
		"@SUM(1)":      "'@SUM(1)",
		"\t=1":         "' =1",
		"\n=1":         "' =1",
		"  =1":         "'  =1",
		"a = b":        "a = b",
		"one\ntwo":     "one two",
		"\u202eturned": `\u202eturned`,
	} {
		if got := harmlessCell(text); got != want {
			t.Errorf("%q: %q, and not %q", text, got, want)
		}
	}
}

// CommonMark 0.31, 2.4: a backslash before a punctuation mark takes its meaning away; entities stand for their characters.
func TestMarked(t *testing.T) {
	for text, want := range map[string]string{
		"1110 L/h at 21 degC.": "1110 L/h at 21 degC.",
		"2.02":                 "2.02",
		"1. first":             `1\. first`,
		"- item":               `\- item`,
		"a | b":                `a \| b`,
		"<b>&":                 "&lt;b&gt;&amp;",
		"[x](y)":               `\[x\](y)`,
		`a\b`:                  `a\\b`,
		"`x`":                  "\\`x\\`",
		"run_clean":            `run\_clean`,
		"http://x www.x":       "http&#58;//x www&#46;x",
		"me@x":                 "me&#64;x",
		"/1\\ flag":            `/1\\ flag`,
		"# no heading":         `\# no heading`,
		"one\n\n# two":         `one  \# two`,
	} {
		if got := marked(text); got != want {
			t.Errorf("%q: %q, and not %q", text, got, want)
		}
	}
}

func TestSlugsAndNames(t *testing.T) {
	w := &sheeter{used: map[string]int{}}
	for _, c := range [][2]string{{"Solids-run", "solids-run"}, {"<script>", "script"}, {"../../etc", "etc"}, {"", "part"}, {"Äö", "part"}} {
		if got := slug(c[0]); got != c[1] {
			t.Errorf("%q: %q", c[0], got)
		}
	}
	got := []string{w.name("a"), w.name("a"), w.name("a-2"), w.name("a")}
	slices.Sort(got)
	if len(slices.Compact(got)) != 4 {
		t.Errorf("%v are not four names", got)
	}
}

// A number of a balance is told from a formula by the words that package working gives it.
func TestNumbersOfABalanceAreKnown(t *testing.T) {
	all := working.Solution("balance", quantity.Flow, "f", "s", func([]float64) []working.Part { return []working.Part{{}, {X: 1}} })
	if n := working.Of(all, 1, "x", quantity.Flow); n.Formula != working.PartOfBalance {
		t.Errorf("its formula is %q", n.Formula)
	}
}

// Whatever a word is, in no form does it end its line, its cell or its place.
func FuzzWords(f *testing.F) {
	for _, seed := range []string{"tank", "<script>", "=1", "- a", "a|b", "\u202e", "\x00", "1. a", "\\", "www.x", "\xff", "`", "@", "-1e5"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		m := marked(text)
		if strings.ContainsAny(m, "<>\n\r@") || strings.Contains(m, "://") {
			t.Errorf("%q: %q", text, m)
		}
		for i, r := range m {
			if strings.ContainsRune("|*`[]", r) && (i == 0 || m[i-1] != '\\') {
				t.Errorf("%q: %q", text, m)
			}
			if !unicode.IsPrint(r) {
				t.Errorf("%q: %q", text, m)
			}
		}
		c := harmlessCell(text)
		if start := strings.TrimLeft(c, " "); start != "" && strings.ContainsAny(start[:1], "=+@|%") || strings.ContainsAny(c, "\n\r\t") {
			t.Errorf("%q: %q", text, c)
		}
		if s := slug(text); s == "" || strings.Trim(s, "abcdefghijklmnopqrstuvwxyz0123456789-") != "" {
			t.Errorf("%q: %q", text, s)
		}
	})
}
