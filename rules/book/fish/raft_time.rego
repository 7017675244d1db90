# METADATA
# scope: package
# title: >-
#   The water should stay in a raft bed for half an hour to four hours.
# description: |
#   Too quick, and the solids that came this far are carried on and the roots hang in a current. Too slow,
#   and the far end runs out of oxygen, which roots and bacteria use all day. Between them the bed is at
#   its best. The time is the water of the bed over the flow, so a deeper bed or more flow moves it; a
#   stone at the far end makes up for slow water.
# custom:
#   strength: should
#   cases: [run_least]
#   limits:
#     time: {of: bed_time, least: 0.5 h, most: 4 h}
#   sources:
#     - grade: from memory
#       text: >-
#         Somerville, Cohen, Pantanella, Stankus and Lovatelli 2014, Small-scale aquaponic food production,
#         FAO Fisheries and Aquaculture Technical Paper 589: 1 to 4 hours.
#     - grade: published
#       text: >-
#         Rakocy and others, University of the Virgin Islands: 3.0 hours, from six beds of 11.5 m3 at 378
#         L/min.
#     - grade: project judgement
#       text: >-
#         Half an hour as the lower end: small loops run at it, and nothing written speaks against it.
#   shows: [bed_depth, inflow]
#   remedies:
#     - {replace: bed_level}
#   example:
#     - {at: /lines/bed-return/pieces/0/standpipe/crest_at, value: 200 mm}
#     - {at: /vessels/raft/form/box/length_top, value: 2.02 m}
package book.fish.raft_time

import data.vocab

limit := input.limits.fish.raft_time

cases := input.cases.fish.raft_time

judgements contains vocab.held(bed, input.quantities.bed_time, cases, limit.time) if {
	some bed in input.sets.raft_beds
}
