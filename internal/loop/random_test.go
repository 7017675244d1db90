package loop

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
)

// anyLoop is a random loop in plain numbers, in metres, m3/s and degrees above a
// datum: what the other solution reads. Beside it stands the system file that says
// the same. Both are written from the same choices; neither from the other.
type anyLoop struct {
	Seed    uint64       `json:"seed"`
	Celsius float64      `json:"celsius"`
	Vessels []*anyVessel `json:"vessels"`
	Strands []*anyStrand `json:"strands"`
	Tees    []anyTee     `json:"tees"`

	file              strings.Builder // the vessels, pumps, pipes and lines of the system file are put together at the end
	pipes, pumps, own strings.Builder
	r                 *rand.Rand
}

// anyVessel is one vessel. Its form matters to runs in time only.
type anyVessel struct {
	Name   string   `json:"name"`
	Floor  float64  `json:"floor"`
	Rim    float64  `json:"rim"`
	Held   *float64 `json:"held,omitempty"` // its level stays here
	Weir   *anyWeir `json:"weir,omitempty"`
	floor  int      // mm
	height int      // mm
	level  float64  // mm: about where the water will stand
	out    []*anyOutlet
	role   string
	behind float64 // mm: about where the water behind the weir will stand
}

// anyWeir is the edge over which a vessel gives its water.
type anyWeir struct {
	Kind    string  `json:"kind"`
	Crest   float64 `json:"crest"`
	Across  float64 `json:"across,omitempty"`  // of a ring or rim
	Length  float64 `json:"length,omitempty"`  // of a straight crest
	Notches int     `json:"notches,omitempty"` // V cuts
	Angle   float64 `json:"angle,omitempty"`   // of a V, degrees
	said    string
}

// anyStrand is a line, or the part of one between tees.
type anyStrand struct {
	Name    string     `json:"name"`
	Line    string     `json:"line"`
	First   bool       `json:"first"` // the part with which its line begins
	From    string     `json:"from"`
	To      string     `json:"to"`
	Bore    float64    `json:"bore"`
	Nominal float64    `json:"nominal,omitempty"` // inches; none where the pipe is of no standard
	Pieces  []anyPiece `json:"pieces"`
	Edges   []anyEdge  `json:"edges"`
	Mouth   *anyMouth  `json:"mouth,omitempty"` // none where it ends at a tee
	Pump    *anyPump   `json:"pump,omitempty"`
	Drop    bool       `json:"drop"` // it falls upright somewhere
	Duty    string     `json:"duty"`
}

// anyPiece takes head from the water.
type anyPiece struct {
	Is     string  `json:"is"`
	Length float64 `json:"length,omitempty"`
	Width  float64 `json:"width,omitempty"`
	Count  int     `json:"count,omitempty"`
	Open   float64 `json:"open,omitempty"` // percent
	Bore   float64 `json:"bore,omitempty"`
}

// anyEdge is a place under air that the water has to get over.
type anyEdge struct {
	Is     string  `json:"is"` // inlet: level pipe under a quiet surface; brink: level pipe before it turns down; rim: pipe that looks up; mouth
	Height float64 `json:"height"`
	Passed int     `json:"passed"` // pieces before it
	Slots  bool    `json:"slots"`  // the guard is before it too
}

// anyMouth is the end of a line.
type anyMouth struct {
	Height float64 `json:"height"`
	Facing string  `json:"facing"`
	Nozzle float64 `json:"nozzle,omitempty"`
}

// anyPump is what stands in a pumped strand.
type anyPump struct {
	Points [][2]float64 `json:"points,omitempty"` // flow and head
	Shut   float64      `json:"shut,omitempty"`
	Open   float64      `json:"open,omitempty"`
	Rest   float64      `json:"rest"` // height to which it must lift before any water flows
	Lets   float64      `json:"lets"` // height of a crest behind which air comes in, below every level where there is none
	Passed int          `json:"passed"`
}

