package loop

import (
	"math"
	"strings"
	"testing"

	"dryfit/internal/pipeflow"
	"dryfit/internal/system"
)

func over(at string) string {
	return strings.ReplaceAll(`
      - intake: {at: 50 mm}
      - pump: lift
      - rise: fit
      - bend: 90 deg
      - across: 2 m
      - over: {rim_of: tank, at: CREST}
      - bend: 90 deg
      - fall: fit
      - outlet: {at: 700 mm, facing: down}`, "CREST", at)
}

// A pump that cannot lift the water gives nothing, and that is a number: not met, not unknown.
func TestAPumpTooWeakGivesNothing(t *testing.T) {
	r := try(t, trial{pump: "{shut_off: 0.9 m, open_flow: 1500 L/h}"})
	for _, c := range []string{"run_clean", "run_least", "run_worst"} {
		if q := r.value("up", "flow", c); q != 0 {
			t.Errorf("%s: flow is %v", c, q)
		}
	}
	if note := r.node("up", "flow", "run_clean").Note(); !strings.Contains(note, "gives nothing") {
		t.Errorf("the note is %q", note)
	}
	if v := r.value("tank", "water_level", "run_clean"); math.IsNaN(v) {
		t.Errorf("level is %v", v)
	}
}

// The leg behind a crest helps only once water has been over the crest: lift to it 1.0 m, to the mouth 0.8 m.
func TestAPumpMustReachTheCrestBeforeTheFallHelps(t *testing.T) {
	weak := try(t, trial{pump: "{shut_off: 0.9 m, open_flow: 1500 L/h}", up: over("900 mm")})
	if q := weak.value("up", "flow", "run_clean"); q != 0 {
		t.Errorf("it gives %v over a crest that it does not reach", q)
	}
	strong := try(t, trial{up: over("900 mm")})
	if clean, least := strong.value("up", "flow", "run_clean"), strong.value("up", "flow", "run_least"); least <= 0 || clean <= least {
		t.Errorf("full leg %v, empty leg %v", clean, least)
	}
}

// With its falling leg full of air the water needs head for the level pipe at the crest too.
func TestTheLevelPipeAtACrestCounts(t *testing.T) {
	short := try(t, trial{up: over("900 mm")})
	long := try(t, trial{up: strings.Replace(over("900 mm"), "across: 2 m", "across: 20 m", 1)})
	if a, b := short.value("up", "flow", "run_least"), long.value("up", "flow", "run_least"); b > 0.995*a {
		t.Errorf("18 m more of pipe at the crest change the flow from %v to %v", a, b)
	}
}

func TestAPumpCurveThatStopsLeavesAGap(t *testing.T) {
	r := try(t, trial{pump: "{curve: [[0 L/h, 2 m], [300 L/h, 1.95 m], [500 L/h, 1.9 m]]}"})
	r.gap("up", "flow", "run_clean", "more points")
}

// Two points are two points, whether they stand as a curve or by name: the parabola of
// small pumps (common practice), not the chord, which promises too little.
func TestTwoPointsAreAParabola(t *testing.T) {
	named := try(t, trial{pump: "{shut_off: 2 m, open_flow: 1500 L/h}"}).value("up", "flow", "run_clean")
	listed := try(t, trial{pump: "{curve: [[0 L/h, 2 m], [1500 L/h, 0 m]]}"}).value("up", "flow", "run_clean")
	near(t, "flow", listed, named, 1e-9)
	measured := try(t, trial{pump: "{curve: [[500 L/h, 1.7777777778 m], [1000 L/h, 1.1111111111 m]]}"}).value("up", "flow", "run_clean")
	near(t, "flow", measured, named, 1e-9)
}

// A pump's line that ends under water lifts to the surface, wherever its mouth is (Bernoulli).
func TestAMouthUnderWaterLiftsToTheSurface(t *testing.T) {
	at := func(mouth string) float64 {
		return try(t, trial{up: strings.Replace(over("900 mm"), "at: 700 mm", "at: "+mouth, 1)}).value("up", "flow", "run_clean")
	}
	// the tank runs some 617 mm deep: mouths at 500 and 100 mm are both under that, the deeper one by 0.4 m more of pipe
	deep, shallow, free := at("100 mm"), at("500 mm"), at("800 mm")
	if math.Abs(deep-shallow) > 0.01*shallow {
		t.Errorf("under water, 400 mm deeper changes the flow from %v to %v", shallow, deep)
	}
	if free >= shallow {
		t.Errorf("lifting 180 mm higher than the surface gives %v, to the surface %v", free, shallow)
	}
}

