package settling

import (
	"strings"
	"testing"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// drum is a small loop with one settler, all of its parts in it.
const drum = `
dryfit: 1
name: settler for tests
status: for-review
working_flow: {least: 900 L/h, most: 1000 L/h}
pipes:
  waste-40: {standard: AS/NZS 1477, class: PN12, size: DN40}
  riser-25: {standard: AS/NZS 1477, class: PN12, size: DN25}
vessels:
  tank: {role: fish-tank, form: {cylinder: {inside: 1350 mm, height: 850 mm}}, stands_at: 420 mm}
  settler:
    role: radial-flow-settler
    form: {cylinder: {inside: 463 mm, height: 735 mm}}
    stands_at: 300 mm
    lid: {kind: solid, fixed: clipped}
    well: {inside: 129.2 mm, outside: 140 mm, lip_at: 305 mm, comes_out: true}
    weir: {notched_ring: {across: 400 mm, crest_at: 605 mm, notches: 12, angle: 90 deg}}
    launder: {floor_at: 528 mm}
    sludge: {full_at: 110 mm}
    cleaning: {every: 3 d, stirred: true, tool: brush on a long handle}
  sump: {role: sump, form: {box: {length: 1.1 m, width: 0.8 m, height: 450 mm}}, stands_at: 0 mm}
lines:
  solids-run:
    from: tank
    to: settler.well
    pipe: waste-40
    joints: cemented
    pieces:
      - through: {wall_of: tank, at: 320 mm}
      - across: 300 mm
      - through: {wall_of: settler, at: 440 mm}
      - across: 172 mm
      - bend: 90 deg
      - rise: fit
      - outlet: {at: 540 mm, facing: up}
  settler-waste:
    duty: waste
    from: settler
    to: bucket
    pipe: waste-40
    joints: cemented
    pieces:
      - floor_drain: {flange: 110 mm, standoff: 14 mm, tail_at: 85 mm}
      - cuff: {span: 30 mm}
      - through: {wall_of: settler, at: 79 mm}
      - across: 150 mm
      - valve: {kind: ball, open: 0 %}
      - outlet: {at: 379 mm, facing: level, cap: threaded}
  draw-down:
    duty: draw-down
    from: settler
    to: sump
    pipe: riser-25
    joints: uncemented
    pieces:
      - intake: {at: 170 mm}
      - rise: fit
      - bend: 90 deg
      - over: {rim_of: settler, at: 775 mm}
      - across: 250 mm
      - bend: 90 deg
      - fall: fit
      - valve: {kind: ball, open: 0 %}
      - fall: 200 mm
      - outlet: {at: 140 mm, facing: down}
`

// changed is the ledger of the drum with texts replaced in pairs, with a flow in
// its solids line and its water 617 mm deep.
func changed(t *testing.T, flow float64, pairs ...string) *working.Ledger {
	t.Helper()
	return surveyed(t, flow, func(*working.Ledger) {}, pairs...)
}

// surveyed is the same, with more in the ledger beforehand.
func surveyed(t *testing.T, flow float64, before func(l *working.Ledger), pairs ...string) *working.Ledger {
	t.Helper()
	text := drum
	for i := 0; i < len(pairs); i += 2 {
		if !strings.Contains(text, pairs[i]) {
			t.Fatalf("%q stands nowhere in the drum", pairs[i])
		}
		text = strings.Replace(text, pairs[i], pairs[i+1], 1)
	}
	s, problems := system.Read("drum.yaml", []byte(text))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	l := working.NewLedger()
	working.EachRunning(func(runCase, water string) {
		enter := func(subject, name string, kind quantity.Kind, x float64) {
			l.Take(working.Address{Subject: subject, Name: name, Case: runCase, Water: water}, working.Definition{Name: name, Kind: kind}, "", working.Fixed(name, kind, x, ""))
		}
		enter("solids-run", "flow", quantity.Flow, flow)
		enter("settler", "inflow", quantity.Flow, flow)
		enter("settler", "water_level", quantity.Length, 0.917)
	})
	before(l)
	Survey(s, l)
	return l
}
