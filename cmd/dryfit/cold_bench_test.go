package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"
)

// BenchmarkColdReview is one review as somebody calls it: a process of its own that loads
// the book and has nothing kept. Beside its time it gives that of both cores together.
func BenchmarkColdReview(b *testing.B) {
	program := filepath.Join(b.TempDir(), "dryfit")
	if out, err := exec.Command("go", "build", "-o", program, ".").CombinedOutput(); err != nil {
		b.Fatalf("%v: %s", err, out)
	}
	var cpu time.Duration
	for b.Loop() {
		cmd := exec.Command(program, "review", "--afresh", systems+"quarry-road.yaml")
		cmd.Env = append(os.Environ(), "DRYFIT_CACHE="+b.TempDir())
		if out, err := cmd.CombinedOutput(); err != nil {
			b.Fatalf("%v: %s", err, out)
		}
		cpu += cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime()
	}
	b.ReportMetric(float64(cpu.Milliseconds())/float64(b.N), "cpu-ms/op")
}
