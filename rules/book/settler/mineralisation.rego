# METADATA
# scope: package
# title: A tank in which sludge turns to plant food should hold the sludge of 14 days or more.
# description: |
#   Sludge is let off into such a tank to lie there, aired or not, until bacteria have set its nutrients
#   free; the liquor then goes to the beds. They need time: the part that is easily broken down is done
#   within 14 days, and what leaves sooner takes its oxygen demand along. The time is the volume over the
#   sludge of all settlers in a day, with the clear water over it let off; if all the water of a cleaning
#   stays in the tank, the time is far shorter, so let it stand and draw it off. A larger tank or more
#   solid sludge give more time; a settler emptied more often gives fresher and thinner sludge
#   (cleaning_interval). Air it or leave it still, but do not lean into it: sludge without oxygen makes
#   hydrogen sulphide.
# custom:
#   strength: should
#   cases: [run_clean]
#   limits:
#     time: {of: mineralisation_time, least: 14 d}
#   sources:
#     - grade: published
#       text: >-
#         Broken down without oxygen, the easily degradable part of fish sludge is done within 14 days.
#         Study of end-of-pipe denitrification at a trout farm of 1000 t a year, Denmark (authors not
#         known).
#     - grade: from memory
#       text: >-
#         Aired tanks beside the loop: 10 to 20 days in use.
#   remedies:
#     - {solve: "/vessels/{subject}/water/running", to: 10 mm}
#     - {solve: "/vessels/{subject}/form/{form}/inside", to: 10 mm}
#   example:
#     - {at: /vessels/ripener, value: {role: mineralisation-tank, form: {cylinder: {inside: 250 mm, height: 400 mm, wall: 4 mm}}, stands_at: 0 mm, material: HDPE, uv_stable: true, light: opaque, mass: 3 kg, lid: {kind: solid, fixed: locked, bears: 900 N, opening: 20 mm}, history: {made_for: food, held: olives in brine}, water: {running: 180 mm}}}
package book.settler.mineralisation

import data.vocab

limit := input.limits.settler.mineralisation

cases := input.cases.settler.mineralisation

judgements contains vocab.held(tank, input.quantities.mineralisation_time, cases, limit.time) if {
	some tank in input.sets.mineralisation_tanks
}
