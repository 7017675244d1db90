package report

import (
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// startUp is how the loop is brought to life: cement, water, wet checks, bacteria, fish, feed.
func (w *sheeter) startUp() []Section {
	if w.System == nil || w.Ledger == nil {
		return nil
	}
	var s Steps
	do := func(text string, cautions ...Caution) {
		if text != "" {
			s = append(s, Step{sentence(text), cautions})
		}
	}
	do(w.cureWords(), w.mind("solvent_cement")...)
	do("Rinse vessels, pipes and media with clean water and let it go", w.mind("vessel_history", "toxic_metals")...)
	do("Set every valve as the column \"running\" of the valve table has it")
	do(w.firstWater(), w.mind("topup_gap", "standing_load", "floor_bears_load", "top_heavy", "open_water")...)
	do("Fill every vessel to where it spills and let it stand for 24 hours. Look at every joint, seal and hole: not one drop is right")
	do("Switch the pump on. Go through the wet checks one by one, and enter what you find", append(w.mind("residual_current", "power_layout", "circuits_apart", "air_pump_dry"), w.mind("alarms", "alarms_reach")...)...)
	do(w.bufferWords())
	do(w.firstBacteria(), w.mind("safe_treatments")...)
	do(w.fishIn(), w.mind("quarantine")...)
	do(w.firstFeed())
	if w.fact("care/card", "emergency_card") != "" {
		do("Hang up the emergency card with the valves and whom to call"+w.callsWords(), w.mind("emergency_card")...)
	}
	return section(2, "start-up", "Start-up", s)
}

func (w *sheeter) callsWords() string {
	if who, given := w.System.Word("/care/calls").Value(); given {
		return ": " + who
	}
	return ""
}

// cureWords is how long the cement needs and is given.
func (w *sheeter) cureWords() string {
	var longest *working.Node
	for _, id := range w.Ledger.Sets["cemented_lines"] {
		n := w.usualNode(id, "cure_time")
		if x, known := know(n); known {
			if most, _ := know(longest); longest == nil || x > most {
				longest = n
			}
		}
	}
	if longest == nil {
		return ""
	}
	text := "Let the cement cure before water comes in: it needs " + w.rough(longest) + " after the last joint"
	if given, is := w.System.Number("/making/cure_before_filling", quantity.Time).SI(); is {
		text += ", and the file gives it " + w.say(quantity.Time, given)
	}
	return text
}

func (w *sheeter) firstWater() string {
	text := "Fill the loop: " + w.short(w.usualNode("water", "loop_volume")) + " of water while it runs"
	if on, given := w.System.Switch("/top_up/dechlorinated").On(); given && on {
		text += ", with the chlorine taken out"
	}
	return text
}

// bufferWords is what keeps the pH.
func (w *sheeter) bufferWords() string {
	with, given := w.System.Word("/water/buffer/with").Value()
	if !given {
		return ""
	}
	text := "Keep the pH with " + hyphenless(with)
	if x, given := w.System.Number("/water/buffer/amount", quantity.FeedRate).SI(); given {
		text += ": " + w.say(quantity.FeedRate, x) + " at full feed"
	}
	if by, given := w.System.Word("/water/buffer/by").Value(); given {
		text += ", by " + by
	}
	if in, given := w.System.Word("/water/buffer/in").Value(); given {
		text += ", into " + in
	}
	return text + ". Measure the alkalinity each week and keep to it"
}

func (w *sheeter) firstBacteria() string {
	from, given := w.System.Word("/start_up/ammonia_from").Value()
	if !given && w.usualNode("water", "start_time") == nil {
		return ""
	}
	text := "Bring in the bacteria before the fish"
	if given {
		text += ", with ammonia from " + hyphenless(from)
	}
	if n := w.usualNode("water", "ammonium_chloride"); n != nil && from == "ammonium-chloride" {
		text += ": " + w.short(n) + " of it bring the whole loop to 2 mg/L of ammonia (as N). Give it again when it is used up"
	}
	if n := w.usualNode("water", "start_time"); n != nil {
		text += ". From the first ammonia to full feed takes " + w.short(n)
	}
	return text + ". Fish come in when ammonia and nitrite are both gone a day after a dose"
}

func (w *sheeter) fishIn() string {
	n := w.usualNode("quarantine/fish", "quarantine_time")
	if n == nil {
		return ""
	}
	return "Keep new fish in quarantine for " + w.short(n) + ", in " + w.short(w.usualNode("quarantine/fish", "quarantine_volume")) + " of their own water, with a net of their own"
}

// firstFeed is the feed of the first week and what is added each week.
func (w *sheeter) firstFeed() string {
	feed := w.at("water", "feed_a_day", working.Always, "usual", "")
	share, step := w.usualNode("water", "first_feed"), w.usualNode("water", "feed_step")
	if feed == nil || share == nil {
		return ""
	}
	of := func(n *working.Node) string {
		return w.short(working.Step("feed", quantity.FeedRate, "share x F", "balance of masses", func(x []float64) (float64, string) { return x[0] * x[1], "" }, working.In("share", n), working.In("F", feed)))
	}
	text := "Feed " + of(share) + " in the first week with fish"
	if step != nil {
		text += ", and add " + of(step) + " each week"
	}
	return text + ", up to " + w.short(feed) + " in water as usual. Stop adding while ammonia or nitrite can be measured"
}

// whenItFails is what to do first when power, pump or pipes fail.
func (w *sheeter) whenItFails() []Section {
	if w.Ledger == nil || w.System == nil {
		return nil
	}
	var s Steps
	do := func(text string, cautions ...Caution) { s = append(s, Step{sentence(text), cautions}) }
	do("People first. Where water and electricity have met, switch off at the board before anything is touched", w.mind("power_layout", "alarms")...)
	for _, tank := range w.Ledger.Sets["stocked_tanks"] {
		if n := w.leastOf(tank, "time_to_danger", "power_cut"); n != nil {
			text := "When the air and the pump stand still, the fish of " + tank + " are in danger after " + w.rough(n)
			if v, known := n.Value(); known && v.Spread() {
				text += " (" + spreadShown(n.Kind, v, w.in) + ")"
			}
			text += ", " + stateWords(n.Address.State()) + ". Do not feed them"
			if with := w.leastOf(tank, "time_with_backup", "power_cut"); with != nil && w.short(with) != w.short(n) {
				text += ". The backup air"
				if starts := w.fact(tank, "backup_starts"); starts != "" {
					text += map[bool]string{true: ", which starts by itself,", false: ", which is started by hand,"}[starts == "yes"]
				}
				text += " lets them last " + w.rough(with)
			}
			do(text)
		}
	}
	for _, sc := range w.Ledger.Scenes {
		if sc.Case == "stopped" && strings.HasSuffix(sc.Fault, "open") && len(sc.Missing) == 0 {
			do("When the pump stops: " + w.sceneSaid(sc))
		}
	}
	do("When water runs over a rim or out of a joint, switch the pump off and shut " + orWords(w.solidsValves(), "the valve above the place") + ". The table of cases says what comes of it")
	if who := w.callsWords(); who != "" {
		do("Call" + who)
	}
	return section(2, "when-it-fails", "When something fails", s)
}

func orWords(text, other string) string {
	if text == "" {
		return other
	}
	return text
}

// solidsValves is the valves that shut off the fish tanks.
func (w *sheeter) solidsValves() string {
	var names []string
	for _, v := range w.System.Vessels {
		if v.Role.Is("fish-tank") {
			if text := w.valveNames(w.dutyFrom(v, "flow")...); text != "" {
				names = append(names, text)
			}
		}
	}
	return series(names, "and")
}

// leastOf is the least of a quantity over the temperatures of the water.
func (w *sheeter) leastOf(subject, name, in string) *working.Node {
	var best *working.Node
	for _, water := range working.Waters {
		n := w.at(subject, name, in, water, "")
		if x, known := know(n); known {
			if least, _ := know(best); best == nil || x < least {
				best = n
			}
		}
	}
	return best
}
