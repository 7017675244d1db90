package editor

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"dryfit/internal/review"
)

func TestSeverity(t *testing.T) {
	for _, one := range []struct {
		strength review.Strength
		verdict  review.Verdict
		safety   bool
		permit   bool
		status   string
		want     int
	}{
		{review.Shall, review.NotMet, false, false, "for-review", asError},
		{review.Should, review.NotMet, false, false, "for-review", asWarning},
		{review.May, review.NotMet, false, false, "for-review", asInformation},
		{review.Shall, review.Undetermined, false, false, "for-review", asWarning},
		{review.Should, review.Undetermined, false, false, "for-review", asInformation},
		{review.Shall, review.Undetermined, false, false, "concept", asInformation},
		{review.Shall, review.Undetermined, true, false, "concept", asWarning},
		{review.Shall, review.NotMet, false, false, "concept", asError},
		{review.Shall, review.NotMet, false, true, "for-review", asHint},
	} {
		f := &review.Finding{Judgement: &review.Judgement{Clause: &review.Clause{Strength: one.strength, Safety: one.safety}, Verdict: one.verdict}}
		if one.permit {
			f.Permit = &review.Permit{}
		}
		if got := severity(f, one.status); got != one.want {
			t.Errorf("%+v: severity %d", one, got)
		}
	}
}

// Leave to differ quietens a finding, also where it stands in the file of permits beside; one that has run out is marked itself.
func TestPermits(t *testing.T) {
	const leave = "  - {clause: well_depth, subject: settler, reason: as it came, who: workshop teacher, until: 2027-01-31}\n"
	c := talk(t, "")
	c.open(uri, changedDemo(t, "lip_at: 305 mm", "lip_at: 400 mm", "care: {", "permits:\n"+leave+"care: {"))
	d := coded(c.marked(1), "well_depth")
	if d == nil || d.Severity != asHint || !strings.Contains(d.Message, "Leave to differ: ") || !strings.Contains(d.Message, "as it came") {
		t.Errorf("with leave: %+v", d)
	}
	if d != nil && len(c.actions(d.Range)) != 0 {
		t.Error("what there is leave for is offered to be changed")
	}
	c.becomes(2, "2027-01-31", "2026-01-31")
	list := c.marked(2)
	if d := coded(list, "well_depth"); d == nil || d.Severity != asWarning {
		t.Errorf("with leave that has run out: %+v", d)
	}
	if coded(list, permitServes) == nil {
		t.Errorf("the permit that has run out is not marked: %+v", list)
	}

	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "loop.permits.yaml"), []byte("permits:\n"+leave), 0o644); err != nil {
		t.Fatal(err)
	}
	c.open("file://"+filepath.ToSlash(dir)+"/loop.yaml", changedDemo(t, "lip_at: 305 mm", "lip_at: 400 mm"))
	if d := coded(c.marked(1), "well_depth"); d == nil || d.Severity != asHint {
		t.Errorf("with leave in the file beside: %+v", d)
	}
}

// What is undetermined asks for the value, and offers none.
func TestUndetermined(t *testing.T) {
	c := talk(t, `{"textDocument":{"publishDiagnostics":{"relatedInformation":true}}}`)
	c.open(uri, changedDemo(t, "      lip_at: 305 mm\n", ""))
	d := coded(c.marked(1), "well_depth")
	if d == nil || !strings.Contains(d.Message, "cannot be said yet") || !strings.Contains(d.Message, "lip_at") {
		t.Fatalf("marked: %+v", d)
	}
	if got := c.actions(d.Range); len(got) != 0 {
		t.Errorf("offered: %+v", got)
	}
}
