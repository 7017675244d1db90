# METADATA
# scope: package
# title: No copper, formalin or antibiotic shall be planned as a treatment in the water of a loop that grows food.
# description: |
#   Medicines for aquaria are made for tanks whose water is thrown away. In a loop they stay.
#   Copper gathers in filter, plants and fish and kills snails, roots and bacteria. Formalin and antibiotics kill the
#   bacteria of the biofilter, and then ammonia kills the fish; antibiotics also get into what you eat
#   and breed germs that stand them. Treat sick fish in the quarantine vessel, whose water does not go back. Salt is mild, but its
#   chloride eats steel: see wetted_fasteners. Write an empty list if nothing is planned.
# custom:
#   strength: shall
#   safety: true
#   caution: Medicines for animals that are eaten need a veterinarian in most countries, with days to wait before the meal; local rules decide.
#   cases: [always]
#   sources:
#     - grade: common practice
#       text: No medicines in a loop that grows food; common practice, no source.
#   remedies:
#     - {replace: no_poison}
#   example:
#     - {at: /water/treatments, value: [copper]}
package book.safety.safe_treatments

import data.vocab

judgements contains vocab.asked(water, input.facts.treated_with_poison, {"no"}) if {
	some water in input.sets.treated_water
}