// anyTee is where three strands meet.
type anyTee struct {
	Name   string  `json:"name"`
	Common string  `json:"common"`
	Run    string  `json:"run"`
	Branch string  `json:"branch"`
	Bore   float64 `json:"bore"`   // of common leg and run
	Other  float64 `json:"other"`  // of the branch
	Angle  float64 `json:"angle"`  // degrees
	Height float64 `json:"height"` // of its middle
}

// anyPipe is a pipe of the file.
type anyPipe struct {
	id            string
	bore, nominal float64 // m, inches
	hole          int     // mm, of a seal for it
}

// Pipes of ASTM D1785 Schedule 40: size, nominal inches, outside and mean inside diameter, mm. The mean inside is the outside less
// twice the wall midway between its least and greatest.
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

func one[T any](r *rand.Rand, of ...T) T { return of[r.IntN(len(of))] }

func metres(mm int) float64 { return float64(mm) / 1000 }

// pipe names a pipe of about a bore, m: by its inside diameter or, now and then, of a standard.
func (g *anyLoop) pipe(bore float64) anyPipe {
	bore = math.Min(0.150, math.Max(0.016, bore))
	id := fmt.Sprintf("p%d", strings.Count(g.pipes.String(), "\n"))
	if g.r.IntN(4) == 0 && bore < 0.105 {
		for _, p := range anySchedule {
			if p.inside > bore*900 {
				fmt.Fprintf(&g.pipes, "  %s: {standard: ASTM D1785, class: Sch 40, size: %s}\n", id, p.size)
				return anyPipe{id, p.inside / 1000, p.nominal, int(p.outside) + 12}
			}
		}
	}
	mm := math.Round(bore*1e4) / 10
	fmt.Fprintf(&g.pipes, "  %s: {inside: %.1f mm}\n", id, mm)
	return anyPipe{id, mm / 1000, 0, int(mm) + 16}
}

// someLoop draws a loop: a pump lifts water from the sump, the last vessel, to the
// first, and lines bring it down again from one to the next.
func someLoop(seed uint64, vessels int) *anyLoop {
	r := rand.New(rand.NewPCG(seed, 2026))
	g := &anyLoop{Seed: seed, Celsius: math.Round(between(r, 4, 34)*10) / 10, r: r}
	q := somewhere(r, 200, 5000) / 3.6e6
	trickle := r.IntN(5) == 0
	if trickle {
		q = somewhere(r, 20, 250) / 3.6e6
	}
	n := vessels
	if n == 0 {
		n = 3 + r.IntN(5)
	}
	for i := range n {
		g.Vessels = append(g.Vessels, &anyVessel{Name: fmt.Sprintf("v%d", i), role: one(r, "biofilter", "fines-filter", "degasser", "raft-bed", "other")})
	}
	sump := g.Vessels[n-1]
	sump.Name, sump.role, g.Vessels[0].role = "sump", "sump", "fish-tank"
	sump.floor, sump.height, sump.level = 0, 400+r.IntN(400), float64(200+r.IntN(150))
	held := sump.level / 1000
	sump.Held = &held
	flows := g.ways(q)
	for i := n - 2; i >= 0; i-- {
		g.place(g.Vessels[i], trickle)
	}
	for i, v := range g.Vessels {
		g.vessel(v, i)
		v.Floor, v.Rim = metres(v.floor), metres(v.floor+v.height)
	}
	g.risers(flows)
	for _, v := range g.Vessels {
		for _, o := range v.out {
			g.outlet(v, o)
		}
		g.beside(v)
	}
	fmt.Fprintf(&g.file, "dryfit: 1\nname: random loop %d\nsite: {under: %s}\nwater: {temperature: %.1f degC}\nworking_flow: {least: %.0f L/h}\npipes:\n%svessels:\n%spumps:\n%slines:\n",
		seed, one(r, "indoors", "roof", "open-sky"), g.Celsius, math.Max(1, q*0.8*3.6e6), g.pipes.String(), g.own.String(), g.pumps.String())
	for _, line := range g.drawn {
		g.file.WriteString(line)
	}
	return g
}
