package reference

import (
	"dryfit/internal/pipeflow"
	"dryfit/internal/water"
)

type teeFormula func(share, bores, angle float64) (run, branch float64, v water.Validity)

// tee gives K of both ways for the split that the row names, and the flow in the common leg.
func (in *inputs) tee(of teeFormula) (run, branch, whole float64, v water.Validity) {
	straight, turned := in.num("run"), in.num("branch")
	whole = straight + turned
	run, branch, v = of(turned/whole, in.num("d_branch")/in.num("d_run"), in.num("angle"))
	return run, branch, whole, v
}

func init() {
	run := func(of teeFormula) function {
		return func(in *inputs) (float64, error) { k, _, _, v := in.tee(of); return valued(k, v) }
	}
	branch := func(of teeFormula) function {
		return func(in *inputs) (float64, error) { _, k, _, v := in.tee(of); return valued(k, v) }
	}
	register(map[string]function{
		"diverging_run":     run(pipeflow.DivergingTee),
		"diverging_branch":  branch(pipeflow.DivergingTee),
		"converging_run":    run(pipeflow.ConvergingTee),
		"converging_branch": branch(pipeflow.ConvergingTee),
		"converging_run_loss": func(in *inputs) (float64, error) {
			k, _, q, v := in.tee(pipeflow.ConvergingTee)
			h, w := pipeflow.FittingLoss(k, q, in.num("d_run"))
			return valued(h, v.And(w))
		},
		"converging_branch_loss": func(in *inputs) (float64, error) {
			_, k, q, v := in.tee(pipeflow.ConvergingTee)
			h, w := pipeflow.FittingLoss(k, q, in.num("d_run"))
			return valued(h, v.And(w))
		},
	})
}
