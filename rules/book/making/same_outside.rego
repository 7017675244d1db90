# METADATA
# scope: package
# title: Parts that are joined shall have the same outside diameter.
# description: |
#   Pipe is sold by a name, and the name is not its size. In Australia a 50 mm pressure pipe is
#   60.35 mm outside and a 50 mm drain pipe 55.85 mm; a 65 mm pressure pipe is 75.35 mm and the
#   American 2-1/2 inch 73.02 mm; in Britain a 50 mm waste pipe is 56 mm for cement and 54 mm for
#   push-fit. Parts that only look alike go together dry and leak later. How near is near enough
#   depends on the joint. Cement fills a fifth of a millimetre, a rubber ring in a socket half of
#   one, a rubber seal in a wall one, and a rubber cuff under its clamp two. Where two sizes must
#   meet, put a fitting that is made for both between them: a reducer or an adapter.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     cement: {of: outside_gap, most: 0.2 mm}
#     ring: {of: outside_gap, most: 0.5 mm}
#     seal: {of: outside_gap, most: 1 mm}
#     cuff: {of: outside_gap, most: 2 mm}
#   sources:
#     - grade: published
#       text: >-
#         Outside diameters of ASTM D1785, AS/NZS 4130, DIN 8062; the British names in the national
#         foreword of BS EN 1329-1:2014. ASTM D2466: a socket is 0.1 to 0.3 mm tighter at its bottom than
#         the pipe.
#     - grade: from memory
#       text: >-
#         Outside diameters of AS/NZS 1477 and AS/NZS 1260, and that a wall seal takes one diameter
#         within a millimetre.
#     - grade: project judgement
#       text: >-
#         The limits by kind of joint.
#   remedies:
#     - {replace: fit_to_pipe}
#   example:
#     - {at: /lines/clear-run/pieces/0/through/seal/outside, value: 55.9 mm}
package book.making.same_outside

import data.vocab

limit := input.limits.making.same_outside

judgements contains _joined(meeting, limit.cement) if some meeting in input.sets.socket_meetings

judgements contains _joined(meeting, limit.ring) if some meeting in input.sets.ring_meetings

judgements contains _joined(meeting, limit.seal) if some meeting in input.sets.seal_meetings

judgements contains _joined(meeting, limit.cuff) if some meeting in input.sets.cuff_meetings

_joined(meeting, most) := vocab.on(
	vocab.held(meeting, input.quantities.outside_gap, vocab.always, most),
	vocab.whole(input.relations.line_of, meeting),
)
