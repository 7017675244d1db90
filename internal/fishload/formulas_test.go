package fishload

import (
	"math"
	"math/rand/v2"
	"testing"
)

func near(a, b float64) bool {
	return math.Abs(a-b) <= 1e-9*math.Max(1, math.Max(math.Abs(a), math.Abs(b)))
}

// What a formula cannot answer is NaN with a reason; what it can answer has none but where it says how far to trust it.
func TestWhatHasNoAnswerSaysWhy(t *testing.T) {
	for name, f := range map[string]func() (float64, string){
		"no list of feed":             func() (float64, string) { return FeedAt(293, math.Inf(-1), nil, nil) },
		"a list half told":            func() (float64, string) { return FeedAt(293, math.Inf(-1), []float64{290, 295}, []float64{1}) },
		"feed at no temperature":      func() (float64, string) { return FeedAt(math.NaN(), math.Inf(-1), []float64{290}, []float64{1}) },
		"more protein than feed":      func() (float64, string) { return AmmoniaMade(1, 1.2, 0.092) },
		"protein below nothing":       func() (float64, string) { return AmmoniaMade(1, -0.1, 0.092) },
		"protein that is no number":   func() (float64, string) { return AmmoniaMade(1, math.NaN(), 0.092) },
		"fish below nothing":          func() (float64, string) { return BreathAt(-1, 1, 293, 293, 2) },
		"grains without a size":       func() (float64, string) { return SmoothGrainSurface(0.4, 0) },
		"grains that are nothing":     func() (float64, string) { return SmoothGrainSurface(1, 0.02) },
		"a tank without flow":         func() (float64, string) { return AmmoniaLevel(1, 2, 1, 0) },
		"a loop without bacteria":     func() (float64, string) { return AmmoniaLevel(1, 0, 1, 1) },
		"no ammonia at all":           func() (float64, string) { return AmmoniaFlow(1, 0, 0.5) },
		"a pass that takes all twice": func() (float64, string) { return AmmoniaFlow(1, 1e-3, 2) },
		"air below nothing":           func() (float64, string) { return StandardTransfer(-1, 0.02, 1) },
		"a transfer below nothing":    func() (float64, string) { return FieldTransfer(-1, 0.9, 293) },
		"neither flow nor air":        func() (float64, string) { return SteadyOxygen(0, 9e-3, 0, 9e-3, 1e-6) },
		"a tank full of fish":         func() (float64, string) { return StillTime(7e-3, 3e-3, 1, 1000, 1e-6) },
		"the same with air":           func() (float64, string) { return SinkTime(7e-3, 3e-3, 1, 1000, 1e-3, 9e-3, 1e-4) },
		"the same with backup air":    func() (float64, string) { return WithBackup(0, 3600, 7e-3, 3e-3, 1, 1000, 1e-3, 9e-3, 1e-4) },
		"chlorine in no water":        func() (float64, string) { return TopUpChlorine(1e-3, 1, 0) },
	} {
		if x, why := f(); !math.IsNaN(x) || why == "" {
			t.Errorf("%s: %v, %q", name, x, why)
		}
	}
}

func TestTheEndsOfAnAnswer(t *testing.T) {
	for name, c := range map[string]struct {
		got  func() (float64, string)
		want float64
	}{
		"danger at the start":              {func() (float64, string) { return StillTime(3e-3, 3e-3, 1, 1, 1e-6) }, 0},
		"fish that do not breathe":         {func() (float64, string) { return StillTime(7e-3, 3e-3, 1, 1, 0) }, aYear},
		"a handful of fish in a lake":      {func() (float64, string) { return StillTime(7e-3, 3e-3, 1e9, 1, 1e-9) }, aYear},
		"air that holds the danger off":    {func() (float64, string) { return SinkTime(7e-3, 3e-3, 1, 1, 1e-3, 9e-3, 1e-6) }, aYear},
		"alkalinity at its end":            {func() (float64, string) { return AlkalinityTime(leastAlkalinity, 1e-3) }, 0},
		"alkalinity that rises":            {func() (float64, string) { return AlkalinityTime(0.06, -1e-3) }, aYear},
		"a tank without fish":              {func() (float64, string) { return AmmoniaLevel(0, 0, 0, 1) }, 0},
		"nitrate that plants eat":          {func() (float64, string) { return NitrateLevel(0, 0) }, 0},
		"a stone at the surface":           {func() (float64, string) { return StandardTransfer(1e-3, 0.02, 0) }, 0},
		"a stone fifty metres deep":        {func() (float64, string) { return StandardTransfer(1e-3, 0.04, 50) }, oxygenOfAir * 1e-3},
		"a cold day":                       {func() (float64, string) { return FeedAt(280, 285, []float64{280}, []float64{1}) }, 0},
		"a day at the edge of feeding":     {func() (float64, string) { return FeedAt(285, 285, []float64{280}, []float64{1}) }, 1},
		"two feeds for one temperature":    {func() (float64, string) { return FeedAt(290, 0, []float64{290, 290}, []float64{1, 2}) }, 1},
		"a backup that nobody starts":      {func() (float64, string) { return WithBackup(9e9, 3600, 7e-3, 3e-3, 1, 0, 1e-3, 9e-3, 1e-6) }, 4e3},
		"a backup that holds on for years": {func() (float64, string) { return WithBackup(0, 9e9, 7e-3, 3e-3, 1, 0, 1e-3, 9e-3, 1e-6) }, aYear},
	} {
		if x, _ := c.got(); !near(x, c.want) {
			t.Errorf("%s: %v and not %v", name, x, c.want)
		}
	}
}

