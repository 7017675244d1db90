package making

import (
	"cmp"
	"slices"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
)

// The build steps.
const (
	stepVessels = "stands and vessels"
	stepHoles   = "holes and what seals them"
	stepInside  = "inside the vessels"
	stepPipes   = "pipework"
	stepCement  = "cement"
	stepPumps   = "pump and air"
	stepPower   = "power, alarms and top-up"
	stepWater   = "water and its start"
)

// BuildSteps is the build steps in the order of the work.
var BuildSteps = []string{stepVessels, stepHoles, stepInside, stepPipes, stepCement, stepPumps, stepPower, stepWater}

// item is a part with what the list of prices would call it.
type item struct {
	Part
	sold
}

// partList fills the list of parts.
func (b *lister) partList() {
	b.standParts()
	for _, vessel := range b.Vessels {
		b.vesselParts(vessel)
	}
	for _, line := range b.Lines {
		b.lineParts(line)
	}
	b.pipeParts()
	b.cementParts()
	b.pumpParts()
	b.airParts()
	b.powerParts()
	b.waterParts()
	slices.SortStableFunc(b.items, func(a, z item) int {
		return cmp.Compare(slices.Index(BuildSteps, a.Step), slices.Index(BuildSteps, z.Step))
	})
	for _, i := range b.items {
		b.pay(&i.Part, i.sold)
		b.Parts = append(b.Parts, i.Part)
	}
}

// add enters a part; alike parts of one use come together.
func (b *lister) add(p Part, s sold) {
	if p.Got == "" {
		p.Got = Buy
	}
	i := slices.IndexFunc(b.items, func(q item) bool {
		return q.Name == p.Name && q.Spec == p.Spec && q.Use == p.Use && q.Step == p.Step && q.Length == p.Length && q.own == "" && s.own == ""
	})
	switch {
	case p.Count <= 0:
	case i < 0:
		b.items = append(b.items, item{p, s})
	default:
		q := &b.items[i]
		q.Count += p.Count
		q.length, q.volume, q.mass = q.length+s.length, q.volume+s.volume, q.mass+s.mass
	}
}

// standParts enters what the vessels stand on. What has no price and is not there is made.
func (b *lister) standParts() {
	for _, id := range b.Keys("/stands") {
		at := "/stands/" + escaped(id)
		spec := strings.Join(strings.Fields(b.texts(at, "length")+" x "+b.texts(at, "width")), " ")
		spec = join(strings.Trim(spec, " x"), b.texts(at, "material"))
		ground := b.Word(at + "/on")
		if !ground.Given() {
			ground = b.Word("/site/floor")
		}
		if word, given := ground.Value(); given {
			spec = join(spec, "on "+spoken(word))
		}
		p := Part{Name: "stand", Spec: spec, Use: id, Step: stepVessels, Count: 1, Got: Make, At: at}
		s := sold{part: "stand", of: id, own: at}
		if b.money(at+"/price").Known || b.priceFor(s) != nil {
			p.Got = Buy
		}
		b.add(p, s)
	}
}

