package report

import (
	"bytes"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/santhosh-tekuri/jsonschema/v5"

	"dryfit/internal/compare"
	"dryfit/internal/making"
	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/working"
	"dryfit/schema"
)

// moved is an invented comparison: a verdict that got worse, one that got better, a margin, a
// judgement that came and one that went, parts, cuts, holes, joints, cost and permits.
func moved(t *testing.T, hostile string) Compared {
	t.Helper()
	r := sample(t)
	judge := func(c *review.Clause, subject string, x float64, v review.Verdict) *review.Judgement {
		return &review.Judgement{Clause: c, Subject: subject, Name: "turn", Kind: quantity.Fraction, Title: "lip of the inlet well, share of the water depth",
			Value: working.Exactly(x), Limit: review.Limit{Least: number(0.4), Most: number(0.6)}, Verdict: v}
	}
	bad := judge(depthClause, "settler"+hostile, 0.65, review.NotMet)
	r.Findings = append(r.Findings, &review.Finding{Judgement: bad, Number: 9, Remedies: []review.Remedy{{Text: "raise the lip by 90 mm" + hostile}}})
	part := making.Part{Name: "bend" + hostile, Spec: "45 deg", Use: "solids-run", Step: making.BuildSteps[3], Count: 2, Got: making.Buy, Sum: making.Money{Amount: 10.4, Currency: "NZD", Known: true}}
	fewer := part
	fewer.Count, fewer.Sum.Amount = 1, 5.2
	length := func(x float64) making.Figure { return making.Figure{Value: working.Exactly(x), Known: true} }
	cut := func(x float64) *making.Cut {
		return &making.Cut{Line: "solids-run", Piece: "solids-run/3", Pipe: "waste-40", Count: 1, Length: length(x), Known: true, From: "tee", To: "bend" + hostile}
	}
	permit := func(until string) *review.Permit {
		return &review.Permit{Deviation: system.Deviation{Clause: "well_depth", Subject: "settler" + hostile, Who: "teacher", Reason: "r", Until: until}, Standing: review.Holds}
	}
	c := compare.Comparison{
		Was: compare.Side{Review: r}, Now: compare.Side{Review: r, Book: making.Book{Unpriced: 2}},
		Inputs: []compare.Input{{Pointer: "/vessels/settler/well/lip_at", Was: "305 mm", Now: "400 mm" + hostile},
			{Pointer: "/lines/solids-run/pieces/2", Now: "{bend: 45 deg}", Added: true}, {Pointer: "/lines/solids-run/pieces/4", Was: "{valve: ball}", Gone: true}},
		Judged: []compare.Judged{
			{Clause: depthClause, Subject: "settler" + hostile, Was: judge(depthClause, "settler", 0.5, review.Met), Now: bad, Direction: compare.Worse, Moved: 1.5, OfLimit: true, Margin: true},
			{Clause: turnClause, Subject: "solids-run/2", Now: judge(turnClause, "solids-run/2", 0.2, review.Undetermined), Direction: compare.Worse},
			{Clause: depthClause, Subject: "fines", Was: judge(depthClause, "fines", 0.7, review.NotMet), Now: judge(depthClause, "fines", 0.7000001, review.NotMet), Direction: compare.Better, Moved: -0.02, Margin: true},
			{Clause: turnClause, Subject: "solids-run/4", Was: judge(turnClause, "solids-run/4", 0.2, review.Met), Direction: compare.Other},
		},
		Parts:  []compare.Pair[making.Part]{{Was: &part, Now: &fewer}, {Now: &part}, {Was: &fewer}},
		Cuts:   []compare.Pair[making.Cut]{{Was: cut(0.7), Now: cut(0.65)}, {Now: &making.Cut{Piece: "riser/3", Pipe: "riser-25"}}},
		Holes:  []compare.Pair[making.Hole]{{Was: &making.Hole{Vessel: "tank", Piece: "solids-run/5", In: making.InWall, Across: 0.0635, At: length(0.3), Fit: "seal"}, Now: &making.Hole{Vessel: "tank", Piece: "solids-run/5", In: making.InWall, Across: 0.0635, At: length(0.4), Fit: "seal"}}},
		Joints: []compare.Pair[making.Joint]{{Was: &making.Joint{Piece: "riser/3", Kind: "cemented", Before: "pipe", After: "bend"}, Now: &making.Joint{Piece: "riser/3", Before: "pipe", After: "bend"}}},
		Cost:   []compare.Cost{{Currency: "NZD", Was: 100, Now: 98, More: 3, Less: 5}},
		Permits: []compare.Permit{{What: compare.Given, Now: permit("2026-12-31")}, {What: compare.Withdrawn, Was: permit("2026-10-31")},
			{What: compare.RunOut, Now: permit("2026-01-31")}, {What: compare.Altered, Was: permit("2026-10-31"), Now: permit("2026-12-31")}},
	}
	return Compared{Path: "loops/bench" + hostile + ".yaml", Was: Version{Name: "main:loops/bench.yaml"}, Now: Version{Name: "loops/bench.yaml"}, Comparison: &c}
}

