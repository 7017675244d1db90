package making

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

var jointQuantities = []working.Definition{
	{Name: "delivery_thrust", Title: "push on an elbow or cap when the pump works against a shut valve", Symbol: "F", Kind: quantity.Force, Of: "each joint that the pump presses on",
		Formula: "rho g h pi OD^2/4", Source: "hydrostatics", Sure: "derived"},
	{Name: "cure_time", Title: "time that the cement needs before water", Symbol: "T", Kind: quantity.Time, Of: "each line with cemented joints",
		Formula: "by size and temperature, times the factor of damp air", Source: "table of curing", Sure: "published"},
	{Name: "cure_share", Title: "time that the cement is given, over what it needs", Symbol: "n", Kind: quantity.Number, Of: "each line with cemented joints",
		Formula: "given/T", Source: "table of curing", Sure: "published"},
}

var jointFacts = []working.FactDefinition{
	{Name: "delivery_joint", Title: "how the joint behind the pump is made", Of: "each joint that the pump presses on"},
	{Name: "leaks_inside", Title: "whether it stands inside the vessel that the line ends in, so that a leak is no loss", Words: []string{"yes", "no"}, Of: "each joint that the pump presses on"},
}

var jointSets = []working.Named{
	{Name: "delivery_joints", Title: "joints behind a pump, which its pressure pushes on"},
	{Name: "cemented_lines", Title: "lines with cemented joints, or that do not say how they are joined"},
}

// joints enters the joints that a pump presses on, and the time that cement needs.
func (v *surveyor) joints() {
	for _, set := range jointSets {
		v.l.Put(set.Name)
	}
	for _, line := range v.Lines {
		v.delivery(line)
		v.curing(line)
	}
}

// delivery enters the joints of a line from the pump on, also of a line that starts at a tee behind a pump.
func (v *surveyor) delivery(line *system.Line) {
	pump := pressing(line, map[*system.Line]bool{})
	for _, p := range line.Pieces {
		if p.Pump != nil {
			pump = p.Pump
			continue
		}
		if pump == nil || p.Over != nil || p.SiphonBreak != nil || p.Through != nil {
			continue // no joint of the line's own
		}
		v.l.Put("delivery_joints", p.ID())
		at := p.Pointer
		if own := v.Word(p.Value + "/joint"); own.Given() {
			at = own.Pointer()
		}
		f := working.Fact{Subject: p.ID(), Name: "delivery_joint", At: at}
		if joint, given := p.Joint.Value(); given {
			f.Word = joint
		} else {
			f.Missing = []string{p.Joint.Pointer()}
		}
		v.l.Note(f)
		inside := "no"
		if p.In != nil && p.In == line.To.Vessel {
			inside = "yes"
		}
		v.l.Note(working.Fact{Subject: p.ID(), Name: "leaks_inside", Word: inside, At: at})
		v.work(always(p.ID(), "delivery_thrust"), at, func(x []float64) (float64, string) { return EndThrust(x[0], x[1]) },
			working.In("h", shutOff(pump)), working.In("OD", outside(p.Pipe, p)))
	}
}

// pressing is the pump behind which a line starts, through as many tees as it takes.
func pressing(line *system.Line, seen map[*system.Line]bool) *system.Pump {
	from := line.From.Line
	if from == nil || seen[from] {
		return nil
	}
	seen[from] = true
	var pump *system.Pump
	for _, p := range from.Pieces {
		if p.Pump != nil {
			pump = p.Pump
		}
		if p.Tee != nil && p.Tee.ID.Is(line.From.Tee) {
			break
		}
	}
	if pump == nil {
		return pressing(from, seen)
	}
	return pump
}

// shutOff is the head of a pump at no flow.
func shutOff(pump *system.Pump) *working.Node {
	const title = "head of the pump against a shut valve"
	if len(pump.Curve) > 0 && !pump.ShutOff.Given() {
		return working.File(title, pump.Curve[0].Head)
	}
	return working.File(title, pump.ShutOff)
}

