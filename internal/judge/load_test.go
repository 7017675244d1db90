package judge

import (
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
)

// house is a house folder with one clause, whose METADATA and rule can be changed.
func house(change ...string) fstest.MapFS {
	text := strings.NewReplacer(change...).Replace(houseClause)
	return fstest.MapFS{"lines/house_turn.rego": {Data: []byte(text)}}
}

const houseClause = `# METADATA
# scope: package
# title: Every turn shall be gentle.
# description: The school's drain rods are stiff.
# custom:
#   strength: shall
#   cases: [always]
#   limits: {turn: {of: turn, most: 45 deg}}
#   sources: [{grade: project judgement, text: tried with our rods}]
package house.lines.house_turn

import data.vocab

judgements contains vocab.held(bend, input.quantities.turn, vocab.always, input.limits.lines.house_turn.turn) if {
	some line in input.sets.solids_lines
	some bend in input.relations.bends_of[line]
}
`

func TestHouseClauseIsJudgedBesideTheBook(t *testing.T) {
	b, err := Load(catalogue(), firstSeven, house())
	if err != nil {
		t.Fatal(err)
	}
	all := judge(t, b, soundLoop().Ledger)
	if j := of(all, "house_turn", "solids-run/2"); j == nil || j.Verdict != review.NotMet {
		t.Errorf("the turn of 90 degrees is %+v", j)
	}
	if j := of(all, "sharp_bend", "solids-run/2"); j == nil || j.Verdict != review.Met {
		t.Errorf("the clause of the book is %+v", j)
	}
}

// Each of these compiled in silence would judge nothing, or something else.
func TestMisspeltNamesDoNotLoad(t *testing.T) {
	for _, c := range []struct{ from, to, says string }{
		{"input.quantities.turn", "input.quantities.turns", `"turns"; the nearest is "turn"`},
		{"input.quantities.turn", "input.quantity.turn", `"quantity"; the nearest is "quantities"`},
		{"input.sets.solids_lines", "input.sets.solid_lines", `"solid_lines"; the nearest is "solids_lines"`},
		{"input.relations.bends_of", "input.relations.bend_of", `the nearest is "bends_of"`},
		{"input.limits.lines.house_turn.turn", "input.limits.lines.house_turn.turm", `"turm"; the nearest is "turn"`},
		{"input.limits.lines.house_turn.turn", "input.limits.line.house_turn.turn", `the nearest is "lines"`},
		{"some line in", "input.facts.opens_to_brushes.name\nsome line in", `the nearest is "opens_to_brush"`},
		{"some line in", "input.cases.lines.house_turns\nsome line in", `the nearest is "house_turn"`},
		{"vocab.held", "vocab.hold", "vocab.hold"},
		{"vocab.held", "vocab.asked", "arit"},
		{"most: 45 deg", "most: 45 mm", "limits/turn/most"},
		{"most: 45 deg", "most: fourty", "limits/turn/most"},
		{"of: turn", "of: turns", `limits/turn/of: there is no quantity "turns"; the nearest is "turn"`},
		{"[always]", "[allways]", `there is no case "allways"; the nearest is "always"`},
	} {
		_, err := Load(catalogue(), firstSeven, house(c.from, c.to))
		if err == nil || !strings.Contains(err.Error(), c.says) || !strings.Contains(err.Error(), "lines/house_turn.rego:") {
			t.Errorf("%s: error %v", c.to, err)
		}
	}
}

