package corpus

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"

	"dryfit/internal/system"
)

var permitsName = regexp.MustCompile(`(?i)\.permits\.(yaml|yml|json)$`)

// PermitsOf says whether a path is that of a file of permits, and gives the path of the system
// file that it stands beside, without its ending.
func PermitsOf(path string) (stem string, is bool) {
	at := permitsName.FindStringIndex(path)
	if at == nil || at[0] == 0 || strings.HasSuffix(path[:at[0]], string(filepath.Separator)) {
		return "", false
	}
	return path[:at[0]], true
}

// IsDesign says that there is a file of this name which somebody wrote as a system file or as permits.
func IsDesign(name string) bool {
	if _, is := PermitsOf(name); is {
		return true
	}
	data, err := limited(plain(os.OpenFile(name, reading, 0)))
	return err == nil && isSystemFile(data)
}

// endings of system files, and of files of permits behind `.permits`.
var endings = []string{".yaml", ".yml", ".json", ".YAML", ".YML", ".JSON"}

// PermitNames is what a file of permits beside a system file may be called.
func PermitNames(file string) []string {
	var out []string
	for _, ending := range endings {
		out = append(out, strings.TrimSuffix(file, filepath.Ext(file))+".permits"+ending)
	}
	return out
}

// Permits reads the permits that stand beside a system file: those of NAME.yaml in
// NAME.permits.yaml. It also gives the content of that file.
func (f File) Permits() ([]system.Deviation, []byte, []system.Problem) {
	if f.beside == nil {
		return nil, nil, nil
	}
	var found string
	var content []byte
	for _, name := range PermitNames(filepath.Base(f.Name)) {
		data, err := f.beside(name)
		switch {
		case errors.Is(err, fs.ErrNotExist):
			continue
		case err != nil:
			return nil, nil, f.besides(name, system.Problem{Line: 1, Column: 1, Found: "a file that cannot be read: " + Reason(err).Error(), Write: "put its rights in order, or take it away"})
		case found != "" && !strings.EqualFold(found, name): // a folder that does not tell capitals from others shows one twice
			return nil, nil, f.besides(name, system.Problem{Line: 1, Column: 1, Found: "a second file of permits, beside " + found, Write: "put all permits into one of them"})
		}
		found, content = name, data
	}
	if found == "" {
		return nil, nil, nil
	}
	list, problems := system.ReadPermits(filepath.Join(filepath.Dir(f.Name), found), content)
	return list, content, f.besides(found, problems...)
}

// besides says of problems that they are those of a file beside this one.
func (f File) besides(name string, problems ...system.Problem) []system.Problem {
	for i := range problems {
		problems[i].File = f.Name
		problems[i].Found = "in " + name + ": " + problems[i].Found
	}
	return problems
}

// loopOf is the system file that a file of permits stands beside.
func loopOf(permits string) File {
	stem, _ := PermitsOf(permits)
	for _, ending := range endings {
		if f := Named(stem + ending); !f.Other() {
			if _, err := os.Stat(f.Name); err == nil {
				return f
			}
		}
	}
	return File{Name: permits, orphan: true}
}