func comparedList(t *testing.T, hostile string) []Compared {
	bad := []system.Problem{{File: "bad.yaml", Line: 3, Column: 7, Pointer: "/vessels", Found: "`x`" + hostile, Write: "y"}}
	return []Compared{
		moved(t, hostile),
		{Path: "new.yaml", Was: Version{Absent: true}, Now: Version{Name: "b/new.yaml"}, New: &review.Review{}},
		{Path: "gone.yaml", Was: Version{Name: "a/gone.yaml"}, Now: Version{Absent: true}},
		{Path: "same.yaml", Was: Version{Name: "a/same.yaml"}, Now: Version{Name: "b/same.yaml"}, Same: true},
		{Path: "bad.yaml", Was: Version{Name: "a/bad.yaml"}, Now: Version{Name: "b/bad.yaml", Problems: bad}},
		{Path: "shut.yaml", Was: Version{Name: "a/shut.yaml", Unread: "it may not be opened" + hostile}, Now: Version{Name: "b/shut.yaml"}},
	}
}

func compareSchema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	c := jsonschema.NewCompiler()
	c.Draft = jsonschema.Draft2020
	if err := c.AddResource("compare.schema.json", bytes.NewReader(schema.Compare)); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("compare.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

var comparingLook = Comparing{Was: "main:loops", Now: "loops", AsOf: "2026-03-14"}

func comparedText(t *testing.T, write func(*bytes.Buffer) error) string {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestCompareJSONHoldsToItsSchema(t *testing.T) {
	s := compareSchema(t)
	for _, list := range [][]Compared{nil, comparedList(t, ""), comparedList(t, "\x1b[31m<b>\u202e")} {
		text := comparedText(t, func(b *bytes.Buffer) error { return CompareJSON(b, list, comparingLook) })
		if err := s.Validate(decoded(t, []byte(text))); err != nil {
			t.Errorf("%#v", err)
		}
		if strings.ContainsAny(text, "\x1b\u202e") {
			t.Error("a control character stands in it as it is")
		}
	}
	text := comparedText(t, func(b *bytes.Buffer) error { return CompareJSON(b, comparedList(t, ""), comparingLook) })
	for from, to := range map[string]string{
		`"direction": "worse"`: `"direction": "bad"`, `"verdict": "met"`: `"verdict": "fine"`, `"what": "given"`: `"what": "new"`, `"exit_status": 2`: `"exit_status": 3`,
		`"more_of_limit": `: `"moved": `, `"got": "buy"`: `"got": "steal"`, `"was": null`: `"was": 3`, `"as_of": "2026-03-14"`: `"as_of": "today"`,
	} {
		if !strings.Contains(text, from) {
			t.Errorf("it does not hold %s", from)
		} else if s.Validate(decoded(t, []byte(strings.ReplaceAll(text, from, to)))) == nil {
			t.Errorf("%s in place of %s passes", to, from)
		}
	}
}

func TestCompareTerminal(t *testing.T) {
	text := comparedText(t, func(b *bytes.Buffer) error { return CompareTerminal(b, comparedList(t, ""), comparingLook) })
	for _, want := range []string{
		"Worse: two verdicts; better: one margin.",
		"  well.lip_at of settler               305 mm       400 mm\n",
		"  piece 3 of solids-run                  none bend: 45 deg\n",
		"    should, was met, is not met: well_depth; 0.4 to 0.6\n",
		"1.50 more of limit\n", "0.02 more left\n",
		"  One judgement is gone with what was judged, and was not against it.\n",
		"    Raise the lip by 90 mm.\n",
		"  bend for solids-run                       2            1        5.20 NZD less\n",
		"  solids-run, piece 4, waste-40        700 mm       650 mm        50 mm shorter\n",
		"    middle at 400 mm, was at 300 mm\n",
		"  riser, piece 4                     cemented            ?\n",
		"3.00 NZD more and 5.00 NZD less, together 2.00 NZD less", "0 then, 2\n",
		"has run out on 2026-01-31", "is withdrawn; it was given until 2026-10-31", "is given, until 2026-12-31", "it was until 2026-10-31 and is until 2026-12-31",
		"It is new: there is nothing", "It is gone.", "letter for letter", "bad.yaml cannot be reviewed yet", "a/shut.yaml cannot be read: it may not be opened",
	} {
		if !strings.Contains(strings.Join(strings.Fields(text), " "), strings.Join(strings.Fields(want), " ")) {
			t.Errorf("it does not hold %q", want)
		}
	}
	for _, l := range strings.Split(text, "\n") {
		if utf8.RuneCountInString(l) > 80 {
			t.Errorf("wider than 80 columns: %q", l)
		}
	}
	us := comparingLook
	us.Look.Units = quantity.US
	if text := comparedText(t, func(b *bytes.Buffer) error { return CompareTerminal(b, comparedList(t, ""), us) }); !strings.Contains(text, "27.56 in") {
		t.Error("US units are not shown")
	}
}

// What is long is cut with a sentence that says so, and --all shows it.
func TestLongComparisons(t *testing.T) {
	c := moved(t, "")
	for range 100 {
		c.Comparison.Inputs = append(c.Comparison.Inputs, c.Comparison.Inputs[0])
	}
	text := comparedText(t, func(b *bytes.Buffer) error { return CompareTerminal(b, []Compared{c}, comparingLook) })
	if n := strings.Count(text, "well.lip_at"); n > mostMoved || !strings.Contains(text, "and 91 more; --all shows them") {
		t.Errorf("it shows %d", n)
	}
	all := comparingLook
	all.All = true
	if text := comparedText(t, func(b *bytes.Buffer) error { return CompareTerminal(b, []Compared{c}, all) }); strings.Count(text, "well.lip_at") != 101 {
		t.Error("--all does not show all")
	}
	var list []Compared
	for range 2000 {
		list = append(list, moved(t, ""))
	}
	md := comparedText(t, func(b *bytes.Buffer) error { return CompareMarkdown(b, list, comparingLook) })
	if len(md) > mostComparison || !strings.Contains(md, " more rows do not fit here") || !strings.Contains(md, " more remedies do not fit here") {
		t.Errorf("%d bytes", len(md))
	}
}

// Text of strangers does nothing, on a terminal and in a comment.
func TestHostileComparisons(t *testing.T) {
	hostile := "\x1b[2J\u202e|<script>alert(1)</script> ![x](http://e.example/x) @everyone #1 \n\n# head"
	text := comparedText(t, func(b *bytes.Buffer) error { return CompareTerminal(b, comparedList(t, hostile), comparingLook) })
	md := comparedText(t, func(b *bytes.Buffer) error { return CompareMarkdown(b, comparedList(t, hostile), comparingLook) })
	for name, out := range map[string]string{"terminal": text, "markdown": md} {
		if strings.ContainsAny(out, "\x1b\u202e") || strings.Contains(out, "\n# head") {
			t.Errorf("%s: a control character or a line of its own", name)
		}
	}
	for _, bad := range []string{"<script", "![x]", "http://", "@everyone", " #1"} {
		if strings.Contains(md, bad) {
			t.Errorf("markdown holds %q", bad)
		}
	}
	for _, l := range strings.Split(md, "\n") {
		if strings.HasPrefix(l, "| ") && strings.Count(strings.ReplaceAll(l, `\|`, ""), "|") != 7 {
			t.Errorf("a row has other columns: %s", l)
		}
	}
}

func TestCompareMarkdown(t *testing.T) {
	one := moved(t, "")
	one.Path = ""
	md := comparedText(t, func(b *bytes.Buffer) error { return CompareMarkdown(b, []Compared{one}, comparingLook) })
	for _, want := range []string{"\nWorse: two verdicts; better: one margin.\n", "\n| what | was | now | moved by | which is |\n", " | worse |\n", " | better |\n", "- **well\\_depth, settler** Raise the lip by 90 mm.\n"} {
		if !strings.Contains(md, want) {
			t.Errorf("it does not hold %q", want)
		}
	}
	many := comparedText(t, func(b *bytes.Buffer) error { return CompareMarkdown(b, comparedList(t, ""), comparingLook) })
	if !strings.Contains(many, "Of six files: one got worse somewhere, two cannot be read, one is as it was, one is new and one is gone.") || !strings.Contains(many, "\nNot read:\n") {
		t.Error(many)
	}
}

// Every fate of a file has its exit status, its sentence and its place in the count.
func TestComparedFates(t *testing.T) {
	bad := []system.Problem{{File: "x.yaml", Line: 3, Column: 7, Pointer: "/vessels", Found: "`wrong`", Write: "y"}}
	at := func(problems []system.Problem) Version { return Version{Name: "x.yaml", Problems: problems} }
	absent := Version{Absent: true}
	same := moved(t, "")
	same.From = "old.yaml"
	for name, c := range map[string]struct {
		of     Compared
		status int
		fate   fate
		text   string
		quiet  bool // what is wrong with it is not listed
	}{
		"worse":                          {moved(t, ""), review.Act, gotWorse, "Worse: two verdicts", true},
		"moved, permits changed":         {same, review.Act, gotWorse, "It was moved; it was old.yaml.", true},
		"new":                            {Compared{Was: absent, Now: at(nil), New: &review.Review{}}, review.NothingToAct, newAndDone, "No shall stands open in it.", true},
		"new and open":                   {Compared{Was: absent, Now: at(nil), New: sample(t)}, review.Act, newAndOpen, "OPEN IN IT", true},
		"new and broken":                 {Compared{Was: absent, Now: at(bad)}, review.Unreadable, notRead, "cannot be reviewed yet", false},
		"broken now":                     {Compared{Was: at(nil), Now: at(bad)}, review.Unreadable, notRead, "cannot be reviewed yet", false},
		"broken, and differently before": {Compared{Was: at(bad), Now: at(bad)}, review.Unreadable, notRead, "cannot be reviewed yet", false},
		"broken as it was":               {Compared{Was: at(bad), Now: at(bad), Same: true}, review.NothingToAct, stillNot, "can be reviewed on neither", false},
		"mended":                         {Compared{Was: at(bad), Now: at(nil)}, review.NothingToAct, readAgain, "could not be reviewed before, and can be now", true},
		"broken, and gone":               {Compared{Was: at(bad), Now: absent}, review.NothingToAct, gone, "It is gone.", true},
		"shut before":                    {Compared{Was: Version{Name: "x.yaml", Unread: "`wrong`"}, Now: at(nil)}, review.Unreadable, notRead, "x.yaml cannot be read", false},
		"moved":                          {Compared{From: "old.yaml", Was: at(nil), Now: at(nil), Same: true}, review.NothingToAct, onlyMoved, "It was moved; it was old.yaml. It is the same", true},
		"the same":                       {Compared{Was: at(nil), Now: at(nil), Same: true}, review.NothingToAct, asBefore, "letter for letter", true},
	} {
		if got := c.of.Status(); got != c.status {
			t.Errorf("%s: status %d, want %d", name, got, c.status)
		}
		if got := c.of.fate(); got != c.fate {
			t.Errorf("%s: it is %q, want %q", name, got, c.fate)
		}
		list := []Compared{c.of}
		text := comparedText(t, func(b *bytes.Buffer) error { return CompareTerminal(b, list, comparingLook) })
		if !strings.Contains(strings.Join(strings.Fields(text), " "), c.text) || strings.Count(text, "`wrong`") > 1 && c.fate == stillNot {
			t.Errorf("%s: it says\n%s", name, text)
		}
		md := comparedText(t, func(b *bytes.Buffer) error { return CompareMarkdown(b, list, comparingLook) })
		if strings.Contains(text, "wrong") == c.quiet || strings.Contains(md, "wrong") == c.quiet {
			t.Errorf("%s: what is wrong is listed: %v", name, c.quiet)
		}
		js := comparedText(t, func(b *bytes.Buffer) error { return CompareJSON(b, list, comparingLook) })
		if err := compareSchema(t).Validate(decoded(t, []byte(js))); err != nil {
			t.Errorf("%s: %#v", name, err)
		}
		if open := c.fate == newAndOpen; strings.Contains(js, `"open": [`) != open || open && !strings.Contains(md, "is not met: sharp") {
			t.Errorf("%s: what stands open is not there, or stands where none is\n%s", name, md)
		}
	}
	for f, want := range map[fate][2]string{asBefore: {"is as it was", "are as they were"}, onlyMoved: {"is moved and else as it was", "are moved and else as they were"}, gotWorse: {"got worse somewhere", "got worse somewhere"}} {
		if got := [2]string{f.words(1), f.words(2)}; got != want {
			t.Errorf("%q", got)
		}
	}
}
