# METADATA
# scope: package
# title: A stand shall bear everything on it, each vessel full to its rim.
# description: |
#   A cubic metre of water is a tonne. A stand that was made for flowers carries it for a while,
#   and then it leans, and the leaning end fills more. Judged is the mass of all vessels on the
#   stand, filled to the rim, because that is what is there on the day an outlet is blocked,
#   against what the stand is built to bear. What it bears comes from whoever built
#   it or from whoever can work it out; dryfit does not guess it from planks. Brace it against leaning, set it level, and look
#   at it again when it has stood full for a day. What the ground bears is asked by floor_bears_load.
# custom:
#   strength: shall
#   safety: true
#   caution: >-
#     Nobody puts hands, feet or head under a full vessel. On a balcony, a roof or an upper floor ask
#     a structural engineer first; local building rules decide.
#   cases: [always]
#   limits:
#     load: {of: stand_load_share, most: 1}
#   sources:
#     - grade: published
#       text: Density of water, IAPWS SR6-08(2011), 1000 kg/m3 rounded up.
#     - grade: common practice
#       text: >-
#         Design for a full vessel. What the stand bears is the builder's figure; common practice, no
#         source.
#   shows: [stand_load, full_mass]
#   remedies:
#     - {replace: stronger_stand}
#   example:
#     - {at: /stands/tank-stand/bears, value: 900 kg}
package book.safety.standing_load

import data.vocab

limit := input.limits.safety.standing_load

judgements contains vocab.excused(judgement, grounded) if {
	some vessel in input.sets.open_vessels
	grounded := vocab.asked(vessel, input.facts.rests_on, {"floor"})
	judgement := vocab.held(vessel, input.quantities.stand_load_share, vocab.always, limit.load)
}
