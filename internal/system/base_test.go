package system

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// base is a small loop that reads without a problem; the tests change one place of it.
const base = `dryfit: 1
name: two vessels
pipes:
  main: {standard: AS/NZS 1477, class: PN12, size: DN40}
vessels:
  tank:
    role: fish-tank
    form: {cylinder: {inside: 1 m, height: 800 mm}}
    stands_at: 300 mm
  sump:
    role: sump
    form: {box: {length: 1 m, width: 600 mm, height: 500 mm, wall: 5 mm}}
    stands_at: 0 mm
pumps:
  lift: {shut_off: 2 m, open_flow: 1500 L/h}
lines:
  down:
    from: tank
    to: sump
    pipe: main
    joints: cemented
    pieces:
      - through: {wall_of: tank, at: 600 mm, seal: {hole: 63.5 mm}}
      - across: 100 mm
      - bend: 90 deg
      - fall: fit
      - outlet: {at: 400 mm, facing: down}
  up:
    from: sump
    to: tank
    pipe: main
    pieces:
      - intake: {at: 50 mm}
      - pump: lift
      - rise: fit
      - bend: 90 deg
      - across: 500 mm
      - over: {rim_of: tank, at: 850 mm}
      - across: 100 mm
      - outlet: {at: 850 mm, facing: level}
`

// swap is the base with one text in place of another, which stands there once.
func swap(t *testing.T, old, put string) string {
	t.Helper()
	if strings.Count(base, old) != 1 {
		t.Fatalf("%q stands %d times in the base", old, strings.Count(base, old))
	}
	return strings.Replace(base, old, put, 1)
}

func mustRead(t testing.TB, file string, data []byte) *System {
	t.Helper()
	s, problems := Read(file, data)
	if len(problems) > 0 {
		t.Fatalf("%s has problems:\n%s", file, table(problems))
	}
	if s == nil {
		t.Fatalf("%s: neither a system nor a problem", file)
	}
	return s
}

func table(problems []Problem) string {
	var b strings.Builder
	for _, p := range problems {
		b.WriteString(p.String() + "\n")
	}
	return b.String()
}

func systemFile(t testing.TB, name string) []byte {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "systems", name))
	if err != nil {
		t.Fatal(err)
	}
	return data
}
