package loop

import (
	"math"
	"os"
	"testing"

	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

// What the ledger says of a scene is what comes out when its courses are looked
// at: the same highest and lowest levels, and the same things at the same times.
func TestWhatAScenesComesToIsWhatItsCoursesShow(t *testing.T) {
	for _, name := range []string{"quarry-road.yaml", "inch-loop.yaml", "common-drum.yaml"} {
		data, err := os.ReadFile("../../testdata/systems/" + name)
		if err != nil {
			t.Fatal(err)
		}
		s, problems := system.Read(name, data)
		if len(problems) > 0 {
			t.Fatalf("%s: %v", name, problems)
		}
		followed := Follow(s, tables.Embedded(), "", "")
		l := working.NewLedger()
		Survey(s, tables.Embedded(), l)
		if len(followed) != len(l.Scenes) || len(followed) == 0 {
			t.Fatalf("%s: %d scenes were followed, of %d", name, len(followed), len(l.Scenes))
		}
		for i, f := range followed {
			sc := l.Scenes[i]
			where := name + ": " + f.Case + ", " + f.Fault
			if sc.Case != f.Case || sc.Fault != f.Fault || len(sc.Missing) != len(f.Missing) || sc.Reason != f.Reason {
				t.Errorf("%s stands as %+v", where, sc)
				continue
			}
			courses := map[string]working.Series{}
			for _, c := range f.Levels {
				courses[c.Subject] = c
			}
			for _, r := range sc.Reached {
				c := courses[r.Subject]
				least, most := math.Inf(1), math.Inf(-1)
				for _, z := range c.Y {
					least, most = math.Min(least, z), math.Max(most, z)
				}
				if last := len(c.Y) - 1; math.Abs(r.Began-c.Y[0]) > 1e-9 || math.Abs(r.Least-least) > 1e-9 || math.Abs(r.Most-most) > 1e-9 || math.Abs(r.Ends-c.Y[last]) > 1e-9 || r.Rim != c.Rim {
					t.Errorf("%s: %+v, and its course goes from %v by %v and %v to %v", where, r, c.Y[0], least, most, c.Y[last])
				}
			}
			if t1 := f.Levels[0].T; sc.Lasted > 0 && math.Abs(sc.Lasted-t1[len(t1)-1]) > 1e-6 {
				t.Errorf("%s lasted %v s, and its courses %v s", where, sc.Lasted, t1[len(t1)-1])
			}
			sameThings(t, where, sc.Happened, f.Happened)
		}
	}
}

// sameThings holds what a scene says against its courses; of several vessels that
// do the same, only the first has its own time.
func sameThings(t *testing.T, where string, got, want []working.Happened) {
	t.Helper()
	if len(got) != len(want) {
		t.Errorf("%s: %v happens, and its courses show %v", where, got, want)
		return
	}
	for _, w := range want {
		found := false
		for _, g := range got {
			same := g.What == w.What && g.Subject == w.Subject
			found = found || same && (math.Abs(g.At-w.At) < 1e-6 || g.OrLater && g.At <= w.At)
		}
		if !found {
			t.Errorf("%s: %v is not among %v", where, w, got)
		}
	}
}
