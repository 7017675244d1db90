package compare

import (
	"maps"
	"slices"
	"strings"
)

// Files is one file of two folders, under its path in each; empty where it is not there.
// One that is there under two paths was moved.
type Files struct{ Was, Now string }

// Folders pairs the files of two folders: by their path, and what is then left over by the
// same content, first with first. It takes their content by path, and gives them sorted by
// their present path, or by the former one of what is gone.
func Folders(was, now map[string][]byte) []Files {
	var out []Files
	from := map[string][]string{} // what is gone, by content
	for _, path := range slices.Sorted(maps.Keys(was)) {
		if _, still := now[path]; still {
			out = append(out, Files{path, path})
		} else {
			from[string(was[path])] = append(from[string(was[path])], path)
		}
	}
	for _, path := range slices.Sorted(maps.Keys(now)) {
		if _, there := was[path]; there {
			continue
		}
		one, content := Files{Now: path}, string(now[path])
		if same := from[content]; len(same) > 0 && content != "" {
			one.Was, from[content] = same[0], same[1:]
		}
		out = append(out, one)
	}
	for _, left := range from {
		for _, path := range left {
			out = append(out, Files{Was: path})
		}
	}
	slices.SortFunc(out, func(a, b Files) int { return strings.Compare(a.Path(), b.Path()) })
	return out
}

// Path is the present path of a file, or the former one of what is gone.
func (f Files) Path() string {
	if f.Now != "" {
		return f.Now
	}
	return f.Was
}
