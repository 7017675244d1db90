# METADATA
# scope: package
# title: Vessels should be made for food, drinking water or fish, and the water should touch nothing that is unfit for food.
# description: |
#   Two plastics of one name may differ by what is mixed into them: plasticisers, which make PVC
#   soft, stabilisers, biocides in roofing sheet, mould oil in mortar tubs. A maker who sells a
#   vessel for food or drinking water has had it tested for what it gives off; the mark of a glass and
#   a fork, or the words for drinking water, say so. Where there is a liner, the liner counts. This
#   asks what the vessel was made for; what it has held since is asked by vessel_history.
# custom:
#   strength: should
#   cases: [always]
#   sources:
#     - grade: from memory
#       text: Regulation (EC) 1935/2004, materials intended to come into contact with food, the mark of glass and fork; 21 CFR 177.1520, olefin polymers.
#     - grade: project judgement
#       text: That a vessel sold for keeping fish will do, and that this is a recommendation. Which materials are as a rule fit stands in the table of nonmetals.
#   remedies:
#     - {replace: food_vessel}
#   example:
#     - {at: /vessels/biofilter/history/made_for, value: building}
package book.materials.food_contact

import data.vocab

judgements contains judgement if {
	some vessel in input.sets.all_vessels
	judgement := vocab.all_of([
		vocab.any_of([
			vocab.asked(vessel, input.facts.made_for, {"food", "drinking-water", "fish"}),
			vocab.asked(vessel, input.facts.food_mark, {"yes"}),
		]),
		vocab.asked(vessel, input.facts.material_food_fit, {"yes"}),
	])
}
