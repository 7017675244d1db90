package marking

import (
	"fmt"
	"slices"
	"strings"

	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// entry is one stated value of the file with the number that it is held against.
type entry struct {
	review.Stated
	subject, name string
	node          *working.Node // in the case of the guide, where an item asks for it
	item          *Item         // nil where none asks for it
	number
}

// entries is every stated value of the file, in its order, each with the first item that asks for it.
func (k *marker) entries() []*entry {
	var out []*entry
	for _, s := range k.Stated {
		if s.Measured {
			continue
		}
		e := &entry{Stated: s, node: s.Node}
		if s.Node != nil {
			e.subject, e.name = s.Node.Address.Subject, s.Node.Address.Name
			e.number = readNumber(k.written(s), s.Node.Kind, s.Unit)
		}
		out = append(out, e)
	}
	for _, item := range k.g.Items {
		task, ok := item.Task.(*StatedRight)
		if !ok {
			continue
		}
		for _, e := range out {
			if e.item == nil && e.Node != nil && k.asks(task, e) {
				e.item = item
				k.place(e, task)
				break
			}
		}
	}
	return out
}

// asks says that an item is about a stated value.
func (k *marker) asks(task *StatedRight, e *entry) bool {
	if e.name != task.Quantity || e.subject != task.Of && !slices.Contains(k.Ledger.Sets[task.Of], e.subject) {
		return false
	}
	states := working.InCase(k.Ledger.Of(e.subject, e.name), task.Case)
	return len(states) > 0 && (e.Case == "" || e.Case == states[0].Address.Case)
}

// place finds the number that a stated value is held against, in the case and the unit of the guide.
func (k *marker) place(e *entry, task *StatedRight) {
	states := working.AtUsual(working.InCase(k.Ledger.Of(e.subject, e.name), task.Case))
	e.node = states[0]
	e.number = readNumber(k.written(e.Stated), task.Kind, task.Unit)
	if e.read {
		e.node = working.Nearest(states, e.x)
	}
}

// written is a stated value as it stands in the file.
func (k *marker) written(s review.Stated) string {
	text, _ := k.System.Document.Text(s.Pointer + "/value")
	return text
}

// statedRight marks a number that the student worked out.
func (k *marker) statedRight(line *Line, task *StatedRight) {
	i := slices.IndexFunc(k.stated, func(e *entry) bool { return e.item == line.Item })
	if i < 0 {
		line.lose(task.Quantity)
		line.say(k.unstated(task))
		return
	}
	e := k.stated[i]
	w := &Worked{
		Text: e.text, Working: e.Stated.Working, Place: e.Place, NoUnit: e.noUnit, BadUnit: e.badUnit, Node: e.node, Band: -1,
		Standing: e.node.Address.String(),
	}
	line.Worked = w
	if !e.read {
		line.lose(task.Quantity)
		if e.text == "" {
			line.say("its value was refused when the file was read")
		} else {
			line.say("`" + e.text + "` cannot be read as a number")
		}
		return
	}
	x := e.x // a copy: the entry holds the whole working
	w.X = &x
	v, known := e.node.Value()
	if known {
		w.Right = &v.X
		w.Band = bandOf(task, e.x, v.X)
	}
	if !task.Alone {
		k.carry(task, e, w)
	}
	if w.Right == nil && w.Carried == nil {
		line.lose(task.Quantity)
		line.say("it cannot be judged, since it cannot be worked out from the file: " + k.wanting(e.node))
		return
	}
	if w.Band < 0 && known && task.Sources && v.Spread() && e.x >= v.Low*(1-guard) && e.x <= v.High*(1+guard) {
		w.Band, w.Carried, w.From, w.Doubtful = 0, nil, nil, true
	}
	if w.Band < 0 {
		line.lose(task.Quantity)
		if known {
			line.say(fmt.Sprintf("%s is stated, %s follows from the inputs", k.stating(task, e), InUnit(task.Kind, v.X, e.shownIn(task))))
		} else {
			line.say(fmt.Sprintf("%s is stated, %s follows from what was stated before", k.stating(task, e), InUnit(task.Kind, *w.Carried, e.shownIn(task))))
		}
		w.Slips = k.slips(task, e, w)
		return
	}
	k.inBand(line, task, e, w)
}

// inBand gives the marks of the band that is reached, less what is taken off.
func (k *marker) inBand(line *Line, task *StatedRight, e *entry, w *Worked) {
	band := task.Bands[w.Band]
	line.Marks = band.Marks
	right, follows := w.Carried, "follows from what was stated before"
	if right == nil {
		right, follows = w.Right, "follows from the inputs"
	}
	near := "within " + band.Within.Words(task.Kind, task.Unit)
	if w.Doubtful {
		v, _ := e.node.Value()
		near = "within the range in which the sources leave it, " + InUnit(task.Kind, v.Low, e.shownIn(task)) + " to " + InUnit(task.Kind, v.High, e.shownIn(task))
	}
	line.say(fmt.Sprintf("%s is stated, %s %s: %s", k.stating(task, e), InUnit(task.Kind, *right, e.shownIn(task)), follows, near))
	if w.Band > 0 {
		line.lose("a nearer value")
	}
	take := func(marks float64, why string) {
		if marks > 0 {
			line.Marks -= marks
			line.lose(why)
			line.say(fmt.Sprintf("%s less since %s", MarksWords(marks), why))
		}
	}
	switch {
	case e.noUnit:
		take(task.NoUnit, "the unit is missing")
	case e.badUnit:
		take(task.BadUnit, "the unit does not fit: write it in "+task.Unit)
	}
	if !said(w.Working) {
		take(task.NoWork, "it is not said how it was found")
	}
}

// shownIn is the unit of the student, where there is one, else that of the guide.
func (e *entry) shownIn(task *StatedRight) string {
	if e.unit != "" {
		return e.unit
	}
	return task.Unit
}

// unstated says that what an item asks for is not there, and what is in its place.
func (k *marker) unstated(task *StatedRight) string {
	for _, e := range k.stated {
		quantity := e.Quantity[strings.LastIndex(e.Quantity, ".")+1:]
		switch {
		case quantity != task.Quantity:
		case e.Node == nil:
			return "`" + e.Quantity + "` is stated, and nothing of that name is worked out: " + strings.Join(short(e.Missing), ", ")
		case e.subject != task.Of && !slices.Contains(k.Ledger.Sets[task.Of], e.subject):
			return "it is stated for " + e.subject + ", where it is asked of " + task.Of
		case e.Case != "":
			return "it is stated in the case " + e.Case + ", which is not the one that is asked"
		}
	}
	return "it is not stated"
}

func (k *marker) stating(task *StatedRight, e *entry) string {
	if (e.noUnit || e.badUnit) && task.Unit != "" {
		return "`" + e.text + "`, taken as " + InUnit(task.Kind, e.x, task.Unit) + ","
	}
	return e.text
}

// bandOf is the first band in which a is right where x is; -1 for none.
func bandOf(task *StatedRight, a, x float64) int {
	return slices.IndexFunc(task.Bands, func(b Band) bool { return b.Within.Holds(a, x) })
}

// carry holds a value also against what follows from those that were stated before it: an early
// slip is charged once. The working is done again with all of them in their places, and
// with each alone, since nobody need have used all.
func (k *marker) carry(task *StatedRight, e *entry, w *Worked) {
	before := k.before(e)
	if len(before) == 0 {
		return
	}
	try := [][]Upstream{before}
	if len(before) > 1 {
		for _, one := range before {
			try = append(try, []Upstream{one})
		}
	}
	for _, from := range try {
		v, gaps := e.node.Differently(k.inPlace(from)...)
		if len(gaps) > 0 {
			continue
		}
		band := bandOf(carrying(task), e.x, v.X)
		if band >= 0 && (w.Band < 0 || band < w.Band) {
			w.Band, w.Carried, w.From = band, &v.X, from
		}
	}
	if w.Band < 0 { // show what would follow, although it was not met either
		if v, gaps := e.node.Differently(k.inPlace(before)...); len(gaps) == 0 {
			w.Carried, w.From = &v.X, before
		}
	}
}

// carrying is what a value is held to that is carried forward: no floor, which is meant for the size of
// the right value and would be wide about a small one.
func carrying(task *StatedRight) *StatedRight {
	bare := *task
	bare.Bands = slices.Clone(task.Bands)
	for i := range bare.Bands {
		bare.Bands[i].Within.Floor = 0
	}
	return &bare
}

// before is the stated values that a stated value depends on, the nearest on each way. Only those for which
// the guide has an item of its own count, so that whatever was wrong first is charged there; and none that is
// nothing, or of the other sign than the right one.
func (k *marker) before(e *entry) []Upstream {
	stated := map[*working.Node]*entry{}
	for _, other := range k.stated {
		if other != e && other.item != nil && other.read && other.sane() {
			for _, n := range k.alike(other.node) {
				stated[n] = other
			}
		}
	}
	var out []Upstream
	seen := map[*working.Node]bool{}
	taken := map[*entry]bool{}
	var walk func(n *working.Node)
	walk = func(n *working.Node) {
		if seen[n] {
			return
		}
		seen[n] = true
		if other := stated[n]; other != nil && n != e.node {
			if !taken[other] {
				taken[other] = true
				out = append(out, Upstream{other.node, other.node.Address.String(), other.text, other.x})
			}
			return
		}
		for _, in := range n.Inputs {
			walk(in.Node)
		}
	}
	walk(e.node)
	return out
}

// sane says that a value may stand in the place of the one that is worked out.
func (e *entry) sane() bool {
	v, known := e.node.Value()
	return e.x != 0 && (!known || v.X*e.x > 0)
}

// alike is a node at every temperature of the water: whoever states a flow states it for all of them.
func (k *marker) alike(n *working.Node) []*working.Node {
	out := []*working.Node{n}
	a := n.Address
	if a.Water == "" {
		return out
	}
	for _, w := range working.Waters {
		a.Water = w
		if other := k.Ledger.Find(a); other != nil && other != n {
			out = append(out, other)
		}
	}
	return out
}

// inPlace is the changes that put stated values in the place of what is worked out.
func (k *marker) inPlace(from []Upstream) []working.Change {
	var out []working.Change
	for _, u := range from {
		for _, n := range k.alike(u.Node) {
			out = append(out, working.Change{Node: n, X: u.X})
		}
	}
	return out
}

// wanting is what stands between a node and its number, in words.
func (k *marker) wanting(n *working.Node) string {
	var out []string
	for _, g := range n.Gaps() {
		what := g.Why
		if what == "" {
			what = system.Dotted(g.Pointer) + " is missing"
		}
		if !slices.Contains(out, what) {
			out = append(out, what)
		}
	}
	return strings.Join(short(out), ", ")
}
