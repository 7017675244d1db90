package loop

import (
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// summed is a height or length under a title: what the walk along the line worked out, by its first term.
type summed struct {
	title string
	first *system.Term
}

// linear is a node for a height or length that the walk along the line worked out.
func (v *surveyor) linear(title string, sum system.Linear) *working.Node {
	if len(sum.Terms) == 0 {
		return linear(title, sum)
	}
	key := summed{title, &sum.Terms[0]}
	n := v.sums[key]
	if n == nil {
		n = linear(title, sum)
		v.sums[key] = n
	}
	return n
}

func linear(title string, sum system.Linear) *working.Node {
	in := make([]working.Input, len(sum.Terms))
	factors := make([]float64, len(sum.Terms))
	for i, t := range sum.Terms {
		in[i] = working.Input{Symbol: last(t.Number.Pointer()), Node: working.File(last(t.Number.Pointer()), t.Number)}
		factors[i] = t.Factor
	}
	return working.Step(title, quantity.Length, "sum of heights and lengths of the file", "", func(x []float64) (float64, string) {
		z := 0.0
		for i := range x {
			z += factors[i] * x[i]
		}
		return z, ""
	}, in...)
}

func last(pointer string) string {
	for i := len(pointer) - 1; i >= 0; i-- {
		if pointer[i] == '/' {
			return pointer[i+1:]
		}
	}
	return pointer
}
