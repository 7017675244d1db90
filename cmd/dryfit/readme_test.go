package main

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"dryfit/internal/review"
)

// between is the text from one line on up to another one, which is left out.
func between(t *testing.T, text, from, to string) string {
	t.Helper()
	_, rest, found := strings.Cut("\n"+text, "\n"+from)
	rest, _, ends := strings.Cut(rest, "\n"+to)
	if !found || !ends {
		t.Fatalf("there is nothing from %q to %q in\n%s", from, to, text)
	}
	return strings.TrimRight(from+rest, "\n")
}

const page, systems = "../../README.md", "../../testdata/systems/"

// said is what dryfit says, and wants the exit status that a call should have.
func said(t *testing.T, status int, args ...string) string {
	t.Helper()
	var out, err bytes.Buffer
	if got := run(args, nil, &out, &err, func(string) string { return "" }); got != status {
		t.Fatalf("%v: status %d: %s", args, got, err.String())
	}
	return out.String()
}

// readmeShows holds what the page shows, from one line up to another, against what it should.
func readmeShows(t *testing.T, from, to, want string) {
	t.Helper()
	readme, problem := os.ReadFile(page)
	if problem != nil {
		t.Fatal(problem)
	}
	got := between(t, string(readme), from, to)
	if got == want {
		return
	}
	if *update {
		if problem := os.WriteFile(page, []byte(strings.Replace(string(readme), got, want, 1)), 0o644); problem != nil {
			t.Fatal(problem)
		}
		return
	}
	t.Errorf("README.md shows\n%s\nand dryfit says\n%s", got, want)
}

// The page that a newcomer reads first shows what dryfit really says: one part
// of the report on the loop as found, and the end of it without most of the steps.
func TestReadmeShowsTheReport(t *testing.T) {
	out := said(t, review.Act, "review", systems+"quarry-road-as-found.yaml")
	part := between(t, out, "CLEAR-RUN ", "BIOFILTER ")
	closing := between(t, out, "WHAT TO PUT RIGHT", "     Words ")
	head, rest, _ := strings.Cut(closing, "\n     then ")
	third, _, _ := strings.Cut(rest, "\n     then ")
	_, sentences, _ := strings.Cut(rest, "\n\n")
	readmeShows(t, "CLEAR-RUN ", "```", part+"\n\n\n"+head+"\n     then "+third+"\n     ...\n\n"+sentences)
}

// And how the levels of one scene go, which is also among the cases of the report.
func TestReadmeShowsLevels(t *testing.T) {
	const loop = systems + "quarry-road.yaml"
	cases := between(t, said(t, review.NothingToAct, "review", loop), "CASES ", "  a drain left open")
	readmeShows(t, "CASES ", "```", cases+"\n  ...")
	levels := said(t, review.NothingToAct, "levels", loop, "--case", "one_blocked", "--fault", "solids-run blocked")
	readmeShows(t, "SOLIDS-RUN BLOCKED", "```", strings.TrimRight(levels, "\n"))
}

// And a day of fish, down to where the beds begin.
func TestReadmeShowsTheDay(t *testing.T) {
	day := said(t, review.NothingToAct, "day", systems+"quarry-road.yaml")
	readmeShows(t, "A DAY OF FISH", "```", between(t, day, "A DAY OF FISH", "  beds ")+"\n  ...")
}

// The table of marks of the class.
func TestReadmeShowsTheMarks(t *testing.T) {
	out := said(t, review.Act, "mark", "--guide", "../../testdata/marking/guide.yaml", "../../testdata/marking/class")
	readmeShows(t, "MARKS  by", "```", between(t, out, "MARKS  by", "ITEMS"))
}
