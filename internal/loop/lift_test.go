package loop

import (
	"testing"

	"dryfit/internal/working"
)

// fact is a fact of a subject.
func (r result) fact(subject, name string) *working.Fact {
	r.t.Helper()
	for _, f := range r.l.Facts() {
		if f.Subject == subject && f.Name == name {
			return f
		}
	}
	r.t.Fatalf("there is no fact %s of %s", name, subject)
	return nil
}

const throttledUp = `
      - intake: {at: 50 mm}
      - pump: lift
      - valve: {kind: ball, open: 40 %}
      - rise: fit
      - bend: 90 deg
      - over: {rim_of: tank, at: 850 mm}
      - across: 500 mm
      - outlet: {at: 850 mm, facing: level}`

// What the pump can give is worked out with its valve open, what it gives as the valve stands.
func TestTheReserveIsCountedWithOpenValves(t *testing.T) {
	open, throttled := try(t, trial{}), try(t, trial{up: throttledUp})
	if a, b := throttled.value("up", "flow", "run_clean"), open.value("up", "flow", "run_clean"); a >= b {
		t.Fatalf("throttled it gives %g, open %g", a, b)
	}
	asked := 100 * litreAnHour
	got := throttled.value("up/1", "open_reserve", "run_clean") * asked
	near(t, "flow with the valve open", got, open.value("up", "flow", "run_clean"), 0.01*got) // but for the open valve itself
	near(t, "flow over asked", throttled.value("up/1", "flow_over_asked", "run_least"), throttled.value("up", "flow", "run_least")/asked, 1e-9)
}

func TestLiftAndDutyAreSharesOfTheCurve(t *testing.T) {
	r := try(t, trial{})
	near(t, "lift", r.value("up/1", "lift_share", "run_clean"), (1.15-0.2)/2, 1e-9) // crest 1150 mm, sump 200 mm, shut-off 2 m
	near(t, "duty", r.value("up/1", "duty_share", "run_clean"), r.value("up", "flow", "run_clean")/(1500*litreAnHour), 1e-9)
	near(t, "points", r.always("up/1", "curve_points"), 4, 0)
}

func TestWhatAPumpLeaves(t *testing.T) {
	r := try(t, trial{pump: "{curve: [[0 L/h, 2 m], [1500 L/h, 0 m]], dry_below: 60 mm}"})
	near(t, "cover", r.value("up/1", "pump_cover", "run_clean"), 0.14, 1e-9)
	// with less flow less water stands in the tank, and what is not there stands in the sump
	if least := r.value("up/1", "pump_cover", "run_least"); least <= 0.14 || least > 0.15 {
		t.Errorf("cover at the least flow is %v", least)
	}
	r = try(t, trial{})
	r.gap("up/1", "pump_cover", "run_least", "dry_below")
}

// A round tank 1 m wide.
func TestTurnoverIsVolumeOverFlow(t *testing.T) {
	r := try(t, trial{})
	depth := r.value("tank", "water_level", "run_least") - 0.3
	near(t, "time", r.value("tank", "turnover_time", "run_least"), depth*3.14159265/4/r.value("up", "flow", "run_least"), 0.01)
}

func TestAValveBeforeThePumpThrottlesIt(t *testing.T) {
	before := `
      - intake: {at: 50 mm}
      - valve: ball
      - pump: lift
      - rise: fit
      - bend: 90 deg
      - over: {rim_of: tank, at: 850 mm}
      - across: 500 mm
      - outlet: {at: 850 mm, facing: level}`
	r := try(t, trial{up: before})
	if f := r.fact("up/2", "throttled_before"); f.Word != "yes" || f.At != "/lines/up/pieces/1" {
		t.Errorf("%+v", f)
	}
	if got := try(t, trial{}).word("up/1", "throttled_before"); got != "no" {
		t.Errorf("without one: %q", got)
	}
}
