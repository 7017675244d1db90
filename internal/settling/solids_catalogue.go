package settling

import (
	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

const (
	eachSettler = "each settler"
	classes     = "six classes of settling speed, table of solids; a grain keeps its size and settles with the viscosity of the day (Ferguson and Church 2004)"
	tanks       = "Hazen 1904; no more than Davidson and Summerfelt 2005, Aquacultural Engineering 33:47-61, measured at 3.1 mm/s"
	masses      = "balance of masses"
	geometry    = "geometry"
	continuity  = "continuity"
	judgement   = "project judgement"
)

var captureQuantities = []working.Definition{
	{Name: "capture_settleable", Title: "share of what settles at all that it catches in one pass", Symbol: "R", Kind: quantity.Fraction, Of: eachSettler,
		Formula: "k min(cap(v0), sum of f (1 - (1 + v m/v0)^(-1/m))), with min(1, v/v0) for the bracket where m is 0", Source: tanks + "; " + classes, Sure: judgement},
	{Name: "capture_all", Title: "share of all solids that it catches in one pass", Symbol: "Ra", Kind: quantity.Fraction, Of: eachSettler,
		Formula: "R s, s the share of the solids that settles at all", Source: tanks + "; " + classes, Sure: judgement},
	{Name: "residence_time", Title: "time that the water stays in the settler, at the greatest flow", Symbol: "T", Kind: quantity.Time, Of: eachSettler,
		Formula: "V/Qmax", Source: continuity, Sure: "derived"},
	{Name: "lip_speed", Title: "speed of the water between the lip of the well and the sludge, its store full, at the greatest flow", Symbol: "u", Kind: quantity.Velocity, Of: "each radial-flow settler",
		Formula: "Qmax/(pi d (lip - full))", Source: continuity, Sure: "derived"},
	{Name: "weir_loading_share", Title: "greatest flow over each metre of the edge, over 186 m3 a day", Symbol: "w", Kind: quantity.Number, Of: "each settler that gives its water over an edge",
		Formula: "Qmax/(L x 186 m3/d/m)", Source: "definition; limit of Ten States Standards", Sure: "derived"},
}

var dayQuantities = []working.Definition{
	{Name: "solids_reached", Title: "share of the solids that reaches it", Symbol: "s", Kind: quantity.Fraction, Of: eachSettler,
		Formula: "from the fish on, as the water divides, less what other settlers and filters on the way keep", Source: masses, Sure: "derived"},
	{Name: "solids_caught", Title: "dry solids that it catches in a day", Symbol: "S", Kind: quantity.FeedRate, Of: eachSettler,
		Formula: "solids made x share that reaches it x Ra, one pass: what goes on is taken to break up or settle elsewhere", Source: masses, Sure: judgement},
	{Name: "sludge_a_day", Title: "sludge of a day", Symbol: "q", Kind: quantity.Flow, Of: eachSettler,
		Formula: "S/(dry matter x 1000 kg/m3)", Source: masses, Sure: "derived"},
	{Name: "sludge_store", Title: "room for sludge", Symbol: "V", Kind: quantity.Volume, Of: eachSettler,
		Formula: "volume below the height at which it counts as full, or as stated", Source: geometry, Sure: "derived"},
	{Name: "sludge_days", Title: "time in which the room for sludge fills", Symbol: "t", Kind: quantity.Time, Of: eachSettler,
		Formula: "V/q", Source: masses, Sure: "derived"},
	{Name: "store_share", Title: "time from one cleaning to the next, over the time in which the room for sludge fills", Symbol: "u", Kind: quantity.Number, Of: eachSettler,
		Formula: "T q/V", Source: masses, Sure: "derived"},
	{Name: "solids_passed_on", Title: "dry solids that no settler or filter catches in a day", Symbol: "S", Kind: quantity.FeedRate, Of: "the loop",
		Formula: "solids made - what settlers and fines filters catch", Source: masses, Sure: judgement},
	{Name: "solids_on_beds", Title: "solids of a day that go on, for each square metre of media bed", Symbol: "s", Kind: quantity.ArealFeed, Of: "the loop, if it has media beds",
		Formula: "passed on/area of media beds, none of it kept elsewhere", Source: masses, Sure: judgement},
	{Name: "mineralisation_time", Title: "time that the sludge of all settlers can stay in it", Symbol: "t", Kind: quantity.Time, Of: "each mineralisation tank",
		Formula: "V/sum of q of the settlers", Source: masses, Sure: "derived"},
}

var cleanQuantities = []working.Definition{
	{Name: "cleaning_every", Title: "time from one cleaning to the next", Symbol: "T", Kind: quantity.Time, Of: eachSettler,
		Formula: "as stated", Source: "the file", Sure: "derived"},
	{Name: "water_a_clean", Title: "water that a cleaning costs", Symbol: "V", Kind: quantity.Volume, Of: eachSettler,
		Formula: "what stands in it, once the clear water is drawn down where a line does that; of a cone that is drained, its room for sludge; and what it is rinsed with", Source: geometry + "; that a drained cone gives only its room for sludge is judged", Sure: "derived"},
	{Name: "water_a_clean_whole", Title: "water that a cleaning costs when nothing is drawn down before", Symbol: "V", Kind: quantity.Volume, Of: eachSettler,
		Formula: "what stands in it, and what it is rinsed with", Source: geometry, Sure: "derived"},
	{Name: "clean_share_week", Title: "water that the cleanings of a week cost, of all the water", Symbol: "c", Kind: quantity.Fraction, Of: eachSettler,
		Formula: "V/T x 7 d/V of the loop", Source: masses, Sure: "derived"},
	{Name: "bucket_loads", Title: "buckets of 10 litres at each cleaning", Symbol: "n", Kind: quantity.Number, Of: "each settler whose drain leads to a bucket",
		Formula: "V/10 L, rounded up", Source: "definition", Sure: "derived"},
	{Name: "drain_time", Title: "time until the water of a cleaning has run out through the drain", Symbol: "t", Kind: quantity.Time, Of: "each drain of a settler that runs by its own weight",
		Formula: "2 V/(Q (1 + sqrt(h1/h))), h1 what is left over the end when it has run out", Source: "flow that falls with the root of the head, in a vessel of upright walls", Sure: "derived"},
	{Name: "suction_lift", Title: "height that the pump sucks the sludge up", Symbol: "hs", Kind: quantity.Length, Of: "each pump in a sludge line of a settler",
		Formula: "pump - the end it draws from, to which the level may fall; below zero the sludge runs to it", Source: geometry, Sure: "derived"},
	{Name: "suction_room", Title: "lift left before the hottest water would boil in the pump", Symbol: "h", Kind: quantity.Head, Of: "each pump in a sludge line of a settler",
		Formula: "(pa - pv)/(rho g) - hs - 2 m for losses and safety", Source: "ISO 2533 for the air, IAPWS R7-97 for the boiling", Sure: "published"},
}

var solidsFacts = []working.FactDefinition{
	{Name: "pump_primes", Title: "whether the pump fills itself with water when it starts dry", Words: []string{"yes", "no"}, Of: "each pump in a sludge line of a settler"},
}

var solidsSets = []working.Named{
	{Name: "settlers", Title: "settlers of every kind: radial-flow, swirl and cone"},
	{Name: "opened_drains", Title: "drains of settlers that run by their own weight when they are opened"},
	{Name: "sludge_pumps", Title: "pumps in sludge, emptying or draw-down lines of settlers"},
	{Name: "mineralisation_tanks", Title: "tanks in which sludge is kept until it is turned to plant food"},
}
