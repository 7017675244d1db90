package corpus_test

import (
	"slices"
	"testing"

	"dryfit/internal/review"
)

// Loops of other builds: what each breaks belongs to its idea, and every case of it is followed.
func TestLoopsOfOtherBuilds(t *testing.T) {
	for name, open := range map[string][]string{
		"lifting-overflow.yaml": {"nitrate_level"}, // no plants take it up
		"bottom-drain.yaml":     {"nitrate_level"},
		"two-settlers.yaml":     {"nitrate_level"},
		"siphon-beds.yaml":      {"clean_water", "water_used"}, // a flat drum without a draw-down
		"gravity-raft.yaml":     {"raft_time"},                 // two narrow beds in a quick loop
		"pump-in-tank.yaml":     {"clean_water", "no_pump_before_settler", "tank_keeps_water", "tank_keeps_water_capped", "tank_not_emptied"},
	} {
		t.Run(name, func(t *testing.T) {
			r := reviewed(t, name)
			var found []string
			for _, f := range r.Findings {
				if f.Verdict != review.NotMet {
					t.Errorf("%s on %s is %s", f.Clause.ID, f.Subject, f.Verdict)
				}
				found = append(found, f.Clause.ID)
			}
			slices.Sort(found)
			if found = slices.Compact(found); !slices.Equal(found, open) {
				t.Errorf("open are %v, not %v", found, open)
			}
			if len(r.Ledger.Scenes) < 12 {
				t.Errorf("only %d scenes are followed", len(r.Ledger.Scenes))
			}
			for _, scene := range r.Ledger.Scenes {
				if len(scene.Missing) > 0 || scene.Reason != "" {
					t.Errorf("%s, %s is not followed: %v %s", scene.Case, scene.Fault, scene.Missing, scene.Reason)
				}
			}
		})
	}
}
