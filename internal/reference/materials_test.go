package reference

import (
	"fmt"

	"dryfit/internal/making"
)

// noted turns a number with its note into an answer; what is not a number is an error.
func noted(x float64, note string) (float64, error) {
	if x != x {
		return 0, fmt.Errorf("our function has no answer: %s", note)
	}
	return x, nil
}

func init() {
	at := func(name string, f func(float64) (float64, string)) function {
		return func(in *inputs) (float64, error) { return noted(f(in.num(name))) }
	}
	register(map[string]function{
		"pren":             func(in *inputs) (float64, error) { return noted(making.PREN(in.num("cr"), in.num("mo"), in.num("n"))) },
		"copper_acute":     at("h", making.CopperAcute),
		"copper_chronic":   at("h", making.CopperChronic),
		"zinc_acute":       at("h", making.ZincAcute),
		"zinc_chronic":     at("h", making.ZincChronic),
		"chloride_of_salt": at("salt", making.ChlorideOfSalt),
		"zinc_loss":        at("wear", making.ZincLoss),
	})
}
