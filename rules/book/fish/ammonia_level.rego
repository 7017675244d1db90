# METADATA
# scope: package
# title: >-
#   The ammonia in the tank should stay at what its fish take for long, or at what you allow.
# description: |
#   This is all ammonia together, as the test drops show it, in grams of nitrogen. It has two parts: what
#   comes back from the bacteria, which work in step with it below 1 mg/L, and what the fish add on one way
#   through the tank, which only flow takes away. In the slightly acid water of a loop little of it is
#   poisonous (see ammonia_poisonous), so that this is no line between life and death but the sign of a
#   filter that is full: above 1 mg/L feed less and look for solids in the media. A lower level than the
#   table's you set with `ammonia` under `water`.
# custom:
#   strength: should
#   cases: [run_least]
#   limits:
#     share: {of: ammonia_share, most: 1}
#   sources:
#     - grade: published
#       text: >-
#         Somerville, Cohen, Pantanella, Stankus and Lovatelli 2014, Small-scale aquaponic food production,
#         FAO Fisheries and Aquaculture Technical Paper 589, tables 3.1 and 3.2: below 3 mg/L for fish of
#         warm water, below 1 for fish of cold water, and below 1 for a loop.
#     - grade: published
#       text: >-
#         Kentucky State University 2021, aquaponics production manual, section 6.7: above 1 mg/L cut the
#         feed and renew a fifth of the water.
#     - grade: published
#       text: >-
#         Malone and Pfeiffer 2006, Aquacultural Engineering 34:389-402: the rate goes with the level below
#         1 mg/L.
#   shows: [ammonia_level, poisonous_ammonia]
#   remedies:
#     - {replace: more_media}
#     - {replace: less_feed}
#     - {replace: fewer_fish}
#   example:
#     - {at: /water/ammonia, value: 0.6 mg/L N}
#     - {at: /fish/0/feed/0/amount, value: 37 g/d}
package book.fish.ammonia_level

import data.vocab

limit := input.limits.fish.ammonia_level

cases := input.cases.fish.ammonia_level

judgements contains vocab.held(tank, input.quantities.ammonia_share, cases, limit.share) if {
	some tank in input.sets.stocked_tanks
}
