# METADATA
# scope: package
# title: >-
#   Between the lip of the inlet well and the sludge, when its store is full, half the bore of the well
#   should be free.
# description: |
#   The water leaves the well through the gap between its lip and whatever lies under it. As the sludge
#   grows, the gap shrinks and the water in it gets faster. How high the sludge may grow before it is let
#   out is for the keeper to say (`sludge: full_at`); nothing is assumed in its place, and the room is
#   counted from there. Sludge that stands higher means fewer cleanings and less room: give up the long
#   interval. The depth of the lip pulls the other way (well_depth).
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     room: {of: room_over_sludge, least: 0.5}
#   sources:
#     - grade: project judgement
#       text: >-
#         Twice the gap at which the water leaves no faster than it came down. A stream that comes down
#         freely stays fast for five or six bores (jet theory, from memory), so that even this is no proof
#         of rest.
#   remedies:
#     - {solve: "/vessels/{subject}/sludge/full_at", to: 5 mm}
#   example:
#     - {at: /vessels/settler/sludge/full_at, value: 250 mm}
package book.settler.room_over_sludge

import data.vocab

limit := input.limits.settler.room_over_sludge

judgements contains vocab.held(settler, input.quantities.room_over_sludge, vocab.always, limit.room) if {
	some settler in input.sets.radial_flow_settlers
}
