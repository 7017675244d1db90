//go:build outside

package schema_test

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"dryfit/internal/starter"
	"dryfit/schema"
)

// A language server for YAML in general, which knows of a loop only what the schema says. It comes from the npm registry by its
// ordinary client; this is the newest version for the Node.js of Debian.
var general = sync.OnceValues(func() (string, error) {
	dir, err := os.MkdirTemp("", "general")
	broughtTo = dir
	if err != nil {
		return "", err
	}
	npm := exec.Command("npm", "install", "--silent", "--no-audit", "--no-fund", "--ignore-scripts", "--prefix", dir, "yaml-language-server@1.25.0")
	if out, err := npm.CombinedOutput(); err != nil {
		return "", fmt.Errorf("npm: %w\n%s", err, out)
	}
	return filepath.Join(dir, "node_modules", "yaml-language-server", "bin", "yaml-language-server"), nil
})

var broughtTo string // empty while nothing is

func TestMain(m *testing.M) {
	status := m.Run()
	if broughtTo != "" {
		os.RemoveAll(broughtTo)
	}
	os.Exit(status)
}

func demo(t *testing.T) string {
	t.Helper()
	data, err := os.ReadFile("../testdata/systems/quarry-road.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// served is the server with a schema for the files that a pattern names.
func served(t *testing.T, text []byte, pattern string) *client {
	t.Helper()
	server, err := general()
	if err != nil {
		t.Fatal(err)
	}
	return connect(t, text, pattern, "node", server, "--stdio")
}

// What people write and dryfit reads has nothing wrong in it, by the schema that the program prints.
func TestGeneralServerFindsNothing(t *testing.T) {
	files, err := filepath.Glob("../testdata/systems/*.yaml")
	if err != nil || len(files) < 10 {
		t.Fatalf("%d system files, %v", len(files), err)
	}
	c := served(t, schema.System, "*.yaml")
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		got := c.open(string(data)).wrong
		if filepath.Base(file) == "ten-mistakes.yaml" {
			if len(got) < 2 { // most of the ten are of another kind than a schema can tell
				t.Errorf("%s: it finds %v, which is too little", file, got)
			}
			continue
		}
		if len(got) > 0 {
			t.Errorf("%s: %v", file, got)
		}
	}
	for _, k := range starter.Kinds() {
		data, _ := starter.File(k.Name)
		if got := c.open(string(data)).wrong; len(got) > 0 {
			t.Errorf("%s: %v", k.Name, got)
		}
	}
	for file, text := range map[string][]byte{"../testdata/marking/guide.yaml": schema.Guide, "../testdata/house/quarry-road/house.yaml": schema.House} {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if got := served(t, text, "*.yaml").open(string(data)).wrong; len(got) > 0 {
			t.Errorf("%s: %v", file, got)
		}
	}
}

// A slip is shown where it stands.
func TestGeneralServerFindsSlips(t *testing.T) {
	c := served(t, schema.System, "*.yaml")
	text := demo(t)
	for _, slip := range []struct{ what, write, instead, at, says string }{
		{"a misspelt key", "lip_at: 305", "lipp_at: 305", "lipp_at", "Property lipp_at is not allowed."},
		{"a misspelt piece", "- union: {}", "- unionn: {}", "unionn", "Property unionn is not allowed."},
		{"a misspelt role", "role: sump", "role: sumpp", "sumpp", `Value is not accepted. Valid values: "fish-tank"`},
		{"a misspelt kind", "kind: ball, bore", "kind: bal, bore", "bal, bore", `Value is not accepted. Valid values: "ball"`},
		{"a missing key of a line", "    from: tank\n", "", "solids-run:\n", `Missing property "from".`},
		{"a missing key of the file", "dryfit: 1\n", "", "name: Quarry", `Missing property "dryfit".`},
		{"a number without its unit", "stands_at: 0 mm", "stands_at: 0", "0\n    material: PE\n    uv_stable: true\n    mass: 22", `Incorrect type. Expected "string".`},
	} {
		changed := strings.Replace(text, slip.write, slip.instead, 1)
		if changed == text {
			t.Fatalf("%s: there is no %q", slip.what, slip.write)
		}
		line, column := placeOf(t, changed, slip.at)
		got := c.open(changed).wrong
		if len(got) != 1 || got[0].line != line || got[0].column != column || !strings.HasPrefix(got[0].says, slip.says) {
			t.Errorf("%s: it finds %v, want one at %d:%d: %s", slip.what, got, line, column, slip.says)
		}
	}
}

// Keys and words are offered where they fit, and what the schema says of a key is shown over it.
func TestGeneralServerHelps(t *testing.T) {
	c := served(t, schema.System, "*.yaml")
	text := demo(t)
	for _, typed := range []struct {
		what, write, instead string // the cursor stands at the end of instead
		want, not            []string
	}{
		{"keys of a vessel", "    stands_at: 0 mm", "    stands_at: 0 mm\n    ", []string{"media", "works", "sunk"}, []string{"role", "stands_at", "pieces"}},
		{"roles", "role: sump", "role: ", []string{"sump", "radial-flow-settler", "media-bed", "channel-bed"}, []string{"name"}},
		{"pieces", "      - union: {}", "      - ", []string{"union", "valve", "tee", "floor_drain", "siphon_break"}, []string{"role"}},
		{"kinds of valves, after the piece", "- valve: ball", "- valve: ", []string{"ball"}, nil}, // what is empty is no word yet, so that it knows only the examples
		{"kinds of valves, in a block", "- valve: ball", "- valve:\n          kind: ", []string{"ball", "gate", "three-way"}, nil},
		{"kinds of lids, in braces", "{kind: net", "{kind: ", []string{"net", "solid", "grid"}, nil},
		{"joints", "    joints: cemented", "    joints: ", []string{"cemented", "ring-seal", "pinned"}, []string{"ball"}},
	} {
		at := strings.Index(text, typed.write)
		if at < 0 {
			t.Fatalf("%s: there is no %q", typed.what, typed.write)
		}
		before := text[:at] + typed.instead
		f := c.open(before + text[at+len(typed.write):])
		got := f.offers(before)
		for _, want := range typed.want {
			if !slices.Contains(got, want) {
				t.Errorf("%s: it does not offer %s; it offers %v", typed.what, want, got)
			}
		}
		for _, not := range typed.not {
			if slices.Contains(got, not) {
				t.Errorf("%s: it offers %s", typed.what, not)
			}
		}
	}
	f := c.open(text)
	for word, want := range map[string]string{
		"lip_at":       "Lower edge of the well above the inner floor of the vessel.",
		"working_flow": "The flow that is asked of the pump.",
		"third: vent":  "What is on the third way",
	} {
		if got := f.over(text[:strings.Index(text, word)+1]); !strings.Contains(got, want) {
			t.Errorf("over %s it shows %q, want %q in it", word, got, want)
		}
	}
}

// A file says by itself which schema it holds to, in a comment that such servers know.
func TestGeneralServerIsToldByTheFile(t *testing.T) {
	c := served(t, schema.System, "*.nothing")
	slip := strings.Replace(demo(t), "role: sump", "role: pond", 1)
	if got := c.open(slip).wrong; len(got) > 0 {
		t.Errorf("without a schema it finds %v", got)
	}
	if got := c.open("# yaml-language-server: $schema=schema.json\n" + slip).wrong; len(got) != 1 {
		t.Errorf("told by the file it finds %v, want one", got)
	}
}

func placeOf(t *testing.T, text, word string) (line, column int) {
	t.Helper()
	at := strings.Index(text, word)
	if at < 0 {
		t.Fatalf("there is no %q", word)
	}
	before := text[:at]
	return strings.Count(before, "\n") + 1, at - strings.LastIndex(before, "\n")
}
