package report

import (
	"slices"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// dayUnknown says that nothing hangs together: neither feed nor fish are known,
// and what to find.
func (p *page) dayUnknown(rows []dayRow) (why string, all bool) {
	for _, name := range []string{"feed_a_day", "oxygen_used"} {
		for _, n := range (&daily{p: p}).nodes("water", name, working.Always) {
			if n == nil {
				continue
			}
			if _, known := n.Value(); known {
				return "", false
			}
		}
	}
	return p.gapsWords(gapsOfRows(rows)), true
}

func gapsOfRows(rows []dayRow) []working.Gap {
	var out []working.Gap
	for _, r := range rows {
		for _, g := range r.gaps() {
			if !slices.Contains(out, g) {
				out = append(out, g)
			}
		}
	}
	return out
}

// dayWords is what stands under the table: what is missing, how far the sources
// differ, notes, and why a power cut takes minutes or hours.
func (p *page) dayWords(rows []dayRow, alike bool) []string {
	var out []string
	if list := gapsOfRows(rows); len(list) > 0 {
		out = append(out, "? "+sentence(capital(p.gapsWords(list))))
	}
	out = append(out, dayNotes(rows)...)
	if text := p.dayRanges(alike); text != "" {
		out = append(out, text)
	}
	if text := p.sharedWater(alike); text != "" {
		out = append(out, text)
	}
	return out
}

// dayNotes is what is said of single numbers: how far to trust them. What is said
// of an end of their range is left to the command `quantities`.
func dayNotes(rows []dayRow) []string {
	var out []string
	said := map[string]bool{}
	for _, r := range rows {
		for _, n := range r.at {
			if n == nil {
				continue
			}
			v, known := n.Value()
			if note := n.Note(); known && v.X != 0 && note != "" && !strings.HasPrefix(note, "at one end of its spread") && !said[note] {
				said[note] = true
				out = append(out, sentence(capital(n.Title+": "+note)))
			}
		}
	}
	return out
}

// dayRanges is how far the sources leave what they differ in most.
func (p *page) dayRanges(alike bool) string {
	d := &daily{p: p}
	var usual, warm []string
	ofUsual := func(unit string, nodes [3]*working.Node) string {
		return dayRow{unit: unit, at: [3]*working.Node{usualWater: nodes[usualWater]}}.rangeOfUsual(p.in)
	}
	if text := ofUsual("", d.nodes("water", "nitrification", working.Always)); text != "" {
		usual = append(usual, "bacteria can turn "+text)
	}
	for _, s := range p.Ledger.Sets["settlers"] {
		if text := ofUsual("%", d.nodes(s, "capture_all", working.RunClean)); text != "" {
			usual = append(usual, s+" catches "+text+" of the solids")
		}
	}
	for _, tank := range p.Ledger.Sets["stocked_tanks"] {
		alone, helped := d.nodes(tank, "time_to_danger", "power_cut"), d.nodes(tank, "time_with_backup", "power_cut")
		text := timesOf(alone[2], p.in)
		if more := timesOf(helped[2], p.in); more != "" && !sameNodes(alone, helped) {
			text = strings.Join(slices.DeleteFunc([]string{text, more + " with the backup air"}, func(s string) bool { return s == "" }), ", ")
		}
		if text != "" {
			warm = append(warm, "the fish of "+tank+" last "+text)
		}
	}
	var parts []string
	for _, one := range []struct {
		when string
		said []string
	}{{"in water as usual ", usual}, {"in the warmest ", warm}} {
		if alike {
			one.when = ""
		}
		if len(one.said) > 0 {
			parts = append(parts, one.when+series(one.said, "and"))
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return "The sources differ: " + strings.Join(parts, "; ") + "."
}

// rangeOfUsual is the range of a row's number at the usual temperature; empty without one.
func (r dayRow) rangeOfUsual(in quantity.System) string {
	n := r.at[usualWater]
	if n == nil {
		return ""
	}
	v, known := n.Value()
	if !known {
		return ""
	}
	return r.rangeShown(v, in)
}

// timesOf is the range of a time that is known.
func timesOf(n *working.Node, in quantity.System) string {
	if n == nil {
		return ""
	}
	v, known := n.Value()
	if !known || !v.Spread() {
		return ""
	}
	return timeRange(v, in)
}

// timeRange is "22 to 96 min", or "38 min to 9.2 h".
func timeRange(v working.Value, in quantity.System) string {
	low, high := about(quantity.Time, v.Low, in), about(quantity.Time, v.High, in)
	number, unit := numberUnit(low)
	if _, other := numberUnit(high); unit == other {
		low = number
	}
	return low + " to " + high
}

// densities is the densities at which the time of a power cut is told beside the tank's own, kg/m3.
var densities = []struct {
	name string
	of   float64
}{{"time_at_60", 60}, {"time_at_5", 5}, {"time_at_2", 2}}

// sharedWater says why some say that fish last minutes in a power cut and some say hours.
func (p *page) sharedWater(alike bool) string {
	d := &daily{p: p}
	var tanks []string
	for _, tank := range p.Ledger.Sets["stocked_tanks"] {
		var times []string
		for _, one := range densities {
			if n := d.nodes(tank, one.name, "power_cut")[2]; n != nil {
				if v, known := n.Value(); known {
					times = append(times, about(quantity.Time, v.X, p.in)+" at "+shown(quantity.Stocking, one.of, p.in))
				}
			}
		}
		if len(times) < len(densities) {
			continue
		}
		text := "those of " + tank
		if own, known := p.value(tank, "stocking_density", working.RunLeast, "high"); known {
			text += ", now at " + shown(quantity.Stocking, own, p.in) + ","
		}
		text += " would last " + series(times, "and")
		tanks = append(tanks, text)
	}
	if len(tanks) == 0 {
		return ""
	}
	when := "In the warmest, "
	if alike {
		when = "As it is, "
	}
	return "Minutes or hours? It depends on how many fish share the water, and how warm it is. " + when + strings.Join(tanks, "; ") + "."
}
