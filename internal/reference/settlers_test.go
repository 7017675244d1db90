package reference

import (
	"math"

	"dryfit/internal/making"
	"dryfit/internal/settling"
)

// reasoned turns a number with the reason why there is none into a number or an error.
func reasoned(x float64, why string) (float64, error) {
	if math.IsNaN(x) {
		return x, reason(why)
	}
	return x, nil
}

type reason string

func (r reason) Error() string { return string(r) }

func (in *inputs) cuff() making.Cuff {
	return making.Cuff{PipeOutside: in.num("od"), Wall: in.num("w"), Span: in.num("g"), ToFoot: in.num("b"), Young: in.num("e"),
		WallSpring: in.or("k", math.Inf(1))}
}

func init() {
	register(map[string]function{
		"young_low":  func(in *inputs) (float64, error) { return reasoned(making.YoungLow(in.num("s"))) },
		"young_high": func(in *inputs) (float64, error) { return reasoned(making.YoungHigh(in.num("s"))) },
		// the middle that is worked with, the geometric mean of the two
		"young_middle": func(in *inputs) (float64, error) {
			low, why := making.YoungLow(in.num("s"))
			high, _ := making.YoungHigh(in.num("s"))
			return reasoned(math.Sqrt(low*high), why)
		},
		"cuff_give":  func(in *inputs) (float64, error) { return reasoned(in.cuff().Compliance()) },
		"cuff_force": func(in *inputs) (float64, error) { return reasoned(in.cuff().Force(in.num("d"))) },
		"cuff_tilt":  func(in *inputs) (float64, error) { return in.cuff().Tilt(in.num("f")), nil },
		"cuff_tilt_by_offset": func(in *inputs) (float64, error) {
			force, why := in.cuff().Force(in.num("d"))
			return reasoned(in.cuff().Tilt(force), why)
		},
		"curtain_share": func(in *inputs) (float64, error) {
			return reasoned(making.CurtainShare(in.num("s"), in.num("feet"), in.num("d")))
		},
		"uplift": func(in *inputs) (float64, error) {
			return making.Uplift(in.num("v"), in.num("weight"), in.num("d"), in.num("speed")), nil
		},
		"overflow_rate": func(in *inputs) (float64, error) {
			return reasoned(settling.OverflowRate(in.num("q"), in.num("area")))
		},
		"downflow": func(in *inputs) (float64, error) {
			return reasoned(settling.Downflow(in.num("q"), in.num("d"), in.or("p", 0)))
		},
		"lip_depth": func(in *inputs) (float64, error) {
			return reasoned(settling.LipDepthFraction(in.num("z"), in.num("lip"), in.num("floor")))
		},
		"cleared_radius": func(in *inputs) (float64, error) {
			return reasoned(settling.ClearedRadius(in.num("q"), in.num("n"), in.num("u")))
		},
		"tilt_ratio": func(in *inputs) (float64, error) {
			return reasoned(settling.TiltRatio(in.num("h"), in.num("d"), in.num("n")))
		},
		"tilt_allowed": func(in *inputs) (float64, error) {
			return reasoned(settling.TiltAllowed(in.num("h"), in.num("r"), in.num("n")))
		},
	})
}
