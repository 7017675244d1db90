package judge

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Problem is one thing that is wrong with a file of clauses.
type Problem struct {
	File string
	Row  int    // from 1; 0 if it concerns the file as a whole
	Text string // what was found; after the first semicolon, what to write instead
}

// Parts is what was found, and what to write instead.
func (p Problem) Parts() (found, write string) {
	found, write, _ = strings.Cut(p.Text, "; ")
	if write == "" {
		write = "see how `dryfit clauses draft` writes a clause"
	}
	return found, write
}

func (p Problem) String() string {
	if p.Row == 0 {
		return p.File + ": " + p.Text
	}
	return fmt.Sprintf("%s:%d: %s", p.File, p.Row, p.Text)
}

// Problems is everything that keeps a book from loading, by file and row.
type Problems []Problem

func (p Problems) Error() string {
	lines := make([]string, len(p))
	for i, one := range p {
		lines[i] = one.String()
	}
	return strings.Join(lines, "\n")
}

// err is the problems in order, or nil if there is none.
func (p Problems) err() error {
	if len(p) == 0 {
		return nil
	}
	slices.SortFunc(p, func(a, b Problem) int {
		return cmp.Or(cmp.Compare(a.File, b.File), cmp.Compare(a.Row, b.Row), cmp.Compare(a.Text, b.Text))
	})
	return slices.Compact(p)
}

// unknown says that a name is none of the known ones, and which it may have been.
func unknown(what, name string, known []string) string {
	text := fmt.Sprintf("there is no %s %q", what, name)
	if near := nearest(name, known); near != "" {
		text += fmt.Sprintf("; the nearest is %q", near)
	}
	return text
}

// nearest is the name that differs least, or "" where more than two letters in five differ.
func nearest(name string, known []string) string {
	best, least := "", len(name)*2/5+1
	for _, k := range slices.Sorted(slices.Values(known)) {
		if d := distance(name, k); d < least {
			best, least = k, d
		}
	}
	return best
}

// distance is the number of bytes to add, drop or change to turn a into b.
func distance(a, b string) int {
	if len(a) > 100 || len(b) > 100 {
		return len(a) + len(b)
	}
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		before := row[0]
		row[0] = i + 1
		for j := range len(b) {
			change := before
			if a[i] != b[j] {
				change++
			}
			before = row[j+1]
			row[j+1] = min(change, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}
