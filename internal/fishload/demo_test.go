package fishload_test

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"dryfit/internal/survey"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// demo is the demo with some edits: pointer, value, pointer, value and so on.
func demo(t *testing.T, edits ...any) figures {
	t.Helper()
	const file = "../../testdata/systems/quarry-road.yaml"
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	s, problems := system.Read(file, data)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	var made []system.Edit
	for i := 0; i+1 < len(edits); i += 2 {
		made = append(made, system.Edit{Op: system.Set, Pointer: edits[i].(string), Value: edits[i+1]})
	}
	if s, problems = s.Edited(made...); len(problems) > 0 {
		t.Fatal(problems)
	}
	return figures{survey.Survey(s)}
}

type figures struct{ l *working.Ledger }

// at is a number by its address, "subject.name@case, water".
func (f figures) at(t *testing.T, address string) float64 {
	t.Helper()
	a := addressOf(t, address)
	n := f.l.Find(a)
	if n == nil {
		t.Fatalf("there is no %s", address)
	}
	v, ok := n.Value()
	if !ok || math.IsNaN(v.X) || math.IsInf(v.X, 0) {
		t.Fatalf("%s has no number: %v", address, n.Gaps())
	}
	return v.X
}

func addressOf(t *testing.T, text string) working.Address {
	t.Helper()
	quantity, state, ok := strings.Cut(text, "@")
	dot := strings.LastIndex(quantity, ".")
	if !ok || dot < 0 {
		t.Fatalf("%q is no address", text)
	}
	a := working.Address{Subject: quantity[:dot], Name: quantity[dot+1:]}
	a.Case, a.Water, _ = strings.Cut(state, ", ")
	return a
}

// The ways in which a number may go as something grows.
const (
	rises = iota
	risesOrStays
	falls
	fallsOrStays
)

func holds(way int, before, after float64) bool {
	slack := 1e-9 * math.Max(math.Abs(before), math.Abs(after))
	switch way {
	case rises:
		return after > before+slack
	case risesOrStays:
		return after >= before-slack
	case falls:
		return after < before-slack
	}
	return after <= before+slack
}

// runs holds a row of demos against the ways in which their numbers must go.
func runs(t *testing.T, row []figures, ways map[string]int) {
	t.Helper()
	for address, way := range ways {
		for i := 1; i < len(row); i++ {
			if a, b := row[i-1].at(t, address), row[i].at(t, address); !holds(way, a, b) {
				t.Errorf("%s goes from %v to %v at step %d", address, a, b, i)
			}
		}
	}
}

// The demo from 14 to 28 degC, its three temperatures alike and its feed the same.
func TestTheDemoGetsWarmer(t *testing.T) {
	var row []figures
	for c := 14; c <= 28; c++ {
		warm := fmt.Sprintf("%d degC", c)
		row = append(row, demo(t, "/water/temperature/low", warm, "/water/temperature/usual", warm, "/water/temperature/high", warm, "/fish/0/feed", "40 g/d"))
	}
	runs(t, row, map[string]int{
		"water.oxygen_full@always, usual":             falls,
		"tank.oxygen_need@always, usual":              rises,
		"tank.oxygen_need_peak@always, usual":         rises,
		"tank.oxygen_share@run_least, usual":          rises,
		"tank.oxygen_share_at_ease@run_least, usual":  rises,
		"tank.oxygen_level@run_least, usual":          falls,
		"tank.time_to_danger@power_cut, usual":        falls,
		"tank.time_to_danger@air_pump_fails, usual":   falls,
		"tank.time_with_backup@power_cut, usual":      fallsOrStays,
		"tank.cut_share@power_cut, usual":             risesOrStays,
		"water.nitrification@always, usual":           risesOrStays,
		"water.nitrification_share@always, usual":     fallsOrStays,
		"tank.ammonia_share@run_least, usual":         fallsOrStays,
		"settler.capture_settleable@run_clean, usual": rises,
		"fish/0.warm_room@always":                     falls,
		"fish/0.cold_room@always":                     rises,
	})
	for i := 1; i < len(row); i++ {
		poisonous := func(f figures) float64 {
			return f.at(t, "tank.poisonous_ammonia@run_least, usual") / f.at(t, "tank.ammonia_level@run_least, usual")
		}
		if a, b := poisonous(row[i-1]), poisonous(row[i]); !holds(rises, a, b) {
			t.Errorf("the poisonous share goes from %v to %v", a, b)
		}
	}
}

