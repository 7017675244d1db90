package report

import (
	"slices"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// short is the number of a node alone; ? where there is none.
func (w *sheeter) short(n *working.Node) string {
	if x, known := know(n); known {
		return w.say(n.Kind, x)
	}
	return "?"
}

// rough is a time or volume as exact as a forecast can be; other numbers as they are.
func (w *sheeter) rough(n *working.Node) string {
	if x, known := know(n); known && (n.Kind == quantity.Time || n.Kind == quantity.Volume) {
		return w.aboutBoth(n.Kind, x)
	}
	return w.short(n)
}

// cleaning is how each settler is cleaned, step by step, and what else is cleaned.
func (w *sheeter) cleaning() []Section {
	if w.System == nil || w.Ledger == nil {
		return nil
	}
	var out []Section
	for _, v := range w.System.Vessels {
		if w.settles(v) {
			out = append(out, section(3, "cleaning-"+v.ID, "Cleaning "+v.ID, Text(w.cleanedWords(v)), w.cleaningSteps(v))...)
		}
	}
	for _, id := range w.System.Keys("/modes") {
		at := "/modes/" + id
		var steps Steps
		for _, one := range w.System.Items(at + "/steps") {
			if text, given := w.System.Word(one).Value(); given {
				steps = append(steps, Step{Do: sentence(capital(text))})
			}
		}
		if len(steps) > 0 {
			out = append(out, section(3, "mode-"+id, "As the file has it: "+id, steps)...)
		}
	}
	if t := w.alsoCleaned(); len(t.Rows) > 0 {
		out = append(out, section(3, "also-cleaned", "What else is cleaned", t)...)
	}
	if len(out) == 0 {
		return nil
	}
	return append(section(2, "cleaning", "Cleaning", Text("With the volumes, times and valves of this loop. The valve table says how each valve stands.")), out...)
}

// settles says that a vessel is a settler that is let out at the bottom or drawn down: it has a procedure of its own.
func (w *sheeter) settles(v *system.Vessel) bool {
	return slices.Contains(w.Ledger.Sets["settlers"], v.ID) && len(w.dutyFrom(v, "waste", "empty", "draw-down")) > 0
}

// cleanedWords says how often a vessel is cleaned and by whom, and what it costs.
func (w *sheeter) cleanedWords(v *system.Vessel) string {
	var out []string
	say := func(name, before, after string) {
		n := w.usualNode(v.ID, name)
		if _, known := know(n); known {
			out = append(out, before+w.rough(n)+after)
		}
	}
	say("cleaning_every", "every ", "")
	if by := w.peopleOf(v.Pointer + "/cleaning/by"); by != "" {
		out = append(out, "by "+by)
	}
	say("sludge_days", "its room for sludge is full after ", "")
	say("water_a_clean", "a cleaning costs ", " of water and sludge")
	say("lift_mass", "the heaviest thing that one person lifts is ", "")
	say("reach_to_floor", "from the rim down to the floor is ", "")
	return sentence(capital(strings.Join(out, "; ")))
}

// peopleOf is a list of people in a sentence.
func (w *sheeter) peopleOf(pointer string) string {
	var out []string
	for _, at := range w.System.Items(pointer) {
		if who, given := w.System.Word(at).Value(); given {
			out = append(out, who)
		}
	}
	return series(out, "and")
}

// cleaningSteps is the procedure of one vessel.
func (w *sheeter) cleaningSteps(v *system.Vessel) Steps {
	at := v.Pointer + "/cleaning"
	down, waste := w.dutyFrom(v, "draw-down"), w.dutyFrom(v, "waste", "empty")
	var s Steps
	do := func(text string, cautions ...Caution) { s = append(s, Step{sentence(text), cautions}) }
	do("Switch off the pump at its plug. Leave the air on. Nothing that is plugged in hangs in the water while hands go in", append(w.mind("residual_current"), w.mind("power_layout")...)...)
	if wait, given := w.System.Number(at+"/wait", quantity.Time).SI(); given {
		do("Wait " + w.say(quantity.Time, wait) + ", so that what floats sinks")
	}
	for _, l := range down {
		do(w.drawDownWords(v, l))
	}
	if names := w.valveNames(down...); names != "" {
		do("Shut " + names)
	}
	for _, l := range waste {
		do(w.wasteWords(v, l))
	}
	do(w.stirWords(v, at), append([]Caution{alwaysMind[0]}, w.mind("lifting", "food_hygiene", "open_water")...)...)
	if on, given := w.System.Switch(v.Pointer + "/well/comes_out").On(); given && on {
		do("Lift out the well and brush it inside and out. Look at its fixings")
	}
	var closures []string
	if names := w.valveNames(waste...); names != "" {
		closures = append(closures, "shut "+names)
	}
	for _, l := range waste {
		if capKind := w.capOf(l); capKind != "" {
			closures = append(closures, "put the "+capKind+" cap of "+l.ID+" back on")
		}
	}
	if len(closures) > 0 {
		do(capital(series(closures, "and")) + ". Look twice: this is what keeps the water in")
	}
	do(w.refillWords(v))
	do("Switch the pump on and stay until the levels stand where the level table has them. Enter the cleaning in the log, with what came out")
	return s
}

func (w *sheeter) capOf(l *system.Line) string {
	for _, p := range l.Pieces {
		if p.Outlet != nil {
			if kind, given := p.Outlet.Cap.Value(); given && kind != "none" {
				return hyphenless(kind)
			}
		}
	}
	return ""
}

// drawDownWords is the clear water let off the top.
func (w *sheeter) drawDownWords(v *system.Vessel, l *system.Line) string {
	text := "Open " + w.valveNames(l)
	if w.valveNames(l) == "" {
		text = "Start " + l.ID
	}
	clear := working.Step("clear water drawn down", quantity.Volume, "V - V left", "balance of volumes", func(x []float64) (float64, string) { return x[0] - x[1], "" },
		working.In("V", orUnknown(w.usualNode(v.ID, "water_volume"))), working.In("V left", orUnknown(w.usualNode(v.ID, "decant_left"))))
	text += ". About " + w.rough(clear) + " of clear water runs to " + endWords(l.To)
	if to := l.To.Vessel; to != nil {
		if z, known := know(w.at(to.ID, "highest_level", "cleaning", "", l.ID+" open")); known {
			text += ", which rises to " + w.bothHeights(z) + " above the datum"
			if room, known := know(w.at(to.ID, "least_freeboard", "cleaning", "", l.ID+" open")); known {
				text += ", " + w.bothHeights(room) + " under its rim"
			}
		}
	}
	return text + ". " + capital(w.rough(w.usualNode(v.ID, "decant_left"))) + " of water and sludge stay behind. Stop at once if sludge comes with it"
}

func orUnknown(n *working.Node) *working.Node {
	if n == nil {
		return working.Unknown("", quantity.Volume, "", "it is not worked out")
	}
	return n
}

// wasteWords is the sludge let out at the bottom.
func (w *sheeter) wasteWords(v *system.Vessel, l *system.Line) string {
	var text string
	if capKind := w.capOf(l); capKind != "" {
		text = "Take the " + capKind + " cap off the end of " + l.ID + ". "
	}
	if l.To.Outer == "bucket" {
		text += "Put a bucket or tub under the end of " + l.ID
	} else {
		text += capital(l.ID) + " leads to " + endWords(l.To)
	}
	if where, given := w.System.Word(l.Pointer + "/leads_to").Value(); given {
		text += " (from there to: " + hyphenless(where) + ")"
	}
	if names := w.valveNames(l); names != "" {
		text += ". Open " + names
	}
	left := w.usualNode(v.ID, "water_a_clean")
	text += ". " + capital(w.rough(left)) + " run out"
	if n := w.usualNode(l.ID, "drain_time"); n != nil {
		text += " in about " + w.rough(n)
		if v, known := n.Value(); known && v.Spread() {
			text += " (" + spreadShown(n.Kind, v, w.in) + ")"
		}
	}
	if n, known := know(w.usualNode(v.ID, "bucket_loads")); known {
		text += ", " + fixed(n, 0) + " buckets of 10 litres"
	}
	if kept, known := know(w.keptWith(l)); known {
		text += ". If it is forgotten open while the pump runs, the fish tank keeps " + percent(kept) + " of its water"
	}
	return text
}

// keptWith is what the first fish tank keeps when a drain is left open.
func (w *sheeter) keptWith(l *system.Line) *working.Node {
	for _, v := range w.System.Vessels {
		if n := w.at(v.ID, "tank_kept", "drain_left_open", "", l.ID+" open"); n != nil {
			return n
		}
	}
	return nil
}

func (w *sheeter) stirWords(v *system.Vessel, at string) string {
	text := "Rinse walls and floor down to the drain"
	if on, given := w.System.Switch(at + "/stirred").On(); given && on {
		text = "Stir what lies on the floor towards the drain while it runs"
	}
	if tool, given := w.System.Word(at + "/tool").Value(); given {
		text += ", with: " + tool
	}
	if x, known := know(w.usualNode(v.ID, "floor_cleared")); known {
		text += ". The drain by itself clears " + inUnit(quantity.Fraction, x, "%", 2) + " % of the floor"
	}
	return text
}

// refillWords is the water that has to come back.
func (w *sheeter) refillWords(v *system.Vessel) string {
	text := "Make up for what was let out: " + w.rough(w.usualNode(v.ID, "water_a_clean"))
	if into, given := w.System.Word("/top_up/into").Value(); given {
		text += ", by the top-up into " + into
		if kind, given := w.System.Word("/top_up/valve").Value(); given {
			text += " (" + hyphenless(kind) + " valve)"
		}
	}
	return text + ". Never leave a hose running alone"
}

// alsoCleaned is what the file says on cleaning of vessels and lines that have no procedure above.
func (w *sheeter) alsoCleaned() Table {
	t := Table{Name: "also-cleaned", Caption: "What else is cleaned, as the file states it", Columns: []Column{{Head: "part"}, {Head: "how"}, {Head: "every"}, {Head: "by"}}}
	put := func(id, pointer string, done bool) {
		how, hg := w.System.Word(pointer + "/cleaning/how").Value()
		every, eg := w.System.Number(pointer+"/cleaning/every", quantity.Time).SI()
		if done || !hg && !eg {
			return
		}
		text := ""
		if eg {
			text = w.say(quantity.Time, every)
		}
		t.Rows = append(t.Rows, cells(id, hyphenless(how), text, w.peopleOf(pointer+"/cleaning/by")))
	}
	for _, v := range w.System.Vessels {
		put(v.ID, v.Pointer, w.settles(v))
	}
	for _, l := range w.System.Lines {
		put(l.ID, l.Pointer, false)
	}
	return t
}
