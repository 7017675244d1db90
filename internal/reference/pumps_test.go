package reference

import (
	"fmt"

	"dryfit/internal/pipeflow"
)

// curve reads the points q0, h0, q1, h1 and so on.
func (in *inputs) curve() (pipeflow.PumpCurve, error) {
	var points []pipeflow.Duty
	for i := 0; ; i++ {
		name := fmt.Sprintf("q%d", i)
		if _, ok := in.values[name]; !ok {
			return pipeflow.NewPumpCurve(points...)
		}
		points = append(points, pipeflow.Duty{Flow: in.num(name), Head: in.num(fmt.Sprintf("h%d", i))})
	}
}

// duty gives the flow at which a pump and a line with one friction factor agree, and the head there.
func (in *inputs) duty() (q, h float64, err error) {
	c, err := in.curve()
	if err != nil {
		return 0, 0, err
	}
	d, rise := in.num("d"), in.num("rise")
	k := in.num("f") * in.num("l") / d
	q, err = solved(func(q float64) float64 {
		head, _ := c.Head(q)
		loss, _ := pipeflow.FittingLoss(k, q, d)
		return head - rise - loss
	}, 0, c.Open().Flow)
	h, _ = c.Head(q)
	return q, h, err
}

func init() {
	register(map[string]function{
		"duty_flow": func(in *inputs) (float64, error) { q, _, err := in.duty(); return q, err },
		"duty_head": func(in *inputs) (float64, error) { _, h, err := in.duty(); return h, err },
		// the speed at which the pump passes a point
		"speed_for": func(in *inputs) (float64, error) {
			c, err := in.curve()
			if err != nil {
				return 0, err
			}
			q, h, speed := in.num("q"), in.num("h"), in.num("speed")
			return solved(func(n float64) float64 {
				slower, err := c.AtSpeed(n / speed)
				if err != nil {
					return -h
				}
				head, _ := slower.Head(q)
				return head - h
			}, speed/2, speed)
		},
		"affinity_flow": func(in *inputs) (float64, error) { d, err := in.affine(); return d.Flow, err },
		"affinity_head": func(in *inputs) (float64, error) { d, err := in.affine(); return d.Head, err },
	})
}

func (in *inputs) affine() (pipeflow.Duty, error) {
	c, err := pipeflow.NewPumpCurve(pipeflow.Duty{Head: 2 * in.num("h")}, pipeflow.Duty{Flow: in.num("q"), Head: in.num("h")})
	if err != nil {
		return pipeflow.Duty{}, err
	}
	c, err = c.AtSpeed(in.num("new") / in.num("speed"))
	return c.Open(), err
}
