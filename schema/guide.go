package schema

import _ "embed"

// Guide is the schema of a marking guide.
//
//go:embed guide.schema.json
var Guide []byte

// Moderation is the schema of a file of marks that were changed by hand.
//
//go:embed moderation.schema.json
var Moderation []byte
