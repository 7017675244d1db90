package settling

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// branched is a loop in which the water of one tank divides: to two settlers, and past them to a bed. What leaves
// the first settler goes through a filter of fines.
const branched = `
dryfit: 1
name: two settlers
status: concept
water: {temperature: {low: 10 degC, usual: 20 degC, high: 30 degC}}
working_flow: {most: 100 L/h}
vessels:
  tank: {role: fish-tank}
  a:
    role: swirl-settler
    form: {cone_bottom: {inside: 500 mm, height: 700 mm, cone_height: 250 mm, cone_outlet: 50 mm, inside_top: 520 mm}}
    stands_at: 0 mm
    weir: {notch: {crest_at: 600 mm, width: 100 mm}}
    sludge: {full_at: 250 mm, dry_matter: 2 %}
    cleaning: {every: 2 d, how: drain, rinse: 3 L}
  b:
    role: cone-settler
    form: {box: {length: 600 mm, width: 400 mm, height: 700 mm, length_top: 620 mm, width_top: 420 mm}}
    stands_at: 0 mm
    weir: {straight: {crest_at: 600 mm, length: 400 mm}}
    sludge: {full_at: 100 mm, volume: 20 L}
    cleaning: {every: 1 d}
  filter: {role: fines-filter, media: {kind: matting}}
  bed: {role: media-bed}
  sump: {role: sump}
  ripener: {role: mineralisation-tank, form: {cylinder: {inside: 600 mm, height: 800 mm}}, water: {running: 500 mm}}
pumps:
  main: {shut_off: 2 m, open_flow: 1000 L/h}
  lifter: {shut_off: 5 m, open_flow: 1000 L/h, self_priming: true}
lines:
  to-a: {from: tank, to: a, pieces: [{tee: {id: fork, way: through, third: line}}, {outlet: {at: 500 mm}}]}
  to-b: {from: to-a.fork, to: b, pieces: [{across: 1 m}, {outlet: {at: 500 mm}}]}
  past: {from: tank, to: bed, pieces: [{across: 1 m}]}
  a-filter: {from: a, to: filter, pieces: [{across: 1 m}]}
  filter-bed: {from: filter, to: bed, pieces: [{across: 1 m}]}
  b-bed: {from: b, to: bed, pieces: [{across: 1 m}]}
  bed-sump: {from: bed, to: sump, pieces: [{across: 1 m}]}
  riser: {from: sump, to: tank, pieces: [{pump: main}, {across: 1 m}]}
  a-waste: {duty: waste, from: a, to: bucket, pieces: [{through: {floor_of: a}}, {fall: fit}, {outlet: {at: -300 mm}}]}
  b-waste: {duty: waste, from: b, to: ripener, pieces: [{intake: {at: 20 mm}}, {rise: 2500 mm}, {pump: lifter}, {hose: {length: 2 m, inside: 25 mm}}, {outlet: {at: 700 mm}}]}
`

// passed surveys the loop with flows of 8, 3 and 2 parts out of the tank, 240 g of dry solids made in a day.
func passed(t *testing.T, pairs ...string) *working.Ledger {
	t.Helper()
	text := branched
	for i := 0; i < len(pairs); i += 2 {
		if !strings.Contains(text, pairs[i]) {
			t.Fatalf("%q stands nowhere in the loop", pairs[i])
		}
		text = strings.Replace(text, pairs[i], pairs[i+1], 1)
	}
	s, problems := system.Read("branched.yaml", []byte(text))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	l := working.NewLedger()
	enter := func(a working.Address, kind quantity.Kind, x float64) {
		l.Take(a, working.Definition{Name: a.Name, Kind: kind}, "", working.Fixed(a.Name, kind, x, ""))
	}
	l.Put("stocked_tanks", "tank")
	const part = 1e-4
	for i, w := range working.Waters {
		for line, q := range map[string]float64{"to-a": 8, "to-b": 3, "past": 2, "a-filter": 5, "filter-bed": 5, "b-bed": 3, "bed-sump": 10, "riser": 10} {
			enter(working.Address{Subject: line, Name: "flow", Case: working.RunClean, Water: w}, quantity.Flow, q*part)
		}
		enter(working.Address{Subject: "to-a", Name: "flow_at_end", Case: working.RunClean, Water: w}, quantity.Flow, 5*part)
		enter(working.Address{Subject: "water", Name: "kinematic_viscosity", Case: working.Always, Water: w}, quantity.Viscosity, viscosity(10+10*float64(i)))
		enter(working.Address{Subject: "water", Name: "solids_made", Case: working.Always, Water: w}, quantity.FeedRate, 0.240/86400)
		enter(working.Address{Subject: "water", Name: "loop_volume", Case: working.RunClean, Water: w}, quantity.Volume, 1)
		for v, q := range map[string]float64{"a": 5, "b": 3} {
			enter(working.Address{Subject: v, Name: "inflow", Case: working.RunClean, Water: w}, quantity.Flow, q*part)
			enter(working.Address{Subject: v, Name: "water_volume", Case: working.RunClean, Water: w}, quantity.Volume, 0.100)
			enter(working.Address{Subject: v, Name: "water_level", Case: working.RunClean, Water: w}, quantity.Length, 0.600)
		}
	}
	enter(working.Address{Subject: "bed", Name: "bed_area", Case: working.Always}, quantity.Area, 2)
	for name, x := range map[string]float64{"drain_flow": 1e-3, "drain_head": 0.5} {
		enter(working.Address{Subject: "a-waste", Name: name, Case: "cleaning", Water: "usual"}, quantity.Flow, x)
	}
	Survey(s, l)
	return l
}

