package main

import (
	"fmt"

	"dryfit/internal/corpus"
	"dryfit/internal/report"
	"dryfit/internal/review"
)

// reviewer judges by the book, and by the rules of the house that the call or DRYFIT_HOUSE names.
// What is wrong with house rules is printed, and there is no reviewer then.
func (a *app) reviewer(look report.Options) (*corpus.Reviewer, error) {
	name := a.house
	if name == "" {
		name = a.env("DRYFIT_HOUSE")
	}
	return a.reviewerIn(name, look)
}

// reviewerIn is the reviewer by the rules of a house; by the book as it is where none is named.
func (a *app) reviewerIn(name string, look report.Options) (*corpus.Reviewer, error) {
	if name == "" {
		r, err := corpus.NewReviewer()
		if err != nil {
			return nil, fmt.Errorf("the book does not load: %w", err)
		}
		return r, nil
	}
	r, problems, err := corpus.NewHouseReviewer(name)
	switch {
	case err != nil:
		return nil, misusef("the house %s cannot be used: %v", name, err)
	case len(problems) > 0:
		a.status = review.Unreadable
		return nil, report.HouseProblems(a.out, report.ShownFile(problems[0].File), problems, look)
	}
	return r, nil
}

// houseHash is the SHA-256 of the rules of the house; empty without a house.
func houseHash(r *corpus.Reviewer) string {
	if h := r.House(""); h != nil {
		return h.Hash
	}
	return ""
}
