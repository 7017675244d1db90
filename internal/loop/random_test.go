package loop

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
)

// anyLoop is a random loop in plain numbers, in metres and m3/s, heights above a
// datum: what another solution reads. Beside it stands the system file that says
// the same. Both are written from the same choices; neither from the other.
type anyLoop struct {
	Seed    uint64       `json:"seed"`
	Celsius float64      `json:"celsius"`
	Vessels []*anyVessel `json:"vessels"`
	Strands []*anyStrand `json:"strands"`
	Tees    []*anyTee    `json:"tees"`

	r                            *rand.Rand
	pipes, pumps, vessels, lines strings.Builder
	feeds                        []*anyFeed
}

// anyVessel is one vessel. Its form matters to runs in time only.
type anyVessel struct {
	Name  string   `json:"name"`
	Floor float64  `json:"floor"`
	Rim   float64  `json:"rim"`
	Held  *float64 `json:"held,omitempty"` // its level stays here
	Weir  *anyWeir `json:"weir,omitempty"`

	role          string
	across        int     // mm, of a round vessel; 0 for a box
	floor, height int     // mm
	level         float64 // mm: about where the water will stand
	flow          float64 // about what runs through
	out           []*anyOutlet
}

// anyWeir is the edge over which a vessel gives its water.
type anyWeir struct {
	Kind    string  `json:"kind"`
	Crest   float64 `json:"crest"`
	Across  float64 `json:"across,omitempty"`  // of a ring or a rim
	Length  float64 `json:"length,omitempty"`  // of a straight crest
	Notches int     `json:"notches,omitempty"` // how many
	Angle   float64 `json:"angle,omitempty"`   // of a V, degrees

	behind float64 // mm: about where the water behind it will stand
}

// anyStrand is a line, or the part of one between tees.
type anyStrand struct {
	Name    string      `json:"name"`
	Line    string      `json:"line"`
	First   bool        `json:"first"` // its line begins with it
	From    string      `json:"from"`
	To      string      `json:"to"`
	Duty    string      `json:"duty"`
	Bore    float64     `json:"bore"`
	Nominal float64     `json:"nominal,omitempty"` // inches; none where the pipe is of no standard
	Pieces  []*anyPiece `json:"pieces"`
	Edges   []*anyEdge  `json:"edges"`
	Mouth   *anyMouth   `json:"mouth,omitempty"` // none where it ends at a tee
	Pump    *anyPump    `json:"pump,omitempty"`
	Pressed bool        `json:"pressed"` // it stands behind a pump: full
	Drop    float64     `json:"drop"`    // height of the head of its upright fall; 0 where it has none
}

// anyPiece takes head from the water.
type anyPiece struct {
	Is     string  `json:"is"`
	Length float64 `json:"length,omitempty"`
	Width  float64 `json:"width,omitempty"`
	Count  int     `json:"count,omitempty"`
	Open   float64 `json:"open,omitempty"` // percent
}

// anyEdge is a place under air that the water has to get over.
type anyEdge struct {
	Is     string  `json:"is"` // inlet: a level pipe begins; brink: it turns down; rim: a pipe looks up; mouth: its middle
	Height float64 `json:"height"`
	Passed int     `json:"passed"` // pieces before it
}

// anyMouth is the end of a line.
type anyMouth struct {
	Height float64 `json:"height"`
	Facing string  `json:"facing"`
	Nozzle float64 `json:"nozzle,omitempty"`
}

// anyPump is the curve of a pump, and the height to which it must lift before any water flows.
type anyPump struct {
	Points [][2]float64 `json:"points,omitempty"` // flow and head
	Shut   float64      `json:"shut,omitempty"`   // head at no flow
	Open   float64      `json:"open,omitempty"`   // flow at no head
	Rest   float64      `json:"rest"`
}

// anyTee is where three strands meet.
type anyTee struct {
	Name   string  `json:"name"`
	Common string  `json:"common"`
	Run    string  `json:"run"`
	Branch string  `json:"branch"`
	Bore   float64 `json:"bore"`  // of common leg and run
	Other  float64 `json:"other"` // of the branch
}

// anyPipe is a pipe of the file: its bore in metres, its nominal size in inches if it has one, and the hole of a seal for it in mm.
type anyPipe struct {
	id            string
	bore, nominal float64
	hole          int
}

