package system

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
)

// TestHeightsOfTheDemo holds the walk against sums made by hand from the file:
// the height at the end of a piece above the paving, and its length, in mm.
func TestHeightsOfTheDemo(t *testing.T) {
	s := mustRead(t, "quarry-road.yaml", systemFile(t, "quarry-road.yaml"))
	for _, want := range []struct {
		id         string
		to, length float64
		how        string
	}{
		{"solids-run/0", 400, 0, "tank floor 380 + 20"},
		{"solids-run/1", 1050, 650, "to the hole at 380 + 670"},
		{"solids-run/2", 1050, 0, "the tee, on the same centreline"},
		{"solids-run/7", 750, 300 * math.Sqrt2, "to the settler's hole at 300 + 450, at 45 deg"},
		{"solids-run/16", 750 + 100/math.Sqrt2, 100, "100 along a slope of 45 deg"},
		{"solids-run/18", 865, 115 - 100/math.Sqrt2, "what is left to the mouth"},
		{"solids-run/19", 865, 0, "settler floor 300 + 565"},
		{"clear-run/5", 525, 330, "855 down to biofilter floor 225 + 300"},
		{"filtered-run/4", 680, 152, "832 down to 380 + 300"},
		{"bed-return/0", 380, 400, "the standpipe, from 780 down to the raft's floor"},
		{"bed-return/2", 300, 80, "380 down to the sump's hole"},
		{"riser/5", 1260, 970, "40 + 250 up to the crossing at 380 + 880"},
		{"riser/13", 1130, 130, "down to the outlet at 380 + 750"},
		{"settler-waste/0", 385, 0, "tail of the drain, 300 + 85"},
		{"settler-waste/1", 379, 30, "the cuff bends it down 6 to the hole at 300 + 79"},
		{"settler-waste/7", 150, 229 * math.Sqrt2, "down to the tap at 150"},
		{"draw-down/1", 1075, 605, "470 up to the crossing at 300 + 775"},
		{"draw-down/7", 320, 755, "down to 200 above the outlet at 120"},
		{"settler-overflow/3", 420, 555, "975 down to 420"},
	} {
		line, _, _ := strings.Cut(want.id, "/")
		for _, p := range s.Line(line).Pieces {
			if p.ID() != want.id {
				continue
			}
			to, known := p.To.Value()
			length, sure := p.Length.Value()
			if !known || !sure || math.Abs(to*1000-want.to) > 1e-6 || math.Abs(length*1000-want.length) > 1e-6 {
				t.Errorf("%s ends at %.3f with %.3f long, want %.3f and %.3f: %s", want.id, to*1000, length*1000, want.to, want.length, want.how)
			}
		}
	}
}

// piece reads a changed base and gives one of its pieces.
func piece(t *testing.T, text, line string, index int) *Piece {
	t.Helper()
	return mustRead(t, "x", []byte(text)).Line(line).Pieces[index]
}

func TestMissingHeights(t *testing.T) {
	// The tank's own height is not given: what hangs on it is not known, and says why.
	text := swap(t, "    stands_at: 300 mm\n", "")
	p := piece(t, text, "down", 1)
	if _, known := p.To.Value(); known || !slices.Equal(p.To.Missing(), []string{"/vessels/tank/stands_at"}) {
		t.Errorf("across in the tank's wall: %v, missing %v", known, p.To.Missing())
	}
	fall := piece(t, text, "down", 3)
	if _, known := fall.Length.Value(); known || !slices.Equal(fall.Length.Missing(), []string{"/vessels/tank/stands_at"}) || !fall.Fitted {
		t.Errorf("the fall: missing %v", fall.Length.Missing())
	}
	outlet := piece(t, text, "down", 4)
	if z, known := outlet.To.Value(); !known || math.Abs(z-0.4) > 1e-9 {
		t.Errorf("the outlet stands in the sump at %v", z)
	}
	// Between two marks of one vessel its own height drops out.
	p = piece(t, strings.Replace(text, "- outlet: {at: 850 mm, facing: level}", "- bend: 90 deg\n      - fall: fit\n      - outlet: {at: 700 mm, facing: down}", 1), "up", 8)
	if length, known := p.Length.Value(); !known || math.Abs(length-0.15) > 1e-9 {
		t.Errorf("the fall inside the tank is %v, %v", length, known)
	}
	// An end whose height is not given leaves the fit open.
	p = piece(t, swap(t, "{at: 400 mm, facing: down}", "{facing: down}"), "down", 3)
	if _, known := p.Length.Value(); known || !slices.Equal(p.Length.Missing(), []string{"/lines/down/pieces/4/outlet/at"}) {
		t.Errorf("the fall without an end: missing %v", p.Length.Missing())
	}
}

