package remedy

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// The swaps of the chapters on materials and safety.
func init() {
	maps.Copy(exchanges, map[string]func(*review.Review, *review.Finding, string) []proposal{
		"clamps_of":      clampsOf,
		"material":       material,
		"kept_dry":       keptDry,
		"clean_vessel":   putOn("/history", system.Map{{Key: "made_for", Value: "food"}, {Key: "held", Value: "nothing"}}, "a vessel that has held nothing or only food in place of this one: no washing makes this one fit"),
		"food_vessel":    putOn("/history/made_for", "food", "a vessel made for food or drinking water in place of this one"),
		"painted":        putOn("/light", "painted", "paint its outside, or wrap it against the sun"),
		"wrapped":        putOn("/light", "wrapped", "wrap its walls so that no light comes through"),
		"drip_loops":     put("/mains/drip_loops", true, "let every cable hang in a bow that is lower than its socket"),
		"two_circuits":   put("/mains/circuits", 2, "a second circuit with its own residual-current device, fitted by a licensed electrician; the air goes on the one and the pump on the other"),
		"no_hose":        put("/top_up/hose_left_in", false, "hang the hose up after each use, and never leave its end in the water"),
		"adults_cement":  put("/making/cemented_by", []any{"staff"}, "an adult puts the cement on; pupils measure, cut, deburr and dry-fit"),
		"provide":        provide,
		"child_lid":      childLid,
		"stronger_stand": strongerStand,
		"wider_base":     widerBase,
		"broader_stand":  broaderStand,
		"smaller_bucket": smallerBucket,
		"alarm":          alarm,
		"phone":          phone,
		"no_poison":      noPoison,
	})
}

// put sets one value of the file.
func put(at string, value any, text string) func(*review.Review, *review.Finding, string) []proposal {
	return func(*review.Review, *review.Finding, string) []proposal {
		return []proposal{{text: text, edits: []system.Edit{{Op: system.Set, Pointer: at, Value: value}}}}
	}
}

// putOn sets one value of the vessel judged.
func putOn(key string, value any, text string) func(*review.Review, *review.Finding, string) []proposal {
	return func(r *review.Review, f *review.Finding, to string) []proposal {
		return put("/vessels/"+f.Part()+key, value, text)(r, f, to)
	}
}

// clampsOf swaps hose clamps for another class.
func clampsOf(_ *review.Review, f *review.Finding, to string) []proposal {
	return []proposal{{
		text:  "clamps of class " + to + " throughout; try a magnet on the screw",
		edits: []system.Edit{{Op: system.Set, Pointer: f.At, Value: to}},
	}}
}

// material swaps the part judged for one of another material.
func material(r *review.Review, f *review.Finding, to string) []proposal {
	was, given := r.System.Document.Text(f.At)
	if !given {
		return nil
	}
	what := strings.ReplaceAll(f.Subject, "/", ", ")
	if where, ok := r.System.Document.Text(strings.TrimSuffix(f.At, "/metal") + "/where"); ok {
		what = where
	}
	return []proposal{{
		text:  to + " in place of " + was + ": " + what,
		edits: []system.Edit{{Op: system.Set, Pointer: f.At, Value: to}},
	}}
}

// keptDry turns the drip of an entry of the list of metals away from the water.
func keptDry(_ *review.Review, f *review.Finding, _ string) []proposal {
	entry, ok := strings.CutSuffix(f.At, "/metal")
	if !ok {
		return nil
	}
	return []proposal{{
		text:  "turn its drip away from the water, or put a gutter under it",
		edits: []system.Edit{{Op: system.Set, Pointer: entry + "/wetted", Value: "dry"}},
	}}
}

// provide says yes where a thing was missing.
func provide(_ *review.Review, f *review.Finding, _ string) []proposal {
	text := map[string]string{
		"/care/hand_washing":   "a tap with soap and towels within sight of the loop",
		"/care/emergency_card": "a card with a drawing of the valves and whom to call",
	}[f.At]
	if text == "" {
		return nil
	}
	return []proposal{{text: text, edits: []system.Edit{{Op: system.Set, Pointer: f.At, Value: true}}}}
}

