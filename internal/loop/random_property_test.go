package loop

import (
	"flag"
	"fmt"
	"maps"
	"math"
	"slices"
	"testing"

	"dryfit/internal/network"
	"dryfit/internal/pipeflow"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

var (
	manyLoops = flag.Int("loops", 40, "how many random loops are drawn")
	firstLoop = flag.Uint64("from", 0, "the first of them")
)

// What a random loop comes to in one case.
const (
	rests    = "comes to rest"
	spills   = "spills"
	gives    = "its pump gives nothing"
	drawsAir = "its pump draws air"
	noRest   = "no rest is found"
)

// Most random loops come to rest; of the others a run in time shows why not. Where
// they come to rest in time is where the balance has them. Nothing is made or lost
// on the way, and nothing is not a number.
func TestRandomLoops(t *testing.T) {
	outcomes, regimes := map[string]int{}, map[string]int{}
	scenes, steps := 0, 0
	for seed := *firstLoop; seed < *firstLoop+uint64(*manyLoops); seed++ {
		s, problems := system.Read("random.yaml", []byte(someLoop(seed, 0).file()))
		if len(problems) > 0 {
			t.Fatalf("loop %d: %v", seed, problems)
		}
		l := working.NewLedger()
		_, all := running(s, tablesForTest, l)
		reference := runOf(all, working.RunClean, "usual")
		for _, r := range []*run{reference, runOf(all, working.RunWorst, "usual"), runOf(all, working.RunLeast, "low")} {
			c := trialRun{t, seed, r, reference.balance}
			outcomes[r.runCase+" "+c.outcome()]++
			if r == reference {
				c.seen(regimes)
			}
			if r.runCase == working.RunWorst {
				n, k := c.scenes()
				scenes, steps = scenes+n, max(steps, k)
			}
		}
		for _, node := range l.Nodes() {
			value, known := node.Value()
			if known && (math.IsNaN(value.X) || math.IsInf(value.X, 0)) || !known && len(node.Gaps()) == 0 {
				t.Errorf("loop %d: %s is %v (known: %v)", seed, node.Address, value.X, known)
			}
		}
	}
	for _, name := range slices.Sorted(maps.Keys(outcomes)) {
		t.Logf("%6d %s", outcomes[name], name)
	}
	t.Logf("%6d scenes, of at most %d steps", scenes, steps)
	if n := outcomes[working.RunClean+" "+rests]; float64(n) < 0.85*float64(*manyLoops) {
		t.Errorf("only %d of %d loops come to rest", n, *manyLoops)
	}
	for _, regime := range []string{string(pipeflow.Laminar), string(pipeflow.Turbulent), drowned, riser, partFull, "self-venting", "surging", "free weir", "drowned weir", "divided"} {
		t.Logf("%6d %s", regimes[regime], regime)
		if regimes[regime] < min(200, *manyLoops/20) {
			t.Errorf("only %d %s", regimes[regime], regime)
		}
	}
}

// trialRun is a random loop in one case.
type trialRun struct {
	t    *testing.T
	seed uint64
	*run
	reference *balanced
}

func (c trialRun) fail(format string, a ...any) {
	c.t.Helper()
	c.t.Errorf("loop %d, %s, water %s: %s", c.seed, c.runCase, c.temperature, fmt.Sprintf(format, a...))
}

// levels is where a balance has the water; nil where there is none.
func (b *balanced) levels() []float64 {
	var z []float64
	for i := range b.y.nodes {
		v, known := b.z(i).Value()
		if !known {
			return nil
		}
		z = append(z, v.X)
	}
	return z
}

// outcome says what the loop comes to, and has a run in time confirm it: from
// anywhere with the pump's vessel held at its level in the case of reference, from
// where the water stands there in every other.
func (c trialRun) outcome() string {
	g := c.stage()
	x := values(g.s.inputs)
	held := c.balance == c.reference
	from, z := g.from(x), c.balance.levels()
	if !held {
		if from = c.reference.levels(); from == nil {
			return "has no case of reference"
		}
	}
	sc := scene{lasts: 1e6, change: func(n *network.Network, _ []float64) {
		for i, p := range g.nodes {
			n.Nodes[i].Fixed = p.fixed || held && p.body && g.pumpDraws(p.vessel)
		}
	}}
	n, r := g.play(sc, append(x, from...))
	c.sound("as it runs", n, r, from)
	over, dry := false, false // in time
	for i, p := range g.nodes {
		if !p.body {
			continue
		}
		_, at := r.Reaches(i, n.Nodes[i].Rim+1e-6)
		over = over || at
		if level, ok := g.drawn[p.vessel]; ok {
			_, at := falls(r, i, x[level]+band)
			dry = dry || at
		}
	}
	if z == nil {
		why := c.balance.z(0).Gaps()[0].Why
		if r.Still && !over && !dry {
			c.fail("no rest is found (%s), and it comes to rest in time", why)
		}
		return noRest
	}
	for i, p := range g.nodes {
		if level, draws := g.drawn[p.vessel]; p.body && draws && !held && z[i] < x[level]+band {
			if !dry {
				c.fail("the pump in %s draws air, and in time it does not", p.name)
			}
			return drawsAir
		}
	}
	for i, p := range g.nodes {
		if p.body && z[i] > n.Nodes[i].Rim {
			if !over {
				c.fail("%s spills, and in time nothing does", p.name)
			}
			return spills
		}
	}
	flows := r.Q[len(r.Q)-1]
	for i, k := range g.lines {
		if q, known := c.balance.flowOf(i); k.pumped && !k.aside && known && q < 1e-9 {
			if flows[i] > 1e-8 {
				c.fail("%s carries nothing, and %.3g m3/s in time", k.name, flows[i])
			}
			return gives
		}
	}
	if over || dry || r.Reason != "" {
		return "comes to rest, by way of " + map[bool]string{true: spills, false: drawsAir}[over]
	}
	through := make([]float64, len(g.nodes)) // where nothing flows the water stands anywhere under the outlets, and elsewhere that much less
	for i, k := range g.lines {
		if k.to != network.Outside {
			through[k.to] += flows[i]
		}
	}
	for i, end := range r.Ends() {
		if (held || slices.Min(through) > 1e-7) && through[i] > 1e-7 && math.Abs(end-z[i]) > 0.002 {
			c.fail("%s stands at %.4f m, and in time comes to %.4f m (still: %v)", g.nodes[i].name, z[i], end, r.Still)
		}
	}
	return rests
}

// flowOf is the flow of a strand in a balance.
func (b *balanced) flowOf(i int) (float64, bool) {
	if i >= len(b.y.lines) {
		return 0, false
	}
	v, known := b.q(i).Value()
	return v.X, known
}

// sound wants a run in time without water made or lost, with numbers only, and an end.
func (c trialRun) sound(what string, n *network.Network, r network.Run, from []float64) {
	c.t.Helper()
	if r.Reason != "" {
		c.fail("%s: after %.1f s %s", what, r.Lasts(), r.Reason)
	}
	if whole := n.Held(from); math.Abs(r.Drift) > 1e-6*whole {
		c.fail("%s: %.3g of %.3g m3 is made or lost", what, r.Drift, whole)
	}
	for i := range r.T {
		for _, y := range append(slices.Clone(r.Z[i]), r.Q[i]...) {
			if math.IsNaN(y) || math.IsInf(y, 0) {
				c.fail("%s: at %.0f s something is %v", what, r.T[i], y)
				return
			}
		}
	}
}

// scenes follows every scene of the loop, and counts them and the most steps that one of them takes.
func (c trialRun) scenes() (count, steps int) {
	g := c.stage()
	for _, sc := range g.scenes(g.running(c.balance)) {
		var in []working.Input
		for _, z := range sc.from {
			in = append(in, working.In("z", z))
		}
		if len(gapsOf(append(in, sc.needs...))) > 0 {
			continue
		}
		from := values(in)
		n, r := g.play(sc, append(append(values(g.s.inputs), from...), values(sc.needs)...))
		c.sound(sc.kase+", "+sc.fault, n, r, from)
		count, steps = count+1, max(steps, len(r.T))
	}
	return count, steps
}

// seen counts the ways in which water runs in a loop in its case of reference.
func (c trialRun) seen(regimes map[string]int) {
	b := c.balance
	z := b.levels()
	if z == nil {
		return
	}
	for _, line := range c.Lines {
		if n := c.l.Find(c.address(line.ID, "reynolds")); n != nil {
			if re, known := n.Value(); known && re.X > 0 {
				regimes[string(pipeflow.RegimeOf(re.X))]++
			}
		}
		if n := c.l.Find(c.address(line.ID, "drop_froude")); n != nil {
			if fr, known := n.Value(); known && fr.X > 0 && fr.X < 1 {
				regimes[map[bool]string{true: "self-venting", false: "surging"}[fr.X < pipeflow.SelfVenting]]++
			}
		}
	}
	for _, f := range c.l.Facts() {
		if f.Name == "piece_regime" {
			regimes[f.Word]++
		}
	}
	parts := map[int]int{}
	for i, k := range b.y.lines {
		q, _ := b.flowOf(i)
		if q < 1e-7 {
			continue
		}
		if k.line != nil {
			parts[k.from]++
			continue
		}
		crest, _ := linear("", b.y.nodes[k.from].vessel.Above(b.y.nodes[k.from].vessel.Weir.CrestAt)).Value()
		regimes[map[bool]string{true: "drowned weir", false: "free weir"}[z[k.to] > crest.X]]++
	}
	for node, n := range parts {
		if n > 1 && !b.y.nodes[node].fixed {
			regimes["divided"]++
		}
	}
}
