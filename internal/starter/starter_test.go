package starter_test

import (
	"bytes"
	"context"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"dryfit/internal/corpus"
	"dryfit/internal/review"
	"dryfit/internal/starter"
	"dryfit/internal/system"
)

// Every file that is embedded is a kind, and the other way round, each with a sentence of its own.
func TestKinds(t *testing.T) {
	entries, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	var files, kinds []string
	for _, e := range entries {
		if name, is := strings.CutSuffix(e.Name(), ".yaml"); is {
			files = append(files, name)
		}
	}
	about := map[string]bool{}
	for _, k := range starter.Kinds() {
		kinds = append(kinds, k.Name)
		if !strings.HasSuffix(k.About, ".") || strings.HasPrefix(k.About, "#") || about[k.About] {
			t.Errorf("%s is said to be %q, which is no sentence of its own", k.Name, k.About)
		}
		about[k.About] = true
	}
	slices.Sort(files)
	slices.Sort(kinds)
	if !slices.Equal(files, kinds) {
		t.Errorf("the files are %v, the kinds %v", files, kinds)
	}
	if len(kinds) < 5 {
		t.Errorf("there are %d kinds, want at least five", len(kinds))
	}
	for _, no := range []string{"", "nothing", "../starter/raft", "raft.yaml"} {
		if _, is := starter.File(no); is {
			t.Errorf("%q is a kind", no)
		}
	}
}

// A start is a loop that holds: every clause that applies is met, every key is looked at, also what
// only should be.
func TestStartersHold(t *testing.T) {
	r, err := corpus.NewReviewer()
	if err != nil {
		t.Fatal(err)
	}
	for _, k := range starter.Kinds() {
		data, _ := starter.File(k.Name)
		item, err := r.Review(context.Background(), k.Name+".yaml", data)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range item.Problems {
			t.Errorf("%s line %d: %s; %s", k.Name, p.Line, p.Found, p.Write)
		}
		if item.Review == nil {
			continue
		}
		if got := item.Review.ExitStatus(review.Should); got != review.NothingToAct {
			t.Errorf("%s: status %d, want 0", k.Name, got)
		}
		for _, f := range item.Review.Findings {
			t.Errorf("%s line %d: %s on %s is %s", k.Name, f.Place.Line, f.Clause.ID, f.Subject, f.Verdict)
		}
		for _, r := range item.Review.NotLooked {
			t.Errorf("%s: %s is stated and not looked at", k.Name, r.Pointer)
		}
		if s := item.Review.Status; s != "concept" {
			t.Errorf("%s begins as %s", k.Name, s)
		}
	}
}

var topKey = regexp.MustCompile(`^([a-z_]+):`)

// Every block at the top has a comment: on its line, or in the lines above it.
func TestStartersAreCommented(t *testing.T) {
	for _, k := range starter.Kinds() {
		data, _ := starter.File(k.Name)
		lines := strings.Split(strings.TrimSuffix(string(data), "\n"), "\n")
		for i, l := range lines {
			if m := topKey.FindStringSubmatch(l); m != nil && !strings.Contains(l, " # ") && !strings.HasPrefix(lines[max(i-1, 0)], "# ") {
				t.Errorf("%s line %d: `%s` has no comment", k.Name, i+1, m[1])
			}
			if strings.Contains(l, "\t") || strings.HasSuffix(l, " ") {
				t.Errorf("%s line %d: a tab, or a blank at the end", k.Name, i+1)
			}
		}
	}
}

// The kinds are different loops: each two differ in the roles of vessels, in the pieces of lines, or in their units.
func TestStartersDiffer(t *testing.T) {
	parts := map[string]string{}
	for _, k := range starter.Kinds() {
		data, _ := starter.File(k.Name)
		s, problems := system.Read(k.Name, data)
		if len(problems) > 0 {
			continue
		}
		var found []string
		for _, v := range s.Vessels {
			role, _ := v.Role.Value()
			found = append(found, role)
		}
		for _, l := range s.Lines {
			for _, p := range l.Pieces {
				found = append(found, p.Kind)
			}
		}
		if bytes.Contains(data, []byte("gal(US)/h")) {
			found = append(found, "US units")
		}
		slices.Sort(found)
		key := strings.Join(slices.Compact(found), " ")
		if other := parts[key]; other != "" {
			t.Errorf("%s and %s are built of the same parts", k.Name, other)
		}
		parts[key] = k.Name
	}
}
