package settling

import (
	"math"
	"math/rand/v2"
	"testing"
)

// The time to run out, step by step: in an upright vessel the flow goes with the root of the head.
func TestRunsOutStepByStep(t *testing.T) {
	for range 20 {
		volume, flow, head := 0.01+rand.Float64(), 1e-4+rand.Float64()*1e-2, 0.1+rand.Float64()
		left := head * rand.Float64()
		got, _ := RunsOut(volume, flow, head, left)
		const steps = 20000
		sum := 0.0
		for i := range steps {
			h := head - (head-left)*(float64(i)+0.5)/steps
			sum += volume / steps / (flow * math.Sqrt(h/head))
		}
		near(t, "time", got/sum, 1, 1e-3)
	}
	if _, note := RunsOut(0.1, 1e-3, 0.2, -0.1); note == "" {
		t.Error("nothing is said of the water that stays")
	}
	if v, why := RunsOut(0.1, 1e-3, 0, 0); !math.IsNaN(v) || why == "" {
		t.Errorf("without head it takes %v", v)
	}
}

// The prismoidal formula, V = h/6 (A0 + 4 Am + A1), holds for every body whose slices grow as a square (handbooks of geometry).
func TestTroughByThePrismoidalFormula(t *testing.T) {
	for range 100 {
		long, wide, height := 0.2+rand.Float64(), 0.2+rand.Float64(), 0.2+rand.Float64()
		longTop, wideTop := long+rand.Float64()-0.15, wide+rand.Float64()-0.15
		depth := height * rand.Float64()
		area := func(h float64) float64 {
			return (long + (longTop-long)*h/height) * (wide + (wideTop-wide)*h/height)
		}
		v, why := TroughVolume(depth, long, wide, longTop, wideTop, height)
		near(t, "volume "+why, v, depth/6*(area(0)+4*area(depth/2)+area(depth)), 1e-12)
	}
	if v, why := TroughVolume(1, 1, 0, 1, 1, 1); !math.IsNaN(v) || why == "" {
		t.Errorf("a box without a width holds %v", v)
	}
}

// Hotter water, higher ground and a higher pump leave less to suck with; water that boils leaves nothing.
func TestSuctionRoomShrinks(t *testing.T) {
	for range 100 {
		kelvin, altitude, lift := 275+90*rand.Float64(), 4000*rand.Float64(), 5*rand.Float64()
		room, _ := SuctionRoom(kelvin, altitude, lift)
		for what, x := range map[string][3]float64{
			"hotter": {kelvin + 2, altitude, lift}, "higher": {kelvin, altitude + 100, lift}, "more lift": {kelvin, altitude, lift + 0.1},
		} {
			if less, why := SuctionRoom(x[0], x[1], x[2]); !(less < room) {
				t.Errorf("%s: %v is not below %v: %s", what, less, room, why)
			}
		}
	}
	if room, _ := SuctionRoom(373.1, 0, 0); room > -1.99 {
		t.Errorf("boiling water is sucked up by %v m", room)
	}
	if room, why := SuctionRoom(900, 0, 0); !math.IsNaN(room) || why == "" {
		t.Errorf("steam is sucked up by %v m", room)
	}
}

func TestSludgeNeedsDryMatter(t *testing.T) {
	for _, dry := range []float64{0, -1, 1.01, math.NaN()} {
		if v, why := SludgeFlow(1, dry); !math.IsNaN(v) || why == "" {
			t.Errorf("with %v of dry matter: %v", dry, v)
		}
	}
}