func TestAllThatIsWrongIsTold(t *testing.T) {
	bad := `# METADATA
# scope: package
# custom:
#   strength: must
#   safety: true
#   cases: []
#   limits: {turn: {of: turn, most: 45 mm}, other: {of: nothing}, empty: {of: turn}, upside: {of: turn, least: 2 deg, most: 1 deg}}
#   sources: [{grade: hearsay}]
#   shows: [bend_los]
#   remedies: [{solve: lip_at}, {solve: /a, replace: b}]
#   example: [{at: vessels/x}]
#   remedie: []
package house.lines.bad
`
	_, err := Load(catalogue(), firstSeven, fstest.MapFS{"bad.rego": {Data: []byte(bad)}})
	var problems Problems
	if !errors.As(err, &problems) {
		t.Fatalf("got %v", err)
	}
	for _, want := range []string{
		"title is missing", "description is missing", "strength is one of shall, should, may", "caution is missing",
		"cases is missing", "limits/turn/most", `there is no quantity "nothing"`, "limits/empty has no bound",
		"limits/upside: least is more than most", "sources/0/grade is one of", "sources/0/text is missing",
		`shows: there is no quantity "bend_los"; the nearest is "bend_loss"`, "remedies/0/solve is no pointer", "remedies/1 names both or neither",
		"example/0/at is no pointer", "example/0/value is missing", `there is no key "remedie"; the nearest is "remedies"`,
	} {
		if !slices.ContainsFunc(problems, func(p Problem) bool { return strings.Contains(p.Text, want) && p.File == "bad.rego" && p.Row > 0 }) {
			t.Errorf("nothing says %q in\n%v", want, err)
		}
	}
}

func TestWrongFormsOfMetadataAreTold(t *testing.T) {
	for _, c := range []struct{ from, to, says string }{
		{"# METADATA\n", "# DATA\n", "one METADATA block"},
		{"scope: package", "scope: rule", "annotation scope"},
		{"cases: [always]", "cases: always", "cases is no list"},
		{"cases: [always]", "cases: [[always]]", "cases/0 is no text"},
		{"limits: {turn: {of: turn, most: 45 deg}}", "limits: [45]", "limits is no mapping"},
		{"most: 45 deg", "most: [45]", "limits/turn/most is no number"},
		{"cases: [always]", "cases: [always]\n#   safety: perhaps", "safety is true or false"},
		{"sources: [{grade: project judgement, text: tried with our rods}]", "sources: []", "sources is missing"},
		{"strength: shall", "strength", "yaml"},
		{"package house.lines.house_turn", "package house_turn", "the package of a clause of a house is house.CHAPTER.CLAUSE"},
		{"package house.lines.house_turn", "package vocab", "the package of a clause of a house is house.CHAPTER.CLAUSE"},
		{"package house.lines.house_turn", "package house.lines.other", "stands in a file of the same name: other.rego"},
		{"package house.lines.house_turn", "package book.lines.house_turn", "the package of a clause of a house is house.CHAPTER.CLAUSE"},
		{"package house.lines.house_turn", "package house.Lines.house_turn", `"Lines" is no name`},
	} {
		_, err := Load(catalogue(), firstSeven, house(c.from, c.to))
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: error %v", c.to, err)
		}
	}
}

func TestWhatTheCompilerCannotCheckDoesNotLoad(t *testing.T) {
	for _, c := range []struct{ from, to, says string }{
		{"some line in", "some name\ninput.quantities[name]\nsome line in", "write the name in full"},
		{"some line in", "x := input\nx.sets\nsome line in", "in full"},
		{"some line in", "count(input.quantities) > 0\nsome line in", "write the name in full"},
		{"some line in", "y := {input.facts: 1}\ny\nsome line in", "write the name in full"},
		{"import data.vocab", "import data.vocab\nimport input.quantities.turn", "do not import it"},
		{"some line in", "data.vocab.always with data.vocab.always as [1]\nsome line in", "with is for tests"},
		{"judgements contains", "judgement contains", "has no rule"},
		{"import data.vocab", "", "vocab"},
		{"\tsome line in", "\tunused := 1\n\tsome line in", "unused"},
	} {
		_, err := Load(catalogue(), firstSeven, house(c.from, c.to))
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: error %v", c.to, err)
		}
	}
}

