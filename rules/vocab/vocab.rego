# METADATA
# scope: package
# title: The words in which clauses are written
# description: |
#   Every function takes what it needs as arguments and always answers: what is not
#   there comes back as "undetermined", so that no subject can drop out of the review.
#
#   A column is one quantity of all its subjects: {"name": ..., "of": {subject: entry}},
#   an entry {"at": pointer, "in": {case: values}, "missing": {case: gaps}}, a value
#   {"value": x, "low": a, "high": b, "when": state}. A column of facts has entries
#   {"at": pointer, "word": ...} or {"at": pointer, "missing": gaps}.
#
#   A judgement holds names, pointers and numbers. Sentences and units are written elsewhere.
package vocab

# Geometry and materials are the same in every state: their values stand under this one case.
always := ["always"]

# The worst value of a subject in the cases, held against {"least": x}, {"most": y} or both.
# A value at its limit is met. One value outside is enough for "not met", whatever else is missing.
held(subject, column, cases, limit) := {
	"subject": subject, "quantity": column.name, "limit": limit, "at": object.get(entry, "at", ""), "verdict": verdict,
	"value": worst.value, "low": worst.low, "high": worst.high, "when": worst.when,
} if {
	entry := column.of[subject]
	[worst, outside] := _worst([value | some name in cases; some value in entry["in"][name]], limit)
	verdict := _verdict(outside, entry, cases)
}

else := {
	"subject": subject, "quantity": column.name, "limit": limit, "at": object.get(entry, "at", ""),
	"verdict": "undetermined", "missing": _gaps(entry, cases),
} if {
	entry := object.get(column.of, subject, {})
}

# The word that a fact has, held against the words wanted.
asked(subject, column, wanted) := {
	"subject": subject, "fact": column.name, "wanted": wanted, "at": object.get(entry, "at", ""),
	"word": word, "verdict": _answered(word, wanted),
} if {
	entry := column.of[subject]
	word := entry.word
}

else := {
	"subject": subject, "fact": column.name, "wanted": wanted, "at": object.get(entry, "at", ""),
	"verdict": "undetermined", "missing": {gap | some gap in object.get(entry, "missing", [])},
} if {
	entry := object.get(column.of, subject, {})
}

# "Or": the first that is met, else the first that is undetermined, else the first that is not met.
any_of(judgements) := judgement if judgement := _first(judgements, "met")

else := judgement if judgement := _first(judgements, "undetermined")

else := judgement if judgement := _first(judgements, "not met")

else := _first(judgements, "does not apply")

# "And": the first that is not met, else the first that is undetermined with the gaps of all of
# them, else the first that is met with a number, else the first that is met with a word.
all_of(judgements) := judgement if judgement := _first(judgements, "not met")

else := _joined([object.remove(judgement, ["missing"]), {"missing": gaps}]) if {
	judgement := _first(judgements, "undetermined")
	gaps := {gap | some other in judgements; some gap in other.missing}
}

else := judgement if {
	judgement := [met | some met in judgements; met.verdict == "met"; met.quantity][0]
}

else := judgement if judgement := _first(judgements, "met")

else := _first(judgements, "does not apply")

# A judgement that does not apply where the excuse is met: then the excuse says why.
excused(judgement, excuse) := _joined([object.remove(excuse, ["verdict"]), {"verdict": "does not apply"}]) if {
	excuse.verdict == "met"
}

else := judgement

# A judgement with the larger thing that its subject is part of, if there is one.
on(judgement, whole) := judgement if whole == ""

else := _joined([judgement, {"on": whole}])

# What the relation gives for a part: the line of a piece. Empty if it gives nothing.
whole(relation, part) := object.get(relation, [part, 0], "")

# A value outside decides, whatever is missing. The second rule says sooner what the third would, of most judgements.
_verdict(outside, entry, cases) := "not met" if outside

else := "met" if {
	count(cases) == 1
	not entry.missing
}

else := "met" if count(_gaps(entry, cases)) == 0

_gaps(entry, cases) := {gap | some name in cases; some gap in _gaps_in(entry, name)}

# The gaps that the column names; where it has neither values nor gaps, the case itself.
_gaps_in(entry, name) := gaps if {
	gaps := entry.missing[name]
}

else := [] if count(entry["in"][name]) > 0

else := [name]

# The value that lies farthest outside, or has the least room left, and whether it lies outside.
_worst(values, limit) := [worst, excess > 0] if {
	least := limit.least
	most := limit.most
	[excess, worst] := max([[max([value.value - most, least - value.value]), value] | some value in values])
}

else := [worst, x > limit.most] if {
	limit.most
	[x, worst] := max([[value.value, value] | some value in values])
}

else := [worst, x < limit.least] if {
	limit.least
	x := min([value.value | some value in values])
	worst := max([value | some value in values; value.value == x])
}

_answered(word, wanted) := "met" if word in wanted

else := "not met"

_first(judgements, verdict) := [judgement | some judgement in judgements; judgement.verdict == verdict][0]

_joined(parts) := {key: value | some part in parts; some key, value in part}
