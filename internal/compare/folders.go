package compare

import "slices"

// Files is one path below two folders.
type Files struct {
	Path     string
	Was, Now bool // it is there
}

// Folders pairs the files of two folders by their path in them, sorted.
func Folders(was, now []string) []Files {
	var out []Files
	all := append(slices.Clone(was), now...)
	slices.Sort(all)
	for _, path := range slices.Compact(all) {
		out = append(out, Files{path, slices.Contains(was, path), slices.Contains(now, path)})
	}
	return out
}
