package survey

import (
	"os"
	"testing"

	"dryfit/internal/system"
)

func read(b *testing.B, name string) *system.System {
	b.Helper()
	data, err := os.ReadFile("../../testdata/systems/" + name)
	if err != nil {
		b.Fatal(err)
	}
	s, problems := system.Read(name, data)
	if len(problems) > 0 {
		b.Fatal(problems)
	}
	return s
}

// Everything about a system in every case: the demo, and larger loops.
func BenchmarkSurvey(b *testing.B) {
	for _, name := range []string{"quarry-road", "quarry-road-as-found", "siphon-beds"} {
		b.Run(name, func(b *testing.B) {
			s := read(b, name+".yaml")
			b.ReportAllocs()
			for b.Loop() {
				Survey(s)
			}
		})
	}
}

// The same by as many workers as there are cores.
func BenchmarkSurveyBeside(b *testing.B) {
	s := read(b, "quarry-road.yaml")
	b.RunParallel(func(p *testing.PB) {
		for p.Next() {
			Survey(s)
		}
	})
}