// curing enters how long the cement of a line needs, by the cautious maker with the others as its spread.
func (v *surveyor) curing(line *system.Line) {
	cemented := false
	var sizes []working.Input
	for _, p := range line.Pieces {
		_, given := p.Joint.Value()
		if given && !p.Joint.Is("cemented") || p.Through != nil || p.Over != nil || p.SiphonBreak != nil {
			continue
		}
		cemented = true
		sizes = append(sizes, working.In("d", v.inches(p)))
	}
	if !cemented {
		return
	}
	v.l.Put("cemented_lines", line.ID)
	in := []working.Input{
		working.In("t", working.File("temperature when the joints are made", v.Number("/making/temperature", quantity.Temperature))),
		working.In("k", v.damp()),
		working.In("maker", working.Row("between the quickest and the slowest of the makers", quantity.Number, working.Within(0, -1, 1), "", "table of curing", "published")),
	}
	cure := v.work(always(line.ID, "cure_time"), line.Pointer, func(x []float64) (float64, string) {
		widest := 0.0
		for _, d := range x[3:] {
			widest = math.Max(widest, d)
		}
		return v.cure(widest, x[0], x[2]) * x[1], "the table holds from -18 to 38 degC and for pipe of up to 8 in"
	}, append(in, sizes...)...)
	wait := v.Number("/making/cure_before_filling", quantity.Time)
	at := wait.Pointer()
	v.work(always(line.ID, "cure_share"), at, func(x []float64) (float64, string) { return x[0] / x[1], "" },
		working.In("given", working.File("time before filling", wait)), working.In("T", cure))
}

// cure is the time for pipe of a size in inches at a temperature: side 0 the cautious maker, -1 the quickest, 1 the slowest.
func (v *surveyor) cure(inches, temperature, side float64) float64 {
	row, ok := v.t.CureTime(tables.Cautious, inches, temperature)
	if !ok {
		return math.NaN()
	}
	hold := row.Hold
	for _, maker := range v.t.Makers() {
		other, ok := v.t.CureTime(maker, inches, temperature)
		if ok && (side < 0 && other.Hold < hold || side > 0 && other.Hold > hold) {
			hold = other.Hold
		}
	}
	return hold
}

// DampAir is k, the factor on the time of curing in damp air.
//
//	k = 1, and 1.5 above 60 % humidity
//
//	humidity  of the air when the joints are made, from 0 to 1
//
// Source: makers' cure tables.
func DampAir(humidity float64) float64 {
	if humidity > 0.6 {
		return 1.5
	}
	return 1
}

// damp is the factor of damp air on the time of curing.
func (v *surveyor) damp() *working.Node {
	humidity := v.Number("/making/humidity", quantity.Fraction)
	if !humidity.Given() {
		return v.t.Assume("cure_humid", "factor of damp air", quantity.Number, humidity.Pointer())
	}
	return working.Step("factor of damp air", quantity.Number, "1, and 1.5 above 60 % humidity", "makers' cure tables", func(x []float64) (float64, string) {
		return DampAir(x[0]), ""
	}, working.In("humidity", working.File("humidity when the joints are made", humidity)))
}

// inches is the size of a pipe in inches: its nominal size, else its bore.
func (v *surveyor) inches(p *system.Piece) *working.Node {
	const title = "nominal size, in inches"
	switch {
	case p.Pipe == nil:
		return working.Unknown(title, quantity.Number, p.Line.Pointer+"/pipe", "")
	case p.Pipe.Nominal > 0:
		return working.Row(title, quantity.Number, working.Exactly(p.Pipe.Nominal), p.Pipe.Pointer, p.Pipe.Source, "")
	case p.Pipe.Inside > 0:
		return working.Row(title, quantity.Number, working.Exactly(p.Pipe.Inside/0.0254), p.Pipe.Pointer, "its bore", "derived")
	}
	return working.Unknown(title, quantity.Number, p.Pipe.Pointer+"/inside", "")
}
