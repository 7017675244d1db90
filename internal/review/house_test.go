package review

import (
	"slices"
	"testing"
)

func number(x float64) *float64 { return &x }

func TestChangesBySetting(t *testing.T) {
	was := Limit{Name: "fraction", Least: number(0.4), Most: number(0.6)}
	now := func(least float64) Limit { return Limit{Name: "fraction", Least: number(least), Most: number(0.6)} }
	book := []*Clause{
		{ID: "well_depth", Strength: Should, Limits: []Limit{{Name: "other", Most: number(1)}, was}}, {ID: "sharp_bend", Strength: Shall},
	}
	h := &House{Name: "Quarry Road school", Changes: []HouseChange{
		{Clause: "well_depth", Was: was, Now: now(0.42)},
		{Clause: "well_depth", Was: was, Now: now(0.45), Settings: []string{"club", "school"}},
		{Clause: "well_depth", WasStrength: Should, Strength: Shall},
		{Clause: "sharp_bend", WasStrength: Shall, Strength: Should, Settings: []string{"farm"}},
		{Clause: "gone", WasStrength: Shall, Strength: Should},
	}}
	for _, one := range []struct {
		setting string
		least   float64
		bend    Strength
		bears   []Bearing
	}{
		{"", 0.42, Shall, []Bearing{InForce, Elsewhere, InForce, Elsewhere, InForce}},
		{"school", 0.45, Shall, []Bearing{Replaced, InForce, InForce, Elsewhere, InForce}},
		{"farm", 0.42, Should, []Bearing{InForce, Elsewhere, InForce, InForce, InForce}},
	} {
		of := h.Of(one.setting)
		var bears []Bearing
		for _, c := range of.Changes {
			bears = append(bears, c.Bears)
		}
		out := of.Over(book)
		well, bend := out[0], out[1]
		if *well.Limits[1].Least != one.least || *well.Limits[1].Most != 0.6 || *well.Limits[0].Most != 1 || well.Strength != Shall || bend.Strength != one.bend {
			t.Errorf("%s: %+v %v, %v", one.setting, well.Limits, well.Strength, bend.Strength)
		}
		if !slices.Equal(bears, one.bears) {
			t.Errorf("%s: %v", one.setting, bears)
		}
		if one.setting == "school" && len(well.Changed) != 2 {
			t.Errorf("the clause carries %d changes", len(well.Changed))
		}
		if bend != book[1] != (one.setting == "farm") {
			t.Errorf("%s: a clause that is not changed is not the same", one.setting)
		}
	}
	if *book[0].Limits[1].Least != 0.4 || book[0].Strength != Should || h.Changes[0].Bears != "" {
		t.Error("the book or the rules themselves were changed")
	}
	if (*House)(nil).Over(book)[0] != book[0] {
		t.Error("no house changes something")
	}
}

// A change of limit and strength gives way to one for the setting only in what that one names.
func TestAChangeGivesWayInPart(t *testing.T) {
	was, all, special := Limit{Name: "l", Most: number(3)}, Limit{Name: "l", Most: number(2)}, Limit{Name: "l", Most: number(1)}
	h := (&House{Changes: []HouseChange{
		{Clause: "c", Was: was, Now: all, WasStrength: Should, Strength: Shall},
		{Clause: "c", Was: was, Now: special, Settings: []string{"home"}},
	}}).Of("home")
	if h.Changes[0].LimitChanged() || h.Changes[0].Strength != Shall || h.Changes[0].Bears != InForce {
		t.Errorf("%+v", h.Changes[0])
	}
	c := h.Over([]*Clause{{ID: "c", Strength: Should, Limits: []Limit{was}}})[0]
	if *c.Limits[0].Most != 1 || c.Strength != Shall {
		t.Errorf("%+v", c)
	}
}
