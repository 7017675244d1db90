package editor

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"
)

const uri = "file:///somewhere/loop.yaml"

// A lip that hangs too low is marked where it is typed, its remedy is an edit of that one value, and
// with the edit made the mark goes.
func TestFaultRemedyGone(t *testing.T) {
	c := talk(t, `{"workspace":{"workspaceEdit":{"documentChanges":true}}}`)
	c.open(uri, demo(t))
	if sound := c.marked(1); coded(sound, "well_depth") != nil {
		t.Fatal("the demo has a lip at half the depth, and is marked for it")
	}
	c.becomes(2, "lip_at: 305 mm", "lip_at: 400 mm")
	if d := coded(c.marked(2), "well_depth"); d == nil || strings.Contains(d.Message, "Remedy") {
		t.Fatal("a lip 400 mm above the floor is not marked at once, before a remedy is looked for")
	}
	d := coded(c.marked(2), "well_depth") // and then with the remedy
	if got := c.text[offsets(c, d.Range).from:offsets(c, d.Range).to]; got != "400 mm" {
		t.Errorf("the mark stands at %q", got)
	}
	if d.Severity != asWarning || d.Source != "dryfit" {
		t.Errorf("severity %d, source %q", d.Severity, d.Source)
	}
	for _, words := range []string{"should hang near half the depth", "0.35, 0.4 to 0.6", "Remedy: Lower the lip", "from 400 mm to 310 mm"} {
		if !strings.Contains(strings.ToLower(d.Message), strings.ToLower(words)) {
			t.Errorf("the message does not say %q: %s", words, d.Message)
		}
	}
	actions := c.actions(d.Range)
	if len(actions) != 1 || actions[0].Title != "lower the lip of the inlet well by 90 mm, from 400 mm to 310 mm above the floor" || !actions[0].IsPreferred {
		t.Fatalf("actions: %+v", actions)
	}
	edits := actions[0].Edit.DocumentChanges
	if len(edits) != 1 || *edits[0].Document.Version != 2 || len(edits[0].Edits) != 1 {
		t.Fatalf("edit: %+v", edits)
	}
	one := edits[0].Edits[0]
	at := offsets(c, one.Range)
	if c.text[at.from:at.to] != "400 mm" || one.NewText != "310 mm" {
		t.Errorf("it writes %q in the place of %q", one.NewText, c.text[at.from:at.to])
	}
	c.becomes(3, "lip_at: 400 mm", "lip_at: 310 mm")
	if d := coded(c.marked(3), "well_depth"); d != nil {
		t.Errorf("the remedy is made, and it still says %s", d.Message)
	}
}

// What the reader refuses is marked where it stands, and what it says to write instead is an edit where that is one word or value.
func TestProblems(t *testing.T) {
	for _, one := range []struct {
		was, is, at string
		edits       []string
	}{
		{"lip_at: 305 mm", "lip_att: 305 mm", "lip_att: 305 mm", []string{"lip_at"}},
		{"    to: settler.well", "    to: setler", "setler", []string{"settler"}},
		{"species: silver-perch\n", "species: 12\n", "12", nil},
		{"lip_at: 305 mm", "lip_at: 305", "305", []string{"305 mm"}},
		{"store: 60 L,", "store: 60 gal,", "60 gal", []string{"60 gal(US)", "60 gal(imp)"}},
		{"inside: 129.2 mm", "inside: 129,2 mm", "129,2 mm", []string{"129.2 mm"}},
		{"status: for-review", "status: for-revue", "for-revue", []string{"for-review"}},
		{"lip_at: 305 mm", "lip_at: 305 mm: 2", "", nil},
	} {
		t.Run(one.is, func(t *testing.T) {
			c := talk(t, "")
			c.open(uri, changedDemo(t, one.was, one.is))
			list := c.marked(1)
			if len(list) != 1 || list[0].Severity != asError || list[0].Code != fileRead {
				t.Fatalf("marked: %+v", list)
			}
			at := offsets(c, list[0].Range)
			if got := c.text[at.from:at.to]; one.at != "" && got != one.at {
				t.Errorf("the mark stands at %q", got)
			}
			var got []string
			for _, a := range c.actions(list[0].Range) {
				got = append(got, a.Edit.Changes[uri][0].NewText)
			}
			if !slices.Equal(got, one.edits) {
				t.Errorf("offered %q, wanted %q", got, one.edits)
			}
		})
	}
}