// The solids divide with the water, and what one settler and one filter keep adds up with what goes on to what was made.
func TestSolidsDivideWithTheWater(t *testing.T) {
	l := passed(t)
	near(t, "share that reaches a", value(t, l, "a", "solids_reached"), 0.5, 1e-12)
	near(t, "share that reaches b", value(t, l, "b", "solids_reached"), 0.3, 1e-12)
	ra, rb := value(t, l, "a", "capture_all"), value(t, l, "b", "capture_all")
	const made = 0.240 / 86400
	near(t, "caught in a", value(t, l, "a", "solids_caught"), made*0.5*ra, 1e-15)
	on := made * (1 - 0.5*ra - 0.3*rb - 0.5*(1-ra)*0.5)
	near(t, "passed on", value(t, l, "water", "solids_passed_on"), on, 1e-15)
	near(t, "on the bed", value(t, l, "water", "solids_on_beds"), on/2, 1e-15)
	for _, v := range []string{"a", "b"} {
		low := l.Find(working.Address{Subject: v, Name: "capture_settleable", Case: working.RunClean, Water: "low"})
		x, _ := low.Value()
		if high := value(t, l, v, "capture_settleable"); x.X >= high || !x.Spread() {
			t.Errorf("%s catches %v in cold water and %v in warm", v, x, high)
		}
	}
}

// Fish or feed of which nothing is known leave a gap, and no settler is credited with them.
func TestSolidsWithoutFishAreNotKnown(t *testing.T) {
	s, problems := system.Read("branched.yaml", []byte(branched))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	l := working.NewLedger()
	Survey(s, l)
	for _, w := range working.Waters {
		n := l.Find(working.Address{Subject: "a", Name: "store_share", Case: working.RunClean, Water: w})
		if n == nil || len(n.Gaps()) == 0 {
			t.Errorf("without fish the store of a is %v", n)
		}
	}
}

func TestSludgeAndItsRoom(t *testing.T) {
	l := passed(t)
	caught := value(t, l, "a", "solids_caught")
	near(t, "sludge of a day", value(t, l, "a", "sludge_a_day"), caught/20, 1e-15)
	cone, _ := ConeBottomVolume(0.25, 0.5, 0.25, 0.05)
	near(t, "store of a", value(t, l, "a", "sludge_store"), cone, 1e-12)
	near(t, "store of b", value(t, l, "b", "sludge_store"), 0.020, 0)
	near(t, "share of the store", value(t, l, "a", "store_share"), 2*86400*caught/20/cone, 1e-9)
	near(t, "days", value(t, l, "a", "sludge_days")*value(t, l, "a", "store_share"), 2*86400, 1e-6)
	q := value(t, l, "a", "sludge_a_day") + value(t, l, "b", "sludge_a_day")
	near(t, "in the ripener", value(t, l, "ripener", "mineralisation_time"), math.Pi/4*0.36*0.5/q, 1)
	if got := fmt.Sprint(l.Sets["settlers"], l.Sets["opened_drains"], l.Sets["sludge_pumps"], l.Sets["mineralisation_tanks"]); got != "[a b] [a-waste] [b-waste/2] [ripener]" {
		t.Errorf("the sets are %s", got)
	}
}

