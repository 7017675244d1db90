package survey

import (
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"fmt"
	"os"
	"testing"
)

func TestTry(t *testing.T) {
	f := "../../testdata/systems/quarry-road.yaml"
	data, _ := os.ReadFile(f)
	s, ps := system.Read(f, data)
	for _, p := range ps {
		fmt.Println(p)
	}
	if s == nil {
		return
	}
	l := Survey(s)
	for _, n := range l.Nodes() {
		if n.Address.Water != "" && n.Address.Water != "usual" {
			continue
		}
		v, ok := n.Value()
		if !ok {
			fmt.Println(n.Address, "GAPS", n.Gaps())
			continue
		}
		fmt.Println(n.Address, quantity.Format(n.Kind, v.X, 0), quantity.Format(n.Kind, v.Low, 0), quantity.Format(n.Kind, v.High, 0), n.Note())
	}
	fmt.Println(len(l.Nodes()), l.Sets)
}