func TestHover(t *testing.T) {
	c := talk(t, "")
	c.open(uri, demo(t))
	for _, one := range []struct {
		at    string
		words []string
	}{
		{"lip_at: 3|05 mm", []string{"Lower edge of the well above the inner floor", "`305 mm`, in US units `12.01 in`", "settler.lip_depth_fraction", "`by lip above the inner floor, with c = 305 mm`"}},
		{"  sett|ler:\n    role", []string{"settler.water_level", "settler.freeboard", "Held against the book", "share of what settles at all", "`catches_enough`"}},
		{"  solids-|run:\n    from", []string{"solids-run.velocity", "`by 4 Q/(pi (D - 2t)^2)", "solids-run.head_loss", "solids_speed"}},
		{"  - be|nd: {angle: 45 deg, joint: pinned}\n      - slope: {angle: 45 deg, length: 100 mm}", []string{"A sharp bend", "solids-run/15.head_loss"}},
		{"stat|us: for-review", []string{"How far the design has come"}},
	} {
		var h hover
		if err := json.Unmarshal(c.ask("textDocument/hover", c.place(one.at)), &h); err != nil {
			t.Fatal(err)
		}
		for _, w := range one.words {
			if !strings.Contains(h.Contents.Value, w) {
				t.Errorf("%s: it does not say %q:\n%s", one.at, w, h.Contents.Value)
			}
		}
	}
	if got := string(c.ask("textDocument/hover", c.place("# The cour|tyard"))); got != "null" {
		t.Errorf("on a comment it says %s", got)
	}
}

// While a file is half typed, what may stand at the pen is offered.
func TestCompletion(t *testing.T) {
	c := talk(t, "")
	c.open(uri, demo(t))
	c.marked(1)
	version := 1
	for _, one := range []struct {
		was, is  string // | is the pen
		offered  []string
		withheld []string
		writes   string // of the first offered
	}{
		{"      lip_at: 305 mm\n", "      |\n", []string{"lip_at", "hangs_from"}, []string{"inside", "outside", "role"}, "lip_at: "},
		{"      lip_at: 305 mm\n", "      lip|_at: 305 mm\n", []string{"lip_at"}, nil, "lip_at"},
		{"    to: settler.well\n", "    to: s|\n", []string{"settler", "settler.well", "settler.launder", "outside"}, []string{"solids-run", "main"}, "settler"},
		{"      - bend: 90 deg\n      - across: {length: 500 mm", "      - b|\n      - across: {length: 500 mm", []string{"bend", "bell_siphon", "through"}, nil, "bend: "},
		{"size: DN25}", "size: |}", []string{"DN25", "DN100"}, nil, "DN25"},
		{"  riser-25: {standard: AS/NZS 1477, class: PN12, size: DN25}", "  riser-25: {standard: AS/NZS 1477, class: |", []string{"PN12"}, []string{"DN25"}, "PN12"},
		{"species: silver-perch", "species: |", []string{"barramundi"}, nil, "barramundi"},
		{"notches: 12, angle: 90 deg}", "notches: 12, |", []string{"angle", "adjustable"}, []string{"notches"}, "angle: "},
		{"valve: {kind: ball, bore: 42.9 mm, locked: open}", "valve: {bore: 42.9 mm, locked: open, kind: |", []string{"ball", "gate"}, []string{"tank"}, "ball"},
		{"through: {wall_of: biofilter, at: 630 mm", "through: {wall_of: |, at: 630 mm", []string{"tank", "biofilter"}, []string{"mains", "settler.well"}, "tank"},
		{"      - pump: main", "      - pump: |", []string{"main"}, []string{"tank"}, "main"},
		{"    pipe: riser-25\n    joints: uncemented", "    pipe: |\n    joints: uncemented", []string{"waste-40", "riser-25"}, []string{"tank"}, "waste-40"},
		{"fixings: {grade: A4, count: 4}", "fixings: {grade: |, count: 4}", []string{"A4", "A2"}, nil, "A4"},
		{"store: 60 L, into: sump", "store: 60 L, into: |", []string{"sump", "tank"}, nil, "sump"},
		{"care: {", "stated:\n  - quantity: settler.|\ncare: {", []string{"settler.overflow_rate", "solids-run.velocity"}, nil, "settler.overflow_rate"},
		{"care: {", "permits:\n  - clause: |\ncare: {", []string{"well_depth", "sharp_bend"}, nil, "well_depth"},
		{"care: {", "permits:\n  - clause: well_depth\n    subject: |\ncare: {", []string{"settler"}, []string{"tank"}, "settler"},
		{"dryfit: 1\n", "dryfit: 1\n|\n", []string{"permits"}, []string{"vessels", "dryfit"}, "permits: "},
		{"status: for-review\n", "status: |\n", []string{"concept", "as-built"}, nil, "concept"},
		{"lip_at: 305 mm", "lip_at: 305 m|", []string{"305 mm", "305 in"}, []string{"305 L"}, "305 mm"},
		{"least: 900 L/h", "least: 900|", []string{"900 L/h", "900 gal(US)/min"}, []string{"900 mm"}, "900 L/h"},
		{"# The courtyard", "# The |courtyard", nil, []string{"vessels"}, ""},
	} {
		typed := strings.Replace(one.is, "|", "", 1)
		version++
		c.becomes(version, one.was, typed)
		items := c.completions(one.is)
		var words []string
		for _, i := range items {
			words = append(words, i.Label)
		}
		for _, w := range one.offered {
			if !slices.Contains(words, w) {
				t.Errorf("%q: %q is not offered: %q", one.is, w, words)
			}
		}
		for _, w := range one.withheld {
			if slices.Contains(words, w) {
				t.Errorf("%q: %q is offered", one.is, w)
			}
		}
		for _, i := range items {
			if len(one.offered) > 0 && i.Label == one.offered[0] && i.TextEdit.NewText != one.writes {
				t.Errorf("%q: it writes %q", one.is, i.TextEdit.NewText)
			}
		}
		version++
		c.becomes(version, typed, one.was)
	}
}

