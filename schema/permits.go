package schema

import _ "embed"

// Permits is the schema of a file that holds permits and concessions alone, beside a system
// file. Its parts are those of [System].
//
//go:embed permits.schema.json
var Permits []byte
