package corpus_test

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"dryfit/internal/corpus"
	"dryfit/internal/remedy"
	"dryfit/internal/report"
	"dryfit/internal/review"
	"dryfit/internal/system"
)

const systems = "../../testdata/systems/"

var reviewer = sync.OnceValues(corpus.NewReviewer)

// reviewed takes one file of testdata/systems all the way.
func reviewed(t testing.TB, name string) *review.Review {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(systems, name))
	if err != nil {
		t.Fatal(err)
	}
	o := outcome(t, name, data)
	if o.Review == nil {
		t.Fatalf("%s is not read: %v", name, o.Problems)
	}
	return o.Review
}

func outcome(t testing.TB, name string, data []byte) report.Item {
	t.Helper()
	r, err := reviewer()
	if err != nil {
		t.Fatal(err)
	}
	o, err := r.Review(context.Background(), name, data)
	if err != nil {
		t.Fatal(err)
	}
	return o
}

// withoutRemedies is the same, for those who only want the verdicts.
func withoutRemedies(t testing.TB, name string, data []byte) report.Item {
	t.Helper()
	r, err := reviewer()
	if err != nil {
		t.Fatal(err)
	}
	o, err := r.Judge(context.Background(), name, data)
	if err != nil {
		t.Fatal(err)
	}
	return o
}

// edited reviews a system with some edits made to it.
func edited(t testing.TB, s *system.System, edits ...system.Edit) *review.Review {
	t.Helper()
	data, problems := s.Document.WithEdits(edits...)
	if len(problems) > 0 {
		t.Fatalf("the edits cannot be made: %v", problems)
	}
	o := outcome(t, s.Document.File, data)
	if o.Review == nil {
		t.Fatalf("the edited file is not read: %v\n%s", o.Problems, data)
	}
	return o.Review
}

// judgedAs is a system with edits made to its file, read anew and judged; no remedies are looked for.
func judgedAs(t testing.TB, r *corpus.Reviewer, s *system.System, edits ...system.Edit) *review.Review {
	t.Helper()
	data, problems := s.Document.WithEdits(edits...)
	if len(problems) > 0 {
		t.Fatalf("the edits cannot be made: %v", problems)
	}
	o, err := r.Judge(context.Background(), s.Document.File, data)
	if err != nil || o.Review == nil {
		t.Fatalf("the edited file is not judged: %v, %v\n%s", err, o.Problems, data)
	}
	return o.Review
}

// ofClause is the findings on one clause.
func ofClause(r *review.Review, clause string) []*review.Finding {
	return slices.DeleteFunc(slices.Clone(r.Findings), func(f *review.Finding) bool { return f.Clause.ID != clause })
}

func TestTheDemoHasNothingToAct(t *testing.T) {
	r := reviewed(t, "quarry-road.yaml")
	if r.ExitStatus(review.Should) != review.NothingToAct || len(r.Findings) != 0 {
		t.Errorf("status %d with %d findings", r.ExitStatus(review.Should), len(r.Findings))
	}
}

// Findings of the twin that no single edit clears, with the reason.
var needsMore = map[string]string{
	"pump_room":        "the pump itself has to go first, and then there is room",
	"one_blocked":      "while the mains run in without end no room is enough: they go first",
	"no_wrong_valve":   "the same",
	"unattended_water": "the mains are no store to enlarge",
	"takes_draw_down":  "the sump that takes what runs back takes this too, but the two do not move together by one edit",
}

// Each twin has a fault below each comment "fault CLAUSES", and nothing else that is open.
func TestEveryPlantedFaultIsFoundWhereItStands(t *testing.T) {
	for _, name := range []string{"quarry-road-as-found.yaml", "quarry-road-flooding.yaml"} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			planted(t, name)
		})
	}
}

