package system

import (
	"bytes"
	"encoding/json"
	"strconv"
	"strings"
	"sync"
)

// A Notation is one of the files that are read beside system files, as a marking guide.
type Notation struct {
	Key   string // that every such file has, and no other
	Name  string // with its article
	Holds string // what stands under that key, in a few words
	rules func() (*Rules, error)
}

// NewNotation is a notation with its JSON Schema, which is compiled on first use.
func NewNotation(key, name, holds string, text []byte) Notation {
	return Notation{key, name, holds, sync.OnceValues(func() (*Rules, error) { return Compile(text) })}
}

// keysOfFiles is the keys by which files are told apart.
var keysOfFiles = []struct{ key, name string }{
	{"dryfit", "a system file"}, {"dryfit_guide", "a marking guide"}, {"dryfit_moderation", "a file of changed marks"}, {"dryfit_house", "house rules"},
}

// Read decodes a file into a form as far as it can be read. What its schema refuses is noted with the checker.
func (n Notation) Read(file string, data []byte, form any) *Checker {
	k := &Checker{Doc: &Document{File: file}}
	start := "write `" + n.Key + ": 1` and under it " + n.Holds
	if len(bytes.TrimSpace(data)) == 0 {
		k.Add("", "nothing", start)
		return k
	}
	rules, err := n.rules()
	if err != nil {
		k.Add("", "a schema that does not compile: "+err.Error(), "report this as a fault of dryfit")
		return k
	}
	doc, problems := ReadOn(rules, file, data)
	if doc == nil {
		k.list = problems
		return k
	}
	k.Doc = doc
	for _, other := range keysOfFiles {
		if doc.Has("/"+other.key) && !doc.Has("/"+n.Key) {
			k.Add("/"+other.key, other.name, "give "+n.Name+" here, which has the key `"+n.Key+"`")
			return k
		}
	}
	k.list = problems
	for _, p := range problems {
		k.broken = append(k.broken, p.Pointer)
	}
	text, err := json.Marshal(doc.Plain())
	if err != nil {
		k.Add("", "a file that cannot be decoded", "report this as a fault of dryfit: "+err.Error())
		return k
	}
	_ = json.Unmarshal(text, form) // what does not fit is left out, and was refused by the schema
	return k
}

// Checker collects what is wrong with a file beyond what its schema says.
type Checker struct {
	Doc    *Document
	list   []Problem
	broken []string // pointers of what the schema refused
}

// Add notes a problem, unless what it is about was refused already.
func (k *Checker) Add(pointer, found, write string) {
	if k.Sound(pointer) {
		at := k.Doc.Place(pointer)
		k.list = append(k.list, Problem{File: at.File, Line: at.Line, Column: at.Column, Pointer: pointer, Found: found, Write: write})
	}
}

// Sound says that the schema refused nothing at a place, in it or around it.
func (k *Checker) Sound(pointer string) bool {
	for _, b := range k.broken {
		if b == pointer || strings.HasPrefix(b, pointer+"/") || strings.HasPrefix(pointer, b+"/") {
			return false
		}
	}
	return true
}

// Problems is all that is wrong, in the order of the file.
func (k *Checker) Problems() []Problem {
	SortProblems(k.list)
	return k.list
}

// Written is a value as it is written in such a file: text, or a plain number.
type Written string

// UnmarshalJSON takes text and numbers. Of anything else it makes nothing: the schema has refused it.
func (w *Written) UnmarshalJSON(data []byte) error {
	var value any
	if err := json.Unmarshal(data, &value); err != nil {
		return err
	}
	switch v := value.(type) {
	case string:
		*w = Written(v)
	case float64:
		*w = Written(strconv.FormatFloat(v, 'f', -1, 64))
	}
	return nil
}
