package system

import (
	"cmp"
	"errors"
	"math"
	"strings"
	"time"

	"dryfit/internal/quantity"
)

// A measure is what a format of the schema takes: a kind of quantity, from the
// least to the most that one small loop has.
type measure struct {
	kind        quantity.Kind
	least, most string   // as a file writes them; a least of "0" is zero in any unit
	from, to    float64  // the same in SI
	under, over string   // what is wrong outside the bounds
	units       []string // in which the number was perhaps meant, the likeliest first
}

// measures are the formats with bounds. The bounds are there to catch a slip of
// the unit or the sign, not to judge a design, and so are wide.
//
// Project judgement; what is named beside a bound is from memory: the lowest shore
// lies at -430 m and the highest town at 5100 m, pipe for a home is rated to 2.5
// MPa, residual-current devices trip at 1 A at the most, low voltage ends at 1000 V,
// steel has 210 GPa, lead 11 300 kg/m3, the sea 35 g/L of salt.
var measures = map[string]measure{
	"length":           bounded(quantity.Length, "0", "100 m", "", ""),
	"signed-length":    bounded(quantity.Length, "-100 m", "100 m", "", ""), // a height from the datum, a place in plan
	"altitude":         bounded(quantity.Length, "-500 m", "6000 m", "lower than any shore", "higher than any town").in("ft"),
	"area":             bounded(quantity.Area, "0", "5000 m2", "", ""),
	"volume":           bounded(quantity.Volume, "0", "500 m3", "", ""),
	"flow":             bounded(quantity.Flow, "0", "200 m3/h", "", ""), // of water or air
	"velocity":         bounded(quantity.Velocity, "0", "20 m/s", "", ""),
	"head":             bounded(quantity.Head, "0", "100 m", "", ""),
	"pressure":         bounded(quantity.Pressure, "0", "4 MPa", "", ""),
	"mass":             bounded(quantity.Mass, "0", "100 t", "", ""),
	"time-span":        bounded(quantity.Time, "0", "520 week", "", "longer than ten years"), // `time` is JSON Schema's own, a time of day
	"temperature":      bounded(quantity.Temperature, "-10 degC", "60 degC", "colder than the water of a loop gets", "hotter than the water of a loop gets"),
	"air-temperature":  bounded(quantity.Temperature, "-60 degC", "60 degC", "colder than air gets", "hotter than air gets"),
	"power":            bounded(quantity.Power, "0", "50 kW", "", ""),
	"energy":           bounded(quantity.Energy, "0", "1000 kWh", "", ""),
	"concentration":    bounded(quantity.Concentration, "0", "50 g/L", "", "more than the sea has of salt"),
	"density":          bounded(quantity.Concentration, "0", "20000 kg/m3", "", "far denser than lead"),
	"fraction":         bounded(quantity.Fraction, "0", "100 %", "", "more than the whole"),
	"gradient":         bounded(quantity.Fraction, "0", "1000 %", "", "steeper than a gradient is given"),
	"angle":            bounded(quantity.Angle, "0", "360 deg", "", "more than a full turn"),
	"feed_rate":        bounded(quantity.FeedRate, "0", "100 kg/d", "", ""),
	"hardness":         bounded(quantity.Hardness, "0", "100 ShoreA", "", "more than the scale has"),
	"money":            bounded(quantity.Money, "0", "", "", ""),
	"current":          bounded(quantity.Current, "0", "3 A", "", "more than a protective device trips at"),
	"voltage":          bounded(quantity.Voltage, "0", "1000 V", "", ""),
	"force":            bounded(quantity.Force, "0", "1000 kN", "", ""),
	"stress":           bounded(quantity.Stress, "0", "250 GPa", "", "stiffer than steel"),
	"specific_surface": bounded(quantity.SpecificSurface, "0", "50000 m2/m3", "", "more than any media have"),
	"areal_feed":       bounded(quantity.ArealFeed, "0", "1 kg/m2/d", "", "more than any bed takes"),
}

