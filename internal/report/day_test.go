package report

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/survey"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// daySample is an invented day of two tanks and one settler. With one temperature
// all columns are the same; what is left out is unknown.
func daySample(t *testing.T, same bool, unknown string) (*system.System, *working.Ledger) {
	t.Helper()
	s, problems := system.Read("bench.yaml", []byte(strings.Replace(loopFile, "status: for-review\n", "status: for-review\nsite: {unattended: 64 h}\n", 1)))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	b := bench{working.NewLedger()}
	for set, of := range map[string][]string{"the_water": {"water"}, "stocked_tanks": {"tank", "nursery"}, "settlers": {"settler"}, "nitrifying": {"biofilter", "raft"}} {
		b.Put(set, of...)
	}
	give := func(subject, name, in string, kind quantity.Kind, x, spread float64) {
		for k, w := range working.Waters {
			y := x * (1 + 0.3*float64(k))
			if same {
				y = x
			}
			a := working.Address{Subject: subject, Name: name, Case: in, Water: w}
			n := working.Row("figure", kind, working.Within(y, y*(1-spread), y*(1+spread)), "/"+subject, "these tests", "invented")
			if name == unknown {
				n = working.Unknown("figure", kind, "/fish/0/protein", "")
			}
			b.Take(a, definition(name, kind), "/"+subject, n)
		}
	}
	const gram = 0.001 / 86400
	for name, grams := range map[string]float64{"feed_a_day": 100, "ammonia_made": 3.3, "oxygen_used": 90, "carbon_dioxide_made": 80, "alkalinity_used": 23, "solids_made": 25} {
		give("water", name, working.Always, quantity.FeedRate, grams*gram, 0)
	}
	give("biofilter", "nitrifies", working.Always, quantity.FeedRate, 5*gram, 0.5)
	give("raft", "nitrifies", working.Always, quantity.FeedRate, gram, 0.5)
	give("water", "nitrification", working.Always, quantity.FeedRate, 6*gram, 0.5)
	give("water", "nitrification_share", working.Always, quantity.Number, 0.55, 0.5)
	give("water", "oxygen_full", working.Always, quantity.Concentration, 0.008, 0)
	give("water", "alkalinity_fall", working.Always, quantity.Concentration, 0.011, 0)
	give("water", "alkalinity_lasts", working.Always, quantity.Time, 400*86400, 0)
	give("water", "alkalinity_left", "unattended", quantity.Concentration, 0.03, 0)
	give("settler", "solids_caught", working.RunClean, quantity.FeedRate, 10*gram, 0)
	give("settler", "capture_all", working.RunClean, quantity.Fraction, 0.39, 0.4)
	give("settler", "sludge_a_day", working.RunClean, quantity.Flow, 0.7e-3/86400, 0)
	give("settler", "sludge_days", working.RunClean, quantity.Time, 30*86400, 0)
	give("water", "solids_passed_on", working.RunClean, quantity.FeedRate, 15*gram, 0)
	give("water", "bed_feed", working.Always, quantity.ArealFeed, 40*gram, 0)
	for i, tank := range []string{"tank", "nursery"} {
		n := float64(i + 1)
		give(tank, "ammonia_level", working.RunLeast, quantity.Concentration, 0.0005*n, 0)
		give(tank, "poisonous_ammonia", working.RunLeast, quantity.Concentration, 0.000003*n, 0)
		give(tank, "oxygen_need", working.Always, quantity.FeedRate, 40*gram/n, 0)
		give(tank, "oxygen_need_peak", working.Always, quantity.FeedRate, 60*gram/n, 0)
		give(tank, "oxygen_by_flow", working.RunLeast, quantity.FeedRate, 50*gram, 0)
		give(tank, "oxygen_by_air", working.RunLeast, quantity.FeedRate, 99*gram, 0)
		give(tank, "oxygen_level", working.RunLeast, quantity.Concentration, 0.006, 0)
		give(tank, "stocking_density", working.RunLeast, quantity.Stocking, 8*n, 0)
		give(tank, "time_to_danger", "power_cut", quantity.Time, 5400*n, 0.4)
		give(tank, "time_with_backup", "power_cut", quantity.Time, 5400*n*(3*n-2), 0.4) // the nursery alone has any
		for name, minutes := range map[string]float64{"time_at_60": 14, "time_at_5": 180, "time_at_2": 450} {
			give(tank, name, "power_cut", quantity.Time, 60*minutes, 0)
		}
	}
	for name, v := range map[string]struct {
		kind quantity.Kind
		x    float64
	}{"ph_highest": {quantity.Number, 7.2}, "carbon_dioxide": {quantity.Concentration, 0.0158}, "water_used": {quantity.Flow, 26.6e-3 / 86400}, "water_used_share": {quantity.Fraction, 0.011}} {
		b.give("water", name, working.Always, "", v.kind, working.Exactly(v.x))
	}
	return s, b.Ledger
}

