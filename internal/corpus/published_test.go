package corpus_test

import (
	"context"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"dryfit/internal/review"
	"dryfit/internal/survey"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// Systems that others published, written down as whole files: what the publication says goes in as it is, the rest is ours.
const (
	raftUnit  = "published/raft-unit.yaml"       // the University of the Virgin Islands, four tanks of 7.8 m3
	firstUnit = "published/raft-unit-first.yaml" // the same in its first version, four tanks of 4.4 m3
	twoGrams  = "published/two-hundred-grams.yaml"
)

// Sources of the published numbers.
const (
	later  = "Rakocy, Bailey, Shultz and Danaher, Update on tilapia and vegetable production in the UVI aquaponic system"
	first  = "Rakocy, Bailey, Shultz and Cole 1997, Fourth International Symposium on Tilapia in Aquaculture"
	fao589 = "Somerville and others 2014, FAO Fisheries and Aquaculture Technical Paper 589"
)

// surveyedAndJudged reads a file and works it out, without looking for remedies.
func surveyedAndJudged(t *testing.T, name string) (*system.System, *working.Ledger, []*review.Judgement) {
	t.Helper()
	data, err := os.ReadFile(systems + name)
	if err != nil {
		t.Fatal(err)
	}
	s, problems := system.Read(name, data)
	if len(problems) > 0 {
		t.Fatalf("%s is not read: %v", name, problems)
	}
	r, err := reviewer()
	if err != nil {
		t.Fatal(err)
	}
	l := survey.Survey(s)
	judgements, _, err := r.Book().Judge(context.Background(), l)
	if err != nil {
		t.Fatal(err)
	}
	return s, l, judgements
}

// What the published systems do not meet, with the reason.
var openAsPublished = map[string]map[string]string{
	raftUnit: {
		"nitrified":              "netting and rafts, as dryfit counts them, turn two fifths of what is made, and the unit ran: see the comment in the file",
		"nitrified_with_reserve": "as nitrified",
		"ammonia_level":          "as nitrified: above 1 mg/L the law is carried on",
		"ammonia_poisonous_low":  "as nitrified",
		"ammonia_flow":           "a pass in 80 minutes is a long one for so many fish; the paper gives it",
		"nitrate_level":          "80 g of feed on a square metre is more than dryfit's plants eat, and no loss as gas is counted",
		"bed_feed":               "60 to 100 g/m2/d as published, where the FAO has 40 to 50",
		"stocking":               "dense tanks, each emptied at a harvest, in skilled hands and with backup air",
		"oxygen_at_ease":         "the tank next to harvest, after a meal; the air is ours",
		"air_pump_failure":       "dense tanks; the blower is ours",
		"alkalinity_lasts":       "base goes in every day, as published",
		"one_blocked":            "no overflows are published",
		"rain_passes":            "six open beds of 30 m without an overflow of their own",
	},
	firstUnit: {
		"nitrified":              "as in the later unit",
		"nitrified_with_reserve": "as in the later unit",
		"ammonia_level":          "as in the later unit",
		"ammonia_poisonous_low":  "as in the later unit",
		"ammonia_flow":           "as in the later unit",
		"nitrate_level":          "as in the later unit",
		"bed_feed":               "60 g/m2/d, the least of what is published",
		"stocking":               "81.1 kg/m3 at harvest, as published",
		"stocking_most":          "81.1 kg/m3 at harvest, as published, and the table has 80 for skilled hands",
		"oxygen_at_ease":         "as in the later unit",
		"air_pump_failure":       "as in the later unit",
		"one_blocked":            "no overflows are published",
		"rain_passes":            "as in the later unit",
	},
	twoGrams: {
		"nitrified_with_reserve": "the 200 L of the paper carry their load at 22 degC with a quarter to spare, where three tenths are asked",
	},
}

// The published systems are read, their levels are found at rest and at every state of running, every scene of them is
// followed, and what they do not meet is what the publication and its gaps make so.
func TestPublishedLoops(t *testing.T) {
	for name, open := range openAsPublished {
		t.Run(name, func(t *testing.T) {
			s, l, judgements := surveyedAndJudged(t, name)
			for _, vessel := range s.Vessels {
				working.EachRunning(func(runCase, water string) {
					n := l.Find(working.Address{Subject: vessel.ID, Name: "water_level", Case: runCase, Water: water})
					if n == nil {
						t.Errorf("%s has no level in %s", vessel.ID, runCase)
					} else if _, known := n.Value(); !known {
						t.Errorf("the level of %s is not found in %s: %v", vessel.ID, runCase, n.Gaps())
					}
				})
			}
			rests := 0
			for _, n := range l.Nodes() {
				if n.Address.Name == "static_level" {
					if _, known := n.Value(); !known {
						t.Errorf("%v is not found: %v", n.Address, n.Gaps())
					}
					rests++
				}
			}
			if rests < len(s.Vessels) {
				t.Errorf("%d levels at rest of %d vessels", rests, len(s.Vessels))
			}
			if len(l.Scenes) < 12 {
				t.Errorf("only %d scenes are followed", len(l.Scenes))
			}
			for _, scene := range l.Scenes {
				if len(scene.Missing) > 0 || scene.Reason != "" {
					t.Errorf("%s, %s is not followed: %v %s", scene.Case, scene.Fault, scene.Missing, scene.Reason)
				}
			}
			var found []string
			for _, j := range judgements {
				if j.Verdict == review.NotMet && !slices.Contains(found, j.Clause.ID) {
					found = append(found, j.Clause.ID)
					if open[j.Clause.ID] == "" {
						t.Errorf("%s on %s is not met: %v", j.Clause.ID, j.Subject, j.Value.X)
					}
				}
			}
			for clause := range open {
				if !slices.Contains(found, clause) {
					t.Errorf("%s is met", clause)
				}
			}
		})
	}
}

const (
	litreMinute = 1e-3 / 60
	kilogramDay = 1.0 / 86400
)

// Published numbers and what dryfit finds for the same system: subject, quantity, case and water, the published number in SI, how
// far off it may be and where it stands. Levels, volumes and flows come out of the balance of the whole loop; the heights and the
// curve of the pump, which no paper gives, were drawn so that they can. What goes straight from the paper through the file is not here.
var published = []struct {
	file, subject, name, kase, water string
	want, within                     float64
	source, why                      string
}{
	{raftUnit, "water", "loop_volume", "run_clean", "usual", 110, 0.01, later, "system volume; the parts add to 110.9"},
	{raftUnit, "tank-1", "water_volume", "run_clean", "usual", 7.8, 0.01, later, "four rearing tanks"},
	{raftUnit, "tank-4", "water_volume", "run_clean", "usual", 7.8, 0.01, later, "the last one on the riser"},
	{raftUnit, "clarifier-a", "water_volume", "run_clean", "usual", 3.8, 0.01, later, "two settlers"},
	{raftUnit, "clarifier-b", "water_volume", "run_clean", "usual", 3.785, 0.01, later, "1000 US gallons"},
	{raftUnit, "nets-a1", "water_volume", "run_clean", "usual", 0.7, 0.02, later, "four boxes of netting"},
	{raftUnit, "degasser", "water_volume", "run_clean", "usual", 0.7, 0.04, later, "one decimal is published"},
	{raftUnit, "raft-1a", "water_volume", "run_clean", "usual", 11.3, 0.01, later, "six beds"},
	{raftUnit, "raft-3b", "water_volume", "run_clean", "usual", 11.3, 0.01, later, "the last one before the sump"},
	{raftUnit, "sump", "water_volume", "run_clean", "usual", 0.6, 0.01, later, "0.605 in another place of the paper"},
	{raftUnit, "base", "water_volume", "run_clean", "usual", 0.2, 0.01, later, "base addition tank"},
	{raftUnit, "degasser", "inflow", "run_clean", "usual", 378 * litreMinute, 0.01, later, "100 US gallons a minute"},
	{raftUnit, "tank-1", "inflow", "run_clean", "usual", 94.5 * litreMinute, 0.04, later, "a quarter of it: four nozzles on one pipe share alike"},
	{raftUnit, "tank-4", "inflow", "run_clean", "usual", 94.5 * litreMinute, 0.04, later, "25 US gallons a minute"},
	{raftUnit, "clarifier-a", "inflow", "run_clean", "usual", 189 * litreMinute, 0.02, later, "half of it"},
	{raftUnit, "tank-2", "turnover_time", "run_least", "usual", 80 * 60, 0.05, later, "every 1 h 20 min; 82.5 min by its own numbers"},
	{raftUnit, "raft-1a", "bed_time", "run_least", "usual", 1.5 * 3600, 0.02, later, "three hours through two beds in a row"},
	{raftUnit, "water", "water_used_share", "always", "", 0.015, 0.15, later, "1.5 % a day; dryfit has evaporation, leaves and the sludge that is let off"},
	{raftUnit, "water", "ammonia_made", "always", "usual", 17.1 * 0.032 * kilogramDay, 0.10, later, "of 17.1 kg of feed: 3.2 % of it, the middle of the rule of 2 to 4 %"},
	{raftUnit, "clarifier-a", "capture_all", "run_clean", "usual", 0.5, 0.30, "SRAC Publication 454, from memory", "half of the solids; what comes round again counts there"},
	{raftUnit, "tank-1", "time_to_danger", "power_cut", "usual", 600, 0.15, "reports from dense farms", "fish gasp some ten minutes after the power goes; 74 kg in a cubic metre"},
	{firstUnit, "water", "loop_volume", "run_clean", "usual", 93.6, 0.01, first, "the volumes of the parts, added: 17.6 + 3.6 + 2.8 + 69 + 0.6"},
	{firstUnit, "tank-1", "water_volume", "run_clean", "usual", 4.4, 0.01, first, "four rearing tanks"},
	{firstUnit, "clarifier-a", "water_volume", "run_clean", "usual", 1.8, 0.02, first, "two settlers"},
	{firstUnit, "raft-1a", "water_volume", "run_clean", "usual", 11.5, 0.01, first, "six beds"},
	{firstUnit, "tank-1", "turnover_time", "run_least", "usual", 0.776 * 3600, 0.02, first, "4.4 m3 at a quarter of 378 L/min"},
	{firstUnit, "tank-1", "turnover_time", "run_least", "usual", 0.8 * 3600, 0.05, first, "as printed, rounded"},
	{firstUnit, "tank-1", "stocking_density", "run_least", "usual", 81.1, 0.01, first, "density at harvest"},
	{firstUnit, "raft-2a", "bed_time", "run_least", "usual", 3.04 / 2 * 3600, 0.02, first, "six beds of 11.5 m3 at 378 L/min are 3.04 h"},
	{firstUnit, "divider", "inflow", "run_clean", "usual", 378 * litreMinute, 0.01, first, "flow of the unit"},
	{twoGrams, "tank", "water_volume", "run_clean", "usual", 1, 0.02, fao589, "fish tank of 1000 L"},
	{twoGrams, "tank", "inflow", "run_clean", "usual", 2000 * litreMinute / 60, 0.05, fao589, "pump of 2000 L/h"},
	{twoGrams, "tank", "stocking_density", "run_least", "usual", 20, 0.02, fao589, "20 kg in 1000 L"},
	{twoGrams, "water", "ammonia_made", "always", "usual", 6.25e-3 * kilogramDay, 0.06, fao589, "0.61 of the nitrogen there, 0.575 here"},
	{twoGrams, "filter", "media_area", "always", "", 60, 0.01, fao589, "200 L of tuff of 300 m2/m3, four and a half times the 13.2 m2 of its sum"},
	{twoGrams, "settler", "water_volume", "run_clean", "usual", 0.15, 0.34, fao589, "100 to 200 L"},
	{twoGrams, "water", "water_used_share", "always", "", 0.02, 0.5, fao589, "section 3.4: 1 to 3 % a day"},
}

func TestPublishedNumbers(t *testing.T) {
	ledgers := map[string]*working.Ledger{}
	for _, p := range published {
		l := ledgers[p.file]
		if l == nil {
			_, l, _ = surveyedAndJudged(t, p.file)
			ledgers[p.file] = l
		}
		got := numberOf(t, l, working.Address{Subject: p.subject, Name: p.name, Case: p.kase, Water: p.water})
		if off := got/p.want - 1; math.Abs(off) > p.within {
			t.Errorf("%s: %s.%s is %v, published %v (%s), %+.1f %%: %s", p.file, p.subject, p.name, got, p.want, p.source, 100*off, p.why)
		}
	}

	// Retention in the settlers: water over the flow that runs, 20 minutes and 9.5.
	for file, minutes := range map[string]float64{raftUnit: 20, firstUnit: 9.5} {
		at := func(name string) float64 {
			return numberOf(t, ledgers[file], working.Address{Subject: "clarifier-a", Name: name, Case: "run_clean", Water: "usual"})
		}
		if got := at("water_volume") / at("inflow") / 60; math.Abs(got/minutes-1) > 0.03 {
			t.Errorf("%s: the water stays %v min in a settler, published %v", file, got, minutes)
		}
	}

	// The paper prints 91.6 m3 for the first unit, and its parts add to 93.6: dryfit must not find what is printed.
	if got := numberOf(t, ledgers[firstUnit], working.Address{Subject: "water", Name: "loop_volume", Case: "run_clean", Water: "usual"}); math.Abs(got/91.6-1) < 0.01 {
		t.Errorf("the first unit holds %v m3, the misprint", got)
	}
	// By surface alone the 200 L of tuff would turn 28 g a day: beds were measured to do a quarter of that.
	if got := numberOf(t, ledgers[twoGrams], working.Address{Subject: "filter", Name: "nitrifies", Case: "always", Water: "usual"}); got > 28e-3*kilogramDay/3 {
		t.Errorf("the tuff turns %v kg/s, as by surface alone", got)
	}
}

func numberOf(t *testing.T, l *working.Ledger, a working.Address) float64 {
	t.Helper()
	n := l.Find(a)
	if n == nil {
		t.Fatalf("there is no %v", a)
	}
	v, known := n.Value()
	if !known {
		t.Errorf("%v has no number: %v", a, n.Gaps())
	}
	return v.X
}

// Where what a publication says (`stated` in its file) is farther off than the file allows, with the reason; all else agrees.
var differs = map[string]map[string]string{
	raftUnit: {
		"water.nitrification_share": "see the comment in the file",
	},
	firstUnit: {
		"water.loop_volume":         "the misprint",
		"water.nitrification_share": "see the comment in the file of the later unit",
	},
	twoGrams: {
		"filter.nitrifies": "by surface alone, and beds were measured to do a quarter of that",
		"raft.bed_time":    "its own volume and flow give 36 minutes",
	},
}

func TestWhatIsStatedOfThePublishedLoops(t *testing.T) {
	for name, far := range differs {
		s, l, _ := surveyedAndJudged(t, name)
		entries := review.StatedIn(s, l)
		if len(entries) < 12 {
			t.Errorf("%s: %d values are stated", name, len(entries))
		}
		for _, one := range entries {
			if len(one.Missing) > 0 || one.Value == nil || one.Node == nil || one.Off == nil {
				t.Errorf("%s: %s cannot be held against anything: %v", name, one.Quantity, one.Missing)
				continue
			}
			v, _ := one.Node.Value()
			off := math.Abs(*one.Value-v.X) > *one.Off
			if off != (far[one.Quantity] != "") {
				t.Errorf("%s: %s is stated as %s, and dryfit finds %v", name, one.Quantity, one.Text, v.X)
			}
			if !strings.Contains(one.Working, " ") {
				t.Errorf("%s: nothing is said of where %s comes from", name, one.Quantity)
			}
		}
	}
}
