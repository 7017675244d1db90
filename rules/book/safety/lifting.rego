# METADATA
# scope: package
# title: What one person lifts to clean the loop should weigh no more than 10 kg where pupils do it, and no more than 16 kg where adults do.
# description: |
#   A bucket of ten litres is 10 kg, a full drum is more than a person can hold, and both
#   are heaviest when the floor is wet. Backs are hurt by the lift that was only meant to be done once. Counted are what you say is
#   lifted at cleaning, the lid of the vessel, and a container that is carried away from the end of a line. If
#   the waste runs to a gully or a garden by itself, nothing is carried. A smaller bucket, carried more
#   often, is the remedy; it costs time and no muscles. A full drum is never lifted: drain it first.
# custom:
#   strength: should
#   safety: true
#   caution: Lift with a straight back, close to the body, two people for anything awkward. Rules for work with young people differ by country; they decide.
#   cases: [always]
#   limits:
#     pupils: {of: lift_mass, most: 10 kg}
#     adults: {of: lift_mass, most: 16 kg}
#   sources:
#     - grade: from memory
#       text: HSE, INDG143, Manual handling at work, filter for lifting close to the body, 25 kg for men and 16 kg for women between knuckle and elbow height.
#     - grade: project judgement
#       text: 16 kg for any adult, and 10 kg for pupils.
#   remedies:
#     - {solve: "/vessels/{subject}/cleaning/lifts", to: 1 kg}
#     - {replace: smaller_bucket}
#   example:
#     - {at: /vessels/settler/cleaning/lifts, value: 14 kg}
package book.safety.lifting

import data.vocab

limit := input.limits.safety.lifting

judgements contains vocab.excused(judgement, runs_off) if {
	some thing in _lifted
	runs_off := vocab.asked(thing, input.facts.carried_off, {"no"})
	judgement := vocab.all_of([
		vocab.any_of([
			vocab.held(thing, input.quantities.lift_mass, vocab.always, limit.pupils),
			vocab.asked(thing, input.facts.lifter, {"adults"}),
		]),
		vocab.held(thing, input.quantities.lift_mass, vocab.always, limit.adults),
	])
}

_lifted contains vessel if some vessel in input.sets.hand_cleaned

_lifted contains bucket if some bucket in input.sets.buckets
