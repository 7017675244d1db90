package tables

import (
	"io/fs"
	"math"
	"slices"
	"strings"
)

// Cure is what one maker says of solvent cement for a range of sizes at a range
// of temperatures; kelvin and seconds.
type Cure struct {
	Maker                             string // cautious, quick, graded
	InchLeast, InchMost               float64
	TemperatureLeast, TemperatureMost float64
	Set                               Bound // before it may be handled
	Hold                              float64
	Origin
}

func (t *Tables) readCuring(files fs.FS) error {
	return each(files, "curing.csv", "maker inch_least inch_most least_f most_f set_min cure_h", func(r row) {
		c := Cure{
			Maker: r.oneOf("maker", Cautious, "quick", "graded"), InchLeast: r.positive("inch_least"), InchMost: r.positive("inch_most"),
			TemperatureLeast: fahrenheit(r.number("least_f")), TemperatureMost: fahrenheit(r.number("most_f")),
			Hold: r.positive("cure_h") * 3600, Origin: r.origin(),
		}
		set := r.bound("set_min")
		c.Set = Bound{set.Value * 60, set.Known}
		r.key(c.Maker, r.text("inch_least"), r.text("least_f"))
		r.ordered("sizes", c.InchLeast, c.InchMost)
		r.ordered("temperatures", c.TemperatureLeast, c.TemperatureMost)
		r.ordered("set, cure", c.Set.Value, c.Hold)
		t.curing = append(t.curing, c)
	})
}

func fahrenheit(f float64) float64 { return (f-32)/1.8 + 273.15 }

// Cautious is the maker whose times dryfit goes by.
const Cautious = "cautious"

// CureTime finds what a maker says of pipe of a nominal size in inches at a
// temperature in kelvin. Between two groups of sizes the larger counts; at the
// edge between two temperatures the colder.
func (t *Tables) CureTime(maker string, inches, temperature float64) (Cure, bool) {
	const hair = 1e-6
	var found Cure
	for _, c := range t.curing {
		fits := c.Maker == maker && inches <= c.InchMost+hair && temperature >= c.TemperatureLeast-hair && temperature <= c.TemperatureMost+hair
		if fits && (found.Maker == "" || c.InchMost < found.InchMost || c.InchMost == found.InchMost && c.Hold > found.Hold) {
			found = c
		}
	}
	return found, found.Maker != ""
}

// Makers lists the makers of the table of curing.
func (t *Tables) Makers() []string { return distinct(t.curing, func(c Cure) string { return c.Maker }) }

// Takeoff is how long fittings are from their middle to the bottom of their sockets; metres.
type Takeoff struct {
	Standard, Size             string
	Elbow90, Elbow45, Coupling Bound
	Origin
}

func (t *Tables) readTakeoffs(files fs.FS) error {
	t.takeoffs = map[string]Takeoff{}
	return each(files, "takeoffs.csv", "standard size elbow_90_mm elbow_45_mm gap_mm", func(r row) {
		o := Takeoff{
			Standard: r.text("standard"), Size: r.text("size"),
			Elbow90: r.milliBound("elbow_90_mm"), Elbow45: r.milliBound("elbow_45_mm"), Coupling: r.milliBound("gap_mm"), Origin: r.origin(),
		}
		r.key(pipeKey(o.Standard, "", o.Size))
		if o.Elbow45.Known && o.Elbow90.Known {
			r.ordered("45 degrees, 90 degrees", o.Elbow45.Value, o.Elbow90.Value)
		}
		t.takeoffs[pipeKey(o.Standard, "", o.Size)] = o
	})
}

// Takeoff finds the take-offs of the fittings that go on a pipe.
func (t *Tables) Takeoff(pipeStandard, size string) (Takeoff, bool) {
	o, ok := t.takeoffs[pipeKey(fittingsFor(pipeStandard).lengths, "", size)]
	return o, ok
}

// SocketFor finds the solvent socket of the fittings that go on a pipe.
func (t *Tables) SocketFor(pipeStandard, size string) (Socket, bool) {
	return t.Socket(fittingsFor(pipeStandard).sockets, size)
}

// Metric says whether a pipe is of a metric standard, named by its outside diameter.
func (t *Tables) Metric(pipeStandard string) bool {
	return fittingsFor(pipeStandard).lengths == "ISO 264"
}

type fittings struct{ sockets, lengths string }

// fittingsFor is the standards of the solvent-weld fittings that go on the pipe of a standard.
func fittingsFor(pipeStandard string) fittings {
	return map[string]fittings{
		"astmd1785":  {"ASTM D2466", "ASTM D2466"},
		"astmd2241":  {"ASTM D2466", "ASTM D2466"},
		"astmd2665":  {"ASTM D2665", "ASTM D2466"},
		"as/nzs1477": {"AS/NZS 1477", "AS/NZS 1477"},
		"din8062":    {"ISO 727-1", "ISO 264"},
		"eniso1452":  {"ISO 727-1", "ISO 264"},
	}[standardKey(pipeStandard)]
}

// Saw is a hole saw; metres. Inch is its size in inches, if it is an inch saw.
type Saw struct {
	Size float64
	Inch string
	Origin
}

func (t *Tables) readSaws(files fs.FS) error {
	return each(files, "hole_saws.csv", "mm inch", func(r row) {
		s := Saw{Size: r.milli("mm"), Inch: r.maybe("inch"), Origin: r.origin()}
		r.key(r.text("mm"))
		t.saws = append(t.saws, s)
	})
}

// SawFor finds the hole saw nearest to a hole.
func (t *Tables) SawFor(hole float64) Saw {
	return slices.MinFunc(t.saws, func(a, b Saw) int {
		d := math.Abs(a.Size-hole) - math.Abs(b.Size-hole)
		switch {
		case d < 0:
			return -1
		case d > 0:
			return 1
		}
		return strings.Compare(a.Inch, b.Inch)
	})
}

// SealsWanting lists the rubber wall seals that want a hole, within a tolerance.
func (t *Tables) SealsWanting(hole, within float64) []Seal {
	var out []Seal
	for _, s := range t.seals {
		if s.HoleLeast-within <= hole && hole <= s.HoleMost+within {
			out = append(out, s)
		}
	}
	return out
}

// BulkheadHole is the range of holes that bulkhead fittings of a size want, over their bodies.
func (t *Tables) BulkheadHole(size string) (least, most float64, source Origin, found bool) {
	for _, b := range t.bulkheads {
		if pipeKey("", "", b.Size) != pipeKey("", "", size) {
			continue
		}
		if !found {
			least, most, source, found = b.HoleLeast, b.HoleMost, b.Origin, true
		}
		least, most = math.Min(least, b.HoleLeast), math.Max(most, b.HoleMost)
	}
	return least, most, source, found
}
