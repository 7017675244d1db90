package tables

import (
	"cmp"
	"io/fs"
	"slices"

	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// Species is what a kind of fish bears and wants.
type Species struct {
	Key, Plain                                     string
	Coldest, EaseLow, EaseHigh, Warmest, FeedsFrom float64 // K
	Danger, Stress, Ease                           float64 // oxygen, kg/m3
	Ammonia                                        float64 // total ammonia N for long, kg/m3
	PHLow, PHHigh                                  float64
	Density                                        float64 // in skilled hands, kg/m3
	OxygenUse                                      float64 // routine breath, kg/(kg s)
	At                                             float64 // temperature of that breath, K
	ProteinLeast, ProteinMost                      float64 // share of the feed
	Origin
}

// Medium is a kind of filter or bed media.
type Medium struct {
	Kind       string
	Surface    working.Value // 1/m
	Void       float64
	BedRate    working.Value // ammonia N at 25 degC and pH 8, kg/(m3 s); see HasBedRate
	HasBedRate bool
	Grains     bool
	Origin
}

// Crop is what a bed of plants takes.
type Crop struct {
	Kind                string
	FeedLeast, FeedMost float64 // kg/(m2 s)
	PHLow, PHHigh       float64
	Origin
}

// Base is something that is added against acid.
type Base struct {
	Key, Plain string
	Alkalinity float64 // as CaCO3, of its mass
	Origin
}

// Figure is a figure of biology with its range.
type Figure struct {
	Key, What string
	Value     working.Value // SI
	Unit      string
	Origin
}

// Point is one point of how a rate goes with something.
type Point struct {
	At    float64 // K for the temperature
	Share working.Value
	Origin
}

const (
	gramsADay   = 1e-3 / 86400
	celsiusZero = 273.15
)

func (t *Tables) readSpecies(files fs.FS) error {
	return each(files, "species.csv", "species plain coldest ease_low ease_high warmest feeds_from danger stress ease ammonia ph_low ph_high density oxygen_use at protein_least protein_most", func(r row) {
		warm := func(column string) float64 { return r.number(column) + celsiusZero }
		s := Species{
			Key: r.key(r.text("species")), Plain: r.text("plain"),
			Coldest: warm("coldest"), EaseLow: warm("ease_low"), EaseHigh: warm("ease_high"), Warmest: warm("warmest"), FeedsFrom: warm("feeds_from"),
			Danger: r.milli("danger"), Stress: r.milli("stress"), Ease: r.milli("ease"), Ammonia: r.milli("ammonia"),
			PHLow: r.positive("ph_low"), PHHigh: r.positive("ph_high"), Density: r.positive("density"),
			OxygenUse: r.positive("oxygen_use") * 1e-6 / 3600, At: warm("at"),
			ProteinLeast: r.positive("protein_least") / 100, ProteinMost: r.positive("protein_most") / 100, Origin: r.origin(),
		}
		r.ordered("temperatures", s.Coldest, s.EaseLow, s.EaseHigh, s.Warmest)
		r.ordered("oxygen", s.Danger, s.Stress, s.Ease)
		r.ordered("pH", s.PHLow, s.PHHigh, 14)
		r.ordered("protein", s.ProteinLeast, s.ProteinMost, 1)
		t.species = append(t.species, s)
	})
}

func (t *Tables) readMedia(files fs.FS) error {
	return each(files, "media.csv", "kind surface surface_least surface_most void bed_rate bed_rate_least bed_rate_most grains", func(r row) {
		m := Medium{
			Kind: r.key(r.text("kind")), Surface: working.Within(r.positive("surface"), r.positive("surface_least"), r.positive("surface_most")),
			Void: r.positive("void"), Grains: r.yes("grains"), Origin: r.origin(),
		}
		r.ordered("surface", m.Surface.Low, m.Surface.X, m.Surface.High)
		if rate := r.bound("bed_rate"); rate.Known {
			least, most := r.positive("bed_rate_least"), r.positive("bed_rate_most")
			r.ordered("bed_rate", least, rate.Value, most)
			m.BedRate, m.HasBedRate = working.Within(rate.Value*gramsADay, least*gramsADay, most*gramsADay), true
		}
		t.media = append(t.media, m)
	})
}

func (t *Tables) readCrops(files fs.FS) error {
	return each(files, "crops.csv", "crop feed_least feed_most ph_low ph_high", func(r row) {
		c := Crop{
			Kind: r.key(r.text("crop")), FeedLeast: r.number("feed_least") * gramsADay, FeedMost: r.number("feed_most") * gramsADay,
			PHLow: r.positive("ph_low"), PHHigh: r.positive("ph_high"), Origin: r.origin(),
		}
		r.ordered("feed", c.FeedLeast, c.FeedMost)
		r.ordered("pH", c.PHLow, c.PHHigh, 14)
		t.crops = append(t.crops, c)
	})
}

func (t *Tables) readBases(files fs.FS) error {
	return each(files, "bases.csv", "base plain alkalinity", func(r row) {
		t.bases = append(t.bases, Base{Key: r.key(r.text("base")), Plain: r.text("plain"), Alkalinity: r.positive("alkalinity"), Origin: r.origin()})
	})
}

func (t *Tables) readBiology(files fs.FS) error {
	return each(files, "biology.csv", "key value least most unit what", func(r row) {
		f := Figure{
			Key: r.key(r.text("key")), What: r.text("what"), Value: working.Within(r.positive("value"), r.number("least"), r.number("most")),
			Unit: r.oneOf("unit", "1", "1/m", "g/m2/d"), Origin: r.origin(),
		}
		r.ordered("least, value, most", f.Value.Low, f.Value.X, f.Value.High)
		if f.Unit == "g/m2/d" {
			f.Value = working.Within(f.Value.X*gramsADay, f.Value.Low*gramsADay, f.Value.High*gramsADay)
		}
		t.biology = append(t.biology, f)
	})
}

func (t *Tables) readNitrification(files fs.FS) error {
	t.nitrification = map[string][]Point{}
	return each(files, "nitrification.csv", "of at share least most", func(r row) {
		of := r.oneOf("of", "temperature", "pH")
		r.key(of, r.text("at"))
		p := Point{At: r.number("at"), Share: working.Within(r.positive("share"), r.number("least"), r.number("most")), Origin: r.origin()}
		if of == "temperature" {
			p.At += celsiusZero
		}
		r.ordered("least, share, most", p.Share.Low, p.Share.X, p.Share.High)
		if points := t.nitrification[of]; len(points) > 0 {
			r.ordered("at", points[len(points)-1].At, p.At)
		}
		t.nitrification[of] = append(t.nitrification[of], p)
	})
}

// AllSpecies is every species in the order of the table.
func (t *Tables) AllSpecies() []Species { return slices.Clone(t.species) }

// Species finds a species by its key.
func (t *Tables) Species(key string) (Species, bool) {
	return find(t.species, func(s Species) bool { return s.Key == key })
}

// Medium finds a kind of media.
func (t *Tables) Medium(kind string) (Medium, bool) {
	return find(t.media, func(m Medium) bool { return m.Kind == kind })
}

// Crop finds what a crop takes.
func (t *Tables) Crop(kind string) (Crop, bool) {
	return find(t.crops, func(c Crop) bool { return c.Kind == kind })
}

// Base finds something that is added against acid.
func (t *Tables) Base(key string) (Base, bool) {
	return find(t.bases, func(b Base) bool { return b.Key == key })
}

// Figure finds a figure of biology by its key. A key that is not in the table is
// a mistake of the caller and panics.
func (t *Tables) Figure(key string) Figure {
	f, ok := find(t.biology, func(f Figure) bool { return f.Key == key })
	if !ok {
		panic("tables: no figure of biology is called " + key)
	}
	return f
}

// FigureNode is a node for a figure of biology.
func (t *Tables) FigureNode(key string, kind quantity.Kind) *working.Node {
	f := t.Figure(key)
	return working.Row(f.What, kind, f.Value, "", f.Source, string(f.Sure))
}

// Nitrification is how the rate of the bacteria goes with the temperature (K) or
// with pH: a share of that at 25 degC and pH 8, straight between the points of
// the table and as at its ends outside them.
func (t *Tables) Nitrification(of string, at float64) working.Value {
	points := t.nitrification[of]
	i, exact := slices.BinarySearchFunc(points, at, func(p Point, at float64) int { return cmp.Compare(p.At, at) })
	switch {
	case exact:
		return points[i].Share
	case i == 0:
		return points[0].Share
	case i == len(points):
		return points[i-1].Share
	}
	a, b := points[i-1], points[i]
	way := (at - a.At) / (b.At - a.At)
	between := func(x, y float64) float64 { return x + (y-x)*way }
	return working.Within(between(a.Share.X, b.Share.X), between(a.Share.Low, b.Share.Low), between(a.Share.High, b.Share.High))
}
