package marking

import (
	"math"

	"dryfit/internal/working"
)

// SlipNames is the slips that are looked for, in the order in which they are named.
var SlipNames = []string{
	radiusDiameter, sizeBore, otherGallon, minutesHours, fanningDarcy, forgottenFitting, leftOut, degreesRadians, factorTwo, factorFour, factorTen, factorThousand, otherCase,
}

const (
	radiusDiameter   = "radius and diameter"
	sizeBore         = "size and bore of a pipe"
	otherGallon      = "gallons of the other country"
	minutesHours     = "minutes and hours"
	fanningDarcy     = "Fanning and Darcy"
	forgottenFitting = "a forgotten fitting"
	leftOut          = "something left out"
	degreesRadians   = "degrees and radians"
	factorTwo        = "a factor of 2"
	factorFour       = "a factor of 4"
	factorTen        = "a factor of 10"
	factorThousand   = "a factor of 1000"
	otherCase        = "another case"
)

// attempt is one slip that may have been made: the numbers that it changes on the way, or what it
// does to the outcome of the last step.
type attempt struct {
	name, words string
	changes     []working.Change
	last        func(y float64) float64 // nil: nothing
}

// How near the number has to come to what a slip gives: half a step of its last digit, but never
// nearer than least, which is what rounding on the way leaves, and never farther than most.
// Both are project judgement: wide enough for three figures, narrow enough that a number
// drawn at random seldom meets one.
const (
	leastWindow = 0.0025
	mostWindow  = 0.007
)

// slips is the slips that explain a wrong number: each is tried by working the number again with
// that mistake in it, from what the student stated before and else from the inputs.
func (k *marker) slips(task *StatedRight, e *entry, w *Worked) []Slip {
	var base []working.Change
	if !task.Alone {
		base = k.inPlace(k.before(e))
	}
	return explaining(e.number, k.slipped(task, reachOf(e.node, base), e, w.Right))
}

// slipped is what the working comes to with each slip that would make the number wrong.
func (k *marker) slipped(task *StatedRight, r *reach, e *entry, right *float64) []Slip {
	carried, known := r.work(nil)
	if !known {
		return nil
	}
	var out []Slip
	for _, attempts := range []func(*reach, *entry) []attempt{
		k.diameters, k.bores, k.gallons, k.minutes, k.frictions, k.fittings, k.omissions, k.degrees, k.factors, k.powers, k.cases,
	} {
		for _, a := range attempts(r, e) {
			y, known := carried, true
			if len(a.changes) > 0 {
				y, known = r.work(a.changes)
			}
			if a.last != nil {
				y = a.last(y)
			}
			if known && !math.IsNaN(y) && !math.IsInf(y, 0) && y != 0 && bandOf(task, y, carried) < 0 && (right == nil || bandOf(task, y, *right) < 0) {
				out = append(out, Slip{a.name, a.words, y})
			}
		}
	}
	return out
}

// explaining is those of some slips that a number shows, each name once, in the order of [SlipNames].
func explaining(n number, slipped []Slip) []Slip {
	window := min(max(n.half, leastWindow), mostWindow)
	best := map[string]Slip{}
	for _, s := range slipped {
		off := math.Abs(n.x - s.X)
		if off > window*math.Abs(s.X) {
			continue
		}
		if nearest, have := best[s.Name]; !have || off < math.Abs(n.x-nearest.X)-guard*math.Abs(s.X) {
			best[s.Name] = s
		}
	}
	var out []Slip
	for _, name := range SlipNames {
		if s, have := best[name]; have {
			out = append(out, s)
		}
	}
	return out
}

func times(factor float64) func(float64) float64 {
	return func(x float64) float64 { return factor * x }
}
