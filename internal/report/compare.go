package report

import (
	"dryfit/internal/compare"
	"dryfit/internal/review"
	"dryfit/internal/system"
)

// Compared is what came of two versions of one file.
type Compared struct {
	Path       string // below the two folders; empty where two files were named
	From       string // path that it had in the first folder, where it was moved
	Was, Now   Version
	Same       bool                // both hold the same bytes
	New        *review.Review      // of a file that is only on the present side
	Comparison *compare.Comparison // nil where a side cannot be read, is not there, or both are the same
}

// Version is one side of a comparison.
type Version struct {
	Name     string // as it was named: a file, or a path of a revision
	Absent   bool   // there is no such file on this side
	Unread   string // why it cannot be opened
	Problems []system.Problem
}

func (v Version) unreadable() bool { return v.Unread != "" || len(v.Problems) > 0 }

// Status is the exit status that a comparison asks for. That a file cannot be reviewed does
// not count where it was so before, letter for letter, nor where it can be now.
func (c Compared) Status() int {
	switch {
	case c.Now.Absent:
		return review.NothingToAct
	case c.Was.Unread != "" || c.Now.Unread != "" || len(c.Now.Problems) > 0 && !c.Same:
		return review.Unreadable
	case c.Comparison != nil && c.Comparison.Worse() || len(c.open()) > 0:
		return review.Act
	}
	return review.NothingToAct
}

// open is what stands open in a new file.
func (c Compared) open() []compare.Judged {
	if c.New == nil {
		return nil
	}
	return compare.Open(c.New)
}

// Comparing is what all comparisons of one call have in common.
type Comparing struct {
	Was, Now string // as they were named in the call
	AsOf     string // day on which permits were held
	All      bool   // nothing is left out for its length
	Look     Options
}

// MostRemedies is for how many findings remedies are shown, the first to act on first.
const MostRemedies = 10

// mostMoved is how many rows of one table are shown, and mostWorse of what got worse.
const (
	mostMoved = 12
	mostWorse = 30
)

func (o Comparing) most(rows int) int {
	if o.All {
		return 1 << 30
	}
	return rows
}

// comparedStatus is the highest of some comparisons.
func comparedStatus(list []Compared) int {
	out := review.NothingToAct
	for _, c := range list {
		out = max(out, c.Status())
	}
	return out
}

// offered is the findings that got worse whose remedies are shown.
func (c Compared) offered() []*review.Finding {
	list := c.Comparison.Findings()
	return list[:min(len(list), MostRemedies)]
}
