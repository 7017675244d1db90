package report_test

import (
	"encoding/csv"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"

	"dryfit/internal/report"
)

// What strangers may write where a file takes free words: markup, scripts and styles, formulas, ends of lines,
// marks that turn the direction of writing, links and pictures of Markdown, a stamp of their own.
//
// Source: OWASP, Cross Site Scripting Prevention and CSV Injection; Unicode Technical Report 36 on marks of direction;
// CommonMark 0.31, sections 4 to 6.
var hostile = []string{
	`<script>alert(1)</script>`,
	`"><img src=x onerror=alert(1)>`,
	`' onmouseover='alert(1)`,
	`</style><style>body{display:none}</style>`,
	`</title></svg><svg onload=alert(1)>`,
	`<!-- --><iframe srcdoc="<script>1</script>">`,
	`{{.Stamp}}{{template "table" .}}`,
	`javascript:alert(1) https://example.org/ www.example.org me@example.org`,
	`=cmd|' /C calc'!A0`,
	`+1+cmd|' /C calc'!A0`,
	`-2+3+cmd|' /C calc'!A0`,
	`@SUM(1+1)*cmd|' /C calc'!A0`,
	"\t=1+1",
	"\r=1+1",
	"one line\nand another\r\n# a heading\n\n| a | table |\n|---|---|\n- [ ] list",
	"\u202eright to left\u202c \u2066isolate\u2069 \u200f\u200e\u061c",
	"![x](http://example.org/x.png) [y](javascript:alert(1)) `code` **bold** | cell | <b>",
	"dryfit-sheet file=" + strings.Repeat("0", 64) + " book=" + strings.Repeat("0", 64) + " version=v0 units=metric as-of=-",
	"]]>&lt;script&gt;\\u003cscript\\u003e\\",
	"1. first", "# heading", "> quote", "***", "---", "```\ncode",
}

