package loop

import (
	"os"
	"testing"

	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

func demo(b testing.TB) *system.System {
	b.Helper()
	data, err := os.ReadFile("../../testdata/systems/quarry-road.yaml")
	if err != nil {
		b.Fatal(err)
	}
	s, problems := system.Read("quarry-road.yaml", data)
	if len(problems) > 0 {
		b.Fatal(problems)
	}
	return s
}

// The whole of what this package works out of the demo loop: every state and every scene.
func BenchmarkDemo(b *testing.B) {
	s, t := demo(b), tables.Embedded()
	for b.Loop() {
		Survey(s, t, working.NewLedger())
	}
}

// The scenes of the demo loop alone: laid out, followed, entered.
func BenchmarkDemoScenes(b *testing.B) {
	s, t := demo(b), tables.Embedded()
	for b.Loop() {
		b.StopTimer()
		v, runs := running(s, t, working.NewLedger())
		b.StartTimer()
		v.happens(runs)
	}
}
