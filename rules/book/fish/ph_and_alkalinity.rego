# METADATA
# scope: package
# title: >-
#   pH and alkalinity should go together with the carbon dioxide of an aerated loop.
# description: |
#   pH, alkalinity and carbon dioxide hang together: two of them give the third. So two numbers from two
#   test kits can be checked against each other. In a loop that is well aired the carbon dioxide lies
#   between 0.5 mg/L, which air alone gives, and 20 mg/L; near 5 is usual. Numbers that make more say that
#   one of them is wrong, or that the water is badly aired and the fish have trouble to breathe out.
#   Numbers that make less cannot be: measure both again, in the same hour, with drops and not with strips.
#   A low pH and its low alkalinity belong to the same day, as do the high ones; a single number for the
#   alkalinity of a whole year does not fit both ends of the pH.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     gas: {of: carbon_dioxide, least: 0.5 mg/L, most: 20 mg/L}
#     gas_low: {of: carbon_dioxide_low, least: 0.5 mg/L, most: 20 mg/L}
#     gas_high: {of: carbon_dioxide_high, least: 0.5 mg/L, most: 20 mg/L}
#   sources:
#     - grade: from memory
#       text: >-
#         Harned and Davis 1943, Journal of the American Chemical Society 65, for the first constant of
#         carbonic acid.
#     - grade: from memory
#       text: >-
#         Timmons and Ebeling, Recirculating Aquaculture: 20 to 30 mg/L as the most for trout; tilapia take
#         more.
#     - grade: project judgement
#       text: >-
#         20 mg/L as the sign of a wrong number or of too little air, 0.5 mg/L as what open air leaves in
#         water at 25 degC.
#   shows: [carbon_dioxide, carbon_dioxide_low, carbon_dioxide_high]
#   remedies: []
#   example:
#     - {at: /water/pH/usual, value: 6.7}
package book.fish.ph_and_alkalinity

import data.vocab

limit := input.limits.fish.ph_and_alkalinity

judgements contains judgement if {
	some water in input.sets.the_water
	judgement := vocab.all_of([
		vocab.held(water, input.quantities.carbon_dioxide, vocab.always, limit.gas),
		vocab.held(water, input.quantities.carbon_dioxide_low, vocab.always, limit.gas_low),
		vocab.held(water, input.quantities.carbon_dioxide_high, vocab.always, limit.gas_high),
	])
}
