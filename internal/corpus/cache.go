package corpus

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// Cache keeps the results of files that were reviewed, in a folder. A result stands under the
// hash of all that it depends on, so that it is never stale, only absent. Each entry carries the
// hash of its own bytes: one that is torn or altered is as good as absent. Entries are written
// beside their place and then moved into it, so that several runs may share a folder
// and any of them may be killed.
type Cache struct {
	folder string
	made   string // hash of what every result depends on, beside the file
}

// The two parts of a result.
const (
	shortPart = "short"
	wholePart = "whole"
)

// How long an entry stays that nobody reads, and how often that is looked at.
const (
	keepUnread = 30 * 24 * time.Hour
	lookAfter  = 24 * time.Hour
)

// mostKept bounds what one entry may unpack to, in bytes.
const mostKept = 64 << 20

// OpenCache opens a folder of results and makes it if it is not there. What made the
// results, as the program and the book, is given as hashes: another maker finds none of them.
func OpenCache(folder string, made ...string) (*Cache, error) {
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return nil, err
	}
	return &Cache{folder, strings.Join(made, "\n")}, nil
}

// key is the name under which the result of a file stands.
func (c *Cache) key(data []byte) string {
	sum := sha256.New()
	io.WriteString(sum, c.made+"\x00")
	sum.Write(data)
	return hex.EncodeToString(sum.Sum(nil))
}

func (c *Cache) path(key, part string) string {
	return filepath.Join(c.folder, key[:2], key[2:]+"."+part)
}

// get is a part of a result, if it is there and whole.
func (c *Cache) get(key, part string) ([]byte, bool) {
	path := c.path(key, part)
	packed, err := os.ReadFile(path)
	if err != nil || len(packed) < sha256.Size {
		return nil, false
	}
	sum := sha256.Sum256(packed[sha256.Size:])
	if !bytes.Equal(sum[:], packed[:sha256.Size]) {
		return nil, false
	}
	z, err := gzip.NewReader(bytes.NewReader(packed[sha256.Size:]))
	if err != nil {
		return nil, false
	}
	data, err := io.ReadAll(io.LimitReader(z, mostKept))
	if err != nil || len(data) == mostKept {
		return nil, false
	}
	if info, err := os.Stat(path); err == nil && time.Since(info.ModTime()) > lookAfter {
		now := time.Now()
		os.Chtimes(path, now, now) // it was read: it stays
	}
	return data, true
}

// put writes a part of a result.
func (c *Cache) put(key, part string, data []byte) error {
	var b bytes.Buffer
	b.Write(make([]byte, sha256.Size))
	z, err := gzip.NewWriterLevel(&b, gzip.BestSpeed)
	if err != nil {
		return err
	}
	if _, err := z.Write(data); err != nil {
		return err
	}
	if err := z.Close(); err != nil {
		return err
	}
	sum := sha256.Sum256(b.Bytes()[sha256.Size:])
	copy(b.Bytes(), sum[:])
	path := c.path(key, part)
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	f, err := os.CreateTemp(filepath.Dir(path), "new-*")
	if err != nil {
		return err
	}
	_, err = f.Write(b.Bytes())
	err = errors.Join(err, f.Close())
	if err == nil {
		err = os.Rename(f.Name(), path)
	}
	if err != nil {
		os.Remove(f.Name())
	}
	return err
}

// Tidy removes what nobody has read for long and what killed runs left behind, once a day.
func (c *Cache) Tidy() error {
	mark := filepath.Join(c.folder, "tidied")
	if info, err := os.Stat(mark); err == nil && time.Since(info.ModTime()) < lookAfter {
		return nil
	}
	if err := os.WriteFile(mark, nil, 0o644); err != nil {
		return err
	}
	now := time.Now()
	if err := os.Chtimes(mark, now, now); err != nil {
		return err
	}
	root, err := os.OpenRoot(c.folder)
	if err != nil {
		return err
	}
	defer root.Close()
	return fs.WalkDir(root.FS(), ".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || !d.Type().IsRegular() || !ours(path) {
			return nil
		}
		info, err := d.Info()
		if err != nil {
			return nil
		}
		age, most := now.Sub(info.ModTime()), keepUnread
		if strings.HasPrefix(d.Name(), "new-") {
			most = lookAfter
		}
		if age > most {
			root.Remove(path)
		}
		return nil
	})
}

// ours says that a path inside the folder is one that a cache writes, so that nothing else is ever removed.
func ours(path string) bool {
	folder, name, ok := strings.Cut(path, "/")
	if !ok || len(folder) != 2 {
		return false
	}
	key, part, _ := strings.Cut(name, ".")
	_, err := hex.DecodeString(folder + key)
	return strings.HasPrefix(name, "new-") || err == nil && len(key) == 2*sha256.Size-2 && (part == shortPart || part == wholePart)
}
