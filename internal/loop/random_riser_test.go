package loop

import (
	"fmt"
	"math"
	"strings"
)

// riser draws a pumped line out of the sump over the rim of a vessel, with a bypass
// from a tee now and then, and chooses a pump that gives about the flow.
func (g *anyLoop) riser(i int, f *anyFeed) {
	r, sump, to := g.r, g.Vessels[len(g.Vessels)-1], f.to
	line, pump := fmt.Sprintf("riser-%d", i), fmt.Sprintf("pump-%d", i)
	q := f.flow + f.part
	pipe := g.pipe(math.Sqrt(q / (math.Pi / 4 * between(r, 0.2, 1.4))))
	top := to.floor + to.height
	if f.bypass != nil {
		top = max(top, f.bypass.floor+f.bypass.height)
	}
	top += g.mm(40, 120)
	mouth := g.mm(to.level+20, math.Max(to.level+40, float64(top-60))) // in the air
	if r.IntN(2) == 0 {
		mouth = to.floor + g.mm(40, math.Max(60, to.level-float64(to.floor)-40)) // under water
	}
	mouth = min(mouth, top-50)

	p := g.begin(line, sump.Name, g.mm(30, 70), pipe, "flow")
	p.intake(p.z, nil)
	p.say("pump: %s", pump)
	p.upright(top)
	p.union()
	if r.IntN(2) == 0 {
		valve := oneOf(r, anyValves...)
		p.valve(&valve)
	}
	p.bend(90)
	p.across(g.mm(300, 2500))
	var tee *anyTee
	if f.bypass != nil {
		tee = p.tee("split", line)
		p.across(g.mm(100, 600))
	}
	p.say("over: {rim_of: %s, at: %d mm}", to.Name, top-to.floor)
	p.across(g.mm(60, 200))
	p.bend(90)
	p.upright(mouth)
	nozzle := 0.0
	if r.IntN(3) == 0 {
		nozzle = math.Max(0.006, math.Round(1e4*pipe.bore*between(r, 0.4, 0.8))/1e4)
	}
	if r.IntN(2) == 0 {
		p.bend(90)
		p.across(g.mm(60, 150))
		p.outlet(to, "level", nozzle)
	} else {
		p.outlet(to, "down", nozzle)
	}
	p.close(sump.Name, to.Name)

	// about what the flow asks for: losses to the tee, behind it, and the lift
	k, length := 5.0, metres(top-p.z)+metres(top)+2
	for _, s := range g.Strands {
		if s.Line == line {
			s.Drop = 0 // it runs full
			for _, piece := range s.Pieces {
				k += valveGuess[*piece]
			}
		}
	}
	if nozzle > 0 {
		k += 1.4 * math.Pow(pipe.bore/nozzle, 4)
	}
	behind := lost(f.flow, pipe.bore, k, length) / 2
	lift := math.Max(float64(mouth), to.level)
	asked := lift - sump.level + behind + lost(q, pipe.bore, k, length)/2
	shut := math.Max(asked, float64(top)-sump.level) * between(r, 1.15, 2.2)
	if r.IntN(40) == 0 {
		shut = (lift - sump.level) * between(r, 0.6, 1.1) // too weak
	}
	s := g.strand(line)
	s.Pump = g.pump(pump, q, asked/1000, shut/1000)
	s.Pump.Rest = metres(top)
	if tee != nil {
		g.bypass(f, tee, pipe, top, (lift+behind)/1000)
	}
}

func (g *anyLoop) strand(name string) *anyStrand {
	for _, s := range g.Strands {
		if s.Name == name {
			return s
		}
	}
	return nil
}

// bypass draws the branch of a pumped line, over the side of a vessel: so wide that it takes about its part of the flow.
func (g *anyLoop) bypass(f *anyFeed, tee *anyTee, pipe anyPipe, top int, head float64) {
	r, to := g.r, f.bypass
	o := &anyOutlet{kind: "side", to: to, centre: top}
	k := 4.0
	if r.IntN(2) == 0 {
		valve := oneOf(r, anyValves...)
		o.valve = &valve
		k += valveGuess[valve]
	}
	g.end(o)
	speed := math.Sqrt(2 * gee * math.Max(0.02, head-math.Max(metres(o.mouth), to.level/1000)) / (k + 1))
	bore := math.Sqrt(f.part / (math.Pi / 4 * speed))
	o.pipe = g.pipe(bore)
	if o.pipe.bore > 0.66*tee.Bore { // see fork
		o.pipe = pipe
	}
	line := strings.ReplaceAll(tee.Name, ".split", "-bypass")
	p := g.begin(line, tee.Name, top, o.pipe, "flow")
	p.valve(o.valve)
	p.across(g.mm(80, 800))
	p.bend(90)
	p.last(o)
	p.strand.Drop = 0
	p.strand.Pressed = true
	g.strand(tee.Run).Pressed = true
	p.close(tee.Name, to.Name)
	tee.Branch, tee.Other = line, o.pipe.bore
}

// pump writes a pump that gives a flow at a head into the file: by points, by two of them, or by what is printed on the box.
func (g *anyLoop) pump(name string, q, head, shut float64) *anyPump {
	r := g.r
	power := between(r, 1.5, 2.5)
	kind := r.IntN(5)
	if kind < 2 {
		power = 2
	}
	if head >= 0.97*shut { // too weak: any curve will do
		head = 0.5 * shut
	}
	open := q / math.Pow(1-head/shut, 1/power)
	say := func(x float64) string { return fmt.Sprintf("%.2f L/h", 3.6e6*x) }
	at := func(share float64) [2]float64 {
		flow := math.Round(360e6*open*share) / 360e6
		return [2]float64{flow, math.Round(1e4*shut*math.Max(0, 1-math.Pow(share, power))) / 1e4}
	}
	if kind == 0 {
		p := &anyPump{Shut: math.Round(1e4*shut) / 1e4, Open: at(1)[0]}
		fmt.Fprintf(&g.pumps, "  %s: {shut_off: %.4f m, open_flow: %s, dry_below: 60 mm}\n", name, p.Shut, say(p.Open))
		return p
	}
	p := &anyPump{Points: [][2]float64{at(0), at(1)}}
	switch kind {
	case 1:
		p.Points = [][2]float64{at(between(r, 0, 0.4)), at(between(r, 0.7, 0.99))}
	case 2, 3, 4:
		n := 2 + r.IntN(5)
		p.Points = nil
		for i := range n + 1 {
			p.Points = append(p.Points, at(float64(i)/float64(n)))
		}
	}
	var said []string
	for _, point := range p.Points {
		said = append(said, fmt.Sprintf("[%s, %.4f m]", say(point[0]), point[1]))
	}
	fmt.Fprintf(&g.pumps, "  %s: {curve: [%s], dry_below: 60 mm}\n", name, strings.Join(said, ", "))
	return p
}
