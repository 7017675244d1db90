package corpus

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"syscall"

	"github.com/bmatcuk/doublestar/v4"
)

// File is a system file that was named or found.
type File struct {
	Name   string // as it is shown
	open   func() (io.ReadCloser, error)
	beside func(name string) ([]byte, error) // a file in the same folder
	orphan bool                              // permits without a system file beside them
}

// MostBytes is more than the reader of system files takes, so that it, and not the
// memory of the machine, refuses what is too large.
const MostBytes = 4 << 20

// Named is a file by its own name. It may be a pipe, whose writer is waited for.
func Named(name string) File {
	return File{
		Name: name,
		open: func() (io.ReadCloser, error) { return os.Open(name) },
		beside: func(other string) ([]byte, error) {
			return limited(plain(os.OpenFile(filepath.Join(filepath.Dir(name), other), reading, 0)))
		},
	}
}

// reading opens a file without waiting: a pipe that nobody writes to does not hold up its neighbours.
const reading = os.O_RDONLY | syscall.O_NONBLOCK

// plain refuses what is no plain file, such as a pipe or a device that was put in a folder.
func plain(f *os.File, err error) (io.ReadCloser, error) {
	if err != nil {
		return nil, err
	}
	info, err := f.Stat()
	if err == nil && !info.Mode().IsRegular() {
		err = errors.New("it is no plain file")
	}
	if err != nil {
		f.Close()
		return nil, err
	}
	return f, nil
}

// Given is a file whose content is at hand, as that of the standard input.
func Given(name string, r io.Reader) File {
	return File{Name: name, open: func() (io.ReadCloser, error) { return io.NopCloser(r), nil }}
}

// Typed is a file as it stands in an editor, which may not have saved it yet. What stands beside
// it is read from its folder.
func Typed(name string, data []byte) File {
	f := Named(name)
	f.open = func() (io.ReadCloser, error) { return io.NopCloser(bytes.NewReader(data)), nil }
	return f
}

// Data is the content of the file.
func (f File) Data() ([]byte, error) {
	r, err := f.open()
	if err != nil {
		return nil, err
	}
	defer r.Close()
	if r, ok := r.(fs.File); ok {
		if info, err := r.Stat(); err == nil && !info.Mode().IsRegular() && info.IsDir() {
			return nil, errors.New("it is a folder; name the files in it")
		}
	}
	return io.ReadAll(io.LimitReader(r, MostBytes))
}

// Other says that a file is no system file: it can be read and has no key `dryfit`, or is no plain file.
func (f File) Other() bool {
	if f.orphan {
		return false
	}
	if info, err := os.Stat(f.Name); err == nil && !info.Mode().IsRegular() {
		return true
	}
	data, err := f.Data()
	return err == nil && !isSystemFile(data)
}

func limited(f io.ReadCloser, err error) ([]byte, error) {
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, MostBytes))
}

// Find takes files, folders and patterns such as designs/**/*.yaml and gives the files, each
// once: those named as they come, those of a folder or a pattern by name. In folders and patterns a
// system file is known by its key `dryfit`; what begins with a dot is passed over, and no link
// is followed, so that nothing outside the folder is read. A file of permits stands for the system
// file beside it.
func Find(args []string) ([]File, error) {
	var out []File
	seen := map[string]bool{}
	add := func(files ...File) {
		for _, f := range files {
			if clean := filepath.Clean(f.Name); !seen[clean] {
				seen[clean] = true
				out = append(out, f)
			}
		}
	}
	for _, arg := range args {
		info, err := os.Stat(arg)
		switch {
		case err == nil && info.IsDir():
			found, err := inFolder(arg)
			if err != nil {
				return nil, fmt.Errorf("the folder %s: %w", arg, err)
			}
			if len(found) == 0 {
				return nil, fmt.Errorf("there is no system file in %s: one has `dryfit: 1` as a key", arg)
			}
			add(found...)
		case err != nil && strings.ContainsAny(arg, "*?[{"):
			found, err := byPattern(arg)
			if err != nil {
				return nil, err
			}
			add(found...)
		case permitsName.MatchString(arg) && err == nil:
			add(loopOf(arg))
		default:
			add(Named(arg)) // one that is not there says so when it is read
		}
	}
	return out, nil
}

