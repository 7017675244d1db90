package loop

import "dryfit/internal/working"

// shape is one function of the flow and of many inputs, in which an input that
// several pieces share stands once.
type shape struct {
	inputs []working.Input
	place  map[*working.Node]int // where each stands, once there are many
	traced *[]int                // where what is taken just now is noted too; nil mostly
}

func newShape() *shape { return &shape{} }

// someInputs is how many are looked through one by one.
const someInputs = 16

// at is the place of an input, or the next one.
func (s *shape) at(n *working.Node) int {
	if s.place != nil {
		if k, ok := s.place[n]; ok {
			return k
		}
		return len(s.inputs)
	}
	for k := range s.inputs {
		if s.inputs[k].Node == n {
			return k
		}
	}
	return len(s.inputs)
}

// add puts an input behind the others.
func (s *shape) add(in working.Input) {
	if s.inputs = append(s.inputs, in); s.place != nil {
		s.place[in.Node] = len(s.inputs) - 1
		return
	}
	if len(s.inputs) > someInputs {
		s.place = make(map[*working.Node]int, 4*someInputs)
		for k, one := range s.inputs {
			s.place[one.Node] = k
		}
	}
}

// take adds inputs and says where each of them stands.
func (s *shape) take(in ...working.Input) []int {
	at := make([]int, len(in))
	for i, one := range in {
		if at[i] = s.at(one.Node); at[i] == len(s.inputs) {
			s.add(one)
		}
	}
	if s.traced != nil {
		*s.traced = append(*s.traced, at...)
	}
	return at
}

// tracing lays something out and says which inputs it took.
func (s *shape) tracing(lay func()) []int {
	var took []int
	outer := s.traced
	s.traced = &took
	lay()
	s.traced = outer
	return took
}

// pick picks the inputs at the places out of x.
func pick(x []float64, at []int, into []float64) []float64 {
	into = into[:0]
	for _, k := range at {
		into = append(into, x[k])
	}
	return into
}

// loss adds elements and gives the head lost in the first n of them, or in all when n is below zero.
func (s *shape) loss(elements []element) func(q float64, x []float64, n int) float64 {
	along := s.along(elements)
	return func(q float64, x []float64, n int) float64 {
		sums := along(q, x)
		if n < 0 || n >= len(sums) {
			n = len(sums) - 1
		}
		return sums[n]
	}
}

// along adds elements and gives the head lost in the first of them, the first two and so
// on; at zero none. The sums hold until it is asked again.
func (s *shape) along(elements []element) func(q float64, x []float64) []float64 {
	places := make([][]int, len(elements))
	for i, e := range elements {
		places[i] = s.take(e.inputs...)
	}
	scratch, sums := make([]float64, 0, 16), make([]float64, len(elements)+1)
	return func(q float64, x []float64) []float64 {
		for i, e := range elements {
			scratch = pick(x, places[i], scratch)
			sums[i+1] = sums[i] + e.loss(q, scratch)
		}
		return sums
	}
}