// Where more ammonia is made than turned there is no steady level, and the number says so.
func TestAmmoniaThatRisesWithoutEndSaysSo(t *testing.T) {
	if x, why := AmmoniaLevel(2, 1, 2, 1e3); why == "" || !near(x, 2e-3+2e-3) {
		t.Errorf("%v, %q", x, why)
	}
	if _, why := AmmoniaLevel(1, 1, 1, 1e3); why != "" {
		t.Errorf("what is just turned is %q", why)
	}
}

// Each formula keeps the direction that nature has, over random loops.
func TestDirections(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	between := func(low, high float64) float64 { return low + (high-low)*r.Float64() }
	for range 20000 {
		start, danger := between(4e-3, 9e-3), between(2e-3, 5e-3)
		volume, mass := between(0.2, 10), between(0.1, 40)
		used := mass * between(50, 500) * 1e-6 / 3600
		full := between(7e-3, 11e-3)
		start = math.Min(start, full)
		transfer := between(0, 2) * used / 4e-3
		lasts, wait := between(0, 24)*3600, between(0, 2)*3600

		still, why := StillTime(start, danger, volume, mass, used)
		if math.IsNaN(still) {
			if volume > mass/1000 || why == "" {
				t.Fatalf("%v m3 with %v kg: %q", volume, mass, why)
			}
			continue
		}
		sink, _ := SinkTime(start, danger, volume, mass, transfer, full, used)
		backed, _ := WithBackup(wait, lasts, start, danger, volume, mass, transfer, full, used)
		for name, pair := range map[string][2]float64{
			"air lengthens the time":               {still, sink},
			"a backup never shortens it":           {still, backed},
			"nor is it longer than air for ever":   {backed, math.Max(sink, still) + lasts + wait},
			"more water":                           {still, first(StillTime(start, danger, volume*1.1, mass, used))},
			"fewer fish":                           {still, first(StillTime(start, danger, volume, mass*0.9, used*0.9))},
			"a longer battery":                     {backed, first(WithBackup(wait, lasts*1.2, start, danger, volume, mass, transfer, full, used))},
			"more backup air":                      {backed, first(WithBackup(wait, lasts, start, danger, volume, mass, transfer*1.2, full, used))},
			"a lower danger":                       {still, first(StillTime(start, danger*0.9, volume, mass, used))},
			"water that holds more":                {first(SteadyOxygen(1e-4, start, transfer, full, used)), first(SteadyOxygen(1e-4, start, transfer, full*1.1, used))},
			"a deeper stone":                       {first(StandardTransfer(1e-4, 0.02, volume)), first(StandardTransfer(1e-4, 0.02, volume*1.1))},
			"warmer fish":                          {first(BreathAt(mass, 7e-8, 290, 298, 2)), first(BreathAt(mass, 7e-8, 291, 298, 2))},
			"coarser grains":                       {first(SmoothGrainSurface(0.4, volume/50)), first(SmoothGrainSurface(0.4, volume/60))},
			"more bacteria":                        {-first(AmmoniaLevel(used, used*2, used, 1e-3)), -first(AmmoniaLevel(used, used*2.2, used, 1e-3))},
			"more flow":                            {-first(AmmoniaLevel(used, used*2, used, 1e-3)), -first(AmmoniaLevel(used, used*2, used, 1.2e-3))},
			"more renewal of the nitrate":          {-first(NitrateLevel(3e-3, 0.02)), -first(NitrateLevel(3e-3, 0.03))},
			"more water for the chlorine of a day": {-first(TopUpChlorine(1e-3, 0.01, volume)), -first(TopUpChlorine(1e-3, 0.01, volume*1.2))},
			"more alkalinity":                      {first(AlkalinityTime(start*8, 0.02)), first(AlkalinityTime(start*9, 0.02))},
		} {
			if pair[1] < pair[0]-1e-9*math.Abs(pair[0]) {
				t.Fatalf("%s: %v and then %v", name, pair[0], pair[1])
			}
		}
	}
}

func first(x float64, _ string) float64 { return x }

