package remedy

import (
	"fmt"
	"maps"
	"math"
	"strconv"
	"strings"

	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/tables"
)

func init() {
	maps.Copy(exchanges, map[string]func(*review.Review, *review.Finding, string) []proposal{
		"narrower_bore": narrowerBore,
		"clean_out":     cleanOut,
		"full_bore":     fullBore,
		"narrow_slots":  narrowSlots,
		"take_out":      takeOut,
		"cement":        cement,
		"clip_turn":     clipTurn,
		"pin":           pin,
		"release":       release,
		"vent":          vent,
		"raise_vent":    raiseVent,
		"clamp_both":    clampBoth,
	})
}

// pieceAt finds the piece whose place in the file is at a pointer, or around it.
func pieceAt(r *review.Review, pointer string) *system.Piece {
	for _, line := range r.System.Lines {
		for _, p := range line.Pieces {
			if pointer == p.Pointer || strings.HasPrefix(pointer, p.Pointer+"/") {
				return p
			}
		}
	}
	return nil
}

// shortKey is the name of the value that a piece in its short form gives.
var shortKey = map[string]string{"bend": "angle", "sweep": "angle", "across": "length", "rise": "length", "fall": "length", "hose": "length", "valve": "kind", "reducer": "to"}

// with is the edit that gives a piece one more value, writing its short form out if it has one.
func with(r *review.Review, p *system.Piece, key string, value any) system.Edit {
	text, short := r.System.Document.Text(p.Value)
	if short && shortKey[p.Kind] != "" {
		return system.Edit{Op: system.Set, Pointer: p.Value, Value: system.Map{{Key: shortKey[p.Kind], Value: text}, {Key: key, Value: value}}}
	}
	return system.Edit{Op: system.Set, Pointer: p.Value + "/" + key, Value: value}
}

// narrowerBore gives the line the next smaller pipe of the same standard and class, with wall seals and valves to match.
func narrowerBore(r *review.Review, f *review.Finding, _ string) []proposal {
	line := r.System.Line(f.Part())
	if line == nil || len(line.Pieces) == 0 || line.Pieces[0].Pipe == nil {
		return nil
	}
	t, pipe := tables.Embedded(), line.Pieces[0].Pipe
	var out []proposal
	rows := t.PipesOf(pipe.Standard.Text(), pipe.Class.Text())
	for i := len(rows) - 1; i >= 0 && len(out) < 3; i-- {
		row := rows[i]
		if row.Inside >= pipe.Inside-1e-9 {
			continue
		}
		out = append(out, proposal{
			text:  fmt.Sprintf("%s %s %s for the whole line, %s inside; its wall seals want their own holes", row.Standard, row.Class, row.Size, mm(row.Inside)),
			edits: refit(r.System, t, line, pipe.ID+"-narrower", row),
		})
	}
	return out
}

// refit makes a line of another pipe: its wall seals and bulkhead fittings get the holes for it, and valves whose bore is stated the pipe's.
func refit(s *system.System, t *tables.Tables, line *system.Line, id string, row tables.Pipe) []system.Edit {
	edits := []system.Edit{
		{Op: system.Set, Pointer: "/pipes/" + id, Value: system.Map{
			{Key: "standard", Value: row.Standard}, {Key: "class", Value: row.Class}, {Key: "size", Value: row.Size}}},
		{Op: system.Set, Pointer: line.Pointer + "/pipe", Value: id},
	}
	for _, p := range line.Pieces {
		if seal, ok := t.SealFor(row.Outside); ok && p.Through != nil && p.Through.Seal == "seal" {
			edits = append(edits, system.Edit{Op: system.Set, Pointer: p.Through.Hole.Pointer(), Value: mm(seal.Hole)})
			edits = append(edits, otherSeal(s, p, seal)...)
		}
		if hole, ok := holeFor(t, "bulkhead", row.Outside); ok && p.Through != nil && p.Through.Seal == "bulkhead" {
			edits = append(edits, system.Edit{Op: system.Set, Pointer: p.Through.Hole.Pointer(), Value: mm(hole)})
		}
		if p.Valve != nil && p.Valve.Bore.Given() {
			edits = append(edits, system.Edit{Op: system.Set, Pointer: p.Valve.Bore.Pointer(), Value: mm(row.Inside)})
		}
	}
	return edits
}

