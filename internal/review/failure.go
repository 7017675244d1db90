package review

import "slices"

// Failure is a clause of a house by which a loop could not be judged. The clauses of the
// book have judged it all the same.
type Failure struct {
	Clause  string // its id
	Why     string
	Stopped bool // at a bound of time or of memory
}

// HasFailed says that the loop could not be judged by a clause.
func (s *Summary) HasFailed(c *Clause) bool {
	return slices.ContainsFunc(s.Failed, func(f Failure) bool { return c.Own && f.Clause == c.ID })
}

// Stopped says that a clause was stopped at a bound of time or of memory.
func (s *Summary) Stopped() bool {
	return slices.ContainsFunc(s.Failed, func(f Failure) bool { return f.Stopped })
}

// Fail enters the clauses by which the loop could not be judged. They are not silent:
// nobody knows whether there is anything in the loop that they are about.
func (s *Summary) Fail(failed []Failure) {
	s.Failed = failed
	s.Silent = slices.DeleteFunc(s.Silent, s.HasFailed)
}