func dayText(t *testing.T, s *system.System, l *working.Ledger, o Options) (string, bool) {
	t.Helper()
	var b bytes.Buffer
	complete, err := Day(&b, s, l, o)
	if err != nil {
		t.Fatal(err)
	}
	return b.String(), complete
}

func TestDay(t *testing.T) {
	for name, c := range map[string]struct {
		same    bool
		unknown string
		o       Options
	}{
		"day.txt": {o: Options{Width: 80}}, "day_us.txt": {o: Options{Width: 80, Units: quantity.US}},
		"day_wide.txt": {o: Options{Width: 140, Both: true}}, "day_alike.txt": {same: true, o: Options{Width: 80}},
		"day_open.txt": {unknown: "ammonia_made", o: Options{Width: 80, Colour: true}},
	} {
		golden(t, name, func(b *bytes.Buffer) error {
			s, l := daySample(t, c.same, c.unknown)
			complete, err := Day(b, s, l, c.o)
			if complete != (c.unknown == "") {
				t.Errorf("%s: complete is %v", name, complete)
			}
			return err
		})
	}
}

// Without fish and beds there is no day; with fish of which nothing is known one
// paragraph says what to find.
func TestNoDay(t *testing.T) {
	s, l := daySample(t, false, "")
	l.Sets["the_water"] = nil
	if got, _ := dayText(t, s, l, Options{}); got != "" || HasDay(l) || HasDay(nil) {
		t.Errorf("%q", got)
	}
	bare, problems := system.Read("bench.yaml", []byte(loopFile))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	got, complete := dayText(t, bare, survey.Survey(bare), Options{Width: 80})
	if complete || !strings.Contains(got, "? Nothing of it can be said yet. Find and give `feed`") || strings.Contains(got, "g/d") {
		t.Errorf("complete %v:\n%s", complete, got)
	}
}

var temperatures = regexp.MustCompile(`(?m)^ +in water at .*$`)

// The day of every loop of the examples keeps to its columns, says what is missing
// when it shows a ?, and stands in the report before the levels.
func TestDayOfTheExamples(t *testing.T) {
	files, err := filepath.Glob("../../testdata/systems/*.yaml")
	if err != nil || len(files) < 5 {
		t.Fatalf("%v, %d files", err, len(files))
	}
	read := 0
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		s, problems := system.Read(file, data)
		if len(problems) > 0 {
			continue // made to show mistakes
		}
		read++
		l := survey.Survey(s)
		for _, o := range []Options{{Width: 80}, {Width: 80, Units: quantity.US}, {Width: 140}, {Width: 80, Both: true}} {
			got, complete := dayText(t, s, l, o)
			for _, row := range strings.Split(got, "\n") {
				if width(row) > max(80, o.Width) || strings.Contains(row, "NaN") || strings.Contains(row, "Inf") || strings.Contains(row, "...") {
					t.Errorf("%s: %q", file, row)
				}
			}
			if open := strings.Contains(got, " ? ") || strings.Contains(got, "\n  ? "); open == complete {
				t.Errorf("%s: complete is %v of\n%s", file, complete, got)
			}
			if n := len(temperatures.FindAllString(got, -1)); n != 1 {
				t.Errorf("%s has %d lines of temperatures", file, n)
			}
			if rows := strings.Count(got, "\n"); filepath.Base(file) == "quarry-road.yaml" && !o.Both && o.Units == quantity.Metric && rows >= 45 {
				t.Errorf("the page has %d rows", rows)
			}
		}
		page := text(t, &review.Review{System: s, Ledger: l}, Options{Width: 80})
		if at, levels := strings.Index(page, "\nA DAY OF FISH "), strings.Index(page, "\nLEVELS "); at < 0 || levels >= 0 && levels < at {
			t.Errorf("%s: the day stands at %d and the levels at %d", file, at, levels)
		}
	}
	if read < 5 {
		t.Errorf("only %d files were read", read)
	}
}

// The two answers that people give for a power cut, minutes and hours, stand in one
// sentence beside the density to which each belongs.
func TestMinutesAndHours(t *testing.T) {
	s, l := daySample(t, true, "")
	got, _ := dayText(t, s, l, Options{Width: 80})
	flat := strings.Join(strings.Fields(got), " ")
	m := regexp.MustCompile(`those of tank, now at 8 kg/m3, would last (\d+) min at 60 kg/m3, ([\d.]+) h at 5 kg/m3 and ([\d.]+) h at 2 kg/m3`).FindStringSubmatch(flat)
	if m == nil {
		t.Fatalf("not said in\n%s", flat)
	}
	var x []float64
	for _, text := range m[1:] {
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			t.Fatal(err)
		}
		x = append(x, v)
	}
	if !(x[0]/60 < x[1] && x[1] < x[2]) {
		t.Errorf("%v", x)
	}
}
