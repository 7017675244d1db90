package survey

import "testing"

// Everything about a system in every case: the demo, and larger loops.
func BenchmarkSurvey(b *testing.B) {
	for _, name := range []string{"quarry-road", "quarry-road-as-found", "siphon-beds"} {
		b.Run(name, func(b *testing.B) {
			s := demo(b, name+".yaml")
			b.ReportAllocs()
			for b.Loop() {
				Survey(s)
			}
		})
	}
}

// The same by as many workers as there are cores.
func BenchmarkSurveyBeside(b *testing.B) {
	b.RunParallel(func(p *testing.PB) {
		s := demo(b, "quarry-road.yaml")
		for p.Next() {
			Survey(s)
		}
	})
}
