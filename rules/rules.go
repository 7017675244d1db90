// Package rules holds what dryfit judges by: its tables and its written book.
package rules

import "embed"

// Tables is the folder tables: one CSV file a table, read by internal/tables.
//
//go:embed tables/*.csv
var Tables embed.FS
