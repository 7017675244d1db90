# METADATA
# scope: package
# title: >-
#   The air pump shall stand above all water that its tubes lead to, or have a non-return valve.
# description: |
#   When the pump stops, the tube becomes a siphon: water climbs in it, runs over the top and down into a
#   pump that stands lower, and on to its plug. Then the pump is spoilt and there is mains voltage in a wet
#   case; and the tank runs out over the floor through a tube of 6 mm, all night. Standing above the rim of
#   the highest vessel it cannot happen, whatever blocks or fills. A non-return valve does the same until
#   it sticks: it is made of rubber and wants a new one every year. Have both.
# custom:
#   strength: shall
#   safety: true
#   caution: >-
#     Unplug the air pump before you take up its tube. Water in the pump or at its plug: switch off at the
#     board first, and do not touch pump, tube or water before that.
#   cases: [always]
#   limits:
#     over: {of: air_pump_over_water, least: 0 mm}
#   sources:
#     - grade: common practice
#       text: >-
#         Makers of air pumps ask for one or the other; common practice, no source.
#     - grade: published
#       text: >-
#         FAO 2014, Technical Paper 589, on safety at work: protection against residual current on every
#         item, none hung over a tank, drip loops on all cables.
#   remedies:
#     - {solve: /air/pump/stands_at, to: 10 mm}
#     - {replace: non_return}
#   example:
#     - {at: /air/pump/stands_at, value: 600 mm}
#     - {at: /air/pump/non_return, value: false}
package book.fish.air_pump_dry

import data.vocab

limit := input.limits.fish.air_pump_dry

judgements contains judgement if {
	some air in input.sets.blown_air
	judgement := vocab.any_of([
		vocab.held(air, input.quantities.air_pump_over_water, vocab.always, limit.over),
		vocab.asked(air, input.facts.air_pump_guarded, {"yes"}),
	])
}
