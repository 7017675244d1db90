package tables

import (
	"io/fs"
	"math"
	"slices"

	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// SolidsClass is one class of the waste that settles: its speed in still water of
// 20 degC, m/s, and its share of the mass.
type SolidsClass struct {
	Key, What    string
	Speed, Share float64
	Origin
}

// solidsFigure is one figure of how waste settles and is caught.
type solidsFigure struct {
	key, what string
	value     working.Value
	Origin
}

func (t *Tables) readSolids(files fs.FS) error {
	return each(files, "solids.csv", "kind key what speed_mm_s share value least most", func(r row) {
		key, what := r.key(r.text("key")), r.text("what")
		if r.oneOf("kind", "class", "figure") == "class" {
			c := SolidsClass{Key: key, What: what, Speed: r.milli("speed_mm_s"), Share: r.positive("share"), Origin: r.origin()}
			if n := len(t.solidsClasses); n > 0 {
				r.ordered("speed_mm_s", t.solidsClasses[n-1].Speed, c.Speed)
			}
			t.solidsClasses = append(t.solidsClasses, c)
			return
		}
		f := solidsFigure{key: key, what: what, value: working.Value{X: r.positive("value"), Low: r.number("least"), High: r.number("most")}, Origin: r.origin()}
		r.ordered("least, value, most", f.value.Low, f.value.X, f.value.High)
		if sum := t.settling(); math.Abs(sum-1) > 1e-9 {
			r.wrong("the shares of the classes before it come to %v, and should to 1", sum)
		}
		t.solidsFigures = append(t.solidsFigures, f)
	})
}

func (t *Tables) settling() float64 {
	sum := 0.0
	for _, c := range t.solidsClasses {
		sum += c.Share
	}
	return sum
}

// SolidsClasses lists the classes of waste that settles, the slowest first. Their shares come to 1.
func (t *Tables) SolidsClasses() []SolidsClass { return slices.Clone(t.solidsClasses) }

// SolidsFigure is a node for a figure of how waste settles. A key that is not in
// the table is a mistake of the caller and panics.
func (t *Tables) SolidsFigure(key string, kind quantity.Kind) *working.Node {
	f, ok := find(t.solidsFigures, func(f solidsFigure) bool { return f.key == key })
	if !ok {
		panic("tables: no figure of solids is called " + key)
	}
	return working.Row(f.what, kind, f.value, "", f.Source, string(f.Sure))
}
