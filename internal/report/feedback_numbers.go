package report

import (
	"math"
	"strconv"
	"strings"

	"dryfit/internal/marking"
	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// How far a working is written out step by step: so many steps back, none of more inputs.
const (
	stepsBack  = 3
	stepInputs = 12
)

// yourNumbers is every value that was asked for, beside its working.
func (w *feedback) yourNumbers() []Section {
	if w.m.Review == nil {
		return nil
	}
	var blocks []Block
	var absent []string
	for _, l := range w.m.Lines {
		task, ok := l.Item.Task.(*marking.StatedRight)
		switch {
		case !ok:
		case l.Worked == nil:
			absent = append(absent, `"`+l.Item.Title+`"`)
		default:
			blocks = append(blocks, w.yourNumber(l, task, l.Worked))
		}
	}
	if len(absent) > 0 {
		blocks = append(blocks, Text("Asked for, and not under `stated` in your file: "+series(absent, "and")+"."))
	}
	if len(blocks) == 0 {
		return nil
	}
	lead := Text("What you state stands beside what is worked out from your own inputs, step by step with the numbers put in. A step that two values share is written out once.")
	return section(2, "your-numbers", "Your numbers", append([]Block{lead}, blocks...)...)
}

// yourNumber is the calculation of one stated value.
func (w *feedback) yourNumber(l marking.Line, task *marking.StatedRight, k *marking.Worked) Calculation {
	c := Calculation{Name: w.name("number-" + slug(l.Item.ID)), Caption: capital(l.Item.Title)}
	c.Rows = append(c.Rows, w.theirs(task, k))
	if k.Node != nil {
		var before *working.Node
		for _, n := range w.stepsTo(k.Node) {
			c.Rows = append(c.Rows, w.workedStep(n, before, []string{w.node(n)}))
			before = n
		}
		ours := []string{w.node(k.Node)}
		if k.Right != nil {
			ours = append([]string{w.inTheirs(task, k, *k.Right)}, "from your own inputs")
			if v, known := k.Node.Value(); known && v.Spread() {
				ours = append(ours, "the sources leave "+spreadShown(k.Node.Kind, v, w.in))
			}
		}
		c.Rows = append(c.Rows, w.workedStep(k.Node, nil, append(ours, k.Node.Note())))
	}
	if k.Carried != nil && (k.Right == nil || math.Abs(*k.Carried-*k.Right) > 5e-4*math.Abs(*k.Right)) {
		c.Rows = append(c.Rows, w.carried(task, k))
	}
	for i, s := range k.Slips {
		row := Reckoned{Formula: "or: " + s.Words, Result: []string{w.inTheirs(task, k, s.X), "comes out with it"}}
		if i == 0 {
			row.Title, row.Formula = "Where your number may come from", s.Words
		}
		if n := len(k.Slips); i == n-1 && n > 1 {
			row.Result = append(row.Result, "the number alone cannot tell which of the "+counted(n)+" it was")
		}
		c.Rows = append(c.Rows, row)
	}
	worth := Reckoned{
		Title: "What it is worth", Formula: bandWords(task, k),
		Result: []string{marking.MarksNumber(l.Marks) + " of " + marking.MarksWords(l.Item.Marks)},
	}
	if l.Changed != nil {
		worth.Result = append(worth.Result, "changed by hand")
	}
	c.Rows = append(c.Rows, worth)
	return c
}

// theirs is the row of what the student states.
func (w *feedback) theirs(task *marking.StatedRight, k *marking.Worked) Reckoned {
	row := Reckoned{Reference: []string{w.placeWords(k.Place)}, Title: "What you state", Formula: "your file does not say how it was found", Result: []string{k.Text}}
	if k.Working != "" {
		row.Formula = "your working: " + k.Working
	}
	switch {
	case k.X == nil:
		row.Result = append(row.Result, "which cannot be read as a number")
	case k.NoUnit:
		row.Result = append(row.Result, "without a unit; taken as "+marking.InUnit(task.Kind, *k.X, task.Unit))
	case k.BadUnit:
		row.Result = append(row.Result, "in a unit that does not fit; taken as "+marking.InUnit(task.Kind, *k.X, task.Unit))
	default:
		if in := marking.InUnit(task.Kind, *k.X, task.Unit); unitOf(k.Text) != task.Unit && task.Unit != "" {
			row.Result = append(row.Result, "that is "+in)
		}
	}
	return row
}

// stepsTo is the steps with a name of their own that lead to a number, the first to be worked
// first; those that were written out before are left out, and so are those of many inputs.
func (w *feedback) stepsTo(target *working.Node) []*working.Node {
	var out []*working.Node
	var walk func(n *working.Node, back int)
	walk = func(n *working.Node, back int) {
		for _, in := range n.Inputs {
			if in.Origin != working.Worked || w.worked[in.Node] || in.Node == target {
				continue
			}
			if back < stepsBack && len(in.Inputs) <= stepInputs {
				walk(in.Node, back+1)
			}
			if in.Address.Name != "" && len(in.Inputs) <= stepInputs && !w.worked[in.Node] {
				w.worked[in.Node] = true
				out = append(out, in.Node)
			}
		}
	}
	walk(target, 1)
	w.worked[target] = true
	return out
}

// workedStep is the row of one step: its formula with the numbers put in, and what it comes to. A formula
// that stands in the row before is not written again.
func (w *feedback) workedStep(n, before *working.Node, result []string) Reckoned {
	row := Reckoned{Title: capital(n.Title), Formula: w.formula(n), With: w.with(n), Result: nonEmpty(result)}
	if n.Address.Name != "" {
		row.Title += ", " + strings.Join(nonEmpty([]string{w.whose(n), stateWords(n.Address.State())}), ", ")
	}
	if n.Formula == working.PartOfBalance {
		row.Formula, row.With = "one of the numbers of a balance of the whole loop, which is worked by trial until it closes", n.Inputs[0].Title+", "+w.holdsTo(n.Inputs[0].Node)
	}
	row.Reference = append(row.Reference, w.placeOfNode(n))
	if before != nil && before.Formula == n.Formula && before.Source == n.Source {
		row.Formula = ""
		return row
	}
	if n.Source != "" && n.Source != "the file" {
		row.Reference = append(row.Reference, reason(n))
	}
	return row
}

// whose says whose a number is: "piece 3, bend 90"; "fish, number 1"; nothing of the water itself.
func (w *feedback) whose(n *working.Node) string {
	subject := n.Address.Subject
	of, number, _ := strings.Cut(subject, "/")
	if i, err := strconv.Atoi(number); err == nil && w.piece(subject) == nil {
		return of + ", number " + strconv.Itoa(i+1)
	}
	if subject == "water" {
		return ""
	}
	return w.subjectWords(subject)
}

// carried is the row of what follows from other values that the student states.
func (w *feedback) carried(task *marking.StatedRight, k *marking.Worked) Reckoned {
	var from []string
	for _, u := range k.From {
		from = append(from, u.Node.Title+" = "+w.asStated(u))
	}
	row := Reckoned{
		Title: "The same from what you state before", Formula: "the working above with your own " + map[bool]string{true: "value in its place", false: "values in their places"}[len(from) == 1],
		With: strings.Join(from, "; "), Result: []string{w.inTheirs(task, k, *k.Carried)},
	}
	if k.Band >= 0 {
		row.Result = append(row.Result, "carried forward: what was off before is not counted twice")
	}
	return row
}

// asStated is a stated value as it stands in the file, where the guide asks for it.
func (w *feedback) asStated(u marking.Upstream) string {
	for _, l := range w.m.Lines {
		if k := l.Worked; k != nil && k.Node == u.Node {
			if task, ok := l.Item.Task.(*marking.StatedRight); ok {
				return w.inTheirs(task, k, u.X)
			}
		}
	}
	return w.say(u.Node.Kind, u.X)
}

// inTheirs is a value in the unit in which the student writes, else in that of the guide; where US
// units are wanted they stand in brackets behind it.
func (w *feedback) inTheirs(task *marking.StatedRight, k *marking.Worked, x float64) string {
	text := shown(task.Kind, x, w.in)
	for _, unit := range []string{unitOf(k.Text), task.Unit} {
		if _, ok := quantity.Convert(task.Kind, x, unit); unit != "" && ok {
			text = marking.InUnit(task.Kind, x, unit)
			break
		}
	}
	us := shown(task.Kind, x, quantity.US)
	if (w.both || w.in == quantity.US) && unitOf(us) != unitOf(text) {
		text += " (" + us + ")"
	}
	return text
}

// unitOf is what stands behind the number of a value.
func unitOf(text string) string {
	_, unit := numberUnit(strings.TrimSpace(text))
	return unit
}

// bandWords is the band that a value reaches, or how near it should have come.
func bandWords(task *marking.StatedRight, k *marking.Worked) string {
	switch {
	case k.Band >= 0 && k.Band < len(task.Bands):
		b := task.Bands[k.Band]
		return "within " + b.Within.Words(task.Kind, task.Unit) + ", which gives " + marking.MarksWords(b.Marks)
	case k.X == nil || k.Right == nil:
		return "it could not be held against a number"
	}
	return "no band is reached: " + bandsWords(task.Bands, task.Kind, task.Unit)
}
