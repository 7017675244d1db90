package report

import (
	"strings"
	"testing"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
)

// One file is the whole report; several are what to act on in each, and the register.
func TestTextOfOneIsTheReport(t *testing.T) {
	r := sample(t)
	if got := formed(t, "text", runOfTests(), Reviewed(r)); got != text(t, sample(t), Options{}) {
		t.Error("one file is not the whole report")
	}
	whole := runOfTests()
	whole.Whole = true
	both := formed(t, "text", whole, Reviewed(r), Reviewed(sample(t)))
	if named := text(t, sample(t), Options{Named: true}); strings.Count(both, named) != 2 {
		t.Error("two whole reports are not two reports")
	}
	if !strings.Contains(both, "REGISTER") {
		t.Error("two whole reports have no register")
	}
	for _, i := range several(t)[1:] {
		got := formed(t, "text", runOfTests(), i)
		if got == "" || strings.Contains(got, "REGISTER") {
			t.Errorf("%s alone is %q", i.File, got)
		}
	}
}

// No line is wider than the terminal, whatever the names are.
func TestRegisterKeepsItsWidth(t *testing.T) {
	list := several(t)
	long := *list[0].Summary
	long.File, long.Name = strings.Repeat("a folder/", 30)+"loop.yaml", strings.Repeat("水", 100)
	list = append(list, Item{File: long.File, Summary: &long})
	for _, columns := range []int{0, 40, 80, 131, 132, 160, 400} {
		run := runOfTests()
		run.Look = Options{Width: columns, Units: quantity.US}
		most := min(max(columns, bodyWidth), mostRegister)
		for _, l := range strings.Split(formed(t, "text", run, list...), "\n") {
			if width(l) > most {
				t.Errorf("at %d columns a line takes %d: %s", columns, width(l), l)
			}
		}
	}
	if got := formed(t, "text", runOfTests(), list...); !strings.Contains(got, "...") || !strings.Contains(got, "/loop.yaml") {
		t.Error("the end of a long name of a file is cut")
	}
}

func TestTotals(t *testing.T) {
	list := several(t)
	soft := *list[0].Summary
	soft.Findings = soft.Findings[1:2] // a should with leave to differ
	soft.Permits = nil
	bare := *soft.Findings[0]
	bare.Permit = nil
	open := soft
	open.Findings = []*review.Finding{&bare}
	for _, c := range []struct {
		items  []Item
		heldTo review.Strength
		want   string
	}{
		{list, review.Shall, "Of five loops, two were read. One of them has something to act on when held to shall. Two cannot be read. Dryfit itself failed on one. In one there is leave to differ."},
		{list[:1], review.Shall, "One loop was read. One of them has something to act on when held to shall. In one there is leave to differ."},
		{list[1:2], review.Should, "One loop was read. None of them has anything to act on when held to should."},
		{[]Item{list[1], {Summary: &open}}, review.Shall, "Two loops were read. None of them has anything to act on when held to shall. In one more something is open that does not count for that."},
		{[]Item{{Summary: &open}, {Summary: &open}}, review.Should, "Two loops were read. All of them have something to act on when held to should."},
		{[]Item{{Summary: &soft}, list[1]}, review.Should, "Two loops were read. None of them has anything to act on when held to should. In one there is leave to differ."},
		{list[2:4], review.Shall, "Of two loops, none were read. Two cannot be read."},
	} {
		var sum totals
		for _, i := range c.items {
			sum.add(i, c.heldTo)
		}
		if got := sum.words(c.heldTo); got != c.want {
			t.Errorf("got  %s\nwant %s", got, c.want)
		}
	}
}

func TestClipStart(t *testing.T) {
	for _, c := range []struct {
		text string
		most int
		want string
	}{
		{"a/loop.yaml", 11, "a/loop.yaml"}, {"a/loop.yaml", 10, "...op.yaml"}, {"a/loop.yaml", 3, "..."}, {"", 0, ""}, {"水水水水", 7, "...水水"}, {"水水水水", 6, "...水"},
	} {
		if got := clipStart(c.text, c.most); got != c.want {
			t.Errorf("%q in %d columns is %q and not %q", c.text, c.most, got, c.want)
		}
	}
}
