package main

import (
	"bytes"
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"dryfit/internal/corpus"
	"dryfit/internal/report"
)

// Each save says the time of day and only what moved since the one before.
func TestWatchSaysWhatMoved(t *testing.T) {
	data, err := os.ReadFile("../../testdata/systems/quarry-road.yaml")
	if err != nil {
		t.Fatal(err)
	}
	r, err := corpus.NewReviewer()
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	w := watcher{app: &app{out: &out}, reviewer: r, file: corpus.Named(filepath.Join(t.TempDir(), "loop.yaml")), today: "2026-03-14", look: report.Options{Width: 80}}
	w.file.Name = "loop.yaml"
	with := func(pairs ...string) string { return strings.NewReplacer(pairs...).Replace(string(data)) }
	low, lower := with("lip_at: 305 mm", "lip_at: 200 mm"), with("lip_at: 305 mm", "lip_at: 190 mm")
	sharp := strings.Replace(string(data), "      - bend: 45 deg\n      - slope: {angle: 45 deg, fall: fit}\n      - bend: 45 deg\n", "      - bend: 90 deg\n      - fall: fit\n      - bend: 90 deg\n", 1)
	for i, save := range []struct {
		what, text string
		err        error
		status     int
		want       string
	}{
		{"the first", string(data), nil, 0, `loop.yaml

Quarry Road courtyard loop                                            for review

     163 clauses apply to this loop and all are met. Nothing is undetermined.
     Nothing in the book stands against it.

`},
		{"a fault", low, nil, 0, `

WORSE                                       was          now            moved by
  lip of the inlet well, share of          0.51         0.68  1.70 more of limit
    the water depth, settler
    should, was met, is not met: well_depth; 0.4 to 0.6

TO PUT IT RIGHT
  well_depth, settler                                               file line 50
    Raise the lip of the inlet well by 110 mm, from 200 mm to 310 mm above the
    floor. Lip of the inlet well, share of the water depth: then 0.5.

     163 clauses apply to this loop and 162 are met. One should is not met;
     nothing is undetermined. Nothing that shall be is against it; what should
     be is worth a thought.

`},
		{"a little more of it", lower, nil, 0, `

STILL OPEN, AND MOVED                       was          now
  lip of the inlet well, share of          0.68         0.69
    the water depth, settler
    should, is not met as it was: well_depth; 0.4 to 0.6

TO PUT IT RIGHT
  well_depth, settler                                               file line 50
    Raise the lip of the inlet well by 120 mm, from 190 mm to 310 mm above the
    floor. Lip of the inlet well, share of the water depth: then 0.5.

`},
		{"the same again", lower, nil, 0, "nothing moved\n"},
		{"a comment", lower + "# so much for today\n", nil, 0, "nothing moved\n"},
		{"two slips", strings.NewReplacer("lip_at: 190 mm", "lip: 190 mm", "role: sump", "role: pond").Replace(lower), nil, 2, `
loop.yaml cannot be reviewed yet

`},
		{"the same slips, further down", "# a line\n" + strings.NewReplacer("lip_at: 190 mm", "lip: 190 mm", "role: sump", "role: pond").Replace(lower), nil, 2, `
loop.yaml cannot be reviewed yet

`},
		{"the same slips", "# a line\n" + strings.NewReplacer("lip_at: 190 mm", "lip: 190 mm", "role: sump", "role: pond").Replace(lower), nil, 2, "nothing moved; it still cannot be reviewed\n"},
		{"put right", string(data), nil, 0, `it can be reviewed again

BETTER                                      was          now            moved by
  lip of the inlet well, share of          0.69         0.51  1.86 less of limit
    the water depth, settler
    should, was not met, is met: well_depth; 0.4 to 0.6

     163 clauses apply to this loop and all are met. Nothing is undetermined.
     Nothing in the book stands against it.

`},
		{"a sharp bend", sharp, nil, 1, ""},
		{"a piece put before it", strings.Replace(sharp, "      - through: {wall_of: tank", "      - union: {}\n      - through: {wall_of: tank", 1), nil, 1, ""},
		{"both taken away", string(data), nil, 0, ""},
		{"it is gone", "", fs.ErrNotExist, 2, "loop.yaml cannot be read: it is gone, and is waited for\n"},
		{"it is still gone", "", fs.ErrNotExist, 2, "nothing moved; it still cannot be reviewed\n"},
		{"it is back", string(data), nil, 0, "it can be reviewed again; nothing moved since it last could be\n"},
		{"a shall", with("residual_current: 30 mA, ", ""), nil, 1, ""},
	} {
		out.Reset()
		at := time.Date(2026, 3, 14, 15, 9, 26+i, 0, time.UTC).Format(time.TimeOnly)
		if err := w.save(context.Background(), at, []byte(save.text), save.err); err != nil {
			t.Fatalf("%s: %v", save.what, err)
		}
		if w.status != save.status {
			t.Errorf("%s: status %d, want %d", save.what, w.status, save.status)
		}
		said, timed := strings.CutPrefix(out.String(), at)
		if !timed {
			t.Errorf("%s: it does not begin with the time of day:\n%s", save.what, out.String())
		}
		said = strings.TrimPrefix(said, "   ")
		if !strings.HasPrefix(said, save.want) || !strings.HasSuffix(save.want, "yet\n\n") && save.want != "" && said != save.want {
			t.Errorf("%s: it says\n%s\nwant\n%s", save.what, said, save.want)
		}
		switch save.what {
		case "two slips":
			holdsAll(t, said, "line 50:7   the key `lip`", "line 81:11  `pond`")
		case "a sharp bend":
			holdsAll(t, said, "WORSE", "shall, was met, is not met: sharp_bend")
		case "a piece put before it":
			if strings.Contains(said, "sharp_bend") {
				t.Errorf("a finding moves with the number of its piece:\n%s", said)
			}
		case "a shall":
			holdsAll(t, said, "WORSE", "shall, was met, cannot be said now: residual_current", "TO PUT IT RIGHT", "Find and give `residual_current` of mains.")
		}
	}
}