// At one temperature all three waters of the year are the same water.
func TestOneTemperatureIsOneWater(t *testing.T) {
	f := demo(t, "/water/temperature/low", "20 degC", "/water/temperature/usual", "20 degC", "/water/temperature/high", "20 degC")
	for _, n := range f.l.Nodes() {
		if n.Address.Water != "usual" || n.Address.Subject != "tank" && n.Address.Subject != "water" || n.Address.Name == "bed_feed_enough" {
			continue
		}
		v, ok := n.Value()
		for _, w := range []string{"low", "high"} {
			a := n.Address
			a.Water = w
			other := f.l.Find(a)
			if other == nil {
				t.Errorf("there is no %v", a)
				continue
			}
			if o, known := other.Value(); known != ok || math.Abs(o.X-v.X) > 1e-9*math.Abs(v.X) {
				t.Errorf("%v is %v, and %v usually", a, o.X, v.X)
			}
		}
	}
}

// More fish on more feed help none of oxygen, ammonia, alkalinity and time.
func TestMoreFishNeverHelp(t *testing.T) {
	var row []figures
	for _, share := range []float64{0.5, 0.8, 1, 1.1, 1.5, 2, 3} {
		g := func(x float64) string { return fmt.Sprintf("%.6f g/d", x*share) }
		row = append(row, demo(t, "/fish/0/mass", fmt.Sprintf("%.6f kg", 9.5*share),
			"/fish/0/feed/0/amount", g(38), "/fish/0/feed/1/amount", g(120), "/fish/0/feed/2/amount", g(120)))
	}
	ways := map[string]int{}
	for _, w := range []string{"low", "usual", "high"} {
		for name, way := range map[string]int{
			"tank.oxygen_share@run_least": rises, "tank.oxygen_share_at_ease@run_least": rises, "tank.oxygen_level@run_least": falls,
			"tank.ammonia_level@run_least": rises, "tank.ammonia_share@run_least": rises, "tank.poisonous_ammonia@run_least": rises, "tank.ammonia_flow_share@run_least": rises,
			"water.nitrification_share@always": rises, "water.nitrate_rise@always": risesOrStays, "water.bed_feed_share@always": rises,
			"water.alkalinity_lasts@always": falls, "water.alkalinity_fall@always": rises, "water.base_share@always": falls, "water.alkalinity_left@unattended": fallsOrStays,
			"tank.time_to_danger@power_cut": falls, "tank.time_with_backup@power_cut": fallsOrStays, "tank.time_to_danger@air_pump_fails": falls,
			"tank.stocking_density@run_least": rises, "tank.density_share@run_least": rises,
		} {
			ways[name+", "+w] = way
		}
	}
	runs(t, row, ways)
}