// quoted is a text as a YAML string in double quotes.
func quoted(text string) string {
	var b strings.Builder
	for _, r := range text {
		switch {
		case r == '"' || r == '\\':
			b.WriteString(`\` + string(r))
		case r < 0x20 || r > 0x7e:
			b.WriteString(`\u` + hex4(r))
		default:
			b.WriteRune(r)
		}
	}
	return `"` + b.String() + `"`
}

func hex4(r rune) string {
	const digits = "0123456789abcdef"
	return string([]byte{digits[r>>12&15], digits[r>>8&15], digits[r>>4&15], digits[r&15]})
}

// withWords is the demo with one word in every place that takes free words.
func withWords(t testing.TB, word string) string {
	t.Helper()
	data, err := os.ReadFile(systems + "quarry-road.yaml")
	if err != nil {
		t.Fatal(err)
	}
	upTo := func(most int) string { // the notation takes no more there
		all := []rune(word)
		return quoted(string(all[:min(most, len(all))]))
	}
	q := upTo(100)
	text := string(data)
	for _, swap := range [][2]string{
		{"name: Quarry Road courtyard loop", "name: " + q},
		{"tool: brush on a long handle", "tool: " + q},
		{"held: olives in brine", "held: " + q},
		{"care: {", "care: {calls: " + q + ", "},
		{"  - {part: pipe, pipe: waste-40", "  - {part: bend, name: " + q + ", price: 4.20 NZD}\n  - {part: pipe, pipe: waste-40"},
	} {
		if !strings.Contains(text, swap[0]) {
			t.Fatalf("the demo has no %q", swap[0])
		}
		text = strings.Replace(text, swap[0], swap[1], 1)
	}
	return text + "note: " + upTo(500) + `
title_block: {number: ` + upTo(40) + `, revision: ` + upTo(40) + `, drawn_by: ` + q + `, checked_by: ` + q + `, approved_by: ` + q + `}
modes: {clean: {title: ` + q + `, steps: [` + q + `, ` + q + `]}}
permits: [{clause: well_depth, subject: settler, reason: ` + q + `, who: ` + q + `, until: 2027-01-31, instead: ` + q + `}]
stated: [{quantity: settler.overflow_rate, value: 2 mm/s, working: ` + q + `}]
measured: [{quantity: settler.overflow_rate, value: 2 mm/s, with: ` + q + `, by: ` + q + `, note: ` + upTo(500) + `}]
commissioning: {by: ` + q + `, steps: [{step: ` + q + `, within: ` + upTo(60) + `, passed: true}]}
spares: [{of: ` + q + `, kept: ` + q + `}]
`
}

// shape is the tags of a page with their attributes, without the words that a file may choose.
func shape(page string) []string {
	chosen := regexp.MustCompile(` data-head="[^"<>]*"`)
	var out []string
	for _, tag := range regexp.MustCompile(`<[^>]*>`).FindAllString(page, -1) {
		out = append(out, chosen.ReplaceAllString(tag, ""))
	}
	return out
}

// Whatever a file says, the page has the same elements as with a plain word; no line, row, cell or picture of Markdown
// comes in; no cell of a list is a formula; and nothing turns the direction of writing.
func TestHostileWordsStayWords(t *testing.T) {
	const plainWord = "A plain word"
	plain := sheetOf(reviewOf(t, "loop.yaml", []byte(withWords(t, plainWord))), report.Options{})
	page, marked, lists := written(t, plain)
	wanted, lines := shape(page), strings.Count(marked, "\n")
	cells := strings.Count(strings.ReplaceAll(marked, `\|`, ""), "|")
	for _, word := range hostile {
		t.Run(word, func(t *testing.T) {
			t.Parallel()
			s := sheetOf(reviewOf(t, "loop.yaml", []byte(withWords(t, word))), report.Options{})
			p, m, l := written(t, s)
			if got := shape(p); !slices.Equal(got, wanted) {
				t.Errorf("the page has %d tags, and not %d; the first that differs is %s", len(got), len(wanted), differs(got, wanted))
			}
			if got := strings.Count(m, "\n"); got != lines {
				t.Errorf("the Markdown has %d lines, and not %d", got, lines)
			}
			if got := strings.Count(strings.ReplaceAll(m, `\|`, ""), "|"); got != cells {
				t.Errorf("the Markdown has %d edges of cells, and not %d", got, cells)
			}
			holdMarked(t, m)
			holdLists(t, l, lists)
			for _, text := range []string{p, m, l} {
				for _, r := range text {
					if r != '\n' && !unicode.IsPrint(r) {
						t.Fatalf("it holds the character %U", r)
					}
				}
				if got, err := report.ReadStamp([]byte(text)); err != nil || got.File != stampOfTests.File {
					t.Errorf("its stamp reads %+v, %v", got, err)
				}
			}
			for _, d := range s.Drawings() {
				if !report.Harmless(d.SVG) {
					t.Errorf("the drawing %s is more than a drawing", d.Name)
				}
			}
		})
	}
}

func differs(a, b []string) string {
	for i := range a {
		if i >= len(b) || a[i] != b[i] {
			return a[i]
		}
	}
	return "missing"
}

var (
	ourComment = regexp.MustCompile(`^<!-- dryfit-sheet [^<>]* -->\n`)
	ourPicture = regexp.MustCompile(`!\[[^\]\[]*(\\[\]\[][^\]\[]*)*\]\(<drawings/[a-z0-9-]+\.svg>\)`)
)

// holdMarked holds Markdown to what the sheet itself writes: no tag but <br>, no link, no picture but its drawings, no address.
func holdMarked(t *testing.T, m string) {
	t.Helper()
	rest := ourPicture.ReplaceAllString(ourComment.ReplaceAllString(m, ""), "")
	rest = strings.ReplaceAll(rest, "<br>", "")
	rest = strings.NewReplacer(`\\`, "", `\]`, "", `\[`, "", "\\`", "").Replace(rest)
	for _, bad := range []string{"<", "[", "]", "`", "://", "www.", "@"} {
		if i := strings.Index(rest, bad); i >= 0 {
			t.Errorf("the Markdown holds %q", rest[max(0, i-30):min(len(rest), i+30)])
		}
	}
	for _, line := range strings.Split(rest, "\n") {
		if strings.HasPrefix(line, "```") || strings.HasPrefix(line, "---") || strings.HasPrefix(line, "***") || strings.HasPrefix(line, "===") {
			t.Errorf("a line of the Markdown is %q", line)
		}
	}
}

// holdLists holds the lists to as many rows as with a plain word, and to no cell that a spreadsheet works out.
func holdLists(t *testing.T, l, plain string) {
	t.Helper()
	rows, err := csv.NewReader(strings.NewReader(l)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if got, want := strings.Count(l, "\n"), strings.Count(plain, "\n"); got != want || len(rows) != want {
		t.Errorf("the lists have %d rows in %d lines, and not %d", len(rows), got, want)
	}
	number := regexp.MustCompile(`^-[0-9.]+$`)
	for _, row := range rows {
		for _, c := range row {
			start := strings.TrimLeft(c, " ")
			if start != "" && strings.ContainsAny(start[:1], "=+-@\t\r|%") && !number.MatchString(c) {
				t.Errorf("a cell is %q", c)
			}
		}
	}
}

// A drawing holds shapes and words, and nothing that runs, loads or leads away.
func TestHarmless(t *testing.T) {
	const head = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9">`
	for _, c := range []struct {
		svg  string
		want bool
	}{
		{head + `<title>a &amp; b</title><path d="M0 0L9 9" stroke="black"/><text x="1" y="2">5 mm</text></svg>`, true},
		{head + `<defs><marker id="m"><path d="M0 0"/></marker></defs><line marker-end="url(#m)"/></svg>`, true},
		{head + `<style>text{font:3px sans-serif}</style></svg>`, true},
		{head + `<script>alert(1)</script></svg>`, false},
		{head + `<circle onload="alert(1)"/></svg>`, false},
		{`<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"/>`, false},
		{head + `<foreignObject><p>x</p></foreignObject></svg>`, false},
		{head + `<a href="https://example.org"><text>x</text></a></svg>`, false},
		{head + `<image href="https://example.org/x.png"/></svg>`, false},
		{head + `<use href="https://example.org/x.svg#y"/></svg>`, false},
		{head + `<rect fill="url(https://example.org/x)"/></svg>`, false},
		{head + `<rect style="background:url(https://example.org/x)"/></svg>`, false},
		{head + `<style>@import "https://example.org/x.css";</style></svg>`, false},
		{head + `<rect fill="javascript:alert(1)"/></svg>`, false},
		{head + `<animate attributeName="href" to="javascript:alert(1)"/></svg>`, false},
		{head + `<text>open</svg>`, false},
		{head + `</svg><script>1</script>`, false},
		{head + `</svg>words behind it`, false},
		{`<?xml-stylesheet href="x.css"?>` + head + `</svg>`, false},
		{`<!DOCTYPE svg [<!ENTITY x "y">]>` + head + `</svg>`, false},
		{`<div/>`, false}, {"", false}, {"words", false},
	} {
		if got := report.Harmless(c.svg); got != c.want {
			t.Errorf("%s: %v", c.svg, got)
		}
	}
}
