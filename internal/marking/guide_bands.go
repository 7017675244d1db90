package marking

import (
	"errors"
	"math"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
)

// measure is what a guide gives values of: a quantity, with the unit of the guide.
type measure struct {
	name  string
	title string
	kind  quantity.Kind
	unit  string // empty for plain numbers; of a cost its currency
}

// value reads a value of a measure.
func (r *guideReader) value(at string, w written, m measure) (quantity.Quantity, bool) {
	q, err := quantity.Parse(m.kind, string(w))
	var why *quantity.Error
	if errors.As(err, &why) {
		write := why.Write
		if _, err := quantity.Parse(m.kind, string(w)+" "+m.unit); err == nil {
			write = string(w) + " " + m.unit
		} else if m.unit != "" && write == m.kind.Example() {
			write = "it in " + m.unit
		}
		r.Add(at, quoted(why.Text)+": "+why.Problem, "write "+write)
		return q, false
	}
	if ours := review.BasisOf(m.title); m.kind == quantity.Concentration && q.Basis != "" && q.Basis != ours {
		found, write := "as "+ours, "give it as "+ours
		if ours == "" {
			found, write = "without such a sign", "leave "+quoted(q.Basis)+" out"
		}
		r.Add(at, quoted(string(w))+", where "+m.name+" is worked out "+found, write)
		return q, false
	}
	return q, err == nil
}

// tolerance reads how far off a value may be.
func (r *guideReader) tolerance(at string, f bandForm, m measure) (Tolerance, bool) {
	off := m
	if m.kind == quantity.Temperature {
		off.kind = quantity.TemperatureDifference
	}
	scale := func(at string) bool {
		if !review.OnAScale(m.kind, m.name) {
			return false
		}
		r.Add(at, "a share of "+m.name+", whose scale has no natural zero", "write how far off with its unit, as in `within: "+strings.TrimSpace("0.5 "+m.unit)+"`")
		return true
	}
	switch {
	case f.Within == nil && f.Ratio == nil:
		r.Add(at, "a band that does not say how near", "add `within`, as in `within: 2 %`, or `ratio`, as in `ratio: 1.25`")
		return Tolerance{}, false
	case f.Within != nil && f.Ratio != nil:
		r.Add(at+"/ratio", "`ratio` beside `within`", "keep one of them")
		return Tolerance{}, false
	case f.Ratio != nil:
		if scale(at + "/ratio") {
			return Tolerance{}, false
		}
		return r.floor(at, f, off, Tolerance{How: Ratio, T: *f.Ratio - 1})
	case strings.HasSuffix(strings.TrimSpace(string(*f.Within)), "%"):
		if scale(at + "/within") {
			return Tolerance{}, false
		}
		t, ok := r.above(at+"/within", *f.Within, measure{kind: quantity.Fraction})
		if !ok {
			return Tolerance{}, false
		}
		return r.floor(at, f, off, Tolerance{How: Relative, T: t})
	}
	plain, err := quantity.Parse(quantity.Number, string(*f.Within))
	if err == nil && len(m.kind.Units()) > 0 && m.kind != quantity.Fraction && !review.OnAScale(m.kind, m.name) {
		write := "write " + quoted(MarksNumber(100*plain.SI)+" %") + " for a share of the right value"
		if m.unit != "" {
			write += ", or " + quoted(string(*f.Within)+" "+m.unit)
		}
		r.Add(at+"/within", quoted(string(*f.Within))+": a unit is missing", write)
		return Tolerance{}, false
	}
	t, ok := r.above(at+"/within", *f.Within, off)
	if f.Floor != nil {
		r.Add(at+"/floor", "a floor under a tolerance that has none: it is no share", "take `floor` out")
		ok = false
	}
	return Tolerance{How: Absolute, T: t}, ok
}

// floor reads what is near enough in any case.
func (r *guideReader) floor(at string, f bandForm, m measure, t Tolerance) (_ Tolerance, ok bool) {
	if f.Floor == nil {
		return t, true
	}
	t.Floor, ok = r.above(at+"/floor", *f.Floor, m)
	return t, ok
}

// above reads a value that is not below zero.
func (r *guideReader) above(at string, w written, m measure) (float64, bool) {
	q, ok := r.value(at, w, m)
	switch {
	case !ok:
	case q.SI < 0:
		r.Add(at, quoted(string(w))+", which is below zero", "write how far off it may be to either side: 0 or more")
		ok = false
	case m.kind == quantity.Money && q.Unit != m.unit:
		r.Add(at, quoted(string(w))+" beside bounds in "+m.unit, "write it in "+m.unit)
		ok = false
	}
	return q.SI, ok
}

// bands reads bands, of which the nearest stands first, and gives the most that they are worth.
func (r *guideReader) bands(at string, forms []bandForm, m measure) (bands []Band, top float64) {
	for j, f := range forms {
		here := system.Element(at, j)
		if !r.Sound(here + "/marks") {
			f.Marks = math.NaN() // which is neither more nor less than anything
		}
		top = math.Max(top, f.Marks)
		t, ok := r.tolerance(here, f, m)
		if !ok {
			continue
		}
		band := Band{t, f.Marks}
		for _, nearer := range bands {
			if nearer.Within.covers(t) {
				r.Add(here, "a band that no value reaches: the one before it, within "+nearer.Within.Words(m.kind, m.unit)+", is as wide", "put the nearest band first, or take this one out")
				break
			}
			if t.covers(nearer.Within) && band.Marks >= nearer.Marks {
				r.Add(here+"/marks", quoted(MarksNumber(band.Marks))+", no less than a nearer band gives", "write less than "+MarksNumber(nearer.Marks)+", or take the nearer band out")
				break
			}
		}
		bands = append(bands, band)
	}
	return bands, top
}

// top wants the best of the bands to give the marks of the item.
func (r *guideReader) top(at string, top, marks float64) {
	if math.Abs(top-marks) > guard {
		r.Add(at, "bands of which the best gives "+MarksNumber(top)+", in an item of "+MarksWords(marks), "give the best band "+MarksWords(marks)+", or the item "+MarksNumber(top))
	}
}

// covers says that a value which is right by the other tolerance is right by this one, whatever the right value is.
func (t Tolerance) covers(other Tolerance) bool {
	up, down, floor := t.shares()
	up2, down2, floor2 := other.shares()
	return up >= up2 && down >= down2 && floor >= floor2
}

// shares is a tolerance as the shares of the right value that it reaches above and below, and what it reaches in any case.
func (t Tolerance) shares() (up, down, floor float64) {
	switch t.How {
	case Absolute:
		return 0, 0, t.T
	case Relative:
		return t.T, t.T, t.Floor
	}
	return t.T, t.T / (1 + t.T), t.Floor
}
