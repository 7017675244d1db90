package loop

import (
	"math"

	"dryfit/internal/pipeflow"
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// spacer is the straight pipe between the two bends that stand in for one, in
// bores: where two bends close together lose least, and long enough for a brush.
const spacer = 2

// bends enters, for every place at which a line turns, how far and how round, and
// what the turn costs beside what two 45s or a sweep would cost.
func (v *surveyor) bends(runs_ []*run) {
	for _, line := range v.Lines {
		for _, p := range line.Pieces {
			if !turns(p) {
				continue
			}
			v.l.Relate("bends_of", line.ID, p.ID())
			v.turn(p)
			v.opens(p)
			if !runs(line) || line.Pumped || p.Turn <= math.Pi/4+0.01 {
				continue
			}
			for _, r := range runs_ {
				if r.runCase != working.RunLeast {
					r.alternatives(line, p)
				}
			}
		}
	}
}

// turns says that water turns in a piece, or may: bends, sweeps, and tees entered or left by the branch.
func turns(p *system.Piece) bool {
	switch p.Kind {
	case "bend", "sweep":
		return true
	case "tee":
		if _, given := p.Tee.Way.Value(); given {
			return p.Tee.Way.Is("turn")
		}
		return !p.Tee.ID.Given() && !p.Tee.Count.Given() // a tee that another line joins goes straight on unless it says not
	}
	return false
}

func (v *surveyor) turn(p *system.Piece) {
	always := func(name string) working.Address {
		return working.Address{Subject: p.ID(), Name: name, Case: working.Always}
	}
	b := newBench(v, nil, walls{"gravity", "clean"})
	if p.Kind == "tee" {
		angle := working.Fixed("turn through the branch of a tee", quantity.Angle, math.Pi/2, geometry)
		if _, given := p.Tee.Way.Value(); !given {
			angle = working.Unknown("turn in the tee", quantity.Angle, p.Tee.Way.Pointer(), "")
		}
		v.take(always("turn"), p.Pointer, angle)
		v.take(always("bend_radius_ratio"), p.Pointer, working.Fixed("radius of the corner of a tee over its bore", quantity.Number, 0, geometry))
		return
	}
	v.take(always("turn"), p.Pointer, working.File("angle of the bend", p.Bend.Angle))
	if !carriesSolids(p.Line) {
		return // how round it is matters only where solids go round it
	}
	if p.Bend.Radius.Given() {
		v.work(always("bend_radius_ratio"), p.Pointer, func(x []float64) (float64, string) { return x[0] / x[1], "" },
			working.In("r", working.File("radius of the bend", p.Bend.Radius)),
			working.In("D", b.bore(p)))
		return
	}
	key := map[string]string{"bend": "bend_radius_ratio", "sweep": "sweep_radius_ratio"}[p.Kind]
	v.take(always("bend_radius_ratio"), p.Pointer, v.t.Assume(key, "radius of a "+p.Kind+" over its bore", quantity.Number, p.Bend.Radius.Pointer()))
}

// opens notes whether a hand or a brush gets into the turn: a tee whose third way
// is open or capped, or a bend inside a vessel that pulls off.
func (v *surveyor) opens(p *system.Piece) {
	f := working.Fact{Subject: p.ID(), Name: "opens_to_brush", Word: "no", At: p.Pointer}
	switch {
	case p.Kind == "tee":
		if p.Tee.Third.Is("vent", "cap") {
			f.Word = "yes"
		}
	case p.In != nil:
		if _, given := p.Joint.Value(); !given {
			f.Word, f.Missing = "", []string{p.Joint.Pointer()}
		} else if p.Joint.Is("uncemented", "pinned") {
			f.Word = "yes"
		}
	}
	v.l.Note(f)
}

// alternatives enters the loss of a turn, of two 45s a spacer apart, and of a sweep.
func (r *run) alternatives(line *system.Line, p *system.Piece) {
	b, q := r.gravity, r.flow(line)
	made := b.bend
	if p.Kind == "tee" {
		made = func(p *system.Piece) element { return b.fitting(p, "tee-branch") }
	}
	r.alternative("bend_loss", p, q, made(p))
	r.alternative("bend_loss_as_two_45", p, q, r.twoFortyFives(p))
	r.alternative("bend_loss_as_sweep", p, q, b.fitting(p, "bend-90-sweep"))
}

func (r *run) alternative(name string, p *system.Piece, q *working.Node, e element) {
	r.work(r.address(p.ID(), name), p.Pointer, func(x []float64) (float64, string) { return e.loss(x[0], x[1:]), "" },
		append([]working.Input{working.In("Q", q)}, e.inputs...)...)
}

// twoFortyFives is two 45 degree bends with a spacer between them. The first
// loses less because the second follows close behind it.
func (r *run) twoFortyFives(p *system.Piece) element {
	e := r.gravity.fitting(p, "bend-45-elbow")
	ks, film := r.gravity.roughness("smooth-plastic")
	near := sure(pipeflow.OutletLength(spacer))
	one, n := e.loss, len(e.inputs)
	e.inputs = append(append([]working.Input{}, e.inputs...), working.In("ks", ks), working.In("t", film))
	e.loss = func(q float64, x []float64) float64 {
		d := x[0] - 2*x[1]
		pipe := sure(pipeflow.HeadLoss(q, d, spacer*x[0], x[n], x[2]))
		return (1+near)*one(q, x) + pipe
	}
	return e
}
