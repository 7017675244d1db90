package report

import (
	"bytes"
	"strings"
	"testing"

	"dryfit/internal/judge"
	"dryfit/internal/marking"
	"dryfit/internal/survey"
	"dryfit/rules"
)

// A guide of a stranger, with every kind of sentence and names that a terminal must not obey.
const hostileGuide = `dryfit_guide: 1
name: "Loop \u202e ::error unit, whose name is so long that it does not stand beside the marks of the guide on one line of any page"
total: 29.5
round_to: 0.25
alike: 0
items:
  - {id: of-some, title: AVeryLongWordThatIsLongerThanFortyColumnsOfAnyTerminalWhatever, marks: 4, clauses: {chapter: settler, strength: shall, count: all}}
  - {id: one, title: one, marks: 1, clauses: {ids: [topup_gap, well_depth], where_none_applies: full}}
  - id: a-name-as-long-as-a-name-can-ever-be-her
    title: ammonia
    marks: 6
    stated: {quantity: ammonia_level, of: the_water, case: unattended, unit: mg/L, bands: [{ratio: 1.5, marks: 6}, {ratio: 3, floor: 0.1 mg/L, marks: 1.25}], no_unit: 0, wrong_unit: 0}
  - id: share
    title: share
    marks: 2
    stated: {quantity: lip_depth_fraction, of: settler, case: always, bands: [{within: 0.02, marks: 2}, {within: 20 %, floor: 0.05, marks: 1}], no_working: 2, carried_forward: false}
  - id: loads
    title: loads
    marks: 1
    stated: {quantity: bucket_loads, of: settler, bands: [{within: 0, marks: 1}]}
  - {id: keys, title: keys, marks: 3, inputs: {keys: [water.pH], undetermined: true}}
  - {id: sources, title: sources, marks: 3, grounds: {assumptions: 2}}
  - {id: stock, title: stock, marks: 3, requirement: {quantity: fish_mass, of: fish_tanks, case: run_least, together: true, least: 8 kg}}
  - {id: room, title: room, marks: 3.5, requirement: {quantity: footprint, most: 6.25 m2, close: [{within: 0.5 m2, marks: 2}, {within: 50 %, floor: 1 m2, marks: 1}]}}
  - {id: warm, title: warm, marks: 2, requirement: {quantity: cold_room, of: lots, least: 1.5 degC, most: 20 degC, close: [{within: 0.5 degC, marks: 1}]}}
  - {id: lean, title: lean, marks: 1, of_limit: {clause: overflow_rate_most, bands: [{least: 0.5, most: 0.9, marks: 1}, {most: 1, marks: 0.5}]}}
caps:
  - {id: current, clauses: {ids: [residual_current]}, most: 10, why: current}
`

func guideRead(t *testing.T) *marking.Guide {
	t.Helper()
	book := judge.Open(survey.Catalogue(), rules.Book).Clauses()
	g, problems := marking.ReadGuide("guide.yaml", []byte(hostileGuide), book, survey.Catalogue())
	for _, p := range problems {
		t.Error(p)
	}
	if g == nil {
		t.FailNow()
	}
	return g
}

func TestGuideAtEveryWidth(t *testing.T) {
	g := guideRead(t)
	var wide bytes.Buffer
	for columns := 40; columns <= 130; columns += 5 {
		var b bytes.Buffer
		if err := Guide(&b, g, survey.Catalogue(), Options{Width: columns}); err != nil {
			t.Fatal(err)
		}
		for _, l := range strings.Split(b.String(), "\n") {
			if width(l) > columns || strings.ContainsAny(l, "\x1b\u202e\r") {
				t.Errorf("%d columns: %q", columns, l)
			}
		}
		wide = b
	}
	text := strings.Join(strings.Fields(wide.String()), " ")
	for _, want := range []string{
		`Loop \u202e :\u003aerror unit, whose name is so long`, " 29.5 marks ",
		"All of it if all of these 13 clauses (shall, chapter settler) are met that apply to the loop, else nothing; nothing where none applies.",
		"By the share that is met of these two clauses, of those that apply to the loop; all of it where none applies.",
		"The student states, for the_water, the ammonia in the tank's water while all is steady (total ammonia, as N). Case: nobody there. 6 marks within",
		"6 marks within a factor of 1.5; 1.25 within a factor of 3, or 0.1 mg/L. Errors are carried forward.",
		"2 marks within 0.02; 1 within 20 %, or 0.05. Taken off: all with a unit of another kind; all where it is not said how it was found. Errors are not carried forward.",
		"the buckets of 10 litres at each cleaning. 1 mark within 0. Errors",
		"A stated value is right where it follows from the student's own inputs. Where errors",
		"of water.pH; what else clauses need and do not find counts as missing, too.",
		"By the share that the file gives of two assumptions with their reasons",
		"All of it if, for the sum of fish_tanks, the mass of its fish is at least 8 kg. Case: pump side fouled, the least flow.",
		"at most 6.25 m2. Where it is missed: 2 marks within 0.5 m2; 1 within 50 %, or 1 m2.",
		"is at least 1.5 degC and at most 20 degC. Where it is missed: 1 mark within 0.5 degC.",
		"1 mark from 0.5 to 0.9; 0.5 up to 1. Named above: overflow_rate_most.",
		"At most 10 of 29.5 while this clause is not met or cannot be said yet. residual_current Everything",
		"to a multiple of 0.25, halves up. No submissions are listed as alike.",
		"made of 5 for clauses met, 9 for values worked out, 3 for inputs, 3 for sources and assumptions, 8.5 for what the brief requires and 1 for how much of a limit is used; this is guide",
		"lots: lots of fish, the entries of `fish`; the_water: the water of the loop",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not said in\n%s", want, wide.String())
		}
	}
}