// A bypass takes its share of the pump's flow at a tee: what leaves the pump is what both ways carry, and the line down carries the one way only.
func TestATeeDividesTheFlow(t *testing.T) {
	r := try(t, trial{
		up: strings.Replace(plainUp, "- rise: fit", "- rise: 300 mm\n      - tee: {id: split, way: through}\n      - rise: fit", 1),
		lines: `  bypass:
    from: up.split
    to: sump
    pipe: main
    pieces:
      - across: 200 mm
      - valve: {kind: ball, open: 15 %}
      - bend: 90 deg
      - outlet: {at: 350 mm, facing: down}`,
	})
	pump, bypass, down := r.value("up", "flow", "run_clean"), r.value("bypass", "flow", "run_clean"), r.value("down", "flow", "run_clean")
	near(t, "what both ways carry", bypass+down, pump, 1e-6*pump)
	if bypass <= 0 || down <= 0 {
		t.Errorf("the bypass carries %v, the tank's line %v", bypass, down)
	}
}

// A gravity line over a rim does not start by itself: the water above must first rise to its crest.
func TestAGravityLineOverARimAsksForItsCrest(t *testing.T) {
	r := try(t, trial{down: `
      - intake: {at: 100 mm}
      - rise: fit
      - bend: 90 deg
      - over: {rim_of: tank, at: 850 mm}
      - across: 100 mm
      - bend: 90 deg
      - fall: fit
      - outlet: {at: 100 mm, facing: down}`})
	if z := r.value("down", "upstream_level", "run_clean"); z < 0.3+0.85-0.0429/2 {
		t.Errorf("the level over a crest at 1.150 m is %v", z)
	}
	if f := r.value("tank", "freeboard", "run_clean"); f > 0 {
		t.Errorf("freeboard is %v", f)
	}
	if c := r.value("down", "capacity", "run_clean"); c != 0 {
		t.Errorf("capacity is %v", c)
	}
}

// Water cannot sink under the mouth by which it leaves, however far the line falls.
func TestTheLevelIsNeverUnderTheMouth(t *testing.T) {
	for piece, height := range map[string]float64{
		"- intake: {at: 500 mm, facing: up}\n      - fall: fit": 0.8,
		"- standpipe: {crest_at: 500 mm}":                       0.8,
	} {
		r := try(t, trial{down: "\n      " + piece + `
      - through: {floor_of: tank, bulkhead: {hole: 63.5 mm}}
      - fall: fit
      - outlet: {at: 100 mm, facing: down}`})
		q := r.value("down", "flow", "run_clean")
		// the rim as a weir of thick edge, 1.6 pi D h^1.5
		near(t, piece, r.value("tank", "water_level", "run_clean"), height+math.Pow(q/(1.6*math.Pi*0.04285), 2.0/3), 1e-4)
	}
}

// A level pipe that ends in the air: HDS-5 takes its end as wet to (yc + D)/2.
func TestAFreeLevelMouth(t *testing.T) {
	s := read(t, trial{to: "outside", down: `
      - through: {wall_of: tank, at: 300 mm, seal: {hole: 63.5 mm}}
      - across: 3 m
      - outlet: {at: 600 mm, facing: level}`})
	level := levelOver(t, s.Line("down"))
	const d, q = 0.04285, 1500 * litreAnHour
	yc := sure(pipeflow.CriticalDepth(q, d))
	s0 := sure(pipeflow.FrictionSlope(q, d, 7e-6, 1.0034e-6))
	v := q / (math.Pi / 4 * d * d)
	near(t, "level", level(q), 0.6-d/2+(yc+d)/2+3*s0+1.5*v*v/(2*9.80665), 1e-6)
}

// More flow never asks for a lower level, and no step in it: each control hands over to the next.
func TestLevelsRiseWithTheFlowWithoutAStep(t *testing.T) {
	for name, down := range map[string]string{
		"side outlet": plainDown,
		"standpipe": `
      - standpipe: {crest_at: 500 mm}
      - through: {floor_of: tank, bulkhead: {hole: 63.5 mm}}
      - fall: fit
      - outlet: {at: 100 mm, facing: down}`,
		"vented tee": `
      - intake: {at: 20 mm, guard: {slots: 40, width: 8 mm, length: 30 mm}}
      - rise: fit
      - tee: {way: turn, third: vent, top_at: 780 mm}
      - through: {wall_of: tank, at: 600 mm, seal: {hole: 63.5 mm}}
      - across: 300 mm
      - bend: 90 deg
      - fall: fit
      - outlet: {at: 100 mm, facing: down}`,
		"mouth up": `
      - intake: {at: 100 mm}
      - through: {wall_of: tank, at: 100 mm, seal: {hole: 63.5 mm}}
      - across: 300 mm
      - bend: 90 deg
      - rise: fit
      - outlet: {at: 700 mm, facing: up}`,
		"mouth level": strings.Replace(plainDown, "- fall: fit\n      - outlet: {at: 400 mm, facing: down}", "- fall: fit\n      - bend: 90 deg\n      - outlet: {at: 400 mm, facing: level}", 1),
	} {
		t.Run(name, func(t *testing.T) {
			level := levelOver(t, read(t, trial{down: down}).Line("down"))
			before := level(0)
			for q := 1.0; q <= 6000; q++ {
				z := level(q * litreAnHour)
				// 3 mm is what a weir rises by from nothing to the first litre an hour, and more than 6000 L/h adds for one more
				if z < before-1e-9 || z > before+0.003 || math.IsNaN(z) {
					t.Fatalf("at %v L/h it goes from %v to %v", q, before, z)
				}
				before = z
			}
		})
	}
}

