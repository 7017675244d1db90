package schema

import _ "embed"

// Marks is the schema of the marks of a class that dryfit writes as JSON.
//
//go:embed marks.schema.json
var Marks []byte
