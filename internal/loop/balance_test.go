package loop

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

// What the workings say of each line and vessel one after the other is what the
// balance of the whole loop comes to.
func TestTheBalanceAgreesWithTheWorkings(t *testing.T) {
	files, _ := filepath.Glob("../../testdata/systems/*.yaml")
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		s, problems := system.Read(file, data)
		if len(problems) > 0 {
			continue
		}
		v := newSurveyor(s, tables.Embedded(), working.NewLedger())
		v.water()
		r := newRun(v, working.RunClean, "usual")
		r.balance = r.settle(nil)
		r.all()
		if _, known := r.balance.node.Value(); !known {
			t.Logf("%s: %v", filepath.Base(file), r.balance.node.Gaps())
			continue
		}
		for _, vessel := range s.Vessels {
			a, ok1 := r.level(vessel).Value()
			b, ok2 := r.balance.level(vessel).Value()
			if !ok1 || !ok2 {
				t.Logf("%s: %s: %v %v %v", filepath.Base(file), vessel.ID, a, b, r.balance.level(vessel).Gaps())
				continue
			}
			if math.Abs(a.X-b.X) > 2e-4 {
				t.Errorf("%s: %s stands at %.5f, in the balance at %.5f", filepath.Base(file), vessel.ID, a.X, b.X)
			}
		}
		for _, line := range s.Lines {
			if !runs(line) {
				continue
			}
			a, ok1 := r.flow(line).Value()
			b, ok2 := r.balance.leaving(line).Value()
			if ok1 && ok2 && math.Abs(a.X-b.X) > 1e-3*a.X {
				t.Errorf("%s: %s carries %v, in the balance %v", filepath.Base(file), line.ID, a.X*3.6e6, b.X*3.6e6)
			}
		}
	}
}
