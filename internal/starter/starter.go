// Package starter holds commented system files to begin with, one for each kind of loop.
package starter

import (
	"embed"
	"strings"
)

//go:embed *.yaml
var files embed.FS

// kinds in the order in which they are shown: the simplest first.
var kinds = []string{"small", "small-us", "bell-siphon", "raft", "channels", "bottom-drain"}

// Kind is a kind of loop that there is a file for.
type Kind struct {
	Name  string
	About string // one sentence: the first line of its file
}

// Kinds is all kinds.
func Kinds() []Kind {
	var out []Kind
	for _, name := range kinds {
		data, _ := File(name)
		first, _, _ := strings.Cut(string(data), "\n")
		out = append(out, Kind{name, strings.TrimPrefix(first, "# ")})
	}
	return out
}

// File is the system file of a kind; false where there is no such kind.
func File(kind string) ([]byte, bool) {
	data, err := files.ReadFile(kind + ".yaml")
	return data, err == nil
}
