package reference

import (
	"fmt"
	"math"

	"dryfit/internal/pipeflow"
	"dryfit/internal/tables"
)

// roughness gives the roughness of a row of the table: its least (bound 0), its own (1) or its most (2).
func roughness(surface, duty, condition string) function {
	return func(in *inputs) (float64, error) {
		row, ok := tables.Embedded().RoughnessOf(surface, duty, condition)
		if !ok {
			return 0, fmt.Errorf("no roughness for %s, %s, %s", surface, duty, condition)
		}
		bounds := []float64{row.KsLeast, row.Ks, row.KsMost}
		if i := int(in.num("bound")); i >= 0 && i < len(bounds) {
			return bounds[i], nil
		}
		return math.NaN(), fmt.Errorf("bound is 0, 1 or 2")
	}
}

// rise gives the friction factor of a fouled wall over that of a clean one, in the same bore at the same flow.
func rise(condition string) function {
	return func(in *inputs) (float64, error) {
		d, q, nu := in.num("d"), in.num("q"), in.nu()
		re, v := pipeflow.Reynolds(q, d, nu)
		var f [2]float64
		for i, c := range []string{"clean", condition} {
			row, ok := tables.Embedded().Roughness("gravity", c)
			if !ok {
				return 0, fmt.Errorf("no roughness for a gravity line, %s", c)
			}
			y, w := pipeflow.FrictionFactor(re, row.Ks/d)
			f[i], v = y, v.And(w)
		}
		return valued(f[1]/f[0], v)
	}
}

func init() {
	register(map[string]function{
		"roughness_plastic_clean":        roughness("smooth-plastic", "gravity", "clean"),
		"roughness_hose_clean":           roughness("hose", "gravity", "clean"),
		"roughness_ribbed_clean":         roughness("ribbed-hose", "gravity", "clean"),
		"roughness_galvanised_clean":     roughness("galvanised", "pump-side", "clean"),
		"roughness_galvanised_neglected": roughness("galvanised", "pump-side", "neglected"),
		"roughness_sewer_neglected":      roughness("smooth-plastic", "gravity", "neglected"),
		"friction_rise_in_service":       rise("in-service"),
		"friction_rise_neglected":        rise("neglected"),
		// flow at a slope with the wall in service over the flow with the clean wall, bore for bore
		"capacity_left_in_service": func(in *inputs) (float64, error) {
			d, slope, nu := in.num("d"), in.num("slope"), in.nu()
			var q [2]float64
			for i, c := range []string{"clean", "in-service"} {
				row, _ := tables.Embedded().Roughness("gravity", c)
				y, err := solved(func(q float64) float64 {
					s, _ := pipeflow.FrictionSlope(q, d, row.Ks, nu)
					return s - slope
				}, 0, 1)
				if err != nil {
					return 0, err
				}
				q[i] = y
			}
			return q[1] / q[0], nil
		},
		"quiet_depth": func(in *inputs) (float64, error) {
			return valued(pipeflow.QuietDepth(in.num("q"), in.num("d"), in.num("e")))
		},
		"part_full_velocity": func(in *inputs) (float64, error) {
			return valued(pipeflow.PartFullVelocity(in.num("q"), in.num("d"), in.num("y")))
		},
		"joint_thrust": func(in *inputs) (float64, error) {
			return valued(pipeflow.JointThrust(in.num("h"), in.num("d"), in.num("rho")))
		},
	})
}
