package making

import (
	"math"
	"slices"
	"strings"
	"testing"
)

// priced is a small loop with prices in two currencies.
const priced = `dryfit: 1
name: priced
vessels:
  tank: {role: fish-tank, form: {box: {length: 2 m, width: 2 m, height: 1 m, wall: 6 mm}}, stands_at: 1 m, price: 200.00 NZD}
  settler:
    role: radial-flow-settler
    form: {cylinder: {inside: 463 mm, height: 735 mm, wall: 3.4 mm}}
    stands_at: 500 mm
    history: {made_for: food, held: olives in brine}
    lid: {kind: solid}
    well: {inside: 129.2 mm, outside: 140 mm, lip_at: 305 mm, fixings: {grade: A4, count: 4}}
    have: true
  sump: {role: sump, form: {box: {length: 1 m, width: 1 m, height: 400 mm}}, stands_at: 0 mm, media: {kind: gravel, volume: 100 L}}
pipes:
  big: {standard: ASTM D1785, class: Sch 40, size: 2 in, price: 31.00 NZD, stock_length: 3 m, have: 1 m}
  small: {standard: ASTM D1785, class: Sch 40, size: 1 in}
pumps: {main: {shut_off: 3 m, open_flow: 2000 L/h, price: 80.00 AUD}}
lines:
  run:
    from: tank
    to: settler.well
    pipe: big
    joints: cemented
    pieces:
      - through: {wall_of: tank, at: 500 mm, seal: {hole: 76.2 mm}, projects: 50 mm}
      - across: 1500 mm
      - bend: 45 deg
      - slope: {angle: 45 deg, fall: fit}
      - bend: 45 deg
      - through: {wall_of: settler, at: 450 mm, seal: {hole: 76.2 mm}}
      - outlet: {at: 450 mm, facing: level}
  riser:
    from: sump
    to: tank
    pipe: small
    joints: cemented
    pieces: [{intake: {at: 50 mm}}, {pump: main}, {rise: fit}, {bend: 90 deg}, {across: 7 m}, {bend: 90 deg}, {fall: 100 mm}, {outlet: {at: 1 m, facing: down}}]
prices:
  - {part: bend, price: 9.00 NZD}
  - {part: bend, pipe: big, angle: 45 deg, name: "45 degree elbow, white", price: 21.00 NZD, pack: 10, have: 1}
  - {part: seal, price: 4.50 NZD}
  - {part: bulkhead, price: 13.00 NZD}
  - {part: pipe, pipe: small, price: 12.00 NZD, for_length: 6 m}
  - {part: cement, price: 9.50 NZD, for_volume: 250 mL}
  - {part: media, kind: gravel, price: 6.00 NZD, for_volume: 30 L}
  - {part: fastener, price: 8.00 NZD, pack: 25}
  - {part: lid, of: settler, price: 12.00 NZD}
`

// What each part costs, worked by hand from the prices above.
//
// Source: counted by hand. Packs and tins are sold whole; what is there costs nothing; the price that says most of a part goes first.
func TestPartsAndTheirPrices(t *testing.T) {
	b := listed(t, priced)
	for _, c := range []struct {
		use, name string
		count     float64
		got       Got
		sum       float64 // NaN for no price
		currency  string
	}{
		{"tank", "fish tank", 1, Buy, 200, "NZD"},
		{"settler", "radial flow settler", 1, Have, 0, ""},
		{"settler", "lid", 1, Buy, 12, "NZD"},
		{"settler", "inlet well", 1, Make, math.NaN(), ""},
		{"settler", "fasteners", 4, Buy, 8, "NZD"}, // one pack of 25
		{"sump", "sump", 1, Buy, math.NaN(), ""},
		{"sump", "media", 4, Buy, 24, "NZD"}, // four sacks of 30 L
		{"run", "rubber wall seal", 2, Buy, 9, "NZD"},
		{"run", "bend", 2, Buy, 21, "NZD"}, // one is there, so one pack
		{"riser", "bend", 2, Buy, 18, "NZD"},
		{"all lines", "solvent cement", 1, Buy, 9.5, "NZD"},
		{"all lines", "primer", 1, Buy, math.NaN(), ""},
		{"all lines", "coupling", 1, Buy, math.NaN(), ""}, // 7 m out of lengths of 6 m
		{"main", "pump", 1, Buy, 80, "AUD"},
	} {
		i := slices.IndexFunc(b.Parts, func(p Part) bool { return p.Use == c.use && p.Name == c.name })
		if i < 0 {
			t.Errorf("%s of %s is not on the list", c.name, c.use)
			continue
		}
		p := b.Parts[i]
		if p.Count != c.count || p.Got != c.got || p.Sum.Known == math.IsNaN(c.sum) || p.Sum.Known && math.Abs(p.Sum.Amount-c.sum) > 1e-9 || p.Sum.Currency != c.currency {
			t.Errorf("%s of %s: %v, %s, %+v", c.name, c.use, p.Count, p.Got, p.Sum)
		}
	}
	elbow := b.Parts[slices.IndexFunc(b.Parts, func(p Part) bool { return p.Use == "run" && p.Name == "bend" })]
	if !strings.HasSuffix(elbow.Spec, "45 degree elbow, white") {
		t.Errorf("the elbow is %q", elbow.Spec)
	}
	seal := b.Parts[slices.IndexFunc(b.Parts, func(p Part) bool { return p.Name == "rubber wall seal" })]
	if len(seal.Alternatives) != 1 || !strings.Contains(seal.Alternatives[0], "13.00 NZD") {
		t.Errorf("in place of the seal: %v", seal.Alternatives)
	}
	used := listed(t, strings.Replace(priced, "    have: true\n", "", 1)).Parts
	if drum := used[slices.IndexFunc(used, func(p Part) bool { return p.Name == "radial flow settler" })]; drum.Got != Find || len(drum.Alternatives) != 1 {
		t.Errorf("a drum that held olives: %+v", drum)
	}
}