func planted(t *testing.T, name string) {
	r := reviewed(t, name)
	data, err := os.ReadFile(filepath.Join(systems, name))
	if err != nil {
		t.Fatal(err)
	}
	type fault struct {
		line   int
		clause string
	}
	planted := map[fault]bool{}
	for i, line := range strings.Split(string(data), "\n") {
		if rest, ok := strings.CutPrefix(strings.TrimSpace(line), "# fault "); ok {
			clauses, _, _ := strings.Cut(rest, ":")
			for _, clause := range strings.Split(clauses, ", ") {
				planted[fault{i + 2, clause}] = true
			}
		}
	}
	if len(planted) < 12 || r.ExitStatus(review.Shall) != review.Act {
		t.Fatalf("%d faults are planted and the status is %d", len(planted), r.ExitStatus(review.Shall))
	}
	for _, f := range r.Findings {
		at := fault{f.Place.Line, f.Clause.ID}
		if !planted[at] {
			t.Errorf("%s is %s at line %d, where it is not planted", f.Clause.ID, f.Verdict, f.Place.Line)
		}
		delete(planted, at)
		if f.Verdict == review.NotMet && !f.Fact && f.Node == nil {
			t.Errorf("%s has no number", f.Clause.ID)
		}
		if len(f.Remedies) == 0 && noRemedy[f.Clause.ID] == "" && needsMore[f.Clause.ID] == "" {
			t.Errorf("%s at line %d has no remedy", f.Clause.ID, f.Place.Line)
		}
	}
	for at := range planted {
		t.Errorf("%s at line %d is not found", at.clause, at.line)
	}
}

