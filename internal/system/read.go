package system

import (
	"fmt"
	"maps"

	"dryfit/internal/quantity"
)

// Read reads a system file, YAML or JSON. It tells all that is wrong with it at
// once, sorted by place; only a file without a problem gives a system.
func Read(file string, data []byte) (*System, []Problem) {
	doc := &Document{File: file}
	ps := newProblems(doc)
	doc.root = parse(data, ps)
	if doc.root == nil {
		return nil, ps.sorted()
	}
	return build(doc, ps)
}

// build makes the typed system from a document: schema, model, references,
// pipes, heights. A layer says nothing of what the one before has refused.
func build(doc *Document, ps *problems) (*System, []Problem) {
	if doc.root.form != mapping {
		ps.add("", doc.root.short()+" at the top", "start with `dryfit: 1`, then one key a line")
		return nil, ps.sorted()
	}
	rules, err := systemRules()
	if err != nil {
		ps.add("", "a schema that does not compile: "+err.Error(), "report this as a fault of dryfit")
		return nil, ps.sorted()
	}
	doc.seed(ps.broken)
	rules.validate(doc, ps)
	s := model(doc, ps.broken)
	if pieces := s.count(); pieces > mostPieces {
		ps.add("/lines", fmt.Sprintf("%d pieces of pipe", pieces), fmt.Sprintf("a loop has at most %d", mostPieces))
		return nil, ps.sorted()
	}
	refer(s, ps)
	findPipes(s, ps)
	fits(s, ps)
	walk(s, ps)
	holdDays(s.Deviations(), ps)
	if len(ps.list) > 0 {
		return nil, ps.sorted()
	}
	return s, nil
}

// mostPieces bounds the work on a file from a stranger.
const mostPieces = 2000

func (s *System) count() int {
	pieces := 0
	for _, l := range s.Lines {
		pieces += len(l.Pieces)
	}
	return pieces
}

// model reads the document into the typed system, as far as it can be read.
func model(doc *Document, broken map[string]bool) *System {
	s := &System{
		Document: doc, reading: &reading{&looked{at: map[string]bool{}}, maps.Clone(broken)},
		vessels: map[string]*Vessel{}, lines: map[string]*Line{}, pumps: map[string]*Pump{}, pipes: map[string]*Pipe{},
	}
	top := s.cursor("")
	s.Name = top.get("name").word()
	s.Status = top.get("status").word()
	s.Site = Site{Altitude: top.at("site", "altitude").length(), Setting: top.at("site", "setting").word()}
	water := top.get("water")
	s.Water = Water{
		Temperature:   water.get("temperature").span(quantity.Temperature),
		PH:            water.get("pH").span(quantity.Number),
		Alkalinity:    water.get("alkalinity").span(quantity.Concentration),
		Chloride:      water.get("chloride").span(quantity.Concentration),
		SaltTreatment: water.get("salt_treatment").numberOr(quantity.Concentration, "none", 0),
	}
	s.WorkingFlow = Flow{
		Least: top.at("working_flow", "least").number(quantity.Flow),
		Most:  top.at("working_flow", "most").number(quantity.Flow),
	}
	s.Mains = readMains(top.get("mains"))
	top.get("pipes").each(func(id string, c cursor) {
		p := readPipe(id, c)
		s.Pipes = append(s.Pipes, p)
		s.pipes[id] = p
	})
	top.get("vessels").each(func(id string, c cursor) {
		v := readVessel(id, c)
		s.Vessels = append(s.Vessels, v)
		s.vessels[id] = v
	})
	top.get("pumps").each(func(id string, c cursor) {
		p := readPump(id, c)
		s.Pumps = append(s.Pumps, p)
		s.pumps[id] = p
	})
	top.get("lines").each(func(id string, c cursor) {
		l := readLine(id, c)
		s.Lines = append(s.Lines, l)
		s.lines[id] = l
	})
	return s
}

func readMains(c cursor) Mains {
	m := Mains{Pointer: c.pointer, Given: c.given(), Circuits: c.get("circuits").count()}
	protection := c.get("residual_current")
	m.ResidualCurrent = protection.number(quantity.Current)
	m.Unprotected = Word{Leaf{pointer: protection.pointer, looked: c.looked}}
	if protection.is("none") {
		m.Unprotected = protection.word()
	}
	return m
}

