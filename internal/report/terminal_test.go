package report

import (
	"bytes"
	"flag"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode"

	"github.com/fatih/color"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
)

var update = flag.Bool("update", false, "write the golden files anew; read them before they are kept")

// golden holds what was written against a file that a person has read.
func golden(t *testing.T, name string, write func(*bytes.Buffer) error) {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(file, b.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got := b.String(); got != string(want) {
		t.Errorf("%s differs; got\n%s", file, got)
	}
}

func text(t *testing.T, r *review.Review, o Options) string {
	t.Helper()
	var b bytes.Buffer
	if err := Terminal(&b, r, o); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestTerminal(t *testing.T) {
	for name, o := range map[string]Options{
		"narrow.txt": {Width: 80},
		"wide.txt":   {Width: 140, Named: true},
		"us.txt":     {Width: 80, Units: quantity.US},
		"both.txt":   {Width: 80, Both: true},
		"colour.txt": {Width: 80, Colour: true},
	} {
		golden(t, name, func(b *bytes.Buffer) error { return Terminal(b, sample(t), o) })
	}
}

// Columns of the sample in the project's description of its look: heights end at
// column 8, numbers at 40, limits start at 53, shares end at 76, flags at 80.
func TestColumns(t *testing.T) {
	lines := strings.Split(text(t, sample(t), Options{}), "\n")
	find := func(part string) string {
		for _, l := range lines {
			if strings.Contains(l, part) {
				return l
			}
		}
		t.Fatalf("there is no line with %q", part)
		return ""
	}
	for _, c := range []struct {
		line, word string
		end        int
	}{
		{"   bend 90    ", "660", 8}, {"   bend 90    ", `/1\`, 80}, {"   bend 90    ", "0.4", 61}, {"   bend 90    ", "0.2 ", 53},
		{"together", "15.2", 52}, {"together", "24.1", 61}, {"lip, share", "0.65", 40}, {"lip, share", "1.50", 76},
		{"lip, share", "0.4 to 0.6", 62}, {"lip of the inlet well  ", `/2\`, 80}, {"sharp_bend", "file line 25", 80},
		{"~ water, running fouled", "942", 8}, {"~ water, running fouled", "~", 10}, {"for review", "for review", 80},
	} {
		l := find(c.line)
		if i := strings.Index(l, c.word); i < 0 || i+len(c.word) != c.end {
			t.Errorf("%q ends at column %d, want %d:\n%s", c.word, i+len(c.word), c.end, l)
		}
	}
}

var sgr = regexp.MustCompile("\x1b\\[([0-9;]*)m")

// What may be coloured, and how: indices of the 256-colour table, bold for what
// binds, for what is open and for cautions.
func TestColour(t *testing.T) {
	before := color.NoColor
	defer func() { color.NoColor = before }()
	plainText := text(t, sample(t), Options{})
	for _, global := range []bool{true, false} {
		color.NoColor = global // what the program as a whole says must not matter
		inked := text(t, sample(t), Options{Colour: true})
		if sgr.ReplaceAllString(inked, "") != plainText {
			t.Error("colour changes the text")
		}
		if text(t, sample(t), Options{}) != plainText {
			t.Error("there is colour where none was asked for")
		}
		allowed := map[string]string{
			"38;5;31": `^([A-Z ,-]+|[0-9]+|~)$`, "1;38;5;130": `^(/\d+\\|shall, not met)$`, "38;5;130": `^(/\d+\\|should, not met)$`,
			"1;38;5;98": `^(/\d+\\|(shall|should), undetermined)$`, "1;38;5;16;48;5;220": `^/!\\ CAUTION$`,
			"38;5;243": `^(Source|file line \d+)$`,
		}
		found := map[string]bool{}
		for _, m := range regexp.MustCompile("\x1b\\[([0-9;]*)m([^\x1b]*)\x1b").FindAllStringSubmatch(inked, -1) {
			want, known := allowed[m[1]]
			if strings.HasPrefix(m[1], "0") {
				continue
			}
			found[m[1]] = true
			if !known || !regexp.MustCompile(want).MatchString(m[2]) {
				t.Errorf("%q stands in the colour %s", m[2], m[1])
			}
		}
		if len(found) != len(allowed) {
			t.Errorf("colours used: %v", found)
		}
	}
}

// Source: WCAG 2.2, relative luminance and contrast ratio; the cube of the 256
// colours of xterm has the steps 0, 95, 135, 175, 215, 255, its greys 8 + 10 n.
func TestContrast(t *testing.T) {
	steps := []float64{0, 95, 135, 175, 215, 255}
	luminance := func(index int) float64 {
		var rgb [3]float64
		if index >= 232 {
			grey := 8 + 10*float64(index-232)
			rgb = [3]float64{grey, grey, grey}
		} else {
			n := index - 16
			rgb = [3]float64{steps[n/36], steps[n/6%6], steps[n%6]}
		}
		for i, c := range rgb {
			if c /= 255; c <= 0.04045 {
				rgb[i] = c / 12.92
			} else {
				rgb[i] = math.Pow((c+0.055)/1.055, 2.4)
			}
		}
		return 0.2126*rgb[0] + 0.7152*rgb[1] + 0.0722*rgb[2]
	}
	contrast := func(a, b float64) float64 { return (math.Max(a, b) + 0.05) / (math.Min(a, b) + 0.05) }
	for _, index := range []int{31, 130, 98, 243} {
		for _, ground := range []float64{0, 1} {
			if c := contrast(luminance(index), ground); c < 3.95 {
				t.Errorf("colour %d has a contrast of %.2f on a ground of %v", index, c, ground)
			}
		}
	}
	if c := contrast(luminance(16), luminance(220)); c < 7 {
		t.Errorf("the caution has a contrast of %.2f", c)
	}
}

// Whatever a file holds, no line is wider than its page and no control character
// reaches the terminal.
func TestStrangersFile(t *testing.T) {
	nasty := []string{
		strings.Repeat("w", 300), "a\x1b[31mred\x07\x00", "line\nbreak\r\ttab", "\u202egnp.exe\u2066", "Ka\u0308fer \u6c34\u69fd\u6c34\u69fd",
		strings.Repeat("\u6c34", 90), "\xff\xfe broken", "\u200b\u200b", "",
	}
	for _, evil := range nasty {
		for _, o := range []Options{{}, {Width: 132, Named: true}, {Width: 200, Both: true}, {Width: 1}, {Units: quantity.US, Colour: true}} {
			r := sample(t)
			r.File, r.Name, r.Status = evil, evil, evil
			for _, v := range r.System.Vessels {
				v.ID += evil
			}
			for _, l := range r.System.Lines {
				l.ID += evil
			}
			for i, f := range r.Findings {
				f.Missing = []string{evil, "/" + evil}
				f.Title, f.Word, f.When, f.Wanted = evil, evil, evil, []string{evil, evil}
				f.Remedies = []review.Remedy{{Text: evil, Then: review.Then{Title: evil, Word: evil}}}
				f.Number = i * 70
			}
			r.NotLooked = append(r.NotLooked, review.Remark{Pointer: "/" + evil}, review.Remark{Pointer: evil + "/" + evil})
			for i := range r.Ledger.Scenes {
				sc := &r.Ledger.Scenes[i]
				sc.Subject, sc.Fault, sc.Reason = evil, evil, evil
				for k := range sc.Happened {
					sc.Happened[k].Subject = evil
				}
			}
			most := 80
			if o.Width >= 132 {
				most = o.Width
			}
			checkPage(t, text(t, r, o), most)
			var b bytes.Buffer
			if err := Problems(&b, evil, []system.Problem{{File: evil, Line: 3, Found: evil, Write: evil}}, o); err != nil {
				t.Fatal(err)
			}
			checkPage(t, b.String(), max(80, min(o.Width, 160)))
		}
	}
}

func checkPage(t *testing.T, page string, most int) {
	t.Helper()
	for _, l := range strings.Split(sgr.ReplaceAllString(page, ""), "\n") {
		if width(l) > most {
			t.Errorf("%d columns wide, over %d: %q", width(l), most, l)
		}
		for _, r := range l {
			if !unicode.IsPrint(r) {
				t.Errorf("%U reaches the terminal: %q", r, l)
			}
		}
		if strings.TrimRight(l, " ") != l {
			t.Errorf("blanks at the end of %q", l)
		}
	}
}

// What is missing is named; what would be met is not.
func TestUndetermined(t *testing.T) {
	page := text(t, sample(t), Options{})
	at := strings.Index(page, "\nMAINS")
	part := page[at:strings.Index(page, "BEFORE A HOLE")]
	for _, want := range []string{"?            cannot be said yet", "Missing  `residual_current` of mains. Read the figure", `/!\ CAUTION`, "shall, undetermined: residual_current"} {
		if !strings.Contains(part, want) {
			t.Errorf("it does not say %q:\n%s", want, part)
		}
	}
	if strings.Contains(part, "at most") {
		t.Errorf("it says what would be met:\n%s", part)
	}
}

func TestOutcome(t *testing.T) {
	clause := func(s review.Strength) *review.Clause { return &review.Clause{Strength: s} }
	judge := func(c *review.Clause, verdicts ...review.Verdict) (out []*review.Judgement) {
		for _, v := range verdicts {
			out = append(out, &review.Judgement{Clause: c, Verdict: v})
		}
		return out
	}
	shall, should, third := clause(review.Shall), clause(review.Should), clause(review.Shall)
	for _, c := range []struct {
		status string
		judged [][]*review.Judgement
		want   string
	}{
		{"for-review", nil, "No clause of the book applies to this loop as it is described, so nothing can be said about it."},
		{"for-review", [][]*review.Judgement{judge(shall, review.DoesNotApply)}, "No clause of the book applies to this loop as it is described, so nothing can be said about it."},
		{"for-review", [][]*review.Judgement{judge(shall, review.Met)}, "One clause applies to this loop and one is met. Nothing is undetermined. Nothing in the book stands against it."},
		{"for-review", [][]*review.Judgement{judge(shall, review.Met, review.Met), judge(should, review.Met)},
			"Two clauses apply to this loop and all are met. Nothing is undetermined. Nothing in the book stands against it."},
		{"for-review", [][]*review.Judgement{judge(shall, review.Met, review.NotMet, review.Undetermined), judge(should, review.NotMet), judge(third, review.Met)},
			"Three clauses apply to this loop and one is met. One shall and one should are not met; nothing is undetermined. Not ready to build as drawn."},
		{"as-built", [][]*review.Judgement{judge(shall, review.NotMet)}, "One clause applies to this loop and none are met. One shall is not met; nothing is undetermined. Not right as built."},
		{"for-review", [][]*review.Judgement{judge(shall, review.Undetermined), judge(should, review.Met)},
			"Two clauses apply to this loop and one is met. One shall is undetermined. Whether it is sound cannot be said yet."},
		{"for-review", [][]*review.Judgement{judge(should, review.NotMet), judge(shall, review.Met)},
			"Two clauses apply to this loop and one is met. One should is not met; nothing is undetermined. Nothing that shall be is against it; what should be is worth a thought."},
	} {
		r := &review.Review{Summary: review.Summary{Status: c.status}}
		for _, list := range c.judged {
			for _, j := range list {
				r.Judgements = append(r.Judgements, j)
				if j.Verdict != review.Met {
					r.Findings = append(r.Findings, &review.Finding{Judgement: j})
				}
			}
		}
		if got := comesTo(&r.Summary); got != c.want {
			t.Errorf("got  %s\nwant %s", got, c.want)
		}
	}
}
