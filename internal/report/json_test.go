package report

import (
	"bytes"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v5"

	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/working"
	"dryfit/schema"
)

func reviewSchema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	c := jsonschema.NewCompiler()
	c.Draft = jsonschema.Draft2020
	if err := c.AddResource("review.schema.json", bytes.NewReader(schema.Review)); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("review.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func items(t *testing.T) []Item {
	return []Item{
		Reviewed(sample(t)),
		{File: "bad.yaml", Problems: []system.Problem{{File: "bad.yaml", Line: 3, Column: 7, Pointer: "/vessels", Found: "`x`", Write: "y"}}},
		{File: "gone.yaml", Unread: "there is no such file"},
	}
}

func written(t *testing.T, list []Item) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := writeJSON(&b, list); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func writeJSON(b *bytes.Buffer, list []Item) error {
	j := newJSONWriter(b, Run{HeldTo: review.Shall, Version: "unreleased", Book: strings.Repeat("0", 64)})
	for _, i := range list {
		if err := j.Add(i); err != nil {
			return err
		}
	}
	if err := j.Close(); err != nil {
		return err
	}
	text := bytes.Clone(b.Bytes()) // laid out, to be read here
	b.Reset()
	return json.Indent(b, text, "", "  ")
}

// One file is laid out, of several each stands on one line; both say the same.
func TestSeveralFilesStandOnALineEach(t *testing.T) {
	lines := func(list []Item) int {
		var b bytes.Buffer
		j := newJSONWriter(&b, Run{HeldTo: review.Shall})
		for _, i := range list {
			if err := j.Add(i); err != nil {
				t.Fatal(err)
			}
		}
		if err := j.Close(); err != nil {
			t.Fatal(err)
		}
		if err := reviewSchema(t).Validate(decoded(t, b.Bytes())); err != nil {
			t.Errorf("%#v", err)
		}
		return bytes.Count(b.Bytes(), []byte("\n"))
	}
	if one, three := lines(items(t)[:1]), lines(items(t)); one < 100 || three != 12 {
		t.Errorf("one file takes %d lines and three %d", one, three)
	}
}

func decoded(t *testing.T, text []byte) any {
	t.Helper()
	d := json.NewDecoder(bytes.NewReader(text))
	d.UseNumber()
	var v any
	if err := d.Decode(&v); err != nil {
		t.Fatal(err)
	}
	return v
}

func TestJSON(t *testing.T) {
	s := reviewSchema(t)
	text := written(t, items(t))
	if err := s.Validate(decoded(t, text)); err != nil {
		t.Errorf("%#v", err)
	}
	if !bytes.Equal(text, written(t, items(t))) {
		t.Error("two runs differ")
	}
	if err := s.Validate(decoded(t, written(t, nil))); err != nil {
		t.Errorf("no files: %#v", err)
	}
	golden(t, "review.json", func(b *bytes.Buffer) error { return writeJSON(b, items(t)) })
}

// The schema refuses what would mislead a program that reads the review.
func TestSchemaRefuses(t *testing.T) {
	s := reviewSchema(t)
	for from, to := range map[string]string{
		`"verdict": "met"`:                  `"verdict": "fine"`,
		`"strength": "shall"`:               `"strength": "must"`,
		`"exit_status": 2`:                  `"exit_status": 4`,
		`"si": `:                            `"value_in_si": `,
		`"op": "splice"`:                    `"op": "move"`,
		`"flag": 1`:                         `"flag": 0`,
		`"origin": "worked"`:                `"origin": "guess"`,
		`"quantity": "turn",`:               ``,
		`"unread": "there is no such file"`: `"other": "there is no such file"`,
		`"line": 3`:                         `"line": -3`,
	} {
		text := string(written(t, items(t)))
		if !strings.Contains(text, from) {
			t.Errorf("the review does not hold %s", from)
			continue
		}
		if err := s.Validate(decoded(t, []byte(strings.ReplaceAll(text, from, to)))); err == nil {
			t.Errorf("%s in place of %s passes", to, from)
		}
	}
}

// Numbers that JSON cannot hold never reach it.
func TestJSONWithoutNumbers(t *testing.T) {
	s := reviewSchema(t)
	r := sample(t)
	for i, j := range r.Judgements {
		j.Value = working.Value{X: math.NaN(), Low: math.Inf(-1), High: math.Inf(1)}
		if i%2 == 0 {
			j.Value = working.Value{X: 1, Low: math.Inf(-1), High: math.Inf(1)}
		}
	}
	r.Findings[0].Remedies[0].Edits[0].Value = math.NaN()
	if err := s.Validate(decoded(t, written(t, []Item{Reviewed(r)}))); err != nil {
		t.Errorf("%#v", err)
	}
}

func TestStatus(t *testing.T) {
	shouldOnly := &review.Review{Summary: review.Summary{Findings: []*review.Finding{{Judgement: &review.Judgement{Clause: &review.Clause{Strength: review.Should}, Verdict: review.NotMet}}}}}
	for _, c := range []struct {
		item   Item
		heldTo review.Strength
		want   int
	}{
		{Item{Unread: "x"}, review.Shall, 2},
		{Item{Fault: "x"}, review.Shall, 3},
		{Item{Problems: []system.Problem{{}}}, review.Shall, 2},
		{Reviewed(&review.Review{}), review.Shall, 0},
		{Reviewed(shouldOnly), review.Shall, 0},
		{Reviewed(shouldOnly), review.Should, 1},
	} {
		if got := c.item.Status(c.heldTo); got != c.want {
			t.Errorf("%+v held to %s: %d, want %d", c.item, c.heldTo, got, c.want)
		}
	}
}
