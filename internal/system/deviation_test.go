package system

import (
	"encoding/json"
	"os"
	"reflect"
	"strings"
	"testing"

	"dryfit/schema"
)

func TestAFileOfPermitsIsHeldToTheSameWordsAsASystemFile(t *testing.T) {
	var whole, beside struct {
		Properties map[string]any `json:"properties"`
		Defs       map[string]any `json:"$defs"`
	}
	if err := json.Unmarshal(schema.System, &whole); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(schema.Permits, &beside); err != nil {
		t.Fatal(err)
	}
	for name, part := range beside.Properties {
		if !reflect.DeepEqual(part, whole.Properties[name]) {
			t.Errorf("%s differs between the two schemas", name)
		}
	}
	for name, part := range beside.Defs {
		if !reflect.DeepEqual(part, whole.Defs[name]) {
			t.Errorf("%s differs between the two schemas", name)
		}
	}
}

func TestPermitsAreReadWithTheirPlaces(t *testing.T) {
	got, problems := ReadPermits("loop.permits.yaml", []byte(`permits:
  - {clause: well_depth, subject: settler, reason: the drum in hand, who: workshop teacher, since: 2026-02-01, until: 2027-01-31}
concessions:
  - {clause: sharp_bend, subject: solids-run/3, reason: built so, who: club board, until: 2026-12-31, instead: it is rodded}
`))
	if len(problems) > 0 || len(got) != 2 {
		t.Fatal(got, problems)
	}
	want := Deviation{
		Concession: true, Clause: "sharp_bend", Subject: "solids-run/3", Reason: "built so", Who: "club board", Until: "2026-12-31",
		Instead: "it is rodded", Pointer: "/concessions/0", Place: Place{"loop.permits.yaml", 4, 5},
	}
	if got[0].Since != "2026-02-01" || got[0].Concession || got[1] != want {
		t.Errorf("%+v", got)
	}
	_, problems = ReadPermits("loop.permits.yaml", []byte("permits:\n  - {clause: Well, subject: settler, reason: r, who: w, until: soon}\nleave: 3\n"))
	if len(problems) != 3 {
		t.Errorf("three mistakes give %v", problems)
	}
	for text, want := range map[string]string{
		" \n": "found nothing: write `permits:`",
		"permits: [{clause: well_depth, subject: settler, reason: r, who: w, since: 2027-06-01, until: 2026-12-31}]": "1:76: found `2027-06-01`, which is after the last day, 2026-12-31",
	} {
		if _, problems := ReadPermits("p.yaml", []byte(text)); len(problems) != 1 || !strings.Contains(problems[0].String(), want) {
			t.Errorf("%q gives %v", text, problems)
		}
	}
}

func TestPermitsOfASystemFileAreNotListedAsNotLookedAt(t *testing.T) {
	data, err := os.ReadFile("../../testdata/systems/everything.yaml")
	if err != nil {
		t.Fatal(err)
	}
	s, problems := Read("everything.yaml", data)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if got := s.Deviations(); len(got) != 2 || got[0].Clause != "throttle_reserve" || !got[1].Concession {
		t.Errorf("%+v", got)
	}
	for _, leaf := range s.NotLooked() {
		if leaf.Pointer() == "/permits/0/reason" {
			t.Error("a permit is called not looked at")
		}
	}
}
