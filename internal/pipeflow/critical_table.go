package pipeflow

import (
	"math"
	"sync"
)

// Critical flow is one curve for all round pipes: the angle t over l, what t would be in a pipe that is nearly dry.
//
//	(t - sin t)^3 / sin(t/2) = l^8 / 108,  l = (55296 q^2 / (g d^5))^(1/8)
//
// For small t it is t = l (1 + 13/960 l^2). At l = 2 pi the pipe counts as full: t is then within a three-hundredth of 2 pi.

// nearlyDry is l where q / (d^2 sqrt(g d)) is one.
var nearlyDry = math.Pow(55296, 1.0/8)

const (
	criticalEnd    = 2 * math.Pi
	criticalPoints = 512
)

// criticalCurve is t and its slope at equal steps of l.
var criticalCurve = sync.OnceValue(func() *[criticalPoints + 1][2]float64 {
	curve := &[criticalPoints + 1][2]float64{{0, 1}}
	const step = criticalEnd / criticalPoints
	for i := 1; i <= criticalPoints; i++ {
		l := float64(i) * step
		t := min(curve[i-1][0]+step*curve[i-1][1], 2*math.Pi-1e-3)
		for range 30 {
			miss, steep := criticalMiss(t, pow4(l*l)/108)
			if t -= miss / steep; math.Abs(miss/steep) < 1e-15*t {
				break
			}
		}
		_, steep := criticalMiss(t, 1)
		curve[i] = [2]float64{t, 8 / l / steep}
	}
	return curve
})

// criticalMiss is how far t is off, as a share of the right side of the equation, and how steep that is.
func criticalMiss(t, right float64) (miss, steep float64) {
	half, cos := math.Sincos(t / 2)
	wet := t - 2*half*cos
	if t < 0.01 {
		wet = segment(t)
	}
	return wet*wet*wet/(right*half) - 1, 6*half*half/wet - cos/(2*half)
}

// criticalNear is t to nine figures or so, by cubics.
func criticalNear(l float64) float64 {
	curve := criticalCurve()
	x := l * (criticalPoints / criticalEnd)
	i := min(int(x), criticalPoints-1)
	a, b := curve[i], curve[i+1]
	const step = criticalEnd / criticalPoints
	x -= float64(i)
	y := 1 - x
	return (1+2*x)*y*y*a[0] + x*y*y*step*a[1] + x*x*(3-2*x)*b[0] - x*x*y*step*b[1]
}