func holdsAll(t *testing.T, text string, want ...string) {
	t.Helper()
	for _, one := range want {
		if !strings.Contains(text, one) {
			t.Errorf("it does not say %q:\n%s", one, text)
		}
	}
}

// pauses lets the next of some things happen to the disk in each pause; long after the last one it is stopped.
type pauses struct {
	then []func()
	took []time.Duration
}

var errStopped = errors.New("stopped")

func (p *pauses) pause(d time.Duration) error {
	if len(p.took) > len(p.then)+20 {
		return errStopped
	}
	if len(p.took) < len(p.then) && p.then[len(p.took)] != nil {
		p.then[len(p.took)]()
	}
	p.took = append(p.took, d)
	return nil
}

// A file is read when it is still: whole, also when it is put in the place of another, or is away for a moment.
func TestWatchWaits(t *testing.T) {
	dir := t.TempDir()
	name, permits := filepath.Join(dir, "loop.yaml"), filepath.Join(dir, "loop.permits.yaml")
	day := time.Date(2026, 3, 14, 15, 9, 26, 0, time.UTC)
	write := func(name, text string, at time.Time) func() {
		return func() {
			if err := errors.Join(os.WriteFile(name, []byte(text), 0o644), os.Chtimes(name, at, at)); err != nil {
				t.Fatal(err)
			}
		}
	}
	do := func(err error) {
		if err != nil {
			t.Fatal(err)
		}
	}
	gone := func() { do(os.Remove(name)) }
	write(name, "old", day)()
	nothing := func() {}
	for _, c := range []struct {
		what   string
		then   []func() // in each pause
		pauses int      // that it takes until it is still
		text   string   // that is then read; empty: the file is gone
	}{
		{"a save", []func(){nothing, write(name, "newer", day.Add(time.Second))}, 3, "newer"},
		{"a save in three pieces", []func(){write(name, "a", day), write(name, "ab", day), write(name, "abc", day.Add(time.Second))}, 4, "abc"},
		{"a save of the same size", []func(){write(name, "abd", day.Add(2*time.Second))}, 2, "abd"},
		{"another file in its place, of the same size and time", []func(){func() {
			write(filepath.Join(dir, "other"), "xyz", day.Add(2*time.Second))()
			do(os.Rename(filepath.Join(dir, "other"), name))
		}}, 2, "xyz"},
		{"away for a moment", []func(){gone, nothing, nothing, write(name, "back", day)}, 5, "back"},
		{"gone", []func(){gone}, 11, ""},
		{"back", []func(){nothing, nothing, write(name, "back", day)}, 4, "back"},
		{"permits beside it", []func(){write(permits, "permits: []\n", day)}, 2, "back"},
		{"permits taken away", []func(){func() { do(os.Remove(permits)) }}, 2, "back"},
	} {
		p := &pauses{then: c.then}
		seen := footprintOf(name)
		now, err := changed(name, seen, p.pause)
		if err != nil {
			t.Fatalf("%s: %v", c.what, err)
		}
		if len(p.took) != c.pauses {
			t.Errorf("%s: it takes %d pauses, %v, want %d", c.what, len(p.took), p.took, c.pauses)
		}
		if data, _ := os.ReadFile(name); string(data) != c.text {
			t.Errorf("%s: %q is read, want %q", c.what, data, c.text)
		}
		if !now.same(footprintOf(name)) || now.same(seen) {
			t.Errorf("%s: what it saw is not what there is", c.what)
		}
	}
	p := &pauses{}
	if _, err := changed(name, footprintOf(name), p.pause); !errors.Is(err, errStopped) {
		t.Errorf("nothing happens and it comes to %v", err)
	}
	if _, err := changed(name, nil, func(time.Duration) error { return errStopped }); err != nil {
		t.Errorf("the first time it waits: %v", err)
	}
}
