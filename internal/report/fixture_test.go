package report

import (
	"math"
	"testing"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// The loop of these tests is small and invented, and so are its numbers: they
// show how things are written, not how water runs.
const loopFile = `dryfit: 1
name: Bench loop
status: for-review
water: {temperature: {low: 14 degC, usual: 21 degC, high: 28 degC}}
pipes: {waste-40: {standard: AS/NZS 1477, class: PN12, size: DN40}}
vessels:
  tank: {role: fish-tank, form: {cylinder: {inside: 1350 mm, height: 850 mm}}, stands_at: 420 mm}
  settler:
    role: radial-flow-settler
    form: {cylinder: {inside: 470 mm, height: 730 mm}}
    stands_at: 300 mm
    well: {inside: 129.2 mm, lip_at: 215 mm}
    weir: {notched_ring: {across: 400 mm, crest_at: 610 mm, notches: 12}}
pumps: {main: {curve: [[0 L/h, 2.6 m], [2800 L/h, 0 m]], supply: mains}}
lines:
  solids-run:
    from: tank
    to: settler.well
    carries: solids
    pipe: waste-40
    joints: cemented
    pieces:
      - intake: {at: 30 mm, guard: {slots: 40, width: 8 mm, length: 30 mm}}
      - rise: fit
      - bend: 90 deg
      - across: 420 mm
      - through: {wall_of: tank, at: 240 mm, seal: {hole: 63.5 mm}}
      - valve: ball
      - across: 140 mm
      - bend: {angle: 45 deg, joint: pinned}
      - slope: {angle: 45 deg, rise: fit}
      - bend: 45 deg
      - outlet: {at: 390 mm, facing: level}
  lift:
    from: settler
    to: tank
    pipe: waste-40
    pieces:
      - intake: {at: 500 mm}
      - pump: main
      - rise: fit
      - bend: 90 deg
      - across: 600 mm
      - outlet: {at: 800 mm, facing: level}
`

var (
	turnClause = &review.Clause{
		ID: "sharp_bend", Chapter: "lines", Strength: review.Shall,
		Title:   "A line that carries solids shall not turn more than 60 deg at one bend that neither sweeps nor opens to a brush.",
		Why:     "A rod does not go round a sharp bend.",
		Limits:  []review.Limit{{Name: "turn", Quantity: "turn", Most: number(math.Pi / 3)}},
		Sources: []review.Source{{Grade: "common practice", Text: "Published losses of a 90 differ by a factor of 2.5; a middle one is used here"}},
		Cases:   []string{"always"}, Shows: []string{"bend_loss"},
		Example: []review.Change{{Pointer: "/lines/solids-run/pieces/2", Value: system.Map{{Key: "bend", Value: "90 deg"}}}},
	}
	depthClause = &review.Clause{
		ID: "well_depth", Chapter: "settler", Strength: review.Should,
		Title:   "The lip of the inlet well should hang at about half the water depth.",
		Limits:  []review.Limit{{Name: "fraction", Quantity: "lip_depth_fraction", Least: number(0.4), Most: number(0.6)}},
		Sources: []review.Source{{Grade: "published", Text: "The clause lists three that disagree"}},
		Cases:   []string{"run_clean", "run_worst"},
	}
	powerClause = &review.Clause{
		ID: "residual_current", Chapter: "safety", Strength: review.Shall, Safety: true,
		Title:   "Mains power shall be behind a residual-current device of 30 mA or less.",
		Caution: "Unplug everything before hands go into the water.",
		Limits:  []review.Limit{{Name: "trip", Quantity: "residual_current", Most: number(0.03)}},
		Sources: []review.Source{{Grade: "from memory", Text: "IEC 60364-4-41"}},
		Cases:   []string{"always"}, Asks: []string{"fixing_grade"},
	}
	speedClause = &review.Clause{
		ID: "moves_solids", Chapter: "lines", Strength: review.Should,
		Title:   "A line that carries solids should run at 0.2 m/s or more.",
		Limits:  []review.Limit{{Name: "speed", Quantity: "velocity", Least: number(0.2)}},
		Sources: []review.Source{{Grade: "project judgement"}},
		Cases:   []string{"run_worst"},
	}
	silentClause = &review.Clause{ID: "drain_preload", Chapter: "settler", Strength: review.Shall, Title: "A cuff shall press the drain down."}
)

func number(x float64) *float64 { return &x }

// catalogue has its quantities in the order in which tables show them.
var catalogue = working.Catalogue{
	Quantities: []working.Definition{
		{Name: "flow", Title: "flow", Symbol: "Q", Kind: quantity.Flow, Of: "each line", Formula: "as stated"},
		{Name: "velocity", Title: "speed", Symbol: "V", Kind: quantity.Velocity, Of: "each line", Formula: "4 Q/(pi D^2)", Source: "continuity", Sure: "derived"},
		{Name: "turn", Title: "turn", Symbol: "a", Kind: quantity.Angle, Of: "each bend"},
		{Name: "bend_loss", Title: "head lost in the bend", Symbol: "h", Kind: quantity.Head},
		{Name: "lip_depth_fraction", Title: "lip, share of the water depth", Kind: quantity.Number, Range: "flat floors"},
		{Name: "residual_current", Title: "current at which the safety switch trips", Kind: quantity.Current, Of: "the mains"},
	},
	Facts: []working.FactDefinition{{Name: "fixing_grade", Title: "grade of the fixings", Words: []string{"A2", "A4"}, Of: "each settler"}},
	Sets:  []working.Named{{Name: "solids_lines", Title: "lines that carry solids"}},
	Cases: []working.Named{{Name: "run_clean", Title: "the pump runs, all walls clean"}},
}

// definition finds a row of the catalogue, or makes one up for what is not shown by title.
func definition(name string, kind quantity.Kind) working.Definition {
	for _, d := range catalogue.Quantities {
		if d.Name == name {
			return d
		}
	}
	return working.Definition{Name: name, Title: name, Kind: kind}
}

// bench is a ledger to which numbers are given, not worked out.
type bench struct{ *working.Ledger }

func (b bench) give(subject, name, in, water string, kind quantity.Kind, v working.Value) *working.Node {
	a := working.Address{Subject: subject, Name: name, Case: in, Water: water}
	return b.Take(a, definition(name, kind), "/"+subject, working.Row("figure", kind, v, "/"+subject, "these tests", "invented"))
}

func (b bench) running(subject, name string, kind quantity.Kind, clean, fouled float64) {
	b.give(subject, name, working.RunClean, "usual", kind, working.Exactly(clean))
	b.give(subject, name, working.RunWorst, "usual", kind, working.Exactly(fouled))
}

// sample is a review with a finding of every sort.
func sample(t *testing.T) *review.Review {
	t.Helper()
	s, problems := system.Read("bench.yaml", []byte(loopFile))
	for _, p := range problems {
		t.Errorf("%v", p)
	}
	if s == nil {
		t.FailNow()
	}
	b := bench{working.NewLedger()}
	litres := 1.0 / 3600e3
	b.running("lift", "flow", quantity.Flow, 1360*litres, 1355*litres)
	b.running("solids-run", "flow", quantity.Flow, 1360*litres, 1355*litres)
	b.running("tank", "water_level", quantity.Length, 0.918, 0.942)
	b.running("tank", "freeboard", quantity.Length, 0.352, 0.328)
	b.running("settler", "water_level", quantity.Length, 0.918, 0.918)
	b.running("settler", "freeboard", quantity.Length, 0.112, 0.112)
	b.running("solids-run", "head_loss", quantity.Head, 0.0152, 0.0241)
	for i, p := range s.Line("solids-run").Pieces {
		z, _ := p.To.Value()
		b.give(p.ID(), "height", working.Always, "", quantity.Length, working.Exactly(z))
		b.running(p.ID(), "head_loss", quantity.Head, 0.0001*float64(i), 0.0002*float64(i))
	}
	speed := b.give("solids-run", "velocity", working.RunWorst, "low", quantity.Velocity, working.Within(0.25, 0.18, 0.3))
	turn := b.give("solids-run/2", "turn", working.Always, "", quantity.Angle, working.Exactly(math.Pi/2))
	loss := b.give("solids-run/2", "bend_loss", working.RunWorst, "usual", quantity.Head, working.Within(0.0057, 0.0041, 0.009))
	b.Take(working.Address{Subject: "settler", Name: "residence", Case: working.Always}, definition("residence", quantity.Time), "/vessels/settler",
		working.Assume("share of the volume in use", quantity.Fraction, working.Within(0.8, 0.6, 0.9), "/vessels/settler/in_use", "a table of these tests", "from memory"))
	lip := b.give("settler", "lip_depth_fraction", working.RunWorst, "usual", quantity.Number, working.Exactly(0.65))
	b.Note(working.Fact{Subject: "settler", Name: "fixing_grade", Word: "A4", At: "/vessels/settler/well"})

	b.scenes()

	about := func(c *review.Clause, subject, on, at string, n *working.Node, verdict review.Verdict) *review.Judgement {
		j := &review.Judgement{Clause: c, Subject: subject, On: on, At: at, Verdict: verdict, Limit: c.Limits[0], Name: c.Limits[0].Quantity}
		d := definition(j.Name, "")
		j.Title, j.Kind = d.Title, d.Kind
		if n != nil {
			j.Value, _ = n.Value()
			j.Node, j.When = n, n.Address.State()
		}
		return j
	}
	small := func(piece string) *review.Judgement {
		j := about(turnClause, piece, "solids-run", "/lines/solids-run/pieces/7", nil, review.Met)
		j.Value, j.When = working.Exactly(math.Pi/4), "always"
		return j
	}
	grade := &review.Judgement{
		Clause: depthClause, Subject: "settler", Fact: true, Name: "fixing_grade", Title: "grade of the fixings",
		Word: "A4", Wanted: []string{"plastic", "A4"}, Verdict: review.Met, At: "/vessels/settler/well", When: "always",
	}
	mains := about(powerClause, "mains", "", "/mains", nil, review.Undetermined)
	mains.Missing = []string{"/mains/residual_current"}
	r := review.New(s, b.Ledger, catalogue, []*review.Clause{turnClause, depthClause, powerClause, speedClause, silentClause}, []*review.Judgement{
		about(speedClause, "solids-run", "", "/lines/solids-run", speed, review.Met),
		about(turnClause, "solids-run/2", "solids-run", "/lines/solids-run/pieces/2", turn, review.NotMet),
		small("solids-run/7"), small("solids-run/9"),
		about(depthClause, "settler", "", "/vessels/settler/well/lip_at", lip, review.NotMet),
		grade, mains,
	})
	for _, f := range r.Findings {
		switch f.Clause {
		case turnClause:
			f.Shows = []*working.Node{loss}
			f.Remedies = []review.Remedy{{
				Text: "two 45s with 90 mm of pipe between them", Then: review.Then{Title: "head lost in the bend", Kind: quantity.Head, Value: 0.0033},
				Edits: []system.Edit{{Op: system.Splice, Pointer: "/lines/solids-run/pieces/2", Value: []any{system.Map{{Key: "bend", Value: "45 deg"}}}}},
			}}
		case depthClause:
			f.Remedies = []review.Remedy{
				{Text: "raise the lip 90 mm, to 305 above the floor", Edits: []system.Edit{{Pointer: "/vessels/settler/well/lip_at", Value: "305 mm"}}},
				{Text: "lower the crest", Edits: []system.Edit{{Pointer: "/vessels/settler/weir", Value: "x"}}},
			}
		}
	}
	return r
}

// scenes gives the sample something of everything that a scene can come to.
func (b bench) scenes() {
	const pump = "/pumps/main"
	follow := func(s working.Scene, most, ends float64) {
		s.Lasted = 7200
		s.Reached = []working.Reached{
			{Subject: "tank", Began: 0.942, Most: most, Least: ends, Ends: ends, Rim: 1.27},
			{Subject: "settler", Began: 0.918, Most: 0.918, Least: 0.91, Ends: 0.91, Rim: 1.03},
		}
		b.Follow(s)
	}
	give := func(subject, name, in, fault string, kind quantity.Kind, x float64) {
		a := working.Address{Subject: subject, Name: name, Case: in, Fault: fault}
		b.Take(a, definition(name, kind), "/"+subject, working.Row("figure", kind, working.Exactly(x), "/"+subject, "these tests", "invented"))
	}
	air := working.Happened{At: 723, Subject: "settler", What: working.DrawsAir}
	spill := func(at float64, vessel string) working.Happened {
		return working.Happened{At: at, Subject: vessel, What: working.Spills, OrLater: at > 500}
	}
	follow(working.Scene{Case: "one_blocked", Fault: "solids-run blocked", Subject: "solids-run", At: "/lines/solids-run", Happened: []working.Happened{spill(402, "tank"), air}}, 1.272, 1.2)
	give("solids-run", "to_floor", "one_blocked", "solids-run blocked", quantity.Volume, 0.0484)
	follow(working.Scene{Case: "one_blocked", Fault: "lift blocked", Subject: "lift", At: "/lines/lift"}, 0.942, 0.91)
	follow(working.Scene{Case: "stopped", Fault: "siphon break open", Subject: "pumps", At: "/pumps"}, 0.942, 0.9)
	give("tank", "static_level", "stopped", "siphon break open", quantity.Length, 0.9)
	give("tank", "tank_kept", "stopped", "siphon break open", quantity.Fraction, 0.936)
	follow(working.Scene{Case: "stopped", Fault: "siphon break blocked", Subject: "pumps", At: "/pumps"}, 0.942, 0.7)
	give("tank", "tank_kept_capped", "stopped", "siphon break blocked", quantity.Fraction, 0.51)
	for _, f := range []string{"solids-run open", "solids-run open, vents capped"} {
		follow(working.Scene{Case: "open_joint", Fault: f, Subject: "solids-run", At: "/lines/solids-run/pieces/7", Happened: []working.Happened{air}}, 0.942, 0.9)
		give("solids-run", "to_floor", "open_joint", f, quantity.Volume, 0.1836)
	}
	follow(working.Scene{Case: "rain", Fault: "rain", Subject: "rain", At: "/site/under", Reason: "it takes more steps than are followed", Happened: []working.Happened{spill(600, "tank"), spill(600, "settler")}}, 1.28, 1.28)
	for _, f := range []string{"solids-run/5 shut", "lift/1 shut"} {
		b.Follow(working.Scene{Case: "wrong_valve", Fault: f, Subject: f[:len(f)-5], At: pump, Missing: []working.Gap{{Pointer: pump + "/dry_below"}, {Why: "the flow divides"}}})
	}
	follow(working.Scene{Case: "restart", Fault: "start", Subject: "pumps", At: "/pumps"}, 0.951, 0.942)
	give("settler", "start_cover", "restart", "start", quantity.Length, 0.124)
}
