package working

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"dryfit/internal/quantity"
)

// stated is a value of an imagined file.
type stated struct {
	pointer string
	x       float64
	given   bool
}

func (s stated) Pointer() string     { return s.pointer }
func (s stated) Kind() quantity.Kind { return quantity.Length }
func (s stated) SI() (float64, bool) { return s.x, s.given }

func sum(x []float64) (float64, string) {
	total := 0.0
	for _, one := range x {
		total += one
	}
	return total, ""
}

func address(name string) Address { return Address{Subject: "s", Name: name, Case: Always} }

func inputs(nodes ...*Node) []Input {
	out := make([]Input, len(nodes))
	for i, n := range nodes {
		out[i] = Input{"x", n}
	}
	return out
}

func TestGapsTravelAlongTheWorkings(t *testing.T) {
	l := NewLedger()
	a := File("a", stated{"/a", 1, true})
	b := File("b", stated{pointer: "/b"})
	first := l.Work(address("first"), Definition{}, "/a", sum, inputs(a, b)...)
	second := l.Work(address("second"), Definition{}, "/a", sum, inputs(first, b, a)...)
	if _, ok := second.Value(); ok || !slices.Equal(second.Gaps(), []Gap{{Pointer: "/b"}}) {
		t.Errorf("gaps are %v", second.Gaps())
	}
	if e := l.Columns()["second"]["s"]; !slices.Equal(e.Missing, []string{"/b"}) || len(e.In) != 0 {
		t.Errorf("clauses see %+v", e)
	}
	if v, gaps, err := l.Again(address("second"), "/b", 5); err != nil || len(gaps) != 0 || v.X != 12 {
		t.Errorf("with /b given it comes to %v, gaps %v, %v", v, gaps, err)
	}
	if got := second.Reads(); !slices.Equal(got, []string{"/a", "/b"}) {
		t.Errorf("it reads %v", got)
	}
}

func TestNoAnswerIsAGapWithItsReason(t *testing.T) {
	l := NewLedger()
	n := l.Work(address("n"), Definition{}, "/a", func([]float64) (float64, string) { return math.Inf(1), "the valve is shut" },
		inputs(Fixed("a", quantity.Number, 1, ""))...)
	if got := n.Gaps(); !slices.Equal(got, []Gap{{Why: "the valve is shut"}}) {
		t.Errorf("gaps are %v", got)
	}
}

// A sum and a product have known ranges: the sum of deviations is exact for a
// sum, and leaves the product's corner out only to second order.
func TestSpreadOfASum(t *testing.T) {
	for range 200 {
		x, y := rand.Float64(), rand.Float64()
		dx, dy := rand.Float64(), rand.Float64()
		n := Step("n", quantity.Length, "", "", sum,
			inputs(Row("x", quantity.Number, Within(x, x-dx, x+dx), "", "", ""), Row("y", quantity.Number, Within(y, y-dy, y+2*dy), "", "", ""))...)
		v, _ := n.Value()
		if math.Abs(v.Low-(x+y-dx-dy)) > 1e-12 || math.Abs(v.High-(x+y+dx+2*dy)) > 1e-12 {
			t.Fatalf("spread of the sum is %v", v)
		}
	}
}

func TestOneSharedInputMovesAllThatUseItTogether(t *testing.T) {
	shared := Row("x", quantity.Number, Within(1, 0.5, 2), "", "", "")
	n := Step("n", quantity.Number, "x - x", "", func(x []float64) (float64, string) { return x[0] - x[0], "" }, inputs(shared)...)
	if v, _ := n.Value(); v.Low != 0 || v.High != 0 {
		t.Errorf("x - x ranges over %v", v)
	}
}

// Working a quantity again with the value that stands there already changes nothing.
func TestAgainWithTheSameValueIsTheSame(t *testing.T) {
	for range 100 {
		l := NewLedger()
		nodes := []*Node{File("a", stated{"/a", rand.Float64(), true}), Row("b", quantity.Number, Within(1, rand.Float64(), 1+rand.Float64()), "", "", "")}
		for i := range 8 {
			in := inputs(nodes[rand.IntN(len(nodes))], nodes[rand.IntN(len(nodes))])
			a := address("n")
			a.Water = string(rune('a' + i))
			nodes = append(nodes, l.Work(a, Definition{}, "", sum, in...))
		}
		last := nodes[len(nodes)-1]
		x, _ := nodes[0].Value()
		again, _, err := l.Again(last.Address, "/a", x.X)
		if was, _ := last.Value(); err != nil || again.X != was.X {
			t.Fatalf("%v became %v, %v", was, again, err)
		}
	}
}

func TestColumnsKeepTheEdgesOfACase(t *testing.T) {
	l := NewLedger()
	for i, w := range []string{"low", "usual", "high"} {
		x := []float64{3, 1, 2}[i]
		l.Work(Address{Subject: "s", Name: "n", Case: RunClean, Water: w}, Definition{}, "/s", sum, inputs(Fixed("x", quantity.Number, x, ""))...)
	}
	got := l.Columns()["n"]["s"].In[RunClean]
	if len(got) != 2 || got[0].Value.X != 1 || got[0].When != "run_clean, water usual" || got[1].Value.X != 3 {
		t.Errorf("the case ranges over %+v", got)
	}
}

func TestAssumptionsAreListedOnce(t *testing.T) {
	l := NewLedger()
	a := Assume("opening", quantity.Fraction, Exactly(1), "/v/open", "assumptions", "project judgement")
	l.Work(address("one"), Definition{}, "", sum, inputs(a)...)
	l.Work(address("two"), Definition{}, "", sum, inputs(a, a)...)
	if got := l.Assumptions(); len(got) != 1 || got[0] != a {
		t.Errorf("assumed is %v", got)
	}
}
