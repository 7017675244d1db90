package report

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// What of a scene is worth a word.
const (
	rises   = 0.005 // m of level
	puddle  = 1e-4  // m3 on the floor
	allKept = 0.995 // share of a tank's water
)

// outcome is one thing that a scene comes to, with its time where that is known.
type outcome struct {
	words string
	at    float64 // s; below zero: no time
}

// outcomes is what is worth a word in a scene: vessels that rise, what goes to the
// floor, what a fish tank keeps, what spills, where a pump draws air.
func (p *page) outcomes(sc working.Scene) []outcome {
	var out []outcome
	say := func(words string) { out = append(out, outcome{words: words, at: -1}) }
	if len(sc.Missing) > 0 {
		return out
	}
	for _, r := range p.risen(sc) {
		say(r.Subject + " rises " + p.riseWords(r.Most-p.before(r), r.Most, r.Rim-r.Most))
	}
	of := func(subject, name string) (float64, bool) {
		return p.known(working.Address{Subject: subject, Name: name, Case: sc.Case, Fault: sc.Fault})
	}
	for _, r := range sc.Reached {
		for _, name := range []string{"tank_kept", "tank_kept_capped"} {
			if share, known := of(r.Subject, name); known && share < allKept {
				say(r.Subject + " keeps " + percent(share))
				break
			}
		}
		if cover, known := of(r.Subject, "start_cover"); known && cover > 0 {
			say(r.Subject + " stays " + p.bothHeights(cover) + " above where the pump draws air")
		}
	}
	floor, wet := of(sc.Subject, "to_floor")
	wet = wet && floor > puddle
	for i := 0; i < len(sc.Happened); i++ {
		h := sc.Happened[i]
		names := []string{h.Subject}
		for h.OrLater && i+1 < len(sc.Happened) && sc.Happened[i+1].What == h.What {
			i++
			names = append(names, sc.Happened[i].Subject)
		}
		words := p.happenedWords(h.What, names)
		if wet && h.What == working.Spills {
			words, wet = words+", "+p.aboutBoth(quantity.Volume, floor)+" to the floor", false
		}
		out = append(out, outcome{words, h.At})
	}
	if wet {
		out = slices.Insert(out, untimed(out), outcome{words: p.aboutBoth(quantity.Volume, floor) + " to the floor", at: -1})
	}
	if sc.Reason != "" {
		say("what comes later was not followed: " + sc.Reason)
		if sc.Lasted > 0 {
			out[len(out)-1].at = sc.Lasted
		}
	}
	return out
}

// untimed is how many of the first outcomes have no time.
func untimed(list []outcome) int {
	for i, o := range list {
		if o.at >= 0 {
			return i
		}
	}
	return len(list)
}

// risen is the vessels whose water rises without spilling, that with the least room first.
func (p *page) risen(sc working.Scene) []working.Reached {
	var out []working.Reached
	for _, r := range sc.Reached {
		spills := slices.ContainsFunc(sc.Happened, func(h working.Happened) bool { return h.Subject == r.Subject && h.What == working.Spills })
		if !spills && r.Most-p.before(r) >= rises {
			out = append(out, r)
		}
	}
	slices.SortStableFunc(out, func(a, b working.Reached) int { return cmp.Compare(a.Rim-a.Most, b.Rim-b.Most) })
	return out
}

// before is the level from which a rise counts: that at which the loop runs, or
// begins where that is higher.
func (p *page) before(r working.Reached) float64 {
	if running, known := p.usual(r.Subject, "water_level", working.RunWorst); known {
		return math.Max(running, r.Began)
	}
	return r.Began
}

// happenedWords says what happens: "tank spills", "pump draws air". Of several it says the first.
func (p *page) happenedWords(what string, vessels []string) string {
	names := series(vessels, "and")
	if what == working.Spills {
		if len(vessels) > 1 {
			return names + " spill, the first"
		}
		return names + " spills"
	}
	pumps, stated := 0, true
	if p.System != nil {
		for _, l := range p.System.Lines {
			for _, piece := range l.Pieces {
				if piece.Pump == nil {
					continue
				}
				if pumps++; l.From.Vessel != nil && slices.Contains(vessels, l.From.Vessel.ID) {
					stated = stated && piece.Pump.DryBelow.Given()
				}
			}
		}
	}
	words := "pump"
	if pumps > 1 {
		words = "pump of " + names
	}
	if !stated { // then it is known of the intake alone, and air comes before that
		words += " has its intake bare"
	} else {
		words += " draws air"
	}
	if len(vessels) > 1 {
		words += ", the first"
	}
	return words
}

// riseWords is "122 to 1212, 38 left", in inches too where both are wanted.
func (p *page) riseWords(by, to, left float64) string {
	words := func(in quantity.System) string {
		return heightShown(by, in) + " to " + heightShown(to, in) + ", " + heightShown(left, in) + " left"
	}
	if !p.both || p.in == quantity.US {
		return words(p.in)
	}
	return words(p.in) + " (inches: " + words(quantity.US) + ")"
}

func (p *page) bothHeights(z float64) string {
	text := heightShown(z, p.in) + " " + smallUnit(p.in)
	if p.both && p.in != quantity.US {
		text += " (" + heightShown(z, quantity.US) + " in)"
	}
	return text
}

// aboutBoth is a value as exact as a forecast of a flood can be.
func (p *page) aboutBoth(kind quantity.Kind, x float64) string {
	text := about(kind, x, p.in)
	if us := about(kind, x, quantity.US); p.both && us != text {
		text += " (" + us + ")"
	}
	return text
}

// about is a value to two digits: "8.1 min", "180 L".
func about(kind quantity.Kind, x float64, in quantity.System) string {
	number, unit := numberUnit(shown(kind, x, in))
	if x == 0 {
		return strings.TrimSpace(number + " " + unit)
	}
	return strings.TrimSpace(inUnit(kind, x, unit, 2) + " " + unit)
}

// percent is a share in whole percents, and never all of it when it is less.
func percent(share float64) string {
	return fixed(math.Min(share, 0.99)*100, 0) + " %"
}