// Film narrows the slots of a guard as it does the pipe.
func TestAGuardGrowsShut(t *testing.T) {
	down := strings.Replace(plainDown, "- through", "- intake: {at: 600 mm, guard: {slots: 10, width: WIDTH, length: 30 mm}}\n      - through", 1)
	r := try(t, trial{down: strings.Replace(down, "WIDTH", "6 mm", 1)})
	clean, fouled := r.value("down/0", "head_loss", "run_clean"), r.value("down/0", "head_loss", "run_worst")
	if fouled < 1.3*clean { // (6/5)^2 (30/29)^2 = 1.54 in the slots
		t.Errorf("clean it loses %v, fouled %v", clean, fouled)
	}
	shut := try(t, trial{down: strings.Replace(down, "WIDTH", "1 mm", 1)})
	shut.gap("tank", "water_level", "run_worst", "grown over")
}

// Overflows run from their crest: the rim of a standpipe, the top of a rise; and a stated low place of the rim counts.
func TestWhereATankSpills(t *testing.T) {
	overflow := func(pieces string) trial {
		return trial{lines: "  spillway:\n    duty: overflow\n    from: tank\n    to: outside\n    pipe: main\n    pieces:" + pieces}
	}
	for name, c := range map[string]struct {
		f    trial
		want float64
	}{
		"rim":       {trial{}, 1.1},
		"low place": {trial{tank: "    spill_at: 760 mm\n"}, 1.06},
		"standpipe": {overflow(`
      - standpipe: {crest_at: 720 mm}
      - through: {floor_of: tank, bulkhead: {hole: 63.5 mm}}
      - fall: fit
      - outlet: {at: 100 mm, facing: down}`), 1.02},
		"from below": {overflow(`
      - intake: {at: 100 mm}
      - rise: fit
      - bend: 90 deg
      - through: {wall_of: tank, at: 700 mm, seal: {hole: 63.5 mm}}
      - outlet: {at: 1 m, facing: level}`), 1.0 - 0.04285/2},
		"vent outside": {trial{down: `
      - through: {wall_of: tank, at: 600 mm, seal: {hole: 63.5 mm}}
      - across: 100 mm
      - tee: {way: turn, third: vent, top_at: 680 mm}
      - fall: fit
      - outlet: {at: 400 mm, facing: down}`}, 0.98},
	} {
		t.Run(name, func(t *testing.T) {
			s := read(t, c.f)
			z, ok := newSurveyor(s, tablesForTest, nil).spill(s.Vessel("tank")).Value()
			if !ok {
				t.Fatal("it is not known")
			}
			near(t, "spill", z.X, c.want, 1e-9)
		})
	}
}

// Behind a drowned weir: Villemonte 1947, Q/Q0 = (1 - (h2/h1)^n)^0.385, and never under the water behind.
func TestADrownedWeir(t *testing.T) {
	vessel := &system.Vessel{Weir: &system.Weir{Kind: "ring"}}
	edge, _ := crestOf(vessel)
	x := []float64{0.4}
	free := sure(edge.head(3e-4, x))
	before := free
	for h2 := 0.0; h2 < 0.1; h2 += 0.001 {
		h := edge.drowned(3e-4, x, h2)
		if h2 == 0 {
			near(t, "head with the water behind at the crest", h, free, 1e-6)
		}
		if h < h2 || h < before-1e-9 {
			t.Fatalf("with %v behind, the head is %v after %v", h2, h, before)
		}
		q := 1.84 * math.Pi * 0.4 * math.Pow(h, 1.5) * math.Pow(1-math.Pow(h2/h, 1.5), 0.385)
		near(t, "flow", q, 3e-4, 3e-6)
		before = h
	}
}

// What is not known leaves a gap, never a zero.
func TestPiecesThatAreNotWorkedOutLeaveGaps(t *testing.T) {
	for name, c := range map[string]struct{ piece, word string }{
		"device":     {"- device: {kind: uv-lamp}", "device"},
		"no valve":   {"- valve: {kind: globe, open: 15 %}", "valve"},
		"half a tee": {"- tee: {third: cap}", "way"},
	} {
		t.Run(name, func(t *testing.T) {
			r := try(t, trial{up: strings.Replace(plainUp, "- rise: fit", "- rise: 100 mm\n      "+c.piece+"\n      - rise: fit", 1)})
			r.gap("up", "flow", "run_clean", c.word)
		})
	}
}

// In a line of two sizes the speed is that of the wider, where it is least.
func TestTheSpeedIsThatOfTheWidestPipe(t *testing.T) {
	r := try(t, trial{
		pipes: "  thin: {inside: 30 mm, outside: 34 mm}\n",
		down:  strings.Replace(plainDown, "- across: 100 mm", "- across: 100 mm\n      - reducer: thin", 1),
	})
	q := r.value("down", "flow", "run_clean")
	near(t, "speed", r.value("down", "velocity", "run_clean"), q/(math.Pi/4*0.04285*0.04285), 1e-9)
}
