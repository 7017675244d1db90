package loop

import (
	"strings"
	"testing"

	"dryfit/internal/system"
	"dryfit/internal/working"
)

// thirty is a random loop of thirty lines that comes to rest, with bypass, forks and weirs.
func thirty(b *testing.B) *run {
	b.Helper()
	for seed := range uint64(1000) {
		g := someLoop(seed, 20)
		if strings.Count(g.lines.String(), "pieces:") != 30 || len(g.Tees) < 4 {
			continue
		}
		s, problems := system.Read("thirty.yaml", []byte(g.file()))
		if len(problems) > 0 {
			b.Fatal(problems)
		}
		v := newSurveyor(s, tablesForTest, working.NewLedger())
		v.water()
		r := newRun(v, working.RunClean, "usual")
		if r.settle(nil).levels() != nil {
			return r
		}
	}
	b.Fatal("no loop of thirty lines comes to rest")
	return nil
}

// Steady flow of a loop of thirty lines, from levels that are only guessed.
func BenchmarkThirtyLines(b *testing.B) {
	r := thirty(b)
	y := r.lay()
	y.hold()
	x := values(y.s.inputs)
	for b.Loop() {
		if s := y.build(x).Steady(y.from(x)); !s.Found {
			b.Fatal(s.Reason)
		}
	}
}

// The same, laid out from the system file too.
func BenchmarkThirtyLinesLaid(b *testing.B) {
	r := thirty(b)
	for b.Loop() {
		r.settle(nil)
	}
}
