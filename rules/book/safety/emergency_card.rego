# METADATA
# scope: package
# title: A card with the valves and whom to call should hang at the loop.
# description: |
#   The person who hears the alarm on a Sunday is seldom the one who built the loop. A card says
#   which valve shuts what, what may be unplugged and what must not, where the spare pump lies, and
#   who is called first and next. Put a drawing on it, and hang it where it stays dry and is seen.
# custom:
#   strength: should
#   safety: true
#   caution: Put the emergency number of the place on it as well. People before fish.
#   cases: [always]
#   sources:
#     - grade: common practice
#       text: A card at the loop; common practice, no source.
#   remedies:
#     - {replace: provide}
#   example:
#     - {at: /care/emergency_card, value: false}
package book.safety.emergency_card

import data.vocab

judgements contains vocab.asked(care, input.facts.emergency_card, {"yes"}) if {
	some care in input.sets.loop_care
}
