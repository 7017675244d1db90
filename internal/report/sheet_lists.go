package report

import (
	"strconv"
	"strings"

	"dryfit/internal/making"
	"dryfit/internal/quantity"
)

// shedLists is what is taken to the shed: cuts, bars, holes, joints, parts, choices and cost.
func (w *sheeter) shedLists() []Section {
	out := section(2, "lists", "Lists for the shed", Text("Measure twice. Cut to the lengths of this list, never to a dry fit-up: a dry pipe stops short of the bottom of its socket and comes out longer."))
	add := func(list []Section) {
		if len(list) > 0 && len(list[0].Blocks) > 0 {
			out = append(out, list...)
		}
	}
	add(section(3, "cuts", "Cuts", w.cuts()))
	add(section(3, "bars", "Stock lengths", w.bars()))
	if holes := w.holes(); len(holes.Rows) > 0 {
		var blocks []Block
		for _, c := range w.mind("vessel_history") {
			blocks = append(blocks, c)
		}
		add(section(3, "holes", "Holes", append(blocks, holes, w.holeRoom())...))
	}
	add(section(3, "choices", "Seal or bulkhead", w.choices()))
	if joints := w.joints(); len(joints.Rows) > 0 {
		var blocks []Block
		for _, c := range w.mind("solvent_cement") {
			blocks = append(blocks, c)
		}
		add(section(3, "joints", "Joints, in the order of assembly", append(blocks, joints)...))
	}
	add(section(3, "parts", "Parts", w.partsList()))
	add(section(3, "cost", "Cost", w.cost()))
	if len(w.lists.Missing) > 0 {
		add(section(3, "lists-missing", "What the lists still want", Text(sentence(capital(w.missingWords(w.lists.Missing))))))
	}
	if len(out) == 1 {
		return nil
	}
	return out
}

// figure is a length that may be unknown.
func (w *sheeter) figure(f making.Figure) Cell {
	if !f.Known {
		return Cell{Text: "?"}
	}
	return w.length(f.X)
}

func (w *sheeter) cuts() Table {
	t := Table{Name: "cuts", Caption: "Pipe to cut, in the order of the file: centres less take-offs is the cut; marks are measured from end A, upstream",
		Columns: []Column{{Head: "cut"}, {Head: "line and piece"}, {Head: "pipe"}, {Head: "from A to B"}, {Head: "count", Number: true}, w.lengths("centres"), w.lengths("take-off A"), w.lengths("take-off B"),
			w.lengths("socket A"), w.lengths("socket B"), w.lengths("cut"), {Head: "marks, " + smallUnit(w.in)}, {Head: "why not"}}}
	for i, c := range w.lists.Cuts {
		var marks []string
		for _, m := range c.Marks {
			marks = append(marks, tidy(lossShown(m, w.in)))
		}
		t.Rows = append(t.Rows, []Cell{{Text: strconv.Itoa(i + 1)}, {Text: w.pieceName(c.Line, c.Piece)}, {Text: c.Pipe}, {Text: c.From + " to " + c.To}, {Text: strconv.Itoa(max(c.Count, 1))},
			w.figure(c.Centres), w.figure(c.TakeoffA), w.figure(c.TakeoffB), w.figure(c.SocketA), w.figure(c.SocketB), w.figure(c.Length), {Text: strings.Join(marks, ", ")}, {Text: c.Why}})
	}
	return t
}

// pieceName is "riser, piece 4" for the piece riser/3.
func (w *sheeter) pieceName(line, id string) string {
	_, piece := ofLine(id)
	if piece == "" {
		return line
	}
	return line + ", " + piece
}

func (w *sheeter) bars() Table {
	t := Table{Name: "bars", Caption: "Which cuts come out of which stock length, each saw cut taking its kerf",
		Columns: []Column{{Head: "bar"}, {Head: "pipe"}, w.lengths("stock"), {Head: "cuts, by their numbers"}, w.lengths("kerf"), w.lengths("waste"), {Head: "there already"}}}
	for i, b := range w.lists.Bars {
		var cuts []string
		for _, k := range b.Cuts {
			cuts = append(cuts, strconv.Itoa(k+1))
		}
		t.Rows = append(t.Rows, []Cell{{Text: strconv.Itoa(i + 1)}, {Text: b.Pipe}, w.length(b.Stock), {Text: strings.Join(cuts, ", ")}, w.length(b.Kerf), w.length(b.Waste), {Text: yesNo(b.Have)}})
	}
	return t
}

func yesNo(yes bool) string {
	if yes {
		return "yes"
	}
	return "no"
}

func (w *sheeter) holes() Table {
	t := Table{Name: "holes", Caption: "Holes to drill: height of the middle above the inner floor, bearing clockwise from the front as seen from the middle",
		Columns: []Column{{Head: "hole"}, {Head: "vessel"}, {Head: "in"}, {Head: "line and piece"}, w.lengths("height"), {Head: "bearing, deg", Number: true}, w.lengths("across"), w.lengths("across, least"), w.lengths("across, most"),
			{Head: "fit"}, {Head: "tool"}, {Head: "pipe"}}}
	for i, h := range w.lists.Holes {
		bearing := "?"
		if h.Round.Known {
			bearing = inUnit(quantity.Angle, h.Round.X, "deg", 0)
		}
		if h.In != making.InWall {
			bearing = ""
		}
		at := w.figure(h.At)
		if h.In != making.InWall {
			at = Cell{}
		}
		t.Rows = append(t.Rows, []Cell{{Text: strconv.Itoa(i + 1)}, {Text: h.Vessel}, {Text: string(h.In)}, {Text: w.pieceName(h.Line, h.Piece)}, at, {Text: bearing},
			w.across(h.Across), w.across(h.AcrossLeast), w.across(h.AcrossMost), {Text: h.Fit}, {Text: h.Tool}, {Text: h.Pipe}})
	}
	return t
}

