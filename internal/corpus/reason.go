package corpus

import (
	"errors"
	"io/fs"
)

// Reason is why a file could not be opened, without what is said of it anyway, and what to do.
func Reason(err error) error {
	var path *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return errors.New("there is no such file; check the name")
	case errors.Is(err, fs.ErrPermission):
		return errors.New("it may not be opened; check its rights")
	case errors.As(err, &path):
		return path.Err
	}
	return err
}
