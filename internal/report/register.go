package report

import (
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
)

// registerRow is what the register keeps of one file.
type registerRow struct {
	file, name   string
	first        string // clause to act on first, or what came of the file
	standing     string // its verdict and subject
	firstInk     ink
	share, tight string // tightest of what is met: how much of the limit is used, and the clause
	on           string // and its subject
	plain        bool   // the heads of the columns
}

// registerRowOf keeps no more of a text than can be shown.
func registerRowOf(i Item, in quantity.System) registerRow {
	row := registerRow{file: clipStart(safe(i.File), mostRegister)}
	switch {
	case i.Fault != "":
		row.first, row.standing = "dryfit failed", clip(safe(i.Fault), mostRegister)
		return row
	case i.Summary == nil && i.Unread != "":
		row.first, row.standing = "cannot be read", clip(safe(i.Unread), mostRegister)
		return row
	case i.Summary == nil:
		row.first = "cannot be read"
		if len(i.Problems) > 0 {
			row.standing = clip(safe(placeOf(i.Problems[0])+": "+i.Problems[0].Found), mostRegister)
		}
		return row
	}
	s := i.Summary
	row.name = clip(safe(s.Name), mostRegister)
	switch f := s.Strongest(); {
	case f != nil:
		row.first, row.standing, row.firstInk = f.Clause.ID, verdictWords(f.Judgement)+": "+f.Subject, verdictInk(f.Judgement)
	case len(s.Findings) > 0:
		row.first, row.standing = "nothing", "beyond what there is leave for"
	default:
		row.first = "nothing"
	}
	if j := s.Tightest(); j != nil {
		row.share, row.tight, row.on = shareShown(j, in), j.Clause.ID, j.Subject
	}
	return row
}

// mostRegister is the widest that the register grows to.
const mostRegister = 160

// register is the table of all files, a row a file: over two lines, or on one where there
// is room. What is longer than its column is cut; of the name of a file its end is kept.
func register(rows []registerRow, columns int) []line {
	wide := columns >= wideFrom
	heads := registerRow{file: "file", name: "loop", first: "first to act on", standing: "what came of it", tight: "tightest that is met", share: "of limit", on: "subject"}
	widths := registerWidths(append([]registerRow{heads}, rows...), min(max(columns, bodyWidth), mostRegister), wide)
	long := -2
	for _, w := range widths {
		long += w + 2
	}
	rule := line{}.add(strings.Repeat("-", max(long, bodyWidth)), noInk)
	heads.plain = true
	out := append([]line{line{}.add("REGISTER", waterInk), rule}, heads.lines(widths, wide)...)
	out = append(out, rule)
	for _, r := range rows {
		out = append(out, r.lines(widths, wide)...)
	}
	return append(out, rule)
}

// cells is the row as it stands in the columns, a line of the table each.
func (r registerRow) cells(wide bool) [][]span {
	file, first, on := span{r.file, referenceInk}, span{r.first, r.firstInk}, r.on
	if r.plain {
		file.ink = noInk
	}
	if r.share != "" {
		on = r.share + ", " + on
	}
	if wide {
		return [][]span{{file, inked(r.name), first, inked(r.standing), inked(r.tight), inked(on)}}
	}
	return [][]span{{file, first, inked(r.tight)}, {inked(indented(r.name)), inked(indented(r.standing)), inked(indented(on))}}
}

// standingAt is the column of what came of a file. Without a tightest margin it has all the room behind it.
func standingAt(wide bool) int {
	if wide {
		return 3
	}
	return 1
}

// lines is the row of one file.
func (r registerRow) lines(widths []int, wide bool) []line {
	if at := standingAt(wide); r.tight == "" {
		room := -2
		for _, w := range widths[at:] {
			room += w + 2
		}
		widths = append(append([]int{}, widths[:at]...), room)
	}
	var out []line
	for _, cells := range r.cells(wide) {
		if len(cells) > 0 && cells[0].text == r.file {
			cells[0].text = clipStart(r.file, widths[0])
		}
		out = append(out, columnsOf(widths, cells...))
	}
	return out
}

