package fishload

import (
	"slices"

	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// Quantities is the catalogue of what this package works out, in the order of
// the day: fish, waste, bacteria, breath, acid, plants, water. The same for
// Facts and Sets.
var (
	Quantities = slices.Concat(fishQuantities, wasteQuantities, nitrifyQuantities, ammoniaQuantities, oxygenQuantities,
		outageQuantities, airQuantities, acidQuantities, bedQuantities, usedQuantities, startQuantities)
	Facts = slices.Concat(outageFacts, airFacts)
	Sets  = slices.Concat(fishSets, nitrifySets, airSets, acidSets, bedSets)
)

const (
	geometry  = "geometry"
	judgement = "project judgement"
	memory    = "from memory"
	stated    = "the file"
	species   = "table of species"
	feedMass  = "Timmons and Ebeling, Recirculating Aquaculture: 0.16 N in protein x 0.80 taken up x 0.80 let go x 0.90 as ammonia, from memory"
	reactions = "64/14.007 and 100.09/14.007 by the reactions; Ebeling, Timmons and Bisogni 2006, Aquaculture 257:346-358, its numbers as remembered"
	mixed     = "balance of a stirred tank"
)

var define = working.Definer(Quantities)

var fishQuantities = []working.Definition{
	{Name: "feed_rate", Title: "feed of these fish in a day", Symbol: "F", Kind: quantity.FeedRate, Of: "each lot of fish",
		Formula: "as stated for the temperature, in straight lines between; nothing below the temperature at which feeding stops", Source: stated, Sure: "derived"},
	{Name: "ration", Title: "feed of a day over the mass of the fish", Symbol: "r", Kind: quantity.Fraction, Of: "each lot of fish",
		Formula: "F x 1 d/m", Source: "definition", Sure: "derived"},
	{Name: "warm_room", Title: "degrees from the warmest water up to what the fish bear", Symbol: "dT", Kind: quantity.TemperatureDifference, Of: "each lot of fish",
		Formula: "warmest they bear - highest temperature", Source: species, Sure: memory},
	{Name: "cold_room", Title: "degrees from what the fish bear up to the coldest water", Symbol: "dT", Kind: quantity.TemperatureDifference, Of: "each lot of fish",
		Formula: "lowest temperature - coldest they bear", Source: species, Sure: memory},
	{Name: "comfort_room", Title: "degrees by which the usual water lies inside what suits the fish best", Symbol: "dT", Kind: quantity.TemperatureDifference, Of: "each lot of fish",
		Formula: "min(usual - lower end, upper end - usual); below zero it lies outside", Source: species, Sure: memory},
	{Name: "feeding_room", Title: "degrees from where feeding should stop up to the coldest water in which they are fed", Symbol: "dT", Kind: quantity.TemperatureDifference, Of: "each lot of fish",
		Formula: "lowest temperature with feed - temperature at which feeding stops", Source: species, Sure: memory},
	{Name: "fish_mass", Title: "mass of its fish", Symbol: "m", Kind: quantity.Mass, Of: "each fish tank",
		Formula: "sum of the lots", Source: stated, Sure: "derived"},
	{Name: "stocking_density", Title: "mass of fish in each cubic metre of water", Symbol: "d", Kind: quantity.Stocking, Of: "each fish tank",
		Formula: "m/V", Source: "definition", Sure: "derived"},
	{Name: "density_share", Title: "mass of fish in each cubic metre, of what the species takes in skilled hands", Symbol: "u", Kind: quantity.Number, Of: "each fish tank",
		Formula: "sum of m/(d most of the species)/V", Source: species, Sure: memory},
}

var fishSets = []working.Named{
	{Name: "lots", Title: "lots of fish: the entries of `fish`"},
	{Name: "stocked_tanks", Title: "vessels that hold fish"},
	{Name: "the_water", Title: "the water of the loop, if it has fish or beds"},
}

var wasteQuantities = []working.Definition{
	{Name: "feed_a_day", Title: "feed of all fish in a day", Symbol: "F", Kind: quantity.FeedRate, Of: "the loop",
		Formula: "sum of the lots", Source: stated, Sure: "derived"},
	{Name: "ammonia_made", Title: "ammonia that the fish make in a day (total ammonia, as N)", Symbol: "P", Kind: quantity.FeedRate, Of: "the loop",
		Formula: "0.092 x protein x F", Source: feedMass, Sure: memory},
	{Name: "oxygen_used", Title: "oxygen that fish and bacteria use in a day", Symbol: "R", Kind: quantity.FeedRate, Of: "the loop",
		Formula: "oxygen of the fish + 4.57 P", Source: reactions, Sure: "derived"},
	{Name: "carbon_dioxide_made", Title: "carbon dioxide made in a day", Symbol: "G", Kind: quantity.FeedRate, Of: "the loop",
		Formula: "1.375 x oxygen of the fish + 5.85 P", Source: reactions + "; 44.01/32.00 at a respiratory quotient of one", Sure: "derived"},
	{Name: "alkalinity_used", Title: "alkalinity that the bacteria use up in a day, as CaCO3, before the plants give some back", Symbol: "B", Kind: quantity.FeedRate, Of: "the loop",
		Formula: "7.14 P", Source: reactions, Sure: "derived"},
	{Name: "solids_made", Title: "solid waste that the fish leave in a day, dry", Symbol: "S", Kind: quantity.FeedRate, Of: "the loop",
		Formula: "0.25 F", Source: "Timmons and Ebeling, Recirculating Aquaculture, from memory; 0.2 to 0.4 in other works", Sure: memory},
}

var nitrifyQuantities = []working.Definition{
	{Name: "media_area", Title: "surface of its media that bacteria can use", Symbol: "A", Kind: quantity.Area, Of: "each vessel with media",
		Formula: "specific surface x volume of the media", Source: "definition", Sure: "derived"},
	{Name: "nitrifies_by_surface", Title: "ammonia that the bacteria on its surface turn in a day, by the square metre", Symbol: "Na", Kind: quantity.FeedRate, Of: "each vessel with media, and each raft bed",
		Formula: "A x rate of a square metre x max(0.25, fT fpH)", Source: "table of nitrification", Sure: "published"},
	{Name: "nitrifies_by_bed", Title: "ammonia that the bacteria in its media turn in a day, by the cubic metre", Symbol: "Nv", Kind: quantity.FeedRate, Of: "each vessel with media",
		Formula: "volume of the media x rate of a cubic metre of that kind x max(0.25, fT fpH)", Source: "table of nitrification", Sure: "published"},
	{Name: "nitrifies", Title: "ammonia that its bacteria turn in a day", Symbol: "N", Kind: quantity.FeedRate, Of: "each vessel with media, and each raft bed",
		Formula: "the lesser of Na and Nv", Source: "each rate within its own kind of medium; " + judgement, Sure: judgement},
	{Name: "nitrification", Title: "ammonia that all bacteria of the loop can turn in a day", Symbol: "N", Kind: quantity.FeedRate, Of: "the loop",
		Formula: "sum of the vessels", Source: "balance of masses", Sure: "derived"},
	{Name: "nitrification_share", Title: "ammonia made, of what the bacteria can turn", Symbol: "u", Kind: quantity.Number, Of: "the loop",
		Formula: "P/N", Source: "balance of masses", Sure: "derived"},
	{Name: "media_fill", Title: "volume of the moving carriers over that of the water they move in", Symbol: "f", Kind: quantity.Fraction, Of: "each vessel with moving carriers",
		Formula: "Vm/V", Source: "definition", Sure: "derived"},
	{Name: "surface_over_grain", Title: "surface stated for the media, over that of smooth grains of their size", Symbol: "s", Kind: quantity.Number, Of: "each vessel with media of grains whose size is stated",
		Formula: "specific surface/(6 (1 - e)/d)", Source: geometry + " of spheres", Sure: "derived"},
}

var nitrifySets = []working.Named{
	{Name: "nitrifying", Title: "vessels on whose media or rafts bacteria grow"},
	{Name: "moving_beds", Title: "vessels with moving carriers"},
	{Name: "grain_beds", Title: "vessels with media of grains whose surface and size are stated"},
	{Name: "flowing_filters", Title: "vessels with media that stand under water and live by the oxygen that flow or air brings"},
}

var ammoniaQuantities = []working.Definition{
	{Name: "ammonia_level", Title: "ammonia in the tank's water while all is steady (total ammonia, as N)", Symbol: "C", Kind: quantity.Concentration, Of: "each fish tank",
		Formula: "P/N x 1 mg/L + P/Q", Source: mixed + "; rate in proportion to ammonia below 1 mg/L (Malone and Pfeiffer 2006, Aquacultural Engineering 34:389-402)", Sure: "derived"},
	{Name: "ammonia_share", Title: "ammonia in the tank's water, of what its fish take for long", Symbol: "u", Kind: quantity.Number, Of: "each fish tank",
		Formula: "C/C most of the species", Source: species, Sure: memory},
	{Name: "poisonous_ammonia", Title: "the poisonous part of the ammonia (un-ionised, as N), at the highest pH", Symbol: "Cu", Kind: quantity.Concentration, Of: "each fish tank",
		Formula: "C/(1 + 10^(pKa - pH))", Source: "Emerson, Russo, Lund and Thurston 1975, Journal of the Fisheries Research Board of Canada 32:2379-2383", Sure: "published"},
	{Name: "ammonia_flow_share", Title: "flow that carries the ammonia to the bacteria at 1 mg/L, over the flow that runs", Symbol: "q", Kind: quantity.Number, Of: "each fish tank",
		Formula: "P/(E C)/Q, E what one pass takes out", Source: "balance of masses", Sure: "derived"},
}

var oxygenQuantities = []working.Definition{
	{Name: "oxygen_full", Title: "oxygen in water that is full of it, at this height", Symbol: "Cs", Kind: quantity.Concentration, Of: "the water",
		Formula: "Cs(T, p(altitude))", Source: "Benson and Krause 1980 as in APHA, Standard Methods, 4500-O; EN 25814; ISO 2533 for the air", Sure: "published"},
	{Name: "oxygen_need", Title: "oxygen that its fish use, mean of the day", Symbol: "R", Kind: quantity.FeedRate, Of: "each fish tank",
		Formula: "max(0.5 F, m x rate of the species x Q10^((T - T0)/10 K))", Source: "feed: Timmons and Ebeling (from memory); mass: " + species, Sure: memory},
	{Name: "oxygen_need_peak", Title: "oxygen that its fish use after a meal", Symbol: "Rp", Kind: quantity.FeedRate, Of: "each fish tank",
		Formula: "1.5 R", Source: "between a study of southern catfish at 27.5 degC, 1.8 times at a ration of 4 %, and rainbow trout, less", Sure: judgement},
	{Name: "oxygen_by_flow", Title: "oxygen that the flow brings in while the tank stands at what its fish want", Symbol: "Oq", Kind: quantity.FeedRate, Of: "each fish tank",
		Formula: "Q (s Cs - C)", Source: mixed, Sure: "derived"},
	{Name: "oxygen_by_air", Title: "oxygen that the air stones bring in while the tank stands at what its fish want", Symbol: "Oa", Kind: quantity.FeedRate, Of: "each fish tank",
		Formula: "air x 0.277 g/L x share taken up a metre x depth x a 1.024^(T - 20) (b Cs - C)/9.09 mg/L", Source: "ASCE 2-06, clean-water test, and its field form; share of the stones from memory", Sure: memory},
	{Name: "oxygen_level", Title: "oxygen in the tank after a meal", Symbol: "C", Kind: quantity.Concentration, Of: "each fish tank",
		Formula: "C at which Q (s Cs - C) + K (b Cs - C) = Rp", Source: mixed, Sure: "derived"},
	{Name: "oxygen_share", Title: "oxygen that the fish use after a meal, over what comes in while the tank holds the least they bear without stress", Symbol: "u", Kind: quantity.Number, Of: "each fish tank",
		Formula: "Rp/(Oq + Oa) at C stress", Source: mixed, Sure: "derived"},
	{Name: "oxygen_share_at_ease", Title: "oxygen that the fish use after a meal, over what comes in while the tank holds what they grow at", Symbol: "u", Kind: quantity.Number, Of: "each fish tank",
		Formula: "Rp/(Oq + Oa) at C ease", Source: mixed, Sure: "derived"},
}

// Cases in which the breath of the fish fails.
const (
	PowerCut     = "power_cut"
	AirPumpFails = "air_pump_fails"
)

// Cases is the families of states that this package adds.
var Cases = []working.Named{
	{Name: PowerCut, Title: "the mains fail: pump and air stand still, the backup air comes on if there is any"},
	{Name: AirPumpFails, Title: "the air pump fails, the pump runs on"},
}

var outageQuantities = []working.Definition{
	{Name: "time_to_danger", Title: "time until the oxygen is down to where the fish are in danger, nobody and nothing helping", Symbol: "t", Kind: quantity.Time, Of: "each fish tank",
		Formula: "(C0 - Cd) (V - m/rho)/R: of the tank alone in a power cut, of the whole loop with its bacteria while the pump runs on", Source: "balance of oxygen, no surface counted", Sure: "derived"},
	{Name: "time_at_60", Title: "time until the fish would be in danger at 60 kg in each cubic metre", Symbol: "t", Kind: quantity.Time, Of: "each fish tank",
		Formula: "(C0 - Cd) (1/d - 1/rho) m/R, d 60 kg/m3", Source: "balance of oxygen", Sure: "derived"},
	{Name: "time_at_5", Title: "time until the fish would be in danger at 5 kg in each cubic metre", Symbol: "t", Kind: quantity.Time, Of: "each fish tank",
		Formula: "(C0 - Cd) (1/d - 1/rho) m/R, d 5 kg/m3", Source: "balance of oxygen", Sure: "derived"},
	{Name: "time_at_2", Title: "time until the fish would be in danger at 2 kg in each cubic metre", Symbol: "t", Kind: quantity.Time, Of: "each fish tank",
		Formula: "(C0 - Cd) (1/d - 1/rho) m/R, d 2 kg/m3", Source: "balance of oxygen", Sure: "derived"},
	{Name: "backup_oxygen", Title: "oxygen that the backup air holds in the tank", Symbol: "C", Kind: quantity.Concentration, Of: "each fish tank",
		Formula: "C at which K (b Cs - C) = R", Source: mixed, Sure: "derived"},
	{Name: "time_with_backup", Title: "time that the fish last with the backup air", Symbol: "t", Kind: quantity.Time, Of: "each fish tank",
		Formula: "time of the backup, if it holds the danger off, + time to danger after it", Source: mixed, Sure: "derived"},
	{Name: "cut_share", Title: "longest power cut to be expected, over the time that the fish last", Symbol: "u", Kind: quantity.Number, Of: "each fish tank",
		Formula: "stated time/time_with_backup", Source: mixed, Sure: "derived"},
}

var outageFacts = []working.FactDefinition{
	{Name: "backup_starts", Title: "whether backup air comes on by itself in this tank", Words: []string{"yes", "no"}, Of: "each fish tank"},
	{Name: "filter_on_backup", Title: "whether the backup air feeds this filter too", Words: []string{"yes", "no"}, Of: "each vessel with media under water"},
}

var airQuantities = []working.Definition{
	{Name: "air_shared", Title: "air that all stones ask for, over what the air pump gives", Symbol: "u", Kind: quantity.Number, Of: "the air supply",
		Formula: "sum of count x flow/pump's flow", Source: "balance of the air", Sure: "derived"},
	{Name: "air_pressure_share", Title: "pressure that the deepest stone wants, over that at which the pump gives its air", Symbol: "u", Kind: quantity.Number, Of: "the air supply",
		Formula: "(rho g depth + 2.4 kPa)/p", Source: "hydrostatics; 0.35 psi over the depth for a stone of medium pores, a maker's handbook", Sure: "published"},
	{Name: "air_pump_over_water", Title: "air pump over the highest water that its tubes lead to", Symbol: "h", Kind: quantity.Length, Of: "the air supply",
		Formula: "height of the pump - highest rim of the vessels with stones", Source: geometry, Sure: "derived"},
	{Name: "stone_from_intake", Title: "distance from the stones to the nearest intake", Symbol: "x", Kind: quantity.Length, Of: "each set of air stones in a fish tank",
		Formula: "as stated", Source: stated, Sure: "derived"},
}

var airFacts = []working.FactDefinition{
	{Name: "air_pump_guarded", Title: "whether a non-return valve keeps water out of the air pump", Words: []string{"yes", "no"}, Of: "the air supply"},
}

var airSets = []working.Named{
	{Name: "blown_air", Title: "the air that is blown into the water, if there is any"},
	{Name: "tank_stones", Title: "sets of air stones in tanks from which a line takes solids"},
}

var acidQuantities = []working.Definition{
	{Name: "alkalinity_fall", Title: "fall of the alkalinity in a day, as CaCO3, plants not counted", Symbol: "b", Kind: quantity.Concentration, Of: "the water",
		Formula: "(B - what a doser adds) x 1 d/V", Source: "balance of masses", Sure: "derived"},
	{Name: "alkalinity_lasts", Title: "time until the alkalinity is down to 20 mg/L, plants not counted", Symbol: "t", Kind: quantity.Time, Of: "the water",
		Formula: "(alkalinity - 20 mg/L)/b", Source: "20 mg/L as CaCO3 is the least that nitrification wants: Timmons and Ebeling, from memory", Sure: memory},
	{Name: "alkalinity_left", Title: "alkalinity after the longest time that nobody looks, as CaCO3, plants not counted", Symbol: "A", Kind: quantity.Concentration, Of: "the water",
		Formula: "alkalinity - b t", Source: "balance of masses", Sure: "derived"},
	{Name: "base_wanted", Title: "base that makes up for the alkalinity used up in a day, of the kind that is added, plants not counted", Symbol: "w", Kind: quantity.FeedRate, Of: "the water",
		Formula: "B x g of the base a gram of CaCO3", Source: "equivalent weights", Sure: "derived"},
	{Name: "base_share", Title: "base that is added, over what is used up, plants not counted", Symbol: "s", Kind: quantity.Fraction, Of: "the water",
		Formula: "added/w", Source: "balance of masses", Sure: "derived"},
	{Name: "carbon_dioxide", Title: "carbon dioxide that the usual pH and alkalinity make together", Symbol: "CO2", Kind: quantity.Concentration, Of: "the water",
		Formula: "44.01 x alkalinity/50.04 x 10^(pK1 - pH)", Source: "Harned and Davis 1943 for pK1, from memory", Sure: memory},
	{Name: "carbon_dioxide_low", Title: "carbon dioxide that the lowest pH and alkalinity make together", Symbol: "CO2", Kind: quantity.Concentration, Of: "the water",
		Formula: "44.01 x alkalinity/50.04 x 10^(pK1 - pH)", Source: "Harned and Davis 1943 for pK1, from memory", Sure: memory},
	{Name: "carbon_dioxide_high", Title: "carbon dioxide that the highest pH and alkalinity make together", Symbol: "CO2", Kind: quantity.Concentration, Of: "the water",
		Formula: "44.01 x alkalinity/50.04 x 10^(pK1 - pH)", Source: "Harned and Davis 1943 for pK1, from memory", Sure: memory},
	{Name: "ph_lowest", Title: "lowest pH of the year", Symbol: "pH", Kind: quantity.Number, Of: "the water", Formula: "as stated", Source: stated, Sure: "derived"},
	{Name: "ph_highest", Title: "highest pH of the year", Symbol: "pH", Kind: quantity.Number, Of: "the water", Formula: "as stated", Source: stated, Sure: "derived"},
	{Name: "ph_over_band", Title: "lowest pH over the lower end of what fish, plants and bacteria take together", Symbol: "dpH", Kind: quantity.Number, Of: "the water",
		Formula: "pH low - greatest of their lower ends", Source: "tables of species and crops; bacteria 6 to 8.5 (FAO 2014, Technical Paper 589, table 3.1)", Sure: "published"},
	{Name: "ph_under_band", Title: "highest pH under the upper end of what fish, plants and bacteria take together", Symbol: "dpH", Kind: quantity.Number, Of: "the water",
		Formula: "least of their upper ends - pH high", Source: "tables of species and crops; bacteria 6 to 8.5 (FAO 2014, Technical Paper 589, table 3.1)", Sure: "published"},
	{Name: "salt", Title: "salt in the water at the strongest treatment planned", Symbol: "c", Kind: quantity.Concentration, Of: "the water",
		Formula: "as stated", Source: stated, Sure: "derived"},
	{Name: "salt_chloride", Title: "chloride at the strongest salt treatment planned", Symbol: "Cl", Kind: quantity.Concentration, Of: "the water",
		Formula: "chloride + 0.607 salt", Source: "35.45/58.44, molar masses", Sure: "derived"},
}

var acidSets = []working.Named{{Name: "buffered", Title: "the water of the loop, if something is added against acid"}}

var bedQuantities = []working.Definition{
	{Name: "bed_area", Title: "planted area", Symbol: "A", Kind: quantity.Area, Of: "each bed",
		Formula: "as stated, else the water surface", Source: geometry, Sure: "derived"},
	{Name: "beds_area", Title: "planted area of all beds", Symbol: "A", Kind: quantity.Area, Of: "the loop",
		Formula: "sum of the beds", Source: geometry, Sure: "derived"},
	{Name: "bed_feed", Title: "feed of a day for each square metre of bed", Symbol: "f", Kind: quantity.ArealFeed, Of: "the loop",
		Formula: "F/A", Source: "definition", Sure: "derived"},
	{Name: "bed_feed_share", Title: "feed of a day, of what the beds' crops can use", Symbol: "u", Kind: quantity.Number, Of: "the loop",
		Formula: "F/sum of A x most for the crop", Source: "table of crops", Sure: "published"},
	{Name: "bed_feed_enough", Title: "feed of a day, over the least that feeds the beds' crops", Symbol: "u", Kind: quantity.Number, Of: "the loop",
		Formula: "F/sum of A x least for the crop", Source: "table of crops", Sure: "published"},
	{Name: "nitrate_rise", Title: "rise of the nitrate in a day, as N, with what the plants take up", Symbol: "n", Kind: quantity.Concentration, Of: "the water",
		Formula: "P (1 - min(1, 1/u of the beds)) x 1 d/V", Source: "balance of masses; plants at their greatest feed take all of its nitrogen, " + judgement, Sure: judgement},
	{Name: "nitrate_level", Title: "nitrate at which rise and renewal of the water agree, as N", Symbol: "C", Kind: quantity.Concentration, Of: "the water",
		Formula: "rise/share of the water renewed in a day", Source: "balance of masses", Sure: "derived"},
	{Name: "bed_time", Title: "time that the water stays in the bed", Symbol: "t", Kind: quantity.Time, Of: "each raft bed",
		Formula: "V/Q", Source: "continuity", Sure: "derived"},
	{Name: "bed_depth", Title: "depth of its media, or of its water under rafts", Symbol: "h", Kind: quantity.Length, Of: "each raft or media bed",
		Formula: "as stated, else the water depth", Source: geometry, Sure: "derived"},
	{Name: "channel_flow", Title: "flow in each channel", Symbol: "q", Kind: quantity.Flow, Of: "each channel bed",
		Formula: "Q/channels", Source: "continuity", Sure: "derived"},
	{Name: "channel_length", Title: "length of the channel", Symbol: "L", Kind: quantity.Length, Of: "each channel bed",
		Formula: "as stated", Source: stated, Sure: "derived"},
}

var bedSets = []working.Named{
	{Name: "beds", Title: "beds of plants"},
	{Name: "raft_beds", Title: "beds with plants on rafts"},
	{Name: "media_beds", Title: "beds with plants in media"},
	{Name: "channel_beds", Title: "beds of channels with a film of water"},
	{Name: "planted_water", Title: "the water of the loop, if it feeds beds"},
	{Name: "started", Title: "the water of the loop, if it has fish"},
}

var usedQuantities = []working.Definition{
	{Name: "water_used", Title: "water that has to be replaced: lost to air and leaves, let off, and lost at cleaning", Symbol: "Q", Kind: quantity.Flow, Of: "the loop",
		Formula: "water_lost + exchange + water of a clean/time between cleans", Source: "balance of the water", Sure: "derived"},
	{Name: "water_used_share", Title: "water that has to be replaced in a day, of all the water", Symbol: "w", Kind: quantity.Fraction, Of: "the loop",
		Formula: "Q x 1 d/V", Source: "definition", Sure: "derived"},
	{Name: "topup_chlorine", Title: "chlorine in the loop when a day's water goes in at once", Symbol: "Cl2", Kind: quantity.Concentration, Of: "the loop",
		Formula: "chlorine of the source x Q x 1 d/V; none where it is taken out before", Source: "mixing, no chlorine used up", Sure: "derived"},
}

var startQuantities = []working.Definition{
	{Name: "ammonium_chloride", Title: "ammonium chloride that brings the water to 2 mg/L of ammonia (as N), to feed the first bacteria", Symbol: "m", Kind: quantity.Mass, Of: "the loop",
		Formula: "2 mg/L x V x 53.49/14.007", Source: "molar masses", Sure: "derived"},
	{Name: "start_time", Title: "time from the first ammonia to full feed", Symbol: "t", Kind: quantity.Time, Of: "the loop",
		Formula: "as stated", Source: stated, Sure: "derived"},
	{Name: "first_feed", Title: "feed of the first week with fish, of the full feed", Symbol: "s", Kind: quantity.Fraction, Of: "the loop",
		Formula: "as stated", Source: stated, Sure: "derived"},
	{Name: "feed_step", Title: "what is added each week, of the full feed", Symbol: "s", Kind: quantity.Fraction, Of: "the loop",
		Formula: "as stated", Source: stated, Sure: "derived"},
}
