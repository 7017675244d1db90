package tables

import (
	"math"
	"testing"
)

// Between two groups of sizes the larger counts, at the edge of two temperatures the colder.
func TestCureTimeOnItsEdges(t *testing.T) {
	for _, c := range []struct{ inches, fahrenheit, hours float64 }{
		{1.25, 70, 1}, {1.3, 70, 2}, {3, 70, 2}, {3.5, 70, 6}, {8, 70, 6}, {2, 60, 4}, {2, 40, 16}, {0.25, 70, 1},
	} {
		got, ok := Embedded().CureTime(Cautious, c.inches, fahrenheit(c.fahrenheit))
		if !ok || math.Abs(got.Hold/3600-c.hours) > 1e-9 {
			t.Errorf("%v in at %v degF: %v h, not %v", c.inches, c.fahrenheit, got.Hold/3600, c.hours)
		}
	}
	for _, c := range [][2]float64{{9, 70}, {2, 101}, {2, -1}, {math.NaN(), 70}, {2, math.NaN()}} {
		if got, ok := Embedded().CureTime(Cautious, c[0], fahrenheit(c[1])); ok {
			t.Errorf("%v in at %v degF: %v s, where the table ends", c[0], c[1], got.Hold)
		}
	}
}

// No cement cures faster in the cold, and no larger pipe faster than a smaller.
func TestCureTimesGrowWithColdAndSize(t *testing.T) {
	for _, maker := range Embedded().Makers() {
		for _, inches := range []float64{1, 2, 4, 6} {
			last := 0.0
			for _, f := range []float64{90, 50, 30, 10} {
				warm, ok := Embedded().CureTime(maker, inches, fahrenheit(f))
				larger, there := Embedded().CureTime(maker, inches+1, fahrenheit(f))
				if !ok || !there || warm.Hold < last || larger.Hold < warm.Hold {
					t.Errorf("%s, %v in at %v degF: %v s after %v s, a size up %v s", maker, inches, f, warm.Hold, last, larger.Hold)
				}
				last = warm.Hold
			}
		}
	}
}

// Every fitting's take-off lies above what the geometry of its elbow allows.
func TestTakeoffsAreLongerThanTheirElbow(t *testing.T) {
	for standard, pipe := range map[string]Pipe{"ASTM D1785": {Class: "Sch 40"}, "EN ISO 1452": {Class: "PN16"}} {
		n := 0
		for _, p := range Embedded().PipesOf(standard, pipe.Class) {
			o, ok := Embedded().Takeoff(standard, p.Size)
			if !ok {
				continue
			}
			n++
			if o.Elbow90.Value < p.Outside/2 || o.Elbow45.Known && o.Elbow45.Value < 0.207*p.Outside {
				t.Errorf("%s %s: %v and %v m on pipe of %v m", standard, p.Size, o.Elbow90, o.Elbow45, p.Outside)
			}
		}
		if n < 8 {
			t.Errorf("%s has %d take-offs", standard, n)
		}
	}
	if _, ok := Embedded().Takeoff("AS/NZS 1260", "DN50"); ok {
		t.Error("drain pipe is given the take-offs of pressure fittings")
	}
}

func TestSocketsBelongToTheirPipe(t *testing.T) {
	for _, c := range []struct {
		standard, size string
		depth          float64
	}{{"ASTM D2241", "2 in", 29.362}, {"ASTM D2665", "2 in", 19.05}, {"AS/NZS 1477:2017", "DN40", 30.1}, {"DIN 8062", "dn 50", 31}} {
		if s, ok := Embedded().SocketFor(c.standard, c.size); !ok || math.Abs(s.Depth*1000-c.depth) > 1e-9 {
			t.Errorf("%s %s: %v mm, not %v", c.standard, c.size, s.Depth*1000, c.depth)
		}
	}
	for _, none := range []string{"AS/NZS 4130", "EN 1401", "", "no such standard"} {
		if _, ok := Embedded().SocketFor(none, "DN50"); ok {
			t.Errorf("%q has solvent sockets", none)
		}
	}
	if !Embedded().Metric("DIN 8062") || Embedded().Metric("AS/NZS 1477") || Embedded().Metric("") {
		t.Error("metric and inch fittings are mixed up")
	}
}

func TestSawsAndHoles(t *testing.T) {
	for hole, want := range map[float64]float64{0.0508: 0.0508, 0.0502: 0.05, 0.0635: 0.0635, 0.0634: 0.0635, 0.0762: 0.0762, 1: 0.1778} {
		if saw := Embedded().SawFor(hole); saw.Size != want {
			t.Errorf("for %v m the saw of %v m", hole, saw.Size)
		}
	}
	if saw := Embedded().SawFor(0.0508); saw.Inch != "2 in" {
		t.Errorf("50.8 mm is %q", saw.Inch)
	}
	if n := len(Embedded().SealsWanting(0.0762, 0)); n != 1 {
		t.Errorf("%d seals want 76.2 mm", n)
	}
	if n := len(Embedded().SealsWanting(0.03175, 0)); n != 2 {
		t.Errorf("%d seals want 31.75 mm, where makers differ", n)
	}
	if least, most, _, ok := Embedded().BulkheadHole("1 in"); !ok || least != 0.04445 || most != 0.0508 {
		t.Errorf("a bulkhead of 1 in wants %v to %v", least, most)
	}
	if _, _, _, ok := Embedded().BulkheadHole(""); ok {
		t.Error("a fitting without a size has a hole")
	}
}
