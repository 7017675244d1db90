package drawing

import (
	"math"
	"strconv"
	"testing"

	"dryfit/internal/working"
)

// Pythagoras: a slope of 45 degrees that falls 300 mm is 424.3 mm long, and stands as far out as it falls.
func TestRunIsToScale(t *testing.T) {
	s, l := load(t, demo)
	svg, why := Run(s, l, "solids-run")
	p := read(t, svg, why)
	across := p.part("solids-run/3").points()
	mm := 675 / math.Abs(across[1].x-across[0].x) // 675 mm stand in the file
	for piece, want := range map[string]float64{"solids-run/1": 650, "solids-run/5": 70, "solids-run/7": 300 * math.Sqrt2, "solids-run/9": 200, "solids-run/16": 100} {
		at := p.part(piece).points()
		stands(t, piece, mm*math.Hypot(at[1].x-at[0].x, at[1].y-at[0].y), want, 0.5)
	}
	slope := p.part("solids-run/7").points()
	stands(t, "run of the slope", mm*(slope[1].x-slope[0].x), 300, 0.5)
	stands(t, "fall of the slope", mm*(slope[1].y-slope[0].y), 300, 0.5)
	if got := p.part("start solids-run/3").text; got != "1050" { // 380 + 670
		t.Errorf("solids-run/3 starts at %s in the table", got)
	}
}

// Between its two marks a pipe is as long as it is cut.
func TestCutMarksAreACutApart(t *testing.T) {
	s, l := load(t, demo)
	for _, line := range []string{"solids-run", "riser"} {
		svg, why := Run(s, l, line)
		p := read(t, svg, why)
		marks := p.parts("cut")
		first := 0
		for _, piece := range s.Line(line).Pieces {
			n := l.Find(working.Address{Subject: piece.ID(), Name: "cut_length", Case: working.Always})
			if n == nil {
				continue
			}
			v, _ := n.Value()
			mid := func(e element) point {
				at := e.points()
				return point{(at[0].x + at[1].x) / 2, (at[0].y + at[1].y) / 2}
			}
			a, b := mid(marks[first]), mid(marks[first+1])
			first += 2
			scale := lengthOf(t, p, s.Line(line).ID)
			stands(t, "cut of "+piece.ID(), scale*math.Hypot(a.x-b.x, a.y-b.y), v.X*1000, 0.5)
			if got, _ := strconv.ParseFloat(p.part("cut "+piece.ID()).text, 64); math.Abs(got-v.X*1000) > 0.51 {
				t.Errorf("%s is cut to %v in the table, not to %.1f", piece.ID(), got, v.X*1000)
			}
		}
		if first != len(marks) {
			t.Errorf("%s has %d marks, and %d that a cut stands behind", line, len(marks), first)
		}
	}
}

// lengthOf is the millimetres for one of paper, from a length of the file.
func lengthOf(t *testing.T, p picture, line string) float64 {
	known := map[string]struct {
		piece string
		long  float64
	}{"solids-run": {"solids-run/3", 675}, "riser": {"riser/7", 1600}}[line]
	at := p.part(known.piece).points()
	return known.long / math.Hypot(at[1].x-at[0].x, at[1].y-at[0].y)
}

// A cuff is clamped and an open end is no joint, whatever the line says of its joints.
func TestJointsOfTheTable(t *testing.T) {
	s, l := load(t, demo)
	for line, want := range map[string]map[string]int{"settler-waste": {"cemented": 3}, "bed-return": {"cemented": 1, "uncemented": 1}, "draw-down": {"uncemented": 3}} {
		svg, why := Run(s, l, line)
		got := map[string]int{}
		for _, e := range read(t, svg, why).parts("joint of") {
			got[e.text]++
		}
		for joint, n := range want {
			if got[joint] != n {
				t.Errorf("%s: %d %s, not %d: %v", line, got[joint], joint, n, got)
			}
		}
	}
}

func TestBalloonsAreReadable(t *testing.T) {
	s, l := load(t, demo)
	for _, line := range s.Lines {
		svg, why := Run(s, l, line.ID)
		p := read(t, svg, why)
		balloons := p.parts("balloon")
		if len(balloons) != len(line.Pieces) {
			t.Errorf("%s has %d balloons for %d pieces", line.ID, len(balloons), len(line.Pieces))
		}
		for i, a := range balloons {
			for _, b := range balloons[:i] {
				if math.Hypot(a.num("cx")-b.num("cx"), a.num("cy")-b.num("cy")) < a.num("r")+b.num("r") {
					t.Errorf("%s: two balloons overlap", line.ID)
				}
			}
		}
	}
	if svg, why := Run(s, l, "no-such"); svg != "" || why == "" {
		t.Error("a line that is not there was drawn")
	}
}
