# METADATA
# scope: package
# title: Mains water shall enter the loop through open air, above the rim it falls into, and no hose shall be left in the water.
# description: |
#   When a main bursts in the street, the pipes of the house suck. A pipe or hose whose end is under
#   water then draws fish water into the drinking water of everybody on the line. Nothing keeps
#   that out so surely as open air between the outlet and the water (the air gap). It is measured
#   from the lowest point of the outlet down to the lowest place of the rim, not to the water of today, since a blocked overflow
#   brings the water up to the rim. It is at least 25.4 mm and twice the inside of the outlet;
#   beside a wall, along which water clings, 38.1 mm and three times. A store that is filled
#   by hand or by rain has no pipe to suck on, so for it only the hose is asked. A check
#   valve is no air gap: they stick.
# custom:
#   strength: shall
#   safety: true
#   caution: >-
#     Joining anything to the drinking water pipes is work for a licensed plumber in most places,
#     and the water authority may ask for more than an air gap. Where local rules do, they decide.
#   cases: [always]
#   limits:
#     gap: {of: air_gap_share, least: 1}
#   sources:
#     - grade: from memory
#       text: ASME A112.1.2, Air gaps in plumbing systems, table of minimum air gaps, away from and near to a wall; plumbing codes repeat it.
#     - grade: from memory
#       text: EN 1717, family AA, unrestricted air gap, twice the bore and not less than 20 mm.
#   shows: [air_gap, air_gap_needed]
#   remedies:
#     - {solve: /top_up/outlet_at, to: 5 mm}
#     - {replace: no_hose}
#   example:
#     - {at: /top_up/from, value: mains}
#     - {at: /top_up/outlet_at, value: 430 mm}
package book.safety.topup_gap

import data.vocab

limit := input.limits.safety.topup_gap

judgements contains judgement if {
	some supply in input.sets.water_supplies
	judgement := vocab.all_of([
		vocab.any_of([
			vocab.held(supply, input.quantities.air_gap_share, vocab.always, limit.gap),
			vocab.asked(supply, input.facts.topup_from, {"store", "rain", "by-hand"}),
		]),
		vocab.asked(supply, input.facts.hose_left_in, {"no"}),
	])
}
