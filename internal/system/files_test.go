package system

import (
	"encoding/json"
	"fmt"
	"path/filepath"
	"sort"
	"strings"
	"testing"

	"dryfit/schema"
)

// TestSystemFiles reads every system file of testdata; only the file of mistakes has any.
func TestSystemFiles(t *testing.T) {
	files, err := filepath.Glob("../../testdata/systems/*.yaml")
	if err != nil || len(files) < 4 {
		t.Fatal(files, err)
	}
	for _, file := range files {
		name := filepath.Base(file)
		if name != "ten-mistakes.yaml" {
			mustRead(t, name, systemFile(t, name))
		}
	}
}

// TestTenMistakes wants the ten, each on the line after the comment that names it.
func TestTenMistakes(t *testing.T) {
	data := systemFile(t, "ten-mistakes.yaml")
	s, problems := Read("ten-mistakes.yaml", data)
	if s != nil || len(problems) != 10 {
		t.Errorf("%d problems:\n%s", len(problems), table(problems))
	}
	named := map[int]bool{}
	for i, line := range strings.Split(string(data), "\n") {
		if strings.HasPrefix(strings.TrimSpace(line), "# mistake ") {
			named[i+2] = true
		}
	}
	for _, p := range problems {
		if !named[p.Line] {
			t.Errorf("no mistake is planted where this stands: %s", p)
		}
		delete(named, p.Line)
	}
	if len(named) > 0 {
		t.Errorf("mistakes not found on lines %v", named)
	}
}

// shown is a part of the schema with one of its examples.
type shown struct {
	where string
	rule  map[string]any
	value any
}

// examples lists every example of the schema.
func examples(part any, where string) []shown {
	var out []shown
	switch p := part.(type) {
	case map[string]any:
		list, isList := p["examples"].([]any)
		for _, value := range list {
			out = append(out, shown{where, p, value})
		}
		names := make([]string, 0, len(p))
		for name := range p {
			names = append(names, name)
		}
		sort.Strings(names)
		for _, name := range names {
			if !isList || name != "examples" {
				out = append(out, examples(p[name], where+"/"+name)...)
			}
		}
	case []any:
		for i, below := range p {
			out = append(out, examples(below, fmt.Sprintf("%s/%d", where, i))...)
		}
	}
	return out
}

// TestExamplesOfTheSchemas holds each example against the part of its schema that shows it.
func TestExamplesOfTheSchemas(t *testing.T) {
	for _, s := range []struct {
		name  string
		text  []byte
		least int
	}{{"system", schema.System, 200}, {"guide", schema.Guide, 50}, {"moderation", schema.Moderation, 9}} {
		t.Run(s.name, func(t *testing.T) { examplesOfASchema(t, s.text, s.least) })
	}
}

func examplesOfASchema(t *testing.T, data []byte, least int) {
	var whole map[string]any
	if err := json.Unmarshal(data, &whole); err != nil {
		t.Fatal(err)
	}
	shows := examples(whole, "")
	if len(shows) < least {
		t.Fatalf("only %d examples", len(shows))
	}
	all := map[string]any{"$schema": whole["$schema"], "$defs": whole["$defs"]}
	rules, instance := map[string]any{}, map[string]any{}
	for i, one := range shows {
		name := fmt.Sprintf("x%d", i)
		rules[name], instance[name] = one.rule, one.value
	}
	all["properties"] = rules
	text, err := json.Marshal(all)
	if err != nil {
		t.Fatal(err)
	}
	compiled, err := Compile(text)
	if err != nil {
		t.Fatal(err)
	}
	if err := compiled.schema.Validate(any(instance)); err != nil {
		t.Errorf("%#v", err)
	}
}

// TestEverythingIsShown wants everything.yaml to use every key that the schema knows.
func TestEverythingIsShown(t *testing.T) {
	s := mustRead(t, "everything.yaml", systemFile(t, "everything.yaml"))
	rules, err := systemRules()
	if err != nil {
		t.Fatal(err)
	}
	used := map[string]bool{} // a part that is referred to several times is one part
	var follow func(part any, n *node)
	follow = func(part any, n *node) {
		rule := rules.resolved(part)
		properties, _ := rule["properties"].(map[string]any)
		prefix, _ := rule["prefixItems"].([]any)
		for i, item := range n.items {
			switch {
			case n.form == mapping && properties[n.keys[i].name] != nil:
				used[fmt.Sprintf("%p %s", properties, n.keys[i].name)] = true
				follow(properties[n.keys[i].name], item)
			case n.form == mapping:
				follow(rule["additionalProperties"], item)
			case i < len(prefix):
				follow(prefix[i], item)
			default:
				follow(rule["items"], item)
			}
		}
	}
	follow(rules.text, s.Document.root)
	var wanted func(part any, where string)
	wanted = func(part any, where string) {
		p, ok := part.(map[string]any)
		if !ok {
			return
		}
		properties, _ := p["properties"].(map[string]any)
		for name, below := range properties {
			if !used[fmt.Sprintf("%p %s", properties, name)] {
				t.Errorf("%s/%s is not shown", where, name)
			}
			wanted(below, where+"/"+name)
		}
		for _, below := range []string{"items", "additionalProperties"} {
			wanted(p[below], where+"/"+below)
		}
		defs, _ := p["$defs"].(map[string]any)
		for name, below := range defs {
			wanted(below, "/$defs/"+name)
		}
	}
	wanted(rules.text, "")
}

func TestSchemasThatAreRefused(t *testing.T) {
	for text, want := range map[string]string{
		`{"type": "string", "format": "colour"}`:     `uses the format "colour", which nothing checks`,
		`{"$ref": "https://example.org/other.json"}`: "refers to https://example.org/other.json, which is outside it",
		`{"$ref": "file:///etc/hostname"}`:           "refers to file:///etc/hostname, which is outside it",
		`{`:                                          "unexpected end",
	} {
		if _, err := Compile([]byte(text)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %q", text, err, want)
		}
	}
}

func TestReadWith(t *testing.T) {
	rules, err := Compile([]byte(`{"type": "object", "properties": {"limit": {"type": "string", "format": "flow"}}, "unevaluatedProperties": false}`))
	if err != nil {
		t.Fatal(err)
	}
	if doc, problems := ReadWith(rules, "house.yaml", []byte("limit: 900 L/h\n")); len(problems) > 0 || doc == nil {
		t.Error(problems)
	}
	_, problems := ReadWith(rules, "house.yaml", []byte("limits: 900 L/h\n"))
	if got := table(problems); got != "house.yaml:1:1: found the key `limits`: the nearest key is `limit`\n" {
		t.Error(got)
	}
}