// TestLinear wants the sums to follow one value of the file when it is replaced.
func TestLinear(t *testing.T) {
	before := piece(t, base, "down", 3).Length
	after := piece(t, swap(t, "at: 600 mm", "at: 650 mm"), "down", 3).Length
	worked := 0.0
	for _, term := range before.Terms {
		v, _ := term.Number.SI()
		if term.Number.Pointer() == "/lines/down/pieces/0/through/at" {
			v = 0.65
		}
		worked += term.Factor * v
	}
	if again, _ := after.Value(); math.Abs(worked-again) > 1e-12 {
		t.Errorf("worked again %v, read again %v", worked, again)
	}
	if n := before.Minus(before); len(n.Terms) != 0 {
		t.Errorf("l - l = %v", n)
	}
}

const tees = `
  branch:
    from: up.split
    to: tank
    pipe: main
    pieces:
      - bend: 90 deg
      - rise: fit
      - outlet: {at: 500 mm, facing: up}
`

func TestTees(t *testing.T) {
	with := func(tee string) string {
		return swap(t, "- across: 500 mm", "- across: 200 mm\n      - tee: "+tee+"\n      - across: 300 mm") + tees[1:]
	}
	// The branch starts at the tee's height, 300 + 850, and falls to 300 + 500: a rise cannot.
	_, problems := Read("x", []byte(with("{id: split, way: through, third: line}")))
	if got := table(problems); !strings.Contains(got, "this rise would have to be -350 mm") {
		t.Error(got)
	}
	text := strings.NewReplacer("rise: fit\n      - outlet: {at: 500 mm, facing: up}", "fall: fit\n      - outlet: {at: 500 mm, facing: down}").Replace(with("{id: split, way: through, third: line}"))
	if length, _ := piece(t, text, "branch", 1).Length.Value(); math.Abs(length-0.35) > 1e-9 {
		t.Errorf("the branch falls %v", length)
	}
	// A row of four tees 100 mm apart in a level run is 300 mm long and stays level.
	row := strings.Replace(text, "third: line", "third: line, count: 4, every: 100 mm", 1)
	p := piece(t, row, "up", 5)
	length, _ := p.Length.Value()
	from, _ := p.From.Value()
	to, _ := p.To.Value()
	if math.Abs(length-0.3) > 1e-9 || math.Abs(from-to) > 1e-9 {
		t.Errorf("a row of tees: %v long, from %v to %v", length, from, to)
	}
	// A tee whose height hangs on the line that starts there.
	loop := strings.Replace(text, "    from: sump\n    to: tank\n", "    from: branch.back\n    to: tank\n", 1)
	loop = strings.Replace(loop, "      - intake: {at: 50 mm}\n", "", 1)
	loop = strings.Replace(loop, "- bend: 90 deg\n      - fall: fit\n      - outlet: {at: 500", "- bend: 90 deg\n      - tee: {id: back, way: through, third: line}\n      - fall: fit\n      - outlet: {at: 500", 1)
	if _, problems := Read("x", []byte(loop)); !strings.Contains(table(problems), "give this tee its height: `at`") {
		t.Error(table(problems))
	}
}