// cleanOut puts openings into the stretch that a rod does not reach: in the middle of it or, if it is long, in several places.
func cleanOut(r *review.Review, f *review.Finding, _ string) []proposal {
	p := pieceAt(r, f.At)
	if p == nil {
		return nil
	}
	opening := system.Map{{Key: "clean_out", Value: system.Map{{Key: "cap", Value: "threaded"}, {Key: "joint", Value: "cemented"}}}}
	out := []proposal{{
		text:  "a clean-out with a threaded cap before the " + p.Kind,
		edits: []system.Edit{{Op: system.Insert, Pointer: p.Pointer, Value: opening}},
	}}
	length, known := p.Length.Value()
	if p.Run == nil || p.Run.Fit || p.Kind == "slope" || !known {
		return out
	}
	for _, n := range []int{1, 2, 3, 5, 8} {
		part := math.Round(length/float64(n+1)*1000) / 1000
		var pieces []any
		for i := range n + 1 {
			l := part
			if i == n {
				l = length - part*float64(n)
			}
			pieces = append(pieces, system.Map{{Key: p.Kind, Value: mm(l)}})
			if i < n {
				pieces = append(pieces, opening)
			}
		}
		text := "a clean-out with a threaded cap in the middle of it, " + mm(part) + " from its end"
		if n > 1 {
			text = fmt.Sprintf("%d clean-outs with threaded caps in it, %s apart", n, mm(part))
		}
		out = append(out, proposal{text: text, edits: []system.Edit{{Op: system.Splice, Pointer: p.Pointer, Value: pieces}}})
	}
	return out
}

// fullBore gives the narrow place the bore of the pipe before it.
func fullBore(r *review.Review, f *review.Finding, _ string) []proposal {
	p := pieceAt(r, f.At)
	if p == nil {
		return nil
	}
	widest := 0.0
	for _, before := range p.Line.Pieces[:p.Index+1] {
		if before.Pipe != nil {
			widest = math.Max(widest, before.Pipe.Inside)
		}
	}
	switch {
	case widest == 0:
		return nil
	case p.Kind == "valve" || p.Kind == "check_valve" || p.Kind == "union" || p.Kind == "device":
		d := math.Ceil(widest*1e4) / 1e4
		return one("a "+strings.ReplaceAll(p.Kind, "_", " ")+" of full bore, "+mm(d)+", or one size larger", p.Value+"/bore", mm(d))
	case p.Outlet != nil && p.Outlet.Nozzle.Given():
		return []proposal{{text: "no nozzle on the end", edits: []system.Edit{{Op: system.Delete, Pointer: p.Outlet.Nozzle.Pointer()}}}}
	}
	for _, before := range p.Line.Pieces[:p.Index+1] {
		if before.Kind == "reducer" {
			return []proposal{{text: "no reducer: the same pipe to the end", edits: []system.Edit{{Op: system.Delete, Pointer: before.Pointer}}}}
		}
	}
	return nil
}

// narrowSlots makes the openings of a guard a little less than half the least bore, and as many more as keep its area.
func narrowSlots(r *review.Review, f *review.Finding, _ string) []proposal {
	p := pieceAt(r, f.At)
	if p == nil || f.Limit.Most == nil || f.Value.X <= 0 {
		return nil
	}
	n := f.Node
	if n == nil || len(n.Inputs) == 0 {
		return nil
	}
	w, _ := n.Inputs[0].Value()
	width := math.Floor(w.X**f.Limit.Most/f.Value.X*0.95*1000) / 1000
	if width <= 0 {
		return nil
	}
	edits := []system.Edit{{Op: system.Set, Pointer: f.At, Value: mm(width)}}
	text := "openings of " + mm(width)
	for _, key := range []string{"slots", "holes"} {
		at := strings.TrimSuffix(f.At, "/width") + "/" + key
		have, given := r.System.Document.Text(at)
		count, err := strconv.Atoi(have)
		if !given || err != nil {
			continue
		}
		power := map[string]float64{"slots": 1, "holes": 2}[key]
		more := int(math.Ceil(float64(count) * math.Pow(w.X/width, power)))
		edits = append(edits, system.Edit{Op: system.Set, Pointer: at, Value: more})
		text += fmt.Sprintf(", %d of them, which keeps the open area", more)
	}
	return []proposal{{text: text, edits: edits}}
}

// takeOut takes the piece at the place of the finding out of its line.
func takeOut(r *review.Review, f *review.Finding, _ string) []proposal {
	p := pieceAt(r, f.At)
	if p == nil || p.Pointer != f.At {
		return nil
	}
	text := "take the " + strings.ReplaceAll(p.Kind, "_", " ") + " out"
	edits := []system.Edit{{Op: system.Delete, Pointer: p.Pointer}}
	switch p.Kind {
	case "check_valve":
		text += "; if water must not run back, end the line over the water or drill siphon breaks"
		edits = []system.Edit{{Op: system.Set, Pointer: p.Pointer, Value: system.Map{{Key: "union", Value: system.Map{}}}}}
		text = "a union in place of the check valve, so that the line opens there" + strings.TrimPrefix(text, "take the check valve out")
	case "valve":
		behind := false
		for _, after := range p.Line.Pieces[p.Index:] {
			behind = behind || after.Valve != nil && after.Index > p.Index
		}
		if !behind {
			return nil
		}
		text += " from before the pump; the one behind it regulates"
	}
	return []proposal{{text: text, edits: edits}}
}

// cement joins a piece to the one before it for good.
func cement(r *review.Review, f *review.Finding, _ string) []proposal {
	return jointOf(r, f, "cemented")
}

