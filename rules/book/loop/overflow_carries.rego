# METADATA
# scope: package
# title: An overflow shall carry the whole flow of its vessel with the water 30 mm under the rim.
# description: |
#   An overflow is there for the hour when the way out is blocked and all that comes in has to leave
#   by it. If its pipe is narrower than the way out it stands in for, or set so high that the water
#   gets no depth over its edge, it makes the flood slower and does not stop it. The flow is the
#   greatest that can come: what the pump gives through clean pipes, or what is asked, if that is
#   more. Set it as low as it can be without running every day: a hand's breadth under the rim.
# custom:
#   strength: shall
#   cases: [one_blocked]
#   limits:
#     share: {of: overflow_share, most: 100 %}
#   sources:
#     - grade: project judgement
#       text: >-
#         The whole flow with 30 mm left.
#     - grade: common practice
#       text: An overflow one size wider than what it stands in for; common practice, no source.
#   remedies:
#     - {replace: next_bore}
#     - {solve: "/lines/{subject}/pieces/0/through/at", to: 5 mm}
#   example:
#     - {at: /pipes/thin, value: {standard: AS/NZS 1477, class: PN12, size: DN25}}
#     - {at: /lines/settler-overflow/pipe, value: thin}
#     - {at: /lines/settler-overflow/pieces/0/through/seal, value: {hole: 44.45 mm, outside: 33.4 mm}}
package book.loop.overflow_carries

import data.vocab

limit := input.limits.loop.overflow_carries

cases := input.cases.loop.overflow_carries

judgements contains vocab.held(line, input.quantities.overflow_share, cases, limit.share) if {
	some line in input.sets.overflows_of_running
}
