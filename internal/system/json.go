package system

import (
	"bytes"
	"encoding/json"
	"errors"
	"regexp"
	"strings"
	"unicode/utf8"
)

// braced is the start of a JSON object: YAML has such braces too, but seldom quotes its keys.
var braced = regexp.MustCompile(`^(\x{feff})?\s*\{\s*"`)

// looksJSON says whether the author meant JSON, by the name of the file or its first letters.
func looksJSON(file string, data []byte) bool {
	return strings.HasSuffix(strings.ToLower(file), ".json") || braced.Match(data)
}

// jsonSyntax explains the mistake that a JSON reader finds first. What is left
// open until the end of the file it leaves to [syntax], which knows where it was opened.
func jsonSyntax(data []byte, ps *problems) bool {
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	var e *json.SyntaxError
	if err := json.Unmarshal(data, new(json.RawMessage)); !errors.As(err, &e) {
		return false
	}
	for _, known := range [][3]string{
		{"after object key:value pair", "no comma or closing brace before this", "put a comma between the values"},
		{"after array element", "no comma or closing bracket before this", "put a comma between the values"},
		{"after object key", "a key without its colon", "write `\"key\": value`"},
		{"looking for beginning of object key", "a key that is not in double quotes", "write `\"key\": value`, and no comma after the last one"},
		{"looking for beginning of value", "no value that JSON has", "put text in double quotes; write no comma after the last value"},
		{"in literal", "a word that JSON does not know", "put text in double quotes"},
		{"after top-level value", "more after the closing brace", "take it out: one pair of braces holds the whole file"},
		{"in string escape code", "a backslash that JSON does not know", "write two for one backslash"},
	} {
		if strings.Contains(e.Error(), known[0]) {
			ps.addAt(placeOf(data, int(e.Offset)-1, ps.doc.File), "", "broken JSON: "+known[1], known[2])
			return true
		}
	}
	return false
}

// placeOf is the place of a byte.
func placeOf(data []byte, offset int, file string) Place {
	before := data[:max(0, min(offset, len(data)))]
	start := bytes.LastIndexByte(before, '\n') + 1
	return Place{file, bytes.Count(before, []byte("\n")) + 1, utf8.RuneCount(before[start:]) + 1}
}
