package fishload

import (
	"math"
	"testing"
)

// sound fails when a number leaves a formula that is none, without the reason.
func sound(t *testing.T, name string, x float64, why string) {
	t.Helper()
	if math.IsInf(x, 0) || math.IsNaN(x) && why == "" {
		t.Errorf("%s: %v, %q", name, x, why)
	}
}

// finite says whether these are numbers that a file or a table can give: the reader refuses what is beyond.
func finite(xs ...float64) bool {
	for _, x := range xs {
		if math.IsNaN(x) || math.Abs(x) > 1e12 || x != 0 && math.Abs(x) < 1e-12 {
			return false
		}
	}
	return true
}

func FuzzFeedAt(f *testing.F) {
	f.Add(294.15, 0.0, 287.15, 38.0, 294.15, 120.0, 301.15, 126.0)
	f.Add(290.0, 295.0, 290.0, 1.0, 290.0, 2.0, 290.0, 3.0)
	f.Add(math.NaN(), math.NaN(), math.NaN(), 0.0, 0.0, 0.0, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, at, stop, t1, f1, t2, f2, t3, f3 float64) {
		x, why := FeedAt(at, stop, []float64{t1, t2, t3}, []float64{f1, f2, f3})
		if !finite(at, stop, t1, f1, t2, f2, t3, f3) {
			return // no panic is all that is asked
		}
		sound(t, "feed", x, why)
		low, high := min(f1, f2, f3), max(f1, f2, f3)
		slack := 1e-9 * max(math.Abs(low), math.Abs(high))
		switch {
		case at < stop:
			if x != 0 {
				t.Errorf("under %v K it is %v", stop, x)
			}
		case x < low-slack || x > high+slack:
			t.Errorf("it is %v, outside %v to %v", x, low, high)
		}
	})
}

func FuzzOutage(f *testing.F) {
	f.Add(0.0, 28800.0, 7e-3, 3e-3, 1.0, 20.0, 8.9e-4, 8.25e-3, 1.1e-6)
	f.Add(1800.0, 3600.0, 7e-3, 3e-3, 1.0, 60.0, 0.0, 8.25e-3, 8e-6)
	f.Add(0.0, 1e12, 8e-3, 8e-3, 0.0, 0.0, 1e-12, 9e-3, 1e12)
	f.Fuzz(func(t *testing.T, wait, lasts, start, danger, volume, mass, transfer, full, used float64) {
		backed, why := WithBackup(wait, lasts, start, danger, volume, mass, transfer, full, used)
		still, whyStill := StillTime(start, danger, volume, mass, used)
		sink, whySink := SinkTime(start, danger, volume, mass, transfer, full, used)
		if !finite(wait, lasts, start, danger, volume, mass, transfer, full, used) || wait < 0 || lasts < 0 || mass < 0 || transfer < 0 || used < 0 || start > full {
			return
		}
		sound(t, "with backup", backed, why)
		sound(t, "in still water", still, whyStill)
		sound(t, "with air", sink, whySink)
		for _, x := range []float64{backed, still, sink} {
			if x < 0 || x > aYear {
				t.Errorf("%v s is no time that is said", x)
			}
		}
		if backed < still*(1-1e-6) || sink < still*(1-1e-6) {
			t.Errorf("air shortens it: %v in still water, %v with air, %v with backup", still, sink, backed)
		}
	})
}

func FuzzBalances(f *testing.F) {
	f.Add(1e-6, 2e-6, 1e-6, 1e-3, 0.5)
	f.Add(0.0, 0.0, 0.0, 0.0, 0.0)
	f.Add(1e12, 1e-12, -1.0, 1e-12, 1.0)
	f.Fuzz(func(t *testing.T, a, b, c, d, e float64) {
		if !finite(a, b, c, d, e) {
			return
		}
		check := func(name string, x float64, why string) { sound(t, name, x, why) }
		x, why := AmmoniaLevel(a, b, c, d)
		check("ammonia level", x, why)
		x, why = AmmoniaFlow(a, d, e)
		check("ammonia flow", x, why)
		x, why = AmmoniaMade(a, e, 0.092)
		check("ammonia made", x, why)
		x, why = SteadyOxygen(a, b, c, d, e)
		check("steady oxygen", x, why)
		x, why = LeastOfLoop(a, b, c, d, e, math.Abs(a))
		check("least of the loop", x, why)
		x, why = StandardTransfer(a, b, c)
		check("standard transfer", x, why)
		x, why = AlkalinityTime(a, b)
		check("alkalinity time", x, why)
		x, why = TopUpChlorine(a, b, c)
		check("chlorine", x, why)
		x, why = NitrateLevel(a, b)
		check("nitrate", x, why)
		x, why = SmoothGrainSurface(e, a)
		check("grains", x, why)
		x, why = BreathAt(a, b, 263.15+math.Mod(math.Abs(c), 50), 263.15+math.Mod(math.Abs(d), 50), 0.5+math.Mod(math.Abs(e), 5))
		check("breath", x, why)
	})
}
