package remedy

import (
	"strconv"
	"strings"

	"dryfit/internal/review"
)

// resolve fills the names in a lever's file pointer: {subject}, {on}, {from} and
// {to} of the line judged with {last}, its last piece, {through}, the piece that a
// drain's cuff leads to, {piece}, the number of the piece judged, {pump}, the pump that it names, {weir} and {form}, the
// kinds of a vessel's weir and form, and {draw_down}, its line.
// It reports false when one of them is not there.
func resolve(r *review.Review, f *review.Finding, pattern string) (string, bool) {
	fill := map[string]string{"subject": f.Subject, "on": f.Part()}
	if line := r.System.Line(f.Part()); line != nil {
		fill["last"] = strconv.Itoa(len(line.Pieces) - 1)
		if line.From.Vessel != nil {
			fill["from"] = line.From.Vessel.ID
		}
		if line.To.Vessel != nil {
			fill["to"] = line.To.Vessel.ID
		}
	}
	if through := r.Ledger.Relations["wall_of_drain"][f.Subject]; len(through) > 0 {
		_, fill["through"], _ = strings.Cut(through[0], "/")
	}
	if v := r.System.Vessel(f.Part()); v != nil {
		fill["form"] = v.Form.Kind
		if v.Weir != nil {
			fill["weir"] = v.Weir.Kind
		}
	}
	if of := r.Ledger.Relations["draw_down_of"][f.Subject]; len(of) > 0 {
		fill["draw_down"] = of[0]
	}
	if _, number, ok := strings.Cut(f.Subject, "/"); ok {
		fill["piece"] = number
	}
	if p := piece(r, f); p != nil && p.Pump != nil {
		fill["pump"] = p.Pump.ID
	}
	for name, value := range fill {
		pattern = strings.ReplaceAll(pattern, "{"+name+"}", value)
	}
	return pattern, !strings.Contains(pattern, "{")
}
