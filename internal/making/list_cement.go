package making

import (
	"fmt"
	"math"
)

// bond is cemented joints of one size.
type bond struct {
	inches float64
	count  int
}

// quart is the US liquid quart, m3: a quarter of 231 cubic inches (NIST Handbook 44, appendix C).
const quart = 231 * 0.0254 * 0.0254 * 0.0254 / 4

// CementUsed is V, the solvent cement that joints of a size take.
//
//	V = n quart/(joints to the quart)
//
//	n     number of joints, from 0
//	size  nominal, inches, from 1/2 to 6: 1/2 300, 3/4 200, 1 125, 1-1/2 90, 2 60, 3 40, 4 30, 6 10 joints to the quart;
//	      a size between two takes as much as the larger
//
// Of primer half as much. Above 6 in, and for no number of joints, it answers NaN. Units m3.
// Source: a US pipe maker's technical manual of plastic pipe, p. 96, joints to the quart of cement.
func CementUsed(inches float64, joints int) (float64, string) {
	for _, row := range []struct{ most, joints float64 }{{0.5, 300}, {0.75, 200}, {1, 125}, {1.5, 90}, {2, 60}, {3, 40}, {4, 30}, {6, 10}} {
		if inches > 0 && joints >= 0 && inches <= row.most*1.02 { // a bore of metric pipe is a little more
			return float64(joints) * quart / row.joints, ""
		}
	}
	return math.NaN(), "the table of cement goes from 1/2 to 6 in"
}

// cementParts enters the cement and the primer for all the cemented joints.
func (b *lister) cementParts() {
	volume, joints := 0.0, 0
	for _, one := range b.cemented {
		v, why := CementUsed(one.inches, one.count)
		if why != "" {
			continue // of a size that is in no table
		}
		volume, joints = volume+v, joints+one.count
	}
	if joints == 0 {
		return
	}
	for _, tin := range []struct {
		name, part string
		volume     float64
	}{{"solvent cement", "cement", volume}, {"primer", "primer", volume / 2}} {
		b.add(Part{Name: tin.name, Spec: fmt.Sprintf("for %d joints", joints), Volume: tin.volume,
			Use: "all lines", Step: stepCement, Count: 1, At: "/lines"}, sold{part: tin.part, volume: tin.volume})
	}
}
