package schema

import _ "embed"

// Lines is the schema of one line of the JSON lines that dryfit writes.
//
//go:embed lines.schema.json
var Lines []byte
