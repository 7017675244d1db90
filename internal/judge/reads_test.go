package judge

import (
	"slices"
	"testing"

	"dryfit/internal/survey"
	"dryfit/rules"
)

// A clause tells the names that it reads, and every limit is read.
func TestAClauseTellsWhatItReads(t *testing.T) {
	for _, c := range Open(survey.Catalogue(), rules.Book).Clauses() {
		for _, l := range c.Limits {
			if !slices.Contains(c.Reads, l.Quantity) {
				t.Errorf("%s has a limit of %s and does not read it", c.ID, l.Quantity)
			}
		}
		if len(c.Over) == 0 {
			t.Errorf("%s goes over nothing", c.ID)
		}
		if c.ID == "sharp_bend" && (!slices.Equal(c.Reads, []string{"bend_radius_ratio", "turn"}) || !slices.Equal(c.Over, []string{"bends_of", "solids_lines"})) {
			t.Errorf("sharp_bend reads %v and goes over %v", c.Reads, c.Over)
		}
	}
}
