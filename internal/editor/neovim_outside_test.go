//go:build outside

package editor

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// A session in Neovim (Debian package neovim): a fault is typed, its remedy applied, the finding goes, and the file
// that is saved differs in that one value.
func TestNeovim(t *testing.T) {
	dir := t.TempDir()
	program := filepath.Join(dir, "dryfit")
	if out, err := exec.Command("go", "build", "-o", program, "dryfit/cmd/dryfit").CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	loop, seen := filepath.Join(dir, "loop.yaml"), filepath.Join(dir, "seen")
	before := demo(t)
	if err := os.WriteFile(loop, []byte(before), 0o644); err != nil {
		t.Fatal(err)
	}
	script, err := filepath.Abs("testdata/neovim.lua")
	if err != nil {
		t.Fatal(err)
	}
	nvim := exec.Command("nvim", "--headless", "-u", "NONE", "-i", "NONE", "-n", "-c", "luafile "+script)
	nvim.Env = append(os.Environ(), "LOOP="+loop, "SEEN="+seen, "DRYFIT="+program, "HOME="+dir, "XDG_STATE_HOME="+dir, "XDG_CACHE_HOME="+dir)
	nvim.Dir, nvim.WaitDelay = dir, time.Second
	watchdog := time.AfterFunc(5*time.Minute, func() { nvim.Process.Kill() })
	defer watchdog.Stop()
	out, err := nvim.CombinedOutput()
	said, _ := os.ReadFile(seen)
	t.Logf("%s%s", out, said)
	if err != nil {
		t.Fatal(err)
	}
	for _, words := range []string{
		"at first marked: false",
		"typed: lip_at: 400 mm",
		"marked: dryfit severity 2 in line 0",
		"The lip of the inlet well should hang near half the depth of the water.",
		"offered: lower the lip of the inlet well by 90 mm, from 400 mm to 310 mm above the floor",
		"applied: lip_at: 310 mm",
		"\nmarked: false",
		"completion: top_at top_at: ",
		"hover: `lip_at` Lower edge of the well",
		"definition: well:",
	} {
		if !strings.Contains(string(said), words) {
			t.Errorf("it does not say %q", words)
		}
	}
	after, err := os.ReadFile(loop)
	if err != nil {
		t.Fatal(err)
	}
	if want := strings.Replace(before, "lip_at: 305 mm", "lip_at: 310 mm", 1); string(after) != want {
		t.Error("the saved file differs in more than the one value")
	}
}
