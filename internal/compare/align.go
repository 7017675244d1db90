package compare

import "dryfit/internal/system"

// alike is how much two elements of a list speak for being the same one: the more the
// same, the greater; zero if they cannot be.
func alike(a, b system.Part) int {
	const same, most = 1000, 500
	if a.Same(b) {
		return same
	}
	_, one := a.Items()
	_, two := b.Items()
	if one != two || a.IsMapping() != b.IsMapping() {
		return 0
	}
	ka, kb := a.Keys(), b.Keys()
	kind := len(ka) == 1 && len(kb) == 1 // a piece: its key says what it is
	if kind && ka[0] != kb[0] {
		return 0
	}
	la, lb := map[string]bool{}, map[string]bool{}
	leaves("", a, la)
	leaves("", b, lb)
	common := 0
	for leaf := range la {
		if lb[leaf] {
			common++
		}
	}
	if common == 0 && a.IsMapping() && !kind {
		return 0
	}
	return 1 + most*common/max(1, len(la), len(lb))
}

// leaves enters every value below a part, with the way to it.
func leaves(at string, p system.Part, into map[string]bool) {
	items, is := p.Items()
	switch {
	case is:
		for i, item := range items {
			leaves(system.Element(at, i), item, into)
		}
	case p.IsMapping():
		for _, key := range p.Keys() {
			value, _ := p.Key(key)
			leaves(system.Child(at, key), value, into)
		}
	default:
		into[at+" "+p.String()] = true
	}
}

// align pairs the elements of two lists in their order, so that the pairs are as much
// alike together as can be: a longest common subsequence, weighted. It gives for each element
// of a its place in b, or -1.
//
//	S(i, j) = max{ S(i+1, j), S(i, j+1), alike(a_i, b_j) + S(i+1, j+1) where they are alike }
func align(a, b []system.Part) []int {
	score := make([][]int, len(a))
	best := make([][]int, len(a)+1)
	for i := range best {
		best[i] = make([]int, len(b)+1)
	}
	for i := len(a) - 1; i >= 0; i-- {
		score[i] = make([]int, len(b))
		for j := len(b) - 1; j >= 0; j-- {
			score[i][j] = alike(a[i], b[j])
			best[i][j] = max(best[i+1][j], best[i][j+1])
			if score[i][j] > 0 {
				best[i][j] = max(best[i][j], score[i][j]+best[i+1][j+1])
			}
		}
	}
	out := make([]int, len(a))
	for i, j := 0, 0; i < len(a); {
		switch {
		case j < len(b) && score[i][j] > 0 && best[i][j] == score[i][j]+best[i+1][j+1]:
			out[i] = j
			i, j = i+1, j+1
		case j < len(b) && best[i][j] == best[i][j+1]:
			j++
		default:
			out[i] = -1
			i++
		}
	}
	return out
}
