package report

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"html"
	"io/fs"
	"regexp"
	"strings"
)

// Stamp says what a sheet was made from, so that it can be told when it is stale.
type Stamp struct {
	File    string // SHA-256 of the system file
	Book    string // SHA-256 of the book and its tables
	Version string // of dryfit
	Units   string // metric, us or both
	AsOf    string // day that the sheet stands for, such as 2026-03-14; may be empty
	Guide   string // SHA-256 of the marking guide; empty where nothing is marked
	House   string // SHA-256 of the rules of the house; empty without a house
}

// HashOf is the SHA-256 of a system file, in hexadecimal digits.
func HashOf(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}

// BookHash is the SHA-256 of all files of some folders, with their names.
func BookHash(folders ...fs.FS) (string, error) {
	sum := sha256.New()
	for _, folder := range folders {
		err := fs.WalkDir(folder, ".", func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() {
				return err
			}
			data, err := fs.ReadFile(folder, path)
			if err != nil {
				return err
			}
			sum.Write([]byte(path + "\x00" + HashOf(data) + "\x00"))
			return nil
		})
		if err != nil {
			return "", err
		}
	}
	return hex.EncodeToString(sum.Sum(nil)), nil
}

// String is the stamp as it stands in the file of a sheet.
func (s Stamp) String() string {
	word := func(text string) string {
		if text = strings.Join(strings.Fields(text), "_"); text == "" {
			return "-"
		}
		return text
	}
	out := "dryfit-sheet file=" + word(s.File) + " book=" + word(s.Book) + " version=" + word(s.Version) + " units=" + word(s.Units) + " as-of=" + word(s.AsOf)
	if s.Guide != "" {
		out += " guide=" + word(s.Guide)
	}
	if s.House != "" {
		out += " house=" + word(s.House)
	}
	return out
}

// A stamp stands at the head of a file, before anything that comes from a system file.
const stampWithin = 1024

var stampForm = regexp.MustCompile(`dryfit-sheet file=([0-9a-f]{64}) book=([0-9a-f]{64}) version=(\S+) units=(metric|us|both) as-of=([0-9-]+)(?: guide=([0-9a-f]{64}))?(?: house=([0-9a-f]{64}))?`)

// ReadStamp finds the stamp in the file of a sheet.
func ReadStamp(data []byte) (Stamp, error) {
	head := html.UnescapeString(string(data[:min(len(data), stampWithin)]))
	found := stampForm.FindStringSubmatch(head)
	if found == nil {
		return Stamp{}, errors.New("there is no stamp of dryfit at its head; make the sheet anew with -o")
	}
	s := Stamp{File: found[1], Book: found[2], Version: found[3], Units: found[4], AsOf: found[5], Guide: found[6], House: found[7]}
	if s.AsOf == "-" {
		s.AsOf = ""
	}
	return s, nil
}

// digitsOrNone is the first digits of the hash of a guide or a house, where there is one.
func digitsOrNone(hash string) string {
	if hash == "" {
		return "none"
	}
	return firstDigits(hash)
}

// firstDigits is as much of a hash as tells it from others.
func firstDigits(hash string) string { return hash[:min(12, len(hash))] }

// Since says what has changed since a sheet with the stamp s was made; nothing where it is fresh.
func (s Stamp) Since(now Stamp) []string {
	var out []string
	if s.File != now.File {
		out = append(out, "the system file has changed: SHA-256 "+s.File[:12]+" then, "+now.File[:12]+" now")
	}
	if s.Book != now.Book {
		out = append(out, "the book of clauses or its tables have changed: "+s.Book[:12]+" then, "+now.Book[:12]+" now")
	}
	if s.Guide != now.Guide {
		out = append(out, "the marking guide has changed: "+digitsOrNone(s.Guide)+" then, "+digitsOrNone(now.Guide)+" now")
	}
	if s.House != now.House {
		out = append(out, "the rules of the house have changed: "+digitsOrNone(s.House)+" then, "+digitsOrNone(now.House)+" now")
	}
	if was := strings.Join(strings.Fields(now.Version), "_"); s.Version != was {
		out = append(out, "dryfit has changed: "+s.Version+" then, "+was+" now")
	}
	return out
}
