package report

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"dryfit/internal/review"
)

// However much there is to say, a comment stays within its size, keeps its table whole, and
// says how much is left out.
func TestCommentIsCut(t *testing.T) {
	var list []Item
	for i := range 400 {
		r := sample(t)
		r.File = fmt.Sprintf("loops/loop-%03d.yaml", i)
		r.Name = strings.Repeat("|", 200)
		list = append(list, Reviewed(r))
	}
	got := formed(t, "markdown", runOfTests(), list...)
	if len(got) > mostComment || len(got) < mostComment*8/10 {
		t.Errorf("the comment has %d bytes", len(got))
	}
	rows := strings.Count(got, "\n| loops/")
	said := regexp.MustCompile(`\n(\d+) more rows are left out here, from loops/loop-(\d+).yaml on; .dryfit review FILE. shows the whole of a file.\n$`).FindStringSubmatch(got)
	if said == nil || fmt.Sprint(3*400-rows) != said[1] || fmt.Sprintf("%03d", rows/3) != said[2] {
		t.Errorf("of %d rows %d are there, and it says %v", 3*400, rows, said)
	}
	if one := formed(t, "markdown", runOfTests(), list[0]); strings.Contains(one, "left out") || !strings.HasPrefix(one, "**loops/loop-000.yaml** (") {
		t.Errorf("one file gives\n%s", one)
	}
}

// Of several files only those with something to act on are in the table; one file shows all that is open.
func TestCommentOfSeveral(t *testing.T) {
	r := sample(t)
	r.Findings = r.Findings[1:2]
	if r.Findings[0].Clause != depthClause {
		t.Fatal("the sample has another order")
	}
	r.File = "soft.yaml"
	if got := formed(t, "markdown", runOfTests(), several(t)[0], Reviewed(r)); strings.Contains(got, "soft.yaml") {
		t.Errorf("a file with nothing to act on is shown:\n%s", got)
	}
	should := runOfTests()
	should.HeldTo = review.Should
	if got := formed(t, "markdown", should, several(t)[0], Reviewed(r)); !strings.Contains(got, "| soft.yaml |") {
		t.Errorf("a file with something to act on is not shown:\n%s", got)
	}
	if got := formed(t, "markdown", runOfTests(), Reviewed(r)); !strings.Contains(got, "should, not met: well\\_depth") || strings.Contains(got, "| file |") {
		t.Errorf("one file does not show what is open:\n%s", got)
	}
}

// Two findings that one change settles stand at one remedy.
func TestCommentJoinsRemedies(t *testing.T) {
	r := sample(t)
	r.Findings[1].Remedies = r.Findings[0].Remedies
	got := formed(t, "markdown", runOfTests(), Reviewed(r))
	if !strings.Contains(got, `- /1\\ sharp\_bend on solids-run/2, /2\\ well\_depth on settler: two 45s`) {
		t.Errorf("the remedies are not joined:\n%s", got)
	}
}
