package report

import (
	"slices"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// Columns of the table of cases, counted from 0.
const (
	caseAt   = 2
	labelAt  = 4
	whenWide = 7
)

// happensAt is where what happens stands, from and to, as the page is wide.
func (p *page) happensAt() (from, to int) {
	if p.wide > bodyWidth {
		return 34, 98
	}
	return 21, bodyWidth - whenWide - 1
}

// sceneRow is a row of the table: a scene, or some that come to the same.
type sceneRow struct {
	label string
	all   []outcome
}

// cases is the table of what happens when something goes wrong.
func (p *page) cases() []line {
	if p.Ledger == nil || len(p.Ledger.Scenes) == 0 {
		return nil
	}
	out := []line{line{}.add("CASES", waterInk).at(13).add("what happens when, and how soon; left: room under the rim", noInk), {}}
	scenes := p.Ledger.Scenes
	if why, all := p.sameGaps(scenes); all {
		text := "? None of the " + counted(len(scenes)) + " cases of this loop can be followed yet. " + sentence(capital(why))
		return append(out, paragraph(text, caseAt, bodyWidth)...)
	}
	told := map[string]string{}
	for len(scenes) > 0 {
		n := slices.IndexFunc(scenes, func(s working.Scene) bool { return s.Case != scenes[0].Case })
		if n < 0 {
			n = len(scenes)
		}
		out = append(out, p.caseLines(scenes[:n], told)...)
		scenes = scenes[n:]
	}
	if why := p.airUnsaid(); why != "" {
		out = append(out, paragraph("? When a pump draws air cannot be said yet: "+sentence(why), caseAt, bodyWidth)...)
	}
	return out
}

// airUnsaid is what is missing to say when a pump draws air, in scenes that could be followed.
func (p *page) airUnsaid() string {
	for _, sc := range p.Ledger.Scenes {
		for _, name := range []string{"time_to_dry", "start_cover"} {
			for _, r := range append(sc.Reached, working.Reached{Subject: sc.Subject}) {
				n := p.Ledger.Find(working.Address{Subject: r.Subject, Name: name, Case: sc.Case, Fault: sc.Fault})
				if n != nil && len(sc.Missing) == 0 && len(n.Gaps()) > 0 {
					return p.gapsWords(n.Gaps())
				}
			}
		}
	}
	return ""
}

// caseLines is the rows of one case: on a line with its head where there is one row.
func (p *page) caseLines(scenes []working.Scene, told map[string]string) []line {
	rows := p.sceneRows(scenes, told)
	head := caseHead(scenes[0].Case)
	if len(rows) == 1 {
		return p.rowOf(head, caseAt, rows[0].all)
	}
	out := []line{line{}.at(caseAt).add(head, noInk)}
	for _, r := range rows {
		out = append(out, p.rowOf(r.label, labelAt, r.all)...)
	}
	return out
}

// sceneRows is a row for every scene of a case. Those in which nothing of note
// happens, and those of which the same is missing, share one.
func (p *page) sceneRows(scenes []working.Scene, told map[string]string) []sceneRow {
	var out []sceneRow
	var quiet, open []string
	byGap := map[string][]string{}
	labels := sceneLabels(scenes)
	for i, sc := range scenes {
		if why := p.gapsOfScene(sc); why != "" {
			if byGap[why] == nil {
				open = append(open, why)
			}
			byGap[why] = append(byGap[why], labels[i])
			continue
		}
		all := p.outcomes(sc)
		if len(all) == 0 {
			quiet = append(quiet, labels[i])
			continue
		}
		key := textOf(all)
		if first, again := told[key]; again && len(key) > mostSaid {
			all = []outcome{{words: "as with " + first, at: -1}}
		} else if !again {
			told[key] = sceneName(sc)
		}
		out = append(out, sceneRow{labels[i], all})
	}
	if len(out) > 1 && len(quiet)+len(open) == 0 && alike(out) {
		return out[:1]
	}
	if len(quiet) > 0 {
		out = append(out, sceneRow{someOf(quiet, len(scenes)), []outcome{{words: "nothing rises, spills or runs dry", at: -1}}})
	}
	for _, why := range open {
		out = append(out, sceneRow{someOf(byGap[why], len(scenes)), []outcome{{words: "? " + why, at: -1}}})
	}
	return out
}

// mostSaid is how long an account may be, in letters, and stand twice.
const mostSaid = 51

// alike says that all rows come to the same, or only name the first one.
func alike(rows []sceneRow) bool {
	for _, r := range rows[1:] {
		if textOf(r.all) != textOf(rows[0].all) && !(len(r.all) == 1 && strings.HasPrefix(r.all[0].words, "as with ")) {
			return false
		}
	}
	return true
}

// someOf names one scene, or says how many more there are.
func someOf(labels []string, of int) string {
	switch len(labels) {
	case 1:
		return labels[0]
	case of:
		return "all " + counted(of)
	}
	return counted(len(labels)) + " more"
}

func textOf(all []outcome) string {
	var words []string
	for _, o := range all {
		words = append(words, o.words+whenWords(o))
	}
	return strings.Join(words, "; ")
}

// gapsOfScene is what is missing before a scene can be followed; empty when nothing is.
func (p *page) gapsOfScene(sc working.Scene) string {
	if len(sc.Missing) == 0 {
		return ""
	}
	return p.gapsWords(sc.Missing)
}

// gapsWords is what to find, and reasons, in a sentence.
func (p *page) gapsWords(list []working.Gap) string {
	var missing []string
	for _, g := range list {
		if g.Why != "" {
			missing = append(missing, g.Why)
		} else {
			missing = append(missing, g.Pointer)
		}
	}
	return p.missingWords(missing)
}

// sameGaps says that no scene can be followed, all for the same reason.
func (p *page) sameGaps(scenes []working.Scene) (string, bool) {
	first := p.gapsOfScene(scenes[0])
	for _, sc := range scenes {
		if why := p.gapsOfScene(sc); why == "" || why != first {
			return "", false
		}
	}
	return first, true
}

func whenWords(o outcome) string {
	if o.at < 0 {
		return ""
	}
	return about(quantity.Time, o.at, quantity.Metric)
}

// rowOf is one scene: what has no time and the first thing that has one in one
// paragraph, what comes later on lines of its own.
func (p *page) rowOf(label string, from int, all []outcome) []line {
	at, to := p.happensAt()
	var out []line
	put := func(words, when string) {
		lines := paragraph(words, at, to)
		if last := len(lines) - 1; last >= 0 && when != "" {
			lines[last] = lines[last].right(when, to+whenWide+1, noInk)
		}
		out = append(out, lines...)
	}
	n := min(untimed(all)+1, len(all))
	var words []string
	for _, o := range all[:n] {
		words = append(words, o.words)
	}
	put(strings.Join(words, "; "), whenWords(all[n-1]))
	for _, o := range all[n:] {
		put(o.words, whenWords(o))
	}
	names := wrap(label, at-from-1)
	for i, name := range names {
		if i == len(out) {
			out = append(out, line{})
		}
		out[i] = append(line{}.at(from).add(name, noInk).at(at), cutFront(out[i])...)
	}
	return out
}

// cutFront drops the blanks that bring a line to its column.
func cutFront(l line) line {
	if len(l) > 0 && strings.TrimSpace(l[0].text) == "" {
		return l[1:]
	}
	return l
}
