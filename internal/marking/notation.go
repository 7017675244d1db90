package marking

import (
	"bytes"
	"encoding/json"
	"strings"
	"sync"

	"dryfit/internal/system"
	"dryfit/schema"
)

// A notation is one of the files that marking reads beside system files.
type notation struct {
	key   string // that every such file has, and no other
	name  string // with its article
	holds string // what stands under that key, in a few words
	rules func() (*system.Rules, error)
}

var (
	guideNotation = notation{"dryfit_guide", "a marking guide", "a name, a total and items", compiled(schema.Guide)}
	changes       = notation{"dryfit_moderation", "a file of changed marks", "a list of changes", compiled(schema.Moderation)}
)

// compiled is a schema, compiled on first use.
func compiled(text []byte) func() (*system.Rules, error) {
	return sync.OnceValues(func() (*system.Rules, error) { return system.Compile(text) })
}

// read decodes a file into a form as far as it can be read. What its schema refuses is noted with the checker.
func (n notation) read(file string, data []byte, form any) *checker {
	k := &checker{doc: &system.Document{File: file}}
	start := "write `" + n.key + ": 1` and under it " + n.holds
	if len(bytes.TrimSpace(data)) == 0 {
		k.add("", "nothing", start)
		return k
	}
	rules, err := n.rules()
	if err != nil {
		k.add("", "a schema that does not compile: "+err.Error(), "report this as a fault of dryfit")
		return k
	}
	doc, problems := system.ReadOn(rules, file, data)
	if doc == nil {
		k.list = problems
		return k
	}
	k.doc = doc
	for _, other := range []struct{ key, name string }{{"dryfit", "a system file"}, {guideNotation.key, guideNotation.name}, {changes.key, changes.name}} {
		if doc.Has("/"+other.key) && !doc.Has("/"+n.key) {
			k.add("/"+other.key, other.name, "give "+n.name+" here, which has the key `"+n.key+"`")
			return k
		}
	}
	k.list = problems
	for _, p := range problems {
		k.broken = append(k.broken, p.Pointer)
	}
	text, err := json.Marshal(doc.Plain())
	if err != nil {
		k.add("", "a file that cannot be decoded", "report this as a fault of dryfit: "+err.Error())
		return k
	}
	_ = json.Unmarshal(text, form) // what does not fit is left out, and was refused by the schema
	return k
}

// checker collects what is wrong with a file beyond what its schema says.
type checker struct {
	doc    *system.Document
	list   []system.Problem
	broken []string // pointers of what the schema refused
}

// add notes a problem, unless what it is about was refused already.
func (k *checker) add(pointer, found, write string) {
	if k.sound(pointer) {
		at := k.doc.Place(pointer)
		k.list = append(k.list, system.Problem{File: at.File, Line: at.Line, Column: at.Column, Pointer: pointer, Found: found, Write: write})
	}
}

// sound says that the schema refused nothing at a place, in it or around it.
func (k *checker) sound(pointer string) bool {
	for _, b := range k.broken {
		if b == pointer || strings.HasPrefix(b, pointer+"/") || strings.HasPrefix(pointer, b+"/") {
			return false
		}
	}
	return true
}

// problems is all that is wrong, in the order of the file.
func (k *checker) problems() []system.Problem {
	system.SortProblems(k.list)
	return k.list
}

// quoted puts text of a file between backquotes, on one line.
func quoted(text string) string { return "`" + strings.Join(strings.Fields(text), " ") + "`" }

// orNearest is what to write in place of a word that is not known: the nearest that is, else where to look.
func orNearest(word string, known []string, look string) string {
	if near := system.Nearest(word, known); near != "" {
		return "the nearest is " + quoted(near)
	}
	return look
}

// series is a list in a sentence.
func series(items []string) string {
	last := len(items) - 1
	if last < 1 {
		return strings.Join(items, "")
	}
	return strings.Join(items[:last], ", ") + " and " + items[last]
}