// bounded makes a measure. An empty most is none.
func bounded(kind quantity.Kind, least, most, under, over string) measure {
	m := measure{kind: kind, least: least, most: most, to: math.Inf(1), under: under, over: over, units: kind.Units()}
	read := func(text string) float64 {
		q, err := quantity.Parse(kind, text)
		if err != nil {
			panic("system: bad bound: " + err.Error())
		}
		return q.SI
	}
	if least != "0" {
		m.from = read(least)
		m.under = cmp.Or(under, "less than a small loop has")
	} else {
		m.under = cmp.Or(under, "this cannot be below zero")
	}
	if most != "" {
		m.to = read(most)
		m.over = cmp.Or(over, "more than a small loop has")
	}
	return m
}

// in is the measure with other units that may have been meant.
func (m measure) in(units ...string) measure {
	m.units = units
	return m
}

// misfit says what is wrong with text of a format and what to write instead;
// nothing when it is good. A format `KIND-or-WORD` is a quantity or the word.
func misfit(format, s string) (problem, write string) {
	switch format {
	case "id":
		if !identifier.MatchString(s) || len(s) > 40 {
			return "not the form of a name", "use small letters, digits and single hyphens, a letter first, as in `waste-40`"
		}
		return "", ""
	case "date":
		if _, err := time.Parse(time.DateOnly, s); err != nil {
			return "not a day of the calendar", "write year, month and day, as in `2026-03-14`"
		}
		return "", ""
	}
	m, word := measured(format)
	if word != "" && s == word {
		return "", ""
	}
	q, err := quantity.Parse(m.kind, s)
	if err == nil {
		return m.implausible(q, s)
	}
	var e *quantity.Error
	if !errors.As(err, &e) {
		return err.Error(), ""
	}
	write = "write " + e.Write
	if example := m.kind.Example(); e.Write == example && leading(s) != leading(example) {
		write = "write " + described(m.kind) + ", as in `" + example + "`" // nothing can be seen in what was typed
	}
	if word != "" {
		write += ", or the word `" + word + "`"
	}
	return e.Problem, write
}

// measured is the measure of a format, and the word that may stand in its place.
// A kind of quantity that is not listed has no bounds.
func measured(format string) (m measure, word string) {
	name, word, _ := strings.Cut(format, "-or-")
	m, listed := measures[name]
	if !listed {
		m = measure{kind: quantity.Kind(name), from: math.Inf(-1), to: math.Inf(1)}
	}
	return m, word
}

// implausible says why a quantity is outside the bounds, and what was perhaps meant.
func (m measure) implausible(q quantity.Quantity, typed string) (problem, write string) {
	switch {
	case q.SI < m.from && m.least == "0":
		return m.under, "write " + strings.TrimSpace("0 "+q.Unit) + " or more"
	case q.SI < m.from:
		return m.under, m.ask(q, typed) + "write " + m.least + " or more"
	case q.SI > m.to:
		return m.over, m.ask(q, typed) + "write at most " + m.most
	}
	return "", ""
}

// ask asks whether the number was meant in the first of the usual units that brings it within the bounds.
func (m measure) ask(q quantity.Quantity, typed string) string {
	for _, unit := range m.units {
		text := strings.TrimSpace(leading(typed) + " " + unit + " " + q.Basis)
		if other, err := quantity.Parse(m.kind, text); err == nil && other.SI >= m.from && other.SI <= m.to {
			return "is it " + text + "? "
		}
	}
	return ""
}

// leading is the number at the start of text, as typed.
func leading(s string) string {
	s = strings.TrimSpace(s)
	return strings.TrimSpace(s[:len(s)-len(strings.TrimLeft(s, "+-0123456789./ "))])
}

// described is a kind of quantity with its article.
func described(kind quantity.Kind) string {
	title := kind.Title()
	switch {
	case title == "" || kind == quantity.Money || kind == quantity.Hardness:
		return title
	case strings.ContainsRune("aeiou", rune(title[0])):
		return "an " + title
	}
	return "a " + title
}
