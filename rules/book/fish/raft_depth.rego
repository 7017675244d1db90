# METADATA
# scope: package
# title: >-
#   A raft bed should have 200 mm of water or more.
# description: |
#   The roots of a head of lettuce are longer than a hand. In shallow water they lie on the floor in what
#   settled there, and the water warms and cools with every hour of the day, which depth evens out. 300 mm
#   is usual. More than that costs load on the stand (see standing_load) and gives nothing to the plants,
#   but it is time for the fish when something fails.
# custom:
#   strength: should
#   cases: [run_least]
#   limits:
#     depth: {of: bed_depth, least: 200 mm}
#   sources:
#     - grade: published
#       text: >-
#         A handout on rafts, at second hand: 8 in, 200 mm, at least.
#     - grade: published
#       text: >-
#         Rakocy, Bailey, Shultz and Cole, University of the Virgin Islands: 400 mm.
#     - grade: from memory
#       text: >-
#         Somerville, Cohen, Pantanella, Stankus and Lovatelli 2014, Small-scale aquaponic food production,
#         FAO Fisheries and Aquaculture Technical Paper 589: about 300 mm.
#   shows: [bed_time]
#   remedies:
#     - {replace: bed_level}
#   example:
#     - {at: /lines/bed-return/pieces/0/standpipe/crest_at, value: 180 mm}
#     - {at: /vessels/raft/form/box/length_top, value: 2.02 m}
#     - {at: /water/alkalinity/usual, value: 62 mg/L CaCO3}
package book.fish.raft_depth

import data.vocab

limit := input.limits.fish.raft_depth

cases := input.cases.fish.raft_depth

judgements contains vocab.held(bed, input.quantities.bed_depth, cases, limit.depth) if {
	some bed in input.sets.raft_beds
}
