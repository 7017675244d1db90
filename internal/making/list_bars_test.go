package making

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// fewest is the least number of bars that hold lengths, found by trying every way.
func fewest(lengths []float64, stock, kerf float64) int {
	best := len(lengths)
	var try func(i int, room []float64)
	try = func(i int, room []float64) {
		if len(room) >= best && i < len(lengths) {
			return
		}
		if i == len(lengths) {
			best = min(best, len(room))
			return
		}
		for k := range room {
			if lengths[i] <= room[k]+1e-9 {
				next := slices.Clone(room)
				next[k] -= lengths[i] + kerf
				try(i+1, next)
			}
		}
		try(i+1, append(slices.Clone(room), stock-lengths[i]-kerf))
	}
	try(0, nil)
	return best
}

// The example in which first fit decreasing is as bad as it gets: nine bars would do, and it takes eleven.
//
// Source: Johnson, Demers, Ullman, Garey and Graham 1974, Worst-case performance bounds for simple one-dimensional packing
// algorithms, SIAM J. Comput. 3, example for the bound 11/9; Garey and Johnson 1979, Computers and Intractability, section 6.1.
func TestTheWorstExampleOfFirstFitDecreasing(t *testing.T) {
	const e = 0.01
	var lengths []float64
	for _, one := range []struct {
		count int
		long  float64
	}{{6, 0.5 + e}, {6, 0.25 + 2*e}, {6, 0.25 + e}, {12, 0.25 - 2*e}} {
		for range one.count {
			lengths = append(lengths, one.long)
		}
	}
	bars, left := Nest(lengths, nil, 1, 0)
	if len(bars) != 11 || len(left) != 0 {
		t.Errorf("it takes %d bars, with %v left", len(bars), left)
	}
}

// Never more than 11/9 of the fewest and 6/9 of a bar.
//
// Source: Dosa 2007, The tight bound of first fit decreasing bin-packing algorithm is FFD(I) <= 11/9 OPT(I) + 6/9.
func TestNearTheFewestBars(t *testing.T) {
	for range 300 {
		lengths := make([]float64, 1+rand.IntN(9))
		for i := range lengths {
			lengths[i] = 0.05 + rand.Float64()*5.9
		}
		kerf := rand.Float64() * 0.004
		bars, left := Nest(lengths, nil, 6, kerf)
		if most := 11.0/9*float64(fewest(lengths, 6, kerf)) + 6.0/9; float64(len(bars)) > most || len(left) > 0 {
			t.Fatalf("%v: %d bars, at the most %v; left %v", lengths, len(bars), most, left)
		}
	}
}

// The saw takes its part at each cut, but none where a bar is used up to its end.
//
// Source: counted by hand: six pieces of 1 m want 6 m and five cuts; a 6 m bar has no room for the cuts.
func TestKerfs(t *testing.T) {
	metre := []float64{1, 1, 1, 1, 1, 1}
	for _, c := range []struct {
		kerf, stock float64
		bars        int
	}{{0, 6, 1}, {0.002, 6, 2}, {0.002, 6.01, 1}, {0.003, 6.01, 2}, {0.2, 1, 6}} {
		if bars, _ := Nest(metre, nil, c.stock, c.kerf); len(bars) != c.bars {
			t.Errorf("kerf %v, stock %v: %d bars, not %d", c.kerf, c.stock, len(bars), c.bars)
		}
	}
	bars, left := Nest([]float64{2.4, 7, 1, math.NaN(), 0, math.Inf(1)}, []float64{2.4}, 6, 0.002)
	if len(bars) != 2 || !slices.Equal(bars[0], []int{0}) || !slices.Equal(bars[1], []int{2}) || !slices.Equal(left, []int{1, 3, 4, 5}) {
		t.Errorf("what is there goes first: %v, left %v", bars, left)
	}
}

// Each length lies on one bar, and no bar holds more than it is long.
func FuzzNest(f *testing.F) {
	f.Add(uint64(1), 6.0, 0.002)
	f.Fuzz(func(t *testing.T, seed uint64, stock, kerf float64) {
		if !(stock > 0.1 && stock < 100 && kerf >= 0 && kerf < 0.1) {
			return
		}
		r := rand.New(rand.NewPCG(seed, 1))
		lengths := make([]float64, r.IntN(60))
		for i := range lengths {
			lengths[i] = r.Float64() * stock * 1.2
		}
		bars, left := Nest(lengths, nil, stock, kerf)
		seen := slices.Clone(left)
		for _, bar := range bars {
			long := 0.0
			for i, k := range bar {
				if long += lengths[k]; i > 0 {
					long += kerf
				}
			}
			if seen = append(seen, bar...); long > stock+1e-6 {
				t.Fatalf("%v m on a bar of %v m", long, stock)
			}
		}
		slices.Sort(seen)
		if len(slices.Compact(seen)) != len(lengths) {
			t.Fatalf("%d of %d lengths are laid", len(seen), len(lengths))
		}
	})
}

// Runs longer than the stock are joined by couplings, whose gap counts.
//
// Source: geometry, counted by hand: 2 x 6 m and a gap of 3 mm make 12.003 m.
func TestRunsLongerThanTheStock(t *testing.T) {
	for _, c := range []struct {
		long   float64
		pieces int
	}{{5, 1}, {6, 1}, {6.004, 2}, {12.003, 2}, {12.004, 3}, {17.99, 3}, {20, 4}} {
		got := Joined(c.long, 6, 0.003)
		if len(got) != c.pieces {
			t.Errorf("%v m is cut into %v", c.long, got)
		}
		sum := 0.0
		for _, l := range got {
			sum += l
		}
		if total := sum + 0.003*float64(len(got)-1); math.Abs(total-c.long) > 1e-9 {
			t.Errorf("%v m in %v makes %v", c.long, got, total)
		}
		for _, l := range got {
			if l > 6+1e-9 || l <= 0 {
				t.Errorf("%v m has a piece of %v", c.long, l)
			}
		}
	}
	for _, bad := range [][3]float64{{0, 6, 0}, {-1, 6, 0}, {math.NaN(), 6, 0}, {1, 0, 0}, {1, 6, math.NaN()}, {1e9, 6, 0}} {
		if got := Joined(bad[0], bad[1], bad[2]); got != nil {
			t.Errorf("%v is cut into %d pieces", bad, len(got))
		}
	}
}
