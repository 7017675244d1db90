package judge

import "dryfit/internal/review"

// With is the book with other limits and strengths: the same clauses in the same order, of which some were
// changed. Limits are data to the clauses, so everything else is shared.
func (b *Book) With(clauses []*review.Clause) *Book {
	b.must()
	with := *b
	with.clauses = clauses
	with.limits, with.cases = inForce(clauses)
	return &with
}
