package loop

import (
	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

const (
	balance = "balance of the whole loop: what flows in less what flows out fills each vessel; implicit steps in time"
	inTime  = balance + ", of second order (Alexander 1977), with the laws of the lines: " + culvert
)

var caseQuantities = []working.Definition{
	{Name: "blocked_share", Title: "share of its room that fills when one opening is blocked", Symbol: "u", Kind: quantity.Fraction, Of: "each vessel with water in it",
		Formula: "(V(z most) - V(z running) + spilt)/(V(rim) - V(z running))", Source: inTime, Sure: "published"},
	{Name: "highest_level", Title: "highest level of the water", Symbol: "z", Kind: quantity.Length, Of: "each vessel with water in it",
		Formula: "greatest z(t)", Source: inTime, Sure: "published"},
	{Name: "least_freeboard", Title: "least room under the rim", Symbol: "f", Kind: quantity.Length, Of: "each vessel with water in it",
		Formula: "rim - greatest z(t)", Source: inTime, Sure: "published"},
	{Name: "to_floor", Title: "water that goes to the floor", Symbol: "V", Kind: quantity.Volume, Of: "each line, valve or vessel that the case is about",
		Formula: "what runs over rims and out of the open end", Source: inTime, Sure: "published"},
	{Name: "time_to_spill", Title: "time until water goes over a rim, else the time followed", Symbol: "t", Kind: quantity.Time, Of: "each line that the case is about",
		Formula: "first t at which z(t) reaches the rim", Source: inTime, Sure: "published"},
	{Name: "time_to_dry", Title: "time until the pump draws air, else the time followed", Symbol: "t", Kind: quantity.Time, Of: "each line that the case is about",
		Formula: "first t at which the water stands at the depth under which the pump draws air", Source: inTime, Sure: "published"},
	{Name: "static_level", Title: "level of the water at rest", Symbol: "z", Kind: quantity.Length, Of: "each vessel with water in it",
		Formula: "z(t) at the end", Source: inTime, Sure: "published"},
	{Name: "run_back", Title: "water that runs back into it", Symbol: "V", Kind: quantity.Volume, Of: "each vessel that a pump draws from",
		Formula: "V(z at rest) - V(z running), with what stands in the pump's line", Source: inTime, Sure: "published"},
	{Name: "run_back_share", Title: "what runs back into it, over its room", Symbol: "u", Kind: quantity.Fraction, Of: "each vessel that a pump draws from",
		Formula: "(V(z most) - V(z running))/(V(min(rim - 50 mm, spill)) - V(z running))", Source: inTime, Sure: "published"},
	{Name: "tank_kept", Title: "share of its water that it keeps", Symbol: "c", Kind: quantity.Fraction, Of: "each fish tank",
		Formula: "V(z at rest)/V(z running)", Source: inTime, Sure: "published"},
	{Name: "tank_kept_capped", Title: "share of its water that it keeps, vents blocked", Symbol: "c", Kind: quantity.Fraction, Of: "each fish tank",
		Formula: "V(z at rest)/V(z running)", Source: inTime, Sure: "published"},
	{Name: "first_air_under", Title: "depth under the running level at which it takes air", Symbol: "m", Kind: quantity.Length, Of: "each pumped line that ends in a vessel",
		Formula: "z running - the higher of its mouth and its siphon break; below zero where it ends over the water", Source: geometry, Sure: "derived"},
	{Name: "break_bore", Title: "bore of the holes of a siphon break", Symbol: "d", Kind: quantity.Length, Of: "each siphon break",
		Formula: "as stated", Source: "the file", Sure: "derived"},
	{Name: "break_count", Title: "holes of a siphon break", Symbol: "n", Kind: quantity.Number, Of: "each siphon break",
		Formula: "as stated", Source: "the file", Sure: "derived"},
	{Name: "start_share", Title: "water to spare at the start, over what the loop takes first", Symbol: "q", Kind: quantity.Number, Of: "each vessel that a pump draws from",
		Formula: "(V(z at rest) - V(zd))/(V(z at rest) - V(z least))", Source: inTime, Sure: "published"},
	{Name: "start_cover", Title: "least water over where the pump draws air, at the start", Symbol: "m", Kind: quantity.Length, Of: "each vessel that a pump draws from",
		Formula: "least z(t) - z0 - zd", Source: inTime, Sure: "published"},
	{Name: "beds_share", Title: "share of its room that all its siphon beds fill at once", Symbol: "u", Kind: quantity.Fraction, Of: "each vessel into which siphon beds drain",
		Formula: "sum of what the beds let go/(V(rim) - V(z running))", Source: geometry, Sure: "derived"},
	{Name: "siphon_start", Title: "flow into the bed, over what starts its siphon", Symbol: "q", Kind: quantity.Number, Of: "each bed with a bell siphon",
		Formula: "Q/(pi/4 D^2 sqrt(g D))", Source: "Froude number of one in the standpipe, weak: " + judgement, Sure: judgement},
	{Name: "siphon_stop", Title: "flow into the bed, over what its siphon draws at the end", Symbol: "q", Kind: quantity.Number, Of: "each bed with a bell siphon",
		Formula: "Q/Qsiphon(lowest level)", Source: darcy, Sure: "published"},
	{Name: "rain_room", Title: "room under the rim in the strongest rain", Symbol: "f", Kind: quantity.Length, Of: "each vessel that rain fills",
		Formula: "rim - greatest z(t), with i A running in", Source: inTime + "; 100 mm in an hour, which is judged, where the file states no intensity", Sure: "published"},
	{Name: "stuck_room", Title: "room under the rim when the top-up stays open", Symbol: "f", Kind: quantity.Length, Of: "each vessel that is topped up",
		Formula: "rim - greatest z(t), until the store is empty, or for the time that nobody looks", Source: inTime, Sure: "published"},
	{Name: "overflow_share", Title: "greatest flow in, over what its overflow carries", Symbol: "u", Kind: quantity.Fraction, Of: "each overflow of a vessel through which water runs",
		Formula: "Qmax/Qc", Source: culvert, Sure: "published"},
	{Name: "drop_room", Title: "room under the spill when the drop draws its air badly", Symbol: "m", Kind: quantity.Length, Of: "each gravity line with an air-open drop",
		Formula: "spill - level that the line asks for", Source: culvert, Sure: "published"},
	{Name: "crest_over_level", Title: "crest over the water that it draws from", Symbol: "h", Kind: quantity.Length, Of: "each siphon",
		Formula: "crest - z running", Source: geometry, Sure: "derived"},
	{Name: "siphon_end_under", Title: "depth of the lower end under the water", Symbol: "m", Kind: quantity.Length, Of: "each siphon",
		Formula: "level at its end - mouth", Source: geometry, Sure: "derived"},
	{Name: "water_lost", Title: "water that the loop loses to air and leaves", Symbol: "Q", Kind: quantity.Flow, Of: "the loop",
		Formula: "evaporation x open water + what leaves breathe out x area of beds", Source: "balance of the water; evaporation and leaves as the table of assumptions has them where the file is silent", Sure: "from memory"},
	{Name: "water_lasts", Title: "time that the water lasts with nobody there", Symbol: "t", Kind: quantity.Time, Of: "each vessel that a pump draws from",
		Formula: "(water over the depth at which the pump draws air + store)/water lost", Source: continuity, Sure: "derived"},
	{Name: "unattended_share", Title: "time that nobody looks, over what the water lasts", Symbol: "u", Kind: quantity.Fraction, Of: "each vessel that a pump draws from",
		Formula: "stated time/water_lasts", Source: continuity, Sure: "derived"},
}

var caseFacts = []working.FactDefinition{
	{Name: "siphon_primed", Title: "whether there is a way to fill the siphon", Words: []string{"yes", "no"}, Of: "each siphon"},
	{Name: "air_at_crest", Title: "whether air comes in at its crest before the line can siphon the vessel down", Words: []string{"yes", "no"}, Of: "each running gravity line"},
	{Name: "second_stop", Title: "whether a second thing stops the water when the top-up stays open", Words: []string{"yes", "no"}, Of: "each vessel that is topped up"},
	{Name: "overflow_leads", Title: "whether the overflow leads to where its water does no harm", Words: []string{"yes", "no"}, Of: "each overflow"},
}

var caseSets = []working.Named{
	{Name: "water_vessels", Title: "vessels through which water runs"},
	{Name: "foaming_vessels", Title: "vessels in which air makes the water boil or foam"},
	{Name: "fish_tanks", Title: "fish tanks through which water runs"},
	{Name: "pump_vessels", Title: "vessels that a pump draws from"},
	{Name: "settlers_drawn_down", Title: "pump vessels into which a settler is drawn down at cleaning"},
	{Name: "pumped_returns", Title: "pumped lines that end in a vessel"},
	{Name: "siphon_breaks", Title: "siphon breaks of pumped lines"},
	{Name: "drop_lines", Title: "running gravity lines with an air-open drop"},
	{Name: "bed_receivers", Title: "vessels into which siphon beds drain"},
	{Name: "siphon_beds", Title: "beds with a bell siphon"},
	{Name: "rained_on", Title: "vessels that rain fills"},
	{Name: "topped_up", Title: "vessels that are topped up"},
	{Name: "valves", Title: "valves of the loop"},
	{Name: "siphons", Title: "lines that lift water over a crest and let it down again, worked by hand"},
	{Name: "overflows", Title: "overflows"},
	{Name: "overflows_of_running", Title: "overflows of vessels through which water runs"},
}
