package schema

import _ "embed"

// Compare is the schema of the comparison that dryfit writes as JSON.
//
//go:embed compare.schema.json
var Compare []byte
