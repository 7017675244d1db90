package marking

import (
	"fmt"
	"regexp"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// factors tries a 2 or a 4 that was left out of a formula in which it stands, or put in twice,
// and one at the last step.
func (k *marker) factors(r *reach, _ *entry) []attempt {
	var out []attempt
	if r.target.Kind == quantity.Temperature {
		return nil
	}
	for _, f := range []struct {
		name, digit string
		times       float64
	}{{factorTwo, "2", 2}, {factorFour, "4", 4}} {
		for _, step := range r.steps {
			v, known := r.value(step)
			if !known || step == r.target || !standsIn(step.Formula, f.digit) {
				continue
			}
			for _, t := range []float64{f.times, 1 / f.times} {
				out = append(out, attempt{name: f.name, words: "the " + f.digit + " of `" + step.Formula + "` was left out or put in twice: " + step.Title,
					changes: []working.Change{{Node: step, X: v * t}}})
			}
		}
		where := "in the last step"
		if standsIn(r.target.Formula, f.digit) {
			where = "as if the " + f.digit + " of `" + r.target.Formula + "` was left out or put in twice"
		}
		out = append(out,
			attempt{name: f.name, words: f.digit + " times too much, " + where, last: times(f.times)},
			attempt{name: f.name, words: f.digit + " times too little, " + where, last: times(1 / f.times)})
	}
	return out
}

// lone finds the whole numbers of a formula that are factors: no exponents, and no part of another number or a name.
var lone = regexp.MustCompile(`(^|[^A-Za-z0-9.^])([24])($|[^0-9.A-Za-z]|[A-Zg])`)

// standsIn says that a formula has a digit as a factor. Under a root it is none.
func standsIn(formula, digit string) bool {
	if strings.Contains(formula, "sqrt") {
		return false
	}
	for _, found := range lone.FindAllStringSubmatch(formula, -1) {
		if found[2] == digit {
			return true
		}
	}
	return false
}

// frictions tries the friction factor of Fanning, a quarter of Darcy's, in all straight pipe on the
// way, and Darcy's in the formula that wants Fanning's. The friction of a piece goes with f and with
// L alike, so the working is done again with the length changed by as much: what is lost at an
// entrance in the same piece stays as it is.
//
//	h = f L/D V^2/2g with Darcy's f = 4 times Fanning's
//
// Source: Massey 1989, Mechanics of Fluids, 7.2 (from memory).
func (k *marker) frictions(r *reach, _ *entry) []attempt {
	var out []attempt
	for _, way := range []struct {
		words string
		times float64
	}{{"Fanning's friction factor was put into Darcy's formula, which wants four times as much", 0.25}, {"Darcy's friction factor was put into Fanning's formula, which wants a quarter of it", 4}} {
		var changes []working.Change
		for _, step := range r.steps {
			for _, in := range step.Inputs {
				if v, known := r.value(in.Node); known && in.Symbol == "L" && step.Address.Name == "head_loss" {
					changes = append(changes, working.Change{Node: in.Node, In: step, X: way.times * v})
				}
			}
		}
		if len(changes) > 0 {
			out = append(out, attempt{name: fanningDarcy, words: way.words, changes: changes})
		}
	}
	return out
}

// fittings tries a line without the loss of one of its fittings, and without any.
func (k *marker) fittings(r *reach, _ *entry) []attempt {
	var fittings []*working.Node
	var out []attempt
	for _, step := range r.steps {
		for _, n := range piecesOf(step) {
			if piece := k.piece(n); piece != nil && !straight[piece.Kind] {
				fittings = append(fittings, n)
				out = append(out, attempt{name: forgottenFitting, changes: r.by(times(0), n),
					words: fmt.Sprintf("the head lost in piece %d of %s (%s) was left out", piece.Index+1, piece.Line.ID, strings.ReplaceAll(piece.Kind, "_", " "))})
			}
		}
	}
	if len(fittings) > 1 {
		out = append(out, attempt{name: forgottenFitting, words: "the head lost in all fittings was left out", changes: r.by(times(0), fittings...)})
	}
	return out
}

// straight is the kinds of pieces that are pipe and no fitting.
var straight = map[string]bool{"across": true, "rise": true, "fall": true, "slope": true, "hose": true, "standpipe": true}

// piece is the piece of a line that a quantity belongs to.
func (k *marker) piece(n *working.Node) *system.Piece {
	for _, l := range k.System.Lines {
		for _, p := range l.Pieces {
			if p.ID() == n.Address.Subject {
				return p
			}
		}
	}
	return nil
}
