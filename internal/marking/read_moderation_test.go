package marking

import (
	"reflect"
	"strings"
	"testing"

	"dryfit/internal/system"
)

const soundChanges = `dryfit_moderation: 1
changes:
  - {submission: "07", item: overflow-rate, marks: 4, reason: the working on paper is right, by: workshop teacher, on: 2026-03-20, sha256: 0a1b2c3d4e5f}
  - {submission: "07", marks: 31.25, reason: late by agreement, by: workshop teacher}
  - {submission: "08", item: overflow-rate, marks: 6, reason: the same, by: workshop teacher}
`

func TestSoundModeration(t *testing.T) {
	g, _ := readGuide(soundGuide)
	got, problems := ReadModeration("changes.yaml", []byte(soundChanges), g)
	for _, p := range problems {
		t.Error(p)
	}
	at := func(line int) system.Place { return system.Place{File: "changes.yaml", Line: line, Column: 5} }
	want := []Moderation{
		{Submission: "07", Item: "overflow-rate", Marks: 4, Reason: "the working on paper is right", By: "workshop teacher", On: "2026-03-20", Hash: "0a1b2c3d4e5f", Pointer: "/changes/0", Place: at(3)},
		{Submission: "07", Marks: 31.25, Reason: "late by agreement", By: "workshop teacher", Pointer: "/changes/1", Place: at(4)},
		{Submission: "08", Item: "overflow-rate", Marks: 6, Reason: "the same", By: "workshop teacher", Pointer: "/changes/2", Place: at(5)},
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("%+v, want %+v", got, want)
	}
}

func TestRefusedModeration(t *testing.T) {
	g, _ := readGuide(soundGuide)
	for _, c := range []struct{ name, old, new, want string }{
		{"an item", `"08", item: overflow-rate`, `"08", item: overflow-rat`, "5:30: the item `overflow-rat`, which is not in the guide: the nearest is `overflow-rate`"},
		{"no such item", `"08", item: overflow-rate`, `"08", item: x`, "5:30: the item `x`, which is not in the guide: `dryfit guide` lists the items; for the total, leave `item` out"},
		{"an item twice", `"08"`, `"07"`, "5:5: the item `overflow-rate` of `07` changed again: keep the change that counts"},
		{"a total twice", `"08", item: overflow-rate`, `"07"`, "5:5: the total of `07` changed again: keep the change that counts"},
		{"more than the item", "marks: 4", "marks: 6.5", "3:52: `6.5`, more than the item `overflow-rate` gives: write at most 6"},
		{"more than all items", "31.25", "33", "4:31: `33`, more than all items give: write at most 32"},
		{"no reason", "reason: late by agreement, ", "", "4:5: no `reason`: add the key `reason`, as in `reason: the working on paper is right, the unit was lost in typing`"},
		{"a misspelt key and marks", "item: overflow-rate, marks: 4", "itm: overflow-rate, marks: 40", "3:24: the key `itm`: the nearest key is `item`"},
		{"no reason and too much", "marks: 4, reason: the working on paper is right", "marks: 40", "3:5: no `reason`: add the key `reason`, as in `reason: the working on paper is right, the unit was lost in typing`\n3:52: `40`, more than the item `overflow-rate` gives: write at most 6"},
		{"below zero", "marks: 4, reason", "marks: -1, reason", "3:52: `-1`: write 0 or more"},
		{"no day", "2026-03-20", "20 March", "3:120: `20 March`: not a day of the calendar: write year, month and day, as in `2026-03-14`"},
		{"a guide", "dryfit_moderation", "dryfit_guide", "1:15: a marking guide: give a file of changed marks here, which has the key `dryfit_moderation`"},
		{"nothing", soundChanges, "", "1:1: nothing: write `dryfit_moderation: 1` and under it a list of changes"},
	} {
		if n := strings.Count(soundChanges, c.old); n != 1 {
			t.Errorf("%s: it is there %d times: %s", c.name, n, c.old)
			continue
		}
		list, problems := ReadModeration("changes.yaml", []byte(strings.Replace(soundChanges, c.old, c.new, 1)), g)
		var got []string
		for _, p := range problems {
			got = append(got, strings.Replace(strings.TrimPrefix(p.String(), "changes.yaml:"), "found ", "", 1))
		}
		if text := strings.Join(got, "\n"); text != c.want || list != nil {
			t.Errorf("%s: %d changes and\n%s\nwant\n%s", c.name, len(list), text, c.want)
		}
	}
}
