package drawing

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// Half of the marks stand half way along the axis; the box, its line, the median and the mean are where the shares are.
func TestBoxes(t *testing.T) {
	svg, why := Boxes("Share of the marks", "What the class got.", []Box{
		{ID: "all of it", Least: 1, Lower: 1, Median: 1, Upper: 1, Greatest: 1, Mean: 1},
		{ID: "a spread", Least: 0, Lower: 0.25, Median: 0.5, Upper: 0.75, Greatest: 1, Mean: 0.6},
	})
	if why != "" {
		t.Fatal(why)
	}
	number := func(part, attribute string) float64 {
		for _, tag := range regexp.MustCompile(`<[^>]*>`).FindAllString(svg, -1) {
			if !strings.Contains(tag, `data-part="`+part+`"`) {
				continue
			}
			found := regexp.MustCompile(` ` + attribute + `="([^",]*)`).FindStringSubmatch(tag)
			if found == nil {
				t.Fatalf("%s has no %s: %s", part, attribute, tag)
			}
			x, err := strconv.ParseFloat(found[1], 64)
			if err != nil {
				t.Fatal(err)
			}
			return x
		}
		t.Fatalf("%s is not drawn", part)
		return 0
	}
	none, all := number("range:a spread", "x1"), number("range:a spread", "x2")
	for _, c := range []struct {
		part, attribute string
		share           float64
	}{{"median:a spread", "x1", 0.5}, {"box:a spread", "points", 0.25}, {"mean:a spread", "cx", 0.6}, {"median:all of it", "x1", 1}, {"range:all of it", "x1", 1}} {
		if got, want := number(c.part, c.attribute), none+(all-none)*c.share; math.Abs(got-want) > 0.01 {
			t.Errorf("%s stands at %v, and not at %v", c.part, got, want)
		}
	}
	if above, beneath := number("mean:all of it", "cy"), number("mean:a spread", "cy"); above >= beneath {
		t.Error("the first does not stand above the second")
	}
}

func TestBoxesThatAreNone(t *testing.T) {
	for _, list := range [][]Box{nil, make([]Box, 33), {{ID: "x", Mean: math.NaN()}}, {{ID: "x", Greatest: 1.5}}, {{ID: "x", Least: -0.1}}, {{ID: "x", Upper: math.Inf(1)}}} {
		if svg, why := Boxes("t", "d", list); svg != "" || why == "" {
			t.Errorf("%+v is drawn", list)
		}
	}
}
