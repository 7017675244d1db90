// Package working keeps what was worked out about a loop: quantities, facts and
// the sets and relations of their subjects, each quantity with its working, so
// that it can be shown, and worked again with one value of the file replaced.
package working

import "strings"

// Address names one quantity: whose it is, what it is, and in which state.
// It is written subject.name@case, with /low, /usual or /high behind it where
// the temperature of the water matters, and the fault where there is one.
type Address struct {
	Subject string // id of a vessel, line or pump, or line/index of a piece
	Name    string
	Case    string // always, run_clean, run_least, run_worst ...
	Water   string // low, usual, high; empty where the water does not matter
	Fault   string // what has gone wrong, where the case is a family of faults: "solids-run shut"
}

// Always is the case of what is the same in every state: geometry and materials.
const Always = "always"

func (a Address) String() string {
	var b strings.Builder
	b.WriteString(a.Subject + "." + a.Name + "@" + a.Case)
	if a.Water != "" {
		b.WriteString("/" + a.Water)
	}
	if a.Fault != "" {
		b.WriteString("/" + strings.ReplaceAll(a.Fault, " ", "-"))
	}
	return b.String()
}

// State is the state in words, as it stands behind a value: "run_worst, low water temperature".
func (a Address) State() string {
	out := a.Case
	if a.Water != "" {
		out += ", water " + a.Water
	}
	if a.Fault != "" {
		out += ", " + a.Fault
	}
	return out
}

// Cases in which the pump runs. In each the water is taken at its low, usual and high temperature.
const (
	RunClean = "run_clean" // pump at its greatest, all walls clean
	RunLeast = "run_least" // pump side fouled: the least flow, what is needed
	RunWorst = "run_worst" // pump side clean, gravity side fouled: what must be carried
)

// Running is the cases in which the pump runs, and Waters the temperatures of each.
var (
	Running = []string{RunClean, RunLeast, RunWorst}
	Waters  = []string{"low", "usual", "high"}
)

// EachRunning calls f for every case in which the pump runs, at every temperature of the water.
func EachRunning(f func(runCase, water string)) {
	for _, c := range Running {
		for _, w := range Waters {
			f(c, w)
		}
	}
}
