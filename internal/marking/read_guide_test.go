package marking

import (
	"crypto/sha256"
	"encoding/hex"
	"os"
	"reflect"
	"strings"
	"sync"
	"testing"

	"dryfit/internal/judge"
	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/survey"
	"dryfit/internal/system"
	"dryfit/rules"
)

// theBook is the clauses of the book in the program.
var theBook = sync.OnceValue(func() []*review.Clause { return judge.Open(survey.Catalogue(), rules.Book).Clauses() })

func readGuide(text string) (*Guide, []system.Problem) {
	return ReadGuide("guide.yaml", []byte(text), theBook(), survey.Catalogue())
}

// soundGuide has an item of each task, a bonus and a cap: 4 + 6 + 3 + 4 + 2 + 5 + 4 + 2 = 30 and 2 more.
const soundGuide = `dryfit_guide: 1
name: Courtyard loop, unit 3
note: Mark the working, not the neatness.
total: 30
items:
  - {id: lip, title: the lip hangs at half depth, marks: 4, clauses: {ids: [well_depth, room_over_sludge]}}
  - id: overflow-rate
    title: overflow rate of the settler
    marks: 6
    stated:
      quantity: overflow_rate
      of: radial_flow_settlers
      case: run_clean
      unit: mm/s
      bands:
        - {within: 2 %, floor: 0.01 mm/s, marks: 6}
        - {ratio: 1.25, floor: 0.05 mm/s, marks: 2.5}
      no_unit: 2
      no_working: 1
  - id: level
    title: level in the tank
    marks: 3
    stated: {quantity: water_level, of: tank, unit: mm, bands: [{within: 5 mm, marks: 3}, {within: 20 mm, marks: 1}], carried_forward: false}
  - {id: inputs, title: inputs with their units, marks: 4, inputs: {keys: [water.pH, vessels.*.stands_at], undetermined: true}}
  - {id: grounds, title: sources and assumptions, marks: 2, grounds: {sources_for: [pumps.*.curve], assumptions: 2}}
  - id: flow
    title: flow through the tank
    marks: 5
    requirement: {quantity: inflow, of: fish_tanks, least: 900 L/h, most: 1400 L/h, close: [{within: 10 %, marks: 2}]}
  - id: budget
    title: within the budget
    marks: 4
    requirement: {quantity: cost, most: 1500 NZD, close: [{within: 100 NZD, marks: 1}]}
  - id: lean
    title: the settler is no larger than it must be
    marks: 2
    of_limit: {clause: overflow_rate_most, bands: [{least: 0.4, most: 0.8, marks: 2}, {most: 1, marks: 1}]}
  - {id: safe, title: every safety clause is met, marks: 2, bonus: true, clauses: {safety: true, count: all, where_none_applies: full}}
caps:
  - {id: safety, clauses: {safety: true, strength: shall}, most: 15, why: nobody builds what may hurt somebody}
`

