//go:build unix

package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// numbered writes n light loops that differ in their names, with permits for one and a mistake in another, into folder/loops.
func numbered(t *testing.T, folder string, n int) {
	t.Helper()
	write := func(name string, text []byte) {
		if err := os.WriteFile(filepath.Join(folder, "loops", name), text, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.MkdirAll(filepath.Join(folder, "loops"), 0o755); err != nil {
		t.Fatal(err)
	}
	for i := range n {
		data, err := os.ReadFile(systems + []string{"inch-loop", "quarry-road", "gravity-raft"}[i%3] + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		write(fmt.Sprintf("loop-%02d.yaml", i), bytes.Replace(data, []byte("\nname: "), fmt.Appendf(nil, "\nname: %d, ", i), 1))
	}
	write("loop-01.permits.yaml", []byte("permits:\n  - {clause: throttle_reserve, subject: clear-run, reason: it is read each week, who: club board, until: 2026-12-31}\n"))
	write("loop-99.yaml", []byte("dryfit: 1\nname: [x\n"))
}

// outs is the files that a call writes, one of each form.
var outs = []string{"out.txt", "out.json", "out.jsonl", "out.sarif", "out.xml", "out.md"}

// reviewOf is a call of the program on the loops of a folder that writes every form into to. Without a
// cache nothing is kept: the program has no home.
func reviewOf(folder, to, cache string) *exec.Cmd {
	args := []string{"review", "loops", "--as-of", "2026-03-14", "--workers", "2"}
	for _, out := range outs {
		args = append(args, "-o", filepath.Join(to, out))
	}
	if cache != "" {
		args = append(args, "--cache", cache)
	}
	cmd := exec.Command("dryfit", args...)
	cmd.Dir, cmd.Env = folder, []string{"PATH=" + os.Getenv("PATH")}
	return cmd
}

func written(t *testing.T, folder string) map[string]string {
	t.Helper()
	texts := map[string]string{}
	for _, out := range outs {
		data, err := os.ReadFile(filepath.Join(folder, out))
		if err != nil {
			t.Fatal(err)
		}
		texts[out] = string(data)
	}
	return texts
}

func sameTexts(t *testing.T, what string, got, want map[string]string) {
	t.Helper()
	for name, text := range want {
		if got[name] != text {
			t.Errorf("%s: %s differs, %d and %d bytes", what, name, len(got[name]), len(text))
		}
	}
}

// finished runs a call to its end and gives what it wrote.
func finished(t *testing.T, folder, cache string) map[string]string {
	t.Helper()
	to := t.TempDir()
	cmd := reviewOf(folder, to, cache)
	if text, err := cmd.CombinedOutput(); cmd.ProcessState.ExitCode() != 2 { // one of the files has a mistake
		t.Fatalf("%v: %s", err, text)
	}
	return written(t, to)
}

func entries(cache string) int {
	found, _ := filepath.Glob(filepath.Join(cache, "??", "*"))
	return len(found)
}

// killedAfter starts a call, kills it when so many entries have appeared in the cache, and says
// whether that came before its end.
func killedAfter(t *testing.T, cmd *exec.Cmd, cache string, most int) bool {
	t.Helper()
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	ended := make(chan struct{})
	go func() {
		cmd.Wait()
		close(ended)
	}()
	for late := time.After(2 * time.Minute); entries(cache) < most; {
		select {
		case <-ended:
			return false
		case <-late:
			cmd.Process.Kill()
			t.Fatal("nothing is kept")
		case <-time.After(time.Millisecond):
		}
	}
	cmd.Process.Kill()
	<-ended
	status, _ := cmd.ProcessState.Sys().(syscall.WaitStatus)
	return status.Signaled()
}

// A run that is killed leaves every output as it was, and a cache from which the next run gives
// the bytes that it would have given without.
func TestAKilledRunLeavesNothingThatIsWrong(t *testing.T) {
	folder := t.TempDir()
	numbered(t, folder, 18)
	want := finished(t, folder, "")
	old := map[string]string{}
	for _, out := range outs {
		old[out] = "from before"
	}
	for _, most := range []int{1, 8, 21} { // each file has two entries, and what is not yet moved into its place is one too
		cache, to := t.TempDir(), t.TempDir()
		for out, text := range old {
			if err := os.WriteFile(filepath.Join(to, out), []byte(text), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		if !killedAfter(t, reviewOf(folder, to, cache), cache, most) {
			t.Errorf("it ended before %d entries", most)
			continue
		}
		sameTexts(t, fmt.Sprintf("output of the run killed at %d", most), written(t, to), old)
		if n := entries(cache); n < most || n >= 36 {
			t.Errorf("killed at %d entries it leaves %d", most, n)
		}
		sameTexts(t, fmt.Sprintf("after the run killed at %d", most), finished(t, folder, cache), want)
		if n := entries(cache); n < 36 || n > 40 {
			t.Errorf("%d entries are kept of 18 files", n)
		}
	}
}

// Two runs that share a cache give the same bytes, and those of a run alone.
func TestTwoRunsAtOnceOnOneCache(t *testing.T) {
	folder, cache := t.TempDir(), t.TempDir()
	numbered(t, folder, 9)
	want := finished(t, folder, "")
	var to [2]string
	var runs [2]*exec.Cmd
	for i := range runs {
		to[i] = t.TempDir()
		runs[i] = reviewOf(folder, to[i], cache)
		if err := runs[i].Start(); err != nil {
			t.Fatal(err)
		}
	}
	for i, run := range runs {
		if err := run.Wait(); run.ProcessState.ExitCode() != 2 {
			t.Fatal(err)
		}
		sameTexts(t, "of two at once", written(t, to[i]), want)
	}
	sameTexts(t, "after two at once", finished(t, folder, cache), want)
	if left, _ := filepath.Glob(filepath.Join(cache, "??", "new-*")); len(left) > 0 {
		t.Errorf("they leave %s", strings.Join(left, " "))
	}
}