// childLid is a lid that keeps a child out; of the kind that is there, if that can do it.
func childLid(r *review.Review, f *review.Finding, _ string) []proposal {
	const bears, opening = "450 N", "100 mm"
	at := "/vessels/" + f.Part() + "/lid"
	kind := r.System.Word(at + "/kind")
	if kind.Is("solid", "grid", "net") {
		edits := []system.Edit{}
		if !r.System.Word(at+"/fixed").Is("locked", "screwed", "clipped") {
			edits = append(edits, system.Edit{Op: system.Set, Pointer: at + "/fixed", Value: "locked"})
		}
		if n := r.System.Number(at+"/bears", quantity.Force); !within(n, 450, math.Inf(1)) {
			edits = append(edits, system.Edit{Op: system.Set, Pointer: at + "/bears", Value: bears})
		}
		if n := r.System.Number(at+"/opening", quantity.Length); !within(n, 0, 0.1) {
			edits = append(edits, system.Edit{Op: system.Set, Pointer: at + "/opening", Value: opening})
		}
		return []proposal{{text: "lock the lid, made so that it bears " + bears + " in its middle and leaves no opening over " + opening, edits: edits}}
	}
	return []proposal{{
		text: "a solid lid that is locked, bears " + bears + " in its middle and leaves no opening over " + opening,
		edits: []system.Edit{{Op: system.Set, Pointer: at, Value: system.Map{
			{Key: "kind", Value: "solid"}, {Key: "fixed", Value: "locked"}, {Key: "bears", Value: bears}, {Key: "opening", Value: opening}}}},
	}}
}

func within(n system.Number, least, most float64) bool {
	x, given := n.SI()
	return given && x >= least && x <= most
}

// known is the value of a quantity of a vessel.
func known(r *review.Review, subject, name string) (float64, bool) {
	n := r.Ledger.Find(working.Address{Subject: subject, Name: name, Case: working.Always})
	if n == nil {
		return 0, false
	}
	v, ok := n.Value()
	return v.X, ok
}

// roundUp is x on the next full step.
func roundUp(x, step float64) float64 { return math.Ceil(x/step-1e-9) * step }

// strongerStand says what a stand has to bear.
func strongerStand(r *review.Review, f *review.Finding, _ string) []proposal {
	load, ok := known(r, f.Subject, "stand_load")
	if !ok || !strings.HasPrefix(f.At, "/stands/") {
		return nil
	}
	bears := fmt.Sprintf("%.0f kg", roundUp(load, 50))
	return []proposal{{
		text:  "build the stand to bear " + bears,
		edits: []system.Edit{{Op: system.Set, Pointer: f.At, Value: bears}},
	}}
}

// footprint is the place of a vessel's stand in the file, its length and its width.
func footprint(r *review.Review, vessel string) (at string, length, width float64, ok bool) {
	stand, given := r.System.Document.Text("/vessels/" + vessel + "/stand")
	if !given {
		return "", 0, 0, false
	}
	at = "/stands/" + stand
	length, ok = r.System.Number(at+"/length", quantity.Length).SI()
	width, also := r.System.Number(at+"/width", quantity.Length).SI()
	return at, length, width, ok && also
}

func sized(at string, length, width float64, text string) []proposal {
	return []proposal{{
		text: fmt.Sprintf("%s: %s by %s", text, mm(length), mm(width)),
		edits: []system.Edit{
			{Op: system.Set, Pointer: at + "/length", Value: mm(length)},
			{Op: system.Set, Pointer: at + "/width", Value: mm(width)},
		},
	}}
}

// widerBase spreads the load of a stand until the floor bears it.
func widerBase(r *review.Review, f *review.Finding, _ string) []proposal {
	at, length, width, ok := footprint(r, f.Subject)
	if !ok || f.Value.X <= 0 {
		return nil
	}
	more := math.Sqrt(f.Value.X)
	return sized(at, roundUp(length*more, 0.05), roundUp(width*more, 0.05), "beams or slabs that spread the load of the stand wider")
}

// broaderStand makes the narrow side of a stand wide enough for the height on it.
func broaderStand(r *review.Review, f *review.Finding, _ string) []proposal {
	at, length, width, ok := footprint(r, f.Subject)
	if !ok || f.Limit.Most == nil || *f.Limit.Most <= 0 {
		return nil
	}
	side := roundUp(f.Value.X*math.Min(length, width) / *f.Limit.Most, 0.05)
	return append(
		sized(at, math.Max(length, side), math.Max(width, side), "a broader stand"),
		proposal{text: "fix the stand to a wall that holds", edits: []system.Edit{{Op: system.Set, Pointer: at + "/anchored", Value: true}}},
	)
}