func TestSoundGuide(t *testing.T) {
	g, problems := readGuide(soundGuide)
	for _, p := range problems {
		t.Error(p)
	}
	if g == nil {
		t.FailNow()
	}
	sum := sha256.Sum256([]byte(soundGuide))
	if g.Hash != hex.EncodeToString(sum[:]) || g.File != "guide.yaml" || g.Name != "Courtyard loop, unit 3" || g.Note == "" || g.Total != 30 || g.RoundTo != 0.5 || g.Alike != 6 {
		t.Errorf("the guide is %+v", g)
	}
	if len(g.Items) != 9 || len(g.Caps) != 1 {
		t.Fatalf("%d items and %d caps", len(g.Items), len(g.Caps))
	}
	mm := func(x float64) float64 { return x / 1000 }
	litres := func(x float64) *float64 { y, _ := quantity.FromUnit(quantity.Flow, x, "L/h"); return &y }
	money := 1500.0
	for i, want := range []Task{
		1: &StatedRight{
			Quantity: "overflow_rate", Of: "radial_flow_settlers", Case: "run_clean", Kind: quantity.Velocity, Unit: "mm/s",
			Bands:  []Band{{Tolerance{Relative, 0.02, mm(0.01)}, 6}, {Tolerance{Ratio, 0.25, mm(0.05)}, 2.5}},
			NoUnit: 2, BadUnit: 6, NoWork: 1,
		},
		2: &StatedRight{
			Quantity: "water_level", Of: "tank", Kind: quantity.Length, Unit: "mm",
			Bands:  []Band{{Tolerance{Absolute, mm(5), 0}, 3}, {Tolerance{Absolute, mm(20), 0}, 1}},
			NoUnit: 3, BadUnit: 3, Alone: true,
		},
		3: &InputsGiven{Keys: []string{"water.pH", "vessels.*.stands_at"}, Undetermined: true},
		4: &GroundsGiven{SourcesFor: []string{"pumps.*.curve"}, Assumptions: 2},
		5: &Requirement{
			Quantity: "inflow", Of: "fish_tanks", Kind: quantity.Flow, Unit: "L/h", Least: litres(900), Most: litres(1400),
			Close: []Band{{Tolerance{Relative, 0.1, 0}, 2}},
		},
		6: &Requirement{Quantity: "cost", Kind: quantity.Money, Unit: "NZD", Most: &money, Close: []Band{{Tolerance{Absolute, 100, 0}, 1}}},
	} {
		if want != nil && !reflect.DeepEqual(g.Items[i].Task, want) {
			t.Errorf("item %d asks %+v, want %+v", i, g.Items[i].Task, want)
		}
	}
	lip, safe, lean := g.Items[0].Task.(*ClausesMet), g.Items[8].Task.(*ClausesMet), g.Items[7].Task.(*ShareUsed)
	if got := ids(lip.Which.Picked); got != "room_over_sludge well_depth" || lip.All || lip.Full {
		t.Errorf("the lip picks %s: %+v", got, lip)
	}
	if !safe.All || !safe.Full || len(safe.Which.Picked) < 15 {
		t.Errorf("safety picks %d: %+v", len(safe.Which.Picked), safe)
	}
	if lean.Clause.ID != "overflow_rate_most" || !reflect.DeepEqual(lean.Bands, []ShareBand{{0.4, 0.8, 2}, {0, 1, 1}}) {
		t.Errorf("the share is %+v", lean)
	}
	if cap := g.Caps[0]; cap.Most != 15 || cap.Place.Line != 40 || len(cap.Which.Picked) == 0 || len(cap.Which.Picked) > len(safe.Which.Picked) {
		t.Errorf("the cap is %+v", cap)
	}
	if at := g.Items[1].Place; at.Line != 7 || at.Column != 5 {
		t.Errorf("the second item stands at %v", at)
	}
}

func ids(clauses []*review.Clause) string {
	var out []string
	for _, c := range clauses {
		out = append(out, c.ID)
	}
	return strings.Join(out, " ")
}

// Where a judgement uses a share of its limit, a guide may give marks by the share of its clause.
func TestClausesWithShares(t *testing.T) {
	book := judge.Open(survey.Catalogue(), rules.Book)
	r := &guideReader{catalogue: survey.Catalogue()}
	with, without := 0, 0
	for _, c := range book.Clauses() {
		if r.hasShare(c) {
			with++
		} else {
			without++
		}
	}
	if with < 100 || without < 30 {
		t.Errorf("%d clauses have a share of a limit and %d have none", with, without)
	}
	for _, name := range []string{"quarry-road", "two-settlers", "siphon-beds"} {
		data, err := os.ReadFile("../../testdata/systems/" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		s, problems := system.Read(name, data)
		if len(problems) > 0 {
			t.Fatal(problems[0])
		}
		judgements, _, err := book.Judge(t.Context(), survey.Survey(s))
		if err != nil {
			t.Fatal(err)
		}
		for _, j := range judgements {
			if _, told := j.OfLimit(); told && !r.hasShare(j.Clause) {
				t.Errorf("%s: %s uses a share of its limit", name, j.Clause.ID)
			}
		}
	}
}

// The guide of the invented class, which the lesson and the demonstration use, is sound.
func TestGuideOfTheClass(t *testing.T) {
	const name = "../../testdata/marking/guide.yaml"
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	g, problems := ReadGuide(name, data, theBook(), survey.Catalogue())
	for _, p := range problems {
		t.Error(p)
	}
	if g != nil && (g.Total != 60 || len(g.Caps) == 0) {
		t.Errorf("it gives %v marks and has %d caps", g.Total, len(g.Caps))
	}
}
