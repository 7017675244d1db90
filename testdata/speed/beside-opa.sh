#!/usr/bin/env bash
# Judges 1 000 varied loops, from what was worked out to judgements, and has OPA's own command
# evaluate the same clauses on the same documents, ready-made. Both load the book first and
# have the cores that there are. Needs Go alone, and some minutes: OPA's command is built in
# the version of go.mod, and all loops are worked out, which is not counted.
#
#	testdata/speed/beside-opa.sh [NUMBER OF LOOPS]
set -euo pipefail
cd "$(dirname "$0")/../.."
number=${1:-1000}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

opa=github.com/open-policy-agent/opa
GOBIN=$work go install "$opa@$(go list -m -f '{{.Version}}' "$opa")"
mkdir "$work/book" "$work/documents"
cp -r rules/vocab rules/book testdata/speed/every_clause.rego "$work/book"
find "$work/book" -name '*_test.rego' -delete

go test ./internal/corpus -run '^$' -bench BesideOPA -benchtime 1x -timeout 1h \
	-documents "$work/documents" -loops "$number" | tee "$work/ours"

TIMEFORMAT=%R
{ time "$work/opa" exec -b "$work/book" --decision beside/judgements "$work/documents" >"$work/answers"; } 2>"$work/theirs"

awk -v theirs="$(tail -n 1 "$work/theirs")" -v answers="$(grep -c '"verdict"' "$work/answers")" '
	/^BenchmarkBesideOPA/ {
		for (i = 3; i < NF; i += 2) found[$(i + 1)] = $i
		ours = found["ns/op"] / 1e9
		printf "dryfit %.2f s for %d judgements, opa exec %.2f s for %d: ratio %.2f\n", ours, found["judgements"], theirs, answers, ours / theirs
		exit found["judgements"] != answers
	}' "$work/ours"
