package compare

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"dryfit/internal/making"
)

// Pair is one line of a list as it was and as it is; nil where there is none.
type Pair[T any] struct{ Was, Now *T }

// lines pairs two lists by a key; those with the same key in their order. The key of
// the former side may say what the present one calls it.
func lines[T any](was, now []T, oldKey, newKey func(*T) string) []Pair[T] {
	before := map[string][]*T{}
	for i := range was {
		key := oldKey(&was[i])
		before[key] = append(before[key], &was[i])
	}
	var out []Pair[T]
	paired := map[*T]bool{}
	for i := range now {
		one := Pair[T]{Now: &now[i]}
		if key := newKey(&now[i]); len(before[key]) > 0 {
			one.Was, before[key] = before[key][0], before[key][1:]
			paired[one.Was] = true
		}
		out = append(out, one)
	}
	for i := range was {
		if !paired[&was[i]] {
			out = append(out, Pair[T]{Was: &was[i]})
		}
	}
	return out
}

// changed keeps the pairs that are not the same.
func changed[T any](pairs []Pair[T], same func(a, b *T) bool) []Pair[T] {
	return slices.DeleteFunc(pairs, func(p Pair[T]) bool { return p.Was != nil && p.Now != nil && same(p.Was, p.Now) })
}

// tenth says that two lengths are the same to a tenth of a millimetre.
func tenth(a, b float64) bool { return math.Abs(a-b) < 0.5e-4 }

func figures(a, b making.Figure) bool { return a.Known == b.Known && tenth(a.X, b.X) }

func parts(was, now making.Book) []Pair[making.Part] {
	whole := func(p *making.Part) string {
		return p.Name + "\n" + p.Use + "\n" + p.Step + "\n" + p.Spec + "\n" + strconv.FormatFloat(p.Length, 'g', 9, 64)
	}
	pairs := lines(was.Parts, now.Parts, whole, whole)
	// What is left over is the same thing in another size, if it has the same name and use.
	var left, right []making.Part
	pairs = slices.DeleteFunc(pairs, func(p Pair[making.Part]) bool {
		switch {
		case p.Now == nil:
			left = append(left, *p.Was)
		case p.Was == nil:
			right = append(right, *p.Now)
		}
		return p.Now == nil || p.Was == nil
	})
	loose := func(p *making.Part) string { return p.Name + "\n" + p.Use + "\n" + p.Step }
	pairs = append(pairs, lines(left, right, loose, loose)...)
	slices.SortStableFunc(pairs, func(a, b Pair[making.Part]) int { return cmp.Compare(step(a), step(b)) })
	return changed(pairs, func(a, b *making.Part) bool {
		return a.Spec == b.Spec && a.Count == b.Count && tenth(a.Length, b.Length) && a.Got == b.Got && cent(a.Sum, b.Sum) && cent(a.Each, b.Each)
	})
}

// step is the place of a part in the order of building.
func step(p Pair[making.Part]) int {
	one := p.Now
	if one == nil {
		one = p.Was
	}
	return slices.Index(making.BuildSteps, one.Step)
}

func cuts(was, now making.Book, m moves) []Pair[making.Cut] {
	key := func(id func(string) string) func(*making.Cut) string {
		return func(c *making.Cut) string { return id(c.Piece) + "\n" + strconv.FormatBool(c.Nipple) }
	}
	return changed(lines(was.Cuts, now.Cuts, key(m.key), key(asIs)), func(a, b *making.Cut) bool {
		return a.Known == b.Known && tenth(a.Length.X, b.Length.X) && a.Count == b.Count && a.Pipe == b.Pipe
	})
}

func holes(was, now making.Book, m moves) []Pair[making.Hole] {
	key := func(id func(string) string) func(*making.Hole) string {
		return func(h *making.Hole) string { return id(h.Piece) }
	}
	return changed(lines(was.Holes, now.Holes, key(m.key), key(asIs)), func(a, b *making.Hole) bool {
		return a.Vessel == b.Vessel && a.In == b.In && a.Count == b.Count && a.Fit == b.Fit && a.Pipe == b.Pipe && a.Tool == b.Tool &&
			tenth(a.Across, b.Across) && figures(a.At, b.At) && a.Round.Known == b.Round.Known && math.Abs(a.Round.X-b.Round.X) < 1e-6
	})
}

func joints(was, now making.Book, m moves) []Pair[making.Joint] {
	key := func(id func(string) string) func(*making.Joint) string {
		return func(j *making.Joint) string {
			return id(j.Piece) + "\n" + j.Line + "\n" + strconv.FormatBool(j.Kind == "union") + strconv.FormatBool(j.After == "vent pipe")
		}
	}
	return changed(lines(was.Joints, now.Joints, key(m.key), key(asIs)), func(a, b *making.Joint) bool {
		return a.Kind == b.Kind && a.Count == b.Count && a.ComesApart == b.ComesApart
	})
}

func asIs(id string) string { return id }
