package drawing

import "strconv"

// A Box is how shares lie, each from 0 to 1.
type Box struct {
	ID, Name                              string // ID: what its parts are found by in the drawing
	Least, Lower, Median, Upper, Greatest float64
	Mean                                  float64
}

// Boxes draws how shares lie: for each a box from quartile to quartile with the median in it, a line
// from the least to the greatest, and a ring at the mean. It answers with why if there is nothing to draw.
//
// Source: the box is that of Tukey 1977, Exploratory Data Analysis, chapter 2 (from memory), its line drawn to the extremes.
func Boxes(title, description string, list []Box) (svg, why string) {
	if len(list) == 0 {
		return "", "there is nothing to draw"
	}
	for _, b := range list {
		for _, x := range []float64{b.Least, b.Lower, b.Median, b.Upper, b.Greatest, b.Mean} {
			if !finite(x) || x < 0 || x > 1 {
				return "", "a share of " + b.ID + " is not between none and all"
			}
		}
	}
	const left, right, top, row, half, foot = 70.0, pageWidth - 6, 12.0, 7.0, 1.8, 12.0
	bottom := top + row*float64(len(list))
	if bottom+foot > pageHeight {
		return "", "there is more than a page holds"
	}
	s := &sheet{width: pageWidth, height: bottom + foot}
	at := func(share float64) float64 { return left + (right-left)*share }
	s.bold(heading, start, point{0, 5}, fitted(heading, pageWidth, title))
	for percent := 0; percent <= 100; percent += 25 {
		x := at(float64(percent) / 100)
		s.line("", hair, point{x, top}, point{x, bottom + 1.2})
		s.text("tick", small, middle, point{x, bottom + 5}, strconv.Itoa(percent)+" %")
	}
	for i, b := range list {
		y := top + row*(float64(i)+0.5)
		s.text("name:"+b.ID, small, end, point{left - 3, y + 1.1}, fitted(small, left-4, b.Name))
		s.line("range:"+b.ID, narrow, point{at(b.Least), y}, point{at(b.Greatest), y})
		s.path("box:"+b.ID, narrow, "#fff", point{at(b.Lower), y - half}, point{at(b.Upper), y - half}, point{at(b.Upper), y + half}, point{at(b.Lower), y + half})
		s.line("median:"+b.ID, heavy, point{at(b.Median), y - half}, point{at(b.Median), y + half})
		s.circle("mean:"+b.ID, narrow, "#fff", point{at(b.Mean), y}, 0.9)
	}
	return s.svg(title, description), ""
}
