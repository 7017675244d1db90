# METADATA
# scope: package
# title: >-
#   The surface stated for grains should not be more than one and a half times that of smooth round grains
#   of their size.
# description: |
#   Sellers of stone and clay print large numbers. But how much outside a heap of grains can have follows
#   from their size: smooth round ones of 20 mm have 180 square metres in a cubic metre, of 10 mm twice
#   that. Rough grains have up to half as much again. What is claimed above that are pores so fine that
#   slime closes them in a week. Count with the honest number, or smaller grains, which clog sooner. Open
#   foam and carriers are made differently and are not judged by this.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     ratio: {of: surface_over_grain, most: 1.5}
#   sources:
#     - grade: published
#       text: >-
#         Pea gravel of half an inch: 90 square feet in a cubic foot, 295 m2/m3; by the sum of spheres 283.
#     - grade: project judgement
#       text: >-
#         The factor 1.5 for rough grains.
#   shows: [media_area]
#   remedies:
#     - {replace: honest_surface}
#   example:
#     - {at: /vessels/sump/media, value: {kind: gravel, volume: 10 L, grain: 20 mm, surface: 300 m2/m3, mass: 16 kg}}
package book.fish.media_surface

import data.vocab

limit := input.limits.fish.media_surface

judgements contains vocab.held(vessel, input.quantities.surface_over_grain, vocab.always, limit.ratio) if {
	some vessel in input.sets.grain_beds
}
