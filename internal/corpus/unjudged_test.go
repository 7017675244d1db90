package corpus_test

import (
	"testing"

	"dryfit/internal/survey"
)

// Quantities that no clause judges or shows, with the reason.
var unjudged = map[string]string{
	"kinematic_viscosity": "nature gives it",
	"height":              "heights are shown in the levelling table; what they lead to is judged",
	"flow_at_end":         "the flow of a line where it comes out behind a tee; what it does there is judged",
	"pump_head":           "pump_meets_flow judges the flow that the pump gives at it",
	"velocity":            "solids_speed judges the speed by how the water fills the pipe",
	"reynolds":            "an intermediate number",
	"upstream_level":      "carries_flow judges the flow at which it reaches the spill",
	"greatest_flow":       "capacity is judged against it, in flow_reserve",
	"head_needed":         "a line takes the head that it needs; flow_reserve judges what is left",
	"head_had":            "flow_reserve judges what it is worth in flow",
	"piece_speed":         "solids_speed judges the worst piece of the line",
	"wall_shear":          "another measure of what solids_speed judges; the published figures are for fish faeces on a smooth bed",
	"ring_area":           "overflow_rate judges what it is worth",
	"room_under_lip":      "room_over_sludge judges what is left of it above the sludge",
	"drain_offset":        "drain_preload judges it over the span of the cuff",
	"full_volume":         "standing_load and floor_bears_load judge its weight",
	// The day of fish shows these; what they lead to is judged.
	"water_volume":         "stocking, time_to_act and turnover judge what it is worth",
	"water_surface":        "the planted area, where nothing else is stated",
	"loop_volume":          "alkalinity_lasts and water_used judge what it is worth",
	"fish_mass":            "stocking judges it in its water",
	"footprint":            "a brief says how much floor there is; marking holds it against that",
	"feed_a_day":           "ration and bed_feed judge it",
	"oxygen_used":          "oxygen_kept judges the part of the tank",
	"carbon_dioxide_made":  "ph_and_alkalinity judges what stays in the water",
	"solids_made":          "catches_enough and store_lasts judge what becomes of it",
	"nitrifies_by_surface": "nitrified judges the lesser of the two",
	"nitrifies_by_bed":     "nitrified judges the lesser of the two",
	"oxygen_full":          "nature gives it",
	"oxygen_need":          "oxygen_kept judges it after a meal",
	"bed_area":             "bed_feed judges all beds together",
	"solids_passed_on":     "catches_enough judges the share",
	"solids_on_beds":       "no source was found that says how much a bed bears",
}

// Every quantity that a builder can act on is judged or shown by a clause, or stands on the list with the reason.
func TestEveryQuantityIsReadOrSaysWhyNot(t *testing.T) {
	r, err := reviewer()
	if err != nil {
		t.Fatal(err)
	}
	read := map[string]bool{}
	for _, clause := range r.Book().Clauses() {
		for _, limit := range clause.Limits {
			read[limit.Quantity] = true
		}
		for _, name := range clause.Shows {
			read[name] = true
		}
	}
	known := map[string]bool{}
	for _, d := range survey.Catalogue().Quantities {
		known[d.Name] = true
		switch {
		case !read[d.Name] && unjudged[d.Name] == "":
			t.Errorf("no clause judges or shows %s, %s", d.Name, d.Title)
		case read[d.Name] && unjudged[d.Name] != "":
			t.Errorf("%s is on the list of what no clause reads, and one does", d.Name)
		}
	}
	for name := range unjudged {
		if !known[name] {
			t.Errorf("%s on the list of what no clause reads is no quantity", name)
		}
	}
}
