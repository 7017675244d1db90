package report

import (
	"strings"
	"testing"

	"dryfit/internal/review"
	"dryfit/internal/system"
)

// Pieces count from 1, as a builder counts them; a file pointer counts from 0.
func TestKeyWords(t *testing.T) {
	for pointer, want := range map[string]string{
		"/mains/residual_current":                      "residual_current of mains",
		"/vessels/settler/well/lip_at":                 "well.lip_at of settler",
		"/vessels/settler":                             "settler of vessels",
		"/pumps/main/open_flow":                        "open_flow of main",
		"/lines/solids-run/pipe":                       "pipe of solids-run",
		"/lines/solids-run/pieces/2":                   "piece 3 of solids-run",
		"/lines/solids-run/pieces/2/bend":              "bend of piece 3 of solids-run",
		"/lines/solids-run/pieces/0/intake/guard/bore": "guard.bore of the intake that is piece 1 of solids-run",
		"/lines/waste/pieces/0/floor_drain/tail_at":    "tail_at of the floor drain that is piece 1 of waste",
		"/fish/0/mass":                                 "mass of fish, number 1",
		"/site":                                        "site of ",
		"/":                                            " of ",
		"":                                             " of ",
	} {
		if key, of := keyWords(pointer); key+" of "+of != want {
			t.Errorf("%q is %q of %q, want %q", pointer, key, of, want)
		}
	}
}

// open is a review in which every finding lacks the same two things.
func open(t *testing.T, missing ...string) *review.Review {
	r := sample(t)
	for _, f := range r.Findings {
		f.Verdict, f.Remedies, f.Missing = review.Undetermined, nil, missing
	}
	return r
}

// What stands in the way of many clauses is said in full once in the notes and
// once in the closing list; every flag is there still.
func TestSaidOnce(t *testing.T) {
	const why = "nature has no answer"
	r := open(t, "/vessels/tank/water/running", why, "/vessels/tank/water/running")
	page := text(t, r, Options{})
	notes, closing, _ := strings.Cut(page, "\nBEFORE A HOLE IS CUT\n")
	notes = strings.Join(strings.Fields(notes), " ")
	for _, want := range []string{"`water.running` of tank. Measure from the inner floor", "it goes in at file line 7.", "Why " + why + "."} {
		if n := strings.Count(notes, want); n != 1 {
			t.Errorf("the notes say %q %d times:\n%s", want, n, notes)
		}
	}
	if n := strings.Count(notes, `Missing as at /1\.`); n != len(r.Findings)-1 {
		t.Errorf("%d notes send to the first, want %d", n, len(r.Findings)-1)
	}
	for _, want := range []string{"first   find and give `water.running` of tank\n", "not yet " + why + "\n"} {
		if n := strings.Count(closing, want); n != 1 {
			t.Errorf("the closing says %q %d times:\n%s", want, n, closing)
		}
	}
	for _, flag := range []string{`/1\ solids-run`, `/2\ settler`, `/3\ mains`} {
		if n := strings.Count(closing, flag); n != 2 {
			t.Errorf("%s stands %d times in the closing, want once a thing that is missing:\n%s", flag, n, closing)
		}
	}
}

// A range of which the file has nothing is one thing to give.
func TestMissingRange(t *testing.T) {
	r := open(t, "/vessels/tank/pH/low", "/vessels/tank/pH/usual", "/vessels/tank/pH/high", "/water/temperature/low")
	g := newPage(r, Options{}).gapsOf(r.Findings[0])
	want := []gap{{"pH", "tank", "/vessels/tank/pH"}, {"temperature.low", "water", "/water/temperature/low"}}
	if len(g.keys) != 2 || g.keys[0] != want[0] || g.keys[1] != want[1] {
		t.Errorf("got %v, want %v", g.keys, want)
	}
}

// Flags that do not fit on a line go on the next one; none is lost.
func TestManyFlags(t *testing.T) {
	s := &step{}
	for i := range 60 {
		s.take("line-"+string(rune('a'+i/25)), &review.Finding{Judgement: &review.Judgement{Clause: &review.Clause{}}, Number: i + 100, Place: system.Place{}})
	}
	var all strings.Builder
	for _, l := range s.where() {
		if l.width() > bodyWidth {
			t.Errorf("%d columns: %s", l.width(), l.text())
		}
		all.WriteString(l.text() + "\n")
	}
	for i := range 60 {
		if !strings.Contains(all.String(), flagText(i+100)) {
			t.Errorf("%s is lost:\n%s", flagText(i+100), all.String())
		}
	}
	if got := strings.Count(all.String(), "line-"); got != 3 {
		t.Errorf("%d parts, want 3:\n%s", got, all.String())
	}
}

// The same change in the same part is one thing to do; in another part it is another.
func TestSameRemedy(t *testing.T) {
	r := sample(t)
	var list []*review.Finding
	for i, subject := range []string{"solids-run/2", "settler", "solids-run/7"} {
		list = append(list, &review.Finding{
			Judgement: &review.Judgement{Clause: turnClause, Subject: subject, Verdict: review.NotMet},
			Number:    i + 1, Remedies: []review.Remedy{{Text: "turn it round."}},
		})
	}
	var got []string
	for _, l := range newPage(r, Options{}).steps(list) {
		got = append(got, l.text())
	}
	want := []string{`     first   /1\ /3\ solids-run   turn it round`, `     next    /2\     settler      turn it round`}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}
