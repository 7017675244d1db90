package loop

import (
	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

const (
	continuity = "continuity"
	channel    = "energy of open-channel flow; critical depth"
)

var lineQuantities = []working.Definition{
	{Name: "piece_speed", Title: "speed of the water at the least flow", Symbol: "V", Kind: quantity.Velocity, Of: "each stretch of a solids line that is not an air-open drop",
		Formula: "4 Q/(pi (D - 2t)^2) where the pipe is full, Q/A(y) where it is part full", Source: continuity + "; " + channel, Sure: "derived"},
	{Name: "wall_shear", Title: "drag of the water on the wall (wall shear)", Symbol: "tau", Kind: quantity.Stress, Of: "each full stretch of a solids line",
		Formula: "rho g S D/4", Source: darcy, Sure: "published"},
	{Name: "drowned_speed", Title: "speed where the pipe is drowned", Symbol: "V", Kind: quantity.Velocity, Of: "each running solids line",
		Formula: "the least of its drowned stretches", Source: continuity, Sure: "derived"},
	{Name: "riser_speed", Title: "speed where the water climbs", Symbol: "V", Kind: quantity.Velocity, Of: "each running solids line",
		Formula: "the least of its risers", Source: continuity, Sure: "derived"},
	{Name: "part_full_speed", Title: "speed where the pipe runs part full", Symbol: "V", Kind: quantity.Velocity, Of: "each running solids line",
		Formula: "the least of Q/A(y)", Source: channel, Sure: "derived"},
	{Name: "slowest_speed", Title: "speed in its slowest stretch", Symbol: "V", Kind: quantity.Velocity, Of: "each solids line",
		Formula: "the least of its stretches; none where the line is shut in daily use", Source: continuity, Sure: "derived"},
	{Name: "flush_speed", Title: "speed at which it can be flushed", Symbol: "Vf", Kind: quantity.Velocity, Of: "each solids line",
		Formula: "4 Qc/(pi (D - 2t)^2), once the water above was let rise behind a shut valve", Source: culvert, Sure: "published"},
	{Name: "drop_froude", Title: "Froude number of its air-open drops", Symbol: "Fr", Kind: quantity.Number, Of: "each running gravity line with an air-open drop",
		Formula: "V/sqrt(g D) on the full bore, the greatest", Source: "definition", Sure: "derived"},
	{Name: "rod_distance", Title: "pipe between its worst place and the opening that serves it", Symbol: "l", Kind: quantity.Length, Of: "each solids line",
		Formula: "along the line, at the place where the greater of l/3 m and a/90 deg is greatest", Source: geometry, Sure: "derived"},
	{Name: "rod_turn", Title: "bends between its worst place and the opening that serves it", Symbol: "a", Kind: quantity.Angle, Of: "each solids line",
		Formula: "sum of the turns, at the same place", Source: geometry, Sure: "derived"},
	{Name: "bore_share", Title: "least bore over the greatest of the pipe before it", Symbol: "c", Kind: quantity.Fraction, Of: "each unpumped line",
		Formula: "min(D/max(D of the pipe before))", Source: geometry, Sure: "derived"},
	{Name: "slot_share", Title: "clear width of the guard over the least bore behind it", Symbol: "c", Kind: quantity.Fraction, Of: "each guard of an unpumped line",
		Formula: "w/min(D)", Source: geometry, Sure: "derived"},
	{Name: "slot_speed", Title: "speed through the guard, half of it grown over", Symbol: "V", Kind: quantity.Velocity, Of: "each guard of a running gravity line",
		Formula: "Q/(A/2)", Source: continuity, Sure: "derived"},
	{Name: "trapped_rise", Title: "rise of an unvented high point over the bore", Symbol: "h/D", Kind: quantity.Number, Of: "each unpumped line",
		Formula: "rise over the higher of its two sides, to the next vent or end, over D", Source: geometry, Sure: "derived"},
	{Name: "vent_margin", Title: "top of the vent over the water", Symbol: "m", Kind: quantity.Length, Of: "each vent of an unpumped line",
		Formula: "top - running level inside the vessel, top - rim outside", Source: geometry, Sure: "derived"},
	{Name: "joint_head", Title: "head on the joint when the line is blocked", Symbol: "h", Kind: quantity.Head, Of: "each joint of a gravity line outside a vessel that is not known to be tight, or that slides",
		Formula: "rim of the vessel above - z", Source: geometry, Sure: "derived"},
	{Name: "joint_thrust", Title: "force that drives the joint apart when the line is blocked", Symbol: "F", Kind: quantity.Force, Of: "each joint at a turn of a gravity line that slides",
		Formula: "rho g h pi OD^2/4", Source: "pressure of still water", Sure: "derived"},
}

var lineFacts = []working.FactDefinition{
	{Name: "piece_regime", Title: "how the water fills the stretch at the least flow", Words: []string{drowned, riser, partFull, airOpen}, Of: "each stretch of a running gravity or solids line"},
	{Name: "drowned_pieces", Title: "whether a stretch of it is drowned", Words: []string{"yes", "no"}, Of: "each running gravity or solids line"},
	{Name: "riser_pieces", Title: "whether the water climbs in it", Words: []string{"yes", "no"}, Of: "each running gravity or solids line"},
	{Name: "part_full_pieces", Title: "whether a stretch of it runs part full", Words: []string{"yes", "no"}, Of: "each running gravity or solids line"},
	{Name: "air_open_drops", Title: "whether the water falls upright in it with air beside it", Words: []string{"yes", "no"}, Of: "each running gravity or solids line"},
	{Name: "check_valve", Title: "whether a check valve stands in it", Words: []string{"yes", "no"}, Of: "each unpumped line"},
	{Name: "joint_watertight", Title: "whether the joint holds water", Words: []string{"yes", "no"}, Of: "each joint of a gravity line outside a vessel"},
	{Name: "joint_slides", Title: "whether the joint can slide apart: a rubber ring in a plain socket", Words: []string{"yes", "no"}, Of: "each joint at a turn of a gravity line"},
	{Name: "thrust_held", Title: "whether a clip holds the joint together", Words: []string{"yes", "no"}, Of: "each joint at a turn of a gravity line"},
	{Name: "inlet_joint_holds", Title: "whether the joint stays together under a knock", Words: []string{"yes", "no"}, Of: "each joint of an inlet inside a settler"},
	{Name: "comes_apart", Title: "whether it comes out without a saw", Words: []string{"yes", "no"}, Of: "each pump, guard and settler inlet"},
	{Name: "clamps_fitted", Title: "whether it has clamps", Words: []string{"yes", "no"}, Of: "each hose and cuff"},
}

var lineSets = []working.Named{
	{Name: "running_solids_lines", Title: "lines that carry solids while the pump runs"},
	{Name: "unpumped_lines", Title: "lines down which water and solids run by gravity: in daily use, at an overflow, at cleaning"},
	{Name: "guards", Title: "guards at the beginning of unpumped lines"},
	{Name: "running_guards", Title: "guards at the beginning of running gravity lines"},
	{Name: "vents", Title: "vents on unpumped lines"},
	{Name: "outside_joints", Title: "joints of gravity lines outside a vessel"},
	{Name: "turn_joints", Title: "joints at the turns of gravity lines outside a vessel"},
	{Name: "inlet_joints", Title: "joints of an inlet inside a settler"},
	{Name: "sleeves", Title: "hoses and cuffs"},
	{Name: "to_be_cleaned", Title: "pumps, guards and settler inlets"},
}

var liftQuantities = []working.Definition{
	{Name: "flow_over_asked", Title: "least flow of the pump over the least asked", Symbol: "q", Kind: quantity.Number, Of: "each pump in a line",
		Formula: "Q/Qasked", Source: duty, Sure: "published"},
	{Name: "open_reserve", Title: "flow with clean walls and open valves over the least asked", Symbol: "q", Kind: quantity.Number, Of: "each pump in a line",
		Formula: "Qopen/Qasked", Source: duty, Sure: "published"},
	{Name: "open_excess", Title: "flow with clean walls and open valves over the most asked", Symbol: "q", Kind: quantity.Number, Of: "each pump in a line",
		Formula: "Qopen/Qasked", Source: duty, Sure: "published"},
	{Name: "lift_share", Title: "lift over the head at which the pump gives nothing", Symbol: "c", Kind: quantity.Fraction, Of: "each pump in a line",
		Formula: "(max(mouth, level above, crest) - z1)/H(0)", Source: "the pump's curve", Sure: "derived"},
	{Name: "duty_share", Title: "flow over the flow at no head", Symbol: "c", Kind: quantity.Fraction, Of: "each pump in a line",
		Formula: "Q/Q(no head)", Source: "the pump's curve", Sure: "derived"},
	{Name: "curve_points", Title: "points of the pump's curve", Symbol: "n", Kind: quantity.Number, Of: "each pump in a line",
		Formula: "as stated", Source: "the file", Sure: "derived"},
	{Name: "pump_cover", Title: "water over the depth at which the pump draws air", Symbol: "m", Kind: quantity.Length, Of: "each pump in a line",
		Formula: "z1 - z0 - zd", Source: geometry, Sure: "derived"},
	{Name: "left_by_pump", Title: "depth that the pump leaves in the fish tank, of the depth in daily use", Symbol: "c", Kind: quantity.Fraction, Of: "each pump in a fish tank",
		Formula: "max(zi, zd)/(z1 - z0)", Source: geometry, Sure: "derived"},
	{Name: "turnover_time", Title: "time in which the flow brings as much water as the tank holds", Symbol: "T", Kind: quantity.Time, Of: "each fish tank",
		Formula: "V/Q", Source: continuity, Sure: "derived"},
}

var liftFacts = []working.FactDefinition{
	{Name: "throttled_before", Title: "whether a valve before the pump can hold its water back", Words: []string{"yes", "no"}, Of: "each pump in a line"},
	{Name: "guarded", Title: "whether a guard keeps fish out", Words: []string{"yes", "no"}, Of: "each mouth in a fish tank"},
	{Name: "pump_before_settler", Title: "whether a pump stands between the fish tank and the settler", Words: []string{"yes", "no"}, Of: "each settler"},
}

var liftSets = []working.Named{
	{Name: "pumps_in_lines", Title: "pumps in lines through which water runs"},
	{Name: "pumps_in_fish_tanks", Title: "pumps that take their water out of a fish tank"},
	{Name: "fish_mouths", Title: "mouths by which lines take water out of a fish tank"},
	{Name: "settlers_on_the_way", Title: "settlers"},
	{Name: "fish_tanks_fed", Title: "all fish tanks, whether water runs through them or not"},
}