func TestOtherPieces(t *testing.T) {
	in := func(p *Piece) string {
		if p.In == nil {
			return ""
		}
		return p.In.ID
	}
	// A hose climbs by itself.
	p := piece(t, swap(t, "- bend: 90 deg\n      - fall: fit", "- hose: {length: 900 mm}"), "down", 2)
	from, _ := p.From.Value()
	to, _ := p.To.Value()
	if math.Abs(from-0.9) > 1e-9 || math.Abs(to-0.4) > 1e-9 {
		t.Errorf("the hose goes from %v to %v", from, to)
	}
	// A bell siphon goes down from its crest to the floor; a lid is crossed upright.
	bed := swap(t, "- through: {wall_of: tank, at: 600 mm, seal: {hole: 63.5 mm}}\n      - across: 100 mm\n      - bend: 90 deg", "- bell_siphon: {crest_at: 230 mm}\n      - through: {floor_of: tank, bulkhead: {hole: 76 mm}}")
	bed = strings.Replace(bed, "- outlet: {at: 400 mm, facing: down}", "- through: {lid_of: sump, at: 500 mm}\n      - fall: 100 mm\n      - outlet: {at: 400 mm, facing: down}", 1)
	bed = strings.Replace(bed, "stands_at: 300 mm", "stands_at: 800 mm", 1)
	p = piece(t, bed, "down", 0)
	if length, _ := p.Length.Value(); math.Abs(length-0.23) > 1e-9 || in(p) != "tank" || p.Fitted {
		t.Errorf("the bell siphon is %v long in %q", length, in(p))
	}
	if p = piece(t, bed, "down", 2); in(p) != "" {
		t.Errorf("the fall between floor and lid is in %q", in(p))
	}
	if p = piece(t, bed, "down", 4); in(p) != "sump" {
		t.Errorf("the fall under the lid is in %q", in(p))
	}
	// A siphon break inside the tank counts from the tank's floor.
	broken := swap(t, "- outlet: {at: 850 mm, facing: level}", "- bend: 90 deg\n      - fall: fit\n      - siphon_break: {count: 2, bore: 8 mm, at: 700 mm}\n      - fall: fit\n      - outlet: {at: 100 mm, facing: down}")
	p = piece(t, broken, "up", 9)
	if z, _ := p.From.Value(); math.Abs(z-1.0) > 1e-9 {
		t.Errorf("the siphon break stands at %v", z)
	}
	// Gradient in place of angle: 1 % over a rise of 10 mm is 1 m along the level.
	p = piece(t, swap(t, "- across: 500 mm", "- slope: {gradient: 1 %, rise: 10 mm}\n      - across: 500 mm"), "up", 4)
	if length, _ := p.Length.Value(); math.Abs(length-math.Hypot(1, 0.01)) > 1e-9 {
		t.Errorf("the slope is %v long", length)
	}
	// A reducer changes the pipe from there on; a run may be of its own pipe.
	two := strings.Replace(swap(t, "- across: 500 mm", "- reducer: thin\n      - across: 500 mm\n      - across: {length: 50 mm, pipe: main}"),
		"pipes:\n", "pipes:\n  thin: {standard: AS/NZS 1477, class: PN12, size: DN25}\n", 1)
	line := mustRead(t, "x", []byte(two)).Line("up")
	got := []string{line.Pieces[3].Pipe.ID, line.Pieces[4].Pipe.ID, line.Pieces[5].Pipe.ID, line.Pieces[6].Pipe.ID, line.Pieces[7].Pipe.ID}
	if !slices.Equal(got, []string{"main", "main", "thin", "main", "thin"}) {
		t.Errorf("pipes along the line: %v", got)
	}
}

// TestTurns holds the two bounds of turns() against directions drawn at random
// in space: two directions of given elevation, and bends turned about the pipe at will.
func TestTurns(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 300 {
		e1, e2 := (r.Float64()-0.5)*math.Pi, (r.Float64()-0.5)*math.Pi
		least, most := math.Pi, 0.0
		for azimuth := 0.0; azimuth < 2*math.Pi; azimuth += 0.02 {
			cos := math.Cos(e1)*math.Cos(e2)*math.Cos(azimuth) + math.Sin(e1)*math.Sin(e2)
			between := math.Acos(max(-1, min(1, cos)))
			least, most = min(least, between), max(most, between)
		}
		if math.Abs(least-math.Abs(e1-e2)) > 0.03 || math.Abs(most-(math.Pi-math.Abs(e1+e2))) > 0.03 {
			t.Fatalf("elevations %.3f and %.3f enclose %.3f to %.3f", e1, e2, least, most)
		}
	}
	for range 60 {
		bends := []float64{r.Float64() * math.Pi / 2, r.Float64() * math.Pi / 2, r.Float64() * math.Pi / 2}
		sum := bends[0] + bends[1] + bends[2]
		low, high := max(0, 2*slices.Max(bends)-sum), min(math.Pi, sum)
		least, most := math.Pi, 0.0
		for range 3000 {
			d := [3]float64{0, 0, 1}
			side := [3]float64{1, 0, 0}
			for _, bend := range bends {
				d, side = bent(d, side, bend, r.Float64()*2*math.Pi)
			}
			turned := math.Acos(max(-1, min(1, d[2])))
			least, most = min(least, turned), max(most, turned)
		}
		if least < low-1e-9 || most > high+1e-9 || least > low+0.35 || most < high-0.35 {
			t.Fatalf("bends %.3f make %.3f to %.3f, not %.3f to %.3f", bends, least, most, low, high)
		}
	}
}

// bent turns a direction by an angle towards a side that was first rolled about it.
func bent(d, side [3]float64, angle, roll float64) (along, across [3]float64) {
	third := [3]float64{d[1]*side[2] - d[2]*side[1], d[2]*side[0] - d[0]*side[2], d[0]*side[1] - d[1]*side[0]}
	for i := range side {
		s := side[i]*math.Cos(roll) + third[i]*math.Sin(roll)
		along[i] = d[i]*math.Cos(angle) + s*math.Sin(angle)
		across[i] = s*math.Cos(angle) - d[i]*math.Sin(angle)
	}
	return along, across
}
