# METADATA
# scope: package
# title: >-
#   Enough water should flow through the tank to carry its ammonia to the bacteria.
# description: |
#   A filter can be ever so large: what the flow does not bring, it cannot turn. The flow that is wanted
#   holds the tank at 1 mg/L when one pass through the filters takes half of the ammonia out. That is the
#   honest form of the custom of turning the tank over once in an hour (see turnover): a tank with few fish
#   needs less, a dense one more. More flow wants a wider line to the settler (see carries_flow) and loads
#   it more (see overflow_rate); fewer fish load nothing.
# custom:
#   strength: should
#   cases: [run_least]
#   limits:
#     share: {of: ammonia_flow_share, most: 1}
#   sources:
#     - grade: published
#       text: >-
#         Losordo and DeLong 2015, Global Aquaculture Advocate: flow from the balance of ammonia, with 0.3
#         taken out at each pass; others take 0.5. The spread goes from 0.3 to 0.7.
#     - grade: common practice
#       text: Once in an hour; one textbook writes that no one value holds; common practice, no source.
#   shows: [ammonia_level]
#   remedies:
#     - {replace: less_feed}
#     - {replace: fewer_fish}
#   example:
#     - {at: /fish/0/feed, value: [{at: 14 degC, amount: 38 g/d}, {at: 21 degC, amount: 120 g/d}, {at: 28 degC, amount: 120 g/d}]}
#     - {at: /working_flow, value: {least: 230 L/h, most: 260 L/h}}
#     - {at: /pumps/main/curve, value: [[0 L/h, 1.75 m], [110 L/h, 1.66 m], [220 L/h, 1.40 m], [275 L/h, 1.21 m], [330 L/h, 0.97 m], [415 L/h, 0.54 m], [500 L/h, 0 m]]}
#     - {at: /vessels/biofilter/media, value: {kind: carriers, volume: 80 L, surface: 800 m2/m3, mass: 11 kg}}
package book.fish.ammonia_flow

import data.vocab

limit := input.limits.fish.ammonia_flow

cases := input.cases.fish.ammonia_flow

judgements contains vocab.held(tank, input.quantities.ammonia_flow_share, cases, limit.share) if {
	some tank in input.sets.stocked_tanks
}
