package remedy

import (
	"strings"

	"dryfit/internal/review"
)

// Words says in plain words what a lever moves, before anything is tried: "change well.lip_at
// of the vessel, in steps of 5 mm". An exchange that there is no word for goes by its name.
func Words(l review.Lever) string {
	if l.Solve != "" {
		return solveWords(l.Solve) + ", in steps of " + l.Toward
	}
	words := exchangeWords[l.Replace]
	if words == "" {
		words = strings.ReplaceAll(l.Replace, "_", " ")
	}
	if l.Toward != "" {
		words += ": " + l.Toward
	}
	return words
}

// things is what a list of the file holds, by its key.
var things = map[string]string{"vessels": "the vessel", "lines": "the line", "pumps": "the pump"}

// solveWords is a pattern of a place in words: "change outlet.at of the last piece of the line".
func solveWords(pattern string) string {
	parts := strings.Split(strings.TrimPrefix(pattern, "/"), "/")
	of := things[parts[0]]
	if of != "" && len(parts) > 2 {
		parts = parts[2:]
		if parts[0] == "pieces" && len(parts) > 2 {
			which := map[string]string{"0": "the first piece", "{last}": "the last piece"}[parts[1]]
			if which == "" {
				which = "the piece"
			}
			of, parts = which+" of "+of, parts[2:]
		}
	} else {
		of = ""
		if strings.HasPrefix(parts[0], "{") {
			of = "what is judged"
		}
	}
	var key []string
	for _, p := range parts {
		if !strings.HasPrefix(p, "{") {
			key = append(key, p)
		}
	}
	words := "change " + strings.Join(key, ".")
	if of != "" {
		words += " of " + of
	}
	return words
}

