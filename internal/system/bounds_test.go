package system

import (
	"fmt"
	"strings"
	"testing"
	"time"
)

// TestHostileFiles reads files that are as large as a limit lets them be. Each
// must answer soon; the bound is wide, for slow machines.
func TestHostileFiles(t *testing.T) {
	repeat := func(n int, f func(i int) string) string {
		var b strings.Builder
		for i := range n {
			b.WriteString(f(i))
		}
		return b.String()
	}
	head := "dryfit: 1\nname: x\n"
	vessels := "vessels:\n" + repeat(100, func(i int) string { return fmt.Sprintf("  vessel-number-%d: {role: store}\n", i) })
	for name, text := range map[string]string{
		"many names that point at nothing": head + vessels + "lines:\n" + repeat(190, func(i int) string {
			return fmt.Sprintf("  l%d: {from: vessel-numer-%d, to: vesel-number-%d, pieces: [%s]}\n", i, i, i, repeat(10, func(k int) string {
				return fmt.Sprintf("{through: {wall_of: vessle-%d-%d}}, ", i, k)
			}))
		}),
		"many misspelt keys": head + "vessels:\n  a: {" + repeat(500, func(i int) string { return fmt.Sprintf("stand_%d: 1, ", i) }) + "}\n",
		"long lines": head + "vessels: {a: {role: store}}\nlines:\n" + repeat(100, func(i int) string {
			return fmt.Sprintf("  l%d: {from: a, to: a, pieces: [%s]}\n", i, strings.Repeat("rise: 1 m, ", 230))
		}),
		"the longest lines that are read": head + "vessels: {a: {role: store, stands_at: 0 m}}\nlines:\n" + repeat(10, func(i int) string {
			return fmt.Sprintf("  l%d: {from: a, to: a, pieces: [{intake: {at: 0 m}}, %s{outlet: {at: 0 m}}]}\n", i, strings.Repeat("rise: 1 mm, ", 196))
		}),
		"a chain of tees": head + "vessels: {a: {role: store}}\nlines:\n" + repeat(200, func(i int) string {
			return fmt.Sprintf("  l%d: {from: l%d.t, to: a, pieces: [{tee: {id: t, way: through}}]}\n", i, i+1)
		}),
		"deep and wide":  head + "note: " + strings.Repeat("[", 38) + strings.Repeat("x, ", 290) + strings.Repeat("]", 38),
		"one long word":  head + strings.Repeat("x", mostBytes-30) + ": 1\n",
		"all quotes":     head + "note: " + strings.Repeat(`"" `, 100000),
		"all dashes":     strings.Repeat("---\n", mostBytes/4),
		"all directives": repeat(60000, func(i int) string { return fmt.Sprintf("%%TAG !%d! x\n", i) }) + "---\n" + head,
		"all anchors":    head + repeat(20000, func(i int) string { return fmt.Sprintf("k%d: &a%d x\n", i, i) }),
	} {
		started := time.Now()
		s, problems := Read("x", []byte(text))
		spent := time.Since(started)
		t.Logf("%s: %d bytes, %d problems, %v", name, len(text), len(problems), spent.Round(time.Millisecond))
		if spent > 20*time.Second {
			t.Errorf("%s took %v", name, spent)
		}
		if (s == nil) == (len(problems) == 0) || len(problems) > enough {
			t.Errorf("%s: %d problems", name, len(problems))
		}
	}
}
