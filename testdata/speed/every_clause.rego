# The entry by which OPA's own command is asked for the judgements of every clause.
package beside

judgements[chapter][clause] := data.book[chapter][clause].judgements
