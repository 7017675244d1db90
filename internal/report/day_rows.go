package report

import (
	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// daily gathers the rows of a day. A row of which nothing is worked out in this
// loop, since it has no such part, is left out.
type daily struct {
	p    *page
	lead string
	rows []dayRow
}

// dayRows is the rows of the table, in the order of the day.
func (p *page) dayRows() []dayRow {
	d := &daily{p: p}
	tanks, settlers := p.Ledger.Sets["stocked_tanks"], p.Ledger.Sets["settlers"]
	d.lead = "feed"
	d.add("of all fish", "", d.nodes("water", "feed_a_day", working.Always))
	d.ammonia(tanks)
	d.oxygen(tanks)
	d.acid()
	d.solids(settlers)

	d.lead = "beds"
	d.add("feed on a square metre", "", d.nodes("water", "bed_feed", working.Always))
	d.lead = "nitrate"
	d.add("it rises in a day by", "", d.nodes("water", "nitrate_rise", working.Always))
	d.add("and comes to", "", d.nodes("water", "nitrate_level", working.Always))

	d.lead = "water"
	label := "to replace a day"
	if share, known := p.value("water", "water_used_share", working.Always, ""); known {
		label += ", " + inUnit(quantity.Fraction, share, "%", 2) + " % of it"
	}
	d.add(label, "day", d.nodes("water", "water_used", working.Always))

	d.lead = "power cut"
	for _, tank := range tanks {
		d.add(tank+": fish in a cubic metre", "", d.nodes(tank, "stocking_density", working.RunLeast))
		d.add("in danger after", "", d.nodes(tank, "time_to_danger", "power_cut"))
		if alone, helped := d.nodes(tank, "time_to_danger", "power_cut"), d.nodes(tank, "time_with_backup", "power_cut"); !sameNodes(alone, helped) {
			d.add("with the backup air", "", helped)
		}
	}
	return d.rows
}

func (d *daily) ammonia(tanks []string) {
	d.lead = "ammonia"
	d.add("made", "", d.nodes("water", "ammonia_made", working.Always))
	for _, v := range d.p.Ledger.Sets["nitrifying"] {
		d.add(v+" can turn", "", d.nodes(v, "nitrifies", working.Always))
	}
	d.add("made, of what they can turn", "%", d.nodes("water", "nitrification_share", working.Always))
	for _, tank := range tanks {
		d.add("in the water of "+tank, "", d.nodes(tank, "ammonia_level", working.RunLeast))
		label := "poisonous part, highest pH"
		if ph, known := d.p.value("water", "ph_highest", working.Always, ""); known {
			label = "poisonous part, pH " + shown(quantity.Number, ph, d.p.in)
		}
		d.add(label, "", d.nodes(tank, "poisonous_ammonia", working.RunLeast))
	}
}

func (d *daily) oxygen(tanks []string) {
	d.lead = "oxygen"
	d.add("full water holds", "", d.nodes("water", "oxygen_full", working.Always))
	d.add("bacteria use", "", d.bacteria(tanks))
	for _, tank := range tanks {
		d.add("fish of "+tank+" use, mean", "", d.nodes(tank, "oxygen_need", working.Always))
		d.add("after a meal", "", d.nodes(tank, "oxygen_need_peak", working.Always))
		d.add("flow brings, fish at ease", "", d.nodes(tank, "oxygen_by_flow", working.RunLeast))
		d.add("air brings, fish at ease", "", d.nodes(tank, "oxygen_by_air", working.RunLeast))
		d.add("in "+tank+" after a meal", "", d.nodes(tank, "oxygen_level", working.RunLeast))
	}
}

// bacteria is the oxygen that fish and bacteria use, less that of the fish, at the
// middle of what the sources say: the doubts of the two are the same ones.
func (d *daily) bacteria(tanks []string) (out [3]*working.Node) {
	for k, n := range d.nodes("water", "oxygen_used", working.Always) {
		if n == nil {
			continue
		}
		left, _ := n.Value()
		out[k] = n
		for _, tank := range tanks {
			fish := d.nodes(tank, "oxygen_need", working.Always)[k]
			if fish == nil {
				continue
			}
			if v, known := fish.Value(); known {
				left.X -= v.X
			} else {
				out[k] = fish
			}
		}
		if len(out[k].Gaps()) == 0 {
			out[k] = working.Fixed("oxygen that bacteria use in a day", quantity.FeedRate, max(left.X, 0), "balance of masses")
		}
	}
	return out
}

func (d *daily) acid() {
	d.lead = "acid"
	d.add("carbon dioxide made", "", d.nodes("water", "carbon_dioxide_made", working.Always))
	d.add("in the water, by its pH", "", d.nodes("water", "carbon_dioxide", working.Always))
	d.add("alkalinity used", "", d.nodes("water", "alkalinity_used", working.Always))
	d.add("it falls in a day by", "", d.nodes("water", "alkalinity_fall", working.Always))
	d.add("down to 20 mg/L after", "", d.nodes("water", "alkalinity_lasts", working.Always))
	label := "left when nobody looked"
	if d.p.System != nil {
		if t, given := d.p.System.Number("/site/unattended", quantity.Time).SI(); given {
			label = "left after " + shown(quantity.Time, t, d.p.in) + " alone"
		}
	}
	d.add(label, "", d.nodes("water", "alkalinity_left", "unattended"))
}

func (d *daily) solids(settlers []string) {
	d.lead = "solids"
	d.add("made, dry", "", d.nodes("water", "solids_made", working.Always))
	for _, s := range settlers {
		d.add(s+" catches", "", d.nodes(s, "solids_caught", working.RunClean))
	}
	d.add("not caught", "", d.nodes("water", "solids_passed_on", working.RunClean))
	for _, s := range settlers {
		d.add("sludge in "+s, "day", d.nodes(s, "sludge_a_day", working.RunClean))
		d.add("its room is full after", "", d.nodes(s, "sludge_days", working.RunClean))
	}
}

// nodes is a quantity with the water at each temperature; one that does not hang
// on it stands at the usual one.
func (d *daily) nodes(subject, name, in string) (out [3]*working.Node) {
	for k, w := range working.Waters {
		out[k] = d.p.Ledger.Find(working.Address{Subject: subject, Name: name, Case: in, Water: w})
	}
	if out == [3]*working.Node{} {
		out[usualWater] = d.p.Ledger.Find(working.Address{Subject: subject, Name: name, Case: in})
	}
	return out
}

func (d *daily) add(label, unit string, at [3]*working.Node) {
	if at != [3]*working.Node{} {
		d.rows = append(d.rows, dayRow{d.lead, label, unit, at})
	}
}

// sameNodes says that two quantities come to the same numbers.
func sameNodes(a, b [3]*working.Node) bool {
	for k := range a {
		if a[k] == nil || b[k] == nil {
			if a[k] != b[k] {
				return false
			}
			continue
		}
		x, known := a[k].Value()
		y, also := b[k].Value()
		if !known || !also || x != y {
			return false
		}
	}
	return true
}
