package loop

import (
	"encoding/json"
	"fmt"
	"os"
	"testing"
)

func TestTmpSpec(t *testing.T) {
	var all []*anyLoop
	for seed := range uint64(400) {
		g := someLoop(seed, 0)
		all = append(all, g)
		os.WriteFile(fmt.Sprintf("/tmp/rl/%d.yaml", seed), []byte(g.file()), 0o644)
	}
	b, _ := json.Marshal(all)
	os.WriteFile("/tmp/rl/specs.json", b, 0o644)
}
