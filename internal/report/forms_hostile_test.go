package report_test

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"io"
	"os"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
	"unicode"

	"github.com/santhosh-tekuri/jsonschema/v5"

	"dryfit/internal/quantity"
	"dryfit/internal/report"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/working"
	"dryfit/schema"
)

// worded is files of every sort with one word in every place where a stranger's may come to stand.
func worded(word string) []report.Item {
	most := 0.5
	clause := func(id string) *review.Clause {
		return &review.Clause{ID: id, Chapter: "lines", Strength: review.Shall, Title: "A line shall run.", Why: "Else it stands.", Limits: []review.Limit{{Name: "flow", Most: &most}}}
	}
	judge := func(c *review.Clause, verdict review.Verdict) *review.Judgement {
		return &review.Judgement{Clause: c, Subject: word, On: word, Name: word, Title: word, Kind: quantity.Number, Value: working.Exactly(0.4), Limit: c.Limits[0], When: word, Verdict: verdict, At: "/" + word}
	}
	high, left, fact, open, met := judge(clause("too_high"), review.NotMet), judge(clause("is_left"), review.NotMet), judge(clause("is_so"), review.NotMet), judge(clause("not_said"), review.Undetermined), judge(clause("is_met"), review.Met)
	high.Value, left.Value = working.Within(0.6, 0.4, 0.7), working.Exactly(2)
	fact.Fact, fact.Word, fact.Wanted = true, word, []string{word, "A4"}
	open.Missing = []string{"/vessels/" + word + "/form", word + " is not known"}
	d := system.Deviation{Clause: word, Subject: word, Reason: word, Instead: word, Who: word, Since: word, Until: word, Pointer: "/permits/0", Place: system.Place{File: "loops/" + word, Line: 3, Column: 1}}
	holds := &review.Permit{Deviation: d, Standing: review.Holds}
	s := &review.Summary{
		File: "loops/" + word, Name: word, Status: "for-review", AsOf: "2026-03-14", Judgements: []*review.Judgement{high, fact, open, left, met},
		Permits: []*review.Permit{holds, {Deviation: d, Standing: review.NoSubject, Near: []string{word, "tank"}}},
	}
	for i, j := range s.Judgements[:4] {
		s.Findings = append(s.Findings, &review.Finding{Judgement: j, Number: i + 1, Place: system.Place{File: "loops/" + word, Line: 7, Column: 3}})
	}
	changed := review.HouseChange{Clause: "too_high", Was: high.Limit, Now: high.Limit, WasStrength: review.Should, Strength: review.Shall, Settings: []string{word}, Reason: word, Bears: review.InForce}
	s.House = &review.House{Name: word, By: word, Hash: strings.Repeat("c", 64), Setting: word, Changes: []review.HouseChange{changed, {Clause: word, Reason: word, Bears: review.Elsewhere}}}
	high.Clause.Changed = []*review.HouseChange{&changed}
	s.Findings[0].Remedies = []review.Remedy{{Text: word, Then: review.Then{Title: word, Word: word}}, {Text: word}}
	s.Findings[3].Permit = holds
	return []report.Item{
		{File: "loops/" + word, Summary: s},
		{File: "loops/" + word, Problems: []system.Problem{{File: "loops/" + word, Line: 3, Column: 7, Pointer: "/" + word, Found: word, Write: word}}},
		{File: "loops/" + word, Unread: word},
		{File: "loops/" + word, Fault: word},
	}
}

func wordedIn(t testing.TB, form string, list []report.Item) string {
	t.Helper()
	return inForm(t, form, report.Run{HeldTo: review.Shall, Version: "0.9.0", Book: strings.Repeat("b", 64), Look: report.Options{Width: 100}}, list)
}

