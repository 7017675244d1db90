package system

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"dryfit/schema"
)

// Whether the schema is compiled for one file or as a whole, the file has the same problems.
func TestOneFileNeedsOnlyItsOwnRules(t *testing.T) {
	whole, err := Compile(schema.System)
	if err != nil {
		t.Fatal(err)
	}
	files, err := filepath.Glob("../../testdata/*/*.yaml")
	if err != nil || len(files) < 50 {
		t.Fatal(len(files), err)
	}
	texts := map[string]string{}
	for i, file := range files {
		if i%10 > 0 && filepath.Base(filepath.Dir(file)) != "systems" {
			continue
		}
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		texts[file] = string(data)
	}
	lines := strings.Split(string(systemFile(t, "everything.yaml")), "\n")
	for i := 0; i < len(lines); i += 30 { // and with a key misspelt
		wrong := slices.Clone(lines)
		wrong[i] = strings.Replace(wrong[i], ":", "x:", 1)
		texts[fmt.Sprint("everything.yaml, line ", i+1)] = strings.Join(wrong, "\n")
	}
	for name, text := range texts {
		fresh, err := decoded(schema.System)
		if err != nil {
			t.Fatal(err)
		}
		_, got := ReadWith(fresh, name, []byte(text))
		_, want := ReadWith(whole, name, []byte(text))
		if !slices.Equal(got, want) {
			t.Errorf("%s: with its own rules\n%s\nwith all\n%s", name, table(got), table(want))
		}
		if fresh.schema != nil && fresh.covers == nil {
			t.Errorf("%s: the whole schema was compiled for it", name)
		}
	}
}

// The rules of keys that come later are not left out.
func TestTheNextFileMayNeedMore(t *testing.T) {
	rules, err := Compile([]byte(`{"properties": {"a": {"properties": {"c": {"type": "string"}}}, "b": {"const": 1}}}`))
	if err != nil {
		t.Fatal(err)
	}
	fresh := &Rules{text: rules.text, order: rules.order, formats: rules.formats}
	for _, c := range []struct {
		text     string
		problems int
		whole    bool
	}{
		{"a: {}", 0, false}, {"a: {}", 0, false}, {"a: {c: 1}", 1, true}, {"b: 2", 1, true}, {"a: {c: word}", 0, true},
	} {
		if _, problems := ReadWith(fresh, "file.yaml", []byte(c.text)); len(problems) != c.problems || (fresh.covers == nil) != c.whole {
			t.Errorf("%s: problems %v, all compiled %v", c.text, problems, fresh.covers == nil)
		}
	}
}
