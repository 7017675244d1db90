package making

import (
	"slices"

	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

const beam = "short beam of rubber tipping about the foot; project judgement"

// Quantities is the catalogue of what this package works out; each list stands
// with what works it out. The same for Facts, Sets and Relations.
var (
	Quantities = slices.Concat(drainQuantities, holdQuantities, materialQuantities, meetingQuantities, holeQuantities, spacingQuantities, runQuantities, jointQuantities)
	Facts      = slices.Concat(fixingFacts, holdFacts, materialFacts, holeFacts, spacingFacts, jointFacts, supportFacts)
	Sets       = slices.Concat(drainSets, holdSets, materialSets, meetingSets, holeSets, spacingSets, runSets, jointSets, supportSets)
	Relations  = slices.Concat(drainRelations)
)

var drainQuantities = []working.Definition{
	{Name: "drain_offset", Title: "drain's tail above the hole in the wall", Symbol: "d", Kind: quantity.Length, Of: "each drain that a cuff holds down",
		Formula: "tail - hole", Source: "geometry", Sure: "derived"},
	{Name: "drain_offset_ratio", Title: "drain's tail above the hole, over the span of the cuff", Symbol: "d/g", Kind: quantity.Number, Of: "each drain that a cuff holds down",
		Formula: "(tail - hole)/g", Source: "geometry", Sure: "derived"},
	{Name: "cuff_force", Title: "push of the cuff on the drain when new", Symbol: "F", Kind: quantity.Force, Of: "each drain that a cuff holds down",
		Formula: "d/C", Source: beam, Sure: "project judgement"},
	{Name: "cuff_force_left", Title: "push on the floor once the rubber has relaxed, with the drain's weight", Symbol: "N", Kind: quantity.Force, Of: "each drain that a cuff holds down",
		Formula: "s F + W, and F + W where the cuff lifts", Source: beam, Sure: "project judgement"},
	{Name: "drain_tilt", Title: "tilt of the drain under its cuff", Symbol: "a", Kind: quantity.Angle, Of: "each drain that a cuff holds down",
		Formula: "F (g^2/2 + g b)/(E I) + F (g+b)/k", Source: beam, Sure: "project judgement"},
	{Name: "standoff_share", Title: "open area round the drain's edge, over its bore", Symbol: "c", Kind: quantity.Number, Of: "each drain that stands on a floor",
		Formula: "4 s (1 - feet)/D", Source: "continuity", Sure: "derived"},
	{Name: "chloride_share", Title: "chloride in the water, of what the grade stands", Symbol: "u", Kind: quantity.Fraction, Of: "each set of wetted fixings",
		Formula: "(chloride + 0.607 salt)/ceiling", Source: "limits in the table of metals; chloride is 35.45 of 58.44 parts of salt", Sure: "published"},
	{Name: "ph_margin", Title: "lowest pH of the water above the least for the grade", Symbol: "m", Kind: quantity.Number, Of: "each set of wetted fixings",
		Formula: "pH - least pH", Source: "table of metals", Sure: "project judgement"},
	{Name: "residual_current", Title: "current at which the safety switch trips (residual current)", Symbol: "I", Kind: quantity.Current, Of: "the mains supply",
		Formula: "as stated", Source: "the file", Sure: "derived"},
}

var fixingFacts = []working.FactDefinition{
	{Name: "fixing_grade", Title: "grade of the fixings", Of: "each set of wetted fixings"},
	{Name: "fixing_wet_fit", Title: "whether the grade may be wetted at all", Words: []string{"yes", "no"}, Of: "each set of wetted fixings"},
	{Name: "fixing_acid_fit", Title: "whether the grade stands all the acid of fresh water, so that no least pH is needed", Words: []string{"yes", "no"}, Of: "each set of wetted fixings"},
	{Name: "mains_power", Title: "whether anything in the loop takes power from the mains", Words: []string{"yes", "no"}, Of: "the mains supply"},
	{Name: "residual_current_fitted", Title: "whether a residual-current device is fitted", Words: []string{"yes", "no"}, Of: "the mains supply"},
}

var (
	drainSets = []working.Named{
		{Name: "cuffed_drains", Title: "drains that stand on the floor and are joined to the wall by a cuff"},
		{Name: "wetted_fixings", Title: "fasteners under water"},
		{Name: "mains_supplies", Title: "the mains supply"},
	}
	drainRelations = []working.Named{
		{Name: "wall_of_drain", Title: "the hole through the wall that a drain's cuff leads to"},
	}
)

var define = working.Definer(Quantities)