// inForm is what a form makes of some items.
func inForm(t testing.TB, form string, run report.Run, list []report.Item) string {
	t.Helper()
	var b bytes.Buffer
	w, err := report.NewWriter(form, &b, run)
	if err != nil {
		t.Fatal(err)
	}
	for _, i := range list {
		if err := w.Add(i); err != nil {
			t.Fatal(err)
		}
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

var formSchemas = sync.OnceValue(func() map[string]*jsonschema.Schema {
	sarif, err := os.ReadFile("../../testdata/schemas/sarif-2.1.0.json")
	if err != nil {
		panic(err)
	}
	out := map[string]*jsonschema.Schema{}
	for form, text := range map[string][]byte{"sarif": sarif, "lines": schema.Lines} {
		c := jsonschema.NewCompiler()
		if err := c.AddResource(form, bytes.NewReader(text)); err != nil {
			panic(err)
		}
		out[form] = c.MustCompile(form)
	}
	return out
})

// shapes is what is left of each form without the words that strangers may choose.
func shapes(t testing.TB, word string) map[string][]string {
	t.Helper()
	list := worded(word)
	out := map[string][]string{}
	for _, form := range []string{"text", "lines", "sarif", "junit", "markdown"} {
		text := wordedIn(t, form, list)
		for _, r := range text {
			if r != '\n' && !unicode.IsPrint(r) {
				t.Fatalf("%s holds the character %U", form, r)
			}
		}
		switch form {
		case "lines":
			for _, l := range strings.Split(strings.TrimSuffix(text, "\n"), "\n") {
				out[form] = append(out[form], keysOf(t, form, l)...)
			}
		case "sarif":
			out[form] = keysOf(t, form, text)
		case "junit":
			out[form] = tagsOf(t, text)
		case "markdown":
			out[form] = holdComment(t, text)
		}
	}
	return out
}

// keysOf is the keys of a JSON text, which its schema must take.
func keysOf(t testing.TB, form, text string) []string {
	t.Helper()
	var v any
	if err := json.Unmarshal([]byte(text), &v); err != nil {
		t.Fatalf("%s: %v", form, err)
	}
	if err := formSchemas()[form].Validate(v); err != nil {
		t.Fatalf("%s: %#v", form, err)
	}
	var out []string
	var walk func(v any)
	walk = func(v any) {
		switch v := v.(type) {
		case map[string]any:
			var keys []string
			for k := range v {
				keys = append(keys, k)
			}
			slices.Sort(keys)
			for _, k := range keys {
				out = append(out, k)
				walk(v[k])
			}
		case []any:
			for _, one := range v {
				walk(one)
			}
		}
	}
	walk(v)
	return out
}

// tagsOf is the elements and attributes of XML, in their order.
func tagsOf(t testing.TB, text string) []string {
	t.Helper()
	var out []string
	for d := xml.NewDecoder(strings.NewReader(text)); ; {
		token, err := d.Token()
		if err == io.EOF {
			return out
		}
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		switch token := token.(type) {
		case xml.StartElement:
			out = append(out, token.Name.Local)
			for _, a := range token.Attr {
				out = append(out, a.Name.Local)
			}
		case xml.EndElement:
			out = append(out, "/"+token.Name.Local)
		case xml.Comment, xml.Directive:
			t.Fatalf("the XML holds %T", token)
		}
	}
}

// Signs that code hosts look for in the finished page, and what must stand behind each.
var (
	pointer = regexp.MustCompile(`&#64;|\\[#!~$]|&amp;|%|\^|:|&#58;`)
	nowhere = regexp.MustCompile(`^(?:&#8203;|[ \n,;:.]|$)`)
	leads   = regexp.MustCompile("[<@#`\\[\\]]|://|(?:^|[\\s*_~(])www\\.[\\pL\\pN_-]")
	edge    = regexp.MustCompile(`(^|[^\\])(\\\\)*\|`)
)

// holdComment holds a comment to what it writes itself, and gives the sort of each line with its cells.
func holdComment(t testing.TB, text string) []string {
	t.Helper()
	if len(text) > 60_000 {
		t.Errorf("the comment has %d bytes", len(text))
	}
	for _, at := range pointer.FindAllStringIndex(text, -1) {
		if !nowhere.MatchString(text[at[1]:]) {
			t.Errorf("%q may point away", text[at[0]:min(at[1]+20, len(text))])
		}
	}
	bare := strings.NewReplacer(`\\`, "_", `\]`, "_", `\[`, "_", "\\`", "_", `\*`, "_", `\#`, "_", "&#8203;", "_", "&#64;", "_", "&#58;", "_", "&#46;", "_").Replace(text)
	if at := leads.FindStringIndex(bare); at != nil {
		t.Errorf("the comment holds %q", bare[max(0, at[0]-30):min(len(bare), at[1]+30)])
	}
	var out []string
	for _, l := range strings.Split(text, "\n") {
		sort := "words"
		switch {
		case l == "":
			sort = "blank"
		case strings.HasPrefix(l, "|"):
			sort = strings.Repeat("|", len(edge.FindAllString(l, -1)))
		case strings.HasPrefix(l, "- "):
			sort = "item"
		}
		out = append(out, sort)
	}
	return out
}

// Whatever strangers write, each form has the same parts as with a plain word.
func TestHostileWordsStayWordsInAllForms(t *testing.T) {
	want := shapes(t, "A plain word")
	for _, word := range append([]string{
		"@everyone see #123, GH-7, !45, ~label, %9, &8, $6, ^alert#1 and :tada: :+1: @@a##1 ::a::b:", "/close", "\\", "\\|", "|", "`", "``` |", "a\\\\|b",
		"[text](http://example.org) [1](2)", "{0} {{1}}", "\x1b]0;x\x07\x1b[2J", "\u009b2J", "\xff\xfe", "\x00", "\ufffe\uffff", "\U000e0041", "&#64;x &commat;x", "%s %d %!", "é", "水", "0:#//",
	}, hostile...) {
		for form, got := range shapes(t, word) {
			if !slices.Equal(got, want[form]) {
				t.Errorf("%s of %q has %d parts and not %d; the first that differs is %s", form, word, len(got), len(want[form]), differs(got, want[form]))
			}
		}
	}
}

// The lines give back exactly what the file says.
func TestLinesKeepWords(t *testing.T) {
	for _, word := range append([]string{"\x1b[2J\u009b", "\u202e水\U000e0041\u2028"}, hostile...) {
		first, _, _ := strings.Cut(wordedIn(t, "lines", worded(word)), "\n")
		var head struct{ File, Name string }
		if err := json.Unmarshal([]byte(first), &head); err != nil || head.File != "loops/"+word || head.Name != word {
			t.Errorf("%q comes back as %q", word, head.Name)
		}
	}
}

func FuzzForms(f *testing.F) {
	for _, word := range hostile {
		f.Add(word)
	}
	want := shapes(f, "A plain word")
	f.Fuzz(func(t *testing.T, word string) {
		if all := []rune(word); len(all) > 200 {
			word = string(all[:200])
		}
		if strings.TrimSpace(word) == "" {
			return
		}
		for form, got := range shapes(t, word) {
			if !slices.Equal(got, want[form]) {
				t.Errorf("%s of %q has %d parts and not %d", form, word, len(got), len(want[form]))
			}
		}
	})
}
