// Package remedy finds edits to a system file that make a clause met, tries
// them on the whole system, and offers those that make no other shall worse.
package remedy

import (
	"context"

	"dryfit/internal/judge"
	"dryfit/internal/review"
	"dryfit/internal/survey"
	"dryfit/internal/system"
)

// most is how many remedies are offered for one finding.
const most = 3

// Offer looks for remedies for every finding that is not met and adds those that
// hold. What is undetermined has none: a missing number is to be measured, not
// chosen so that a clause is met.
func Offer(ctx context.Context, book *judge.Book, r *review.Review) error {
	return OfferFor(ctx, book, r, r.Findings)
}

// OfferFor is the same for some of its findings only.
func OfferFor(ctx context.Context, book *judge.Book, r *review.Review, findings []*review.Finding) error {
	for _, f := range findings {
		if f.Verdict != review.NotMet {
			continue
		}
		for _, lever := range f.Clause.Levers {
			if len(f.Remedies) == most {
				break
			}
			var tries []proposal
			if err := r.Ledger.Within(ctx, func() { tries = proposals(r, f, lever) }); err != nil {
				return err
			}
			for _, p := range tries {
				then, holds, err := try(ctx, book, r, f, p.edits)
				if err != nil {
					return err
				}
				if holds {
					f.Remedies = append(f.Remedies, review.Remedy{Text: p.text, Then: then, Edits: p.edits})
					break
				}
			}
		}
	}
	return nil
}

// proposal is a set of edits that may clear a finding.
type proposal struct {
	text  string
	edits []system.Edit
}

// proposals lists what a lever suggests, the likeliest first.
func proposals(r *review.Review, f *review.Finding, lever review.Lever) []proposal {
	if lever.Solve != "" {
		return solve(r, f, lever)
	}
	if exchange := exchanges[lever.Replace]; exchange != nil {
		return exchange(r, f, lever.Toward)
	}
	return nil
}

// try works the whole system again with the edits made, and says whether the
// finding is cleared with no other shall worse than before.
func try(ctx context.Context, book *judge.Book, r *review.Review, f *review.Finding, edits []system.Edit) (then review.Then, holds bool, err error) {
	s, problems := r.System.Edited(edits...)
	if len(problems) > 0 {
		return then, false, nil
	}
	ledger, err := survey.Within(ctx, s)
	if err != nil {
		return then, false, err
	}
	judgements, failed, err := book.JudgeBy(ctx, ledger, func(c *review.Clause) bool {
		return !r.HasFailed(c) && (c == f.Clause || c.Strength == review.Shall)
	})
	if err != nil || len(failed) > 0 { // nobody knows what a clause that failed would have found
		return then, false, err
	}
	before, after := open(r.Judgements), open(judgements)
	for key, n := range after {
		if key.shall && n > before[key] {
			return then, false, nil
		}
	}
	key := keyOf(f.Judgement)
	if after[key] >= before[key] {
		return then, false, nil
	}
	return outcome(f, judgements), true, nil
}

// key gathers the judgements of one clause on one part: pieces are renumbered by
// edits, so they are counted and not named.
type key struct {
	clause, part string
	shall        bool
}

func keyOf(j *review.Judgement) key {
	return key{j.Clause.ID, j.Part(), j.Clause.Strength == review.Shall}
}

// open counts the judgements that are not met or undetermined.
func open(judgements []*review.Judgement) map[key]int {
	out := map[key]int{}
	for _, j := range judgements {
		if j.Verdict == review.NotMet || j.Verdict == review.Undetermined {
			out[keyOf(j)]++
		}
	}
	return out
}
