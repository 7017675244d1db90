package fishload

import (
	"math"
	"strings"
	"testing"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

// pond is a small loop: a tank of two kinds of fish, a filter and a raft.
const pond = `
dryfit: 1
name: fish for tests
status: for-review
site: {altitude: 0 m, unattended: 48 h, power_cut: 2 h, response: 30 min}
water: {temperature: {low: 15 degC, usual: 20 degC, high: 25 degC}, pH: {low: 6.5, usual: 7, high: 7.5}, alkalinity: 70 mg/L CaCO3, chloride: 20 mg/L, salt_treatment: 1 g/L, exchange: 40 L/d}
working_flow: {least: 900 L/h, most: 1000 L/h}
pipes: {waste-40: {standard: AS/NZS 1477, class: PN12, size: DN40}}
vessels:
  tank: {role: fish-tank, form: {cylinder: {inside: 1300 mm, height: 850 mm}}, stands_at: 0 mm}
  filter:
    role: biofilter
    form: {cylinder: {inside: 500 mm, height: 800 mm}}
    stands_at: 0 mm
    works: moving-bed
    media: {kind: carriers, volume: 50 L, surface: 500 m2/m3}
  raft: {role: raft-bed, form: {box: {length: 2 m, width: 1 m, height: 400 mm}}, stands_at: 0 mm, crop: {kind: leafy, area: 1.5 m2}, raft: {area: 1.8 m2}}
fish:
  - {in: tank, species: silver-perch, mass: 8 kg, feed: [{at: 15 degC, amount: 40 g/d}, {at: 25 degC, amount: 100 g/d}], protein: 40 %, stops_below: 12 degC}
  - {in: tank, species: rainbow-trout, mass: 2 kg, feed: 20 g/d, protein: 45 %}
lines:
  out:
    from: tank
    to: filter
    pipe: waste-40
    pieces:
      - through: {wall_of: tank, at: 400 mm}
      - across: 300 mm
      - through: {wall_of: filter, at: 400 mm}
      - across: 100 mm
      - outlet: {at: 400 mm, facing: level}
air:
  pump: {flow: 30 L/min, against: 9 kPa, stands_at: 1 m}
  stones: [{in: tank, count: 2, flow: 6 L/min, kind: medium}]
top_up: {dechlorinated: false}
`

// surveyed is the ledger of the pond with texts replaced in pairs: a cubic metre in its tank,
// 3 m3 in all, 1 m3/h through everything, water 750 mm deep, and 700 when the pump stands.
func surveyed(t *testing.T, pairs ...string) *working.Ledger {
	t.Helper()
	text := pond
	for i := 0; i+1 < len(pairs); i += 2 {
		if !strings.Contains(text, pairs[i]) {
			t.Fatalf("%q stands nowhere in the pond", pairs[i])
		}
		text = strings.Replace(text, pairs[i], pairs[i+1], 1)
	}
	s, problems := system.Read("pond.yaml", []byte(text))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	l := working.NewLedger()
	enter := func(a working.Address, kind quantity.Kind, x float64) {
		l.Take(a, working.Definition{Name: a.Name, Kind: kind}, "", working.Fixed(a.Name, kind, x, ""))
	}
	for _, w := range working.Waters {
		for _, vessel := range []string{"tank", "filter", "raft"} {
			enter(least(vessel, "inflow", w), quantity.Flow, 1.0/3600)
			enter(least(vessel, "water_level", w), quantity.Length, 0.75)
			enter(least(vessel, "water_surface", w), quantity.Area, 2)
		}
		enter(least("tank", "water_volume", w), quantity.Volume, 1)
		enter(least("filter", "water_volume", w), quantity.Volume, 0.125)
		enter(least("raft", "water_volume", w), quantity.Volume, 0.6)
		enter(least(theWater, "loop_volume", w), quantity.Volume, 3)
		enter(working.Address{Subject: "tank", Name: "water_level", Case: working.RunWorst, Water: w}, quantity.Length, 0.8)
	}
	enter(working.Address{Subject: "tank", Name: "tank_kept", Case: "stopped", Fault: stands}, quantity.Fraction, 0.9)
	enter(working.Address{Subject: "tank", Name: "static_level", Case: "stopped", Fault: stands}, quantity.Length, 0.7)
	enter(working.Address{Subject: theWater, Name: "water_lost", Case: "unattended"}, quantity.Flow, 20e-3/86400)
	Survey(s, tables.Embedded(), l)
	Renewal(s, tables.Embedded(), l)
	return l
}

const gramADay = 1e-3 / 86400

// worked checks numbers of a ledger, by addresses, against what was worked by hand.
func worked(t *testing.T, l *working.Ledger, wants map[working.Address]float64) {
	t.Helper()
	for a, want := range wants {
		n := l.Find(a)
		if n == nil {
			t.Errorf("there is no %v", a)
			continue
		}
		if v, ok := n.Value(); !ok || math.Abs(v.X-want) > 2e-3*math.Abs(want)+1e-12 {
			t.Errorf("%v is %v and not %v, %v", a, v.X, want, n.Gaps())
		}
	}
}

// By hand: 70 + 20 g of feed at 20 degC; N 0.092 x (70 x 0.4 + 20 x 0.45) = 3.404 g/d.
func TestADayOfThePond(t *testing.T) {
	l := surveyed(t)
	worked(t, l, map[working.Address]float64{
		day("fish/0", "feed_rate", "low"):             40 * gramADay,
		day("fish/0", "feed_rate", "usual"):           70 * gramADay,
		day("fish/0", "ration", "usual"):              70.0 / 8000,
		day("fish/1", "feed_rate", "high"):            20 * gramADay,
		day(theWater, "feed_a_day", "usual"):          90 * gramADay,
		day(theWater, "ammonia_made", "usual"):        3.404 * gramADay,
		day(theWater, "alkalinity_used", "usual"):     3.404 * 7.14 * gramADay,
		day(theWater, "alkalinity_fall", "usual"):     3.404 * 7.14e-3 / 3,
		day(theWater, "alkalinity_lasts", "usual"):    50e-3 / (3.404 * 7.14e-3 / 3) * 86400,
		day(theWater, "solids_made", "usual"):         22.5 * gramADay,
		always("tank", "fish_mass"):                   10,
		least("tank", "stocking_density", "usual"):    10,
		least("tank", "density_share", "usual"):       8.0/50 + 2.0/40,
		always("fish/0", "cold_room"):                 10,
		always("fish/0", "warm_room"):                 7,
		always("fish/0", "comfort_room"):              -3,
		always("fish/1", "warm_room"):                 -5,
		always("filter", "media_area"):                25,
		least("filter", "media_fill", "usual"):        0.4,
		always("raft", "bed_area"):                    1.5,
		always(theWater, "beds_area"):                 1.5,
		day(theWater, "bed_feed", "usual"):            60 * gramADay,
		day(theWater, "bed_feed_share", "usual"):      90.0 / 75,
		day(theWater, "bed_feed_enough", "usual"):     90.0 / 30,
		day(theWater, "nitrate_rise", "usual"):        3.404e-3 * (1 - 75.0/90) / 3,
		day(theWater, "nitrate_level", "usual"):       3.404e-3 * (1 - 75.0/90) / 40e-3,
		least("raft", "bed_time", "usual"):            0.6 * 3600,
		least("raft", "bed_depth", "usual"):           0.75,
		always(theWater, "water_used"):                60e-3 / 86400,
		always(theWater, "water_used_share"):          0.02,
		always(theWater, "salt_chloride"):             0.02 + 0.607,
		always(theWater, "ph_over_band"):              0, // both kinds of fish from 6.5
		always(theWater, "ph_under_band"):             0, // plants up to 7.5
		always(theAir, "air_shared"):                  0.4,
		always(theAir, "air_pump_over_water"):         0.15,
		always(theAir, "air_pressure_share"):          (1000*9.80665*0.8 + 2400) / 9000,
		always(theWater, "ammonium_chloride"):         6e-3 * 53.49 / 14.007,
		day("filter", "nitrifies_by_surface", "high"): 25 * 0.54 * 0.39 * gramADay,
		day("filter", "nitrifies_by_bed", "high"):     0.05 * 500 * 0.39 * gramADay,
		day("filter", "nitrifies", "high"):            25 * 0.54 * 0.39 * gramADay,
		day("raft", "nitrifies", "high"):              1.8 * 0.56 * gramADay,
		day(theWater, "nitrification", "high"):        (25*0.54*0.39 + 1.8*0.56) * gramADay,
		// 25 degC: trout 2 kg x 266 x 2, silver perch 8 kg x 200, mg/kg/h; more than half the feed
		day("tank", "oxygen_need", "high"):      (2*532 + 8*200) * 1e-6 / 3600,
		day("tank", "oxygen_need_peak", "high"): 1.5 * (2*532 + 8*200) * 1e-6 / 3600,
		day(theWater, "oxygen_full", "high"):    8.263e-3,
		least("tank", "oxygen_by_flow", "high"): (0.85*8.263e-3 - 6e-3) / 3600, // the trout's 6 mg/L, not the perch's 5
		// 12 L/min 0.75 m deep at 2 %/m: 16.62 x 12 x 0.015 = 2.992 g/h; x 0.9 x 1.024^5/9.09
		least("tank", "oxygen_by_air", "high"): 2.992e-3 / 3600 * 0.9 * math.Pow(1.024, 5) / 9.09 * (8.263 - 6),
	})
}

// The ammonia of a tank: what the bacteria leave, and what its own fish add on the way.
func TestAmmoniaOfThePond(t *testing.T) {
	l := surveyed(t)
	made, turned := (0.092*(100*0.4+20*0.45))*gramADay, (25*0.54*0.39+1.8*0.56)*gramADay
	level := 1e-3*made/turned + made*3600
	worked(t, l, map[working.Address]float64{
		least("tank", "ammonia_level", "high"):      level,
		least("tank", "ammonia_share", "high"):      level / 0.5e-3,  // trout take half a milligram
		least("tank", "poisonous_ammonia", "high"):  level * 0.01762, // pH 7.5, 25 degC, Emerson et al. 1975
		least("tank", "ammonia_flow_share", "high"): made / 0.5e-3 * 3600,
	})
	kept := surveyed(t, "exchange: 40 L/d", "exchange: 40 L/d, ammonia: 0.4 mg/L")
	worked(t, kept, map[working.Address]float64{least("tank", "ammonia_share", "high"): level / 0.4e-3})
}

// When the mains fail the fish have what the tank keeps: 0.9 m3 less 10 kg, down to the trout's 5 mg/L.
func TestThePondWithoutPower(t *testing.T) {
	used := (2*532 + 8*200) * 1e-6 / 3600
	transfer := 2.992e-3 / 3600 * 0.9 * math.Pow(1.024, 5) / 9.09e-3
	start := (0.85*8.263e-3/3600 + transfer*8.263e-3 - used) / (1.0/3600 + transfer)
	alone := (start - 5e-3) * 0.89 / used
	a := outage("tank", "time_to_danger", PowerCut, "high")
	with := outage("tank", "time_with_backup", PowerCut, "high")
	worked(t, surveyed(t), map[working.Address]float64{a: alone, with: alone, outage("tank", "cut_share", PowerCut, "high"): 7200 / alone,
		outage("tank", "time_at_60", PowerCut, "high"): (start - 5e-3) * (10.0/60 - 0.01) / used})

	blower := func(more string) *working.Ledger {
		return surveyed(t, "top_up:", "backup_air: {lasts: 6 h, flow: 60 L/min"+more+"}\ntop_up:")
	}
	for name, more := range map[string]string{
		"it feeds another vessel":                 ", feeds: [filter], starts: by-itself",
		"somebody is there half an hour too late": ", feeds: [tank], starts: by-hand",
	} {
		t.Run(name, func(t *testing.T) { worked(t, blower(more), map[working.Address]float64{with: alone}) })
	}
	longer, _ := blower(", feeds: [tank], starts: by-itself").Find(with).Value()
	if want, _ := WithBackup(0, 6*3600, start, 5e-3, 0.9, 10, transferOf(60, 0.7), 8.263e-3, used); math.Abs(longer.X/want-1) > 2e-3 || longer.X <= alone {
		t.Errorf("with the backup it is %v s and not %v", longer.X, want)
	}
	shared, _ := blower(", feeds: [tank, filter], starts: by-itself").Find(with).Value()
	if shared.X >= longer.X {
		t.Errorf("half of its air lasts as long: %v s", shared.X)
	}
	if l := blower(""); len(l.Find(with).Gaps()) == 0 {
		t.Error("a backup that feeds nobody knows what has a time")
	}
	if l := blower(", feeds: [tank]"); len(l.Find(with).Gaps()) == 0 {
		t.Error("a backup that starts nobody knows how has a time")
	}
}

// transferOf is the water that so many litres of air a minute fill at 25 degC from medium stones, m3/s.
func transferOf(litres, depth float64) float64 {
	return 0.277 * litres / 60000 * 0.02 * depth * 0.9 * math.Pow(1.024, 5) / 9.09e-3
}

// What is not known is a gap that names its place, and never a number.
func TestWhatThePondDoesNotSay(t *testing.T) {
	for name, c := range map[string]struct {
		old, put string
		at       working.Address
		gap      string // pointer of what is missing
	}{
		"protein":              {", protein: 40 %", "", day(theWater, "ammonia_made", "usual"), "/fish/0/protein"},
		"mass":                 {"mass: 8 kg, ", "", always("tank", "fish_mass"), "/fish/0/mass"},
		"species":              {"species: silver-perch, ", "", always("fish/0", "cold_room"), "/fish/0/species"},
		"feed":                 {", feed: 20 g/d", "", day(theWater, "feed_a_day", "usual"), "/fish/1/feed"},
		"kind of the bubbles":  {", kind: medium", "", least("tank", "oxygen_share", "usual"), "/air/stones/0/kind"},
		"flow of the stones":   {", flow: 6 L/min", "", least("tank", "oxygen_by_air", "usual"), "/air/stones/0/flow"},
		"media":                {"kind: carriers, ", "", day(theWater, "nitrification", "usual"), "/vessels/filter/media/kind"},
		"volume of the media":  {"volume: 50 L, ", "", day("filter", "nitrifies", "usual"), "/vessels/filter/media/volume"},
		"crop":                 {"crop: {kind: leafy, area: 1.5 m2}, ", "", day(theWater, "bed_feed_share", "usual"), "/vessels/raft/crop"},
		"pH":                   {"usual: 7, ", "", day(theWater, "nitrification", "usual"), "/water/pH/usual"},
		"height above the sea": {"altitude: 0 m, ", "", day(theWater, "oxygen_full", "usual"), "/site/altitude"},
		"chlorine":             {"top_up: {dechlorinated: false}", "top_up: {from: mains}", always(theWater, "topup_chlorine"), "/top_up/dechlorinated"},
		"chlorine of the main": {"top_up: {dechlorinated: false}", "top_up: {dechlorinated: false}", always(theWater, "topup_chlorine"), "/water/source/chlorine"},
		"length of a cut":      {", power_cut: 2 h", "", outage("tank", "cut_share", PowerCut, "usual"), "/site/power_cut"},
	} {
		t.Run(name, func(t *testing.T) {
			n := surveyed(t, c.old, c.put).Find(c.at)
			if n == nil {
				t.Fatalf("there is no %v", c.at)
			}
			for _, gap := range n.Gaps() {
				if gap.Pointer == c.gap {
					return
				}
			}
			v, _ := n.Value()
			t.Errorf("%v is %v with gaps %v", c.at, v.X, n.Gaps())
		})
	}
}

// What has no ground for a number has none: fish that no table has, and a loop without fish.
func TestOtherPonds(t *testing.T) {
	l := surveyed(t, "species: silver-perch", "species: moon-fish")
	if gaps := l.Find(always("fish/0", "cold_room")).Gaps(); len(gaps) == 0 || !strings.Contains(gaps[0].Why, "moon-fish") && gaps[0].Pointer == "" {
		t.Errorf("of moon-fish it is said %v", gaps)
	}
	known := surveyed(t, "species: silver-perch", "species: moon-fish, coldest: 4 degC, warmest: 30 degC")
	worked(t, known, map[working.Address]float64{always("fish/0", "cold_room"): 11, always("fish/0", "warm_room"): 5})

	dry := surveyed(t, "top_up: {dechlorinated: false}", "top_up: {dechlorinated: true}")
	worked(t, dry, map[working.Address]float64{always(theWater, "topup_chlorine"): 0})
	tap := surveyed(t, "exchange: 40 L/d", "exchange: 40 L/d, source: {kind: mains, chlorine: 0.5 mg/L}")
	worked(t, tap, map[working.Address]float64{always(theWater, "topup_chlorine"): 0.5e-3 * 0.06 / 3})

	cold := surveyed(t, "low: 15 degC", "low: 10 degC")
	worked(t, cold, map[working.Address]float64{day("fish/0", "feed_rate", "low"): 0, day("fish/1", "feed_rate", "low"): 20 * gramADay})

	bare := surveyed(t, "    media: {kind: carriers, volume: 50 L, surface: 500 m2/m3}\n", "", ", raft: {area: 1.8 m2}", "")
	worked(t, bare, map[working.Address]float64{day("raft", "nitrifies", "high"): 2 * 0.56 * gramADay}) // the water surface
	if len(bare.Find(day(theWater, "nitrification", "usual")).Gaps()) == 0 {
		t.Error("a filter of which nothing is said turns nothing, as if it were empty")
	}
}