// Clauses whose example breaks another one too, with the reason.
var alsoFlips = map[string]map[string]string{
	// materials, safety
	"drain_opens":        {"lifting": "it now leads to a bucket whose size is not given", "no_wrong_valve": "the bucket runs over when its valve is opened by mistake"},
	"floor_reached":      {"lifting": "what is lifted at cleaning goes with the rest of what was said of it"},
	"clamps_stand_water": {"clamps_under_water": "what no water may touch is not for under water either"},
	"aluminium_at_ph":    {"ph_for_all": "water as sour as that is under the band of the fish"},
	"galvanised_at_ph":   {"ph_for_all": "water as sour as that is under the band of the fish"},
	"carries_flow":       {"throttle_reserve": "what cannot carry its flow cannot carry one and a half times as much"},
	"throttle_reserve":   {"drop_froude": "the narrow drop gulps"},
	"high_point":         {"standpipe_break": "the same closed tee keeps air out and air in"},
	"topup_gap":          {"topup_second_stop": "the main never ends, and nothing else is said to stop it", "one_blocked": "as topup_second_stop", "no_wrong_valve": "as topup_second_stop"},
	// lines, pump
	"sharp_bend":             {"drop_froude": "the line now falls upright, where it ran down a slope"},
	"bore_kept_least":        {"bore_kept": "what is under the bound is under what is recommended"},
	"solids_speed":           {"well_downflow": "the larger pipe in the well leaves the water less of it", "least_run": "the larger fittings leave no room for pipe between them"},
	"turnover":               {"standing_load": "so much more water is more than the stand bears", "one_blocked": "so wide a tank has more water to give back", "takes_draw_down": "as one_blocked", "takes_run_back_easily": "as one_blocked"},
	"pump_meets_flow":        {"pump_room": "a pump that cannot give the flow asked has none to spare"},
	"tank_not_emptied":       {"store_lasts": "of the fish in that vessel nothing is said", "intake_guarded": "the overflow of the vessel that is called a fish tank here has no guard", "one_blocked": "the lower the pump draws the more it sends up", "tank_keeps_water": "its water is what the rest of the loop fills with", "tank_keeps_water_capped": "as tank_keeps_water", "air_pump_failure": "the vessel that is called a fish tank here gets no backup air"},
	"no_pump_before_settler": {"intake_guarded": "the overflow of the vessel that is called a fish tank here has no guard", "store_lasts": "of the fish in that vessel nothing is said", "air_pump_failure": "the vessel that is called a fish tank here gets no backup air", "power_cut_survived": "what is left in a vessel that is not called a fish tank is not worked out"},
	// loop
	"freeboard_kept":        {"freeboard_ample": "what is under the bound is under what is recommended", "one_blocked": "a rim under the overflow spills before that runs", "overflow_carries": "an overflow over the rim carries nothing"},
	"freeboard_ample":       {"one_blocked": "a rim under the overflow spills before that runs", "overflow_carries": "an overflow over the rim carries nothing"},
	"freeboard_for_foam":    {"one_blocked": "what a blocked outlet holds back wants the same room"},
	"overflow_carries":      {"one_blocked": "an overflow that carries too little does not keep the vessel from running over"},
	"takes_run_back":        {"takes_run_back_easily": "what is over the bound is over what is recommended", "takes_draw_down": "what does not hold the run-back holds no draw-down on top of it", "covered_at_start_well": "water that ran over is not there at the start"},
	"takes_run_back_easily": {"takes_draw_down": "a sump as small as that has no room for the draw-down on top"},
	"covered_at_start":      {"covered_at_start_well": "what is under the bound is under what is recommended", "takes_run_back": "water that ran over at the stop is what is missing at the start", "takes_run_back_easily": "as takes_run_back", "takes_draw_down": "as takes_run_back"},
	"covered_at_start_well": {"takes_run_back_easily": "a sump with so little water for the start is a small one", "takes_draw_down": "as takes_run_back_easily"},
	"tank_keeps_water":      {"intake_guarded": "the drain through the wall of the fish tank has no guard"},
	"drop_held":             {"takes_draw_down": "so narrow a drop holds water up, which runs back", "carries_flow": "that asks for 50 mm under the spill, and this for 30", "throttle_reserve": "as carries_flow", "drop_froude": "the narrow drop gulps"},
	"no_wrong_valve":        {"drain_opens": "without its cap the drain has one closure only"},
	"standpipe_break":       {"high_point": "the same closed tee keeps air out and air in"},
	"beds_together":         {"takes_draw_down": "what stands over the rim of the siphon runs back too", "one_blocked": "so large a bed has as much water to give as the tank has room", "no_wrong_valve": "as one_blocked", "bell_siphon_starts": "its wide siphon wants more flow", "takes_run_back_easily": "what stands over the rim of the siphon runs back too", "media_depth": "its bed for herbs is shallow", "bed_fed_enough": "so large a bed wants more feed"},
	"topup_fits":            {"one_blocked": "all that the store lets in comes on top of what a blocked opening holds back", "no_wrong_valve": "as one_blocked"},
	"bell_siphon_starts":    {"takes_draw_down": "what stands over the rim of the siphon runs back too", "media_depth": "its bed for herbs is shallow"},
	"bell_siphon_stops":     {"takes_draw_down": "what stands over the rim of the siphon runs back too", "media_depth": "its bed for herbs is shallow"},
	"unattended_water":      {"alkalinity_unattended": "no alkalinity lasts for nine days"},
	"topup_second_stop":     {"one_blocked": "the main goes on while an opening is blocked", "no_wrong_valve": "as one_blocked"},
	// fish
	"cold_borne":            {"fed_warm": "water too cold to live in is too cold to be fed in"},
	"warm_borne":            {"oxygen_at_ease": "water as warm as that holds less oxygen, and the fish use more"},
	"stocking_most":         {"stocking": "what is over the bound is over what is recommended", "air_pump_failure": "so dense a tank is in danger as soon as its own air stops"},
	"oxygen_kept":           {"oxygen_at_ease": "what does not do at the lower level does not do at the higher one"},
	"time_to_act_least":     {"time_to_act": "what is under the bound is under what is recommended"},
	"nitrified":             {"nitrified_with_reserve": "what is over the bound is over what is recommended", "ammonia_level": "what the bacteria do not turn stays in the water"},
	"ammonia_poisonous":     {"ammonia_poisonous_low": "what is over the bound is over what is recommended", "ph_for_all": "ammonia is poison at a pH that no plant likes"},
	"ammonia_poisonous_low": {"ph_for_all": "ammonia is poison at a pH that no plant likes"},
	"ammonia_flow":          {"turnover": "so slow a flow turns the tank over slowly too", "solids_speed": "as turnover", "weir_even": "so small a flow over the weir is thin"},
	"ph_bounds":             {"ph_for_all": "what is outside the bounds is outside what is recommended"},
	"nitrate_level":         {"bed_feed": "it is what the beds do not use that stays"},
	"bed_feed_most":         {"bed_feed": "what is over the bound is over what is recommended", "nitrate_level": "what the beds do not use stays in the water"},
	"raft_depth":            {"raft_time": "so little water is soon through"},
	"channel_length":        {"channel_flow": "the whole flow goes through its one channel", "takes_draw_down": "so long a channel gives back much water at a stop"},
	"topup_chlorine":        {"topup_chlorine_low": "what is over the bound is over what is recommended"},
	// settler
	"drain_preload":          {"drain_held": "a cuff that lifts the drain does not hold it"},
	"hand_room":              {"inner_parts_come_out": "the well has to stay in for the room beside it to matter"},
	"overflow_rate_most":     {"overflow_rate": "what is over the bound is over what is recommended", "catches_enough": "so hard a load catches less", "residence": "and stays for less time"},
	"room_over_sludge":       {"decant_above_sludge": "sludge as high as that reaches the draw-down too"},
	"lip_scour":              {"room_over_sludge": "a gap in which the water is as fast as that is narrower than half the well", "decant_above_sludge": "sludge as high as that reaches the draw-down too"},
	"lip_scour_most":         {"lip_scour": "what is over the bound is over what is recommended", "room_over_sludge": "the same gap is too narrow", "room_over_sludge_least": "the same gap is too narrow", "decant_above_sludge": "sludge as high as that reaches the draw-down too"},
	"residence":              {"overflow_rate": "a drum as narrow as that has too little area too", "catches_enough": "and catches too little for it"},
	"catches_enough":         {"overflow_rate": "a drum as narrow as that has too little area", "residence": "and holds too little water"},
	"drain_fast_least":       {"drain_fast": "what is under the bound is under what is recommended"},
	"suction_lift":           {"pump_side_joints": "the joints of the line are dry, and the pump now presses on them"},
	"room_over_sludge_least": {"room_over_sludge": "what is under the bound is under what is recommended", "lip_scour": "in so narrow a gap the water is fast", "decant_above_sludge": "sludge as high as that reaches the draw-down too"},
	"well_depth_bounds":      {"well_depth": "what is outside the bounds is outside what is recommended"},
	"well_downflow_most":     {"well_downflow": "what is over the bound is over what is recommended"},
	// making
	"flat_for_flange_most": {"flat_for_flange": "what is over the bound is over what is recommended"},
	"hole_fits_seal_most":  {"hole_fits_seal": "what is over the bound is over what is recommended"},
	"holes_apart_least":    {"holes_apart": "holes whose lips touch are nearer than three diameters"},
}

