// Package judge holds what was worked out about a loop against the written book.
//
// [Load] reads clauses, which are Rego modules with their texts, limits and
// sources in one METADATA block each, and checks them against the catalogue of
// quantities, facts, sets, relations and cases: a clause that names anything else
// does not load. [Book.Judge] then turns a ledger into one document, evaluates
// every clause on it and gives back judgements with their workings.
//
// Clauses may come from strangers. They have no network, file, clock, environment
// or random number, no function that can build a long text or a long number, a
// limit on time and one on memory. A clause that meets a limit is an error and
// never a verdict. One of a house is loaded and judged by itself: where it fails, that
// is listed, and everything else is judged as if it were not there.
//
// [Examine] and [Try] hold the clauses of a house to what is asked of those of the book,
// and run their tests; [Draft] begins one.
package judge
