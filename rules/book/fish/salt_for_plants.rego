# METADATA
# scope: package
# title: >-
#   Salt in water that feeds plants should stay at 0.75 g/L or less.
# description: |
#   Salt is the old cure for many ills of fish, and it stays: no filter and no plant takes it out. At three
#   quarters of a gram in a litre the water stands at the 1500 microsiemens above which water is too salty
#   for most plants. It does another thing in silence: each gram of salt brings 607 mg of chloride, and
#   chloride in the gap under a screw head or a clamp is what eats stainless steel, not the mild acid of
#   the loop. At 3 g/L even A4 gives way in such gaps (see wetted_fasteners). Treat sick fish in the
#   quarantine vessel, where the salt goes away with its water (see quarantine).
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     salt: {of: salt, most: 0.75 g/L}
#   sources:
#     - grade: published
#       text: >-
#         Somerville, Cohen, Pantanella, Stankus and Lovatelli 2014, Small-scale aquaponic food production,
#         FAO Fisheries and Aquaculture Technical Paper 589, section 3.4: water above 1500 uS/cm is too
#         salty for most plants.
#     - grade: from memory
#       text: >-
#         Two microsiemens for each mg/L of common salt; A4 bears 500 to 1000 mg/L of chloride in gaps.
#   shows: [salt_chloride]
#   remedies:
#     - {replace: salt_bath}
#     - {solve: /water/salt_treatment, to: 0.05 g/L}
#   example:
#     - {at: /water/salt_treatment, value: 0.78 g/L}
#     - {at: /water/chloride, value: 10 mg/L}
package book.fish.salt_for_plants

import data.vocab

limit := input.limits.fish.salt_for_plants

judgements contains vocab.held(water, input.quantities.salt, vocab.always, limit.salt) if {
	some water in input.sets.planted_water
}
