package loop

import (
	"math"

	"dryfit/internal/pipeflow"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// overWeir works the level of a vessel that gives its water over a weir:
//
//	z = floor + crest + h(Q)
//
// The flow is what runs in, the inputs in and their total.
func overWeir(vessel *system.Vessel, in []working.Input, total working.Func) (working.Func, []working.Input) {
	w, n := vessel.Weir, len(in)
	in = append(in,
		working.In("z0", working.File("floor above the datum", vessel.StandsAt)),
		working.In("crest", working.File("lowest point of the weir", w.CrestAt)))
	var head func(q float64, x []float64) (float64, pipeflow.Validity)
	switch w.Kind {
	case "notched_ring":
		in = append(in,
			working.In("n", working.File("number of notches", w.Notches)),
			working.In("angle", working.File("angle of a notch", w.Angle)))
		head = func(q float64, x []float64) (float64, pipeflow.Validity) {
			return pipeflow.VNotch{Angle: x[1]}.Head(q / x[0])
		}
	case "ring":
		in = append(in, working.In("d", working.File("diameter of the ring", w.Across)))
		head = func(q float64, x []float64) (float64, pipeflow.Validity) {
			return pipeflow.RingCrest{Diameter: x[0], Coefficient: pipeflow.ThinCrest}.Head(q)
		}
	case "rim":
		in = append(in, working.In("d", working.File("inside diameter", vessel.Form.Inside)))
		head = func(q float64, x []float64) (float64, pipeflow.Validity) {
			return pipeflow.RingCrest{Diameter: x[0], Coefficient: pipeflow.SquareCrest}.Head(q)
		}
	case "notch":
		if w.Angle.Given() {
			in = append(in, working.In("angle", working.File("angle of the notch", w.Angle)))
			head = func(q float64, x []float64) (float64, pipeflow.Validity) {
				return pipeflow.VNotch{Angle: x[0]}.Head(q)
			}
			break
		}
		in = append(in, working.In("b", working.File("width of the notch", w.Width)))
		head = func(q float64, x []float64) (float64, pipeflow.Validity) {
			h := math.Pow(q/(2.0/3*0.61*x[0]*math.Sqrt(2*9.80665)), 2.0/3)
			return h, pipeflow.Extrapolated
		}
	default:
		head = func(float64, []float64) (float64, pipeflow.Validity) { return math.NaN(), pipeflow.Undefined }
	}
	return func(x []float64) (float64, string) {
		q, why := total(x[:n])
		if math.IsNaN(q) {
			return q, why
		}
		h, valid := head(q, x[n+2:])
		if !valid.Defined() {
			return math.NaN(), "no head can be worked out for a weir of kind " + w.Kind
		}
		note := ""
		if valid == pipeflow.Extrapolated {
			note = "weir heads as low as this are uncalibrated: 3 mm or 20 % either way"
		}
		return x[n] + x[n+1] + h, note
	}, in
}
