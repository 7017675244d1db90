package drawing

import (
	"fmt"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// Oxygen draws how the oxygen of a tank falls after a power cut with nobody and
// nothing helping, in the coldest, the usual and the warmest water: straight from
// where it stood to where the fish are in danger, since the fish use it steadily. It
// answers with why where no fish, or no time, is known.
func Oxygen(s *system.System, l *working.Ledger, tank string) (svg, why string) {
	if s.Vessel(tank) == nil {
		return "", "there is no vessel " + tank
	}
	plot := Plot{
		Title: "Oxygen in " + tank + " after a power cut, with no backup",
		X:     Axis{Title: "time", Kind: quantity.Time, Unit: "h"},
		Y:     Axis{Title: "oxygen", Kind: quantity.Concentration, Unit: "mg/L"},
	}
	why = "no time to danger is worked out for " + tank
	danger := 0.0
	for _, w := range working.Waters {
		n := l.Find(working.Address{Subject: tank, Name: "time_to_danger", Case: "power_cut", Water: w})
		if n == nil {
			continue
		}
		t, ok := n.Value()
		from, to := input(n, "C0"), input(n, "Cd")
		if !ok || from <= 0 || t.X <= 0 {
			why = "the time to danger of " + tank + " is not known" + gaps(n)
			continue
		}
		name := degrees(s, w)
		danger = to
		plot.Curves = append(plot.Curves, Curve{Name: name, X: []float64{0, t.X}, Y: []float64{from, to}})
		words := fmt.Sprintf("%s: %s until danger", name, quantity.Format(quantity.Time, t.X, quantity.Metric))
		if t.Spread() {
			words += fmt.Sprintf(" (%s to %s)", quantity.Format(quantity.Time, t.Low, quantity.Metric), quantity.Format(quantity.Time, t.High, quantity.Metric))
		}
		if b := l.Find(working.Address{Subject: tank, Name: "time_with_backup", Case: "power_cut", Water: w}); b != nil {
			if tb, ok := b.Value(); ok && tb.X > t.X {
				words += fmt.Sprintf("; with the backup air %s (%s to %s)", quantity.Format(quantity.Time, tb.X, quantity.Metric), quantity.Format(quantity.Time, tb.Low, quantity.Metric), quantity.Format(quantity.Time, tb.High, quantity.Metric))
			}
		}
		plot.Notes = append(plot.Notes, words+".")
		plot.X.High, plot.Y.High = max(plot.X.High, t.X*1.05), max(plot.Y.High, from*1.1)
	}
	if len(plot.Curves) == 0 {
		return "", why
	}
	if plot.X.High < 2*3600 {
		plot.X.Unit = "min"
	}
	plot.Limits = []Limit{{At: danger, Name: "danger, " + quantity.FormatIn(quantity.Concentration, danger, "mg/L", 2)}}
	plot.Description = "Oxygen against time, falling in straight lines."
	for _, words := range plot.Notes {
		plot.Description += " " + words
	}
	return Chart(plot)
}

// input is an input of a node by its symbol, zero where it has none.
func input(n *working.Node, symbol string) float64 {
	for _, in := range n.Inputs {
		if v, ok := in.Value(); in.Symbol == symbol && ok && finite(v.X) {
			return v.X
		}
	}
	return 0
}

// degrees names the water by its temperature.
func degrees(s *system.System, water string) string {
	t := s.Water.Temperature
	n := map[string]system.Number{"low": t.Low, "usual": t.Usual, "high": t.High}[water]
	if x, ok := si(n); ok {
		return quantity.Format(quantity.Temperature, x, quantity.Metric)
	}
	return "water " + water
}
