package corpus_test

import (
	"os"
	"strings"
	"testing"

	"dryfit/internal/review"
)

// The demo with three times its fish and their feed: too many for the oxygen, for the bacteria
// and for the alkalinity. Each clause offers the stock that the loop can carry, and a number
// of what else would do: air, media, alkalinity.
func TestThreeTimesTooManyFish(t *testing.T) {
	data, err := os.ReadFile(systems + "quarry-road.yaml")
	if err != nil {
		t.Fatal(err)
	}
	text := strings.NewReplacer("mass: 9.5 kg", "mass: 28.5 kg", "amount: 38 g/d", "amount: 114 g/d", "amount: 120 g/d", "amount: 360 g/d").Replace(string(data))
	o := outcome(t, "crowded.yaml", []byte(text))
	if o.Review == nil {
		t.Fatalf("it is not read: %v", o.Problems)
	}
	for clause, others := range map[string][]string{
		"oxygen_kept":           {"air stones"},
		"nitrified":             {"L of media"},
		"alkalinity_lasts":      {"mg/L CaCO3", "a doser"},
		"ammonia_level":         {"L of media"},
		"stocking":              nil,
		"power_cut_survived":    {"the air that the backup gives"},
		"bed_feed_most":         nil,
		"oxygen_at_ease":        {"air stones"},
		"alkalinity_unattended": {"mg/L CaCO3"},
	} {
		var found *review.Finding
		for _, f := range o.Review.Findings {
			if f.Clause.ID == clause {
				found = f
			}
		}
		if found == nil || found.Verdict != review.NotMet {
			t.Errorf("%s is met with three times the fish", clause)
			continue
		}
		texts := ""
		for _, r := range found.Remedies {
			texts += r.Text + "\n"
		}
		for _, want := range append(others, "kg of fish with") {
			if !strings.Contains(texts, want) {
				t.Errorf("no remedy of %s speaks of %q:\n%s", clause, want, texts)
			}
		}
	}
}
