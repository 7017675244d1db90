package report

import (
	"slices"
	"strconv"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// How far what is found may be off what is worked out: what a steel rule, a bucket
// and a watch can tell apart, beside what build and filling leave.
//
// Source: project judgement; the range in which the sources leave a number is added to it.
const (
	depthOff = 0.005 // m, of a level while the pump runs
	restOff  = 0.003 // m, of a level that an edge sets, at rest or over a notch
	sumpOff  = 0.015 // m, of a level that takes what is left over
	timeOff  = 0.2   // of a time until something runs dry or empties
	clockOff = 0.05  // of a bucket and watch
	dyeShare = 0.3   // of the mean time in a settler: nothing may come out before
	bucket   = 0.010 // m3
	tiltMost = 0.003 // m, across an edge
)

// check is one thing to try with water in: what to do, what to look at, the number to
// expect and how far it may be off, in SI units.
type check struct {
	do, look string
	n        *working.Node
	off      float64
	share    bool // off is a share of the number
	atLeast  bool // sooner or lower is wrong, later or higher is right
	atMost   bool
	words    string // in place of a number
}

// wetChecks is what is tried before fish come in, with the numbers to expect.
func (w *sheeter) wetChecks() []Section {
	if w.System == nil || w.Ledger == nil {
		return nil
	}
	var list []check
	for _, some := range [][]check{w.flowChecks(), w.depthChecks(), w.settlerChecks(), w.stopChecks(), w.blockedChecks(), w.drainChecks(), w.supplyChecks()} {
		list = append(list, some...)
	}
	t := Table{Name: "wet-checks", Caption: "Checks with water in and no fish: what to do, what to expect, and room for what is found",
		Columns: []Column{{Head: "check"}, {Head: "do", Long: true}, {Head: "look at", Long: true}, {Head: "expect"}, {Head: "right from and to"}, {Head: "worked out as"}, {Head: "found", Blank: true}, {Head: "by, on", Blank: true}}}
	var open []string
	for i, c := range list {
		if c.n != nil && len(c.n.Gaps()) > 0 {
			if why := w.gapsWords(c.n.Gaps()); !slices.Contains(open, why) {
				open = append(open, why)
			}
		}
		t.Rows = append(t.Rows, cells(strconv.Itoa(i+1), c.do, c.look, w.expected(c), w.within(c), w.workedAs(c), "", ""))
	}
	blocks := []Block{Text("In water as usual, all pipes clean. A number outside its range is no failure of the loop by itself: find out why, and enter both. Heights are measured with a rule from the inner floor.")}
	blocks = append(blocks, t, openText(open), w.commissioned())
	return section(2, "wet-checks", "Wet checks", blocks...)
}

func (w *sheeter) expected(c check) string {
	switch {
	case c.words != "":
		return c.words
	case c.atLeast:
		return "at least " + w.short(c.n)
	case c.atMost:
		return "at most " + w.short(c.n)
	}
	return w.short(c.n)
}

// within is the range in which a number found is right.
func (w *sheeter) within(c check) string {
	if c.n == nil || c.atLeast || c.atMost || c.words != "" {
		return ""
	}
	v, known := c.n.Value()
	if !known {
		return "?"
	}
	off := c.off
	if c.share {
		off *= v.X
	}
	low, high := v.Low-off, v.High+off
	if v.X >= 0 {
		low = max(low, 0)
	}
	return spreadShown(c.n.Kind, working.Within(v.X, low, high), w.in)
}

// workedAs is the formula behind a number with what went into it.
func (w *sheeter) workedAs(c check) string {
	if c.n == nil || c.n.Formula == "" {
		return ""
	}
	if c.n.Address.Name != "" {
		return "as in the calculation of " + w.partOf(c.n.Address.Subject)
	}
	return c.n.Formula + ", with " + strings.Join(w.inputs(c.n, map[*working.Node]bool{}, mostSteps), ", ")
}

// less is one number less another.
func less(title string, kind quantity.Kind, symbol string, a *working.Node, other string, b *working.Node) *working.Node {
	if a == nil || b == nil {
		return nil
	}
	return working.Step(title, kind, symbol+" - "+other, "geometry", func(x []float64) (float64, string) { return x[0] - x[1], "" }, working.In(symbol, a), working.In(other, b))
}

// flowChecks times a bucket at the end of each pumped line.
func (w *sheeter) flowChecks() []check {
	var out []check
	for _, l := range w.System.Lines {
		q := w.usualNode(l.ID, "flow")
		if !l.Pumped || q == nil {
			continue
		}
		n := working.Step("time to fill ten litres", quantity.Time, "V/Q", "balance of volumes", func(x []float64) (float64, string) {
			if x[1] <= 0 {
				return 0, ""
			}
			return x[0] / x[1], ""
		}, working.In("V", working.Fixed("ten litres", quantity.Volume, bucket, "")), working.In("Q", q))
		out = append(out, check{do: "Hold a bucket under the end of " + l.ID + ", its valves as in the table", look: "time for ten litres", n: n, off: clockOff, share: true})
	}
	return out
}

// depthChecks is the depth of each vessel while the pump runs.
func (w *sheeter) depthChecks() []check {
	var out []check
	for _, stop := range w.System.Round() {
		v := stop.Vessel
		if v == nil || w.cycles(v) {
			continue
		}
		n := less("depth", quantity.Length, "z", w.at(v.ID, "water_level", working.RunClean, "usual", ""), "floor", working.File("inner floor", v.StandsAt))
		off := depthOff
		if w.pumpedFrom(v) {
			off = sumpOff
		}
		if n != nil {
			out = append(out, check{do: "Let the pump run until nothing moves any more", look: "depth of the water in " + v.ID, n: n, off: off})
		}
	}
	return out
}

// cycles says that a vessel fills and empties by a bell siphon, and so never stands still.
func (w *sheeter) cycles(v *system.Vessel) bool {
	for _, l := range w.System.LinesFrom(v) {
		if slices.ContainsFunc(l.Pieces, func(p *system.Piece) bool { return p.BellSiphon != nil }) {
			return true
		}
	}
	return false
}

// pumpedFrom says that a pump draws from a vessel.
func (w *sheeter) pumpedFrom(v *system.Vessel) bool {
	for _, l := range w.System.LinesFrom(v) {
		if l.Pumped {
			return true
		}
	}
	return false
}

// settlerChecks is the edge of each settler, and dye through it.
func (w *sheeter) settlerChecks() []check {
	var out []check
	for _, id := range w.Ledger.Sets["settlers"] {
		if n := w.usualNode(id, "weir_head"); n != nil {
			out = append(out, check{do: "Measure at four places round the edge of " + id, look: "water over the crest", n: n, off: restOff})
		}
		if n := w.usualNode(id, "weir_tilt_allowed"); n != nil {
			least := working.Step("tilt", quantity.Length, "min(tilt allowed, 3 mm)", "project judgement", func(x []float64) (float64, string) { return min(x[0], tiltMost), "" }, working.In("tilt allowed", n))
			out = append(out, check{do: "Lay a level across the edge of " + id, look: "difference of height from side to side", n: least, atMost: true})
		}
		if n := w.usualNode(id, "residence_time"); n != nil {
			dye := working.Step("first dye", quantity.Time, "0.3 t", "project judgement", func(x []float64) (float64, string) { return dyeShare * x[0], "" }, working.In("t", n))
			out = append(out, check{do: "Pour food colouring into the inlet of " + id, look: "time until the first colour leaves it", n: dye, atLeast: true})
		}
	}
	return out
}

// stopChecks is what stands where when the pump stands still, and the start after it.
func (w *sheeter) stopChecks() []check {
	var out []check
	for _, stop := range w.System.Round() {
		v := stop.Vessel
		if v == nil {
			continue
		}
		rest := w.at(v.ID, "static_level", "stopped", "", "siphon break open")
		if rest == nil {
			continue
		}
		if w.pumpedFrom(v) {
			n := less("rise", quantity.Length, "z at rest", rest, "z running", w.at(v.ID, "water_level", working.RunClean, "usual", ""))
			if n != nil {
				out = append(out, check{do: "Switch the pump off and wait until nothing moves", look: "rise of the water in " + v.ID, n: n, off: sumpOff})
			}
			continue
		}
		if n := less("depth", quantity.Length, "z at rest", rest, "floor", working.File("inner floor", v.StandsAt)); n != nil {
			out = append(out, check{do: "Switch the pump off and wait until nothing moves", look: "depth of the water in " + v.ID, n: n, off: restOff})
		}
	}
	for _, sc := range w.Ledger.Scenes {
		for _, r := range sc.Reached {
			n := w.at(r.Subject, "start_cover", sc.Case, "", sc.Fault)
			if x, known := know(n); known && x > 0 {
				out = append(out, check{do: "Switch the pump on again", look: "least water over the depth at which the pump draws air, in " + r.Subject, n: n, off: sumpOff})
			}
		}
	}
	return out
}

// blockedChecks shuts each line in turn, where nothing spills by it.
func (w *sheeter) blockedChecks() []check {
	var out []check
	for _, sc := range w.Ledger.Scenes {
		if sc.Case != "one_blocked" || len(sc.Missing) > 0 {
			continue
		}
		l := w.System.Line(sc.Subject)
		if l == nil {
			continue
		}
		do := "Hold a plug over the opening of " + l.ID + " while the pump runs"
		if names := w.valveNames(l); names != "" {
			do = "Shut " + names + " while the pump runs"
		}
		if w.happens(sc, working.Spills) {
			out = append(out, check{do: "Do not shut " + l.ID + " to try it", look: "what is worked out", words: w.sceneSaid(sc)})
			continue
		}
		do += ", and open it again"
		if w.happens(sc, working.DrawsAir) {
			if n := w.at(l.ID, "time_to_dry", sc.Case, "", sc.Fault); n != nil {
				out = append(out, check{do: do, look: "time until the pump draws air; switch it off then", n: n, off: timeOff, share: true})
			}
		}
		for _, r := range w.risen(sc) {
			v := w.System.Vessel(r.Subject)
			if v == nil {
				continue
			}
			if n := less("depth", quantity.Length, "highest z", w.at(v.ID, "highest_level", sc.Case, "", sc.Fault), "floor", working.File("inner floor", v.StandsAt)); n != nil {
				look := "greatest depth of the water in " + v.ID + "; not one drop spilt"
				if names := w.overflowsOf(v, r.Most); names != "" {
					look += "; see " + names + " run"
				}
				out = append(out, check{do: do, look: look, n: n, off: sumpOff})
			}
		}
	}
	return out
}

func (w *sheeter) happens(sc working.Scene, what string) bool {
	for _, h := range sc.Happened {
		if h.What == what {
			return true
		}
	}
	return false
}

// overflowsOf is the overflows of a vessel into which its water comes at a level.
func (w *sheeter) overflowsOf(v *system.Vessel, z float64) string {
	var names []string
	for _, l := range w.dutyFrom(v, "overflow") {
		if len(l.Pieces) == 0 {
			continue
		}
		crest, known := l.Pieces[0].From.Value()
		if pipe := l.Pieces[0].Pipe; pipe != nil && l.Pieces[0].Standpipe == nil {
			crest -= pipe.Inside / 2
		}
		if known && z > crest {
			names = append(names, l.ID)
		}
	}
	return series(names, "and")
}

// drainChecks is each drain opened, once the clear water is off.
func (w *sheeter) drainChecks() []check {
	var out []check
	for _, v := range w.System.Vessels {
		for _, l := range w.dutyFrom(v, "draw-down") {
			if n := w.usualNode(v.ID, "decant_left"); n != nil && l.To.Vessel != nil {
				if z := less("depth", quantity.Length, "highest z", w.at(l.To.Vessel.ID, "highest_level", "cleaning", "", l.ID+" open"), "floor", working.File("inner floor", l.To.Vessel.StandsAt)); z != nil {
					out = append(out, check{do: "With the pump off, draw " + v.ID + " down by " + l.ID, look: "greatest depth of the water in " + l.To.Vessel.ID, n: z, off: sumpOff})
				}
			}
		}
		for _, l := range w.dutyFrom(v, "waste", "empty") {
			do := "With the pump off, open " + orWords(w.valveNames(l), l.ID)
			if len(w.dutyFrom(v, "draw-down")) > 0 {
				do = "Then open " + orWords(w.valveNames(l), l.ID)
			}
			if n := w.usualNode(v.ID, "water_a_clean"); n != nil {
				out = append(out, check{do: do, look: "what runs out", n: n, off: clockOff * 2, share: true})
			}
			if n := w.usualNode(l.ID, "drain_time"); n != nil {
				out = append(out, check{do: do, look: "time until it has run out", n: n, off: clockOff * 2, share: true})
			}
		}
	}
	return out
}

// supplyChecks is power, air, alarms and the top-up.
func (w *sheeter) supplyChecks() []check {
	var out []check
	if n := w.usualNode("mains", "residual_current"); n != nil {
		out = append(out, check{do: "Press the test button of each safety switch", look: "it trips, and what hangs on the other circuit runs on", words: "trips, rated " + w.short(n)})
	}
	for _, tank := range w.Ledger.Sets["stocked_tanks"] {
		if starts := w.fact(tank, "backup_starts"); starts != "" {
			out = append(out, check{do: "Pull the plug of the air pump", look: "backup air of " + tank, words: map[bool]string{true: "starts by itself", false: "is started by hand"}[starts == "yes"]})
		}
	}
	for _, at := range w.System.Items("/alarms") {
		watches, given := w.System.Word(at + "/watches").Value()
		if !given {
			continue
		}
		calls, _ := w.System.Word(at + "/calls").Value()
		do := "Make the alarm on " + watches + " call"
		for _, side := range []string{"above", "below"} {
			if x, given := w.System.Number(at+"/"+side, quantity.Length).SI(); given {
				do += ", " + side + " a depth of " + w.bothHeights(x)
			}
		}
		out = append(out, check{do: do, look: "who is called, and how soon", words: orWords(calls, "it calls")})
	}
	for _, sc := range w.Ledger.Scenes {
		if sc.Case == "topup_stuck" && len(sc.Missing) == 0 && !w.happens(sc, working.Spills) {
			if n := w.at(sc.Subject, "stuck_room", sc.Case, "", sc.Fault); n != nil {
				out = append(out, check{do: "Hold the float of the top-up down until nothing comes any more", look: "room under the rim of " + sc.Subject, n: n, off: sumpOff})
			}
		}
	}
	return out
}

// commissioned is what the file says was found when the loop was brought into use.
func (w *sheeter) commissioned() Table {
	t := Table{Name: "commissioning", Caption: "What the file says was found when the loop was brought into use" + w.commissionedBy(),
		Columns: []Column{{Head: "step"}, {Head: "what was done"}, {Head: "expected"}, {Head: "within"}, {Head: "found"}, {Head: "as expected"}}}
	for i, at := range w.System.Items("/commissioning/steps") {
		word := func(key string) string { text, _ := w.System.Word(at + "/" + key).Value(); return text }
		passed := ""
		if on, given := w.System.Switch(at + "/passed").On(); given {
			passed = yesNo(on)
		}
		t.Rows = append(t.Rows, cells(strconv.Itoa(i+1), word("step"), word("expected"), word("within"), word("found"), passed))
	}
	return t
}

func (w *sheeter) commissionedBy() string {
	text := ""
	for _, one := range []struct{ key, word string }{{"on", "on"}, {"by", "by"}} {
		if said, given := w.System.Word("/commissioning/" + one.key).Value(); given {
			text += ", " + one.word + " " + said
		}
	}
	if x, given := w.System.Number("/commissioning/water_filled_for", quantity.Time).SI(); given {
		text += ", after it stood full for " + w.say(quantity.Time, x)
	}
	return text
}
