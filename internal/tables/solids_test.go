package tables

import (
	"bytes"
	"io/fs"
	"math"
	"strings"
	"testing"

	"dryfit/internal/quantity"
)

// The classes go past the speeds that are published: half of the mass sinks between the 7 mm/s of soft droppings and the 17 mm/s
// of a farm's settled solids (World Aquaculture Society, abstract 165932), and none faster than whole salmon droppings, 60 mm/s.
func TestClassesGoPastThePublishedSpeeds(t *testing.T) {
	sum, median := 0.0, 0.0
	classes := Embedded().SolidsClasses()
	for _, c := range classes {
		if sum += c.Share; median == 0 && sum >= 0.5 {
			median = c.Speed
		}
	}
	if math.Abs(sum-1) > 1e-9 || median < 0.007 || median > 0.017 || classes[len(classes)-1].Speed > 0.060 {
		t.Errorf("shares come to %v, the median is %v m/s, the fastest %v m/s", sum, median, classes[len(classes)-1].Speed)
	}
	// Chen et al. 1993, at second hand: 40 to 70 % of the mass in a loop is finer than 20 to 30 micrometres.
	settles, _ := Embedded().SolidsFigure("settles", quantity.Fraction).Value()
	if settles.Low < 0.30 || settles.High > 0.60 {
		t.Errorf("between %v and %v settle", settles.Low, settles.High)
	}
	// Davidson and Summerfelt 2005: 37.1 % against 77.9 %.
	swirl, _ := Embedded().SolidsFigure("swirl_over_radial", quantity.Number).Value()
	if math.Abs(swirl.X-0.371/0.779) > 0.001 {
		t.Errorf("a swirl settler catches %v of what a radial one does", swirl.X)
	}
}

func TestClassesMustComeToOne(t *testing.T) {
	files := copyTables(t)
	data, err := fs.ReadFile(files, "solids.csv")
	if err != nil {
		t.Fatal(err)
	}
	files["solids.csv"].Data = bytes.Replace(data, []byte(",7,0.30,"), []byte(",7,0.20,"), 1)
	if _, err := load(files); err == nil || !strings.Contains(err.Error(), "should to 1") {
		t.Errorf("shares that come to 0.9 are read: %v", err)
	}
}
