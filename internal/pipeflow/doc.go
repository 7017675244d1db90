// Package pipeflow holds the hydraulics of small pipes, weirs, outlets and pumps, one idea a file, as pure functions.
//
// Everything is in SI: lengths in metre, flows in m3/s, heads in metre of the flowing water. d is always an inside diameter (the bore),
// f always the Darcy friction factor, K a loss coefficient on the velocity head V^2/2g. British books often print the Fanning factor,
// a quarter of f.
//
// Each function answers with a number and a [Validity]. A flow that nature does not grant is such an answer too, never a panic.
package pipeflow

import (
	"math"

	"dryfit/internal/water"
)

// Validity says how far a number can be trusted; see [water.Validity].
type Validity = water.Validity

// The three validities, under their names here.
const (
	Valid        = water.Valid
	Extrapolated = water.Extrapolated
	Undefined    = water.Undefined
)

// given is Valid where every condition holds, and Undefined otherwise. Written with conditions that a NaN fails.
func given(conditions ...bool) Validity {
	for _, ok := range conditions {
		if !ok {
			return Undefined
		}
	}
	return Valid
}

// circle gives the area of a full circle of diameter d.
func circle(d float64) float64 { return math.Pi / 4 * d * d }

// velocityHead gives V^2/2g.
func velocityHead(v float64) float64 { return v * v / (2 * water.G) }
