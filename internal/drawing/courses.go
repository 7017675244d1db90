package drawing

import (
	"fmt"
	"math"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// settled is how near to its last level a level must be for nothing to count as moving.
const settled = 0.002

// Courses draws how the levels go in a scene, each less the level from which it
// began. Time is shown until nothing moves by more than 2 mm any more. It answers
// with why where the scene could not be followed.
func Courses(f working.Followed, s *system.System) (svg, why string) {
	if len(f.Missing) > 0 {
		if f.Missing[0].Pointer != "" {
			return "", f.Fault + " cannot be followed: write " + f.Missing[0].Pointer
		}
		return "", f.Fault + " cannot be followed: " + f.Missing[0].Why
	}
	var shown []working.Series
	for _, one := range f.Levels {
		if s.Vessel(one.Subject) != nil && len(one.T) > 1 && len(one.T) == len(one.Y) {
			shown = append(shown, one)
		}
	}
	if len(shown) == 0 {
		return "", "no level was followed in " + f.Fault
	}
	until, low, high := 0.0, 0.0, 0.0
	for _, one := range shown {
		last := one.Y[len(one.Y)-1]
		for i, y := range one.Y {
			low, high = math.Min(low, y-one.Y[0]), math.Max(high, y-one.Y[0])
			if math.Abs(y-last) > settled {
				until = math.Max(until, one.T[min(i+1, len(one.T)-1)])
			}
		}
	}
	if until <= 0 {
		until = greatest(shown[0].T)
	}
	room := math.Max((high-low)*0.06, 0.001)
	unit := "s"
	if until > 300 {
		unit = "min"
	}
	if until > 4*3600 {
		unit = "h"
	}
	plot := Plot{
		Title: f.Fault + ": how the levels go",
		X:     Axis{Title: "time", Kind: quantity.Time, Unit: unit, High: until},
		Y:     Axis{Title: "level, less that at the start", Kind: quantity.Length, Unit: "mm", Low: low - room, High: high + room},
	}
	var told []string
	for _, one := range shown {
		c := Curve{Name: one.Subject, X: one.T}
		for _, y := range one.Y {
			c.Y = append(c.Y, y-one.Y[0])
		}
		plot.Curves = append(plot.Curves, c)
		told = append(told, fmt.Sprintf("%s %s to %s", one.Subject, whole(one.Y[0]), whole(one.Y[len(one.Y)-1])))
		for _, h := range f.Happened {
			if h.Subject == one.Subject && h.What == working.Spills {
				plot.Marks = append(plot.Marks, Mark{h.At, at(one, h.At) - one.Y[0], one.Subject + " spills"})
			}
		}
	}
	for _, h := range f.Happened {
		if h.What == working.DrawsAir {
			plot.Limits = append(plot.Limits, Limit{At: h.At, Upright: true, Name: h.Subject + " draws air"})
		}
	}
	plot.Notes = wrapped("Levels above the datum, mm: "+strings.Join(told, "; ")+".", pageWidth)
	plot.Description = "Levels in time. " + strings.Join(plot.Notes, " ")
	return Chart(plot)
}

// at is a curve at a time, in straight lines between its places.
func at(one working.Series, t float64) float64 {
	for i := 1; i < len(one.T); i++ {
		if t0, t1 := one.T[i-1], one.T[i]; t <= t1 && t1 > t0 {
			return one.Y[i-1] + (one.Y[i]-one.Y[i-1])*math.Max(0, (t-t0)/(t1-t0))
		}
	}
	return one.Y[len(one.Y)-1]
}

// wrapped breaks words into lines of a width.
func wrapped(words string, width float64) []string {
	var out []string
	now := ""
	for _, w := range strings.Fields(words) {
		if next := strings.TrimSpace(now + " " + w); now == "" || broad(small, next) <= width {
			now = next
			continue
		}
		out = append(out, now)
		now = w
	}
	return append(out, now)
}
