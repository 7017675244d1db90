# METADATA
# scope: package
# title: In an upright pipe in which water falls with air beside it, the flow should be small enough for the bore.
# description: |
#   Where water falls down an upright pipe that stands open to the air at its top, water and air
#   have to share the bore. With little water the air finds its way out and the pipe runs quietly.
#   With more the pipe gulps: it fills, sucks, breaks off and fills again, and the level above
#   swings. The measure is the Froude number, the speed in the full bore over the square root of
#   gravity times bore: up to 0.3 the pipe runs quietly, from there to about 1 expect gulps, noise
#   and a level that swings; above that it runs full. Only upright falls are judged, at the greatest
#   flow. A drop at 45 degrees lets the air pass over the water and is not judged as if it were
#   upright. A wider pipe clears this and slows what solids_speed wants quick: in a drop let this
#   clause win, since solids do not come to rest in a fall.
# custom:
#   strength: should
#   cases: [run_clean, run_worst]
#   limits:
#     froude: {of: drop_froude, most: 0.3}
#   sources:
#     - grade: published
#       text: >-
#         P. D. Hills, Designing piping for gravity flow, Chemical Engineering 1983, as engineering
#         pages quote it. A rule of process plant for tall upright pipes, not tried at this size.
#     - grade: project judgement
#       text: >-
#         Only a should, since accepted home loops run at 0.25 to 0.4. The level that results is
#         judged by carries_flow.
#   shows: [flow, capacity]
#   remedies:
#     - {replace: next_bore}
#   example:
#     - {at: /pipes/thin, value: {standard: AS/NZS 1477, class: PN12, size: DN40}}
#     - {at: /lines/filtered-run/pipe, value: thin}
#     - {at: /lines/filtered-run/pieces/1/through/seal, value: {hole: 63.5 mm, outside: 48.3 mm, lip: 83 mm}}
#     - {at: /lines/filtered-run/pieces/7/through/seal, value: {hole: 63.5 mm, outside: 48.3 mm, lip: 83 mm}}
package book.lines.drop_froude

import data.vocab

limit := input.limits.lines.drop_froude

cases := input.cases.lines.drop_froude

judgements contains vocab.excused(judgement, no_drop) if {
	some line in input.sets.running_gravity_lines
	no_drop := vocab.asked(line, input.facts.air_open_drops, {"no"})
	judgement := vocab.held(line, input.quantities.drop_froude, cases, limit.froude)
}