// In JSON keys and words are offered in their quotes.
func TestCompletionInJSON(t *testing.T) {
	c := talk(t, "")
	c.open("file:///somewhere/loop.json", "{\n  \"dryfit\": 1,\n  \"name\": \"small\",\n  \"vessels\": {\"tank\": {\"role\": \"fi\"}},\n  \"st\"\n}\n")
	for _, one := range [][3]string{{"\"st|\"", "status", `"status": `}, {"\"fi|\"", "fish-tank", `"fish-tank"`}} {
		found := false
		for _, i := range c.completions(one[0]) {
			if i.Label == one[1] {
				found = true
				at := offsets(c, i.TextEdit.Range)
				if i.TextEdit.NewText != one[2] || !strings.HasPrefix(c.text[at.from:at.to], `"`) {
					t.Errorf("it writes %s in the place of %s", i.TextEdit.NewText, c.text[at.from:at.to])
				}
			}
		}
		if !found {
			t.Errorf("%s: %s is not offered", one[0], one[1])
		}
	}
}

func TestDefinitionAndReferences(t *testing.T) {
	c := talk(t, "")
	c.open(uri, changedDemo(t, "      - union: {}\n      - valve: ball\n", "      - tee: {id: split, way: through, third: line}\n", "    from: settler\n    to: sump\n    pipe: riser-25", "    from: riser.split\n    to: sump\n    pipe: riser-25"))
	for _, one := range [][2]string{
		{"    to: settler.we|ll", "    |well:\n"},
		{"through: {wall_of: biof|ilter, at: 630", "  |biofilter:\n    role"},
		{"    pipe: ri|ser-25\n    joints: uncemented", "  |riser-25: {"},
		{"      - pump: m|ain", "  |main:\n    curve"},
		{"from: riser.sp|lit", "tee: {|id: split"},
		{"over: {rim_of: t|ank", "  |tank:\n    role"},
		{"store: 60 L, into: su|mp", "  |sump:\n    role"},
		{"stand: tank-s|tand", "  |tank-stand: {"},
		{"part: pump, of: m|ain", "  |main:\n    curve"},
	} {
		var got []location
		if err := json.Unmarshal(c.ask("textDocument/definition", c.place(one[0])), &got); err != nil {
			t.Fatal(err)
		}
		before, after, _ := strings.Cut(one[1], "|")
		want := newText(c.text, false).position(strings.Index(c.text, before+after) + len(before))
		if len(got) != 1 || got[0].Range.Start != want {
			t.Errorf("%s leads to %+v, wanted %+v", one[0], got, want)
		}
	}
	var back []location
	if err := json.Unmarshal(c.ask("textDocument/references", c.place("  |main:\n    curve")), &back); err != nil || len(back) != 2 {
		t.Errorf("the pump is named at %+v", back)
	}
	if got := string(c.ask("textDocument/definition", c.place("status: for-|review"))); got != "null" {
		t.Errorf("a word that names nothing leads to %s", got)
	}
}

// A file that is no system file is left alone, until it becomes one.
func TestOtherFiles(t *testing.T) {
	c := talk(t, "")
	c.open(uri, "name: something else\n")
	if got := string(c.ask("textDocument/hover", c.place("na|me"))); got != "null" {
		t.Errorf("it says %s of another file", got)
	}
	c.becomes(2, "name: something else", "dryfit: 1")
	if len(c.marked(2)) == 0 {
		t.Error("a system file without vessels is not marked")
	}
	c.becomes(3, "dryfit: 1", "other: 1")
	if list := c.marked(3); len(list) != 0 {
		t.Errorf("what was marked stays: %+v", list)
	}
}

