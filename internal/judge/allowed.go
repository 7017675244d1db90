package judge

import (
	"slices"

	"github.com/open-policy-agent/opa/v1/ast"
)

// allowed is every built-in function that a clause may call. Left out is what
// reaches the surroundings (network, files, clock, environment, random numbers),
// what builds text or lists longer than its arguments (concat, sprintf, replace,
// array.concat, object.union, numbers.range), what makes numbers longer than its
// arguments (multiplication, shifts, to_number), and what reads other languages
// (regular expressions, JSON, YAML, SQL-like schemas).
var allowed = []string{
	"assign", "eq", "equal", "neq", "lt", "lte", "gt", "gte",
	"plus", "minus", "abs", "ceil", "floor", "round",
	"count", "max", "min", "sum", "sort",
	"internal.member_2", "internal.member_3",
	"and", "or", "intersection", "union",
	"array.reverse", "array.slice",
	"object.filter", "object.get", "object.keys", "object.remove", "object.subset",
	"contains", "endswith", "indexof", "lower", "startswith", "strings.any_prefix_match",
	"strings.any_suffix_match", "strings.count", "substring", "trim", "trim_left", "trim_prefix",
	"trim_right", "trim_space", "trim_suffix", "upper",
	"is_array", "is_boolean", "is_null", "is_number", "is_object", "is_set", "is_string", "type_name",
}

// capabilities is the language of clauses: Rego v1 without template strings, which would build text.
func capabilities() *ast.Capabilities {
	c := ast.CapabilitiesForThisVersion()
	c.Builtins = slices.DeleteFunc(slices.Clone(c.Builtins), func(b *ast.Builtin) bool {
		return !slices.Contains(allowed, b.Name)
	})
	c.Features = []string{ast.FeatureRegoV1}
	c.FutureKeywords = nil
	c.AllowNet = []string{}
	return c
}
