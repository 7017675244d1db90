package report

import (
	"math"
	"strconv"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/working"
)

// siUnits is the unit in which values of a kind are held.
var siUnits = map[quantity.Kind]string{
	quantity.Length: "m", quantity.Area: "m2", quantity.Volume: "m3", quantity.Flow: "m3/s", quantity.Velocity: "m/s",
	quantity.Head: "m", quantity.Pressure: "Pa", quantity.Mass: "kg", quantity.Time: "s", quantity.Temperature: "K",
	quantity.TemperatureDifference: "K", quantity.Power: "W", quantity.Energy: "J", quantity.Concentration: "kg/m3", quantity.Stocking: "kg/m3",
	quantity.Fraction: "1", quantity.Angle: "rad", quantity.FeedRate: "kg/s", quantity.Hardness: "1", quantity.Money: "1",
	quantity.Current: "A", quantity.Voltage: "V", quantity.Force: "N", quantity.Stress: "Pa",
	quantity.SpecificSurface: "1/m", quantity.Viscosity: "m2/s", quantity.ArealFeed: "kg/(m2 s)", quantity.ArealRate: "kg/(m2 s)", quantity.Number: "1",
}

// shown is a value for reading: "0.25 m/s".
func shown(kind quantity.Kind, x float64, in quantity.System) string {
	return quantity.Format(kind, x, in)
}

// spreadShown is the range of a value: "12 to 30 N"; empty without one.
func spreadShown(kind quantity.Kind, v working.Value, in quantity.System) string {
	if !v.Spread() {
		return ""
	}
	_, unit := numberUnit(shown(kind, v.X, in))
	low, high := inUnit(kind, v.Low, unit, 0), inUnit(kind, v.High, unit, 0)
	if low == high {
		return ""
	}
	return strings.TrimSpace(low + " to " + high + " " + unit)
}

// numberUnit splits "0.25 m/s".
func numberUnit(text string) (number, unit string) {
	number, unit, _ = strings.Cut(text, " ")
	return number, unit
}

// inUnit is the number alone, in a unit of its kind; digits 0 rounds for reading.
func inUnit(kind quantity.Kind, x float64, unit string, digits int) string {
	number, _ := numberUnit(quantity.FormatIn(kind, x, unit, digits))
	if digits > 0 && strings.Contains(number, ".") {
		number = strings.TrimRight(strings.TrimRight(number, "0"), ".")
	}
	return number
}

// figures is a value beside its limits, in one unit.
type figures struct {
	number, unit string
	least, most  string
}

// beside shows a value and its limits in the unit of the value, with as many
// digits as it takes to see on which side of a limit it lies.
func figuresOf(kind quantity.Kind, x float64, limit review.Limit, in quantity.System) figures {
	number, unit := numberUnit(shown(kind, x, in))
	f := figures{number: number, unit: unit}
	for _, side := range []struct {
		limit *float64
		text  *string
	}{{limit.Least, &f.least}, {limit.Most, &f.most}} {
		if side.limit == nil {
			continue
		}
		*side.text = inUnit(kind, *side.limit, unit, 0)
		for digits := 4; digits <= 12 && *side.text == f.number && *side.limit != x; digits++ {
			f.number = inUnit(kind, x, unit, digits)
			*side.text = inUnit(kind, *side.limit, unit, digits)
		}
	}
	return f
}

// limitWords is "at least 0.2", "at most 60" or "0.4 to 0.6".
func (f figures) limitWords() string {
	switch {
	case f.least != "" && f.most != "":
		return f.least + " to " + f.most
	case f.least != "":
		return "at least " + f.least
	case f.most != "":
		return "at most " + f.most
	}
	return ""
}

// limitShown is a limit alone, with its unit.
func limitShown(kind quantity.Kind, l review.Limit, in quantity.System) string {
	x := l.Most
	if x == nil {
		x = l.Least
	}
	if x == nil {
		return ""
	}
	f := figuresOf(kind, *x, l, in)
	return strings.TrimSpace(f.limitWords() + " " + f.unit)
}

// shareShown is how much of a limit is used, so that a value on the wrong side
// never reads as one on the right side; where a share means nothing, what is
// left in the unit of the value.
func shareShown(j *review.Judgement, in quantity.System) string {
	if share, ok := j.OfLimit(); ok {
		if share > 99 {
			return "over 99"
		}
		for digits := 2; digits <= 6; digits++ {
			text := strconv.FormatFloat(share, 'f', digits, 64)
			if back, _ := strconv.ParseFloat(text, 64); back != 1 || share == 1 {
				return text
			}
		}
		return "1.00"
	}
	margin, ok := j.Margin()
	if !ok {
		return ""
	}
	kind := j.Kind
	if kind == quantity.Temperature {
		kind = quantity.TemperatureDifference
	}
	switch side := " left"; {
	case margin == 0:
		return "none left"
	default:
		if margin < 0 {
			side = " short"
		}
		return shown(kind, math.Abs(margin), in) + side
	}
}

// heightShown is a height or length on the levelling side: whole millimetres, or
// tenths of an inch.
func heightShown(z float64, in quantity.System) string {
	if in == quantity.US {
		return fixed(z/0.0254, 1)
	}
	return fixed(z*1000, 0)
}

// lossShown is head lost: tenths of a millimetre, or hundredths of an inch.
func lossShown(h float64, in quantity.System) string {
	if in == quantity.US {
		return fixed(h/0.0254, 2)
	}
	return fixed(h*1000, 1)
}

// smallUnit is the unit of heights and head lost.
func smallUnit(in quantity.System) string {
	if in == quantity.US {
		return "in"
	}
	return "mm"
}

// fixed writes so many decimals, and no minus before a zero.
func fixed(x float64, decimals int) string {
	text := strconv.FormatFloat(x, 'f', decimals, 64)
	if strings.Trim(text, "-0.") == "" {
		return strings.TrimPrefix(text, "-")
	}
	return text
}

func roundedLimit(x *float64) *float64 {
	if x == nil {
		return nil
	}
	y := quantity.Rounded(*x)
	return &y
}

// becomes says what a remedy makes of what was judged: "the lip ... is then 0.5".
func becomes(t review.Then, in quantity.System) string {
	switch {
	case t.Title == "":
		return ""
	case t.Word != "":
		return t.Title + ": then " + t.Word
	}
	return t.Title + ": then " + shown(t.Kind, t.Value, in)
}
