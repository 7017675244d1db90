package system

import (
	"strings"
	"testing"
)

func TestKnownKey(t *testing.T) {
	for _, key := range []string{
		"water.pH", "water.pH.low", "vessels.*.stands_at", "vessels.tank.stands_at", "vessels.*.form.cylinder.inside", "vessels.*.lid.kind",
		"pumps.*.curve", "pumps.*.curve.0", "pumps.*.curve.*.1", "lines.*.pieces.3.bend.angle", "fish.*.feed", "fish.0.in", "*", "vessels.*.*",
		"lines.*.pieces.*.valve.positions.winter", "name",
	} {
		if bad, near, known := KnownKey(key); !known || bad+near != "" {
			t.Errorf("%s is not known: %q, the nearest %q", key, bad, near)
		}
	}
	for _, c := range []struct{ key, bad, near string }{
		{"water.ph", "water.ph", "water.pH"},
		{"vesels.*.stands_at", "vesels", "vessels"},
		{"vessels.*.stand_at.x", "vessels.*.stand_at", "vessels.*.stands_at"},
		{"vessels.Tank.stands_at", "vessels.Tank", ""},
		{"vessels.tank.zoo", "vessels.tank.zoo", ""},
		{"name.of", "name.of", ""},
		{"fish.first.feed", "fish.first", ""},
		{"", "", ""},
		{"water..pH", "water.", ""},
	} {
		if bad, near, known := KnownKey(c.key); known || bad != c.bad || near != c.near {
			t.Errorf("%s: %q, the nearest %q, known %v; want %q and %q", c.key, bad, near, known, c.bad, c.near)
		}
	}
	if _, _, known := KnownKey(strings.Repeat("*.", 99) + "*"); known {
		t.Error("a key of 100 parts is known")
	}
}
