package schema

import _ "embed"

// House is the schema of the rules of a house.
//
//go:embed house.schema.json
var House []byte
