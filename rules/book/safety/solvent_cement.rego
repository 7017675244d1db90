# METADATA
# scope: package
# title: Solvent cement should be used by adults, in the open air or in a draught.
# description: |
#   Primer and cement for PVC are solvents such as tetrahydrofuran and butanone. They melt
#   the two faces into one, make heads swim, dry the skin, and burn at a spark. Pupils can
#   measure, cut, deburr and dry-fit, which is most of the work; an adult with gloves puts the
#   cement on. Hold the joint for half a minute, and keep the lid on the tin. Fill and throw away
#   the first water before any fish comes, since what is left of the solvent goes into it. What is cemented does not come apart
#   again: where cleaning needs a joint that opens, use another kind.
# custom:
#   strength: should
#   safety: true
#   caution: >-
#     No flame, no spark, no smoking. Read the safety data sheet of the tin; where it or the rules of
#     the school ask for more, they decide. Dizzy means stop, and out into the air.
#   cases: [always]
#   sources:
#     - grade: from memory
#       text: Safety data sheets of PVC cements, tetrahydrofuran and butanone, highly flammable, irritating, makes drowsy.
#     - grade: project judgement
#       text: That pupils do not cement.
#   remedies:
#     - {replace: adults_cement}
#   example:
#     - {at: /making/cemented_by, value: [staff, pupils]}
package book.safety.solvent_cement

import data.vocab

judgements contains judgement if {
	some work in input.sets.cementing
	judgement := vocab.all_of([
		vocab.asked(work, input.facts.cement_by, {"adults"}),
		vocab.asked(work, input.facts.cement_in_open_air, {"yes"}),
	])
}
