# METADATA
# scope: package
# title: What a second-hand vessel has held shall be known, and shall be harmless.
# description: |
#   Polyethylene, the plastic of drums and tanks, soaks up oils, solvents and pesticides and gives
#   them back for years. Washing cleans the face and not the wall, so there is no washing such a
#   vessel fit for fish and food. Food and drink are harmless; so is a new vessel, which has held
#   nothing. An unknown history counts as a bad one, because nobody can smell a weed killer. A UN
#   mark on a drum speaks of its strength and not of food: such drums are made for dangerous goods
#   as well. Say under `held` in plain words all that it is known to have held. Soap and cleaners
#   count as harmful: what wets skin opens gills.
# custom:
#   strength: shall
#   safety: true
#   caution: >-
#     Do not cut, drill or sniff a drum of unknown contents: vapours may burn or poison. Give it
#     back to whoever takes chemical waste where you live; local rules decide.
#   cases: [always]
#   sources:
#     - grade: from memory
#       text: FAO and WHO 2008, Guidelines on management options for empty pesticide containers, no other use of them.
#     - grade: common practice
#       text: >-
#         Drums that held food only, or new ones. Which words count as harmless stands in the table of
#         contents; common practice, no source.
#   remedies:
#     - {replace: clean_vessel}
#   example:
#     - {at: /vessels/biofilter/history/held, value: weed killer}
package book.materials.vessel_history

import data.vocab

judgements contains vocab.asked(vessel, input.facts.contents, {"harmless"}) if {
	some vessel in input.sets.all_vessels
}
