package rules

import "embed"

// Book is the written book: the vocabulary in the folder vocab and the clauses in
// the folder book, each beside its test. internal/judge leaves the tests out of
// the running book.
//
//go:embed book vocab
var Book embed.FS
