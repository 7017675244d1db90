package remedy

import (
	"strings"

	"dryfit/internal/review"
)

// resolve fills the names in a lever's file pointer: {subject}, {on}, {from} and
// {to} of the line judged, and {through}, the piece that a drain's cuff leads to.
// It reports false when one of them is not there.
func resolve(r *review.Review, f *review.Finding, pattern string) (string, bool) {
	fill := map[string]string{"subject": f.Subject, "on": f.Part()}
	if line := r.System.Line(f.Part()); line != nil {
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
	for name, value := range fill {
		pattern = strings.ReplaceAll(pattern, "{"+name+"}", value)
	}
	return pattern, !strings.Contains(pattern, "{")
}
