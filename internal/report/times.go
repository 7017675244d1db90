package report

import (
	"math"
	"sort"

	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// mostRows is the rows that a table of levels in time has, at most.
const mostRows = 20

// ladder is times that are easy to say, s: each about half as long again as the one before.
var ladder = func() []float64 {
	var out []float64
	for _, unit := range []struct {
		s     float64
		steps []float64
	}{
		{1, []float64{1, 2, 3, 5, 10, 15, 20, 30, 45}},
		{60, []float64{1, 1.5, 2, 3, 4, 5, 7, 10, 15, 20, 30, 45}},
		{3600, []float64{1, 1.5, 2, 3, 4, 6, 8, 12, 16}},
		{86400, []float64{1, 1.5, 2, 3, 4, 6, 8, 12, 16, 24, 32, 48, 64, 96, 128, 192, 256, 384}},
	} {
		for _, n := range unit.steps {
			out = append(out, n*unit.s)
		}
	}
	return out
}()

// evenSteps is steps that are easy to count in, s.
var evenSteps = []float64{0.1, 0.2, 0.5, 1, 2, 5, 10, 15, 20, 30, 60, 120, 300, 600, 900, 1200, 1800, 3600, 7200, 10800, 14400, 21600, 43200, 86400, 172800, 345600, 864000}

// rowTimes is the times at which a table shows some courses: round ones from
// nothing until all have settled, then their end. They are even steps or a ladder,
// whichever jumps least from row to row and has no more rows than that takes.
func rowTimes(courses []working.Series) []float64 {
	if len(courses) == 0 || len(courses[0].T) == 0 {
		return nil
	}
	end := courses[0].T[len(courses[0].T)-1]
	if end <= 0 {
		return []float64{0}
	}
	settled := 0.0
	for _, c := range courses {
		settled = math.Max(settled, settlesAt(c))
	}
	type choice struct {
		times []float64
		jump  float64
	}
	var choices []choice
	try := func(inner []float64) {
		times := []float64{0}
		for _, t := range inner {
			if t < end*0.97 {
				times = append(times, t)
			}
			if t >= settled {
				break
			}
		}
		if times = append(times, end); len(times) <= mostRows {
			choices = append(choices, choice{times, largestJump(courses, times)})
		}
	}
	for _, step := range evenSteps {
		var even []float64
		for i := 1; i <= mostRows && float64(i-1)*step < end; i++ {
			even = append(even, float64(i)*step)
		}
		if float64(len(even))*step >= math.Min(settled, end) {
			try(even)
		}
	}
	for i := range ladder {
		try(ladder[i:])
	}
	least := math.Inf(1)
	for _, c := range choices {
		least = math.Min(least, c.jump)
	}
	best := []float64{0, end}
	for _, c := range choices { // the shortest that hardly jumps more
		if c.jump <= 1.3*least && (len(best) == 2 || len(c.times) < len(best)) {
			best = c.times
		}
	}
	return best
}

// settlesAt is from when on a course is shown as at its end.
func settlesAt(c working.Series) float64 {
	last := len(c.T) - 1
	for i := last; i > 0; i-- {
		if math.Abs(c.Y[i-1]-c.Y[last]) > settledWithin {
			return c.T[i]
		}
	}
	return 0
}

// settledWithin is how near its end a level has settled, m.
const settledWithin = 0.001

// largestJump is how far a course goes between two rows, as a share of its range;
// what hardly moves beside the others counts less.
func largestJump(courses []working.Series, times []float64) float64 {
	widest := 0.0
	for _, c := range courses {
		if low, high := rangeOf(c); c.Rim > 0 && c.Subject != "store" {
			widest = math.Max(widest, high-low)
		}
	}
	worst := 0.0
	for _, c := range courses {
		low, high := rangeOf(c)
		span := math.Max(high-low, widest/4)
		before := atTime(c, times[0])
		for _, t := range times[1:] {
			now := atTime(c, t)
			worst = math.Max(worst, math.Abs(now-before)/span)
			before = now
		}
	}
	return worst
}

// atTime is a course at a time, between two steps in a straight line.
func atTime(c working.Series, t float64) float64 {
	i := sort.SearchFloat64s(c.T, t)
	switch {
	case i == len(c.T):
		return c.Y[i-1]
	case i == 0 || c.T[i] == c.T[i-1]:
		return c.Y[i]
	}
	return c.Y[i-1] + (c.Y[i]-c.Y[i-1])*(t-c.T[i-1])/(c.T[i]-c.T[i-1])
}

func rangeOf(c working.Series) (low, high float64) {
	low, high = c.Y[0], c.Y[0]
	for _, y := range c.Y {
		low, high = math.Min(low, y), math.Max(high, y)
	}
	return low, high
}

// reachesAt is when a course first comes so near a level that it is shown as that, s.
func reachesAt(c working.Series, z, near float64) float64 {
	for i, y := range c.Y {
		if math.Abs(y-z) > near {
			continue
		}
		if i == 0 {
			return c.T[0]
		}
		before, edge := c.Y[i-1], z-near
		if before > z {
			edge = z + near
		}
		if before == y {
			return c.T[i]
		}
		return c.T[i-1] + (c.T[i]-c.T[i-1])*(edge-before)/(y-before)
	}
	return c.T[len(c.T)-1]
}

// clock is a time in a table: round ones as they are, others to two digits.
func clock(t float64) string {
	if t <= 0 {
		return "0"
	}
	return about(quantity.Time, t, quantity.Metric)
}

// marks is how high a letter stands in its line, from low to high.
const marks = "_.-'"

// sketch draws a course in so many letters of plain text, over the times of a table.
func sketch(c working.Series, times []float64, letters int) string {
	low, high := rangeOf(c)
	if len(times) < 2 || letters < 2 || high <= low {
		return ""
	}
	out := make([]byte, letters)
	for i := range out {
		at := float64(i) / float64(letters-1) * float64(len(times)-1)
		k := min(int(at), len(times)-2)
		t := times[k] + (times[k+1]-times[k])*(at-float64(k))
		share := (atTime(c, t) - low) / (high - low)
		out[i] = marks[min(int(share*float64(len(marks))), len(marks)-1)]
	}
	return string(out)
}
