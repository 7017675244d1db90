package judge

import (
	"errors"
	"fmt"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// Draft is a clause of a house with its four tests, to be filled in. It loads and its tests hold as
// it stands; [Examine] says what is still to be written. What it measures is a quantity of the
// catalogue.
func Draft(c working.Catalogue, chapter, clause, of string) (text, tests string, err error) {
	for _, name := range []string{chapter, clause} {
		if !id.MatchString(name) {
			return "", "", fmt.Errorf("%.60q is no name for a clause or a chapter; write at most 48 small letters, digits and underscores, a letter first", name)
		}
	}
	n := namesOf(c)
	d, known := n.quantities[of]
	if !known {
		return "", "", errors.New(unknown("quantity", of, sorted(n.quantities)) + "; `dryfit quantities` lists them")
	}
	limit, err := quantity.Parse(d.Kind, d.Kind.Example())
	if err != nil {
		return "", "", fmt.Errorf("an example of %s: %w", of, err)
	}
	fill := strings.NewReplacer("CHAPTER", chapter, "CLAUSE", clause, "QUANTITY", of, "TITLE", d.Title, "BOUND", d.Kind.Example(),
		"INSIDE", round(limit.SI/2), "LIMIT", round(limit.SI), "OUTSIDE", round(limit.SI*1.001))
	return fill.Replace(draftText), fill.Replace(draftTests), nil
}

const draftText = `# METADATA
# scope: package
# title: "to fill in: what should be, in one sentence with shall, should or may"
# description: "to fill in: why, and what happens where it is not so"
# custom:
#   strength: should # to fill in: shall, should or may, as the title says
#   cases: [always] # to fill in: the states that it is about; those in which there is a value
#   limits:
#     limit: {of: QUANTITY, most: BOUND} # to fill in: least, most or both
#   sources:
#     - {grade: project judgement, text: "to fill in: who says so, and from what experience"}
#   example:
#     - {at: /vessels/tank/height, value: 2 m} # to fill in: edits to a sound file that break this clause
package house.CHAPTER.CLAUSE

import data.vocab

limit := input.limits.CHAPTER.CLAUSE.limit

cases := input.cases.CHAPTER.CLAUSE

# to fill in: the set whose members are judged, each of them, whether or not there is a value for it
judgements contains vocab.held(subject, input.quantities.QUANTITY, cases, limit) if {
	some subject in input.sets.all_vessels
}
`

const draftTests = `package house.CHAPTER.CLAUSE_test

import data.house.CHAPTER.CLAUSE

# What the clause sees: one subject, and what was worked out for it (TITLE).
given(entry) := {
	"limits": data.limits,
	"cases": data.cases,
	"sets": {"all_vessels": ["subject"]},
	"quantities": {"QUANTITY": {"name": "QUANTITY", "of": {"subject": entry}}},
}

verdict(entry) := judgement.verdict if {
	got := CLAUSE.judgements with input as given(entry)
	count(got) == 1
	some judgement in got
}

# Numbers are in SI units: metres, cubic metres, seconds, radians.
value(x) := {"at": "/here", "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

# to fill in: a value with room to spare
test_met if verdict(value(INSIDE)) == "met"

# to fill in: the limit itself, which is met
test_just_inside if verdict(value(LIMIT)) == "met"

# to fill in: a little more than the limit
test_just_outside if verdict(value(OUTSIDE)) == "not met"

# What is not there is neither met nor not met.
test_missing if verdict({"at": "/here", "missing": {"always": ["/gap"]}}) == "undetermined"
`
