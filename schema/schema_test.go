package schema

import (
	"encoding/csv"
	"encoding/json"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// part is a mapping somewhere in the schema, with the JSON pointer to it.
type part struct {
	pointer string
	rule    map[string]any
}

func system(t *testing.T) map[string]any { return read(t, System) }

func read(t *testing.T, text []byte) map[string]any {
	t.Helper()
	var root map[string]any
	if err := json.Unmarshal(text, &root); err != nil {
		t.Fatal(err)
	}
	return root
}

// written calls a test for each notation that people write by hand, with the least number of keys that it has.
func written(t *testing.T, test func(t *testing.T, root map[string]any, least int)) {
	for _, n := range []struct {
		name  string
		text  []byte
		least int
	}{{"system", System, 500}, {"guide", Guide, 50}, {"moderation", Moderation, 9}, {"house", House, 12}} {
		t.Run(n.name, func(t *testing.T) { test(t, read(t, n.text), n.least) })
	}
}

// data are the keywords whose values are no schemas.
var data = []string{"examples", "assumed", "enum", "const", "required", "type"}

// schemas lists every schema below a value; maps of schemas are passed through.
func schemas(value any, pointer string, isMap bool) []part {
	var out []part
	switch v := value.(type) {
	case map[string]any:
		if !isMap {
			out = append(out, part{pointer, v})
		}
		for name, below := range v {
			if isMap || !slices.Contains(data, name) {
				out = append(out, schemas(below, pointer+"/"+name, !isMap && (name == "properties" || name == "$defs"))...)
			}
		}
	case []any:
		for _, below := range v {
			out = append(out, schemas(below, pointer, false)...)
		}
	}
	return out
}

// properties lists the schema of every key of the notation.
func properties(root map[string]any) []part {
	var out []part
	for _, s := range schemas(root, "#", false) {
		keys, _ := s.rule["properties"].(map[string]any)
		for name, rule := range keys {
			out = append(out, part{s.pointer + "/properties/" + name, rule.(map[string]any)})
		}
	}
	return out
}

// definition is the schema that a reference names; nil if there is none.
func definition(root, rule map[string]any) map[string]any {
	ref, _ := rule["$ref"].(string)
	name, ok := strings.CutPrefix(ref, "#/$defs/")
	if !ok {
		return nil
	}
	found, _ := root["$defs"].(map[string]any)[name].(map[string]any)
	return found
}

func TestEveryKeyIsExplained(t *testing.T) { written(t, everyKeyIsExplained) }

func everyKeyIsExplained(t *testing.T, root map[string]any, least int) {
	keys := properties(root)
	if len(keys) < least {
		t.Fatalf("only %d keys were found: the walk misses some", len(keys))
	}
	for _, key := range keys {
		of := definition(root, key.rule)
		for _, word := range []string{"description", "examples"} {
			value := key.rule[word]
			if value == nil {
				value = of[word]
			}
			if text, isText := value.(string); isText && (!strings.HasSuffix(text, ".") || len(text) > 400) {
				t.Errorf("%s: the description is no short sentence: %q", key.pointer, text)
			}
			if list, isList := value.([]any); isList && len(list) == 0 {
				t.Errorf("%s has an empty list of examples", key.pointer)
			}
			if value == nil {
				t.Errorf("%s has no %s", key.pointer, word)
			}
		}
	}
}

func TestKeysAreSnakeCase(t *testing.T) { written(t, keysAreSnakeCase) }

func keysAreSnakeCase(t *testing.T, root map[string]any, _ int) {
	snake := regexp.MustCompile(`^[a-z][a-z0-9]*(_[a-z0-9]+)*$`)
	for _, key := range properties(root) {
		name := key.pointer[strings.LastIndexByte(key.pointer, '/')+1:]
		if !snake.MatchString(name) && name != "pH" {
			t.Errorf("%s is not in snake case", key.pointer)
		}
	}
}

// The names of cases and the classes of clamps keep the spelling that they have elsewhere.
func TestWordsAreKebabCase(t *testing.T) { written(t, wordsAreKebabCase) }

func wordsAreKebabCase(t *testing.T, root map[string]any, _ int) {
	kebab := regexp.MustCompile(`^[a-z][a-z0-9]*(-[a-z0-9]+)*$`)
	clamps := regexp.MustCompile(`^W[1-5]$`)
	for _, s := range schemas(root, "#", false) {
		words, _ := s.rule["enum"].([]any)
		for _, w := range words {
			word, _ := w.(string)
			if !kebab.MatchString(word) && !clamps.MatchString(word) && s.pointer != "#/$defs/case" {
				t.Errorf("%s: the word %q is not in kebab case", s.pointer, word)
			}
		}
	}
}

// The kinds of quantity, those with bounds of their own, and the formats that stand beside them. JSON Schema has a format
// `time`, a time of day, which general validators hold to: ours is another name.
var formats = strings.Fields(`length area volume flow velocity head pressure mass time-span temperature
	temperature_difference power energy concentration fraction angle feed_rate hardness money current
	voltage force stress specific_surface areal_feed areal_rate
	signed-length altitude gradient density air-temperature
	date id length-or-fit concentration-or-none current-or-none`)

func TestFormatsAreKnown(t *testing.T) { written(t, formatsAreKnown) }

func formatsAreKnown(t *testing.T, root map[string]any, _ int) {
	for _, s := range schemas(root, "#", false) {
		format, given := s.rule["format"].(string)
		if given && !slices.Contains(formats, format) {
			t.Errorf("%s: unknown format %q", s.pointer, format)
		}
	}
}

// A misspelt key must never pass, and a file from a stranger must stay bounded.
func TestEverythingIsClosedAndBounded(t *testing.T) { written(t, everythingIsClosedAndBounded) }

func everythingIsClosedAndBounded(t *testing.T, root map[string]any, _ int) {
	for _, s := range schemas(root, "#", false) {
		has := func(word string) bool { _, ok := s.rule[word]; return ok }
		if has("properties") {
			one := s.rule["maxProperties"] == 1.0
			if one && (s.rule["minProperties"] != 1.0 || s.rule["additionalProperties"] != false) {
				t.Errorf("%s: a mapping of one key must be closed", s.pointer)
			}
			if !one && s.rule["unevaluatedProperties"] != false {
				t.Errorf("%s: unknown keys would pass", s.pointer)
			}
		}
		if has("propertyNames") && !has("maxProperties") {
			t.Errorf("%s: no bound on the number of names", s.pointer)
		}
		if has("items") && s.rule["items"] != false && !has("maxItems") {
			t.Errorf("%s: no bound on the length of the list", s.pointer)
		}
		isText := s.rule["type"] == "string" && !strings.HasSuffix(s.pointer, "/if")
		if isText && !has("format") && !has("maxLength") && !has("enum") {
			t.Errorf("%s: no bound on the length of the text", s.pointer)
		}
		if has("minLength") && !has("maxLength") {
			t.Errorf("%s: a least length of text without a greatest", s.pointer)
		}
		if has("oneOf") || has("anyOf") {
			t.Errorf("%s: alternatives give one error for each; use a discriminating key", s.pointer)
		}
	}
}

func TestReferencesLead(t *testing.T) { written(t, referencesLead) }

func referencesLead(t *testing.T, root map[string]any, _ int) {
	used := map[string]bool{}
	for _, s := range schemas(root, "#", false) {
		ref, given := s.rule["$ref"].(string)
		if given && definition(root, s.rule) == nil {
			t.Errorf("%s: %q leads nowhere", s.pointer, ref)
		}
		used[strings.TrimPrefix(ref, "#/$defs/")] = true
	}
	for name := range root["$defs"].(map[string]any) {
		if !used[name] {
			t.Errorf("the definition %s is used nowhere", name)
		}
	}
}

// What is assumed where a key is left out must stand in a table of the project.
func TestAssumedValuesStandInTables(t *testing.T) {
	count := 0
	for _, s := range schemas(system(t), "#", false) {
		assumed, given := s.rule["assumed"].(map[string]any)
		if !given {
			continue
		}
		count++
		table, _ := assumed["table"].(string)
		file, err := os.Open("../rules/tables/" + table + ".csv")
		if err != nil {
			t.Errorf("%s: %v", s.pointer, err)
			continue
		}
		r := csv.NewReader(file)
		r.Comment = '#'
		rows, err := r.ReadAll()
		file.Close()
		if err != nil {
			t.Errorf("%s: %v", s.pointer, err)
			continue
		}
		key, one := assumed["key"].(string)
		if one && !slices.ContainsFunc(rows, func(row []string) bool { return row[0] == key }) {
			t.Errorf("%s: the table %s has no %q", s.pointer, table, key)
		}
		if text, _ := s.rule["description"].(string); !strings.Contains(text, "assumed") {
			t.Errorf("%s: the description does not say that a value is assumed", s.pointer)
		}
	}
	if count == 0 {
		t.Error("nothing is assumed: the walk misses the keyword")
	}
}

// No input of a safety clause is ever assumed: these keys, and all below them, carry no assumption.
func TestNothingOfSafetyIsAssumed(t *testing.T) {
	safety := regexp.MustCompile(`/properties/(mains|top_up|metals|lid|history|foothold|residual_current|outlet_at|outlet_inside|surface|gutter)(/|$)`)
	seen := map[string]bool{}
	for _, s := range schemas(system(t), "#", false) {
		found := safety.FindStringSubmatch(s.pointer)
		if found == nil {
			continue
		}
		seen[found[1]] = true
		if s.rule["assumed"] != nil {
			t.Errorf("%s: a safety input must not be assumed", s.pointer)
		}
	}
	if len(seen) < 8 {
		t.Errorf("only the safety keys %v were found", seen)
	}
}