func TestFilesThatAreNoClauses(t *testing.T) {
	for name, c := range map[string]struct{ text, says string }{
		"empty.rego":  {"", "empty module"},
		"remark.rego": {"# nothing\n", "empty module"},
		"broken.rego": {"package house.a.broken\n\njudgements contains {\n", "broken.rego:"},
		"large.rego":  {strings.Repeat("#\n", mostBytes), "at most"},
	} {
		_, err := Load(catalogue(), firstSeven, fstest.MapFS{name: {Data: []byte(c.text)}})
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: error %v", name, err)
		}
	}
	many := fstest.MapFS{}
	for i := range mostOwn + 1 {
		many[fmt.Sprintf("c%d.rego", i)] = &fstest.MapFile{Data: []byte("package house.a.b\n")}
	}
	if _, err := Load(catalogue(), firstSeven, many); err == nil || !strings.Contains(err.Error(), "more than") {
		t.Errorf("too many files: error %.200v", err)
	}
	if _, err := Load(catalogue(), firstSeven, fstest.MapFS{"note.txt": {Data: []byte("x")}, "x_test.rego": {Data: []byte("broken")}}); err != nil {
		t.Errorf("other files and tests are no clauses: %v", err)
	}
}

func TestClausesAreReadWhole(t *testing.T) {
	b := theBook(t)
	var ids []string
	for _, c := range b.Clauses() {
		ids = append(ids, c.Chapter+"/"+c.ID)
		if len(c.Example) == 0 || len(c.Levers) == 0 || strings.Contains(c.Why, "\n") {
			t.Errorf("%s: %+v", c.ID, c)
		}
	}
	want := []string{
		"lines/carries_flow", "lines/sharp_bend", "lines/throttle_reserve", "materials/wetted_fasteners",
		"safety/residual_current", "settler/drain_preload", "settler/well_depth",
	}
	if !slices.Equal(ids, want) {
		t.Errorf("the clauses are %v", ids)
	}
	rcd := b.Clauses()[4]
	if !rcd.Safety || !strings.Contains(rcd.Caution, "licensed electrician") || *rcd.Limits[0].Most != 0.03 || rcd.Strength != review.Shall {
		t.Errorf("got %+v", rcd)
	}
	if want := []string{
		"mains_power: whether anything takes mains power",
		"residual_current_fitted: whether a residual-current device is fitted",
	}; !slices.Equal(rcd.Asks, want) {
		t.Errorf("it asks %v", rcd.Asks)
	}
	bend := b.Clauses()[1]
	if q, err := quantity.Parse(quantity.Angle, "60 deg"); err != nil || bend.Limits[1].Quantity != "turn" || *bend.Limits[1].Most != q.SI {
		t.Errorf("limits %+v", bend.Limits)
	}
	if l := bend.Levers; len(l) != 2 || l[0].Replace != "two_45_with_spacer" || !slices.Equal(bend.Shows, []string{"bend_loss", "bend_loss_as_two_45", "bend_loss_as_sweep"}) {
		t.Errorf("levers %v, shows %v", l, bend.Shows)
	}
	if c := bend.Example[0]; c.Pointer != "/lines/solids-run/pieces/6" || fmt.Sprint(c.Value) != "map[bend:90 deg]" {
		t.Errorf("example %v", c)
	}
}

func TestInputSchemaDescribesTheInput(t *testing.T) {
	b := theBook(t)
	text := b.InputSchema()
	var s struct {
		Schema     string `json:"$schema"`
		Properties map[string]struct {
			Required   []string
			Properties map[string]any
		}
	}
	if err := json.Unmarshal(text, &s); err != nil || s.Schema == "" {
		t.Fatalf("%v in %.100s", err, text)
	}
	if got := len(s.Properties["quantities"].Properties); got != len(catalogue().Quantities) {
		t.Errorf("%d quantities", got)
	}
	if got := s.Properties["limits"].Required; !slices.Equal(got, []string{"lines", "materials", "safety", "settler"}) {
		t.Errorf("limits of %v", got)
	}
	if again := theBook(t).InputSchema(); string(again) != string(text) {
		t.Error("two runs give two texts")
	}
}
