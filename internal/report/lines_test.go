package report

import (
	"bytes"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v5"

	"dryfit/internal/review"
	"dryfit/schema"
)

func compiled(t testing.TB, text []byte) *jsonschema.Schema {
	t.Helper()
	c := jsonschema.NewCompiler()
	c.Draft = jsonschema.Draft2020
	if err := c.AddResource("schema.json", bytes.NewReader(text)); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// Every line is one object of the schema, flat, and all four sorts are there.
func TestLinesKeepTheirSchema(t *testing.T) {
	s := compiled(t, schema.Lines)
	kinds := map[string]int{}
	for _, heldTo := range []review.Strength{review.Shall, review.Should} {
		run := runOfTests()
		run.HeldTo = heldTo
		all := formed(t, "lines", run, several(t)...)
		for _, l := range strings.Split(strings.TrimSuffix(all, "\n"), "\n") {
			v := decoded(t, []byte(l))
			if err := s.Validate(v); err != nil {
				t.Errorf("%s\n%#v", l, err)
			}
			fields := v.(map[string]any)
			kinds[fields["line"].(string)]++
			for key, value := range fields {
				switch value.(type) {
				case map[string]any, []any, nil:
					t.Errorf("%s is not flat", key)
				}
			}
		}
	}
	for kind, n := range map[string]int{"file": 10, "problem": 4, "finding": 6, "permit": 2} {
		if kinds[kind] != n {
			t.Errorf("there are %d lines of the sort %s and not %d", kinds[kind], kind, n)
		}
	}
	for _, bad := range []string{`{}`, `{"line":"finding","file":"a"}`, `{"line":"other","file":"a"}`, `{"line":"problem","file":"a","file_line":1,"column":1,"pointer":"","found":"x","write":"y","more":1}`} {
		if s.Validate(decoded(t, []byte(bad))) == nil {
			t.Errorf("the schema takes %s", bad)
		}
	}
}

// Exactly the findings that make the exit status 1 count.
func TestLinesSayWhatCounts(t *testing.T) {
	for heldTo, want := range map[review.Strength]string{review.Shall: "true false true", review.Should: "true false true"} {
		run := runOfTests()
		run.HeldTo = heldTo
		var got []string
		for _, l := range strings.Split(formed(t, "lines", run, several(t)[0]), "\n") {
			if strings.HasPrefix(l, `{"line":"finding"`) {
				got = append(got, map[bool]string{true: "true", false: "false"}[strings.Contains(l, `"counts":true`)])
			}
		}
		if strings.Join(got, " ") != want {
			t.Errorf("held to %s: %v", heldTo, got)
		}
	}
}
