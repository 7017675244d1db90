package report

import (
	"strings"
	"testing"

	"dryfit/internal/working"
)

func TestStateWords(t *testing.T) {
	for when, want := range map[string]string{
		"run_worst, water low":                      "pump side clean, gravity side fouled, water at its coldest",
		"one_blocked, riser blocked":                "riser blocked",
		"wrong_valve, solids-run/11 shut":           "piece 12 of solids-run shut",
		"open_joint, solids-run open, vents capped": "solids-run open, vents capped",
		"stopped, siphon break blocked":             "pump stands still, siphon break blocked",
		"cleaning, draw-down open":                  "settler drawn down, draw-down open",
		"restart, start":                            "pump starts again",
		"rain, rain":                                "strongest rain",
		"one_blocked":                               "one opening blocked",
		"something_else":                            "something else",
	} {
		if got := stateWords(when); got != want {
			t.Errorf("%s: %q, want %q", when, got, want)
		}
	}
}

// Two valves of one line keep apart; a line with one valve needs no number.
func TestSceneLabels(t *testing.T) {
	var scenes []working.Scene
	for _, fault := range []string{"riser/4 shut", "riser/9 shut", "drain/2 open"} {
		subject, _, _ := strings.Cut(fault, " ")
		scenes = append(scenes, working.Scene{Case: "wrong_valve", Fault: fault, Subject: subject})
	}
	if got := strings.Join(sceneLabels(scenes), "|"); got != "riser piece 5, shut|riser piece 10, shut|drain, open" {
		t.Errorf("the labels are %s", got)
	}
}
