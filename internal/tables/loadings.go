package tables

import (
	"io/fs"
	"slices"
)

// Loading is what others load a settler with: flow over plan area, m/s.
type Loading struct {
	Key, What   string
	Short       string // how the report calls it
	Least, Most float64
	Removes     string // what was caught at it, in words; may be empty
	Origin
}

func (t *Tables) readLoadings(files fs.FS) error {
	return each(files, "settler_loadings.csv", "key short what least_mm_s most_mm_s removes", func(r row) {
		l := Loading{
			Key: r.key(r.text("key")), Short: r.text("short"), What: r.text("what"), Least: r.milli("least_mm_s"), Most: r.milli("most_mm_s"),
			Removes: r.maybe("removes"), Origin: r.origin(),
		}
		r.ordered("least, most", l.Least, l.Most)
		t.loadings = append(t.loadings, l)
	})
}

// Loadings lists the loadings of settlers in the order of the table.
func (t *Tables) Loadings() []Loading { return slices.Clone(t.loadings) }
