package report

import (
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/working"
)

// The words for one thing at a time, as an editor shows them beside the file.

// Said is a finding in one line: what was found, what was wanted, how much of the limit is used.
func Said(f *review.Finding, in quantity.System) string { return sentence(safe(capital(said(f, in)))) }

// RemedySaid is one remedy with what comes of it.
func RemedySaid(m review.Remedy, in quantity.System) string { return safe(remedySaid(m, in)) }

// LeaveSaid is the permit that holds, with its reason.
func LeaveSaid(p *review.Permit) string { return safe(leaveSaid(p)) }

// StaleSaid is a permit that serves no more.
func StaleSaid(p *review.Permit) string { return sentence(safe(capital(staleSaid(p)))) }

// FailuresSaid is the clauses of a house by which a loop could not be judged, a sentence each.
func FailuresSaid(s *review.Summary) []string {
	out := failures(s)
	for i := range out {
		out[i] = safe(out[i])
	}
	return out
}

// NodeSaid is a number that was worked out, with its spread; or why there is none.
func NodeSaid(n *working.Node, in quantity.System) string { return safe(nodeText(n, in)) }

// NodeWorked is the formula of a number with the numbers that went into it; empty where it has none.
func NodeWorked(n *working.Node, in quantity.System) string {
	if n.Formula == "" || len(n.Inputs) == 0 {
		return ""
	}
	return safe(workedWords(n, in))
}

// JudgedSaid is what was judged, what was wanted of it, and how much of the limit is used.
func JudgedSaid(j *review.Judgement, in quantity.System) string {
	text := foundWords(j, in) + ", wanted " + wantedWords(j, in)
	if used := usedWords(j, in); used != "" {
		text += ": " + used
	}
	return safe(strings.TrimSuffix(text, ", wanted "))
}
