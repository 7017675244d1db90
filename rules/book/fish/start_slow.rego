# METADATA
# scope: package
# title: >-
#   A new loop should take four weeks or more to full feed, starting with a quarter of it and adding no
#   more than a quarter each week.
# description: |
#   New media are bare. The bacteria grow slowly and one kind after the other: ammonia rises, then nitrite,
#   which is worse for fish, and after four to eight weeks both are down. Feed them with ammonium chloride
#   before there are fish: the amount for your water is shown. Then stock and feed by quarters, and go up
#   only after a week with ammonia and nitrite under 1 mg/L. A bag of media from a running loop, free of
#   illness, saves weeks. In cold or sour water everything takes twice as long. Full feed into a new loop
#   is the commonest way in which a class loses its first fish.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     time: {of: start_time, least: 4 week}
#     first: {of: first_feed, most: 25 %}
#     step: {of: feed_step, most: 25 %}
#   sources:
#     - grade: published
#       text: >-
#         Kentucky State University 2021, aquaponics production manual: 6 to 8 weeks. Mnyoro and others
#         2022, Journal of Cleaner Production 366:132929: 6 to 7 weeks on cheap media and on plastic.
#     - grade: common practice
#       text: >-
#         A quarter of the feed in the first week and a quarter more each week; common practice, no source.
#   shows: [start_time, first_feed, feed_step, ammonium_chloride]
#   remedies:
#     - {replace: slow_start}
#   example:
#     - {at: /start_up/first_feed, value: 100 %}
package book.fish.start_slow

import data.vocab

limit := input.limits.fish.start_slow

judgements contains judgement if {
	some water in input.sets.started
	judgement := vocab.all_of([
		vocab.held(water, input.quantities.start_time, vocab.always, limit.time),
		vocab.held(water, input.quantities.first_feed, vocab.always, limit.first),
		vocab.held(water, input.quantities.feed_step, vocab.always, limit.step),
	])
}
