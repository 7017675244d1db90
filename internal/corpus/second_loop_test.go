package corpus_test

import (
	"math"
	"os"
	"regexp"
	"testing"

	"dryfit/internal/review"
	"dryfit/internal/working"
)

// metric finds a number with a metric unit of length, volume, flow, mass, force or temperature.
var metric = regexp.MustCompile(`\d (mm|cm|m|m2|m3|L|L/h|L/min|kg|g|g/d|N|kPa|degC)\b`)

// The greenhouse loop is drawn in inches, has a settler with a cone, and beds with
// standpipes. It is sound, and its file holds no metric size.
func TestTheSecondLoopIsSound(t *testing.T) {
	const name = "inch-loop.yaml"
	data, err := os.ReadFile(systems + name)
	if err != nil {
		t.Fatal(err)
	}
	if found := metric.FindAllString(string(data), -1); len(found) > 0 {
		t.Errorf("it holds metric sizes: %v", found)
	}
	r := reviewed(t, name)
	if r.ExitStatus(review.Should) != review.NothingToAct {
		t.Errorf("the status is %d", r.ExitStatus(review.Should))
	}
	for _, f := range r.Findings {
		t.Errorf("%s on %s is %s: %v %s %v", f.Clause.ID, f.Subject, f.Verdict, f.Value.X, f.Word, f.Missing)
	}
	met := map[string]bool{}
	for _, j := range r.Judgements {
		met[j.Clause.ID] = met[j.Clause.ID] || j.Verdict == review.Met
	}
	for _, clause := range []string{"well_depth", "overflow_rate", "carries_flow", "throttle_reserve", "sharp_bend", "wetted_fasteners", "residual_current"} {
		if !met[clause] {
			t.Errorf("%s is not met on it anywhere", clause)
		}
	}
}

// The overflow rate in the units of the tradition: gallons a minute on a square foot,
// of which 1 is 2.445 m/h (Metcalf & Eddy, Wastewater Engineering, table of
// conversion factors: 1 gal/ft2 min = 2.4448 m/h); ring of 24 in less 8 5/8 in, 2.736 ft2.
func TestTheSecondLoopInItsOwnUnits(t *testing.T) {
	l := reviewed(t, "inch-loop.yaml").Ledger
	worked := func(name string) float64 {
		v, _ := l.Find(working.Address{Subject: "settler", Name: name, Case: working.Always}).Value()
		return v.X
	}
	flow := worked("greatest_inflow") * 15850.323 // gal(US)/min in a m3/s, NIST SP 811
	rate := worked("greatest_overflow_rate") * 3600
	if want := flow / 2.736 * 2.4448; flow < 5 || flow > 8 || math.Abs(rate/want-1) > 0.002 {
		t.Errorf("%v gal/min give %v m/h, and not %v", flow, rate, want)
	}
}
