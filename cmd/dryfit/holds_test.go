package main

import (
	"encoding/json"
	"strings"

	"github.com/rogpeppe/go-internal/testscript"
	"github.com/santhosh-tekuri/jsonschema/v5"

	"dryfit/schema"
)

// holds SCHEMA FILE wants a file of JSON that holds to a schema of the folder schema.
func holds(ts *testscript.TestScript, _ bool, args []string) {
	if len(args) != 2 {
		ts.Fatalf("holds SCHEMA FILE")
	}
	text, known := map[string][]byte{"review": schema.Review, "compare": schema.Compare}[args[0]]
	if !known {
		ts.Fatalf("there is no schema %s", args[0])
	}
	c := jsonschema.NewCompiler()
	c.Draft = jsonschema.Draft2020
	ts.Check(c.AddResource("schema.json", strings.NewReader(string(text))))
	s, err := c.Compile("schema.json")
	ts.Check(err)
	d := json.NewDecoder(strings.NewReader(ts.ReadFile(args[1])))
	d.UseNumber()
	var v any
	ts.Check(d.Decode(&v))
	if err := s.Validate(v); err != nil {
		ts.Fatalf("%s: %#v", args[1], err)
	}
}
