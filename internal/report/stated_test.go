package report

import (
	"bytes"
	"strings"
	"testing"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// stating is a review of the bench loop with stated and measured numbers; what is
// worked out is invented.
func stating(t *testing.T, list string) *review.Review {
	t.Helper()
	s, problems := system.Read("bench.yaml", []byte(loopFile+list))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	b := bench{working.NewLedger()}
	b.give("settler", "overflow_rate", working.RunClean, "usual", quantity.Velocity, working.Within(0.00202, 0.00198, 0.00205))
	b.give("tank", "stocking_density", working.RunLeast, "usual", quantity.Stocking, working.Within(9.62, 9.52, 9.71))
	b.give("tank", "full_volume", working.Always, "", quantity.Volume, working.Exactly(0.785398))
	b.give("tank", "water_level", working.RunClean, "usual", quantity.Length, working.Within(1.067, 1.06, 1.075))
	b.give("tank", "warmth", working.Always, "", quantity.Temperature, working.Exactly(294.15))
	b.give("lift", "flow", working.RunClean, "usual", quantity.Flow, working.Exactly(1360/3600e3))
	b.Note(working.Fact{Subject: "settler", Name: "fixing_grade", Word: "A4"})
	return review.New(s, b.Ledger, catalogue, nil, nil)
}

const statedList = `stated:
  - {quantity: settler.overflow_rate, case: run_clean, value: 2.6 mm/s, tolerance: 5 %, working: Q over the whole drum}
  - {quantity: settler.overflow_rate, value: 7.3 m/h}
  - {quantity: tank.stocking_density, value: 9.5 kg/m3, tolerance: 0.2 kg/m3}
  - {quantity: tank.full_volume, value: 207.4803 gal(US)}
  - {quantity: tank.full_volume, value: 0.785398 m3}
  - {quantity: tank.full_volume, value: 20 m3}
  - {quantity: tank.full_volume, value: 785 m2}
  - {quantity: tank.water_level, value: 1.1 m}
  - {quantity: tank.warmth, value: 70 degF}
  - {quantity: settler.fixing_grade, value: A2}
  - {quantity: tank.a_name_of_quite_uncommon_length, value: a word or two in place of a number}
measured:
  - {quantity: lift.flow, case: run_clean, value: 1350 L/h, spread: 20 L/h, on: 2026-03-14, by: pupils of year 9, with: bucket and watch}
  - {quantity: lift.flow, case: rain, value: 1350 L/h, note: after the storm}
`

func TestStated(t *testing.T) {
	write := func(o Options) func(*bytes.Buffer) error {
		return func(b *bytes.Buffer) error {
			r := stating(t, statedList)
			return write(b, newPage(r, o).stated(), bodyWidth, o.Colour)
		}
	}
	golden(t, "stated.txt", write(Options{}))
	golden(t, "stated_us.txt", write(Options{Units: quantity.US}))
}

// The head names what there is.
func TestStatedHead(t *testing.T) {
	stated, measured, _ := strings.Cut(statedList, "measured:")
	for list, want := range map[string]string{
		statedList: "STATED AND MEASURED,", stated: "STATED,", "measured:" + measured: "MEASURED,", "": "",
	} {
		lines := newPage(stating(t, list), Options{}).stated()
		if want == "" {
			if len(lines) > 0 {
				t.Error("there is a section on nothing")
			}
			continue
		}
		if got := lines[0].text(); !strings.HasPrefix(got, want) {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// In JSON every entry stands once, as its schema says.
func TestStatedInJSON(t *testing.T) {
	list := []Item{{File: "bench.yaml", Review: stating(t, statedList)}}
	if err := reviewSchema(t).Validate(decoded(t, written(t, list))); err != nil {
		t.Errorf("%#v", err)
	}
	records := recorder{list[0].Review, quantity.Metric}.stated()
	if want := strings.Count(statedList, "quantity:"); len(records) != want {
		t.Fatalf("%d of %d entries", len(records), want)
	}
	for _, r := range records {
		if r.Place.Line == 0 || r.Text == "" || (r.Difference == nil && r.Word == "" && len(r.Missing) == 0) {
			t.Errorf("%+v", r)
		}
	}
	s := string(written(t, list))
	for from, to := range map[string]string{`"how": "stated"`: `"how": "told"`, `"agrees": "tolerance"`: `"agrees": "nearly"`, `"difference": 0.00058`: `"share": true, "other": 0.00058`} {
		if !strings.Contains(s, from) {
			t.Errorf("the review does not hold %s", from)
			continue
		}
		if err := reviewSchema(t).Validate(decoded(t, []byte(strings.Replace(s, from, to, 1)))); err == nil {
			t.Errorf("%s in place of %s passes", to, from)
		}
	}
}
