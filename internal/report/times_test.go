package report

import (
	"math"
	"testing"

	"dryfit/internal/working"
)

func run(f func(t float64) float64, times ...float64) working.Series {
	c := working.Series{Subject: "tank", Name: "level", Rim: 2, T: times}
	for _, t := range times {
		c.Y = append(c.Y, f(t))
	}
	return c
}

func steps(end float64, n int) []float64 {
	out := make([]float64, n+1)
	for i := range out {
		out[i] = end * float64(i) / float64(n)
	}
	return out
}

// A level that falls evenly is shown at even times, and one that comes to rest
// ever more slowly at times ever further apart; after it has settled only the end is shown.
func TestRowTimes(t *testing.T) {
	even := rowTimes([]working.Series{run(func(t float64) float64 { return 1 - t/3600 }, 0, 3600)})
	for i, at := range even {
		if want := float64(i) * 300; at != want && i < len(even)-1 {
			t.Errorf("row %d at %v s, want %v", i, at, want)
		}
	}
	decay := rowTimes([]working.Series{run(func(t float64) float64 { return math.Exp(-t / 60) }, steps(86400, 20000)...)})
	for i := 3; i < len(decay)-1; i++ { // the first row may lie further off
		if decay[i]-decay[i-1] < decay[i-1]-decay[i-2]-1e-9 {
			t.Errorf("the steps shrink at %v s: %v", decay[i], decay)
		}
	}
	if before := decay[len(decay)-2]; before > 900 {
		t.Errorf("it has settled after 7 time constants, 420 s, and is shown at %v s", before)
	}
	if still := rowTimes([]working.Series{run(func(float64) float64 { return 1 }, 0, 100)}); len(still) > 4 {
		t.Errorf("a level that does not move is shown at %v", still)
	}
	if at := rowTimes(nil); at != nil {
		t.Errorf("nothing is shown at %v", at)
	}
	if at := rowTimes([]working.Series{run(func(float64) float64 { return 1 }, 0)}); len(at) != 1 {
		t.Errorf("a single moment is shown at %v", at)
	}
}

// Whatever a course is, its rows begin at nothing, go forward, end at its end, and are few.
func FuzzRowTimes(f *testing.F) {
	f.Add(100.0, 1.0, 0.5, 3.0)
	f.Add(172800.0, 0.001, 0.0, 0.0)
	f.Add(0.37, 2.0, 1.0, -4.0)
	f.Fuzz(func(t *testing.T, end, a, b, c float64) {
		for _, x := range []float64{end, a, b, c} {
			if math.IsNaN(x) || math.Abs(x) > 1e9 {
				return // no levels or times of a loop
			}
		}
		if end <= 1e-3 {
			return
		}
		s := working.Series{T: []float64{0, end / 7, end / 7, end}, Y: []float64{a, b, c, a}}
		times := rowTimes([]working.Series{s})
		if times[0] != 0 || times[len(times)-1] != end || len(times) > mostRows {
			t.Fatalf("%d rows from %v to %v, of %v s", len(times), times[0], times[len(times)-1], end)
		}
		for i := 1; i < len(times); i++ {
			if times[i] <= times[i-1] {
				t.Fatalf("time goes back: %v", times)
			}
		}
		if text := sketch(s, times, 30); len(text) != 30 && text != "" {
			t.Fatalf("%d letters", len(text))
		}
	})
}

// Low to high is `_`, `.`, `-`, `'`: a quarter of the range each.
func TestSketch(t *testing.T) {
	up := func(t float64) float64 { return t }
	for _, c := range []struct {
		what    string
		course  working.Series
		times   []float64
		letters int
		want    string
	}{
		{"evenly up", run(up, 0, 8), []float64{0, 8}, 8, "__..--''"},
		{"evenly down", run(func(t float64) float64 { return -t }, 0, 8), []float64{0, 8}, 8, "''--..__"},
		{"up and down", run(func(t float64) float64 { return math.Sin(t) }, steps(math.Pi, 60)...), []float64{0, math.Pi}, 9, "_.-'''-._"},
		{"on the scale of its table: half of it is the first tenth", run(up, 0, 10), []float64{0, 1, 10}, 5, "___-'"},
		{"still", run(func(float64) float64 { return 3 }, 0, 8), []float64{0, 8}, 8, ""},
		{"no room", run(up, 0, 8), []float64{0, 8}, 1, ""},
		{"no time", run(up, 0), []float64{0}, 8, ""},
	} {
		if got := sketch(c.course, c.times, c.letters); got != c.want {
			t.Errorf("%s: %q, want %q", c.what, got, c.want)
		}
	}
}

// Between steps in a straight line; at a jump, what comes behind it.
func TestAtTime(t *testing.T) {
	c := working.Series{T: []float64{0, 10, 10, 20}, Y: []float64{0, 5, 8, 18}}
	for at, want := range map[float64]float64{-1: 0, 0: 0, 4: 2, 10: 5, 15: 13, 20: 18, 30: 18} {
		if got := atTime(c, at); math.Abs(got-want) > 1e-12 {
			t.Errorf("at %v it is %v, want %v", at, got, want)
		}
	}
	for level, want := range map[float64]float64{0: 0, 5: 9, 8: 10, 18: 19.5} {
		if got := reachesAt(c, level, 0.5); math.Abs(got-want) > 1e-12 {
			t.Errorf("it comes within a half of %v at %v, want %v", level, got, want)
		}
	}
}

func TestAbout(t *testing.T) {
	for x, want := range map[float64]string{0: "0", 0.2: "0.2 s", 5: "5 s", 45: "45 s", 90: "90 s", 477: "8 min", 603: "10 min", 5461: "91 min", 11692: "3.2 h", 73740: "20 h", 172800: "48 h", 1209600: "14 d"} {
		if got := clock(x); got != want {
			t.Errorf("%v s: %q, want %q", x, got, want)
		}
	}
}
