package review

// Summary is what is said about one file: every judgement, and what is to be acted on.
// It stands without the system and without the workings, so that it can be kept, sent
// to another machine and read back.
type Summary struct {
	File       string
	Name       string
	Status     string
	Judgements []*Judgement // every clause on every subject, in order round the loop
	Findings   []*Finding   // in the same order
	Silent     []*Clause    // clauses that found no subject in this loop
	Failed     []Failure    // clauses of a house by which it could not be judged
	House      *House       // the rules of the house that it was judged by; nil for the book as it is
	Permits    []*Permit    // leave to differ, in the order of the file
	AsOf       string       // the day on which the permits were held; empty without a permit
	Unsought   string       // why no remedies were looked for; empty when they were
	counted    *Tally       // where not all judgements are at hand
}

// ExitStatus is Act when a clause of the strength held to, or a stronger one, is
// open and has no permit that holds. While the file says `status: concept`, an undetermined
// clause that is no safety clause is listed and does not count. A permit that no longer
// serves is something that should be put right: it counts when held to should. A clause by
// which the loop could not be judged always counts, since nobody knows what it would have found.
func (s *Summary) ExitStatus(heldTo Strength) int {
	if len(s.Failed) > 0 {
		return Act
	}
	for _, f := range s.Findings {
		if s.Counts(f, heldTo) {
			return Act
		}
	}
	for _, p := range s.Permits {
		if heldTo == Should && p.Stale() {
			return Act
		}
	}
	return NothingToAct
}

// Counts says that a finding makes the exit status [Act]; see [Summary.ExitStatus].
func (s *Summary) Counts(f *Finding, heldTo Strength) bool {
	binding := f.Clause.Strength == Shall || (heldTo == Should && f.Clause.Strength == Should)
	excused := s.Status == "concept" && f.Verdict == Undetermined && !f.Clause.Safety
	return binding && !excused && f.Permit == nil
}

// Strongest is what to act on first, leave to differ apart; nil when there is nothing.
func (s *Summary) Strongest() *Finding {
	for _, f := range s.ToDo() {
		if f.Permit == nil {
			return f
		}
	}
	return nil
}

// Tightest is the met judgement that uses most of its limit; nil when none has a share. What
// stands just at its limit was chosen so, and is passed over.
func (s *Summary) Tightest() *Judgement {
	var best *Judgement
	most := 0.0
	for _, j := range s.Judgements {
		if j.Verdict != Met {
			continue
		}
		if share, ok := j.OfLimit(); ok && share != 1 && (best == nil || share > most) {
			best, most = j, share
		}
	}
	return best
}

// Tally is how many clauses came to a verdict: the worst of its judgements is a clause's own.
type Tally struct {
	Applying, Met        int
	NotMet, Undetermined map[Strength]int
}

// Counted enters the tally of a summary that no longer has all of its judgements.
func (s *Summary) Counted(t Tally) { s.counted = &t }

// Tally counts the clauses that apply, by verdict and strength.
func (s *Summary) Tally() Tally {
	if s.counted != nil {
		return *s.counted
	}
	worst := map[*Clause]Verdict{}
	for _, j := range s.Judgements {
		if j.Verdict.Worse(worst[j.Clause]) {
			worst[j.Clause] = j.Verdict
		}
	}
	t := Tally{NotMet: map[Strength]int{}, Undetermined: map[Strength]int{}}
	for c, v := range worst {
		t.Applying++
		switch v {
		case Met:
			t.Met++
		case NotMet:
			t.NotMet[c.Strength]++
		default:
			t.Undetermined[c.Strength]++
		}
	}
	return t
}
