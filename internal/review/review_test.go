package review

import (
	"math"
	"testing"

	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

func of(x float64) *float64 { return &x }

func TestShareOfTheLimit(t *testing.T) {
	for _, c := range []struct {
		what        string
		value       float64
		least, most *float64
		share       float64
		known       bool
	}{
		{"upper limit", 2.6, nil, of(3.1), 2.6 / 3.1, true},
		{"upper limit, nothing used", 0, nil, of(1), 0, true},
		{"lower limit", 0.25, of(0.2), nil, 0.8, true},
		{"lower limit, nothing there", 0, of(30), nil, 0, false},
		{"negative room is no small share", -5, of(30), nil, 0, false},
		{"a limit of zero has no share", 0.5, of(0), nil, 0, false},
		{"middle of a band", 0.5, of(0.4), of(0.6), 0, true},
		{"edge of a band", 0.6, of(0.4), of(0.6), 1, true},
		{"outside a band", 0.7, of(0.4), of(0.6), 2, true},
		{"below a band", 0.3, of(0.4), of(0.6), 2, true},
	} {
		j := Judgement{Verdict: Met, Value: working.Exactly(c.value), Limit: Limit{Least: c.least, Most: c.most}, Kind: quantity.Number}
		if share, known := j.OfLimit(); known != c.known || math.Abs(share-c.share) > 1e-12 {
			t.Errorf("%s: %v, %v", c.what, share, known)
		}
	}
	for _, j := range []Judgement{
		{Verdict: Met, Kind: quantity.Temperature, Value: working.Exactly(293), Limit: Limit{Most: of(300)}},
		{Verdict: Met, Name: "ph_low", Value: working.Exactly(6.4), Limit: Limit{Least: of(6)}},
		{Verdict: Met, Fact: true},
		{Verdict: Undetermined, Value: working.Exactly(1), Limit: Limit{Most: of(2)}},
	} {
		if _, known := j.OfLimit(); known {
			t.Errorf("%+v has a share", j)
		}
	}
}

func TestMarginIsToTheNearerLimit(t *testing.T) {
	j := Judgement{Verdict: NotMet, Value: working.Exactly(0.7), Limit: Limit{Least: of(0.4), Most: of(0.6)}}
	if m, ok := j.Margin(); !ok || math.Abs(m+0.1) > 1e-12 {
		t.Errorf("margin %v, %v", m, ok)
	}
	if _, ok := (&Judgement{Verdict: Met, Fact: true}).Margin(); ok {
		t.Error("a fact has a margin")
	}
}

func TestWithinTheSpread(t *testing.T) {
	j := Judgement{Verdict: Met, Value: working.Within(2.9, 2.5, 3.3), Limit: Limit{Most: of(3.1)}}
	if !j.WithinSpread() {
		t.Error("3.1 lies between 2.5 and 3.3")
	}
	j.Value = working.Within(2.9, 2.5, 3.1)
	if j.WithinSpread() {
		t.Error("a limit at the edge of the spread is not inside it")
	}
}

func TestExitStatus(t *testing.T) {
	open := func(s Strength, v Verdict, safety bool) *Finding {
		return &Finding{Judgement: &Judgement{Clause: &Clause{Strength: s, Safety: safety}, Verdict: v}}
	}
	for _, c := range []struct {
		what   string
		status string
		heldTo Strength
		f      *Finding
		want   int
	}{
		{"nothing open", "for-review", Shall, nil, NothingToAct},
		{"shall not met", "for-review", Shall, open(Shall, NotMet, false), Act},
		{"shall undetermined", "for-review", Shall, open(Shall, Undetermined, false), Act},
		{"should not met", "for-review", Shall, open(Should, NotMet, false), NothingToAct},
		{"should held to", "for-review", Should, open(Should, NotMet, false), Act},
		{"may held to should", "for-review", Should, open(May, NotMet, false), NothingToAct},
		{"concept, undetermined", "concept", Shall, open(Shall, Undetermined, false), NothingToAct},
		{"concept, not met", "concept", Shall, open(Shall, NotMet, false), Act},
		{"concept, safety undetermined", "concept", Shall, open(Shall, Undetermined, true), Act},
	} {
		r := Summary{Status: c.status}
		if c.f != nil {
			r.Findings = []*Finding{c.f}
		}
		if got := r.ExitStatus(c.heldTo); got != c.want {
			t.Errorf("%s: %d", c.what, got)
		}
	}
}

func TestSafetyComesFirstThenShallThenWhatUsesMost(t *testing.T) {
	make := func(id string, s Strength, safety bool, v Verdict, x float64) *Finding {
		return &Finding{Judgement: &Judgement{Clause: &Clause{ID: id, Strength: s, Safety: safety}, Verdict: v,
			Value: working.Exactly(x), Limit: Limit{Most: of(1)}}}
	}
	r := Summary{Findings: []*Finding{
		make("should", Should, false, NotMet, 9), make("unsaid", Shall, false, Undetermined, 0), make("some", Shall, false, NotMet, 2),
		make("much", Shall, false, NotMet, 3), make("safety", Shall, true, NotMet, 1.1)}}
	got := ""
	for _, f := range r.ToDo() {
		got += f.Clause.ID + " "
	}
	if got != "safety much some unsaid should " {
		t.Errorf("the order is %s", got)
	}
}
