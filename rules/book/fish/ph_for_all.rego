# METADATA
# scope: package
# title: >-
#   The pH should stay where fish, plants and bacteria all do well.
# description: |
#   Each of the three has its own band: most fish 6.5 to 8.5, plants 5.5 to 7.5, bacteria from 6 up, best
#   near 7.5. What is left for all of them is narrow, and a loop drifts out of it at the sour end by
#   itself. The table has the band of your fish and of each crop. A slow drift does less harm than a jump:
#   more than 0.3 in a day hurts fish, so correct over days. If your crop wants 6 and your fish 7, the fish
#   decide, and iron in a form that plants can take helps the crop.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     over: {of: ph_over_band, least: 0}
#     under: {of: ph_under_band, least: 0}
#   sources:
#     - grade: published
#       text: >-
#         Somerville, Cohen, Pantanella, Stankus and Lovatelli 2014, Small-scale aquaponic food production,
#         FAO Fisheries and Aquaculture Technical Paper 589, tables 3.1 and 3.2, and section 7.3 on jumps
#         of 0.3 in a day.
#     - grade: published
#       text: >-
#         University of the Virgin Islands: pH 7.0 as the middle between lettuce at 6.5 and bacteria at
#         7.5.
#     - grade: from memory
#       text: >-
#         The bands of the kinds of fish.
#   shows: [ph_lowest, ph_highest]
#   remedies:
#     - {replace: keep_ph}
#   example:
#     - {at: /water/pH/low, value: 6.3}
#     - {at: /water/alkalinity/low, value: 15 mg/L CaCO3}
package book.fish.ph_for_all

import data.vocab

limit := input.limits.fish.ph_for_all

judgements contains judgement if {
	some water in input.sets.the_water
	judgement := vocab.all_of([
		vocab.held(water, input.quantities.ph_over_band, vocab.always, limit.over),
		vocab.held(water, input.quantities.ph_under_band, vocab.always, limit.under),
	])
}