// What is bought for the fish does not hurt them.
func TestMoreOfItNeverHurts(t *testing.T) {
	for name, c := range map[string]struct {
		pointer string
		values  []any
		ways    map[string]int
	}{
		"media": {"/vessels/biofilter/media/volume", []any{"20 L", "50 L", "70 L", "90 L", "140 L"}, map[string]int{
			"water.nitrification@always, low": rises, "water.nitrification_share@always, high": falls, "tank.ammonia_share@run_least, usual": falls, "tank.poisonous_ammonia@run_least, high": falls}},
		"surface": {"/vessels/biofilter/media/surface", []any{"200 m2/m3", "500 m2/m3", "800 m2/m3"}, map[string]int{
			"water.nitrification@always, usual": risesOrStays, "tank.ammonia_share@run_least, usual": fallsOrStays}},
		"air": {"/air/stones/0/flow", []any{"1 L/min", "5 L/min", "10 L/min", "12 L/min"}, map[string]int{
			"tank.oxygen_by_air@run_least, low": rises, "tank.oxygen_share@run_least, high": falls, "tank.oxygen_level@run_least, high": rises,
			"tank.time_to_danger@power_cut, high": risesOrStays, "tank.time_to_danger@air_pump_fails, high": risesOrStays}},
		"stones": {"/air/stones/0/count", []any{1, 2, 3, 4}, map[string]int{
			"tank.oxygen_share@run_least, usual": falls, "air.air_shared@always": rises}},
		"backup air": {"/backup_air/flow", []any{"1 L/min", "5 L/min", "15 L/min", "30 L/min", "60 L/min"}, map[string]int{
			"tank.backup_oxygen@power_cut, high": risesOrStays, "tank.time_with_backup@power_cut, high": risesOrStays, "tank.cut_share@power_cut, high": fallsOrStays}},
		"battery": {"/backup_air/lasts", []any{"1 min", "30 min", "2 h", "8 h", "20 h"}, map[string]int{
			"tank.time_with_backup@power_cut, low": risesOrStays, "tank.time_with_backup@power_cut, high": risesOrStays}},
		"water in the sump": {"/vessels/sump/water/running", []any{"150 mm", "190 mm", "230 mm"}, map[string]int{
			"water.alkalinity_fall@always, usual": falls, "water.alkalinity_lasts@always, usual": rises, "tank.time_to_danger@air_pump_fails, usual": rises,
			"water.nitrate_rise@always, usual": fallsOrStays, "water.ammonium_chloride@always": rises, "tank.oxygen_share@run_least, usual": fallsOrStays}},
		"alkalinity": {"/water/alkalinity/usual", []any{"20 mg/L CaCO3", "30 mg/L CaCO3", "60 mg/L CaCO3", "80 mg/L CaCO3"}, map[string]int{
			"water.alkalinity_lasts@always, usual": rises, "water.alkalinity_left@unattended, usual": risesOrStays, "water.carbon_dioxide@always": rises}},
		"bed": {"/vessels/raft/crop", []any{system.Map{{Key: "kind", Value: "leafy"}, {Key: "area", Value: "1 m2"}}, system.Map{{Key: "kind", Value: "leafy"}, {Key: "area", Value: "2 m2"}}, system.Map{{Key: "kind", Value: "leafy"}, {Key: "area", Value: "3 m2"}}}, map[string]int{
			"water.bed_feed_share@always, usual": falls, "water.nitrate_rise@always, usual": fallsOrStays}},
		"height": {"/site/altitude", []any{"0 m", "310 m", "1000 m", "2000 m", "3000 m"}, map[string]int{
			"water.oxygen_full@always, low": falls, "water.oxygen_full@always, high": falls, "tank.oxygen_share@run_least, usual": rises, "tank.time_to_danger@power_cut, usual": falls}},
		"pH": {"/water/pH/high", []any{7.0, 7.2, 7.6, 8.0}, map[string]int{
			"tank.poisonous_ammonia@run_least, high": rises, "water.ph_under_band@always": falls, "tank.ammonia_level@run_least, high": fallsOrStays}},
	} {
		t.Run(name, func(t *testing.T) {
			var row []figures
			for _, value := range c.values {
				row = append(row, demo(t, c.pointer, value))
			}
			runs(t, row, c.ways)
		})
	}
}

// A tank that is wider, with the same fish, gives them more time and no less of anything.
func TestALargerTankNeverHurts(t *testing.T) {
	runs(t, []figures{demo(t, "/vessels/tank/form/cylinder/inside", "1350 mm", "/vessels/tank/form/cylinder/inside_top", "1360 mm"),
		demo(t, "/vessels/tank/form/cylinder/inside", "1450 mm", "/vessels/tank/form/cylinder/inside_top", "1460 mm"),
		demo(t, "/vessels/tank/form/cylinder/inside", "1650 mm", "/vessels/tank/form/cylinder/inside_top", "1660 mm")}, map[string]int{
		"tank.stocking_density@run_least, usual":    falls,
		"tank.time_to_danger@power_cut, usual":      rises,
		"tank.time_with_backup@power_cut, high":     rises,
		"tank.time_to_danger@air_pump_fails, usual": rises,
		"water.alkalinity_lasts@always, usual":      rises,
		"tank.oxygen_share@run_least, usual":        fallsOrStays,
		"tank.ammonia_share@run_least, usual":       fallsOrStays,
	})
}
