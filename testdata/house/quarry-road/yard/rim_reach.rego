# METADATA
# scope: package
# title: The rim of a vessel that is emptied or rinsed by hand shall stand at most 1.05 m above the paving.
# description: |
#   Pupils clean the settler in the courtyard, and reach over its rim with an arm in the water. The
#   smallest of them stand 1.35 m tall: over a rim at their chest they can see the floor and keep their
#   feet on the paving; over a higher one they look for something to stand on, and whatever they find
#   makes the open water easier to fall into. A step is no remedy for the same reason.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     height: {of: rim_height, most: 1.05 m}
#   sources:
#     - grade: project judgement
#       text: >-
#         Tried at Quarry Road with the smallest pupils of two years and a tub on blocks: at 1.05 m all of
#         them reached the floor of a settler, at 1.15 m a third did not.
#   shows: [lift_mass]
#   example:
#     - {at: /vessels/settler/form/cylinder/height, value: 770 mm}
package house.yard.rim_reach

import data.vocab

limit := input.limits.yard.rim_reach.height

cases := input.cases.yard.rim_reach

judgements contains vocab.held(vessel, input.quantities.rim_height, cases, limit) if {
	some vessel in input.sets.hand_cleaned
}
