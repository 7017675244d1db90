# METADATA
# scope: package
# title: >-
#   A filter that stands under water should have backup air too.
# description: |
#   A filter full of bacteria breathes like a tank of fish. When the flow stops it uses up its oxygen
#   within one to four hours; then the bacteria that you need die off, others make foul gas, and at the
#   restart a wave of black water runs to the fish that have just come through the power cut. So give the
#   filter a stone on the backup. If you cannot: before the pump starts again, drain the filter, rinse the
#   media in water of the loop and throw that water away. A trickling filter and a bed that floods and
#   drains stand in air and need none.
# custom:
#   strength: should
#   cases: [always]
#   sources:
#     - grade: from memory
#       text: >-
#         1 to 4 hours until the water in media without flow has lost its oxygen.
#     - grade: common practice
#       text: >-
#         Backup air in the filter, or a rinse before the restart; common practice, no source.
#   shows: [nitrifies]
#   remedies:
#     - {replace: feed_filter}
#   example:
#     - {at: /backup_air/feeds, value: [tank]}
package book.fish.filter_aired

import data.vocab

judgements contains vocab.asked(filter, input.facts.filter_on_backup, {"yes"}) if {
	some filter in input.sets.flowing_filters
}
