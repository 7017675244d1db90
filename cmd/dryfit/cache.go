package main

import (
	"crypto/sha256"
	"encoding/hex"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"runtime"

	"dryfit/internal/corpus"
)

// cache opens the folder in which results are kept: the one that was asked for, else that of
// the user. Where the user has none, nothing is kept.
func (a *app) cache(folder, book string) (*corpus.Cache, error) {
	asked := folder != ""
	if !asked {
		if folder = a.cacheFolder(); folder == "" {
			return nil, nil
		}
	}
	program, err := programID()
	if err != nil {
		return nil, nil // without it, results of another program could pass for ours
	}
	c, err := corpus.OpenCache(folder, program, book)
	if err != nil && asked {
		return nil, misusef("the folder %s cannot be used to keep results: %v", folder, unwritable(err))
	}
	if err != nil {
		return nil, nil
	}
	return c, nil
}

// cacheFolder is where programs of this user keep what can be made again.
func (a *app) cacheFolder() string {
	switch home := a.env("HOME"); {
	case a.env("DRYFIT_CACHE") != "":
		return a.env("DRYFIT_CACHE")
	case filepath.IsAbs(a.env("XDG_CACHE_HOME")):
		return filepath.Join(a.env("XDG_CACHE_HOME"), "dryfit")
	case runtime.GOOS == "windows" && a.env("LocalAppData") != "":
		return filepath.Join(a.env("LocalAppData"), "dryfit")
	case runtime.GOOS == "darwin" && home != "":
		return filepath.Join(home, "Library", "Caches", "dryfit")
	case filepath.IsAbs(home):
		return filepath.Join(home, ".cache", "dryfit")
	}
	return ""
}

// buildID is where the Go linker writes the hash of all that went into a program, near its
// beginning: in a note of an ELF file, as a line of text in others.
var buildID = regexp.MustCompile(`(?:\x04\x00\x00\x00Go\x00\x00|Go build ID: ")([A-Za-z0-9_/-]{40,200})`)

// programID tells this program from any other: by its build ID, else by the hash of its file.
func programID() (string, error) {
	path, err := os.Executable()
	if err != nil {
		return "", err
	}
	f, err := os.Open(path)
	if err != nil {
		return "", err
	}
	defer f.Close()
	head, err := io.ReadAll(io.LimitReader(f, 64<<10))
	if err != nil {
		return "", err
	}
	if id := buildID.FindSubmatch(head); id != nil {
		return string(id[1]), nil
	}
	sum := sha256.New()
	sum.Write(head)
	if _, err := io.Copy(sum, f); err != nil {
		return "", err
	}
	return hex.EncodeToString(sum.Sum(nil)), nil
}
