package schema

import _ "embed"

// Review is the schema of the review that dryfit writes as JSON.
//
//go:embed review.schema.json
var Review []byte
