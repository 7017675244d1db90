package system

import (
	"strings"
	"testing"
)

func TestGrounds(t *testing.T) {
	s := mustRead(t, "base.yaml", []byte(base+`assumptions:
  - {about: vessels.tank.stands_at, text: the floor is level, basis: it is a new slab}
sources:
  - {about: pumps.lift, text: the maker's sheet}
  - {about: lines.up.pieces.2.rise, text: a tape}
`))
	if all := s.NotLooked(); len(all) == 0 {
		t.Error("nothing is left to look at")
	}
	a, b := s.Assumptions(), s.Sources()
	if len(a) != 1 || a[0] != (Ground{About: "vessels.tank.stands_at", Pointer: "/vessels/tank/stands_at", Text: "the floor is level", Basis: "it is a new slab", At: "/assumptions/0", Place: Place{"base.yaml", 42, 5}}) {
		t.Errorf("assumptions %+v", a)
	}
	if len(b) != 2 || b[1].Pointer != "/lines/up/pieces/2/rise" || b[0].Text != "the maker's sheet" || b[0].Basis != "" {
		t.Errorf("sources %+v", b)
	}
	for _, leaf := range s.NotLooked() {
		if strings.HasPrefix(leaf.Pointer(), "/assumptions") || strings.HasPrefix(leaf.Pointer(), "/sources") {
			t.Errorf("%s was not looked at", leaf.Pointer())
		}
	}
}

func TestGroundsLead(t *testing.T) {
	for about, want := range map[string]string{
		"vessels.tank":                  "",
		"name":                          "",
		"lines.down.pieces.0.through":   "",
		"vessels.tank.stand_at":         "the nearest key is `vessels.tank.stands_at`",
		"vessels.tnak.stands_at":        "the nearest key is `vessels.tank.stands_at`",
		"vessel.tank":                   "the nearest key is `vessels.tank`",
		"tank.stands_at":                "write `vessels.tank.stands_at`",
		"fish.0.feed":                   "write a key of this file with dots, from the top down, as in `fish.0.feed`",
		"lines.down.pieces.5":           "`lines.down.pieces` has 5 elements, counted from 0",
		"lines.down.pieces.first":       "`lines.down.pieces` has 5 elements, counted from 0",
		"pumps.lift.curve":              "the keys below `pumps.lift` are `open_flow` or `shut_off`",
		"name.first":                    "write `name`: there is nothing below it",
		"sources.0":                     "write the key of what it is about, as in `fish.0.feed`",
		"vessels/tank":                  "write a key of this file, with dots from the top down and list elements counted from 0; as in `fish.0.feed`",
		"lines.down.pieces.3.fall.fits": "write `lines.down.pieces.3.fall`: there is nothing below it",
	} {
		_, problems := Read("base.yaml", []byte(base+"sources: [{about: "+about+", text: a tape}]\n"))
		got := ""
		if len(problems) > 0 {
			got = problems[0].Write
		}
		if got != want || len(problems) > 1 || want != "" && problems[0].Pointer != "/sources/0/about" {
			t.Errorf("%s: %v", about, problems)
		}
	}
}

func TestDotted(t *testing.T) {
	for pointer, key := range map[string]string{"": "", "/fish/0/feed": "fish.0.feed", "/water/pH": "water.pH", "/name": "name"} {
		if Dotted(pointer) != key || PointerOf(key) != pointer {
			t.Errorf("%s is %s, and %s is %s", pointer, Dotted(pointer), key, PointerOf(key))
		}
	}
	if got := PointerOf(".a..b."); got != "/a/b" {
		t.Errorf("dots without names between them give %s", got)
	}
}
