// Package schema holds the JSON Schemas (draft 2020-12) of what dryfit reads and writes.
package schema

import _ "embed"

// System is the schema of a system file. Its formats are the kinds of quantity; kinds with
// bounds of their own, as signed-length, a length that may lie below zero; time-span, since
// `time` is a time of day in JSON Schema; id, a name that the author chooses; and length-or-fit,
// concentration-or-none and current-or-none, a quantity or that word.
//
//go:embed system.schema.json
var System []byte
