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

// The page that a newcomer reads first shows what dryfit really says: one part
// of the report on the loop as found, and the end of it without most of the steps.
func TestReadmeShowsTheReport(t *testing.T) {
	const page, loop = "../../README.md", "../../testdata/systems/quarry-road-as-found.yaml"
	var out, err bytes.Buffer
	if status := run([]string{"review", loop}, nil, &out, &err, func(string) string { return "" }); status != review.Act {
		t.Fatalf("status %d: %s", status, err.String())
	}
	part := between(t, out.String(), "CLEAR-RUN ", "BIOFILTER ")
	closing := between(t, out.String(), "WHAT TO PUT RIGHT", "     Words ")
	head, rest, _ := strings.Cut(closing, "\n     then ")
	third, _, _ := strings.Cut(rest, "\n     then ")
	_, sentences, _ := strings.Cut(rest, "\n\n")
	want := part + "\n\n\n" + head + "\n     then " + third + "\n     ...\n\n" + sentences

	readme, problem := os.ReadFile(page)
	if problem != nil {
		t.Fatal(problem)
	}
	got := between(t, string(readme), "CLEAR-RUN ", "```")
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
