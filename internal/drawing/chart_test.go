package drawing

import (
	"math"
	"math/rand"
	"slices"
	"testing"

	"dryfit/internal/quantity"
	"dryfit/internal/survey"
	"dryfit/internal/working"
)

func TestChartStandsAtItsNumbers(t *testing.T) {
	svg, why := Chart(Plot{
		Title: "a square", Description: "y = x^2",
		X:      Axis{Title: "x", Kind: quantity.Length, Unit: "m", High: 4},
		Y:      Axis{Title: "y", Kind: quantity.Length, Unit: "mm", Low: -1, High: 16},
		Curves: []Curve{{Name: "square", X: []float64{0, 1, 2, 3, 4, 9}, Y: []float64{0, 1, 4, 9, 16, 81}, Points: true}},
		Marks:  []Mark{{2, 4, "two"}},
		Limits: []Limit{{At: 9, Name: "nine"}, {At: 3, Upright: true, Name: "three"}, {At: 77, Name: "beyond"}},
	})
	p := read(t, svg, why)
	x, y := p.scale("x-tick", "x"), p.scale("y-tick", "y")
	for i, at := range p.part("curve:square").points() {
		stands(t, "x of the curve", x(at.x), float64(i), 0.01)
		stands(t, "y of the curve", y(at.y), 1000*float64(i*i), 10)
	}
	if n := len(p.part("curve:square").points()); n != 5 {
		t.Errorf("the curve has %d points on the chart, not 5: what lies beyond is left away", n)
	}
	stands(t, "mark", x(p.part("mark:two").num("cx")), 2, 0.01)
	stands(t, "mark", y(p.part("mark:two").num("cy")), 4000, 10)
	stands(t, "limit", y(p.part("limit:nine").num("y1")), 9000, 10)
	stands(t, "upright limit", x(p.part("limit:three").num("x1")), 3, 0.01)
	for _, e := range p.list {
		if e.part == "limit:beyond" {
			t.Error("a limit beyond the chart is drawn")
		}
	}
}

func TestLogAxisIsInDecades(t *testing.T) {
	svg, why := Chart(Plot{Title: "log",
		X:      Axis{Title: "x", Kind: quantity.Velocity, Unit: "mm/s", Low: 1e-5, High: 1e-1, Log: true},
		Y:      Axis{Title: "y", Kind: quantity.Number, Unit: "", High: 1},
		Curves: []Curve{{Name: "c", X: []float64{1e-5, 1e-3, 1e-1}, Y: []float64{0, 0.5, 1}}}})
	p := read(t, svg, why)
	at := p.part("curve:c").points()
	stands(t, "middle of four decades", at[1].x-at[0].x, at[2].x-at[1].x, 0.01)
}

func TestChartAnswersWithWhy(t *testing.T) {
	good := Plot{X: Axis{Kind: quantity.Length, Unit: "m", High: 1}, Y: Axis{Kind: quantity.Length, Unit: "m", High: 1}, Curves: []Curve{{X: []float64{0, 1}, Y: []float64{0, 1}}}}
	if _, why := Chart(good); why != "" {
		t.Fatal(why)
	}
	for name, spoil := range map[string]func(*Plot){
		"no curve":      func(p *Plot) { p.Curves = nil },
		"no number":     func(p *Plot) { p.Curves = []Curve{{X: []float64{0}, Y: []float64{math.NaN()}}} },
		"endless":       func(p *Plot) { p.Curves = []Curve{{X: []float64{math.Inf(1)}, Y: []float64{0}}} },
		"odd":           func(p *Plot) { p.Curves = []Curve{{X: []float64{0, 1}, Y: []float64{0}}} },
		"no length":     func(p *Plot) { p.X.High = 0 },
		"log from zero": func(p *Plot) { p.X.Log = true },
		"unit":          func(p *Plot) { p.Y.Unit = "furlong" },
	} {
		p := good
		spoil(&p)
		if svg, why := Chart(p); svg != "" || why == "" {
			t.Errorf("%s: was drawn", name)
		}
	}
}

// ISO 5455:1979: scales of reduction are 1:2, 1:5, 1:10 and their multiples by ten; 1:2.5 and the like are for drawings that no other fits.
func TestScales(t *testing.T) {
	for _, c := range [][3]float64{{0.735, 165, 5}, {1.26, 130, 10}, {1.31, 130, 20}, {0.1, 165, 1}, {20, 100, 200}, {0.33, 165, 2}} {
		if got := scaleOf(c[0], c[1]); got != c[2] {
			t.Errorf("%v m on %v mm: 1:%v, not 1:%v", c[0], c[1], got, c[2])
		}
	}
}

func TestApartKeepsOrderAndGap(t *testing.T) {
	r := rand.New(rand.NewSource(7))
	for range 2000 {
		n := 1 + r.Intn(12)
		in := make([]float64, n)
		for i := range in {
			in[i] = 10 + 90*r.Float64()*r.Float64()
		}
		out := apart(in, 4, 10, 100)
		order := make([]int, n)
		for i := range order {
			order[i] = i
		}
		slices.SortStableFunc(order, func(a, b int) int {
			switch {
			case in[a] < in[b]:
				return -1
			case in[a] > in[b]:
				return 1
			}
			return 0
		})
		for i, k := range order {
			if out[k] < 10-1e-9 || out[k] > 100+1e-9 {
				t.Fatalf("%v goes out of bounds: %v", in, out)
			}
			if i > 0 && out[k]-out[order[i-1]] < 4-1e-9 {
				t.Fatalf("%v come nearer than the gap: %v", in, out)
			}
		}
	}
}