// smallerBucket is a container that can be lifted.
func smallerBucket(r *review.Review, f *review.Finding, _ string) []proposal {
	line := r.System.Line(f.Part())
	if line == nil || f.Limit.Most == nil {
		return nil
	}
	volume := fmt.Sprintf("%.0f L", math.Floor(*f.Limit.Most))
	return []proposal{{
		text:  "a bucket of no more than " + volume + ", emptied more often",
		edits: []system.Edit{{Op: system.Set, Pointer: line.Pointer + "/container", Value: volume}},
	}}
}

// underRim and overDry are how far from the rim, and from where the pump draws air, an alarm should call, m.
const (
	underRim = 0.060
	overDry  = 0.030
)

// alarm adds the alarms that are missing for a sump or the power.
func alarm(r *review.Review, f *review.Finding, _ string) []proposal {
	var edits []system.Edit
	var texts []string
	add := func(text string, entries ...system.Entry) {
		texts = append(texts, text)
		edits = append(edits, system.Edit{Op: system.Insert, Pointer: "/alarms/-", Value: append(system.Map(entries), system.Entry{Key: "calls", Value: "phone"})})
	}
	if f.Subject == "mains" {
		add("an alarm that calls a phone when the power fails", system.Entry{Key: "watches", Value: "power"})
	} else if v := r.System.Vessel(f.Subject); v != nil {
		watches := system.Entry{Key: "watches", Value: v.ID}
		high, low := watched(r.System, v.ID)
		if tall, given := v.Form.Height.SI(); !high && given && tall > underRim {
			at := mm(tall - underRim)
			add("a float that calls a phone at "+at, watches, system.Entry{Key: "above", Value: at})
		}
		if dry, given := drawsAir(r.System, v.ID); !low && given {
			at := mm(dry + overDry)
			add("a float that calls a phone under "+at, watches, system.Entry{Key: "below", Value: at})
		}
	}
	if len(edits) == 0 {
		return nil
	}
	return []proposal{{text: strings.Join(texts, " and "), edits: edits}}
}

// watched says which alarms for a vessel there are.
func watched(s *system.System, vessel string) (high, low bool) {
	for _, at := range s.Items("/alarms") {
		if s.Word(at + "/watches").Is(vessel) {
			high = high || s.Document.Has(at+"/above")
			low = low || s.Document.Has(at+"/below")
		}
	}
	return high, low
}

// drawsAir is the depth under which a pump in the vessel draws air.
func drawsAir(s *system.System, vessel string) (float64, bool) {
	for _, line := range s.Lines {
		if line.From.Vessel == nil || line.From.Vessel.ID != vessel {
			continue
		}
		for _, p := range line.Pieces {
			if p.Pump != nil {
				return p.Pump.DryBelow.SI()
			}
		}
	}
	return 0, false
}

// phone lets every alarm for the thing judged call a phone.
func phone(r *review.Review, f *review.Finding, _ string) []proposal {
	name := f.Subject
	if name == "mains" {
		name = "power"
	}
	var edits []system.Edit
	for _, at := range r.System.Items("/alarms") {
		if r.System.Word(at+"/watches").Is(name) && !r.System.Word(at+"/calls").Is("phone", "message") {
			edits = append(edits, system.Edit{Op: system.Set, Pointer: at + "/calls", Value: "phone"})
		}
	}
	if len(edits) == 0 {
		return nil
	}
	return []proposal{{text: "let every alarm for it call a phone, beside any siren", edits: edits}}
}

// noPoison takes what a loop does not bear off the list of treatments.
func noPoison(r *review.Review, f *review.Finding, _ string) []proposal {
	left := []any{}
	for _, at := range r.System.Items(f.At) {
		if word, given := r.System.Word(at).Value(); given && !slices.Contains([]string{"copper", "formalin", "antibiotic"}, word) {
			left = append(left, word)
		}
	}
	return []proposal{{
		text:  "treat sick fish in the quarantine vessel, and keep such medicines out of the loop",
		edits: []system.Edit{{Op: system.Set, Pointer: f.At, Value: left}},
	}}
}
