package system

import (
	"fmt"
	"os"
	"testing"
)

func TestTry(t *testing.T) {
	f := os.Getenv("F")
	if f == "" {
		f = "../../testdata/systems/quarry-road.yaml"
	}
	b, _ := os.ReadFile(f)
	s, ps := Read("x.yaml", b)
	for _, p := range ps {
		fmt.Println(p)
	}
	if s == nil {
		return
	}
	for _, l := range s.Lines {
		fmt.Println(l.ID, l.Duty)
		for _, p := range l.Pieces {
			a, _ := p.From.Value()
			b, ok := p.To.Value()
			n, ok2 := p.Length.Value()
			in := "-"
			if p.In != nil {
				in = p.In.ID
			}
			fmt.Printf("  %-12s %7.1f %7.1f %v L %7.1f %v fit=%v turn=%.2f dir=%.2f %v in=%s\n", p.Kind, a*1e3, b*1e3, ok, n*1e3, ok2, p.Fitted, p.Turn, p.Direction, p.HasDirection, in)
		}
	}
	for _, x := range s.Round() {
		fmt.Print(x.ID(), " ")
	}
	fmt.Println()
	fmt.Println(len(s.NotLooked()), len(s.Looked()))
}
