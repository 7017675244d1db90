package judge

import (
	"context"
	"io/fs"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/working"
	"dryfit/rules"
)

// catalogue is what the first seven clauses of the book read, and no more.
func catalogue() working.Catalogue {
	q := func(name string, kind quantity.Kind) working.Definition {
		return working.Definition{Name: name, Kind: kind, Title: strings.ReplaceAll(name, "_", " ")}
	}
	n := func(names ...string) (out []working.Named) {
		for _, name := range names {
			out = append(out, working.Named{Name: name, Title: strings.ReplaceAll(name, "_", " ")})
		}
		return out
	}
	yesNo := []string{"yes", "no"}
	return working.Catalogue{
		Quantities: []working.Definition{
			q("lip_depth_fraction", quantity.Fraction),
			q("drain_offset_ratio", quantity.Fraction), q("cuff_force", quantity.Force), q("cuff_force_left", quantity.Force),
			q("drain_tilt", quantity.Angle),
			q("turn", quantity.Angle), q("bend_radius_ratio", quantity.Number),
			q("bend_loss", quantity.Head), q("bend_loss_as_two_45", quantity.Head), q("bend_loss_as_sweep", quantity.Head),
			q("flow_reserve", quantity.Number), q("capacity", quantity.Flow), q("flow", quantity.Flow),
			q("head_loss", quantity.Head), q("water_level", quantity.Length),
			q("chloride_share", quantity.Number), q("ph_margin", quantity.Number),
			q("residual_current", quantity.Current),
		},
		Facts: []working.FactDefinition{
			{Name: "opens_to_brush", Title: "whether a turn opens to a hand or a brush", Words: yesNo},
			{Name: "fixing_wet_fit", Title: "whether the material may be wetted", Words: yesNo},
			{Name: "fixing_acid_fit", Title: "whether the material needs no lowest pH", Words: yesNo},
			{Name: "mains_power", Title: "whether anything takes mains power", Words: yesNo},
			{Name: "residual_current_fitted", Title: "whether a residual-current device is fitted", Words: yesNo},
		},
		Sets:      n("radial_flow_settlers", "cuffed_drains", "solids_lines", "running_gravity_lines", "wetted_fixings", "mains_supplies"),
		Relations: n("bends_of", "line_of"),
		Cases:     n("always", "run_clean", "run_least", "run_worst", "stopped"),
	}
}

// firstSeven is the part of the book that the tests of this package stand on. The
// book grows; what is tried here does not change with it.
var firstSeven = func() fstest.MapFS {
	few := fstest.MapFS{}
	for _, name := range []string{"vocab/vocab.rego",
		"book/lines/carries_flow.rego", "book/lines/sharp_bend.rego", "book/lines/throttle_reserve.rego",
		"book/materials/wetted_fasteners.rego", "book/safety/residual_current.rego",
		"book/settler/drain_preload.rego", "book/settler/well_depth.rego"} {
		text, err := fs.ReadFile(rules.Book, name)
		if err != nil {
			panic(err)
		}
		few[name] = &fstest.MapFile{Data: text}
	}
	return few
}()

func theBook(t testing.TB) *Book {
	t.Helper()
	b, err := Load(catalogue(), firstSeven)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// bench enters numbers and facts into a ledger by hand.
type bench struct {
	*working.Ledger
	of map[string]working.Definition
}

func newBench() bench {
	b := bench{working.NewLedger(), map[string]working.Definition{}}
	for _, d := range catalogue().Quantities {
		b.of[d.Name] = d
	}
	return b
}

func (b bench) number(subject, name, state string, v working.Value) {
	a := working.Address{Subject: subject, Name: name}
	a.Case, a.Water, _ = strings.Cut(state, "/")
	d := b.of[name]
	d.Name = name
	b.Take(a, d, "/by/hand", working.Assume("a value by hand", d.Kind, v, "/by/hand", "", ""))
}

func (b bench) gap(subject, name, state, pointer string) {
	a := working.Address{Subject: subject, Name: name}
	a.Case, a.Water, _ = strings.Cut(state, "/")
	d := b.of[name]
	b.Take(a, d, pointer, working.Unknown("a missing value", d.Kind, pointer, ""))
}

func (b bench) word(subject, name, word string) {
	b.Note(working.Fact{Subject: subject, Name: name, Word: word, At: "/by/hand"})
}

// soundLoop is a loop of two lines in which every clause is met.
func soundLoop() bench {
	b := newBench()
	b.Put("radial_flow_settlers", "settler")
	for _, state := range []string{"run_clean/low", "run_clean/high", "run_least", "run_worst/low", "run_worst/high"} {
		b.number("settler", "lip_depth_fraction", state, working.Within(0.5057, 0.49, 0.52))
	}
	b.Put("cuffed_drains", "settler-waste/0")
	b.Relate("line_of", "settler-waste/0", "settler-waste")
	b.number("settler-waste/0", "drain_offset_ratio", "always", working.Exactly(0.2))
	b.Put("solids_lines", "solids-run")
	b.Relate("bends_of", "solids-run", "solids-run/2", "solids-run/6")
	for bend, degrees := range map[string]float64{"solids-run/2": 90, "solids-run/6": 45} {
		b.number(bend, "turn", "always", working.Exactly(degrees*rad))
		b.number(bend, "bend_radius_ratio", "always", working.Within(0.9, 0.7, 1.1))
	}
	b.word("solids-run/2", "opens_to_brush", "yes")
	b.word("solids-run/6", "opens_to_brush", "no")
	b.Put("running_gravity_lines", "solids-run")
	b.number("solids-run", "flow_reserve", "run_worst/low", working.Exactly(4.28))
	b.number("solids-run", "flow_reserve", "run_worst/high", working.Exactly(4.31))
	b.Put("wetted_fixings", "settler/well/fixings")
	b.word("settler/well/fixings", "fixing_wet_fit", "yes")
	b.word("settler/well/fixings", "fixing_acid_fit", "yes")
	b.number("settler/well/fixings", "chloride_share", "always", working.Within(0.12, 0.06, 0.12))
	b.Put("mains_supplies", "mains")
	b.word("mains", "mains_power", "yes")
	b.word("mains", "residual_current_fitted", "yes")
	b.number("mains", "residual_current", "always", working.Exactly(0.03))
	return b
}

const rad = 3.14159265358979 / 180

func judge(t testing.TB, b *Book, l *working.Ledger) []*review.Judgement {
	t.Helper()
	got, _, err := b.Judge(context.Background(), l)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func of(all []*review.Judgement, clause, subject string) *review.Judgement {
	i := slices.IndexFunc(all, func(j *review.Judgement) bool { return j.Clause.ID == clause && j.Subject == subject })
	if i < 0 {
		return nil
	}
	return all[i]
}
