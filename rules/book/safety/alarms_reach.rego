# METADATA
# scope: package
# title: Alarms should reach somebody who is not there, by phone or message.
# description: |
#   A siren in an empty yard wakes the neighbours and saves no fish. Let every alarm for the
#   sump and for the power send a message or ring a phone, and let more than one person have it. A siren or a lamp beside
#   it is welcome: it tells whoever is there where to look.
# custom:
#   strength: should
#   safety: true
#   caution: A phone alarm that rides on the mains dies with them; give it a battery.
#   cases: [always]
#   sources:
#     - grade: common practice
#       text: Alarms that call a phone; common practice, no source.
#   remedies:
#     - {replace: phone}
#   example:
#     - {at: /alarms/0/calls, value: siren}
package book.safety.alarms_reach

import data.vocab

judgements contains vocab.asked(thing, input.facts.alarm_calls_away, {"yes"}) if {
	some thing in input.sets.watched
}
