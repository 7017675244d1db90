# METADATA
# scope: package
# title: When the pump starts again, it shall not draw air before the water comes back.
# description: |
#   After a stop the pump first has to fill what ran empty: pipes, beds, and every vessel up to the
#   height at which its outlet runs. Until then nothing comes back, and the sump falls. If it falls
#   to where the pump draws air, the pump stands there roaring, the fish get no water, and nobody
#   knows, since it was a power cut in the night. So the water over the depth at which the pump
#   draws air has to be at least what fills before the sump is at its lowest, and 10 mm have to be
#   left over that depth, since a pump gulps and gives less before it stops. A higher running level
#   helps and takes from the room for what runs back (takes_run_back). A valve at the pump makes it
#   slower and changes nothing of the sum.
# custom:
#   strength: shall
#   cases: [restart]
#   limits:
#     share: {of: start_share, least: 1}
#     cover: {of: start_cover, least: 10 mm}
#   sources:
#     - grade: common practice
#       text: The sump holds more than all that fills; common practice, no source.
#     - grade: project judgement
#       text: >-
#         10 mm left over the depth that the maker gives.
#   remedies:
#     - {solve: "/vessels/{subject}/water/running", to: 5 mm}
#     - {replace: larger_sump}
#   example:
#     - {at: /vessels/sump/name, value: small sump}
#     - {at: /vessels/sump/form/box/length, value: 280 mm}
#     - {at: /vessels/sump/form/box/length_top, value: 290 mm}
package book.loop.covered_at_start

import data.vocab

limit := input.limits.loop.covered_at_start

cases := input.cases.loop.covered_at_start

judgements contains judgement if {
	some vessel in input.sets.pump_vessels
	judgement := vocab.all_of([
		vocab.held(vessel, input.quantities.start_share, cases, limit.share),
		vocab.held(vessel, input.quantities.start_cover, cases, limit.cover),
	])
}
