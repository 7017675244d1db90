package loop

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

// A bench loop for the tests: a pump lifts from a sump into a tank, which gives
// the water back by one line. Each test puts its own lines and vessels in.
type trial struct {
	tank   string // more of the tank
	sump   string // more of the sump
	more   string // more vessels
	pump   string
	down   string // pieces from tank to sump
	up     string // pieces from sump to tank
	pipes  string // more pipes
	lines  string // more lines
	height string // of the tank
	stands string // of the tank
	to     string // end of down
	of, by string // pipes of down and of up
}

const plainUp = `
      - intake: {at: 50 mm}
      - pump: lift
      - rise: fit
      - bend: 90 deg
      - over: {rim_of: tank, at: 850 mm}
      - across: 500 mm
      - outlet: {at: 850 mm, facing: level}`

const plainDown = `
      - through: {wall_of: tank, at: 600 mm, seal: {hole: 63.5 mm}}
      - across: 100 mm
      - bend: 90 deg
      - fall: fit
      - outlet: {at: 400 mm, facing: down}`

const plainPump = "{curve: [[0 L/h, 2 m], [500 L/h, 1.9 m], [1000 L/h, 1.5 m], [1500 L/h, 0 m]]}"

func or(text, plain string) string {
	if text == "" {
		return plain
	}
	return text
}

func (f trial) yaml() string {
	return fmt.Sprintf(`dryfit: 1
name: a bench loop
water: {temperature: 20 degC}
working_flow: {least: 100 L/h}
pipes:
  main: {standard: AS/NZS 1477, class: PN12, size: DN40}
%s
vessels:
  tank:
    role: fish-tank
    form: {cylinder: {inside: 1 m, height: %s}}
    stands_at: %s
%s
  sump:
    role: sump
    form: {box: {length: 1 m, width: 600 mm, height: 500 mm}}
    stands_at: 0 mm
    water: {running: 200 mm}
%s
%s
pumps:
  lift: %s
lines:
  down:
    from: tank
    to: %s
    pipe: %s
    joints: cemented
    pieces: %s
  up:
    from: sump
    to: tank
    pipe: %s
    pieces: %s
%s
`, f.pipes, or(f.height, "800 mm"), or(f.stands, "300 mm"), f.tank, f.sump, f.more, or(f.pump, plainPump), or(f.to, "sump"), or(f.of, "main"), or(f.down, plainDown), or(f.by, "main"), or(f.up, plainUp), f.lines)
}

func read(t *testing.T, f trial) *system.System {
	t.Helper()
	s, problems := system.Read("bench.yaml", []byte(f.yaml()))
	if len(problems) > 0 {
		var b strings.Builder
		for _, p := range problems {
			b.WriteString(p.String() + "\n")
		}
		t.Fatalf("the bench loop has problems:\n%s", b.String())
	}
	return s
}

// result is the ledger of a trial.
type result struct {
	t *testing.T
	l *working.Ledger
}

func try(t *testing.T, f trial) result {
	t.Helper()
	s, l := read(t, f), working.NewLedger()
	Survey(s, tables.Embedded(), l)
	return result{t, l}
}

func (r result) node(subject, name, runCase string) *working.Node {
	r.t.Helper()
	n := r.l.Find(working.Address{Subject: subject, Name: name, Case: runCase, Water: "usual"})
	if n == nil {
		r.t.Fatalf("%s.%s@%s is not worked out", subject, name, runCase)
	}
	return n
}

// value is the number at an address; a gap fails the test.
func (r result) value(subject, name, runCase string) float64 {
	r.t.Helper()
	n := r.node(subject, name, runCase)
	v, ok := n.Value()
	if !ok {
		r.t.Fatalf("%s.%s@%s has gaps %v", subject, name, runCase, n.Gaps())
	}
	return v.X
}

// gap wants a number to be missing, with a word in its reason or pointer.
func (r result) gap(subject, name, runCase, word string) {
	r.t.Helper()
	n := r.node(subject, name, runCase)
	if v, ok := n.Value(); ok {
		r.t.Errorf("%s.%s@%s is %v, and should not be known", subject, name, runCase, v.X)
		return
	}
	if text := fmt.Sprint(n.Gaps()); !strings.Contains(text, word) {
		r.t.Errorf("%s.%s@%s: the gaps %s do not speak of %q", subject, name, runCase, text, word)
	}
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s is %.6g, not %.6g within %.2g", what, got, want, tolerance)
	}
}

const litreAnHour = 1 / 3.6e6

var tablesForTest = tables.Embedded()