// Pipes of ASTM D1785, Schedule 40: the mean inside is the outside less twice the wall midway between its least and its greatest.
var anySchedule = []struct {
	size                     string
	nominal, outside, inside float64
}{
	{"1/2 in", 0.5, 21.34, 15.29}, {"3/4 in", 0.75, 26.67, 20.42}, {"1 in", 1, 33.40, 26.13}, {"1-1/4 in", 1.25, 42.16, 34.53},
	{"1-1/2 in", 1.5, 48.26, 40.39}, {"2 in", 2, 60.32, 51.99}, {"3 in", 3, 88.90, 77.26}, {"4 in", 4, 114.30, 101.55},
}

func between(r *rand.Rand, a, b float64) float64 { return a + (b-a)*r.Float64() }

// somewhere is as likely in each decade.
func somewhere(r *rand.Rand, a, b float64) float64 { return a * math.Pow(b/a, r.Float64()) }

func oneOf[T any](r *rand.Rand, of ...T) T { return of[r.IntN(len(of))] }

func (g *anyLoop) mm(a, b float64) int { return int(between(g.r, a, b)) }

func metres(mm int) float64 { return float64(mm) / 1000 }

// pipe names a pipe of about a bore, m: by its inside diameter or, now and then, of a standard.
func (g *anyLoop) pipe(bore float64) anyPipe {
	bore = math.Min(0.150, math.Max(0.016, bore))
	id := fmt.Sprintf("p%d", strings.Count(g.pipes.String(), "\n"))
	if g.r.IntN(4) == 0 {
		for _, p := range anySchedule {
			if p.inside > 1000*bore {
				fmt.Fprintf(&g.pipes, "  %s: {standard: ASTM D1785, class: Sch 40, size: %s}\n", id, p.size)
				return anyPipe{id, p.inside / 1000, p.nominal, int(p.outside) + 12}
			}
		}
	}
	tenths := math.Round(bore * 1e4)
	fmt.Fprintf(&g.pipes, "  %s: {inside: %.1f mm}\n", id, tenths/10)
	return anyPipe{id, tenths / 1e4, 0, int(tenths/10) + 16}
}

// someLoop draws a loop: pumps lift water out of the sump, which is the last of
// its vessels, and lines bring it down again from one vessel to the next.
func someLoop(seed uint64, vessels int) *anyLoop {
	r := rand.New(rand.NewPCG(seed, 2026))
	g := &anyLoop{Seed: seed, Celsius: math.Round(between(r, 4, 34)*10) / 10, r: r}
	if vessels == 0 {
		vessels = 3 + r.IntN(5)
	}
	for i := range vessels {
		v := &anyVessel{Name: fmt.Sprintf("v%d", i), role: oneOf(r, "biofilter", "fines-filter", "degasser", "raft-bed", "other")}
		if r.IntN(2) == 0 {
			v.across = g.mm(500, 1500)
		}
		g.Vessels = append(g.Vessels, v)
	}
	sump := g.Vessels[vessels-1]
	g.Vessels[0].role = "fish-tank"
	sump.Name, sump.role, sump.height, sump.level = "sump", "sump", g.mm(450, 800), float64(g.mm(220, 350))
	held := sump.level / 1000
	sump.Held = &held
	q := somewhere(r, 200, 5000) / 3.6e6
	if r.IntN(5) == 0 {
		q = somewhere(r, 20, 250) / 3.6e6
	}
	g.ways(q)
	for i := vessels - 2; i >= 0; i-- {
		g.place(g.Vessels[i])
	}
	for _, v := range g.Vessels {
		g.vessel(v)
	}
	for i, f := range g.feeds {
		g.riser(i, f)
	}
	for _, v := range g.Vessels {
		for i, o := range v.out {
			g.outlet(v, o, fmt.Sprintf("%s-%c", v.Name, 'a'+i))
		}
	}
	return g
}

// file is the loop as a system file.
func (g *anyLoop) file() string {
	return fmt.Sprintf("dryfit: 1\nname: random loop %d\nsite: {under: %s}\nwater: {temperature: %.1f degC}\npipes:\n%svessels:\n%spumps:\n%slines:\n%s",
		g.Seed, []string{"indoors", "roof", "open-sky"}[g.Seed%3], g.Celsius, g.pipes.String(), g.vessels.String(), g.pumps.String(), g.lines.String())
}
