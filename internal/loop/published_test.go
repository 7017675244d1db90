package loop

import (
	"testing"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

// A pump against a lift and a long pipe: Schaschke, Worked examples in fluid
// mechanics, example 9.10. Lift 10 m, 100 m of 50 mm bore, Fanning friction factor
// 0.005, pump 0:40, 2:39.5, 4:38, 6:35, 8:30, 10:20 (L/s: m). The book reads
// 6.6 L/s at 34 m off its drawing.
//
// A hose is the only pipe here near as rough as the book's: 0.05 mm in 50 mm has
// f = 0.0217 (Moody's chart, rough 0.001, Re 160 000) where the book has 4 x 0.005. So
// 90.9 m of it, with 1.57 velocity heads at its ends, have the resistance of the
// book's pipe, 40 velocity heads and one at its end: (41 - 1.57) 0.05/0.0217 m. Between its points the book
// draws a curve by hand; straight lines between them meet at 6.54 L/s.
func TestSchaschkesPumpAgainstALongPipe(t *testing.T) {
	r := try(t, trial{
		stands: "8.7 m", height: "2 m", by: "wide", of: "drain",
		pump:  "{curve: [[0 L/h, 40 m], [7200 L/h, 39.5 m], [14400 L/h, 38 m], [21600 L/h, 35 m], [28800 L/h, 30 m], [36000 L/h, 20 m]]}",
		pipes: "  wide: {inside: 50 mm, outside: 60 mm}\n  drain: {inside: 150 mm, outside: 160 mm}\n",
		down: `
      - through: {wall_of: tank, at: 600 mm, seal: {hole: 180 mm}}
      - across: 100 mm
      - bend: 90 deg
      - fall: fit
      - outlet: {at: 400 mm, facing: down}`,
		up: `
      - intake: {at: 50 mm}
      - pump: lift
      - hose: {length: 90.9 m, inside: 50 mm}
      - outlet: {at: 1.5 m, facing: up}`,
	})
	near(t, "flow in L/s", 1000*r.value("up", "flow", "run_clean"), 6.6, 0.015*6.6)
	near(t, "head of the pump in m", r.value("lift", "pump_head", "run_clean"), 34, 0.015*34)
}

// Water from a reservoir through two sizes of pipe: Crane TP-410, example 7-19.
// 11.5 ft of head, 10 ft of 3 inch with a 90 degree corner and a gate valve, a step
// down, 20 ft of 2 inch (Schedule 40: 77.93 and 52.50 mm), steel of 0.0018 inch, 60
// degF; 137 US gallons a minute.
//
// The 2 inch pipe is hose here, which is 0.050 mm rough against the book's 0.046: 1 %
// in head; the 3 inch is plastic, a tenth of an eighth of the head less. The corner is a mitre in the book (K 1.0) and a threaded elbow here (0.6), on
// a twentieth of the head: 1 % of flow. The step is Rennels' here and Crane's there,
// 0.3 against 0.27: 1 % of head. The mouth is judged at its soffit, half a bore of
// 3.5 m. Together 2 % of flow, and Crane rounds f.
func TestCranesReservoirWithAStepDown(t *testing.T) {
	const gallonAMinute = 3.785411784e-3 / 60
	r := try(t, trial{
		// the tank is full 50 mm under its rim, and the pipes leave it 100 mm over its floor, 11.5 ft under that
		height: "3655.2 mm", stands: "2 m", to: "outside", of: "three",
		pipes: "  three: {inside: 77.93 mm, outside: 88.9 mm}\n  two: {inside: 52.50 mm, outside: 60.3 mm}\n",
		down: `
      - through: {wall_of: tank, at: 100 mm, seal: {hole: 101 mm}}
      - across: 10 ft
      - bend: 90 deg
      - valve: gate
      - reducer: two
      - hose: {length: 20 ft, inside: 52.50 mm}
      - outlet: {at: 2.1 m, facing: level}`,
		up: `
      - intake: {at: 50 mm}
      - pump: lift
      - hose: {length: 6 m, inside: 40 mm}
      - outlet: {at: 3.6 m, facing: level}`,
	})
	near(t, "flow in US gal/min", r.value("down", "capacity", "run_clean")/gallonAMinute, 137, 0.025*137)
}

// The flow that a fall of level drives through a straight pipe: Maurer, Hydraulics
// and water resources, example 4.4. 100 m of 0.5 m bore, ks 0.046 mm, 0.6 m of loss:
// 0.413 m3/s by the explicit formula (the page's own solver prints 0.406, which does not
// balance). With 0.57 and 1 velocity heads at the ends, V = 2.10 m/s, the levels are
// 0.954 m apart. The hose is 0.05 mm rough: 0.4 %.
func TestMaurersPipeBetweenTwoLevels(t *testing.T) {
	r := try(t, trial{
		height: "2 m", stands: "0 mm", of: "main-500", tank: "    spill_at: 1800 mm\n", more: `  pond:
    role: sump
    form: {box: {length: 10 m, width: 10 m, height: 2 m}}
    stands_at: 0 mm
    water: {running: 796 mm}`,
		to: "pond", pipes: "  main-500: {inside: 500 mm, outside: 520 mm}\n",
		down: `
      - intake: {at: 300 mm}
      - hose: {length: 100 m, inside: 500 mm}
      - outlet: {at: 300 mm, facing: level}`,
		up: `
      - intake: {at: 50 mm}
      - pump: lift
      - hose: {length: 6 m, inside: 40 mm}
      - outlet: {at: 1.9 m, facing: level}`,
	})
	near(t, "flow in m3/s", r.value("down", "capacity", "run_clean"), 0.413, 0.01*0.413)
}

// A pipe of 200 mm bore takes 0.01 m3/s: critical depth 85 mm, Maurer, Hydraulics and
// water resources, example 5.4. The wet area at 0.425 of the bore is 0.318 D^2 (tables of
// circular segments), so the water moves at 0.786 m/s there, its velocity head is 31.5
// mm, and with half of that lost at the sharp edge a tank stands 85 + 1.5 x 31.5 = 132
// mm over the invert of its side outlet. The book rounds the depth to 1 mm.
func TestSideOutletAtMaurersCriticalDepth(t *testing.T) {
	s := read(t, trial{
		of: "wide", pipes: "  wide: {inside: 200 mm, outside: 210 mm}\n",
		down: `
      - through: {wall_of: tank, at: 600 mm, seal: {hole: 220 mm}}
      - across: 100 mm
      - bend: 90 deg
      - fall: fit
      - outlet: {at: 400 mm, facing: down}`,
	})
	level := levelOver(t, s.Line("down"))
	near(t, "level over the invert", level(0.01)-(0.9-0.1), 0.132, 0.0015)
}

// levelOver is the level that a gravity line asks for, by flow, clean at 20 degC and with 200 mm of water below.
func levelOver(t *testing.T, l *system.Line) func(q float64) float64 {
	t.Helper()
	b := newBench(newSurveyor(nil, tables.Embedded(), nil), working.Fixed("nu", quantity.Viscosity, 1.0034e-6, ""), walls{"gravity", "clean"})
	g := b.gravity(l, working.Fixed("below", quantity.Length, 0.2, ""))
	x := make([]float64, len(g.shape.inputs))
	for i, in := range g.shape.inputs {
		v, ok := in.Value()
		if !ok {
			t.Fatalf("%s is missing: %v", in.Symbol, in.Gaps())
		}
		x[i] = v.X
	}
	return func(q float64) float64 { return g.level(q, x) }
}