// Clauses that no edit of the file can meet, with the reason.
var noRemedy = map[string]string{
	"pump_curve":             "only the maker or a measurement has the points of a curve",
	"pump_duty":              "another pump, and only its maker has its curve",
	"no_pump_before_settler": "the loop has to be laid out another way",
	"turnover":               "a stronger pump or a smaller tank: another loop",
	"ph_and_alkalinity":      "two measurements that contradict each other are made again",
	"channel_flow":           "the flow is to be shared by more channels, each with its own tap: another loop",
	"taper":                  "the lean of a drum's wall is what it is: the hole goes elsewhere",
}

// The example of a clause breaks this clause alone, at the edited place, and the
// first remedy in the JSON output clears it.
func TestExamplesBreakTheirOwnClauseAndNoOther(t *testing.T) {
	r, err := reviewer()
	if err != nil {
		t.Fatal(err)
	}
	sound := reviewed(t, "quarry-road.yaml")
	for _, clause := range r.Book().Clauses() {
		t.Run(clause.ID, func(t *testing.T) {
			t.Parallel()
			if len(clause.Example) == 0 {
				t.Fatal("the clause has no example")
			}
			var edits []system.Edit
			lines := map[int]bool{}
			for _, change := range clause.Example {
				edits = append(edits, system.Edit{Op: system.Set, Pointer: change.Pointer, Value: change.Value})
				lines[sound.System.Document.Place(change.Pointer).Line] = true
			}
			broken, problems := sound.System.Edited(edits...)
			if len(problems) > 0 {
				t.Fatalf("the example is no system file: %v", problems)
			}
			bad := judgedAs(t, r, sound.System, edits...)
			if err := remedy.OfferFor(t.Context(), r.Book(), bad, ofClause(bad, clause.ID)); err != nil {
				t.Fatal(err)
			}
			found := false
			for _, f := range bad.Findings {
				if f.Clause.ID != clause.ID {
					if alsoFlips[clause.ID][f.Clause.ID] == "" {
						t.Errorf("it also breaks %s", f.Clause.ID)
					}
					continue
				}
				found = true
				if line := broken.Document.Place(f.At).Line; !lines[line] {
					t.Errorf("the finding stands at file line %d, and the edits do not", line)
				}
			}
			if !found {
				t.Fatal("its example does not break it")
			}
			if noRemedy[clause.ID] != "" {
				if len(clause.Levers) > 0 {
					t.Error("it has levers and stands on the list of those without a remedy")
				}
				return
			}
			better := judgedAs(t, r, bad.System, remedyFromJSON(t, bad, clause.ID)...)
			if before, after := count(bad, clause.ID), count(better, clause.ID); after >= before {
				t.Errorf("with its remedy %d of %d findings are left", after, before)
			}
			for _, f := range better.Findings {
				if f.Clause.Strength == review.Shall && count(bad, f.Clause.ID) < count(better, f.Clause.ID) {
					t.Errorf("the remedy makes %s worse", f.Clause.ID)
				}
			}
		})
	}
}

