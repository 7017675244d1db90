package system

import (
	"slices"
	"strings"
)

// Nearest is the candidate that differs least from what was written, or "" when
// none is near: at most two letters in five may differ.
func Nearest(written string, candidates []string) string {
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

// likely is the candidates that were perhaps meant: those with the most words in
// common with what was written, and of these the nearest if one is near; when
// none has a word in common, the nearest. More than four are as good as none.
func likely(written string, candidates []string) []string {
	var best []string
	most := 1
	for _, c := range candidates {
		switch common := common(written, c); {
		case common > most:
			best, most = []string{c}, common
		case common == most:
			best = append(best, c)
		}
	}
	if near := Nearest(written, candidates); near != "" && (len(best) == 0 || slices.Contains(best, near)) {
		return []string{near}
	}
	if len(best) > 4 {
		return nil
	}
	return best
}

// common is the number of words of a candidate that contain a word of what was
// written, or are contained in one. Words of one or two letters do not count.
func common(written, candidate string) int {
	words := 0
	for _, c := range strings.Split(fold(candidate), "-") {
		if slices.ContainsFunc(strings.Split(fold(written), "-"), func(w string) bool {
			return min(len(c), len(w)) > 2 && (strings.Contains(c, w) || strings.Contains(w, c))
		}) {
			words++
		}
	}
	return words
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
	if rest != "" {
		marked := make([]string, len(names))
		for i, n := range names {
			marked[i] = quoted(n)
		}
		return strings.Join(marked, ", ") + rest
	}
	return joined(names)
}

// joined is listed in the order given, all of them.
func joined(names []string) string {
	var b strings.Builder
	for i, n := range names {
		switch {
		case i > 0 && i == len(names)-1:
			b.WriteString(" or ")
		case i > 0:
			b.WriteString(", ")
		}
		b.WriteString(quoted(n))
	}
	return b.String()
}