// The curves of pump and line cross where the loop runs, and the pump's goes
// through every point of the file.
func TestPumpRunsWhereCurvesCross(t *testing.T) {
	s, l := load(t, demo)
	svg, why := PumpCurve(s, l, "main")
	p := read(t, svg, why)
	x, y := p.scale("x-tick", "x"), p.scale("y-tick", "y")
	on := func(name string, q, h, within float64) {
		t.Helper()
		list := p.part("curve:" + name).points()
		for i := 1; i < len(list); i++ {
			q0, q1 := x(list[i-1].x), x(list[i].x)
			if q >= q0-0.5 && q <= q1+0.5 && q1 > q0 {
				stands(t, name, y(list[i-1].y)+(q-q0)/(q1-q0)*(y(list[i].y)-y(list[i-1].y)), h, within)
				return
			}
		}
		t.Errorf("the curve %s does not come to %v L/h", name, q)
	}
	for _, c := range [][2]float64{{0, 1.75}, {400, 1.66}, {800, 1.40}, {1000, 1.21}, {1200, 0.97}, {1500, 0.54}, {1800, 0}} { // of the file
		on("pump", c[0], c[1], 0.01)
	}
	for curve, kase := range map[string]string{"line clean": working.RunClean, "line fouled": working.RunLeast} {
		q, _ := worked(l, "riser", "flow", kase, "usual")
		h, _ := worked(l, "main", "pump_head", kase, "usual")
		on(curve, q*3.6e6, h, 0.015)
		on("pump", q*3.6e6, h, 0.015)
	}
	// Losses grow with the flow: no curve of the line falls once water runs.
	for _, name := range []string{"line clean", "valve at 50 %"} {
		list := p.part("curve:" + name).points()
		for i := 1; i < len(list); i++ {
			if list[i].x > list[i-1].x && list[i].y > list[i-1].y+0.2 {
				t.Errorf("%s falls at %.0f L/h", name, x(list[i].x))
			}
		}
	}
}

func TestCoursesEndWhereTheSceneEnds(t *testing.T) {
	s, _ := load(t, demo)
	for _, kase := range []string{"stopped", "one_blocked"} {
		for _, f := range survey.Follow(s, kase, "") {
			svg, why := Courses(f, s)
			p := read(t, svg, why)
			y := p.scale("y-tick", "y")
			for _, one := range f.Levels {
				if s.Vessel(one.Subject) == nil {
					continue
				}
				list := p.part("curve:" + one.Subject).points()
				stands(t, f.Fault+": "+one.Subject+" at first", y(list[0].y), 0, 0.5)
				stands(t, f.Fault+": "+one.Subject+" at last", y(list[len(list)-1].y), 1000*(one.Y[len(one.Y)-1]-one.Y[0]), 2.5)
			}
		}
	}
	missing := working.Followed{Scene: working.Scene{Fault: "f", Missing: []working.Gap{{Pointer: "/water"}}}}
	if svg, why := Courses(missing, s); svg != "" || why != "f cannot be followed: write /water" {
		t.Errorf("a scene that was not followed: %q", why)
	}
}

// Silver perch are in danger at 3 mg/L (the table of species); warm water holds less
// oxygen and its fish use more (Benson and Krause 1984, for the first).
func TestOxygenFallsToDanger(t *testing.T) {
	s, l := load(t, demo)
	svg, why := Oxygen(s, l, "tank")
	p := read(t, svg, why)
	x, y := p.scale("x-tick", "x"), p.scale("y-tick", "y")
	last := math.Inf(1)
	for i, name := range []string{"14 degC", "21 degC", "28 degC"} {
		at := p.part("curve:" + name).points()
		h, _ := worked(l, "tank", "time_to_danger", "power_cut", working.Waters[i])
		stands(t, name+" in danger after, h", x(at[1].x), h/3600, 0.02)
		stands(t, name+" in danger at, mg/L", y(at[1].y), 3, 0.02)
		if x(at[1].x) >= last {
			t.Errorf("warmer water lasts longer: %s", name)
		}
		last = x(at[1].x)
	}
}

// Water that rises more slowly lets more settle (Hazen 1904), and the stairs come to
// all of the waste.
func TestCaptureFallsWithSpeed(t *testing.T) {
	s, l := load(t, demo)
	svg, why := Capture(s, l, "settler")
	p := read(t, svg, why)
	y := p.scale("y-tick", "y")
	list := p.part("curve:caught").points()
	if len(list) < 10 {
		t.Fatalf("%d points are no curve", len(list))
	}
	for i := 1; i < len(list); i++ {
		if list[i].x < list[i-1].x || list[i].y < list[i-1].y-0.01 {
			t.Error("more is caught where the water rises faster")
		}
	}
	stairs := p.part("curve:sinks faster").points()
	stands(t, "all of the waste, %", y(stairs[0].y), 100, 0.3)
	stands(t, "none of it, %", y(stairs[len(stairs)-1].y), 0, 0.3)
	r, _ := running(l, "settler", "capture_settleable")
	for _, e := range p.list {
		if e.kind == "circle" {
			stands(t, "caught in use, %", y(e.num("cy")), 100*r, 0.3)
		}
	}
}
