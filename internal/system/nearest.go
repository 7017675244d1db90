package system

import (
	"slices"
	"strings"
)

// nearest is the candidate that differs least from what was written, or "" when
// none is near: at most two letters in five may differ.
func nearest(written string, candidates []string) string {
	best, least := "", len([]rune(written))*2/5
	if least < 1 {
		least = 1
	}
	sorted := slices.Clone(candidates)
	slices.Sort(sorted)
	found := false
	for _, c := range sorted {
		if d := distance(fold(written), fold(c), least); d < least || d == least && !found {
			best, least, found = c, d, true
		}
	}
	return best
}

// fold makes spellings alike that are easily confused: case, and hyphen, underscore, blank.
func fold(s string) string {
	return strings.NewReplacer("_", "-", " ", "-").Replace(strings.ToLower(s))
}

// distance is the number of letters to add, drop, change or swap with a
// neighbour to turn a into b (optimal string alignment). A distance over most is given as most+1.
func distance(a, b string, most int) int {
	x, y := []rune(a), []rune(b)
	if len(x)-len(y) > most || len(y)-len(x) > most || len(x) > 100 {
		return most + 1
	}
	before, above, row := make([]int, len(y)+1), make([]int, len(y)+1), make([]int, len(y)+1)
	for j := range above {
		above[j] = j
	}
	for i := 1; i <= len(x); i++ {
		row[0] = i
		low := i
		for j := 1; j <= len(y); j++ {
			change := above[j-1]
			if x[i-1] != y[j-1] {
				change++
			}
			row[j] = min(change, above[j]+1, row[j-1]+1)
			if i > 1 && j > 1 && x[i-1] == y[j-2] && x[i-2] == y[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
			low = min(low, row[j])
		}
		if low > most+1 {
			return most + 1
		}
		before, above, row = above, row, before
	}
	return min(above[len(y)], most+1)
}

// listed writes names as a list in a sentence: `a`, `b` or `c`.
func listed(names []string) string {
	names = slices.Clone(names)
	slices.Sort(names)
	rest := ""
	if len(names) > 30 {
		names, rest = names[:30], " and others"
	}
	marked := make([]string, len(names))
	for i, n := range names {
		marked[i] = quoted(n)
	}
	if rest != "" || len(marked) < 2 {
		return strings.Join(marked, ", ") + rest
	}
	return strings.Join(marked[:len(marked)-1], ", ") + " or " + marked[len(marked)-1]
}
