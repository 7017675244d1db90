# METADATA
# scope: package
# title: Cemented joints should cure for their full time before water comes in.
# description: |
#   Solvent cement melts the two plastics together, and the solvent needs time to leave. Water too
#   early makes a weak joint, and what is left of the solvent goes to the fish. The time depends on
#   the size of the pipe and the temperature of air and pipe: for 40 and 50 mm pipe 2 hours from 16
#   degrees up, 4 hours from 4 degrees, 16 hours in frost, and half as long again in damp air.
#   Three makers publish times that differ up to fourfold; a careful one is used, and the others
#   are shown as its range. A day is custom, and a first filling that is thrown away. Cement fumes
#   burn and stupefy: adults only, outdoors.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     share: {of: cure_share, least: 1}
#   sources:
#     - grade: published
#       text: >-
#         A US pipe maker's manual of plastic pipe, p. 96, after a cement laboratory; a cement maker's
#         joining guide; another's cure sheet. Up to 12 bar, air of up to 60 % humidity, half as long
#         again above.
#     - grade: common practice
#       text: >-
#         A day before filling, and the first filling thrown away; common practice, no source.
#   shows: [cure_time]
#   remedies:
#     - {solve: "/making/cure_before_filling", to: 1 h}
#   example:
#     - {at: /making/cure_before_filling, value: 1 h}
package book.making.curing

import data.vocab

limit := input.limits.making.curing

judgements contains vocab.held(line, input.quantities.cure_share, vocab.always, limit.share) if {
	some line in input.sets.cemented_lines
}
