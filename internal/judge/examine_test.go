package judge

import (
	"io/fs"
	"os"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"dryfit/internal/quantity"
	"dryfit/internal/survey"
	"dryfit/internal/working"
	"dryfit/rules"
)

// quarryRoad is the house of the school, as files that a test can change.
func quarryRoad(t testing.TB) fstest.MapFS {
	t.Helper()
	out := fstest.MapFS{}
	folder := os.DirFS("../../testdata/house/quarry-road")
	files, err := regoFiles(folder, true, mostOwn)
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range files {
		data, err := fs.ReadFile(folder, name)
		if err != nil {
			t.Fatal(err)
		}
		out[name] = &fstest.MapFile{Data: data}
	}
	return out
}

const reach, reachTests = "yard/rim_reach.rego", "yard/rim_reach_test.rego"

func TestHouseOfTheSchoolIsSound(t *testing.T) {
	house := quarryRoad(t)
	found := Examine(t.Context(), survey.Catalogue(), rules.Book, house)
	if len(found.Problems) > 0 || len(found.Clauses) == 0 {
		t.Errorf("%d clauses\n%v", len(found.Clauses), found.Problems)
	}
	trial, wrong := Try(t.Context(), survey.Catalogue(), rules.Book, house)
	if len(wrong) > 0 || !trial.Sound() || len(trial.Tests) < 4*len(found.Clauses) {
		t.Errorf("%d tests, %v, %v", len(trial.Tests), trial.Untried, wrong)
	}
}

// Each change in the sound clause or its tests is told with its file, its row and what to write.
func TestExamineTellsWhatIsWrong(t *testing.T) {
	for _, c := range []struct {
		file, from, to string
		at             string
		says           string
	}{
		{reach, "# title:", "# titel:", reach + ":1", "title is missing; write the clause in one sentence"},
		{reach, " shall stand", " stands", reach + ":1", "does not say shall"},
		{reach, "# description: |", "# description: ''\n# note: |", reach + ":4", "description is missing; write why"},
		{reach, "grade: project judgement", "grade: hearsay", reach + ":14", "sources/0/grade is one of published"},
		{reach, "#   cases: [always]\n", "", reach + ":1", "cases is missing"},
		{reach, "most: 1.05 m", "most: 1.05 kg", reach + ":13", "limits/height/most"},
		{reach, "of: rim_height", "of: rim_hight", reach + ":13", `the nearest is "rim_height"`},
		{reach, "#   example:\n#     - {at: /vessels/settler/form/cylinder/height, value: 770 mm}\n", "", reach + ":1", "example is missing"},
		{reach, "some vessel in input.sets.hand_cleaned", "some vessel in input.sets.hand_cleand", reach + ":31", `the nearest is "hand_cleaned"`},
		{reach, "some vessel in input.sets.hand_cleaned", "some vessel in input.sets.hand_cleaned\n\tnot data.book.safety.lifting.judgements", reach + ":32", onlyVocabulary},
		{reach, "package house.", "package book.", reach + ":22", "the package of a clause of a house is house.CHAPTER.CLAUSE"},
		{reach, "import data.vocab\n", "import data.vocab\n\n# to fill in: the sense; of it\n", reach + ":26", "to fill in: the sense, of it; write it"},
		{reach, "\tsome vessel in", "\thandy\n\tsome vessel in", reach + ":31", "handy"},
		{reach, "judgements contains", "_spare if 1 == 2\n\njudgements contains", reach + ":30", "line 30 is never tried; write a test"},
		{reachTests, "rim(1.05)", "rim(1.06)", reachTests + ":27", "test_just_inside fails, what it says is not so"},
		{reachTests, "test_just_outside", "test_outside", reachTests, "no test is called test_just_outside; write one"},
		{reachTests, "test_just_outside", "test_just_inside", reachTests + ":29", "there is a test of this name already"},
		{reachTests, "package house.yard.rim_reach_test", "package house.yard.tests", reachTests + ":1", "write package house.yard.rim_reach_test"},
		{reachTests, "test_met if {", "test_met if {\n\thttp.send({\"method\": \"get\", \"url\": \"http://localhost\"})", reachTests + ":23", "a clause may not call http.send"},
		{reachTests, "test_met if {", "test_met if {{", reachTests + ":", ""},
	} {
		house := quarryRoad(t)
		text := string(house[c.file].Data)
		if !strings.Contains(text, c.from) {
			t.Errorf("there is no %q in %s", c.from, c.file)
			continue
		}
		house[c.file] = &fstest.MapFile{Data: []byte(strings.Replace(text, c.from, c.to, 1))}
		found := Examine(t.Context(), survey.Catalogue(), rules.Book, house)
		if !slices.ContainsFunc(found.Problems, func(p Problem) bool {
			return strings.HasPrefix(p.String(), c.at) && strings.Contains(p.Text, c.says)
		}) || len(found.Clauses) > 0 {
			t.Errorf("%s: nothing at %s says %q in\n%v", c.to, c.at, c.says, found.Problems)
		}
		for _, p := range found.Problems {
			if was, write := p.Parts(); was == "" || write == "" {
				t.Errorf("%s: %q and %q", c.to, was, write)
			}
		}
	}
}

