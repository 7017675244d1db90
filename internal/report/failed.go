package report

import (
	"strings"

	"dryfit/internal/review"
)

// What is said of the clauses of a house by which a loop could not be judged, in every form the same.

// failedSaid is one of them, with why.
func failedSaid(f review.Failure) string {
	return "the clause " + f.Clause + " of the house could not be judged: " + strings.TrimRight(f.Why, ".")
}

// failures is all of them, a sentence each; empty without one.
func failures(s *review.Summary) []string {
	var out []string
	for _, f := range s.Failed {
		out = append(out, sentence(capital(failedSaid(f))))
	}
	return out
}

// failedRecord is one of them as JSON.
type failedRecord struct {
	Clause string `json:"clause"`
	Why    string `json:"why"`
}

func failedRecords(s *review.Summary) []failedRecord {
	var out []failedRecord
	for _, f := range s.Failed {
		out = append(out, failedRecord{f.Clause, f.Why})
	}
	return out
}

func failedOf(records []failedRecord) []review.Failure {
	var out []review.Failure
	for _, r := range records {
		out = append(out, review.Failure{Clause: r.Clause, Why: r.Why})
	}
	return out
}
