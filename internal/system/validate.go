package system

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net/url"
	"regexp"
	"strings"
	"sync"

	"github.com/santhosh-tekuri/jsonschema/v5"

	"dryfit/internal/quantity"
	"dryfit/schema"
)

// Rules are a JSON Schema: the validator that is made of it, beside its text in
// which the words for a problem are looked up. Several goroutines may use them.
type Rules struct {
	text    any
	order   map[uintptr][]string // see [ordered]
	formats map[string]func(any) bool

	mutex  sync.Mutex
	schema *jsonschema.Schema
	covers map[string]bool // the keys of which the validator knows the rules; nil if it knows all
}

// systemRules is the schema of a system file, decoded on first use.
var systemRules = sync.OnceValues(func() (*Rules, error) { return decoded(schema.System) })

// Compile prepares a JSON Schema 2020-12 for [ReadWith]. It refuses every reference out of the schema itself.
func Compile(data []byte) (*Rules, error) {
	book, err := decoded(data)
	if err != nil {
		return nil, err
	}
	book.schema, err = book.compile(book.text)
	return book, err
}

// decoded is a schema without its validator.
func decoded(data []byte) (*Rules, error) {
	book := &Rules{order: map[uintptr][]string{}, formats: map[string]func(any) bool{}}
	for _, kind := range quantity.Kinds() {
		book.formats[string(kind)] = isFormat(string(kind))
	}
	for name := range measures {
		book.formats[name] = isFormat(name)
	}
	for _, name := range []string{"length-or-fit", "concentration-or-none", "current-or-none", "date", "id"} {
		book.formats[name] = isFormat(name)
	}
	var err error
	if book.text, err = ordered(data, book.order); err != nil {
		return nil, err
	}
	return book, known(book.text, book.formats)
}

// compile makes the validator of a schema.
func (book *Rules) compile(text any) (*jsonschema.Schema, error) {
	data, err := json.Marshal(text)
	if err != nil {
		return nil, err
	}
	c := jsonschema.NewCompiler()
	c.Draft = jsonschema.Draft2020
	c.AssertFormat = true
	c.LoadURL = func(url string) (io.ReadCloser, error) {
		return nil, fmt.Errorf("the schema refers to %s, which is outside it", url)
	}
	c.Formats = book.formats
	const here = "dryfit:///schema.json"
	if err := c.AddResource(here, bytes.NewReader(data)); err != nil {
		return nil, err
	}
	return c.Compile(here)
}

// known refuses a format that nothing checks: the validator would pass over it in silence.
func known(part any, formats map[string]func(any) bool) error {
	var errs []error
	switch p := part.(type) {
	case map[string]any:
		if name, ok := p["format"].(string); ok && formats[name] == nil {
			errs = append(errs, fmt.Errorf("the schema uses the format %q, which nothing checks", name))
		}
		for _, below := range p {
			errs = append(errs, known(below, formats))
		}
	case []any:
		for _, below := range p {
			errs = append(errs, known(below, formats))
		}
	}
	return errors.Join(errs...)
}

// identifier is the form of a name that the author chooses.
var identifier = regexp.MustCompile(`^[a-z][a-z0-9]*(-[a-z0-9]+)*$`)

func isFormat(name string) func(any) bool {
	return func(v any) bool {
		s, isText := v.(string)
		if !isText {
			return true
		}
		found, _ := misfit(name, s)
		return found == ""
	}
}

// ReadWith reads a YAML or JSON file that is no system file, as a marking guide,
// and holds it against its own schema. The document is nil when there is a problem.
func ReadWith(rules *Rules, file string, data []byte) (*Document, []Problem) {
	doc, problems := ReadOn(rules, file, data)
	if len(problems) > 0 {
		return nil, problems
	}
	return doc, nil
}

// ReadOn is [ReadWith] for a reader that goes on to look for other problems: it gives the
// document beside its problems, and nil only where nothing can be read.
func ReadOn(rules *Rules, file string, data []byte) (*Document, []Problem) {
	doc := &Document{File: file}
	ps := newProblems(doc)
	if doc.root = parse(data, ps); doc.root == nil {
		return nil, ps.sorted()
	}
	rules.validate(doc, ps)
	return doc, ps.sorted()
}

// validate holds the document against the schema.
func (book *Rules) validate(doc *Document, ps *problems) {
	schema, err := book.validator(doc)
	if err != nil {
		ps.add("", "a schema that does not compile: "+err.Error(), "report this as a fault of dryfit")
		return
	}
	err = schema.Validate(doc.root.plain())
	var bad *jsonschema.ValidationError
	switch {
	case err == nil:
	case errors.As(err, &bad):
		e := explainer{book: book, doc: doc, ps: ps}
		e.explain(bad)
	default:
		ps.add("", "a file that cannot be held against the schema", "report this as a fault of dryfit: "+err.Error())
	}
}

// rule is the part of the schema at the location of a keyword, and that keyword.
func (book *Rules) rule(location string) (part any, keyword string) {
	_, fragment, _ := strings.Cut(location, "#")
	part = book.text
	parts := tokens(unescaped(fragment))
	if len(parts) == 0 {
		return part, ""
	}
	for _, token := range parts[:len(parts)-1] {
		part = below(part, token)
	}
	return part, parts[len(parts)-1]
}

func below(part any, token string) any {
	switch p := part.(type) {
	case map[string]any:
		return p[token]
	case []any:
		if i, ok := listIndex(token); ok && i < len(p) {
			return p[i]
		}
	}
	return nil
}

// resolved follows references inside the schema.
func (book *Rules) resolved(part any) map[string]any {
	for range 20 {
		m, ok := part.(map[string]any)
		if !ok {
			return nil
		}
		ref, ok := m["$ref"].(string)
		if !ok {
			return m
		}
		_, fragment, _ := strings.Cut(ref, "#")
		part = book.text
		for _, token := range tokens(fragment) {
			part = below(part, token)
		}
	}
	return nil
}

// unescaped turns a location of the validator, whose tokens are also URL-escaped, into a JSON pointer.
func unescaped(location string) string {
	if plain, err := url.PathUnescape(location); err == nil {
		return plain
	}
	return location
}