// inFolder is the system files of a folder and those below it, by name.
func inFolder(folder string) ([]File, error) {
	root, err := os.OpenRoot(folder)
	if err != nil {
		return nil, err
	}
	var out, permits []File
	err = fs.WalkDir(root.FS(), ".", func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil && path == ".":
			return err
		case err != nil:
			return nil // a folder that may not be opened hides only itself
		case path != "." && strings.HasPrefix(d.Name(), "."):
			if d.IsDir() {
				return fs.SkipDir
			}
			return nil
		case !d.Type().IsRegular() || !named(d.Name()):
			return nil
		}
		f := within(root, folder, path)
		if data, err := f.Data(); err == nil && isSystemFile(data) {
			out = append(out, f)
		} else if _, is := PermitsOf(path); is {
			permits = append(permits, f)
		}
		return nil
	})
	return withOrphans(out, permits), err
}

// withOrphans enters the files of permits that stand beside none of the system files, in the order of names.
func withOrphans(files, permits []File) []File {
	loops := map[string]bool{}
	for _, f := range files {
		loops[strings.TrimSuffix(f.Name, filepath.Ext(f.Name))] = true
	}
	for _, p := range permits {
		if stem, _ := PermitsOf(p.Name); !loops[stem] {
			p.orphan = true
			files = append(files, p)
		}
	}
	slices.SortStableFunc(files, func(a, b File) int { return strings.Compare(a.Name, b.Name) })
	return files
}

// within is a file of a folder that is read through the folder, so that no link leads out of it.
func within(root *os.Root, folder, path string) File {
	open := func(path string) (io.ReadCloser, error) { return plain(root.OpenFile(path, reading, 0)) }
	return File{
		Name:   filepath.Join(folder, filepath.FromSlash(path)),
		open:   func() (io.ReadCloser, error) { return open(path) },
		beside: func(name string) ([]byte, error) { return limited(open(filepath.Join(filepath.Dir(path), name))) },
	}
}

func byPattern(pattern string) ([]File, error) {
	if !doublestar.ValidatePathPattern(pattern) {
		return nil, fmt.Errorf("`%s` is no pattern: close what is open in it", pattern)
	}
	folder, rest := doublestar.SplitPattern(filepath.ToSlash(pattern))
	var out []File
	if root, err := os.OpenRoot(filepath.FromSlash(folder)); err == nil {
		names, err := doublestar.Glob(root.FS(), rest, doublestar.WithFilesOnly(), doublestar.WithNoFollow(), doublestar.WithNoHidden())
		if err != nil {
			return nil, err
		}
		slices.Sort(names)
		for _, name := range names {
			info, err := root.Lstat(name)
			if f := within(root, folder, name); err == nil && info.Mode().IsRegular() && !f.Other() {
				out = append(out, f)
			}
		}
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("no system file fits `%s`: one has `dryfit: 1` as a key", pattern)
	}
	return out, nil
}

// named says that a name ends like that of a system file.
func named(name string) bool {
	return slices.Contains([]string{".yaml", ".yml", ".json"}, strings.ToLower(filepath.Ext(name)))
}

var (
	topKey  = regexp.MustCompile(`(?m)^(\x{FEFF})?(dryfit|"dryfit"|'dryfit')[ \t]*:`)
	someKey = regexp.MustCompile(`["']?\bdryfit["']?[ \t]*:`)
)

// isSystemFile says that a file has the key `dryfit` at its top, also where the rest of it is broken.
func isSystemFile(data []byte) bool {
	text := bytes.TrimLeft(bytes.TrimPrefix(data, []byte("\xEF\xBB\xBF")), " \t\r\n")
	if !bytes.HasPrefix(text, []byte("{")) {
		return topKey.Match(data)
	}
	d := json.NewDecoder(bytes.NewReader(text))
	depth, key := 0, false
	for {
		token, err := d.Token()
		if err != nil { // it is broken, or YAML in braces
			return !errors.Is(err, io.EOF) && someKey.Match(text)
		}
		switch t := token.(type) {
		case json.Delim:
			if t == '{' || t == '[' {
				depth++
			} else {
				depth--
			}
			key = depth == 1
			if depth == 0 {
				return false
			}
			continue
		case string:
			if depth == 1 && key && t == "dryfit" {
				return true
			}
		}
		if depth == 1 {
			key = !key
		}
	}
}
