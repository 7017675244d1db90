package report

import (
	"sort"
	"strings"

	"dryfit/internal/system"
	"dryfit/internal/working"
)

// Columns of the levelling tables, counted from 0: heights end at 8, a tilde
// stands at 9, words start at 11.
const (
	heightEnd  = 8
	tildeAt    = 9
	wordsAt    = 11
	cleanEnd   = 52
	fouledEnd  = 61
	bodyWidth  = 80
	noteColumn = 38 // of the notes beside the heights of a vessel
)

// level is one row of a levelling table.
type level struct {
	z        float64
	known    bool
	surface  bool // of water
	words    string
	note     string
	pointers []string // of the file: findings that point there put their flags here
}

func (p *page) levelLine(v level) line {
	l := line{}
	if v.known {
		text := heightShown(v.z, p.in)
		l = l.right(text, heightEnd, inkOf(v.surface))
	} else {
		l = l.right("?", heightEnd, noInk)
	}
	if v.surface {
		l = l.at(tildeAt).add("~", waterInk)
	}
	return l.at(wordsAt).add(v.words, noInk)
}

func inkOf(surface bool) ink {
	if surface {
		return waterInk
	}
	return noInk
}

// lineLevels is the levelling table of a line: each piece with its height and the head lost in it.
func (p *page) lineLevels(q *part) []line {
	l := q.line
	clean, runs := p.usual(l.ID, "head_loss", working.RunClean)
	fouled, runsFouled := p.usual(l.ID, "head_loss", fouledCase(l))
	losses := runs || runsFouled
	head := plain("  height   piece")
	var out []line
	if losses {
		out = append(out, head.at(cleanEnd-5).add("head lost, "+smallUnit(p.in), noInk),
			line{}.right("clean", cleanEnd, noInk).right("fouled", fouledEnd, noInk))
	} else {
		out = append(out, head)
	}
	if v := l.From.Vessel; v != nil && losses {
		subject, name, words := v.ID, "water_level", v.ID
		if l.From.Part == "launder" { // its water stands lower than that before the weir
			subject, name, words = l.ID, "upstream_level", "launder"
		}
		if z, known := p.usual(subject, name, fouledCase(l)); known {
			out = append(out, p.levelLine(level{z: z, known: true, surface: true, words: words + ", running fouled"}))
		}
	}
	for _, row := range p.rows(l) {
		out = append(out, p.rowLines(q, row, losses)...)
	}
	if losses {
		together := line{}.at(wordsAt).add("together", noInk)
		out = append(out, p.lossCells(together, clean, runs, fouled, runsFouled))
	}
	return out
}

// fouledCase is the case in which a line has slime inside: what hangs on the pump
// and what runs by gravity foul apart.
func fouledCase(l *system.Line) string {
	if l != nil && l.Pumped {
		return working.RunLeast
	}
	return working.RunWorst
}

// row is one or more pieces that share a line of the table: pipe and the wall it goes through.
type row struct {
	pieces []*system.Piece
}

func (p *page) rows(l *system.Line) []row {
	var out []row
	for _, piece := range l.Pieces {
		if last := len(out) - 1; last >= 0 && joinsRow(out[last].pieces, piece) {
			out[last].pieces = append(out[last].pieces, piece)
			continue
		}
		out = append(out, row{[]*system.Piece{piece}})
	}
	return out
}

// joinsRow says that a hole in a wall or a rim goes with the level pipe before it.
func joinsRow(have []*system.Piece, next *system.Piece) bool {
	return len(have) == 1 && have[0].Kind == "across" && (next.Through != nil || next.Over != nil)
}

func (p *page) rowLines(q *part, r row, losses bool) []line {
	var words []string
	var at []string
	clean, fouled := 0.0, 0.0
	knownClean, knownFouled := false, false
	for _, piece := range r.pieces {
		words = append(words, pieceWords(piece, p.in))
		at = append(at, piece.Pointer)
		if h, known := p.usual(piece.ID(), "head_loss", working.RunClean); known {
			clean, knownClean = clean+h, true
		}
		if h, known := p.usual(piece.ID(), "head_loss", fouledCase(q.line)); known {
			fouled, knownFouled = fouled+h, true
		}
	}
	last := r.pieces[len(r.pieces)-1]
	z, known := p.value(last.ID(), "height", working.Always, "")
	if !known {
		z, known = last.To.Value()
	}
	room := bodyWidth - wordsAt - 12
	if losses {
		room = cleanEnd - wordsAt - 1 - max(4, width(lossShown(clean, p.in)))
	}
	text := wrap(strings.Join(words, ", "), room)
	out := []line{p.levelLine(level{z: z, known: known, words: text[0]})}
	for _, more := range text[1:] {
		out = append(out, line{}.at(wordsAt+2).add(more, noInk))
	}
	if losses {
		out[0] = p.lossCells(out[0], clean, knownClean, fouled, knownFouled)
	}
	out[0] = margin(out[0], q.flagsAt(at...))
	return out
}

func (p *page) lossCells(l line, clean float64, knownClean bool, fouled float64, knownFouled bool) line {
	if knownClean {
		l = l.right(lossShown(clean, p.in), cleanEnd, noInk)
	}
	if knownFouled {
		l = l.right(lossShown(fouled, p.in), fouledEnd, noInk)
	}
	return l
}

// vesselLevels is the heights of a vessel from its rim down to its floor.
func (p *page) vesselLevels(q *part) []line {
	rows := p.vesselRows(q.vessel)
	sort.SliceStable(rows, func(i, j int) bool {
		if rows[i].known != rows[j].known {
			return rows[i].known
		}
		return rows[i].z > rows[j].z
	})
	out := []line{plain("  height")}
	for _, v := range rows {
		if width(v.note) > 0 {
			v.words = clip(safe(v.words), noteColumn-wordsAt-1)
		}
		l := p.levelLine(v)
		flags := q.flagsAt(v.pointers...)
		notes := wrap(v.note, bodyWidth-noteColumn-8)
		if len(notes) > 0 {
			l = l.at(noteColumn).add(notes[0], noInk)
		}
		out = append(out, margin(l, flags))
	}
	return out
}
