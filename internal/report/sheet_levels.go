package report

import (
	"math"
	"sort"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// levelTable is where the water stands in each vessel, round the loop.
func (w *sheeter) levelTable() []Section {
	if w.System == nil {
		return nil
	}
	t := Table{Name: "levels", Caption: "Where the water stands, above the datum; room left is the least under the rim while the pump runs",
		Columns: []Column{{Head: "vessel"}, w.lengths("at rest"), w.lengths("running"), w.lengths("fouled"), w.lengths("rim"), w.lengths("room left"), w.lengths("highest"), {Head: "highest when"}}}
	put := func(z float64) Cell {
		if math.IsNaN(z) {
			return Cell{Text: "?"}
		}
		return w.whole(z)
	}
	for _, stop := range w.System.Round() {
		if v := stop.Vessel; v != nil {
			s := w.standing(v)
			t.Rows = append(t.Rows, []Cell{{Text: v.ID}, put(s.rest), put(s.running), put(s.fouled), put(s.rim), put(s.room), put(s.highest), {Text: s.in}})
		}
	}
	return section(2, "levels", "Levels", t)
}

// heights is the levelling table of a part: of a line its pieces, of a vessel from the rim down.
func (w *sheeter) heights(q *part) Block {
	switch {
	case q.line != nil:
		return w.pieces(q)
	case q.vessel != nil:
		return w.vesselHeights(q)
	}
	return nil
}

func (w *sheeter) pieces(q *part) Table {
	l := q.line
	t := Table{Name: w.name("pieces-of-" + l.ID), Caption: "Pieces of " + l.ID + ", in the order in which the water meets them",
		Columns: []Column{{Head: "piece"}, {Head: "what"}, w.lengths("height"), w.lengths("head lost, clean"), w.lengths("head lost, fouled"), {Head: "flags"}}}
	lost := func(subject, in string) Cell {
		if h, known := w.usual(subject, "head_loss", in); known {
			return w.length(h)
		}
		return Cell{}
	}
	for i, p := range l.Pieces {
		height := Cell{Text: "?"}
		if z, known := w.heightAfter(p); known {
			height = w.whole(z)
		}
		t.Rows = append(t.Rows, []Cell{{Text: fixed(float64(i+1), 0)}, {Text: w.pieceSaid(p)}, height,
			lost(p.ID(), working.RunClean), lost(p.ID(), fouledCase(l)), {Text: q.flagsAt(p.Pointer).text()}})
	}
	if _, known := w.usual(l.ID, "head_loss", working.RunClean); known {
		t.Rows = append(t.Rows, []Cell{{Text: "all"}, {Text: "together"}, {}, lost(l.ID, working.RunClean), lost(l.ID, fouledCase(l)), {}})
	}
	return t
}

// pieceSaid is a piece in words; a length in US units too where both are wanted.
func (w *sheeter) pieceSaid(p *system.Piece) string {
	words := pieceWords(p, w.in)
	if us := pieceWords(p, quantity.US); w.twice() && us != words {
		words += " (inches: " + us + ")"
	}
	return words
}

func (w *sheeter) heightAfter(p *system.Piece) (float64, bool) {
	if z, known := w.value(p.ID(), "height", working.Always, ""); known {
		return z, true
	}
	return p.To.Value()
}

func (w *sheeter) vesselHeights(q *part) Table {
	rows := w.vesselRows(q.vessel)
	sort.SliceStable(rows, func(i, j int) bool {
		if rows[i].known != rows[j].known {
			return rows[i].known
		}
		return rows[i].z > rows[j].z
	})
	t := Table{Name: w.name("heights-of-" + q.name), Caption: "Heights of " + q.name + ", from the rim down",
		Columns: []Column{{Head: "what"}, w.lengths("height"), {Head: "that is"}, {Head: "flags"}}}
	for _, r := range rows {
		height := Cell{Text: "?"}
		if r.known {
			height = w.whole(r.z)
		}
		if r.surface {
			r.words = "~ " + r.words
		}
		t.Rows = append(t.Rows, []Cell{{Text: r.words}, height, {Text: r.note}, {Text: q.flagsAt(r.pointers...).text()}})
	}
	return t
}

// headOf is what a part is, in a sentence.
func (w *sheeter) headOf(q *part) string {
	var texts []string
	switch {
	case q.line != nil:
		texts = append([]string{w.lineWords(q.line)}, w.pipeWords(q.line)...)
	case q.vessel != nil:
		texts = []string{w.vesselWords(q.vessel)}
	}
	return sentence(capital(strings.Join(texts, ". ")))
}