// A cone that is drained gives what stands in its room for sludge; cleaned in another way it gives all, unless a line draws it down.
func TestWaterOfACleaning(t *testing.T) {
	l := passed(t)
	cone, _ := ConeBottomVolume(0.25, 0.5, 0.25, 0.05)
	near(t, "of a cone", value(t, l, "a", "water_a_clean"), cone+0.003, 1e-12)
	near(t, "whole", value(t, l, "a", "water_a_clean_whole"), 0.103, 1e-12)
	near(t, "of a week", value(t, l, "a", "clean_share_week"), (cone+0.003)*3.5, 1e-9)
	near(t, "buckets", value(t, l, "a", "bucket_loads"), math.Ceil((cone+0.003)/0.010), 0)
	stirred := passed(t, "how: drain", "how: stir-and-drain")
	near(t, "stirred", value(t, stirred, "a", "water_a_clean"), 0.103, 1e-12)
	drawn := passed(t, "  a-waste:", "  a-down: {duty: draw-down, from: a, to: sump, pieces: [{intake: {at: 300 mm}}, {across: 1 m}]}\n  a-waste:", "how: drain", "how: stir-and-drain")
	near(t, "drawn down", value(t, drawn, "a", "water_a_clean"), cone+math.Pi/4*0.25*0.05+0.003, 2e-4)
	lost := passed(t, "  a-waste:", "  a-down: {duty: draw-down, from: a, to: outside, pieces: [{intake: {at: 300 mm}}, {across: 1 m}]}\n  a-waste:", "how: drain", "how: stir-and-drain")
	near(t, "drawn off", value(t, lost, "a", "water_a_clean"), 0.103, 1e-12)
	n := l.Find(working.Address{Subject: "a-waste", Name: "drain_time", Case: "cleaning", Water: "usual"})
	v, _ := n.Value()
	drop := cone / (math.Pi / 4 * 0.25)
	near(t, "time to run out", v.X, 2*cone/(1e-3*(1+math.Sqrt((0.5-drop)/0.5))), 1e-9)
}

func TestEdgesOfSettlers(t *testing.T) {
	l := passed(t)
	limit := 186.0 / 86400
	near(t, "a notch", value(t, l, "a", "weir_loading_share"), 5e-4/0.1/limit, 1e-9)
	near(t, "an edge", value(t, l, "b", "weir_loading_share"), 3e-4/0.4/limit, 1e-9)
	for put, long := range map[string]float64{
		"notch: {crest_at: 600 mm, angle: 90 deg, depth: 50 mm, count: 2}": 0.2,
		"ring: {crest_at: 600 mm, across: 400 mm}":                         math.Pi * 0.4,
		"rim: {crest_at: 700 mm}":                                          math.Pi * 0.5,
	} {
		near(t, put, value(t, passed(t, "notch: {crest_at: 600 mm, width: 100 mm}", put), "a", "weir_loading_share"), 5e-4/long/limit, 1e-9)
	}
	side := passed(t, "notch: {crest_at: 600 mm, width: 100 mm}", "side_pipe: {}")
	if word, _ := fact(side, "a", "weir_edge"); word != "no" || side.Find(working.Address{Subject: "a", Name: "weir_loading_share", Case: working.Always}) != nil {
		t.Errorf("a pipe through the side is an edge: %q", word)
	}
}

func TestPumpsThatSuckSludge(t *testing.T) {
	near(t, "lift", value(t, passed(t), "b-waste/2", "suction_lift"), 2.5, 1e-9)
	for put, want := range map[string]string{"self_priming: true": "yes", "self_priming: false": "no", "spare: true": ""} {
		word, missing := fact(passed(t, "self_priming: true", put), "b-waste/2", "pump_primes")
		if word != want || (want == "") != (len(missing) > 0) {
			t.Errorf("%s: %q, missing %v", put, word, missing)
		}
	}
	n := passed(t).Find(working.Address{Subject: "b-waste/2", Name: "suction_room", Case: working.Always})
	if gaps := n.Gaps(); len(gaps) != 1 || gaps[0].Pointer != "/site/altitude" {
		t.Errorf("the altitude is not asked for: %v", gaps)
	}
}

// The drain clears as far as its own flow reaches; where that is not worked out, 0.9 m/s are taken.
func TestTheFloorIsClearedByTheFlowOfTheDrain(t *testing.T) {
	taken, _ := ClearedRadius(math.Pi/4*0.0429*0.0429*0.9, 1, 0.127)
	near(t, "taken", value(t, changed(t, asked), "settler", "drain_radius"), taken, 1e-4)
	fast := surveyed(t, asked, func(l *working.Ledger) {
		a := working.Address{Subject: "settler-waste", Name: "drain_flow", Case: "cleaning", Water: "usual"}
		l.Take(a, working.Definition{Name: a.Name, Kind: quantity.Flow}, "", working.Fixed(a.Name, quantity.Flow, math.Pi/4*0.0429*0.0429*1.8, ""))
	})
	near(t, "worked out", value(t, fast, "settler", "drain_radius"), taken*math.Sqrt2, 1e-4)
}