// Between two temperatures of its list the feed lies between theirs; it does not jump, and passes through each.
func TestFeedRunsStraightThroughItsList(t *testing.T) {
	at, feed := []float64{294, 287, 301}, []float64{120, 38, 126} // in no order
	for i := range at {
		if x, _ := FeedAt(at[i], 0, at, feed); x != feed[i] {
			t.Errorf("at %v K it is %v and not %v", at[i], x, feed[i])
		}
	}
	last, _ := FeedAt(280, 0, at, feed)
	for temperature := 280.0; temperature < 310; temperature += 0.01 {
		x, why := FeedAt(temperature, 0, at, feed)
		if why != "" || x < 38 || x > 126 || x < last || x-last > 0.13 {
			t.Fatalf("at %v K it is %v after %v, %q", temperature, x, last, why)
		}
		last = x
	}
	if last != 126 {
		t.Errorf("above its list it is %v", last)
	}
}

// With less and less air the time comes down to that of still water.
func TestSinkingComesDownToStillWater(t *testing.T) {
	const start, danger, volume, mass, full = 7e-3, 3e-3, 1.0, 20.0, 8.26e-3
	used := mass * 200e-6 / 3600
	still, _ := StillTime(start, danger, volume, mass, used)
	last := aYear
	for _, transfer := range []float64{3e-4, 1e-4, 1e-5, 1e-6, 1e-7, 1e-8} {
		sink, _ := SinkTime(start, danger, volume, mass, transfer, full, used)
		if sink < still || sink > last {
			t.Errorf("at %v m3/s it is %v, between %v and %v", transfer, sink, still, last)
		}
		last = sink
	}
	if math.Abs(last/still-1) > 1e-4 {
		t.Errorf("it ends at %v and not at %v", last, still)
	}
}

// The closed answers are those of the balance stepped through in small steps.
func TestTheBalanceSteppedThrough(t *testing.T) {
	const start, danger, volume, mass, full = 7e-3, 3e-3, 1.0, 30.0, 8.26e-3
	used := mass * 250e-6 / 3600
	water := volume - mass/1000
	for _, c := range []struct{ wait, lasts, transfer float64 }{{0, 0, 0}, {0, 3600, 2e-4}, {600, 7200, 3e-4}, {900, 1800, 6e-4}, {0, 36000, 1e-4}} {
		want, _ := WithBackup(c.wait, c.lasts, start, danger, volume, mass, c.transfer, full, used)
		level, now := start, 0.0
		for step := 0.1; level > danger && now < 3*86400; now += step {
			k := 0.0
			if now >= c.wait && now < c.wait+c.lasts {
				k = c.transfer
			}
			level += step * (k*(full-level) - used) / water
		}
		if math.Abs(now-want) > 0.002*want+1 {
			t.Errorf("%+v: %v s by steps, %v by the formula", c, now, want)
		}
	}
}

// The tank of a loop without air, stepped through as two stirred tanks in a ring, is not in danger before dryfit says,
// and where the ring turns fast not much later.
func TestTwoTanksInARing(t *testing.T) {
	for _, c := range []struct{ tank, loop, flow, fish, all float64 }{
		{0.94, 2.3, 1.0 / 3600, 9.5 * 200e-6 / 3600, 2.4e-3 / 3600},
		{1, 5, 2.0 / 3600, 4e-3 / 3600, 5e-3 / 3600},
		{3, 4, 3.0 / 3600, 10e-3 / 3600, 13e-3 / 3600},
	} {
		const start, danger = 6.5e-3, 3e-3
		level, _ := LeastOfLoop(start, c.tank, c.loop, c.fish, c.all, c.flow)
		said, _ := StillTime(level, danger, c.loop, 0, c.all)
		a, b, now := start, start, 0.0
		for step := 0.5; a > danger; now += step {
			da := (c.flow*(b-a) - c.fish) / c.tank
			db := (c.flow*(a-b) - (c.all - c.fish)) / (c.loop - c.tank)
			a, b = a+step*da, b+step*db
		}
		if now < said*0.999 || now > said*1.15+60 {
			t.Errorf("%+v: %v s by steps, %v s by the formula", c, now, said)
		}
	}
	if x, why := LeastOfLoop(6e-3, 1, 2, 1e-6, 1e-6, 0); !math.IsNaN(x) || why == "" {
		t.Errorf("without flow it is %v, %q", x, why)
	}
}

// The floor of the factor bites where both are low, and nowhere else.
func TestFactorHasAFloor(t *testing.T) {
	for _, c := range []struct{ t, ph, measured, want float64 }{{0.3, 0.24, 1, 0.25}, {1, 0.39, 1, 0.39}, {1, 0.39, 0.39, 1}, {0.5, 0.5, 1, 0.25}, {0.9, 0.39, 1, 0.351}} {
		if got := Factor(c.t, c.ph, c.measured); !near(got, c.want) {
			t.Errorf("%+v gives %v", c, got)
		}
	}
}