func count(r *review.Review, clause string) int {
	n := 0
	for _, f := range r.Findings {
		if f.Clause.ID == clause {
			n++
		}
	}
	return n
}

// remedyFromJSON takes the edits of the first remedy of a clause out of the JSON
// output, as a program that reads it would.
func remedyFromJSON(t *testing.T, r *review.Review, clause string) []system.Edit {
	t.Helper()
	var out bytes.Buffer
	w, err := report.NewWriter("json", &out, report.Run{HeldTo: review.Shall})
	if err == nil {
		err = errors.Join(w.Add(report.Reviewed(r)), w.Close())
	}
	if err != nil {
		t.Fatal(err)
	}
	var doc struct {
		Files []struct {
			Review struct {
				Judgements []struct{ Clause string }
				Findings   []struct {
					Judgement int
					Remedies  []struct {
						Edits []struct {
							Op, Pointer string
							Value       any
						}
					}
				}
			}
		}
	}
	if err := json.Unmarshal(out.Bytes(), &doc); err != nil {
		t.Fatal(err)
	}
	ops := map[string]system.Op{"set": system.Set, "splice": system.Splice, "insert": system.Insert, "delete": system.Delete}
	got := doc.Files[0].Review
	for _, f := range got.Findings {
		if got.Judgements[f.Judgement].Clause != clause || len(f.Remedies) == 0 {
			continue
		}
		var edits []system.Edit
		for _, e := range f.Remedies[0].Edits {
			edits = append(edits, system.Edit{Op: ops[e.Op], Pointer: e.Pointer, Value: e.Value})
		}
		return edits
	}
	t.Fatalf("the JSON output has no remedy for %s", clause)
	return nil
}

// Common practice, no source: a 200 L drum with a 150 mm well, its lip at half the
// depth, about 1500 L/h by gravity through 50 mm pipe, two 45s, A4 fasteners. It is
// accepted practice: no shall on lines, settler or materials may be open on it.
func TestTheCommonDrumIsAccepted(t *testing.T) {
	r := reviewed(t, "common-drum.yaml")
	for _, f := range r.Findings {
		if f.Clause.Strength == review.Shall {
			t.Errorf("%s is %s: %v %v", f.Clause.ID, f.Verdict, f.Value.X, f.Missing)
		}
	}
	judged := map[string]bool{}
	for _, j := range r.Judgements {
		judged[j.Clause.ID] = judged[j.Clause.ID] || j.Verdict == review.Met
	}
	for _, clause := range []string{"carries_flow", "sharp_bend", "well_depth", "wetted_fasteners", "drain_preload"} {
		if !judged[clause] {
			t.Errorf("%s is not met on it anywhere", clause)
		}
	}
}

func TestTenMistakesAreTenProblems(t *testing.T) {
	data, err := os.ReadFile(filepath.Join(systems, "ten-mistakes.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	if o := outcome(t, "ten-mistakes.yaml", data); len(o.Problems) != 10 || o.Review != nil {
		t.Errorf("%d problems: %v", len(o.Problems), o.Problems)
	}
}

func BenchmarkReview(b *testing.B) {
	for _, name := range []string{"quarry-road.yaml", "quarry-road-as-found.yaml"} {
		data, err := os.ReadFile(filepath.Join(systems, name))
		if err != nil {
			b.Fatal(err)
		}
		r, err := reviewer()
		if err != nil {
			b.Fatal(err)
		}
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if o, err := r.Review(context.Background(), name, data); err != nil || o.Review == nil {
					b.Fatal(err, o.Problems)
				}
			}
		})
	}
}

// A missing number is to be measured, not chosen so that a clause is met.
func TestWhatIsUndeterminedHasNoRemedy(t *testing.T) {
	sound := reviewed(t, "quarry-road.yaml")
	for _, pointer := range []string{"/vessels/settler/well/lip_at", "/mains/residual_current", "/vessels/settler/well/fixings/grade"} {
		r := edited(t, sound.System, system.Edit{Op: system.Delete, Pointer: pointer})
		named := false
		for _, f := range r.Findings {
			if f.Verdict != review.Undetermined || len(f.Remedies) > 0 {
				t.Errorf("without %s, %s is %s with remedies %v", pointer, f.Clause.ID, f.Verdict, f.Remedies)
			}
			for _, missing := range f.Missing {
				named = named || missing == pointer
			}
		}
		if !named || r.ExitStatus(review.Shall) == review.NothingToAct && strings.HasPrefix(pointer, "/mains") {
			t.Errorf("without %s no finding names it", pointer)
		}
	}
}
