package corpus

import (
	"errors"
	"io/fs"
	"path/filepath"
	"strings"

	"dryfit/internal/system"
)

// Permits reads the permits that stand beside a system file: those of NAME.yaml in
// NAME.permits.yaml. It also gives the content of that file.
func (f File) Permits() ([]system.Deviation, []byte, []system.Problem) {
	if f.beside == nil {
		return nil, nil, nil
	}
	stem := strings.TrimSuffix(filepath.Base(f.Name), filepath.Ext(f.Name))
	for _, ending := range []string{".yaml", ".yml", ".json"} {
		name := stem + ".permits" + ending
		data, err := f.beside(name)
		if errors.Is(err, fs.ErrNotExist) {
			continue
		}
		shown := filepath.Join(filepath.Dir(f.Name), name)
		if err != nil {
			return nil, nil, []system.Problem{{File: shown, Line: 1, Column: 1, Found: "a file that cannot be read: " + Reason(err).Error(), Write: "put its rights in order, or take it away"}}
		}
		list, problems := system.ReadPermits(shown, data)
		return list, data, problems
	}
	return nil, nil, nil
}
