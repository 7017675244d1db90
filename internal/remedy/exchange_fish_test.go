package remedy

import (
	"math"
	"os"
	"strings"
	"testing"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/survey"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

var fishSwaps = []string{
	"fewer_fish", "less_feed", "stop_feeding", "warmed", "cooled", "more_media", "honest_surface", "deeper_media", "more_beds", "less_bed", "bed_level", "slow_start",
	"more_air", "backup_by_itself", "backup_air", "feed_filter", "non_return", "doser", "base_to_fit", "lower_ph", "keep_ph", "shaded", "dechlorinate", "salt_bath",
}

func named(f *review.Finding, name string) *review.Finding {
	f.Name = name
	return f
}

// Each swap of the chapter on fish, made to the demo, says in its first proposal
// what a hand with a pencil gets: the arithmetic stands beside it.
func TestSwapsOfTheFishSayWhatAPencilGets(t *testing.T) {
	none := set("/backup_air", system.Map{})
	plain := set("/water/buffer", system.Map{})
	for _, c := range []struct {
		swap, subject string
		f             *review.Finding
		edit          []system.Edit
		pointer, want string
	}{
		{swap: "stop_feeding", subject: "fish/0", f: limited(0, 0, -3.2), pointer: "/fish/0/stops_below", want: "17.5 degC"}, // 14 + 3.2, on the half
		{swap: "warmed", subject: "fish/0", f: limited(0, 0, -3), pointer: "/water/temperature/low", want: "17 degC"},        // 14 + 3
		{swap: "cooled", subject: "fish/0", f: limited(0, 0, -2.2), pointer: "/water/temperature/high", want: "25.5 degC"},   // 28 - 2.2, on the half
		{swap: "less_bed", subject: "water", f: limited(0.5, 0, 0.4), pointer: "/vessels/raft/crop/kind", want: "leafy"},
		{swap: "slow_start", subject: "water", f: limited(0, 0.25, 1), edit: []system.Edit{set("/start_up/first_feed", "100 %")}, pointer: "/start_up/first_feed", want: "25 %"},
		{swap: "backup_by_itself", subject: "tank", f: limited(0, 0, 0), pointer: "/backup_air/starts", want: "by-itself"},
		{swap: "backup_air", subject: "tank", f: limited(0, 1, 2), edit: []system.Edit{none}, pointer: "/backup_air/flow", want: "20 L/min"},                              // tank and filter, 10 each
		{swap: "backup_air", subject: "tank", f: limited(0, 1, 2), edit: []system.Edit{none, set("/site/power_cut", "10 h")}, pointer: "/backup_air/lasts", want: "13 h"}, // 1.25 x 10, full hours
		{swap: "feed_filter", subject: "biofilter", f: limited(0, 0, 0), edit: []system.Edit{set("/backup_air/feeds", []any{"tank"})}, pointer: "/backup_air/feeds/1", want: "biofilter"},
		{swap: "doser", subject: "water", f: limited(1, 0, 0.5), pointer: "/water/buffer/by", want: "doser"},
		{swap: "doser", subject: "water", f: limited(1, 0, 0.5), edit: []system.Edit{plain}, pointer: "/water/buffer/amount", want: "20 g/d"}, // 0.35 x 120 x 0.36 x 0.092 x 7.14 x 2.0 = 19.9
		{swap: "base_to_fit", subject: "water", f: limited(0.15, 1.1, 2), pointer: "/water/buffer/amount", want: "19 g/d"},                    // 56.8/3 = 18.9
		{swap: "keep_ph", subject: "water", f: named(limited(6, 0, 5.8), "ph_lowest"), pointer: "/water/pH/low", want: "6"},
		{swap: "keep_ph", subject: "water", f: named(limited(0, 0, -0.25), "ph_over_band"), pointer: "/water/pH/low", want: "6.8"},   // 6.5 + 0.25, up
		{swap: "keep_ph", subject: "water", f: named(limited(0, 0, -0.25), "ph_under_band"), pointer: "/water/pH/high", want: "6.9"}, // 7.2 - 0.25, down
	} {
		r := sound(t, c.edit...)
		c.f.Subject = c.subject
		got := exchanges[c.swap](r, c.f, "")
		if len(got) == 0 {
			t.Errorf("%s suggests nothing for %s", c.swap, c.subject)
			continue
		}
		then, problems := r.System.Edited(got[0].edits...)
		if len(problems) > 0 || strings.TrimSpace(got[0].text) == "" {
			t.Errorf("%s for %s, %q: %v", c.swap, c.subject, got[0].text, problems)
			continue
		}
		if text, _ := then.Document.Text(c.pointer); text != c.want {
			t.Errorf("%s for %s puts %q at %s, want %q", c.swap, c.subject, text, c.pointer, c.want)
		}
	}
}

// The amount that a swap looks for is the one that a pencil gets, too.
func TestSwapsOfTheFishFindTheirAmount(t *testing.T) {
	for _, c := range []struct {
		swap          string
		of            working.Address
		least, most   float64
		pointer, want string
	}{
		// 0.51 of the density that is there: 4.845 kg and 61.2 g/d, cut down to two digits
		{"fewer_fish", working.Address{Subject: "tank", Name: "stocking_density", Case: working.RunLeast, Water: "usual"}, 0, 0.51, "/fish/0/mass", "4.8 kg"},
		{"fewer_fish", working.Address{Subject: "tank", Name: "stocking_density", Case: working.RunLeast, Water: "usual"}, 0, 0.51, "/fish/0/feed/1/amount", "61 g/d"},
		// a feed of 120 g/d is what three quarters of this would be
		{"less_feed", working.Address{Subject: "water", Name: "bed_feed", Case: working.Always, Water: "usual"}, 0, 0.75, "/fish/0/feed/2/amount", "90 g/d"},
		{"less_feed", working.Address{Subject: "water", Name: "bed_feed", Case: working.Always, Water: "usual"}, 0, 0.75, "/fish/0/feed/0/amount", "38 g/d"},
		// rafts turn 1.2 of 7.72 g/d at 21 degC: for 1.5 times as much the media have to turn 10.38 in place of 6.52, 70 L x 1.59
		{"more_media", working.Address{Subject: "water", Name: "nitrification_share", Case: working.Always, Water: "usual"}, 0, 1 / 1.5, "/vessels/biofilter/media/volume", "112 L"},
		// at 28 degC stones bring 99.5 and the flow 35.9 g/d of oxygen: for 1.2 times as much in all the stones have to bring 1.27 times theirs
		{"more_air", working.Address{Subject: "tank", Name: "oxygen_share_at_ease", Case: working.RunLeast, Water: "high"}, 0, 1 / 1.2, "/air/stones/0/count", "4"},
		{"more_air", working.Address{Subject: "tank", Name: "oxygen_share_at_ease", Case: working.RunLeast, Water: "high"}, 0, 1 / 1.2, "/air/pump/flow", "60 L/min"},
	} {
		r := sound(t)
		n := r.Ledger.Find(c.of)
		v, ok := n.Value()
		if !ok {
			t.Fatalf("%s is not known", c.of)
		}
		f := limited(c.least*v.X, c.most*v.X*(1+1e-5), v.X)
		f.Subject, f.Node = c.of.Subject, n
		got := exchanges[c.swap](r, f, "")
		if len(got) == 0 {
			t.Errorf("%s suggests nothing for %s", c.swap, c.of)
			continue
		}
		then, problems := r.System.Edited(got[0].edits...)
		if len(problems) > 0 {
			t.Errorf("%s: %v", got[0].text, problems)
			continue
		}
		if text, _ := then.Document.Text(c.pointer); text != c.want {
			t.Errorf("%s for %s puts %q at %s, want %q", c.swap, c.of, text, c.pointer, c.want)
		}
	}
}

// Whatever number is found wherever, a swap neither fails nor proposes what cannot be
// read; a stock is never made larger, nor a number of it not a number.
func TestSwapsOfTheFishTakeAnyFindingOnAnyFile(t *testing.T) {
	for _, name := range []string{"quarry-road.yaml", "everything.yaml", "siphon-beds.yaml", "pump-in-tank.yaml"} {
		data, err := os.ReadFile("../../testdata/systems/" + name)
		if err != nil {
			t.Fatal(err)
		}
		s, problems := system.Read(name, data)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		r := &review.Review{System: s, Ledger: survey.Survey(s)}
		nodes := map[string]*working.Node{}
		for _, n := range r.Ledger.Nodes() {
			nodes[n.Address.Subject] = n
		}
		subjects := []string{"water", "fish/0", "nobody", "tank", "raft"}
		for _, subject := range subjects {
			for _, x := range []float64{0, -3, 0.4, 1000} {
				for _, name := range []string{"ph_highest", "ph_over_band"} {
					for _, swap := range fishSwaps {
						least, most := 0.5, 1.0
						for _, limit := range []review.Limit{{}, {Least: &least}, {Most: &most}} {
							f := &review.Finding{Judgement: &review.Judgement{Subject: subject, Name: name, Value: working.Exactly(x), Limit: limit, Node: nodes[subject]}}
							for _, p := range exchanges[swap](r, f, "") {
								sane(t, s, swap, p)
							}
						}
					}
				}
			}
		}
	}
}

func sane(t *testing.T, s *system.System, swap string, p proposal) {
	t.Helper()
	for _, e := range p.edits {
		text, ok := e.Value.(string)
		if ok && (strings.Contains(text, "NaN") || strings.Contains(text, "Inf")) {
			t.Errorf("%s proposes %s at %s", swap, text, e.Pointer)
		}
		if x, ok := e.Value.(float64); ok && (math.IsNaN(x) || math.IsInf(x, 0)) {
			t.Errorf("%s proposes %g at %s", swap, x, e.Pointer)
		}
		if swap == "fewer_fish" && strings.HasSuffix(e.Pointer, "/mass") {
			was, _ := s.Number(e.Pointer, quantity.Mass).SI()
			if now, err := quantity.Parse(quantity.Mass, text); err != nil || now.SI > was {
				t.Errorf("fewer_fish proposes %s where %g kg stand", text, was)
			}
		}
	}
}
