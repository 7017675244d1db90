# METADATA
# scope: package
# title: The lid of a settler should open without a tool.
# description: |
#   What takes a screwdriver to open is not looked into, and a settler wants a look every day: a scum that
#   grows, a weir that draws from one side, sludge that comes up. A lock or clips keep a child out and open
#   in a moment. Where the lid guards open water from children, its fixing comes first and this second: a
#   locked lid is both.
# custom:
#   strength: should
#   cases: [always]
#   sources:
#     - grade: common practice
#       text: Lids of settlers are clipped, locked or loose; common practice, no source.
#   remedies:
#     - {replace: locked_lid}
#   example:
#     - {at: /vessels/settler/lid/fixed, value: screwed}
package book.settler.lid_off

import data.vocab

judgements contains vocab.asked(settler, input.facts.lid_comes_off, {"yes"}) if {
	some settler in input.sets.radial_flow_settlers
}
