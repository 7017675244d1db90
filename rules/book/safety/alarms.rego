# METADATA
# scope: package
# title: In a school, an alarm shall call when the sump is too full, when it is too empty, and when the power fails.
# description: |
#   A school is empty from Friday to Monday. The sump is where trouble shows first: it runs low
#   when water is lost or held up anywhere else, and high when the top-up sticks or everything
#   drains down at once. Two floats and a relay on the mains tell all three. The
#   low float also tells that the pump is about to run dry, and a power alarm needs a battery of its own. At home
#   and in a club this is a good habit and not asked.
# custom:
#   strength: shall
#   safety: true
#   caution: >-
#     An alarm is no reason to go alone into a dark wet place. Agree before who comes, and that
#     they switch off at the board first.
#   cases: [always]
#   sources:
#     - grade: common practice
#       text: High and low float in the sump and an alarm on the power; common practice, no source.
#     - grade: project judgement
#       text: That a school has to have all three, since 64 hours may pass before anybody looks.
#   remedies:
#     - {replace: alarm}
#   example:
#     - {at: /alarms, value: [{watches: sump, below: 130 mm, calls: phone}, {watches: power, calls: phone}]}
package book.safety.alarms

import data.vocab

judgements contains vocab.excused(judgement, elsewhere) if {
	some sump in input.sets.sumps
	elsewhere := _elsewhere(sump)
	judgement := vocab.all_of([
		vocab.asked(sump, input.facts.alarm_high, {"yes"}),
		vocab.asked(sump, input.facts.alarm_low, {"yes"}),
	])
}

judgements contains vocab.excused(vocab.excused(judgement, unpowered), elsewhere) if {
	some supply in input.sets.mains_supplies
	elsewhere := _elsewhere(supply)
	unpowered := vocab.asked(supply, input.facts.mains_power, {"no"})
	judgement := vocab.asked(supply, input.facts.alarm_power, {"yes"})
}

_elsewhere(thing) := vocab.asked(thing, input.facts.setting, {"home", "club", "farm"})