// What has taken its leave, or has not greeted, or asks for what there is not, gets the answer that the protocol wants.
func TestManners(t *testing.T) {
	c := silent(t)
	if m := c.answered("textDocument/hover", `{}`); m.Error == nil || m.Error.Code != notInitialized {
		t.Errorf("before the greeting: %+v", m)
	}
	c.tell("textDocument/didOpen", `{}`)
	greeting := string(c.ask("initialize", `{"capabilities":{"general":{"positionEncodings":["utf-16","utf-8"]}}}`))
	for _, words := range []string{`"positionEncoding":"utf-8"`, `"hoverProvider":true`, `"change":2`, `"quickfix"`} {
		if !strings.Contains(greeting, words) {
			t.Errorf("the greeting does not say %s: %s", words, greeting)
		}
	}
	if strings.Contains(greeting, "ormatting") {
		t.Error("it offers to format")
	}
	c.tell("initialized", `{}`)
	c.tell("$/setTrace", `{"value":"off"}`)
	for _, one := range []struct {
		method, params string
		code           int
	}{
		{"textDocument/formatting", `{}`, methodNotFound},
		{"textDocument/hover", `{"textDocument":7}`, invalidParams},
		{"initialize", `{}`, invalidRequest},
	} {
		if m := c.answered(one.method, one.params); m.Error == nil || m.Error.Code != one.code {
			t.Errorf("%s: %+v", one.method, m)
		}
	}
	if got := string(c.ask("textDocument/hover", `{"textDocument":{"uri":"file:///not/open.yaml"},"position":{"line":0,"character":0}}`)); got != "null" {
		t.Errorf("of a file that is not open it says %s", got)
	}
	c.send(`{"jsonrpc":"2.0",`)
	if m := c.receive(func(message) bool { return true }); m.Error == nil || m.Error.Code != parseError || string(m.ID) != "" && string(m.ID) != "null" {
		t.Errorf("to what is no JSON: %+v", m)
	}
	c.ask("shutdown", `null`)
	if m := c.answered("textDocument/hover", `{}`); m.Error == nil || m.Error.Code != invalidRequest {
		t.Errorf("after the leave: %+v", m)
	}
	c.tell("exit", `null`)
	select {
	case orderly := <-c.over:
		if !orderly {
			t.Error("the leave was in order, and is not taken so")
		}
		c.over <- orderly
	case <-time.After(time.Minute):
		t.Error("it stays after exit")
	}
}

// Positions count code units of UTF-16, or bytes where the editor can; what is typed lands where it was typed.
func TestPositions(t *testing.T) {
	text := "name: the \U0001F41F tank of Zürich\r\nnext: 1\rlast"
	for _, one := range []struct {
		utf8 bool
		at   position
		rest string
	}{
		{false, position{0, 10}, "\U0001F41F tank"}, {false, position{0, 11}, "\U0001F41F tank"}, {false, position{0, 12}, " tank"},
		{true, position{0, 14}, " tank"}, {true, position{0, 12}, "\U0001F41F"}, {false, position{0, 23}, "rich"}, {true, position{0, 26}, "rich"},
		{false, position{0, 99}, "\r\nnext"}, {false, position{1, 0}, "next"}, {false, position{2, 0}, "last"}, {false, position{9, 9}, ""}, {false, position{-1, 3}, "name"},
	} {
		x := newText(text, one.utf8)
		if got := text[x.offset(one.at):]; !strings.HasPrefix(got, one.rest) || one.rest == "" && got != "" {
			t.Errorf("%+v in UTF-8 %v is before %q, wanted %q", one.at, one.utf8, got, one.rest)
		}
	}
	for _, utf8 := range []bool{false, true} {
		x := newText(text, utf8)
		for i := range text { // beginnings of characters
			if text[i] != '\n' && x.offset(x.position(i)) != i {
				t.Errorf("byte %d comes back as %d", i, x.offset(x.position(i)))
			}
		}
	}
	changed := newText(text, false).with(textRange{position{0, 10}, position{0, 12}}, "koi")
	if changed.all != strings.Replace(text, "\U0001F41F", "koi", 1) {
		t.Errorf("changed: %q", changed.all)
	}
}

func offsets(c *client, r textRange) span {
	t := newText(c.text, false)
	return span{t.offset(r.Start), t.offset(r.End)}
}

func (c *client) actions(r textRange) []codeAction {
	c.t.Helper()
	var out []codeAction
	if err := json.Unmarshal(c.ask("textDocument/codeAction", fmt.Sprintf(`{"textDocument":{"uri":%q},"range":%s,"context":{"diagnostics":[]}}`, c.name, quote(r))), &out); err != nil {
		c.t.Fatal(err)
	}
	return out
}

func (c *client) completions(at string) []completionItem {
	c.t.Helper()
	var out completionList
	if err := json.Unmarshal(c.ask("textDocument/completion", c.place(at)), &out); err != nil {
		c.t.Fatal(err)
	}
	return out.Items
}
