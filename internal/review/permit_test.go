package review

import (
	"slices"
	"testing"

	"dryfit/internal/system"
)

func permitted(d system.Deviation, asOf string) *Summary {
	depth, bend, water := &Clause{ID: "well_depth", Strength: Shall}, &Clause{ID: "sharp_bend", Strength: Shall}, &Clause{ID: "open_water", Strength: Shall, Safety: true}
	judged := func(c *Clause, subject string, v Verdict) *Judgement {
		return &Judgement{Clause: c, Subject: subject, Verdict: v}
	}
	s := &Summary{Judgements: []*Judgement{
		judged(depth, "settler", NotMet), judged(depth, "other", Met), judged(bend, "solids-run/3", Undetermined), judged(water, "sump", NotMet),
	}}
	s.Findings = []*Finding{{Judgement: s.Judgements[0]}, {Judgement: s.Judgements[2]}, {Judgement: s.Judgements[3]}}
	s.Hold(asOf, []*Clause{depth, bend, water, {ID: "lip_scour"}}, d)
	return s
}

func TestAPermitHoldsFromItsFirstToItsLastDayForJustWhatItNames(t *testing.T) {
	leave := func(clause, subject, since, until string) system.Deviation {
		return system.Deviation{Clause: clause, Subject: subject, Since: since, Until: until}
	}
	for _, c := range []struct {
		what string
		d    system.Deviation
		asOf string
		want Standing
		near []string
	}{
		{"in force", leave("well_depth", "settler", "", "2027-01-31"), "2026-03-14", Holds, nil},
		{"first day", leave("well_depth", "settler", "2026-03-14", "2027-01-31"), "2026-03-14", Holds, nil},
		{"last day", leave("well_depth", "settler", "", "2027-01-31"), "2027-01-31", Holds, nil},
		{"the day after", leave("well_depth", "settler", "", "2027-01-31"), "2027-02-01", RunOut, nil},
		{"the day before", leave("well_depth", "settler", "2026-03-15", "2027-01-31"), "2026-03-14", NotYet, nil},
		{"undetermined", leave("sharp_bend", "solids-run/3", "", "2027-01-31"), "2026-03-14", Holds, nil},
		{"a part of what is judged", leave("sharp_bend", "solids-run", "", "2027-01-31"), "2026-03-14", NoSubject, []string{"solids-run/3"}},
		{"another subject", leave("well_depth", "set", "", "2027-01-31"), "2026-03-14", NoSubject, []string{"other", "settler"}},
		{"met", leave("well_depth", "other", "", "2027-01-31"), "2026-03-14", NotNeeded, nil},
		{"safety", leave("open_water", "sump", "", "2027-01-31"), "2026-03-14", Refused, nil},
		{"misspelt", leave("wel_depth", "settler", "", "2027-01-31"), "2026-03-14", NoClause, []string{"well_depth"}},
		{"like nothing", leave("qqqqqqqqqqqq", "settler", "", "2027-01-31"), "2026-03-14", NoClause, nil},
		{"nothing to judge", leave("lip_scour", "settler", "", "2027-01-31"), "2026-03-14", NoSubject, nil},
	} {
		s := permitted(c.d, c.asOf)
		p := s.Permits[0]
		if p.Standing != c.want || !slices.Equal(p.Near, c.near) {
			t.Errorf("%s: it is %q near %v, want %q near %v", c.what, p.Standing, p.Near, c.want, c.near)
		}
		open := 0
		for _, f := range s.Findings {
			if f.Permit != nil {
				open++
			}
		}
		if holds := c.want == Holds; (open == 1) != holds {
			t.Errorf("%s: leave for %d findings", c.what, open)
		}
		if s.AsOf != c.asOf {
			t.Errorf("%s: held on %s", c.what, s.AsOf)
		}
	}
}

func TestLeaveChangesTheExitStatusAndNoVerdict(t *testing.T) {
	c := &Clause{ID: "well_depth", Strength: Shall}
	j := &Judgement{Clause: c, Subject: "settler", Verdict: NotMet}
	s := &Summary{Judgements: []*Judgement{j}, Findings: []*Finding{{Judgement: j}}}
	d := system.Deviation{Clause: "well_depth", Subject: "settler", Until: "2026-11-29"}
	if s.ExitStatus(Shall) != Act {
		t.Fatal("without leave there is nothing to act on")
	}
	s.Hold("2026-11-29", []*Clause{c}, d)
	if s.ExitStatus(Should) != NothingToAct || j.Verdict != NotMet || s.Strongest() != nil {
		t.Errorf("with leave the status is %d, the verdict %s", s.ExitStatus(Should), j.Verdict)
	}
	s.Hold("2026-11-30", []*Clause{c}) // the day after
	if s.ExitStatus(Shall) != Act || s.Strongest() == nil {
		t.Error("leave that has run out still counts")
	}
	s.Permits = nil
	s.Hold("2026-11-30", []*Clause{c})
	if s.AsOf != "" {
		t.Error("a day is stamped where there is no permit")
	}
}

// Leave that serves nothing is worth putting right: it counts when held to should.
func TestStaleLeaveIsAFinding(t *testing.T) {
	c := &Clause{ID: "well_depth", Strength: Shall}
	j := &Judgement{Clause: c, Subject: "settler", Verdict: Met}
	s := &Summary{Judgements: []*Judgement{j}}
	s.Hold("2026-11-30", []*Clause{c}, system.Deviation{Clause: "well_depth", Subject: "settler", Until: "2027-11-29"})
	if s.ExitStatus(Shall) != NothingToAct || s.ExitStatus(Should) != Act {
		t.Errorf("%d and %d", s.ExitStatus(Shall), s.ExitStatus(Should))
	}
}
