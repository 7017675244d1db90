package site

import (
	"math"
	"testing"
)

// The floor that bases cover, by hand: a drum of 600 mm with a wall of 5 mm, and a box of 1.2 by 0.8 m.
func TestBases(t *testing.T) {
	near(t, "drum", RoundBase(0.6, 0.005), 0.292247, 1e-6) // 0.61^2 pi/4
	near(t, "box", BoxBase(1.2, 0.8, 0.01), 1.0004, 1e-12) // 1.22 x 0.82
	near(t, "wide stand", Covered(2, 0.3, 0.4), 2, 0)
	near(t, "narrow stand", Covered(0.5, 0.3, 0.4), 0.7, 1e-12)
}

// The demo's stands are 1.5 m square, twice 0.6 m square and 2.1 by 1.3 m, all wider than what
// stands on them, and its sump of 1.1 by 0.8 m stands on the floor.
func TestFootprint(t *testing.T) {
	const stands, sump = 1.5*1.5 + 2*0.6*0.6 + 2.1*1.3, 1.1 * 0.8
	extra := func(form map[string]any) map[string]any {
		return map[string]any{"/vessels/extra": map[string]any{"role": "store", "form": form}}
	}
	for _, c := range []struct {
		name  string
		edits map[string]any
		want  float64
	}{
		{"as it is", nil, stands + sump},
		{"two sumps", map[string]any{"/vessels/sump/count": 2}, stands + 2*sump},
		{"a wall of the sump", map[string]any{"/vessels/sump/form/box/wall": "10 mm"}, stands + 1.12*0.82},
		{"a sump wider at its rim", map[string]any{"/vessels/sump/form/box/length_top": "1.2 m", "/vessels/sump/form/box/width_top": "700 mm"}, stands + 1.2*0.8},
		{"one stand for two", map[string]any{"/vessels/settler/stand": "raft-stand"}, stands - 0.6*0.6 + sump},
		{"two that reach over the edges of one", map[string]any{"/vessels/settler/stand": "biofilter-stand"}, // 474.8 and 504.8 mm across
			stands - 2*0.6*0.6 + math.Pi/4*(0.4748*0.4748+0.5048*0.5048) + sump},
		{"a stand shorter than its bed", map[string]any{"/stands/raft-stand/length": "300 mm"}, stands - 2.1*1.3 + 2.022*1.222 + sump},
		{"a round one", extra(map[string]any{"cone_bottom": map[string]any{"inside": "500 mm", "inside_top": "520 mm", "height": "600 mm", "cone_height": "200 mm"}}), stands + sump + math.Pi/4*0.52*0.52},
		{"a pipe", extra(map[string]any{"lying_pipe": map[string]any{"inside": "100 mm", "length": "3 m", "wall": "3 mm"}}), stands + sump + 3.006*0.106},
		{"a prism", extra(map[string]any{"prism": map[string]any{"area": "0.6 m2", "height": "800 mm"}}), stands + sump + 0.6},
		{"its volumes alone", extra(map[string]any{"measured": map[string]any{"height": "620 mm", "volumes": []any{[]any{"0 mm", "0 L"}, []any{"620 mm", "200 L"}}}}), math.NaN()},
		{"no form", map[string]any{"/vessels/extra": map[string]any{"role": "store"}}, math.NaN()},
		{"no width of a stand", map[string]any{"/stands/tank-stand/width": nil}, math.NaN()},
		{"no length of the sump", map[string]any{"/vessels/sump/form/box/length": nil}, math.NaN()},
	} {
		x := worth(t, with(t, demo, c.edits), "site", "footprint")
		if math.IsNaN(c.want) != math.IsNaN(x) || math.Abs(x-c.want) > 1e-9 {
			t.Errorf("%s: %v m2, not %v", c.name, x, c.want)
		}
	}
}