// Pipe is bought in stock lengths: what is there goes first.
func TestPipeToBuy(t *testing.T) {
	b := listed(t, priced)
	big, small := 0, 0
	for _, bar := range b.Bars {
		switch {
		case bar.Pipe == "small":
			small++
		case !bar.Have:
			big++
		case bar.Stock != 1:
			t.Errorf("the pipe that is there is %v m long", bar.Stock)
		}
	}
	if big != 1 || small != 2 {
		t.Errorf("%d lengths of 3 m and %d of 6 m", big, small)
	}
	for _, p := range b.Parts {
		if p.Name == "pipe" && p.Got == Buy {
			want := map[float64]float64{3: 31, 6: 24}[p.Length]
			if p.Sum.Amount != want {
				t.Errorf("%v lengths of %v m cost %v, not %v", p.Count, p.Length, p.Sum.Amount, want)
			}
		}
	}
}

// Totals by currency, by step and by use are sums of the same parts; currencies are never added to each other.
func TestTotals(t *testing.T) {
	b := listed(t, priced)
	if len(b.Money) != 2 || b.Money[0].Currency != "NZD" || b.Money[1] != (Money{80, "AUD", true}) {
		t.Fatalf("the totals are %v", b.Money)
	}
	about(t, "total", b.Money[0].Amount, 200+12+8+24+9+21+18+9.5+31+24, 1e-9)
	for name, list := range map[string][]Subtotal{"steps": b.Steps, "uses": b.Uses} {
		sum, unpriced := 0.0, 0
		for _, s := range list {
			unpriced += s.Unpriced
			for _, m := range s.Sums {
				if m.Currency == "NZD" {
					sum += m.Amount
				}
			}
		}
		about(t, name, sum, b.Money[0].Amount, 1e-9)
		if unpriced != b.Unpriced {
			t.Errorf("%d without a price by %s, %d in all", unpriced, name, b.Unpriced)
		}
	}
	at := -1
	for _, p := range b.Parts {
		i := slices.Index(BuildSteps, p.Step)
		if i < at {
			t.Errorf("%s of %s stands after a later step", p.Name, p.Use)
		}
		at = i
	}
	if silent := listed(t, priced[:strings.Index(priced, "prices:")]); silent.Unpriced <= b.Unpriced {
		t.Error("without prices no more parts lack one")
	}
}

// A seal and a bulkhead fitting for the same pipe: holes, and how far the wall falls away.
//
// Source: holes of bulkhead fittings, two trade guides (2 in pipe: 3 in); Machinery's Handbook, height of a segment of a circle,
// worked by hand for a drum of 580 mm: 2.51 mm across 76.2 mm.
func TestSealAgainstBulkhead(t *testing.T) {
	pieces := "{through: {wall_of: tank, at: 500 mm, round: 0 deg, seal: {hole: 76.2 mm}}}, {across: 500 mm}, {bend: 90 deg}, {fall: fit}, {bend: 90 deg}, {across: 200 mm}, {through: {wall_of: sump, at: 400 mm, seal: {hole: 76.2 mm, lip: 76.2 mm}}}, {across: 100 mm}, {outlet: {at: 400 mm, facing: level}}"
	b := listed(t, shed("{standard: ASTM D1785, class: Sch 40, size: 2 in}", pieces, "prices: [{part: seal, price: 4.50 NZD}, {part: bulkhead, price: 13.00 NZD, pack: 2}]\n"))
	flat, round := b.Choices[0], b.Choices[1]
	for _, w := range append(flat.Ways, round.Ways...) {
		about(t, w.Name+", hole, mm", 1000*w.Hole.X, 76.2, 0.05)
		if !w.Known || w.Needs == "" || w.Risk == "" || w.Chosen != (w.Name == "seal") {
			t.Errorf("%+v", w)
		}
	}
	about(t, "flat wall", flat.Ways[1].Gap.X, 0, 1e-12)
	about(t, "round wall, mm", 1000*round.Ways[1].Gap.X, 2.51, 0.01)
	about(t, "seal", flat.Ways[0].Cost.Amount, 4.5, 1e-12)
	about(t, "bulkhead", flat.Ways[1].Cost.Amount, 6.5, 1e-12)

	hole := b.Holes[0]
	if hole.Tool != "3 in (76.2 mm)" || hole.In != InWall || !hole.Measured || hole.Fit != "seal" {
		t.Errorf("%+v", hole)
	}
	about(t, "what the saw leaves at the most, mm", 1000*hole.Leaves.High, 77.7, 1e-6)            // up to 1.5 mm more, from memory
	about(t, "lip to the rounding at the floor, mm", 1000*hole.ToEdge.X, 500-(76.2+24)/2-30, 0.1) // a lip of 12 mm, assumed
	if drum := b.Holes[1]; drum.ToEdge.Known || drum.ToEdge.Why == "" {
		t.Error("a drum that does not say where its ribs are has a known edge")
	}
}
