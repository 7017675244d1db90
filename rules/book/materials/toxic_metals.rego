# METADATA
# scope: package
# title: No copper, brass, lead or zinc shall touch the water of the loop, and none of copper, brass or lead shall drip into it.
# description: |
#   Fish breathe through skin so thin that traces of dissolved metal kill them: in soft water some
#   hundredths of a milligram of copper in a litre, or a tenth of zinc. In a garden pond with fresh
#   water such traces are washed away. A loop keeps its water for months, turns acid as its bacteria work, and
#   gathers whatever dissolves. Think of brass float valves and taps, copper pipe and
#   sprays, solder and old lead, and galvanised troughs, frames and chain. Galvanised roofs and
#   frames that only drip are judged by galvanised_at_ph, fasteners by wetted_fasteners, clamps by
#   clamps_stand_water. Write under `metals` what there is, or an empty list if you have looked and
#   there is none: silence is not taken for none. Shown is what water creatures bear for four days
#   in water of your hardness; test strips for copper do not reach so low.
# custom:
#   strength: shall
#   safety: true
#   caution: >-
#     What dissolves also goes into the vegetables and the fish that you eat. If fish have died and
#     metal is suspected, do not eat the rest before the water has been tested; where food rules
#     set limits, they decide.
#   cases: [always]
#   sources:
#     - grade: published
#       text: 40 CFR 132, tables 1 and 2, criteria for dissolved copper and zinc by hardness.
#     - grade: published
#       text: >-
#         Half of the fish die in four days at 1.1 mg/L of copper, 1.5 of lead, 16 of zinc: Nile tilapia, a hardy fish. Taweel et al. 2013,
#         Journal of Biological Sciences 13:365.
#     - grade: common practice
#       text: No copper, brass, lead or zinc in water with fish; common practice, no source.
#   shows: [metal_criterion]
#   remedies:
#     - {replace: material, to: PP}
#   example:
#     - {at: /metals, value: [{metal: brass, in: sump, where: arm of the float valve, wetted: splashed}]}
package book.materials.toxic_metals

import data.vocab

judgements contains vocab.asked(part, input.facts.toxic_metal, {"no"}) if {
	some part in input.sets.metal_parts
}
