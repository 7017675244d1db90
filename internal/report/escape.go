package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"path/filepath"
	"regexp"
	"strings"
	"unicode"
	"unicode/utf16"
	"unicode/utf8"
)

// harmlessJSON is a value as JSON on one line in which every character that does not print
// is written as its code: the text is the same for a program, and does nothing on a terminal.
func harmlessJSON(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		return nil, err
	}
	return harmlessText(bytes.TrimRight(b.Bytes(), "\n")), nil
}

// harmlessText is JSON in which every character that does not print is written as its code, but for the ends of its lines.
func harmlessText(text []byte) []byte {
	out := make([]byte, 0, len(text))
	for len(text) > 0 {
		r, size := utf8.DecodeRune(text)
		switch {
		case unicode.IsPrint(r) || r == '\n':
			out = append(out, text[:size]...)
		case r < 0x10000:
			out = fmt.Appendf(out, `\u%04x`, r)
		default:
			high, low := utf16.EncodeRune(r)
			out = fmt.Appendf(out, `\u%04x\u%04x`, high, low)
		}
		text = text[size:]
	}
	return out
}

// uriOf is the name of a file as a URI: forward slashes, every byte encoded that may mean
// something there. Absolute is a file that does not lie under where dryfit was called.
//
// Source: RFC 3986, section 2; RFC 8089 for the absolute.
func uriOf(file string) (uri string, absolute bool) {
	if file == "-" {
		return "standard-input", false
	}
	absolute = filepath.IsAbs(file)
	path := filepath.ToSlash(filepath.Clean(file))
	var b strings.Builder
	if absolute {
		b.WriteString("file://")
		if !strings.HasPrefix(path, "/") {
			b.WriteString("/")
		}
	}
	for _, c := range []byte(path) {
		letter := c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9'
		if letter || strings.IndexByte("-._~/", c) >= 0 {
			b.WriteByte(c)
		} else {
			fmt.Fprintf(&b, "%%%02X", c)
		}
	}
	return b.String(), absolute
}

// Code hosts look through the finished page once more, and make links of what names a
// person, an issue, a label or an address, and pictures of what stands between colons. An
// entity or a backslash does not keep them from it; a blank of no width behind the sign does.
var pointing = regexp.MustCompile(`&#64;|\\[#!~$*]|&amp;|%|\^|:|&#58;|(?i:\bGH-|\bwww&#46;|\b(?:mailto|xmpp)&#58;)`)

const noWidth = "&#8203;"

// commented is a text of which a comment on a code host makes nothing but that text.
func commented(text string) string {
	out := marked(text)
	var b strings.Builder
	from := 0
	for _, at := range pointing.FindAllStringIndex(out, -1) {
		b.WriteString(out[from:at[1]])
		from = at[1]
		if from < len(out) && out[from] != ' ' {
			b.WriteString(noWidth)
		}
	}
	return b.String() + out[from:]
}