func TestExamineTellsOfFilesThatStandAlone(t *testing.T) {
	for _, alone := range []string{reach, reachTests} {
		house := quarryRoad(t)
		delete(house, alone)
		found := Examine(t.Context(), survey.Catalogue(), rules.Book, house)
		if len(found.Problems) != 1 || len(found.Clauses) > 0 {
			t.Errorf("without %s: %v", alone, found.Problems)
		}
	}
	if found := Examine(t.Context(), survey.Catalogue(), rules.Book, fstest.MapFS{}); len(found.Problems) > 0 || len(found.Clauses) > 0 {
		t.Errorf("of nothing: %+v", found)
	}
}

// Tests of strangers are bounded too.
func TestTestsThatDoNotEnd(t *testing.T) {
	house := quarryRoad(t)
	house[reachTests].Data = append(house[reachTests].Data, []byte("\n"+list(200)+"\ntest_long if count([1 | some a in list; some b in list; some c in list; some d in list; some e in list]) == 1\n")...)
	b := newBook(survey.Catalogue(), bounds{deadline, heap}, bounds{ownDeadline, ownHeap}, full, rules.Book, house)
	b.must()
	modules, err := b.gathered()
	if err != nil {
		t.Fatal(err)
	}
	within := bounds{tight.time, ownHeap}
	_, wrong := b.tryWithin(t.Context(), within, b.owns[0], house, reachTests, vocabulary(modules))
	if len(wrong) != 1 || wrong[0].File != reachTests || !strings.Contains(wrong[0].Text, "took too long") {
		t.Errorf("got %v", wrong)
	}
}

// A draft loads and holds as it is, for a quantity of any kind; what examine says of it is what is
// to be filled in, and nothing else.
func TestDraft(t *testing.T) {
	kinds := map[quantity.Kind]bool{}
	for _, q := range survey.Catalogue().Quantities {
		if kinds[q.Kind] {
			continue
		}
		kinds[q.Kind] = true
		text, tests, err := Draft(survey.Catalogue(), "yard", "mine", q.Name)
		if err != nil {
			t.Errorf("%s: %v", q.Name, err)
			continue
		}
		house := fstest.MapFS{"yard/mine.rego": {Data: []byte(text)}, "yard/mine_test.rego": {Data: []byte(tests)}}
		trial, wrong := Try(t.Context(), survey.Catalogue(), rules.Book, house)
		if len(wrong) > 0 || !trial.Sound() || len(trial.Tests) != 4 {
			t.Errorf("%s: %+v\n%v", q.Name, trial, wrong)
		}
		found := Examine(t.Context(), survey.Catalogue(), rules.Book, house)
		for _, p := range found.Problems {
			if !strings.HasPrefix(p.Text, toFill) || p.Row == 0 {
				t.Errorf("%s: %v", q.Name, p)
			}
		}
		if len(found.Problems) < 8 || len(found.Clauses) > 0 {
			t.Errorf("%s: %v", q.Name, found.Problems)
		}
		if len(kinds) > 3 { // each takes a while
			break
		}
		filled := strings.NewReplacer("to fill in: what", "What", "to fill in", "filled")
		for _, f := range house {
			f.Data = []byte(filled.Replace(string(f.Data)))
		}
		if found := Examine(t.Context(), survey.Catalogue(), rules.Book, house); len(found.Problems) > 0 || len(found.Clauses) != 1 {
			t.Errorf("%s, filled in: %v", q.Name, found.Problems)
		}
	}
	for _, bad := range [][3]string{{"Yard", "mine", "rim_height"}, {"yard", "mi-ne", "rim_height"}, {"yard", "../mine", "rim_height"}, {"yard", "mine", "rim_hight"}} {
		if _, _, err := Draft(survey.Catalogue(), bad[0], bad[1], bad[2]); err == nil {
			t.Errorf("%v is drafted", bad)
		}
	}
}

// All kinds have an example that a draft can stand on.
func TestDraftOfEveryKind(t *testing.T) {
	c := working.Catalogue{}
	for _, q := range survey.Catalogue().Quantities {
		c.Quantities = append(c.Quantities, q)
		if _, _, err := Draft(c, "yard", "mine", q.Name); err != nil {
			t.Errorf("%s: %v", q.Name, err)
		}
	}
}