// exchangeWords is what each exchange does, for readers of the book.
var exchangeWords = map[string]string{
	"adults_cement":        "let an adult put the cement on",
	"alarm":                "add the alarms that are missing",
	"backup_air":           "put air with a battery of its own into the tanks with fish and the filters under water",
	"backup_by_itself":     "let the backup come on without help",
	"base_to_fit":          "add more of the base, up to what theory asks for",
	"bed_level":            "move what holds the water of the bed",
	"broader_stand":        "make the narrow side of the stand wider",
	"bulkhead_for_seal":    "a bulkhead fitting in place of the rubber seal",
	"cap_the_end":          "cap the open end of the drain while it is not in use",
	"cement":               "cement the piece to the one before it",
	"child_lid":            "a lid that keeps a child out",
	"clamp_both":           "clamps that last on the hose or cuff",
	"clamps_of":            "clamps of another class",
	"clean_out":            "openings for a rod in the stretch that it does not reach",
	"clean_vessel":         "another vessel, which has held nothing or only food",
	"clip":                 "clip the pipe next to the wall seal",
	"clip_outside":         "clip the pipe outside, close to the wall behind the cuff",
	"clip_turn":            "clip the pipe at the turn",
	"cooled":               "keep the warmest water cooler",
	"dechlorinate":         "take the chlorine out of the top-up",
	"deeper_media":         "fill the bed deeper",
	"doser":                "let a machine add the base",
	"draw_down":            "a line over the rim that draws the clear water down before cleaning",
	"drip_loops":           "let every cable hang in a bow that is lower than its socket",
	"dry_valve":            "put the valve where the hand that turns it stays dry",
	"emergency_overflow":   "a pipe near the rim that leads to the sump or to the garden",
	"face_up":              "turn the open end of the line up",
	"feed_filter":          "give the filter its share of the backup air",
	"fewer_fish":           "keep fewer fish, with their share of the feed",
	"fewer_notches":        "fewer notches in the ring, or a notched ring in place of a plain one",
	"fill_behind_valve":    "keep the siphon full from one time to the next",
	"fit_to_pipe":          "a seal, cuff or pipe that is made for the other one",
	"food_vessel":          "a vessel made for food or drinking water in place of this one",
	"full_bore":            "give the narrow place the bore of the pipe before it",
	"grade":                "fixings of another grade",
	"guard":                "a slotted cap that comes off over the mouth of the line",
	"higher_drain":         "raise the holes in the wall by which the tank can be emptied",
	"higher_wall_hole":     "raise the hole by which the line enters the vessel below",
	"hole_for_pipe":        "a hole of the size that the seal or fitting wants",
	"honest_surface":       "claim no more surface than smooth grains of the size have",
	"into_the_well":        "end the line inside the inlet well",
	"joint_cemented":       "cement the joint",
	"keep_ph":              "keep the pH off the end of its band",
	"kept_dry":             "turn the drip of the metal part away from the water",
	"larger_holes":         "two holes in the siphon break, which do not clog",
	"larger_sump":          "a wider vessel in place of this one",
	"lead_to_garden":       "say where the water of the overflow goes: to the garden",
	"less_bed":             "plant less of the largest bed",
	"less_draw_down":       "set the inner end of the draw-down line higher",
	"less_feed":            "feed the same fish less",
	"less_water_to_arrive": "let the pump have less to send up before it draws air",
	"locked_lid":           "hold the lid with a lock in place of screws",
	"long_brush":           "keep a brush on a long handle beside the settler",
	"longer_run":           "a longer straight run",
	"lower_crest":          "lower the place at which the line goes over the rim",
	"lower_outlet":         "lower what holds the level: the rim of the standpipe or the hole of the outlet",
	"lower_ph":             "a lower greatest pH, at which the ammonia is harmless",
	"material":             "a part of another material",
	"more_air":             "more air through each stone, then more stones, and an air pump for all of it",
	"more_beds":            "plant more of the largest bed, or make it longer",
	"more_media":           "more media in the filter that has most of them",
	"more_slots":           "more openings in the guard",
	"narrow_slots":         "narrower openings in the guard, and more of them",
	"narrower_bore":        "the next smaller pipe, with seals and valves to match",
	"narrower_siphon":      "the next smaller pipe for the siphon",
	"next_bore":            "the next larger pipe, with the holes that its seals want",
	"no_hose":              "hang the hose up after each use",
	"no_poison":            "take what the loop does not bear off the list of treatments",
	"non_return":           "a non-return valve in the tube next to the air pump",
	"open_riser":           "open the top of the line out of the vessel to the air",
	"painted":              "paint the outside against the light",
	"phone":                "let the alarm call a phone",
	"pin":                  "pin the dry joint",
	"provide":              "provide what is missing",
	"raise_drain":          "set the drain's stand-off inside the limit, and its tail and hole with it",
	"raise_pump":           "stand the pump higher, so that it draws air while water is left",
	"raise_vent":           "a higher top of the vent",
	"release":              "let the part come out: pulled off, by a union, or with a pin",
	"residual_current_30":  "a residual-current device of 30 mA ahead of everything, fitted by a licensed electrician",
	"return_over_water":    "end the pumped lines into the vessel over its water",
	"saddle":               "a saddle that fills the gap under the flange",
	"salt_bath":            "give salt baths in the quarantine vessel only",
	"seal_for_bulkhead":    "a rubber seal in place of the bulkhead fitting",
	"second_float":         "a second float or a timer behind the first valve",
	"self_priming_pump":    "a pump that fills itself",
	"shaded":               "lids, shade and a windbreak, so that less water goes to the air",
	"siphon_break":         "an air hole in the pumped line at the top of its last fall",
	"slow_start":           "bring a new loop to its full feed by quarters",
	"smaller_bucket":       "a container that can be lifted",
	"stir":                 "stir the sludge towards the drain while it empties",
	"stop_feeding":         "stop the feed in water as cold as that",
	"stronger_stand":       "a stand that bears the load",
	"sweep":                "a long-radius bend in place of this one",
	"take_out":             "take the piece out of the line",
	"turn_round":           "move the hole round the wall, away from the others",
	"two_45_with_spacer":   "two bends of 45 degrees with pipe between them, in place of one of 90",
	"two_circuits":         "a second circuit with its own residual-current device, fitted by a licensed electrician",
	"vent":                 "open the highest place of the line to the air",
	"warmed":               "keep the coldest water warmer",
	"well_lifts_out":       "hang the inlet well on open hooks or slots, so that it lifts out",
	"wider_base":           "a wider base under the stand, until the floor bears it",
	"wider_overflow":       "the next larger pipe for the overflow",
	"wider_siphon":         "the next larger pipe for the siphon",
	"wider_well":           "the next larger pipe for the inlet well",
	"wrapped":              "wrap the walls so that no light comes through",
}
