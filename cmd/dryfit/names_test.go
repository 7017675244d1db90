package main

import (
	"bytes"
	"strings"
	"testing"
	"unicode"
)

// Whatever a file is called, what is said of it stays on its line and does nothing on a terminal or to a build server.
func TestNamesOfFilesStayNames(t *testing.T) {
	for _, name := range []string{"\x1b[2J\x1b]0;x\x07.yaml", "a\n::error::b.yaml", "\u009b2J.yaml", "\u202elmay.yaml", "::stop-commands::x.yaml", "##[error]x.yaml", "x*\x1b[2J\n::error::]*.yaml"} {
		for _, args := range [][]string{{"review"}, {"review", "--only-systems"}, {"levels"}, {"day"}, {"sheet", "-o", "x.html"}, {"gather"}, {"compare", "x.yaml"}, {"review", "x.yaml", "-o"}} {
			var out, errs bytes.Buffer
			if got := run(append(args, name), nil, &out, &errs, func(string) string { return "" }); got == 0 {
				t.Errorf("%q %q: status 0", args, name)
			}
			for l := range strings.Lines(errs.String()) {
				if l = strings.TrimSuffix(l, "\n"); !strings.HasPrefix(l, "dryfit: ") || strings.ContainsFunc(l, func(r rune) bool { return !unicode.IsPrint(r) }) {
					t.Errorf("%q %q: it says %q", args, name, l)
				}
			}
			for l := range strings.Lines(out.String()) {
				l = strings.TrimSuffix(l, "\n")
				if strings.HasPrefix(strings.TrimLeft(l, " "), "::") || strings.ContainsFunc(l, func(r rune) bool { return !unicode.IsPrint(r) }) {
					t.Errorf("%q %q: it prints %q", args, name, l)
				}
			}
		}
	}
}
