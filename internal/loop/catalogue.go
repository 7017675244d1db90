package loop

import (
	"slices"

	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

const (
	geometry  = "geometry"
	darcy     = "Darcy-Weisbach with Churchill 1977; fittings after Darby 1999 and Hooper 1981, row by row in the table of fittings"
	culvert   = "inlet and outlet control as for culverts, FHWA 2012, HDS-5; critical depth with an entry loss"
	duty      = "balance of the pump's head with lift and losses; " + darcy
	judgement = "project judgement"
)

// Quantities is the catalogue of what this package works out; each list stands
// with what works it out. The same for Facts, Sets and Relations.
var (
	Quantities = slices.Concat(waterQuantities, lineQuantities, liftQuantities, caseQuantities, drainQuantities)
	Facts      = slices.Concat(waterFacts, lineFacts, liftFacts, caseFacts)
	Sets       = slices.Concat(waterSets, lineSets, liftSets, caseSets)
	Relations  = slices.Concat(waterRelations)
)

var waterQuantities = []working.Definition{
	{Name: "kinematic_viscosity", Title: "kinematic viscosity of the water", Symbol: "nu", Kind: quantity.Viscosity, Of: "the water",
		Formula: "mu(T)/rho(T)", Source: "IAPWS SR6-08(2011), viscosity of liquid water at 0.1 MPa; Kell 1975", Sure: "published", Range: "0 to 40 degC"},
	{Name: "height", Title: "height of the centreline", Symbol: "z", Kind: quantity.Length, Of: "each piece of a line",
		Formula: "sum of heights and lengths of the file", Source: geometry, Sure: "derived"},
	{Name: "flow", Title: "flow", Symbol: "Q", Kind: quantity.Flow, Of: "each line in which water runs",
		Formula: "Q at which H(Q) = z2 - z1 + losses(Q), in the least case at least crest - z1 + losses up to it; by gravity, what flows into the vessel above", Source: duty, Sure: "published"},
	{Name: "flow_at_end", Title: "flow at its end", Symbol: "Q", Kind: quantity.Flow, Of: "each line in which water runs and that shares it with another at a tee",
		Formula: "of the balance of the whole loop", Source: steady, Sure: "published"},
	{Name: "pump_head", Title: "head of the pump", Symbol: "H", Kind: quantity.Head, Of: "each pump",
		Formula: "H(Q) on its curve", Source: "the pump's curve", Sure: "derived"},
	{Name: "velocity", Title: "speed in the full bore", Symbol: "V", Kind: quantity.Velocity, Of: "each line in which water runs",
		Formula: "4 Q/(pi (D - 2t)^2), in the widest pipe", Source: "continuity", Sure: "derived"},
	{Name: "reynolds", Title: "Reynolds number", Symbol: "Re", Kind: quantity.Number, Of: "each line in which water runs",
		Formula: "V (D - 2t)/nu", Source: "definition", Sure: "derived"},
	{Name: "head_loss", Title: "head lost", Symbol: "h", Kind: quantity.Head, Of: "each line in which water runs, and each of its pieces",
		Formula: "f L/D V^2/2g in pipe, K V^2/2g in fittings; of a line, the sum of its pieces", Source: darcy, Sure: "published"},
	{Name: "upstream_level", Title: "level that the line asks for above it", Symbol: "z", Kind: quantity.Length, Of: "each gravity line in which water runs",
		Formula: "the higher of max(level below, mouth + what stands over it) + losses and invert + Ec(Q) + losses up to there", Source: culvert, Sure: "published"},
	{Name: "water_level", Title: "level of the water", Symbol: "z", Kind: quantity.Length, Of: "each vessel",
		Formula: "crest + weir head(Q), else the level that the line out of it asks for or, if higher, the one stated", Source: culvert + "; weirs after ISO 1438, drowned ones after Villemonte 1947", Sure: "published"},
	{Name: "freeboard", Title: "room between the water and the rim", Symbol: "f", Kind: quantity.Length, Of: "each vessel",
		Formula: "rim - z", Source: geometry, Sure: "derived"},
	{Name: "water_volume", Title: "water in it while the pump runs", Symbol: "V", Kind: quantity.Volume, Of: "each vessel through which water runs",
		Formula: "V(z - z0); of a bed, only what its media leave open", Source: geometry, Sure: "derived"},
	{Name: "water_surface", Title: "area of its water surface", Symbol: "A", Kind: quantity.Area, Of: "each vessel through which water runs",
		Formula: "dV/dz", Source: geometry, Sure: "derived"},
	{Name: "inflow", Title: "flow into it", Symbol: "Q", Kind: quantity.Flow, Of: "each vessel through which water runs",
		Formula: "sum of what the lines bring", Source: "continuity", Sure: "derived"},
	{Name: "loop_volume", Title: "water in all its vessels together", Symbol: "V", Kind: quantity.Volume, Of: "the loop",
		Formula: "sum of V of the vessels", Source: geometry, Sure: "derived"},
	{Name: "greatest_flow", Title: "greatest flow that it is held to", Symbol: "Qmax", Kind: quantity.Flow, Of: "each gravity line in which water runs",
		Formula: "the greater of its part of the flow asked and the flow that the pump gives it, all clean", Source: judgement, Sure: judgement},
	{Name: "capacity", Title: "flow it can carry", Symbol: "Qc", Kind: quantity.Flow, Of: "each gravity line in which water runs",
		Formula: "flow at which the water above stands 50 mm under its spill, in a launder at most at its weir's crest, valves as set", Source: culvert, Sure: "published"},
	{Name: "flow_reserve", Title: "reserve over the greatest flow", Symbol: "r", Kind: quantity.Number, Of: "each gravity line in which water runs",
		Formula: "Qc/Qmax", Source: judgement, Sure: judgement},
	{Name: "head_needed", Title: "head that the flow needs", Symbol: "hn", Kind: quantity.Head, Of: "each gravity line in which water runs",
		Formula: "level asked for above - level or mouth below", Source: culvert, Sure: "published"},
	{Name: "head_had", Title: "head that there is", Symbol: "hh", Kind: quantity.Head, Of: "each gravity line in which water runs",
		Formula: "spill above - 50 mm - level or mouth below", Source: geometry, Sure: "derived"},
	{Name: "turn", Title: "turn at one bend", Symbol: "a", Kind: quantity.Angle, Of: "each bend of a line",
		Formula: "as stated", Source: geometry, Sure: "derived"},
	{Name: "bend_radius_ratio", Title: "radius of a bend over the bore", Symbol: "r/D", Kind: quantity.Number, Of: "each bend of a line that carries solids",
		Formula: "r/D", Source: geometry, Sure: "derived"},
	{Name: "bend_loss", Title: "head lost in the bend", Symbol: "h", Kind: quantity.Head, Of: "each bend of more than 45 degrees in a gravity line in which water runs",
		Formula: "K V^2/2g", Source: darcy, Sure: "published"},
	{Name: "bend_loss_as_two_45", Title: "head that two bends of 45 degrees, two bores apart, would lose in the bend's place", Symbol: "h2", Kind: quantity.Head, Of: "each bend of a line in which water runs",
		Formula: "(C K45 + K45 + f 2) V^2/2g", Source: darcy + "; Miller 1990, Internal Flow Systems, for bends close together", Sure: "published"},
	{Name: "bend_loss_as_sweep", Title: "head that a sweep would lose in the bend's place", Symbol: "hs", Kind: quantity.Head, Of: "each bend of a line in which water runs",
		Formula: "K V^2/2g", Source: darcy, Sure: "published"},
}

var waterFacts = []working.FactDefinition{
	{Name: "opens_to_brush", Title: "whether the turn opens to a hand or a brush", Words: []string{"yes", "no"}, Of: "each bend of a line"},
}

// Cases are the families of states that clauses name; sets and relations are what they choose their subjects from.
var (
	waterSets = []working.Named{
		{Name: "solids_lines", Title: "lines that carry solids"},
		{Name: "running_gravity_lines", Title: "lines through which water runs by its own weight while the pump runs"},
	}
	Cases = []working.Named{
		{Name: working.Always, Title: "what is the same in every state: geometry and materials"},
		{Name: working.RunClean, Title: "the pump runs at its greatest, all walls clean"},
		{Name: working.RunLeast, Title: "the pump's side is fouled, and air fills the pipe behind its highest point: the least flow, what is needed"},
		{Name: working.RunWorst, Title: "the pump's side is clean and the gravity side fouled: what must be carried"},
		{Name: OneBlocked, Title: "each opening blocked in turn, the pump running, the top-up open"},
		{Name: Stopped, Title: "the pump stands and all runs down to rest"},
		{Name: Restart, Title: "the pump starts again and everything fills"},
		{Name: OpenJoint, Title: "the lowest joint of each line that may come apart does, in turn"},
		{Name: DrainLeftOpen, Title: "each drain is left open, in turn"},
		{Name: AllBedsDrain, Title: "all siphon beds empty themselves together"},
		{Name: Rain, Title: "the strongest rain falls on what is not covered"},
		{Name: TopupStuck, Title: "the top-up stays open"},
		{Name: WrongValve, Title: "each valve stands the other way, one at a time"},
		{Name: Cleaning, Title: "the pump stands and the settler is drawn down"},
		{Name: Unattended, Title: "nobody looks for as long as the file says"},
	}
	waterRelations = []working.Named{
		{Name: "bends_of", Title: "the bends of a line, in the order of flow"},
		{Name: "line_of", Title: "the line that a piece belongs to"},
	}
)

// define finds a definition by name.
var define = working.Definer(Quantities)
