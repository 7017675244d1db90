package report

import (
	"slices"

	"dryfit/internal/compare"
	"dryfit/internal/quantity"
	"dryfit/internal/review"
)

// comparedHouse says by whose rules the two sides of a comparison were judged, and what these change, a
// sentence each. What is the same on both sides is said once.
func comparedHouse(of Compared, in quantity.System) []string {
	c := of.Comparison
	if c == nil && of.New != nil && of.New.House != nil {
		return append(append([]string{houseHead(of.New.House, in)}, houseInForce(of.New.House, in)...), failures(&of.New.Summary)...)
	}
	if c == nil {
		return nil
	}
	was, now := c.Was.Review.House, c.Now.Review.House
	head := func(h *review.House) string {
		if h == nil {
			return "the book as it is"
		}
		return "the rules of " + houseName(h)
	}
	before, after := houseSays(was, in), houseSays(now, in)
	switch {
	case was == nil && now == nil:
		return nil
	case was != nil && now != nil && was.Hash == now.Hash && slices.Equal(before, after):
		return append(append([]string{sentence("Both are judged by " + head(now))}, after...), failedOnSides(c)...)
	}
	first := "Judged by " + head(now) + ", and before by " + head(was)
	if head(was) == head(now) {
		first = "Judged by " + head(now) + ", which are not in force alike on both sides"
	}
	out := []string{sentence(first)}
	for _, text := range after {
		label := "In force now: "
		if slices.Contains(before, text) {
			label = "In force on both sides: "
		}
		out = append(out, label+text)
	}
	for _, text := range before {
		if !slices.Contains(after, text) {
			out = append(out, "In force before: "+text)
		}
	}
	return append(out, failedOnSides(c)...)
}

// failedOnSides is the clauses of a house by which one side or both could not be judged.
func failedOnSides(c *compare.Comparison) []string {
	var out []string
	was, now := failures(&c.Was.Review.Summary), failures(&c.Now.Review.Summary)
	for _, text := range now {
		out = append(out, "Now: "+text)
	}
	for _, text := range was {
		out = append(out, "Before: "+text)
	}
	return out
}

// The rules of the house on the sides of a comparison, as JSON.
type (
	housePair struct {
		Was *houseSide `json:"was"`
		Now *houseSide `json:"now"`
	}
	houseSide struct {
		Name    string   `json:"name"`
		By      string   `json:"by,omitempty"`
		Hash    string   `json:"sha256"`
		Changes []string `json:"changes"`
		Failed  []string `json:"not_judged,omitempty"`
	}
)

func housePairOf(c *compare.Comparison, in quantity.System) *housePair {
	side := func(s *review.Summary) *houseSide {
		h := s.House
		if h == nil {
			return nil
		}
		return &houseSide{h.Name, h.By, h.Hash, append([]string{}, houseSays(h, in)...), failures(s)}
	}
	pair := &housePair{side(&c.Was.Review.Summary), side(&c.Now.Review.Summary)}
	if pair.Was == nil && pair.Now == nil {
		return nil
	}
	return pair
}
