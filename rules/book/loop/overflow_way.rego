# METADATA
# scope: package
# title: An overflow shall lead to where its water does no harm.
# description: |
#   Some day it will run, for hours, with nobody there. Best it leads back into the sump, so that
#   nothing is lost; else to a gully, to the garden or into the sewer, whichever local rules let
#   water with fish waste go to. A bucket is full in a minute, and the floor is what it was to save.
#   If it ends outside or in a bucket, say in the file where that is.
# custom:
#   strength: shall
#   cases: [always]
#   sources:
#     - grade: common practice
#       text: Overflow to the sump or to a drain; common practice, no source.
#   remedies:
#     - {replace: lead_to_garden}
#   example:
#     - {at: /lines/settler-overflow/to, value: bucket}
#     - {at: /lines/settler-overflow/leads_to, value: floor}
package book.loop.overflow_way

import data.vocab

judgements contains vocab.asked(line, input.facts.overflow_leads, {"yes"}) if {
	some line in input.sets.overflows
}
