package remedy

import (
	"os"
	"strings"
	"testing"

	"dryfit/internal/review"
	"dryfit/internal/survey"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

func sound(t *testing.T, edits ...system.Edit) *review.Review {
	t.Helper()
	data, err := os.ReadFile("../../testdata/systems/quarry-road.yaml")
	if err != nil {
		t.Fatal(err)
	}
	s, problems := system.Read("quarry-road.yaml", data)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if len(edits) > 0 {
		if s, problems = s.Edited(edits...); len(problems) > 0 {
			t.Fatal(problems)
		}
	}
	return &review.Review{System: s, Ledger: survey.Survey(s)}
}

func set(pointer string, value any) system.Edit {
	return system.Edit{Op: system.Set, Pointer: pointer, Value: value}
}

func limited(least, most, x float64) *review.Finding {
	j := &review.Judgement{Value: working.Exactly(x)}
	if least != 0 {
		j.Limit.Least = &least
	}
	if most != 0 {
		j.Limit.Most = &most
	}
	return &review.Finding{Judgement: j}
}

// Each swap of the chapter on the whole loop, made to the demo with a fault in it,
// leaves a file that can be read, and does what it says.
func TestSwapsOfTheLoopLeaveAFileThatCanBeRead(t *testing.T) {
	fall := set("/lines/riser/pieces/15", system.Map{{Key: "siphon_break", Value: system.Map{{Key: "count", Value: 1}, {Key: "bore", Value: "4 mm"}}}})
	capped := set("/lines/solids-run/pieces/2", system.Map{{Key: "tee", Value: system.Map{{Key: "way", Value: "turn"}, {Key: "third", Value: "cap"}, {Key: "cap", Value: "threaded"}}}})
	tall := set("/vessels/sump/form/box/height", "600 mm")
	wide := []system.Edit{set("/vessels/sump/form/box/length", "1.1 m"), set("/vessels/sump/form/box/length_top", "1.11 m")}
	reviews := map[string]*review.Review{}
	for _, c := range []struct {
		swap, subject, on string
		f                 *review.Finding
		edit              []system.Edit
		pointer, want     string // a place in the file, and what then stands there
	}{
		{swap: "lower_outlet", subject: "tank", f: limited(0.05, 0, 0.02), pointer: "/lines/solids-run/pieces/4/through/at", want: "635 mm"},
		{swap: "lower_outlet", subject: "biofilter", f: limited(0.05, 0, 0.02), pointer: "/lines/filtered-run/pieces/1/through/at", want: "572 mm"},
		{swap: "larger_sump", subject: "sump", f: limited(0, 1, 1.5), edit: wide, pointer: "/vessels/sump/form/box/length", want: "1740 mm"},
		{swap: "larger_sump", subject: "sump", f: limited(1.2, 0, 0.9), edit: wide, pointer: "/vessels/sump/form/box/length_top", want: "1550 mm"},
		{swap: "larger_sump", subject: "settler", f: limited(0, 1, 1.5), pointer: "/vessels/settler/form/cylinder/inside", want: "590 mm"},
		{swap: "open_riser", subject: "tank", f: limited(0.5, 0, 0.4), edit: []system.Edit{capped}, pointer: "/lines/solids-run/pieces/2/tee/third", want: "vent"},
		{swap: "open_riser", subject: "solids-run", f: limited(0, 0, 0), edit: []system.Edit{capped}, pointer: "/lines/solids-run/pieces/2/tee/top_at", want: "830 mm"},
		{swap: "siphon_break", subject: "riser", f: limited(0, 0.025, 0.1), pointer: "/lines/riser/pieces/13/siphon_break/bore", want: "8 mm"},
		{swap: "siphon_break", subject: "tank", f: limited(0.5, 0, 0.1), pointer: "/lines/riser/pieces/13/siphon_break/count", want: "2"},
		{swap: "larger_holes", subject: "riser/15", on: "riser", f: limited(0.006, 0, 0.004), edit: []system.Edit{fall}, pointer: "/lines/riser/pieces/15/siphon_break/bore", want: "8 mm"},
		{swap: "fill_behind_valve", subject: "draw-down", f: limited(0, 0, 0), pointer: "/lines/draw-down/primed_by", want: "filling"},
		{swap: "second_float", subject: "sump", f: limited(0, 0, 0), pointer: "/top_up/second_stop", want: "float"},
		{swap: "lead_to_garden", subject: "sump-overflow", f: limited(0, 0, 0), pointer: "/lines/sump-overflow/leads_to", want: "garden"},
		{swap: "wider_overflow", subject: "sump", f: limited(0, 0, 0), edit: []system.Edit{tall}, pointer: "/lines/sump-overflow/pipe", want: "clear-50-wider"},
		{swap: "emergency_overflow", subject: "biofilter", f: limited(0, 1, 2), pointer: "/lines/biofilter-overflow/to", want: "sump"},
		{swap: "emergency_overflow", subject: "tank", f: limited(0, 1, 2), pointer: "/lines/tank-overflow/pieces/0/intake/guard/slots", want: "60"},
		{swap: "emergency_overflow", subject: "raft", f: limited(0, 1, 2), pointer: "/lines/raft-overflow/pieces/0/through/at", want: "435 mm"},
		{swap: "emergency_overflow", subject: "sump", f: limited(0, 1, 2), pointer: "/lines/sump-overflow-2/leads_to", want: "garden"},
		{swap: "emergency_overflow", subject: "settler-waste/4", on: "settler-waste", f: limited(0, 1, 2), pointer: "/lines/settler-overflow-2/from", want: "settler"},
	} {
		key := ""
		for _, e := range c.edit {
			key += e.Pointer
		}
		r := reviews[key]
		if r == nil {
			r = sound(t, c.edit...)
			reviews[key] = r
		}
		c.f.Subject, c.f.On = c.subject, c.on
		got := exchanges[c.swap](r, c.f, "")
		if len(got) == 0 {
			t.Errorf("%s suggests nothing for %s", c.swap, c.subject)
			continue
		}
		for i, p := range got {
			then, problems := r.System.Edited(p.edits...)
			if len(problems) > 0 || strings.TrimSpace(p.text) == "" {
				t.Errorf("%s for %s, %q: %v", c.swap, c.subject, p.text, problems)
				continue
			}
			if text, _ := then.Document.Text(c.pointer); i == 0 && text != c.want {
				t.Errorf("%s for %s puts %q at %s, want %q", c.swap, c.subject, text, c.pointer, c.want)
			}
		}
	}
}
