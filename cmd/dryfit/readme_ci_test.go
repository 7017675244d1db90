package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"go.yaml.in/yaml/v4"
)

// snippet is the fenced block of the README that follows some words.
func snippet(t *testing.T, after string) string {
	t.Helper()
	readme, err := os.ReadFile(page)
	if err != nil {
		t.Fatal(err)
	}
	_, rest, found := strings.Cut(string(readme), after)
	_, rest, begins := strings.Cut(rest, "\n```yaml\n")
	block, _, ends := strings.Cut(rest, "\n```\n")
	if !found || !begins || !ends {
		t.Fatalf("there is no block after %q", after)
	}
	return block + "\n"
}

// calls is the commands of a file for CI, in their order.
func calls(t *testing.T, text string) []string {
	t.Helper()
	var doc any
	if err := yaml.Unmarshal([]byte(text), &doc); err != nil {
		t.Fatal(err)
	}
	var out []string
	var walk func(any)
	walk = func(v any) {
		switch v := v.(type) {
		case map[string]any:
			for key, below := range v {
				switch command, isText := below.(string); {
				case key == "run" && isText:
					out = append(out, command)
				case key == "script":
					for _, line := range below.([]any) {
						out = append(out, line.(string))
					}
				default:
					walk(below)
				}
			}
		case []any:
			for _, below := range v {
				walk(below)
			}
		}
	}
	walk(doc)
	return out
}

// asClub runs git in the folder of the test, as somebody of the club.
func asClub(t *testing.T, args ...string) {
	t.Helper()
	cmd := exec.Command("git", append([]string{"-c", "user.name=club", "-c", "user.email=club@example.invalid"}, args...)...)
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("git %v: %v: %s", args, err, out)
	}
}

// What the README says to paste for CI is valid, and its calls of dryfit do what they should on a
// branch that changes one of two designs. The rest of it, which fetches and uploads, is not run here.
func TestReadmeShowsCIThatRuns(t *testing.T) {
	if _, err := exec.LookPath("git"); err != nil {
		if os.Getenv("CI") != "" {
			t.Fatal("git is not here")
		}
		t.Skip("git is not here")
	}
	loop, err := os.ReadFile(systems + "quarry-road.yaml")
	if err != nil {
		t.Fatal(err)
	}
	host, other := calls(t, snippet(t, "As `.github/workflows/designs.yml`")), calls(t, snippet(t, "As `.gitlab-ci.yml`"))
	t.Chdir(t.TempDir())
	write := func(name, text string) {
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Mkdir("designs", 0o755); err != nil {
		t.Fatal(err)
	}
	write("designs/one.yaml", string(loop))
	write("designs/two.yaml", string(loop))
	asClub(t, "init", "-q", "-b", "main")
	asClub(t, "add", ".")
	asClub(t, "commit", "-q", "-m", "designs")
	asClub(t, "update-ref", "refs/remotes/origin/main", "HEAD")
	asClub(t, "switch", "-q", "-c", "change")
	write("designs/two.yaml", strings.Replace(string(loop), "hole: 63.5 mm", "hole: 57 mm", 1))
	asClub(t, "fetch", "-q", ".", "main")
	env := map[string]string{"GITHUB_BASE_REF": "main", "DRYFIT_CACHE": t.TempDir()}
	ran := 0
	for _, command := range append(host, other...) {
		rest, ours := strings.CutPrefix(command, "dryfit ")
		if !ours {
			continue
		}
		ran++
		var out, errs bytes.Buffer
		args := strings.Fields(strings.ReplaceAll(os.Expand(rest, func(name string) string { return env[name] }), `"`, ""))
		if status := run(args, nil, &out, &errs, func(name string) string { return env[name] }); status != 1 {
			t.Fatalf("%s: status %d: %s", command, status, errs.String())
		}
		for name, want := range map[string]string{"designs.sarif": `"version":"2.1.0"`, "designs.xml": "<failure", "comment.md": "designs/two.yaml"} {
			text, err := os.ReadFile(name)
			if err != nil || !strings.Contains(strings.ReplaceAll(string(text), `": "`, `":"`), want) || strings.Contains(string(text), "one.yaml") {
				t.Errorf("%s: %s does not hold %q of the changed design alone: %v", command, name, want, err)
			}
			if err := os.Remove(name); err != nil {
				t.Fatal(err)
			}
		}
	}
	if ran != 2 {
		t.Errorf("%d calls of dryfit in what is to be pasted", ran)
	}
}

// The hook calls dryfit with options that it has, and the README names the hook.
func TestTheHookIsOne(t *testing.T) {
	text, err := os.ReadFile("../../.pre-commit-hooks.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var hooks []struct{ ID, Name, Entry, Language string }
	if err := yaml.Unmarshal(text, &hooks); err != nil || len(hooks) != 1 {
		t.Fatal(hooks, err)
	}
	if !regexp.MustCompile(`(?m)^ +- id: ` + hooks[0].ID + "$").MatchString(snippet(t, "in `.pre-commit-config.yaml`")) {
		t.Errorf("the README does not name the hook %s", hooks[0].ID)
	}
	loop, err := filepath.Abs(systems + "quarry-road.yaml")
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir(t.TempDir())
	if err := os.WriteFile("services.yaml", []byte("services: {}\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	var out, errs bytes.Buffer
	args := append(strings.Fields(strings.TrimPrefix(hooks[0].Entry, "dryfit ")), "services.yaml", loop)
	if status := run(args, nil, &out, &errs, func(string) string { return "" }); status != 0 || hooks[0].Language != "golang" {
		t.Errorf("%v: status %d: %s", args, status, errs.String())
	}
}