func readPump(id string, c cursor) *Pump {
	p := &Pump{
		ID: id, Pointer: c.pointer,
		ShutOff:  c.get("shut_off").number(quantity.Head),
		OpenFlow: c.get("open_flow").number(quantity.Flow),
		Draws:    c.get("draws").number(quantity.Power),
		Supply:   c.get("supply").word(),
		DryBelow: c.get("dry_below").length(),
	}
	c.get("curve").items(func(_ int, point cursor) {
		p.Curve = append(p.Curve, CurvePoint{point.item(0).number(quantity.Flow), point.item(1).number(quantity.Head)})
	})
	return p
}

func readPipe(id string, c cursor) *Pipe {
	return &Pipe{
		ID: id, Pointer: c.pointer,
		Standard: c.get("standard").word(), Class: c.get("class").word(), Size: c.get("size").word(),
		StatedInside: c.get("inside").length(), StatedOutside: c.get("outside").length(), StatedWall: c.get("wall").length(),
	}
}

func readVessel(id string, c cursor) *Vessel {
	v := &Vessel{
		ID: id, Pointer: c.pointer,
		Role:     c.get("role").word(),
		StandsAt: c.get("stands_at").length(),
		Material: c.get("material").word(),
		Running:  c.at("water", "running").length(),
		Lid:      readLid(c),
		SpillAt:  c.get("spill_at").length(),
		Form:     readForm(c.get("form")),
	}
	if well := c.get("well"); well.given() {
		v.Well = readWell(well)
		v.Fixings = append(v.Fixings, readFixings(well.get("fixings"))) // a well does not hang by itself
	}
	if weir := c.get("weir"); weir.given() {
		v.Weir = readWeir(weir)
		_, edge := weir.only()
		v.fix(edge.get("fixings"))
	}
	v.fix(c.at("lid", "fixings"))
	c.get("fasteners").items(func(_ int, one cursor) { v.fix(one) })
	if launder := c.get("launder"); launder.given() {
		v.Launder = &Launder{Pointer: launder.pointer, FloorAt: launder.get("floor_at").length()}
	}
	return v
}

// readLid is the kind of a lid, which may stand alone in place of the whole lid.
func readLid(c cursor) Word {
	if short := c.get("lid").word(); short.Given() {
		return short
	}
	return c.at("lid", "kind").word()
}

func readForm(c cursor) Form {
	kind, form := c.only()
	if kind == "" {
		form = c.get("cylinder") // where it would stand
	}
	f := Form{
		Pointer: form.pointer, Kind: kind,
		Inside: form.get("inside").length(), Length: form.get("length").length(), Width: form.get("width").length(),
		Height: form.get("height").length(), Wall: form.get("wall").length(),
		ConeHeight: form.get("cone_height").length(), ConeOutlet: form.get("cone_outlet").length(),
		InsideTop: form.get("inside_top").length(), LengthTop: form.get("length_top").length(), WidthTop: form.get("width_top").length(),
		Area: form.get("area").number(quantity.Area), Slot: form.get("slot").length(),
	}
	if kind == "lying_pipe" {
		f.Height = f.Inside
	}
	form.get("volumes").items(func(_ int, pair cursor) {
		f.Volumes = append(f.Volumes, DepthVolume{pair.item(0).length(), pair.item(1).number(quantity.Volume)})
	})
	return f
}

func readWell(c cursor) *Well {
	return &Well{
		Pointer: c.pointer,
		Inside:  c.get("inside").length(), Outside: c.get("outside").length(), LipAt: c.get("lip_at").length(),
		ComesOut: c.get("comes_out").toggle(),
	}
}

// NoWell is the well of a vessel that has none: nothing in it is given, and each
// value has the pointer at which it would stand.
func NoWell(v *Vessel) *Well { return readWell(cursor{nil, child(v.Pointer, "well"), &reading{}}) }

func readWeir(c cursor) *Weir {
	kind, w := c.only()
	weir := &Weir{
		Pointer: w.pointer, Kind: kind,
		Across: w.get("across").length(), CrestAt: w.get("crest_at").length(), Notches: w.get("notches").count(),
		Angle: w.get("angle").number(quantity.Angle), Width: w.get("width").length(),
		Depth: w.get("depth").length(), Length: w.get("length").length(),
		Holes: w.get("holes").count(), Bore: w.get("bore").length(), At: w.get("at").length(),
	}
	if kind == "notch" {
		weir.Notches = w.get("count").count()
	}
	return weir
}

// fix adds fixings that are given.
func (v *Vessel) fix(c cursor) {
	if c.given() {
		v.Fixings = append(v.Fixings, readFixings(c))
	}
}

func readFixings(c cursor) *Fixings {
	return &Fixings{Pointer: c.pointer, Grade: c.get("grade").word(), Count: c.get("count").count(), Wetted: c.get("wetted").toggle()}
}
