# METADATA
# scope: package
# title: >-
#   The pH shall stay between 6 and 8.5 all year.
# description: |
#   Below pH 6 the bacteria nearly stop and the ammonia stays; below 5.5 fish suffer, and zinc and copper
#   come out of metals. Above 8.5 much of the ammonia is poison and the plants starve of iron beside a full
#   dish. Between them fish, bacteria and most plants can live, and where all three do well is judged by
#   ph_for_all. Acid comes by itself: bacteria make it every day (see alkalinity_lasts), rain brings it.
#   Write down the lowest value you have found in a year, not the one you aim at.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     low: {of: ph_lowest, least: 6.0}
#     high: {of: ph_highest, most: 8.5}
#   sources:
#     - grade: published
#       text: >-
#         Somerville, Cohen, Pantanella, Stankus and Lovatelli 2014, Small-scale aquaponic food production,
#         FAO Fisheries and Aquaculture Technical Paper 589, table 3.1: fish and bacteria pH 6 to 8.5;
#         table 3.2: a loop pH 6 to 7.
#     - grade: published
#       text: >-
#         Kentucky State University 2021, aquaponics production manual, section 6.3: below pH 6 the power
#         to turn ammonia is greatly reduced. Wang, Yang and Kim 2023 found no difference down to 6.0.
#     - grade: published
#       text: >-
#         Observed loops: pH 6.8 (Licamele 2009); 6.8 to 7.2 (Wilson 2017); 7.0 to 7.7 (Roosta 2011); and
#         one that went from 7.1 down to 4.0 (Lee 2022).
#   shows: [ph_lowest, ph_highest]
#   remedies:
#     - {replace: keep_ph}
#   example:
#     - {at: /water/pH/low, value: 5.9}
#     - {at: /water/alkalinity/low, value: 5 mg/L CaCO3}
package book.fish.ph_bounds

import data.vocab

limit := input.limits.fish.ph_bounds

judgements contains judgement if {
	some water in input.sets.the_water
	judgement := vocab.all_of([
		vocab.held(water, input.quantities.ph_lowest, vocab.always, limit.low),
		vocab.held(water, input.quantities.ph_highest, vocab.always, limit.high),
	])
}
