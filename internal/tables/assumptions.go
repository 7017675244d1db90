package tables

import (
	"io/fs"
	"slices"

	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// Assumption is a value that stands in where a system file is silent. None
// may stand in for an input of a safety clause.
type Assumption struct {
	Key                string
	Value, Least, Most float64 // SI
	Unit               string  // of Value: m, m/s, K, N m/rad, or 1 for a ratio
	Why                string
	Origin
}

func (t *Tables) readAssumptions(files fs.FS) error {
	return each(files, "assumptions.csv", "key value least most unit why", func(r row) {
		a := Assumption{
			Key: r.key(r.text("key")), Value: r.number("value"), Least: r.number("least"), Most: r.number("most"),
			Unit: r.oneOf("unit", "1", "mm", "m", "m/s", "mm/d", "L/h", "K", "N m/rad"), Why: r.text("why"), Origin: r.origin(),
		}
		r.ordered("least, value, most", a.Least, a.Value, a.Most)
		for _, small := range []struct {
			unit, si string
			over     float64
		}{{"mm", "m", 1000}, {"mm/d", "m/s", 1000 * 86400}, {"L/h", "m3/s", 1000 * 3600}} {
			if a.Unit == small.unit {
				a.Value, a.Least, a.Most, a.Unit = a.Value/small.over, a.Least/small.over, a.Most/small.over, small.si
			}
		}
		t.assumptions = append(t.assumptions, a)
	})
}

// Assumption finds an assumption by its key.
func (t *Tables) Assumption(key string) (Assumption, bool) {
	return find(t.assumptions, func(a Assumption) bool { return a.Key == key })
}

// Assumptions lists all assumptions in the order of the table.
func (t *Tables) Assumptions() []Assumption { return slices.Clone(t.assumptions) }

// Assume is a node for a value that the file does not give at a pointer and the
// table of assumptions does. A key that is not in the table leaves the gap.
func (t *Tables) Assume(key, title string, kind quantity.Kind, pointer string) *working.Node {
	a, ok := t.Assumption(key)
	if !ok {
		return working.Unknown(title, kind, pointer, "")
	}
	return working.Assume(title, kind, working.Within(a.Value, a.Least, a.Most), pointer, a.Why+"; "+a.Source, string(a.Sure))
}