// vesselParts enters a vessel, its lid, what is built into it, and what fills it.
func (b *lister) vesselParts(v *system.Vessel) {
	at, n := v.Pointer, float64(b.count(v.Pointer+"/count"))
	role, _ := v.Role.Value()
	p := Part{Name: spoken(role), Use: v.ID, Step: stepVessels, Count: n, At: at, Spec: join(b.shape(v), b.texts(at, "material"))}
	if held, given := b.Word(at + "/history/held").Value(); given && held != "nothing" {
		p.Got, p.Spec = Find, join(p.Spec, "used; held "+held)
		p.Alternatives = []string{"a new one made for food or drinking water"}
	}
	b.add(p, sold{part: "vessel", of: v.ID, own: at})

	lid := b.Word(at + "/lid")
	if !lid.Given() {
		lid = b.Word(at + "/lid/kind")
	}
	if kind, given := lid.Value(); given && kind != "none" {
		b.add(Part{Name: "lid", Spec: join(kind, b.texts(at+"/lid", "fixed", "material")), Use: v.ID, Step: stepVessels, Count: n, At: lid.Pointer()}, sold{part: "lid", of: v.ID, kind: kind})
	}
	inside := func(name, part, key, spec string) {
		if len(b.Keys(at+"/"+key)) > 0 {
			b.add(Part{Name: name, Spec: spec, Use: v.ID, Step: stepInside, Count: n, Got: Make, At: at + "/" + key}, sold{part: part, of: v.ID})
		}
	}
	inside("inlet well", "well", "well", join(b.texts(at+"/well", "outside", "material"), "lip at "+b.texts(at+"/well", "lip_at")))
	if v.Weir != nil && v.Weir.Kind != "rim" && v.Weir.Kind != "side_pipe" {
		inside("weir", "weir", "weir", join(strings.ReplaceAll(v.Weir.Kind, "_", " "), b.texts(at+"/weir/"+v.Weir.Kind, "across", "length", "material")))
	}
	inside("launder", "other", "launder", b.texts(at+"/launder", "width", "material"))
	inside("raft", "other", "raft", b.texts(at+"/raft", "area", "thickness", "material"))
	inside("liner", "other", "liner", b.texts(at+"/liner", "material", "thickness"))
	for _, f := range v.Fixings {
		b.fixingPart(f, v.ID, n)
	}
	b.media(v, n)
}

// fixingPart enters fasteners.
func (b *lister) fixingPart(f *system.Fixings, use string, n float64) {
	count, given := f.Count.SI()
	if !given {
		b.want(f.Count.Pointer())
		return
	}
	grade, _ := f.Grade.Value()
	b.add(Part{Name: "fasteners", Spec: join(grade, b.texts(f.Pointer, "size", "where")), Use: use, Step: stepInside, Count: n * count, At: f.Pointer},
		sold{part: "fastener", of: use, kind: strings.ToLower(grade)})
}

// media enters what fills a filter or a bed.
func (b *lister) media(v *system.Vessel, n float64) {
	at := v.Pointer + "/media"
	if len(b.Keys(at)) == 0 {
		return
	}
	s := sold{part: "media", of: v.ID, own: at}
	s.kind, _ = b.Word(at + "/kind").Value()
	if x, given := b.Number(at+"/volume", quantity.Volume).SI(); given {
		s.volume = n * x
	}
	if x, given := b.Number(at+"/mass", quantity.Mass).SI(); given {
		s.mass = n * x
	}
	b.add(Part{Name: "media", Spec: join(spoken(s.kind), b.texts(at, "volume")), Use: v.ID, Step: stepInside, Count: n, At: at}, s)
}

// shape is the form of a vessel in words.
func (b *lister) shape(v *system.Vessel) string {
	at := v.Form.Pointer
	kind := strings.ReplaceAll(v.Form.Kind, "_", " ")
	switch v.Form.Kind {
	case "box":
		return kind + " " + b.texts(at, "length", "width", "height")
	case "":
		return ""
	}
	out := kind
	for _, one := range [][2]string{{"inside", " inside"}, {"length", " long"}, {"height", " high"}} {
		if text := b.texts(at, one[0]); text != "" {
			out = join(out, text+one[1])
		}
	}
	return out
}

// texts is what the file says at some keys, as its author wrote it, one after the other.
func (b *lister) texts(at string, keys ...string) string {
	out := ""
	for _, key := range keys {
		if text, given := b.Word(at + "/" + key).Value(); given {
			out = join(out, spoken(text))
		}
	}
	return out
}

// join puts two parts of a list entry together.
func join(a, z string) string {
	switch {
	case a == "" || a == z:
		return z
	case z == "":
		return a
	}
	return a + ", " + z
}

// spoken is a word of the file as it is said, without hyphens; a figure stays as it is.
func spoken(word string) string {
	if word != "" && (word[0] >= '0' && word[0] <= '9' || strings.ContainsAny(word, " /")) {
		return word
	}
	return strings.ReplaceAll(word, "-", " ")
}

// escaped is a name as one token of a JSON pointer (RFC 6901).
func escaped(name string) string {
	return strings.ReplaceAll(strings.ReplaceAll(name, "~", "~0"), "/", "~1")
}