// registerWidths gives each column what it wants; where that is more than there is, the widest give way first.
func registerWidths(rows []registerRow, most int, wide bool) []int {
	var widths []int
	for _, r := range rows {
		for _, cells := range r.cells(wide) {
			for i, c := range cells {
				if i == len(widths) {
					widths = append(widths, 0)
				}
				if r.tight != "" || i < standingAt(wide) {
					widths[i] = max(widths[i], width(safe(c.text)))
				}
			}
		}
	}
	room := most - 2*(len(widths)-1)
	for {
		sum, widest := 0, 0
		for i, w := range widths {
			sum += w
			if w > widths[widest] {
				widest = i
			}
		}
		if sum <= room {
			return widths
		}
		widths[widest]--
	}
}

func inked(text string) span { return span{text: text} }

func indented(text string) string {
	if text == "" {
		return ""
	}
	return "  " + text
}

// columnsOf is one line of cells, each cut to its column.
func columnsOf(widths []int, cells ...span) line {
	var l line
	at := 0
	for i, c := range cells[:min(len(cells), len(widths))] {
		l = l.at(at).add(clip(safe(c.text), widths[i]), c.ink)
		at += widths[i] + 2
	}
	return l
}

// clipStart cuts text at its start; dots say that something is gone.
func clipStart(text string, most int) string {
	if width(text) <= most {
		return text
	}
	kept, all := 0, []rune(text)
	from := len(all)
	for from > 0 && kept+runeWidth(all[from-1]) <= most-3 {
		from--
		kept += runeWidth(all[from])
	}
	return "..." + string(all[from:])
}

// totals counts what came of the files.
type totals struct {
	files, read, act, soft, faults, leave int
}

func (t *totals) add(i Item, heldTo review.Strength) {
	t.files++
	switch {
	case i.Fault != "":
		t.faults++
		return
	case i.Summary == nil:
		return
	}
	t.read++
	s := i.Summary
	switch {
	case s.ExitStatus(heldTo) != review.NothingToAct:
		t.act++
	case len(acted(s))+len(stale(s)) > 0:
		t.soft++
	}
	for _, f := range s.Findings {
		if f.Permit != nil {
			t.leave++
			return
		}
	}
}

// words says what the whole came to.
func (t totals) words(heldTo review.Strength) string {
	var out []string
	say := func(parts ...string) { out = append(out, sentence(strings.Join(parts, " "))) }
	switch {
	case t.files == 1 && t.read == 1:
		say("One loop was read")
	case t.read == t.files:
		say(capital(counted(t.files)), "loops were read")
	default:
		say("Of", counted(t.files), loops(t.files)+",", counted(t.read), map[bool]string{true: "was", false: "were"}[t.read == 1], "read")
	}
	held := "when held to " + string(heldTo)
	switch {
	case t.read == 0:
	case t.act == 0:
		say("None of them has anything to act on", held)
	case t.act == t.read && t.act > 1:
		say("All of them have something to act on", held)
	case t.act == 1:
		say("One of them has something to act on", held)
	default:
		say(capital(counted(t.act)), "of them have something to act on", held)
	}
	if t.soft > 0 {
		say("In", counted(t.soft), "more something is open that does not count for that")
	}
	if n := t.files - t.read - t.faults; n > 0 {
		say(capital(counted(n)), "cannot be read")
	}
	if t.faults > 0 {
		say("Dryfit itself failed on", counted(t.faults))
	}
	if t.leave > 0 {
		say("In", counted(t.leave), "there is leave to differ")
	}
	return strings.Join(out, " ")
}

func loops(n int) string {
	if n == 1 {
		return "loop"
	}
	return "loops"
}