// across is a diameter; one of nothing is not known.
func (w *sheeter) across(d float64) Cell {
	if d <= 0 {
		return Cell{Text: "?"}
	}
	return w.length(d)
}

func (w *sheeter) holeRoom() Table {
	t := Table{Name: "hole-room", Caption: "Room round the holes; measure the plug that the saw cuts out: it is the wall",
		Columns: []Column{{Head: "hole"}, {Head: "vessel"}, w.lengths("lip to edge"), w.lengths("lip to next lip"), w.lengths("wall falls away"), w.lengths("wall"), {Head: "wall measured"}, w.blank(w.lengths("plug found"))}}
	for i, h := range w.lists.Holes {
		t.Rows = append(t.Rows, []Cell{{Text: strconv.Itoa(i + 1)}, {Text: h.Vessel}, w.figure(h.ToEdge), w.figure(h.ToNext), w.figure(h.Sagitta), w.figure(h.Wall), {Text: yesNo(h.Measured)}, {}})
	}
	return t
}

func (w *sheeter) choices() Table {
	t := Table{Name: "choices", Caption: "Ways to take a pipe through a wall: what each needs, costs and risks", Columns: []Column{{Head: "hole"}, {Head: "way"}, {Head: "as drawn"}, {Head: "needs"}, {Head: "risk"}, {Head: "cost", Number: true}}}
	for _, c := range w.lists.Choices {
		line, _, _ := strings.Cut(c.Hole, "/")
		for _, way := range c.Ways {
			t.Rows = append(t.Rows, cells(w.pieceName(line, c.Hole), way.Name, yesNo(way.Chosen), way.Needs, way.Risk, moneyWords(way.Cost)))
		}
	}
	return t
}

func (w *sheeter) joints() Table {
	t := Table{Name: "joints", Caption: "Joints in the order of assembly; head is the greatest depth of water over the joint in any case",
		Columns: []Column{{Head: "order"}, {Head: "line and piece"}, {Head: "joins"}, {Head: "how"}, {Head: "comes apart"}, w.lengths("head"), {Head: "cement wants"}, {Head: "note"}, {Head: "done", Blank: true}}}
	for _, j := range w.lists.Joints {
		how := hyphenless(j.Kind)
		if how == "" {
			how = "?"
		}
		t.Rows = append(t.Rows, []Cell{{Text: strconv.Itoa(j.Order)}, {Text: w.pieceName(j.Line, j.Piece)}, {Text: j.Before + " to " + j.After}, {Text: how}, {Text: yesNo(j.ComesApart)}, w.figure(j.Head), {Text: j.Cure}, {Text: j.Note}, {}})
	}
	return t
}

func (w *sheeter) partsList() Table {
	t := Table{Name: "parts", Caption: "Parts, in the order of the build steps; how each is got",
		Columns: []Column{{Head: "part"}, {Head: "what"}, {Head: "step"}, {Head: "use"}, {Head: "count", Number: true}, w.lengths("length of each"), {Head: "got"}, {Head: "each", Number: true}, {Head: "sum", Number: true}, {Head: "or"}, {Head: "file line"}}}
	for _, p := range w.lists.Parts {
		length := Cell{}
		if p.Length > 0 {
			length = w.length(p.Length)
		}
		place := ""
		if w.System != nil && p.At != "" {
			place = strings.TrimPrefix(w.placeWords(w.System.Document.Place(p.At)), "file line ")
		}
		t.Rows = append(t.Rows, []Cell{{Text: p.Name}, {Text: p.Spec}, {Text: p.Step}, {Text: p.Use}, {Text: tidy(fixed(p.Count, 2))}, length, {Text: string(p.Got)},
			{Text: moneyWords(p.Each)}, {Text: moneyWords(p.Sum)}, {Text: strings.Join(p.Alternatives, "; ")}, {Text: place}})
	}
	return t
}

// cost is what is still to be paid, by build step and by use, in each currency.
func (w *sheeter) cost() Table {
	t := Table{Name: "cost", Caption: "What is still to be paid, as far as prices are known", Columns: []Column{{Head: "by"}, {Head: "which"}, {Head: "sum", Number: true}, {Head: "parts without a price", Number: true}}}
	put := func(by string, list []making.Subtotal) {
		for _, s := range list {
			t.Rows = append(t.Rows, cells(by, s.Name, sumWords(s.Sums), strconv.Itoa(s.Unpriced)))
		}
	}
	put("build step", w.lists.Steps)
	put("use", w.lists.Uses)
	open := 0
	for _, s := range w.lists.Steps {
		open += s.Unpriced
	}
	if len(t.Rows) > 0 {
		t.Rows = append(t.Rows, cells("all", "together", sumWords(w.lists.Money), strconv.Itoa(open)))
	}
	return t
}

func moneyWords(m making.Money) string {
	if !m.Known {
		return "?"
	}
	return fixed(m.Amount, 2) + " " + m.Currency
}

func sumWords(list []making.Money) string {
	var out []string
	for _, m := range list {
		if m.Known {
			out = append(out, moneyWords(m))
		}
	}
	if len(out) == 0 {
		return "?"
	}
	return strings.Join(out, " and ")
}
