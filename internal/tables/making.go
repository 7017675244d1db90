package tables

import (
	"io/fs"
	"slices"
)

// Seal is a rubber seal for a pipe through a wall; metres.
type Seal struct {
	Size                               string
	Outside, OutsideLeast, OutsideMost float64 // of the pipe it takes
	Hole, HoleLeast, HoleMost          float64
	WallLeast, WallMost                float64
	Note                               string
	Origin
}

func (t *Tables) readSeals(files fs.FS) error {
	return each(files, "seals.csv", "size outside_mm outside_least_mm outside_most_mm hole_mm hole_least_mm hole_most_mm wall_least_mm wall_most_mm note", func(r row) {
		s := Seal{
			Size: r.key(r.text("size")), Outside: r.milli("outside_mm"), OutsideLeast: r.milli("outside_least_mm"), OutsideMost: r.milli("outside_most_mm"),
			Hole: r.milli("hole_mm"), HoleLeast: r.milli("hole_least_mm"), HoleMost: r.milli("hole_most_mm"),
			WallLeast: r.milli("wall_least_mm"), WallMost: r.milli("wall_most_mm"), Note: r.maybe("note"), Origin: r.origin(),
		}
		r.ordered("outside, hole", s.OutsideLeast, s.Outside, s.OutsideMost, s.HoleLeast, s.Hole, s.HoleMost)
		r.ordered("wall", s.WallLeast, s.WallMost)
		t.seals = append(t.seals, s)
	})
}

// Seals lists the rubber wall seals, smallest first.
func (t *Tables) Seals() []Seal { return slices.Clone(t.seals) }

// SealFor finds the rubber wall seal that takes a pipe of the outside diameter.
func (t *Tables) SealFor(outside float64) (Seal, bool) {
	return find(t.seals, func(s Seal) bool { return s.OutsideLeast <= outside && outside <= s.OutsideMost })
}

// Bulkhead is a threaded fitting through a wall; metres.
type Bulkhead struct {
	Size, Body                string // body: Sch 40, Sch 80
	Hole, HoleLeast, HoleMost float64
	Origin
}

func (t *Tables) readBulkheads(files fs.FS) error {
	return each(files, "bulkheads.csv", "size body hole_mm hole_least_mm hole_most_mm", func(r row) {
		b := Bulkhead{
			Size: r.text("size"), Body: r.oneOf("body", "Sch 40", "Sch 80"),
			Hole: r.milli("hole_mm"), HoleLeast: r.milli("hole_least_mm"), HoleMost: r.milli("hole_most_mm"), Origin: r.origin(),
		}
		r.key(b.Size, b.Body)
		r.ordered("hole", b.HoleLeast, b.Hole, b.HoleMost)
		t.bulkheads = append(t.bulkheads, b)
	})
}

// Bulkhead finds a bulkhead fitting by size and body.
func (t *Tables) Bulkhead(size, body string) (Bulkhead, bool) {
	return find(t.bulkheads, func(b Bulkhead) bool { return pipeKey("", b.Body, b.Size) == pipeKey("", body, size) })
}

// Drum is a drum of a common size; metres and cubic metres.
type Drum struct {
	Key             string
	Volume          float64 // nominal
	Outside, Inside Bound   // diameters
	Height          float64
	HeightInside    bool
	Note            string
	Origin
}

func (t *Tables) readDrums(files fs.FS) error {
	return each(files, "drums.csv", "key litres outside_mm inside_mm height_mm height_is note", func(r row) {
		d := Drum{
			Key: r.key(r.text("key")), Volume: r.positive("litres") / 1000, Outside: r.milliBound("outside_mm"), Inside: r.milliBound("inside_mm"),
			Height: r.milli("height_mm"), HeightInside: r.oneOf("height_is", "outside", "inside") == "inside", Note: r.maybe("note"), Origin: r.origin(),
		}
		if !d.Outside.Known && !d.Inside.Known {
			r.wrong("a drum needs a diameter")
		}
		t.drums = append(t.drums, d)
	})
}

// Drum finds a drum by its key, as drum-120.
func (t *Tables) Drum(key string) (Drum, bool) {
	return find(t.drums, func(d Drum) bool { return d.Key == key })
}

// Drums lists the drums.
func (t *Tables) Drums() []Drum { return slices.Clone(t.drums) }

// Hose is a hose of a nominal bore; metres. The mandrel figures are for hose
// made on a rigid mandrel.
type Hose struct {
	Nominal                   float64
	BoreLeast, BoreMost       float64
	MandrelLeast, MandrelMost float64
	Origin
}

func (t *Tables) readHoses(files fs.FS) error {
	return each(files, "hoses.csv", "nominal bore_least_mm bore_most_mm mandrel_least_mm mandrel_most_mm", func(r row) {
		r.key(r.text("nominal"))
		h := Hose{r.milli("nominal"), r.milli("bore_least_mm"), r.milli("bore_most_mm"), r.milli("mandrel_least_mm"), r.milli("mandrel_most_mm"), r.origin()}
		r.ordered("bore", h.BoreLeast, h.MandrelLeast, h.MandrelMost, h.BoreMost)
		t.hoses = append(t.hoses, h)
	})
}

// HosesFor lists the hoses whose bore may be the one given, smallest first.
func (t *Tables) HosesFor(bore float64) []Hose {
	var found []Hose
	for _, h := range t.hoses {
		if h.BoreLeast <= bore && bore <= h.BoreMost {
			found = append(found, h)
		}
	}
	return found
}

// Socket is a solvent socket; metres. Entrance, Bottom and Tolerance (of the
// entrance) are known for tapered ones.
type Socket struct {
	Standard, Size              string
	Entrance, Bottom, Tolerance Bound
	Depth                       float64 // least
	Origin
}

func (t *Tables) readSockets(files fs.FS) error {
	t.sockets = map[string]Socket{}
	return each(files, "sockets.csv", "standard size entrance_mm bottom_mm tolerance_mm depth_mm", func(r row) {
		s := Socket{
			Standard: r.text("standard"), Size: r.text("size"),
			Entrance: r.milliBound("entrance_mm"), Bottom: r.milliBound("bottom_mm"), Tolerance: r.milliBound("tolerance_mm"),
			Depth: r.milli("depth_mm"), Origin: r.origin(),
		}
		r.key(pipeKey(s.Standard, "", s.Size))
		if s.Entrance.Known != s.Bottom.Known || s.Entrance.Known != s.Tolerance.Known {
			r.wrong("a tapered socket needs entrance, bottom and tolerance")
		}
		r.ordered("bottom, entrance", s.Bottom.Value, s.Entrance.Value)
		t.sockets[pipeKey(s.Standard, "", s.Size)] = s
	})
}

// Socket finds a solvent socket by standard and size.
func (t *Tables) Socket(standard, size string) (Socket, bool) {
	s, ok := t.sockets[pipeKey(standard, "", size)]
	return s, ok
}

func find[T any](items []T, is func(T) bool) (T, bool) {
	if i := slices.IndexFunc(items, is); i >= 0 {
		return items[i], true
	}
	var none T
	return none, false
}