// pin holds a dry joint together.
func pin(r *review.Review, f *review.Finding, _ string) []proposal { return jointOf(r, f, "pinned") }

func jointOf(r *review.Review, f *review.Finding, joint string) []proposal {
	p := piece(r, f)
	if p == nil {
		return nil
	}
	if p.Cuff != nil || p.Hose != nil {
		return clampBoth(r, f, "")
	}
	text := "join the " + strings.ReplaceAll(p.Kind, "_", " ") + " to the piece before it with cement"
	if joint == "pinned" {
		text = "a pin through the joint: one plastic screw or a peg"
	}
	return []proposal{{text: text, edits: []system.Edit{with(r, p, "joint", joint)}}}
}

// clipTurn holds a turn.
func clipTurn(r *review.Review, f *review.Finding, _ string) []proposal {
	p := piece(r, f)
	if p == nil || p.Index == 0 {
		return nil
	}
	if p.Bend == nil && p.Tee == nil {
		p = p.Line.Pieces[p.Index-1]
	}
	return []proposal{{text: "a clip on the " + p.Kind, edits: []system.Edit{with(r, p, "clipped", true)}}}
}

// release lets a part come out: a guard that pulls off, a union behind a pump, a pinned bend in a settler.
func release(r *review.Review, f *review.Finding, _ string) []proposal {
	p := piece(r, f)
	switch {
	case p == nil:
		return nil
	case p.Pump != nil && p.Index+1 < len(p.Line.Pieces):
		union := system.Map{{Key: "union", Value: system.Map{}}}
		return []proposal{{
			text:  "a union just behind the pump",
			edits: []system.Edit{{Op: system.Insert, Pointer: p.Line.Pieces[p.Index+1].Pointer, Value: union}},
		}}
	case p.Outlet != nil:
		var out []proposal
		for i := p.Index; i > 0 && p.Line.Pieces[i].In == p.Line.To.Vessel; i-- {
			out = append(out, proposal{
				text:  "a pinned joint without cement at the " + p.Line.Pieces[i].Kind + " inside",
				edits: []system.Edit{with(r, p.Line.Pieces[i], "joint", "pinned")},
			})
		}
		return out
	}
	return one("a guard that pulls off by hand", p.Value+"/guard/comes_off", true)
}

// tall is how far the top of a new vent reaches over the rim of the vessel above.
const tall = 0.06

// vent opens the highest place of a line to the air.
func vent(r *review.Review, f *review.Finding, _ string) []proposal {
	p := pieceAt(r, f.At)
	if p == nil || p.Line.From.Vessel == nil {
		return nil
	}
	from := p.Line.From.Vessel
	rim, known := from.Form.Height.SI()
	if !known {
		return nil
	}
	top := math.Round((rim+tall)*200) / 200
	if p.In == from {
		top = math.Round((rim-0.02)*200) / 200
	}
	text := "an open vent at the highest place, its top " + mm(top) + " above the floor of " + from.ID
	if p.Tee != nil {
		edits := []system.Edit{
			{Op: system.Set, Pointer: p.Value + "/third", Value: "vent"},
			{Op: system.Set, Pointer: p.Value + "/top_at", Value: mm(top)},
		}
		if _, capped := r.System.Document.Text(p.Value + "/cap"); capped {
			edits = append(edits, system.Edit{Op: system.Delete, Pointer: p.Value + "/cap"})
		}
		return []proposal{{text: text + ", on the tee that is there", edits: edits}}
	}
	if p.Index+1 >= len(p.Line.Pieces) {
		return nil
	}
	tee := system.Map{{Key: "tee", Value: system.Map{{Key: "way", Value: "through"}, {Key: "third", Value: "vent"}, {Key: "top_at", Value: mm(top)}}}}
	return []proposal{{text: text, edits: []system.Edit{{Op: system.Insert, Pointer: p.Line.Pieces[p.Index+1].Pointer, Value: tee}}}}
}

// raiseVent lifts the top of a vent until it stands clear.
func raiseVent(r *review.Review, f *review.Finding, _ string) []proposal {
	p := piece(r, f)
	if p == nil || p.Tee == nil || f.Limit.Least == nil {
		return nil
	}
	now, given := p.Tee.TopAt.SI()
	if !given {
		return nil
	}
	top := math.Ceil((now+*f.Limit.Least-f.Value.X+0.005)*200) / 200
	return one("a longer vent: its top "+mm(top-now)+" higher, at "+mm(top), p.Tee.TopAt.Pointer(), mm(top))
}

// clampBoth puts clamps that last on a hose or cuff.
func clampBoth(r *review.Review, f *review.Finding, _ string) []proposal {
	p := piece(r, f)
	if p == nil {
		return nil
	}
	return []proposal{{text: "a clamp on each end, of class W5", edits: []system.Edit{with(r, p, "clamps", "W5")}}}
}
