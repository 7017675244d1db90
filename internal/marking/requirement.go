package marking

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// Two quantities of a requirement that are asked of the whole loop.
const (
	Cost      = "cost"
	Footprint = "footprint"
)

// requirement gives marks where what the brief asks is reached, by each subject or by all together.
func (k *marker) requirement(line *Line, task *Requirement) {
	if task.Quantity == Cost {
		k.cost(line, task)
		return
	}
	var found []extreme
	for _, subject := range k.subjects(task.Quantity, task.Of) {
		found = append(found, k.worst(task, subject))
	}
	if len(found) == 0 {
		line.say(fmt.Sprintf("there is no %s of %s in this loop", task.Quantity, task.Of))
		return
	}
	for _, e := range found {
		if e.why != "" {
			line.lose(e.why)
			line.say("it cannot be said: " + e.why)
			return
		}
	}
	if task.Together {
		all := extreme{subject: "together"}
		for _, e := range found {
			all.least, all.most = all.least+e.least, all.most+e.most
		}
		found = []extreme{all}
	}
	marks := math.Inf(1)
	for _, e := range found {
		got, words := task.reached(e, line.Item.Marks)
		marks = math.Min(marks, got)
		line.say(words)
	}
	line.Marks = marks
	if marks < line.Item.Marks {
		line.lose(task.Quantity)
	}
}

// cost is what is still to be bought, in the currency of the guide.
func (k *marker) cost(line *Line, task *Requirement) {
	bill := k.costs()
	if bill.Unpriced > 0 {
		line.lose("prices")
		line.say(fmt.Sprintf("it cannot be said: of the parts to be bought, %d have no price", bill.Unpriced))
		return
	}
	sum := 0.0
	for _, m := range bill.Money {
		if m.Currency != task.Unit {
			line.lose("prices in " + task.Unit)
			line.say("it cannot be said: some prices are in " + m.Currency + ", the brief counts in " + task.Unit)
			return
		}
		sum += m.Amount
	}
	var words string
	line.Marks, words = task.reached(extreme{"what is to be bought", sum, sum, ""}, line.Item.Marks)
	line.say(words)
	if line.Marks < line.Item.Marks {
		line.lose(Cost)
	}
}

// extreme is the least and the greatest of a quantity over the states of a case.
type extreme struct {
	subject     string
	least, most float64
	why         string // it is not known
}

// worst is a quantity of one subject over the water temperatures of the case.
func (k *marker) worst(task *Requirement, subject string) extreme {
	e := extreme{subject: subject, least: math.Inf(1), most: math.Inf(-1)}
	for _, n := range working.InCase(k.Ledger.Of(subject, task.Quantity), task.Case) {
		v, known := n.Value()
		if !known {
			e.why = k.wanting(n)
			return e
		}
		e.least, e.most = math.Min(e.least, v.X), math.Max(e.most, v.X)
	}
	if math.IsInf(e.least, 0) {
		e.why = task.Quantity + " of " + subject + " is not worked out in the case " + task.Case
	}
	return e
}

// reached is the marks for what was found, and the reason.
func (task *Requirement) reached(e extreme, full float64) (float64, string) {
	say := func(x float64) string { return InUnit(task.Kind, x, task.Unit) }
	marks, words := full, say(e.least)
	if e.least != e.most {
		words += " to " + say(e.most)
	}
	words = e.subject + ": " + words
	for _, bound := range []struct {
		at    *float64
		x     float64
		off   float64
		words string
	}{{task.Least, e.least, -1, "at least"}, {task.Most, e.most, 1, "at most"}} {
		if bound.at == nil {
			continue
		}
		words += ", " + bound.words + " " + say(*bound.at) + " is asked"
		if (bound.x-*bound.at)*bound.off <= guard*math.Abs(*bound.at) {
			continue
		}
		near := 0.0
		for _, b := range task.Close {
			if b.Within.Holds(bound.x, *bound.at) {
				near = b.Marks
				words += " and nearly reached"
				break
			}
		}
		marks = math.Min(marks, near)
	}
	return marks, words
}

// subjects is those of a quantity that are meant: the one of that id, or those of the set, in the order of the ledger.
func (k *marker) subjects(name, of string) []string {
	if of == "" && name == Footprint {
		of = "site"
	}
	set, isSet := k.Ledger.Sets[of]
	var out []string
	for _, n := range k.Ledger.Nodes() {
		a := n.Address
		if a.Name == name && !slices.Contains(out, a.Subject) && (a.Subject == of || isSet && slices.Contains(set, a.Subject)) {
			out = append(out, a.Subject)
		}
	}
	return out
}

// InUnit is a value in a unit, with four digits and no noughts at its end.
func InUnit(kind quantity.Kind, x float64, unit string) string {
	if kind == quantity.Money {
		return fmt.Sprintf("%.2f %s", x, unit)
	}
	digits, unit, _ := strings.Cut(quantity.FormatIn(kind, x, unit, 4), " ")
	if strings.Contains(digits, ".") {
		digits = strings.TrimRight(strings.TrimRight(digits, "0"), ".")
	}
	return strings.TrimSpace(digits + " " + unit)
}
