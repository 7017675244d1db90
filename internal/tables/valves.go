package tables

import (
	"fmt"
	"io/fs"
	"maps"
	"math"
	"slices"
	"strings"
)

type valvePoint struct {
	open, k, least, most float64
	Origin
}

// ValveLoss is the loss coefficient of a valve at one opening.
type ValveLoss struct {
	K, Least, Most float64
	Shut           bool // no flow: K stands for nothing
	Beyond         bool // nearer shut than any figure of the table: K was carried on and is rather too low
	Origin              // of the nearest row
}

func (t *Tables) readValves(files fs.FS) error {
	t.valves = map[string][]valvePoint{}
	err := each(files, "valves.csv", "kind open_percent k k_least k_most spread_source", func(r row) {
		kind := r.text("kind")
		r.key(kind, r.text("open_percent"))
		r.text("spread_source")
		v := valvePoint{r.positive("open_percent") / 100, r.positive("k"), r.positive("k_least"), r.positive("k_most"), r.origin()}
		r.ordered("least, own and most K", v.least, v.k, v.most)
		before := t.valves[kind]
		if len(before) == 0 && v.open != 1 {
			r.wrong("the first row of a valve should be 100 %% open")
		}
		if n := len(before); n > 0 && (v.open >= before[n-1].open || v.k <= before[n-1].k) {
			r.wrong("rows of a valve should close step by step and lose more at each")
		}
		t.valves[kind] = append(before, v)
	})
	for kind, points := range t.valves {
		if err == nil && len(points) < 2 {
			err = fmt.Errorf("valves.csv: %s needs two rows", kind)
		}
	}
	return err
}

// ValveLoss gives the loss coefficient K of a valve open in part.
//
//	log K = log K1 + (log K2 - log K1) (open1 - open)/(open1 - open2)
//
// opening: share of the travel of its handle or stem, 0 (shut) to 1.
// kind: ball, gate, butterfly, diaphragm.
//
// Below the least opening of the table the last straight is carried on and
// Beyond says so; at 0 the valve is Shut. An opening outside 0 to 1 and an
// unknown kind are errors.
//
// Source: figures of valves.csv; that log K goes straight between them agrees
// with Weisbach's cock and gate within 15 %.
func (t *Tables) ValveLoss(kind string, opening float64) (ValveLoss, error) {
	points, ok := t.valves[kind]
	if !ok {
		return ValveLoss{}, fmt.Errorf("no losses are known for a %q valve part open: write one of %s", kind, strings.Join(t.Valves(), ", "))
	}
	if !(opening >= 0 && opening <= 1) {
		return ValveLoss{}, fmt.Errorf("a valve cannot be %g open: write a share from 0 to 1", opening)
	}
	if opening == 0 {
		return ValveLoss{Shut: true, Origin: points[len(points)-1].Origin}, nil
	}
	i := slices.IndexFunc(points, func(p valvePoint) bool { return p.open <= opening })
	beyond := i < 0
	if beyond {
		i = len(points) - 1
	}
	i = max(i, 1)
	a, b := points[i-1], points[i]
	share := (a.open - opening) / (a.open - b.open)
	between := func(x, y float64) float64 { return x * math.Pow(y/x, share) }
	near := a
	if share > 0.5 {
		near = b
	}
	return ValveLoss{K: between(a.k, b.k), Least: between(a.least, b.least), Most: between(a.most, b.most), Beyond: beyond, Origin: near.Origin}, nil
}

// Valves lists the kinds of valve with known losses when part open.
func (t *Tables) Valves() []string { return slices.Sorted(maps.Keys(t.valves)) }
